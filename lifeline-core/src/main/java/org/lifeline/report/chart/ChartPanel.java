package org.lifeline.report.chart;

import java.util.List;

/**
 * One field of a chart: a vertical axis, lines, marks. Fields stand above each other on one horizontal axis.
 *
 * <p>Immutable and thread-safe.
 *
 * @param axis the vertical axis
 * @param series the lines, at most six
 * @param marks straight lines with labels
 * @since 1.0.0
 */
public record ChartPanel(ChartAxis axis, List<ChartSeries> series, List<ReferenceLine> marks) {
    private static final int MOST_SERIES = 6;

    /**
     * Checks and copies the lists.
     *
     * @param axis the vertical axis
     * @param series the lines, at most six
     * @param marks straight lines with labels
     * @throws IllegalArgumentException if there are more lines than can be told apart
     */
    public ChartPanel {
        if (series.size() > MOST_SERIES) {
            throw new IllegalArgumentException(
                    series.size() + " lines in one field; more than " + MOST_SERIES + " cannot be told apart");
        }
        series = List.copyOf(series);
        marks = List.copyOf(marks);
    }

    /**
     * A field without marks.
     *
     * @param axis the vertical axis
     * @param series the lines
     * @return the field
     */
    public static ChartPanel of(ChartAxis axis, ChartSeries... series) {
        return new ChartPanel(axis, List.of(series), List.of());
    }

    /**
     * The same field with a mark more.
     *
     * @param mark the mark
     * @return the new field
     */
    public ChartPanel with(ReferenceLine mark) {
        List<ReferenceLine> all = new java.util.ArrayList<>(marks);
        all.add(mark);
        return new ChartPanel(axis, series, all);
    }
}
