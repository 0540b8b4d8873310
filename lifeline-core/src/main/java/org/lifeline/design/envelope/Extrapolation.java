package org.lifeline.design.envelope;

/**
 * How a quantity goes on beyond a sample, away from the samples that it is foreseen by: along the line through two of them, or, where
 * it rises and the steeper the farther, along the parabola through three.
 *
 * @param value value at the sample
 * @param slope rise per length just beyond it; NaN if unknown
 * @param curvature growth of the slope per length, not negative
 */
record Extrapolation(double value, double slope, double curvature) {
    /**
     * From one sample to the next.
     *
     * @param length distance [m]
     * @param rise growth of the quantity
     */
    record Step(double length, double rise) {
        double slope() {
            return rise / length;
        }
    }

    /** Beyond a sample that has no other beside it. */
    static Extrapolation unknown(double value) {
        return new Extrapolation(value, Double.NaN, 0);
    }

    /**
     * Beyond a sample.
     *
     * @param last the step that leads to it
     * @param before the step before that one; of no length where there is none
     * @param first the step before that one, likewise
     * @param value value at the sample
     * @param width how far it is needed [m]
     */
    static Extrapolation through(Step last, Step before, Step first, double value, double width) {
        double slope = last.slope();
        if (!(slope > 0 && slope > before.slope())) {
            return new Extrapolation(value, slope, 0);
        }
        double curvature = 2 * (slope - before.slope()) / (last.length + before.length);
        double earlier = 2 * (before.slope() - first.slope()) / (before.length + first.length);
        // Each curvature is that at the mean of its three samples.
        double growth = 3 * (curvature - earlier) / (last.length + before.length + first.length);
        double behind = (2 * last.length + before.length) / 3;
        double here = curvature + (growth > 0 ? growth * behind : 0);
        double there = curvature + (growth > 0 ? growth * (behind + width) : 0);
        return new Extrapolation(value, slope + 0.5 * here * last.length, there);
    }

    /**
     * The same with what it fails to foresee: where it rises and the sample at the other end of the interval is higher still, it
     * may pass above that one by as much.
     *
     * @param other value of that sample
     * @param width length of the interval [m]
     */
    Extrapolation reaching(double other, double width) {
        double miss = other - at(width);
        return miss > 0 && slope > 0 ? new Extrapolation(value, slope, curvature + 4 * miss / (width * width)) : this;
    }

    boolean isUnknown() {
        return Double.isNaN(slope);
    }

    /** The value foreseen at a distance [m]. */
    double at(double x) {
        return value + x * (slope + 0.5 * curvature * x);
    }

    /** Distance at which this meets what is foreseen from the other end of an interval; NaN if they do not meet within it [m]. */
    double meeting(Extrapolation other, double width) {
        double below = other.at(width) - value;
        double closing = slope + other.slope + other.curvature * width;
        double root = closing * closing + 2 * (curvature - other.curvature) * below;
        double x = 2 * below / (closing + Math.sqrt(root));
        return slope + other.slope > 0 && x > 0 && x < width ? x : Double.NaN;
    }
}
