package org.lifeline.internal.numeric;

/**
 * A bracket about a root that its user closes step by step: {@link #next} says where to look, {@link #add} takes what was
 * found there. For functions whose evaluation changes something or may fail, so that a solver cannot call them; where it
 * can, {@link Roots} serves.
 *
 * <p>By the inverse cubic where both ends have a slope, else by the inverse parabola through three points, else by the
 * parabola with the slope at the low end, else by the chord. A step that did not bring the nearest value down to
 * {@value #ENOUGH} of what it was is followed by half the bracket, so that it closes as by bisection at least every second
 * step. Not thread-safe.
 */
public final class RootBracket {
    /** Share of the nearest value that a step must not leave over, or the next one halves the bracket [-]. */
    private static final double ENOUGH = 0.3;

    /** Share of the bracket by which a step stays away from its ends, so that rounding keeps it inside [-]. */
    private static final double INSIDE = 1e-15;

    /** Slope over that of the chord up to which the inverse cubic is monotone (Fritsch and Carlson, 1980) [-]. */
    private static final double MONOTONE = 3;

    private Sample low = new Sample(0, 0, Double.NaN);
    private Sample high = low;
    private Sample last = low;
    private boolean three;
    private double nearest;
    private int steps;

    /**
     * What is known at a place.
     *
     * @param at the place [its unit]
     * @param value value of the function [its unit]
     * @param slope its derivative [unit of the value by that of the place]; NaN if unknown
     */
    public record Sample(double at, double value, double slope) {}

    /**
     * Begins with two places on both sides of the root.
     *
     * @param atLow the lower place
     * @param atHigh the higher place
     */
    public void begin(Sample atLow, Sample atHigh) {
        low = atLow;
        high = atHigh;
        three = false;
        steps = 0;
        nearest = Double.POSITIVE_INFINITY;
    }

    /**
     * Takes in a place between the ends, as the new end on its side.
     *
     * @param sample what was found there
     * @param beyond true if it lies beyond the root, on the side of the high end
     */
    public void add(Sample sample, boolean beyond) {
        last = beyond ? high : low;
        three = true;
        if (beyond) {
            high = sample;
        } else {
            low = sample;
        }
    }

    /**
     * The lower end.
     *
     * @return the place and what is known there
     */
    public Sample low() {
        return low;
    }

    /**
     * The higher end.
     *
     * @return the place and what is known there
     */
    public Sample high() {
        return high;
    }

    /**
     * Distance of the ends.
     *
     * @return width [unit of the place]
     */
    public double width() {
        return high.at - low.at;
    }

    /**
     * The next place to look at.
     *
     * @return a place between the ends
     */
    public double next() {
        double now = Math.min(Math.abs(low.value), Math.abs(high.value));
        steps++;
        if (steps > 2 && !(now <= ENOUGH * nearest)) {
            nearest = Double.POSITIVE_INFINITY;
            return middle();
        }
        nearest = now;
        double share = share();
        double to = low.at + Math.min(Math.max(share, INSIDE), 1 - INSIDE) * width();
        return to > low.at && to < high.at ? to : middle();
    }

    private double middle() {
        return 0.5 * (low.at + high.at);
    }

    /** Where the interpolation is zero, as a share of the bracket from its low end. */
    private double share() {
        double fall = high.value - low.value;
        double chord = -low.value / fall;
        double perLow = fall / (low.slope * width());
        double perHigh = fall / (high.slope * width());
        double share = Double.NaN;
        if (perHigh > 0 && perHigh < MONOTONE) {
            share = perLow > 0 && perLow < MONOTONE
                    ? chord * (perLow + chord * (3 - 2 * perLow - perHigh + chord * (perLow + perHigh - 2)))
                    : chord * (2 - perHigh + chord * (perHigh - 1));
        } else if (three) {
            share = inverseParabola();
        } else if (!Double.isNaN(low.slope)) {
            // low + b t + a t² = 0, written for a small a.
            double b = low.slope * width();
            double a = fall - b;
            share = -2 * low.value / (b + Math.signum(fall) * Math.sqrt(b * b - 4 * a * low.value));
        }
        return share > 0 && share < 1 ? share : chord;
    }

    /** The place over the value through both ends and the place that left the bracket last. */
    private double inverseParabola() {
        double a = low.value;
        double b = high.value;
        double c = last.value;
        double at = high.at * a * c / ((b - a) * (b - c)) + last.at * a * b / ((c - a) * (c - b));
        return (low.at * b * c / ((a - b) * (a - c)) + at - low.at) / width();
    }
}
