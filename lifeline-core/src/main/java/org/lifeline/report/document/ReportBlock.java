package org.lifeline.report.document;

import java.util.List;
import org.lifeline.analysis.explain.CalculationStep;

/**
 * A part of a report section. All strings are plain text; writers make them inert.
 *
 * @since 1.0.0
 */
public sealed interface ReportBlock {

    /**
     * Running text.
     *
     * @param text the text
     * @since 1.0.0
     */
    record Paragraph(String text) implements ReportBlock {}

    /**
     * A list of remarks.
     *
     * @param items the remarks
     * @since 1.0.0
     */
    record Items(List<String> items) implements ReportBlock {
        /**
         * Copies the list.
         *
         * @param items the remarks
         */
        public Items {
            items = List.copyOf(items);
        }
    }

    /**
     * A table. The first cell of a row names the row.
     *
     * @param caption what the table shows
     * @param columns the columns
     * @param rows the rows
     * @since 1.0.0
     */
    record Table(String caption, List<Column> columns, List<Row> rows) implements ReportBlock {
        /**
         * Copies the lists.
         *
         * @param caption what the table shows
         * @param columns the columns
         * @param rows the rows
         * @throws IllegalArgumentException if a row has not as many cells as there are columns
         */
        public Table {
            columns = List.copyOf(columns);
            rows = List.copyOf(rows);
            for (Row row : rows) {
                if (row.cells().size() != columns.size()) {
                    throw new IllegalArgumentException("table " + caption + ": "
                            + row.cells().size() + " cells in " + columns.size() + " columns");
                }
            }
        }
    }

    /**
     * A column.
     *
     * @param heading its heading, with the unit where the cells have none
     * @param numeric true if the cells are numbers, to be aligned at the right
     * @since 1.0.0
     */
    record Column(String heading, boolean numeric) {}

    /**
     * A row.
     *
     * @param cells the cells
     * @param total true for a row that is a sum or a result of those above it
     * @since 1.0.0
     */
    record Row(List<String> cells, boolean total) {
        /**
         * Copies the list.
         *
         * @param cells the cells
         * @param total true for a row that is a sum or a result of those above it
         */
        public Row {
            cells = List.copyOf(cells);
        }
    }

    /**
     * A calculation, line by line.
     *
     * @param steps the lines
     * @since 1.0.0
     */
    record Calculation(List<CalculationStep> steps) implements ReportBlock {
        /**
         * Copies the list.
         *
         * @param steps the lines
         */
        public Calculation {
            steps = List.copyOf(steps);
        }
    }

    /**
     * A picture.
     *
     * @param picture the picture
     * @since 1.0.0
     */
    record Figure(Picture picture) implements ReportBlock {}
}
