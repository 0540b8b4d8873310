package org.lifeline.internal.path;

/**
 * Forces about an event on a step of a {@link LoadPath}: a value that is below zero before it and above behind it, and
 * the point that left the bracket last. Not thread-safe.
 */
final class EventBracket {
    /** Share of the bracket by which a new force stays away from its ends. */
    private static final double INSIDE = 1e-9;

    /** Number of steps after which every second one halves the bracket. */
    private static final int PATIENCE = 6;

    private double low;
    private double lowValue;
    private double high;
    private double highValue;
    private double third;
    private double thirdValue;
    private boolean three;

    /** Begins with two forces [N] and the values there. */
    void start(double from, double to, double fromValue, double toValue) {
        low = from;
        high = to;
        lowValue = fromValue;
        highValue = toValue;
        three = false;
    }

    /** Takes in a force between the two, as the new end on its side. */
    void add(double force, double value, boolean beyond) {
        three = true;
        if (beyond) {
            third = high;
            thirdValue = highValue;
            high = force;
            highValue = value;
        } else {
            third = low;
            thirdValue = lowValue;
            low = force;
            lowValue = value;
        }
    }

    double low() {
        return low;
    }

    double width() {
        return high - low;
    }

    /** Root of the parabola through both ends with a slope at the lower one [N]. */
    double parabola(double slope) {
        double b = slope * (high - low);
        double a = highValue - lowValue - b;
        // lowValue + b t + a t² = 0, written for a small a.
        double t = -2 * lowValue / (b + Math.sqrt(b * b - 4 * a * lowValue));
        return inside(low + t * (high - low));
    }

    /** The next force to look at [N]. */
    double next(int step) {
        if (step >= PATIENCE && step % 2 == 0) {
            return 0.5 * (low + high);
        }
        return inside(three ? interpolation() : Double.NaN);
    }

    /** Root of the parabola of the force over the value, through all three points. */
    private double interpolation() {
        double a = lowValue;
        double b = highValue;
        double c = thirdValue;
        return low * b * c / ((a - b) * (a - c))
                + high * a * c / ((b - a) * (b - c))
                + third * a * b / ((c - a) * (c - b));
    }

    /** A force kept away from the ends; where it is none between them, that of the chord. */
    private double inside(double force) {
        double chord = low - lowValue * (high - low) / (highValue - lowValue);
        double margin = INSIDE * (high - low);
        double to = force > low && force < high ? force : chord;
        return Math.min(Math.max(to, low + margin), high - margin);
    }
}
