package org.lifeline.report;

import java.util.List;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;

/** A section as its reader has it: tables by their captions, words, and numbers in the units that stand beside them. */
public final class Printed {
    private Printed() {}

    public static ReportBlock.Table table(ReportSection section, String caption) {
        return tables(section).stream()
                .filter(t -> t.caption().startsWith(caption))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no table " + caption + " in " + section.title()));
    }

    public static List<ReportBlock.Table> tables(ReportSection section) {
        return section.blocks().stream()
                .filter(ReportBlock.Table.class::isInstance)
                .map(ReportBlock.Table.class::cast)
                .toList();
    }

    /** The row of a table whose first cell starts so. */
    public static List<String> row(ReportBlock.Table table, String start) {
        return table.rows().stream()
                .map(ReportBlock.Row::cells)
                .filter(c -> c.get(0).startsWith(start))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no row " + start + " in " + table.caption()));
    }

    public static boolean hasRow(ReportBlock.Table table, String start) {
        return table.rows().stream().anyMatch(r -> r.cells().get(0).startsWith(start));
    }

    /** Paragraphs and items, one a line. */
    public static String words(ReportSection section) {
        StringBuilder b = new StringBuilder();
        for (ReportBlock block : section.blocks()) {
            if (block instanceof ReportBlock.Paragraph p) {
                b.append(p.text()).append('\n');
            } else if (block instanceof ReportBlock.Items items) {
                items.items().forEach(i -> b.append(i).append('\n'));
            }
        }
        return b.toString();
    }

    /** The number at the start of a cell, in its own unit. */
    public static double number(String cell) {
        return Double.parseDouble(cell.split("[ °]", 2)[0].replace('−', '-'));
    }
}
