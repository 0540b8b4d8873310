package org.lifeline.report.chart;

/**
 * A line of a chart.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class ChartSeries {
    private final String name;
    private final double[] x;
    private final double[] y;
    private final Look look;

    /** How a series is drawn. */
    private enum Look {
        LINE,
        SHADED,
        DOTS
    }

    private ChartSeries(String name, double[] x, double[] y, Look look) {
        this.name = name;
        this.x = x;
        this.y = y;
        this.look = look;
    }

    /**
     * A line through points; a NaN breaks it.
     *
     * @param name the name written at its end
     * @param x abscissas in SI [unit of the axis], not falling
     * @param y ordinates in SI [unit of the axis], as many
     * @return the series
     * @throws IllegalArgumentException if the two differ in length
     */
    public static ChartSeries of(String name, double[] x, double[] y) {
        if (x.length != y.length) {
            throw new IllegalArgumentException(
                    "series " + name + ": " + x.length + " abscissas, " + y.length + " ordinates");
        }
        return new ChartSeries(name, x.clone(), y.clone(), Look.LINE);
    }

    /**
     * The same line with the area between it and zero hatched: where that area is a quantity, such as work.
     *
     * @return the new series
     */
    public ChartSeries shaded() {
        return new ChartSeries(name, x, y, Look.SHADED);
    }

    /**
     * The same points, each by itself.
     *
     * @return the new series
     */
    public ChartSeries dots() {
        return new ChartSeries(name, x, y, Look.DOTS);
    }

    /**
     * Tells whether points stand by themselves.
     *
     * @return true if no line joins them
     */
    public boolean isDots() {
        return look == Look.DOTS;
    }

    /**
     * Tells whether the area below the line is hatched.
     *
     * @return true if it is
     */
    public boolean isShaded() {
        return look == Look.SHADED;
    }

    /**
     * The name.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Number of points.
     *
     * @return the number
     */
    public int size() {
        return x.length;
    }

    /**
     * Abscissa of a point.
     *
     * @param i number of the point, from 0
     * @return abscissa in SI [unit of the axis]
     */
    public double x(int i) {
        return x[i];
    }

    /**
     * Ordinate of a point.
     *
     * @param i number of the point, from 0
     * @return ordinate in SI [unit of the axis]; NaN where the line is broken
     */
    public double y(int i) {
        return y[i];
    }
}
