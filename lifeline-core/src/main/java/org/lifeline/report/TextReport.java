package org.lifeline.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import org.lifeline.analysis.explain.CalculationStep;
import org.lifeline.base.InertText;
import org.lifeline.report.document.LineBreaks;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportDocument;
import org.lifeline.report.document.ReportSection;

/**
 * Writes a report as plain text, {@value #WIDTH} characters wide where its tables allow.
 *
 * @since 1.0.0
 */
public final class TextReport {
    private static final int WIDTH = 80;
    private static final int LONGEST_WORD = 16;

    private final StringBuilder out = new StringBuilder();

    private TextReport() {}

    /**
     * Writes a report.
     *
     * @param document the report
     * @return the text; lines end with a line feed
     */
    public static String write(ReportDocument document) {
        TextReport report = new TextReport();
        report.document(document);
        return report.out.toString();
    }

    /**
     * Writes one table.
     *
     * @param table the table
     * @return the text; lines end with a line feed
     */
    public static String writeTable(ReportBlock.Table table) {
        TextReport report = new TextReport();
        report.table(table);
        return report.out.toString();
    }

    private void document(ReportDocument d) {
        String title = InertText.plain(d.title());
        wrap(title, "");
        line("=".repeat(Math.min(WIDTH, title.length())));
        d.identity().forEach(i -> wrap(InertText.plain(i), ""));
        for (ReportSection s : d.sections()) {
            String heading = InertText.plain(s.title());
            line("");
            wrap(heading, "");
            line((s.level() == 1 ? "-" : ".").repeat(Math.min(WIDTH, heading.length())));
            for (ReportBlock b : s.blocks()) {
                block(b);
            }
        }
    }

    private void line(String text) {
        out.append(text.stripTrailing()).append('\n');
    }

    private void block(ReportBlock b) {
        if (b instanceof ReportBlock.Paragraph p) {
            wrap(InertText.plain(p.text()), "");
        } else if (b instanceof ReportBlock.Items items) {
            items.items().forEach(i -> wrap("- " + InertText.plain(i), "  "));
        } else if (b instanceof ReportBlock.Table t) {
            table(t);
        } else if (b instanceof ReportBlock.Calculation c) {
            calculation(c.steps());
        } else if (b instanceof ReportBlock.Figure f) {
            wrap(
                    "[Picture: " + InertText.plain(f.picture().title()) + ". "
                            + InertText.plain(f.picture().description()) + "]",
                    "  ");
        }
    }

    private void wrap(String text, String indent) {
        List<String> lines = LineBreaks.at(WIDTH - indent.length()).lines(text);
        for (int i = 0; i < lines.size(); i++) {
            line((i == 0 ? "" : indent) + lines.get(i));
        }
    }

    private static int length(String text) {
        return text.codePointCount(0, text.length());
    }

    private static String pad(String text, int width, boolean right) {
        String space = " ".repeat(Math.max(0, width - length(text)));
        return right ? space + text : text + space;
    }

    private void table(ReportBlock.Table t) {
        line("");
        wrap(InertText.plain(t.caption()), "");
        List<ReportBlock.Table> parts = parts(t);
        for (int i = 0; i < parts.size(); i++) {
            if (i > 0) {
                line("");
            }
            part(parts.get(i));
        }
    }

    /** A table that is too wide however its cells break, as several with the first column in each. */
    private static List<ReportBlock.Table> parts(ReportBlock.Table t) {
        int[] least = leastWidths(t, cells(t));
        if (sum(least) <= WIDTH || least.length < 3) {
            return List.of(t);
        }
        List<ReportBlock.Table> parts = new ArrayList<>();
        List<Integer> columns = new ArrayList<>(List.of(0));
        int width = least[0] + 4;
        for (int j = 1; j < least.length; j++) {
            if (columns.size() > 1 && width + least[j] + 2 > WIDTH) {
                parts.add(only(t, columns));
                columns = new ArrayList<>(List.of(0));
                width = least[0] + 4;
            }
            columns.add(j);
            width += least[j] + 2;
        }
        parts.add(only(t, columns));
        return parts;
    }

    private static ReportBlock.Table only(ReportBlock.Table t, List<Integer> columns) {
        return new ReportBlock.Table(
                t.caption(),
                columns.stream().map(t.columns()::get).toList(),
                t.rows().stream()
                        .map(r -> new ReportBlock.Row(
                                columns.stream().map(r.cells()::get).toList(), r.total()))
                        .toList());
    }

    private static List<List<String>> cells(ReportBlock.Table t) {
        List<List<String>> cells = new ArrayList<>();
        cells.add(t.columns().stream().map(c -> InertText.plain(c.heading())).toList());
        for (ReportBlock.Row r : t.rows()) {
            cells.add(r.cells().stream().map(InertText::plain).toList());
        }
        return cells;
    }

    private void part(ReportBlock.Table t) {
        List<List<String>> cells = cells(t);
        int[] widths = widths(t, cells);
        rows(t, cells.get(0), widths);
        StringBuilder rule = new StringBuilder("  ");
        for (int w : widths) {
            rule.append("-".repeat(w)).append("  ");
        }
        line(rule.toString());
        for (int i = 1; i < cells.size(); i++) {
            if (t.rows().get(i - 1).total()) {
                line(rule.toString());
            }
            rows(t, cells.get(i), widths);
        }
    }

    /** As wide as the widest cell; where that is too wide, numbers in both systems stand in two lines, then text gives way. */
    private static int[] widths(ReportBlock.Table t, List<List<String>> cells) {
        int n = t.columns().size();
        int[] least = leastWidths(t, cells);
        int[] natural = new int[n];
        for (int j = 0; j < n; j++) {
            natural[j] = least[j];
            for (List<String> row : cells.subList(1, cells.size())) {
                natural[j] = Math.max(natural[j], length(row.get(j)));
            }
        }
        int[] widths = natural.clone();
        if (sum(widths) > WIDTH) {
            for (int j = 0; j < n; j++) {
                widths[j] = t.columns().get(j).numeric() ? least[j] : natural[j];
            }
            for (int j = 0; j < n; j++) {
                if (sum(widths) - widths[j] + natural[j] <= WIDTH) {
                    widths[j] = natural[j];
                }
            }
        }
        while (sum(widths) > WIDTH) {
            int widest = -1;
            for (int j = 0; j < n; j++) {
                if (widths[j] > least[j] && (widest < 0 || widths[j] - least[j] > widths[widest] - least[widest])) {
                    widest = j;
                }
            }
            if (widest < 0) {
                break;
            }
            widths[widest]--;
        }
        return widths;
    }

    private static int[] leastWidths(ReportBlock.Table t, List<List<String>> cells) {
        int[] least = new int[t.columns().size()];
        for (int j = 0; j < least.length; j++) {
            boolean numeric = t.columns().get(j).numeric();
            for (int i = 0; i < cells.size(); i++) {
                String cell = cells.get(i).get(j);
                boolean breaks = i == 0 || !numeric;
                int most = breaks ? Math.min(longestWord(cell), LONGEST_WORD) : longest(stacked(cell));
                least[j] = Math.max(least[j], most);
            }
        }
        return least;
    }

    /** The width of a row: two spaces before each column; those after the last are stripped. */
    private static int sum(int[] widths) {
        return Arrays.stream(widths).sum() + 2 * widths.length;
    }

    private static int longestWord(String text) {
        return longest(Pattern.compile(" ").splitAsStream(text).toList());
    }

    private static int longest(List<String> texts) {
        return texts.stream().mapToInt(TextReport::length).max().orElse(0);
    }

    /** A number in both systems of units, one above the other. */
    private static List<String> stacked(String cell) {
        int at = cell.indexOf(" (");
        return at < 0 ? List.of(cell) : List.of(cell.substring(0, at), cell.substring(at + 1));
    }

    private void rows(ReportBlock.Table t, List<String> cells, int[] widths) {
        List<List<String>> wrapped = new ArrayList<>();
        int lines = 0;
        for (int j = 0; j < widths.length; j++) {
            String cell = cells.get(j);
            boolean stack =
                    t.columns().get(j).numeric() && length(cell) > widths[j] && longest(stacked(cell)) <= widths[j];
            List<String> w = stack ? stacked(cell) : LineBreaks.at(widths[j]).lines(cell);
            wrapped.add(w);
            lines = Math.max(lines, w.size());
        }
        for (int k = 0; k < lines; k++) {
            StringBuilder b = new StringBuilder("  ");
            for (int j = 0; j < widths.length; j++) {
                String cell = k < wrapped.get(j).size() ? wrapped.get(j).get(k) : "";
                b.append(pad(cell, widths[j], t.columns().get(j).numeric())).append("  ");
            }
            line(b.toString());
        }
    }

    private void calculation(List<CalculationStep> steps) {
        String section = "";
        for (CalculationStep s : steps) {
            if (!s.section().equals(section)) {
                section = s.section();
                line("");
                line("  " + InertText.plain(section));
            }
            wrap("    " + s.symbol() + ": " + InertText.plain(s.what()) + " [" + s.source() + "]", "      ");
            if (!s.formula().isEmpty()) {
                chain("      = ", s.formula());
                chain("      = ", s.numbers());
            }
            line("      = " + s.printed() + (s.unit().equals("-") ? "" : " " + s.unit()));
        }
    }

    private void chain(String head, String formula) {
        List<String> lines = LineBreaks.at(WIDTH - head.length()).lines(formula);
        for (int i = 0; i < lines.size(); i++) {
            line((i == 0 ? head : " ".repeat(head.length())) + lines.get(i));
        }
    }
}
