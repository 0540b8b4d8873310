package org.lifeline.report.chart;

/**
 * A straight line across a chart, with its label: a limit, a place, a time.
 *
 * <p>Immutable and thread-safe.
 *
 * @param label what it marks
 * @param value where it is, in SI [unit of the axis]
 * @param vertical true for a place on the horizontal axis, false for a level on the vertical one
 * @since 1.0.0
 */
public record ReferenceLine(String label, double value, boolean vertical) {

    /**
     * A level.
     *
     * @param label what it marks
     * @param value its height in SI [unit of the axis]
     * @return a horizontal line
     */
    public static ReferenceLine level(String label, double value) {
        return new ReferenceLine(label, value, false);
    }

    /**
     * A place or a time.
     *
     * @param label what it marks
     * @param value where it is in SI [unit of the axis]
     * @return a vertical line
     */
    public static ReferenceLine at(String label, double value) {
        return new ReferenceLine(label, value, true);
    }
}
