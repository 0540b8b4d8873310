package org.lifeline.examples.print;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.lifeline.base.InertText;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.file.DesignFile;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;

/** What the design file states, in the units in which it states it: every value of the file, none converted. */
final class GivenSection {
    /** A path: the part it belongs to, the rest of its keys, and where it stands in arrays at the end. */
    private static final Pattern PATH =
            Pattern.compile("(?<part>[A-Za-z]+(?:\\[[0-9]+])?)(?<keys>(?:\\.[A-Za-z]+(?:\\[[0-9]+](?=\\.))?)*)"
                    + "(?<index>(?:\\[[0-9]+])*)");

    /** Characters of a cell beyond which a new row begins; writers of reports cut what is far longer. */
    private static final int LONGEST_CELL = 600;

    private GivenSection() {}

    static ReportSection of(DesignFile file) {
        Map<String, Map<String, List<String>>> parts = new LinkedHashMap<>();
        file.written().forEach((path, text) -> {
            Matcher m = PATH.matcher(path);
            if (!m.matches() || path.equals("title") || path.equals("format")) {
                return;
            }
            String keys = m.group("keys").isEmpty() ? "" : m.group("keys").substring(1);
            parts.computeIfAbsent(m.group("part"), p -> new LinkedHashMap<>())
                    .computeIfAbsent(keys, k -> new ArrayList<>())
                    .add(pairMark(m.group("index")) + value(keys, text));
        });
        List<ReportBlock.Row> rows = new ArrayList<>();
        parts.forEach((part, values) -> {
            Cells cells = new Cells(label(part), rows);
            values.forEach((keys, texts) -> {
                String lead = label(keys);
                for (String each : joined(texts)) {
                    cells.add((lead + " " + each).strip());
                    lead = "";
                }
            });
            cells.end();
        });
        return new ReportSection(
                "What was given (as written in the design file)",
                1,
                List.of(new ReportBlock.Table(
                        "Every value of the design file, none converted",
                        List.of(new ReportBlock.Column("Part", false), new ReportBlock.Column("Given", false)),
                        rows)));
    }

    /** Fills rows of a table until they are long. */
    private static final class Cells {
        private final String part;
        private final List<ReportBlock.Row> rows;
        private final StringBuilder text = new StringBuilder();

        Cells(String part, List<ReportBlock.Row> rows) {
            this.part = part;
            this.rows = rows;
        }

        void add(String words) {
            if (text.length() + words.length() > LONGEST_CELL) {
                end();
            }
            text.append(text.isEmpty() ? "" : "; ").append(words);
        }

        void end() {
            if (!text.isEmpty()) {
                rows.add(new ReportBlock.Row(List.of(part, text.toString()), false));
                text.setLength(0);
            }
        }
    }

    /** A value as it was written; the key of a quantity in words. */
    private static String value(String keys, String text) {
        return keys.equals("demand")
                ? Quantity.of(text).map(Quantity::words).orElse(InertText.name(text))
                : InertText.name(text);
    }

    /** Values that belong in pairs, as the corners of a curve do, are marked by their place in the pair. */
    private static String pairMark(String index) {
        return index.endsWith("][0]") ? "(" : index.endsWith("][1]") ? ")" : "";
    }

    /** Values one after the other, in pieces that are not too long. */
    private static List<String> joined(List<String> texts) {
        List<String> pieces = new ArrayList<>();
        StringBuilder b = new StringBuilder();
        for (String each : texts) {
            if (each.startsWith(")")) {
                b.append(", ").append(each.substring(1)).append(')');
                continue;
            }
            if (b.length() > LONGEST_CELL / 2) {
                pieces.add(b.toString());
                b.setLength(0);
            }
            b.append(b.isEmpty() ? "" : each.startsWith("(") ? " " : ", ").append(each);
        }
        pieces.add(b.toString());
        return pieces;
    }

    /** {@code workers[0]} becomes "workers 1", {@code massPerLength} "mass per length". */
    private static String label(String keys) {
        return keys.replaceAll("([a-z])([A-Z])", "$1 $2")
                .toLowerCase(Locale.ROOT)
                .replace('.', ' ')
                .transform(GivenSection::countFromOne);
    }

    private static String countFromOne(String text) {
        return Pattern.compile("\\[([0-9]+)]").matcher(text).replaceAll(m -> " " + (Integer.parseInt(m.group(1)) + 1));
    }
}
