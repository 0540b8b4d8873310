package org.lifeline.report;

import java.util.List;
import java.util.stream.Collectors;
import org.lifeline.analysis.explain.CalculationStep;
import org.lifeline.base.InertText;
import org.lifeline.report.chart.ChartAxis;
import org.lifeline.report.chart.ChartSeries;
import org.lifeline.report.document.ReportBlock;

/**
 * Writes tables and calculations as comma-separated values (RFC 4180, UTF-8), harmless in a spreadsheet.
 *
 * @since 1.0.0
 */
public final class CsvReport {
    private static final String END = "\r\n";

    private CsvReport() {}

    /**
     * Writes a table as it stands in the report.
     *
     * @param table the table
     * @return a line of headings, then a line for each row
     */
    public static String writeTable(ReportBlock.Table table) {
        StringBuilder b = new StringBuilder();
        b.append(
                fields(table.columns().stream().map(ReportBlock.Column::heading).toList()));
        for (ReportBlock.Row row : table.rows()) {
            b.append(fields(row.cells()));
        }
        return b.toString();
    }

    private static String fields(List<String> cells) {
        return cells.stream().map(InertText::csv).collect(Collectors.joining(",")) + END;
    }

    /**
     * Writes a calculation with unrounded numbers.
     *
     * @param steps the lines
     * @return a line of headings, then a line for each step
     */
    public static String writeCalculation(List<CalculationStep> steps) {
        StringBuilder b = new StringBuilder("section,symbol,what,formula,numbers,value,unit,source").append(END);
        for (CalculationStep s : steps) {
            b.append(String.join(
                            ",",
                            InertText.csv(s.section()),
                            InertText.csv(s.symbol()),
                            InertText.csv(s.what()),
                            InertText.csv(s.formula()),
                            InertText.csv(s.numbers()),
                            InertText.csvNumber(s.value()),
                            InertText.csv(s.unit()),
                            InertText.csv(s.source())))
                    .append(END);
        }
        return b.toString();
    }

    /**
     * Writes the lines of a chart, unrounded: the abscissa of each point, then the ordinate in the column of its line.
     *
     * @param horizontal what the abscissa is
     * @param series the lines
     * @return a line of headings, then a line for each point of each line
     */
    public static String writeSeries(ChartAxis horizontal, List<ChartSeries> series) {
        StringBuilder b = new StringBuilder("series,")
                .append(InertText.csv(horizontal.label()))
                .append(",value")
                .append(END);
        for (ChartSeries s : series) {
            for (int i = 0; i < s.size(); i++) {
                b.append(InertText.csv(s.name()))
                        .append(',')
                        .append(InertText.csvNumber(s.x(i)))
                        .append(',')
                        .append(InertText.csvNumber(s.y(i)))
                        .append(END);
            }
        }
        return b.toString();
    }
}
