package org.lifeline.internal.numeric;

/**
 * How a quantity goes on beyond a sample, away from the samples that it is foreseen by: along the line through two of them, or, where
 * it rises and the steeper the farther, along a parabola. Its curvature is that of three samples or, where it grows, what it will
 * be at the far end of the interval by the growth over four. Filled in again and again, so that a search allocates nothing; not
 * thread-safe.
 */
public final class Extrapolation {
    /** Samples of a quantity in the order of their places. */
    public interface Samples {
        int count();

        double place(int i);

        /** The quantity there; NaN if unknown. */
        double value(int i);
    }

    private double value;
    private double slope;
    private double curvature;

    /** Value at the sample. */
    double value() {
        return value;
    }

    /** Rise per length just beyond it; NaN if unknown. */
    double slope() {
        return slope;
    }

    /** Growth of the slope per length, not negative. */
    double curvature() {
        return curvature;
    }

    private void set(double newValue, double newSlope, double newCurvature) {
        value = newValue;
        slope = newSlope;
        curvature = newCurvature;
    }

    /**
     * Beyond a sample, into the interval at its other side.
     *
     * @param samples the samples
     * @param i number of the sample
     * @param side side of the samples by which it is foreseen: −1 before it, 1 behind it
     */
    public void beyond(Samples samples, int i, int side) {
        double here = samples.value(i);
        double width = length(samples, i, -side);
        double last = length(samples, i, side);
        double slope1 = rise(samples, i, side) / last;
        double before = length(samples, i + side, side);
        double slope2 = rise(samples, i + side, side) / before;
        if (!(slope1 > 0 && slope1 > slope2)) {
            set(here, slope1, 0);
        } else {
            double first = length(samples, i + 2 * side, side);
            double slope3 = rise(samples, i + 2 * side, side) / first;
            double bent = 2 * (slope1 - slope2) / (last + before);
            double earlier = 2 * (slope2 - slope3) / (before + first);
            // Each curvature is that at the mean of its three samples.
            double growth = 3 * (bent - earlier) / (last + before + first);
            double behind = (2 * last + before) / 3;
            double growing = growth > 0 ? growth : 0;
            set(here, slope1 + 0.5 * (bent + growing * behind) * last, bent + growing * (behind + width));
        }
        reach(samples, i - side, width);
    }

    /**
     * Takes in what it fails to foresee: where it rises and the sample at the other end of the interval is higher still, it may
     * pass above that one by as much.
     */
    private void reach(Samples samples, int other, double width) {
        double miss = samples.value(other) - at(width);
        if (miss > 0 && slope > 0) {
            curvature += 4 * miss / (width * width);
        }
    }

    /** Distance of a sample from the one beside it [unit of the places]; NaN where there is none. */
    private static double length(Samples samples, int i, int side) {
        return has(samples, i) && has(samples, i + side)
                ? Math.abs(samples.place(i) - samples.place(i + side))
                : Double.NaN;
    }

    private static double rise(Samples samples, int i, int side) {
        return has(samples, i) && has(samples, i + side) ? samples.value(i) - samples.value(i + side) : Double.NaN;
    }

    private static boolean has(Samples samples, int i) {
        return i >= 0 && i < samples.count();
    }

    public boolean isUnknown() {
        return Double.isNaN(slope);
    }

    /** The value foreseen at a distance [unit of the places]. */
    public double at(double x) {
        return value + x * (slope + 0.5 * curvature * x);
    }

    /** Distance at which this meets what is foreseen from the other end of an interval; NaN if they do not meet within it [unit of the places]. */
    public double meeting(Extrapolation other, double width) {
        double below = other.at(width) - value;
        double closing = slope + other.slope + other.curvature * width;
        double root = closing * closing + 2 * (curvature - other.curvature) * below;
        double x = 2 * below / (closing + Math.sqrt(root));
        return slope + other.slope > 0 && x > 0 && x < width ? x : Double.NaN;
    }
}
