package org.lifeline.report;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.lifeline.analysis.explain.CalculationStep;
import org.lifeline.base.InertText;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportDocument;
import org.lifeline.report.document.ReportSection;

/**
 * Writes a report as one HTML file that needs nothing else: no script, no network, no font of its own. Readable on a phone,
 * in light and dark, and printable on A4 and Letter. A content security policy forbids everything but its own style.
 *
 * @since 1.0.0
 */
public final class HtmlReport {
    private static final int LONGEST_NUMBER = 40;
    private static final Pattern VIEW_BOX = Pattern.compile("viewBox=\"0 0 ([0-9.]+) ");

    /** Most rows of a table that is not parted on paper. */
    private static final int FEW_ROWS = 9;

    /** Most letters in the cells of a table that is not parted on paper. */
    private static final int FEW_LETTERS = 1200;

    /** Letters of a table, 1.3 mm each where words and numbers mix, that find room on 188 mm of paper, with some to spare. */
    private static final int PAPER = 132;

    /** The space beside a cell, in letters. */
    private static final double PADDING = 1.5;

    /** Letters at which words in a cell may well be broken into lines. */
    private static final int WORDS = 24;

    private static final Pattern INDEX = Pattern.compile("_([0-9A-Za-z.]+)");
    private final StringBuilder out = new StringBuilder();
    private int pictures;

    private HtmlReport() {}

    /**
     * Writes a report.
     *
     * @param document the report
     * @return a complete HTML document, to be stored as UTF-8
     */
    public static String write(ReportDocument document) {
        HtmlReport report = new HtmlReport();
        report.document(document);
        return report.out.toString();
    }

    private void document(ReportDocument d) {
        String title = InertText.markup(d.title());
        out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n")
                .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n")
                .append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; ")
                .append("style-src 'unsafe-inline'; img-src data:\"/>\n")
                .append("<meta name=\"referrer\" content=\"no-referrer\"/>\n")
                .append("<link rel=\"icon\" href=\"data:,\"/>\n<title>")
                .append(title)
                .append("</title>\n<style>\n")
                .append(HtmlStyle.of(d.marks()))
                .append("</style>\n</head>\n<body>\n<header>\n<h1><bdi>")
                .append(title)
                .append("</bdi></h1>\n<ul class=\"identity\">\n");
        d.identity().forEach(i -> out.append("<li>").append(InertText.markup(i)).append("</li>\n"));
        out.append("</ul>\n</header>\n");
        contents(d);
        out.append("<main>\n");
        int number = 0;
        for (ReportSection s : d.sections()) {
            String tag = s.level() == 1 ? "h2" : "h3";
            number++;
            out.append(s.level() == 1 ? "<section class=\"main\" aria-labelledby=\"s" : "<section aria-labelledby=\"s")
                    .append(number)
                    .append("\">\n<")
                    .append(tag)
                    .append(" id=\"s")
                    .append(number)
                    .append("\">")
                    .append(InertText.markup(s.title()))
                    .append("</")
                    .append(tag)
                    .append(">\n");
            s.blocks().forEach(this::block);
            out.append("</section>\n");
        }
        out.append("</main>\n</body>\n</html>\n");
    }

    /** Links to the main sections. */
    private void contents(ReportDocument d) {
        out.append("<nav aria-label=\"Contents\">\n<ul>\n");
        int number = 0;
        for (ReportSection s : d.sections()) {
            number++;
            if (s.level() == 1) {
                out.append("<li><a href=\"#s")
                        .append(number)
                        .append("\">")
                        .append(InertText.markup(s.title()))
                        .append("</a></li>\n");
            }
        }
        out.append("</ul>\n</nav>\n");
    }

    private void block(ReportBlock b) {
        if (b instanceof ReportBlock.Paragraph p) {
            out.append("<p>").append(InertText.markup(p.text())).append("</p>\n");
        } else if (b instanceof ReportBlock.Items items) {
            out.append("<ul>\n");
            items.items()
                    .forEach(i -> out.append("<li>").append(InertText.markup(i)).append("</li>\n"));
            out.append("</ul>\n");
        } else if (b instanceof ReportBlock.Table t) {
            table(t);
        } else if (b instanceof ReportBlock.Calculation c) {
            calculation(c.steps());
        } else if (b instanceof ReportBlock.Figure f) {
            figure(f.picture());
        }
    }

    private void open(String css, String caption) {
        out.append("<div class=\"")
                .append(css)
                .append("\" role=\"region\" tabindex=\"0\" aria-label=\"")
                .append(InertText.markup(caption))
                .append("\">\n");
    }

    private static boolean isShort(ReportBlock.Table t) {
        int letters = t.rows().stream()
                .flatMap(r -> r.cells().stream())
                .mapToInt(String::length)
                .sum();
        return t.rows().size() <= FEW_ROWS && letters <= FEW_LETTERS;
    }

    /** Whether the numbers of a table find room on paper without a break between the two systems of units. */
    private static boolean isNarrow(ReportBlock.Table t) {
        double letters = 0;
        for (int j = 0; j < t.columns().size(); j++) {
            boolean numeric = t.columns().get(j).numeric();
            int widest = 0;
            for (ReportBlock.Row r : t.rows()) {
                widest = Math.max(widest, r.cells().get(j).length());
            }
            letters += PADDING + (numeric ? widest : Math.min(widest, WORDS));
        }
        return letters <= PAPER;
    }

    private void table(ReportBlock.Table t) {
        open(isShort(t) ? "wide short" : "wide", t.caption());
        out.append(isNarrow(t) ? "<table class=\"narrow\">" : "<table>")
                .append("\n<caption>")
                .append(InertText.markup(t.caption()))
                .append("</caption>\n<thead>\n<tr>");
        for (ReportBlock.Column c : t.columns()) {
            out.append("<th scope=\"col\"")
                    .append(c.numeric() ? " class=\"n\"" : "")
                    .append('>')
                    .append(InertText.markup(c.heading()))
                    .append("</th>");
        }
        out.append("</tr>\n</thead>\n<tbody>\n");
        for (ReportBlock.Row r : t.rows()) {
            out.append(r.total() ? "<tr class=\"total\">" : "<tr>");
            for (int j = 0; j < r.cells().size(); j++) {
                boolean numeric = t.columns().get(j).numeric();
                String text = InertText.markup(r.cells().get(j));
                String cell = "<bdi>" + (numeric ? number(text) : text) + "</bdi>";
                String css = numeric ? " class=\"n\"" : "";
                out.append(
                        j == 0 ? "<th scope=\"row\"" + css + ">" + cell + "</th>" : "<td" + css + ">" + cell + "</td>");
            }
            out.append("</tr>\n");
        }
        out.append("</tbody>\n</table>\n</div>\n");
    }

    /** A number in both systems of units breaks between them only; other text in a column of numbers as it must. */
    private static String number(String markup) {
        if (markup.length() > LONGEST_NUMBER) {
            return markup;
        }
        int at = markup.indexOf(" (");
        return at < 0
                ? "<span>" + markup + "</span>"
                : "<span>" + markup.substring(0, at) + "</span> <span>" + markup.substring(at + 1) + "</span>";
    }

    private static String formula(String text) {
        return INDEX.matcher(InertText.escape(text)).replaceAll("<sub>$1</sub>");
    }

    private void calculation(List<CalculationStep> steps) {
        out.append("<table class=\"calc\">\n<caption>Calculation, line by line</caption>\n")
                .append("<colgroup><col class=\"c1\"/><col class=\"c2\"/><col class=\"c3\"/><col class=\"c4\"/>")
                .append("</colgroup>\n<thead>\n<tr>");
        for (String head : List.of("Symbol", "What [source]", "Formula, and with numbers", "Result")) {
            out.append("<th scope=\"col\">").append(head).append("</th>");
        }
        out.append("</tr>\n</thead>\n");
        String section = "";
        for (CalculationStep s : steps) {
            if (!s.section().equals(section)) {
                out.append(section.isEmpty() ? "" : "</tbody>\n").append("<tbody>\n");
                section = s.section();
                out.append("<tr class=\"group\"><th scope=\"rowgroup\" colspan=\"4\">")
                        .append(InertText.markup(section))
                        .append("</th></tr>\n");
            }
            out.append("<tr><th scope=\"row\">")
                    .append(formula(s.symbol()))
                    .append(s.formula().isEmpty() ? "</th><td colspan=\"2\">" : "</th><td>")
                    .append(formula(InertText.plain(s.what())))
                    .append(" <small>[")
                    .append(InertText.markup(s.source()))
                    .append("]</small>");
            if (!s.formula().isEmpty()) {
                out.append("</td><td class=\"f\">= ")
                        .append(formula(s.formula()))
                        .append(" <span>= ")
                        .append(InertText.escape(s.numbers()))
                        .append("</span>");
            }
            out.append("</td><td class=\"r\">")
                    .append(InertText.escape(s.printed()))
                    .append(s.unit().equals("-") ? "" : " " + InertText.escape(s.unit()))
                    .append("</td></tr>\n");
        }
        out.append(section.isEmpty() ? "" : "</tbody>\n").append("</table>\n");
    }

    /** Width of a drawing in its own units, which gives its size on paper. */
    private static String width(String svg) {
        Matcher m = VIEW_BOX.matcher(svg);
        return m.find() ? " style=\"--units:" + m.group(1) + '"' : "";
    }

    private void figure(Picture p) {
        pictures++;
        // Hatches are found by id; a number in front keeps those of two pictures on one page apart.
        String svg = p.svg().replace(" id=\"", " id=\"p" + pictures + "-").replace("url(#", "url(#p" + pictures + "-");
        out.append("<figure").append(width(svg)).append(">\n");
        open("wide", p.title());
        out.append(svg)
                .append("</div>\n<figcaption>")
                .append(InertText.markup(p.title()))
                .append(". ")
                .append(InertText.markup(p.description()))
                .append("</figcaption>\n");
        if (!p.data().rows().isEmpty()) {
            out.append("<details>\n<summary>Numbers of this picture</summary>\n");
            table(p.data());
            out.append("</details>\n");
        }
        out.append("</figure>\n");
    }
}
