package org.lifeline.internal.catenary;

import org.lifeline.internal.numeric.Elementary;

/**
 * The parabola of a taut span between two fixed points, in closed form: weight spread over the chord, stretch by the
 * mean tension. Relative errors are of the order of (w run / 2H)²; it is a start for Newton's method.
 *
 * <p>Stretched length of the parabola: c + k/H² with k = w² run⁴/(24 c), c the chord (Irvine, <i>Cable Structures</i>,
 * 1981, ch. 1 and 2, for an inclined parabola of small sag). Immutable and thread-safe.
 *
 * @param compliance 1/EA [1/N]
 * @param w weight per unstretched length [N/m], above zero
 * @param run horizontal distance of the supports [m]
 * @param rise rise from the first to the second support [m]
 */
record TautSpan(double compliance, double w, double run, double rise) {
    private static final int ITERATIONS = 40;

    /** Stretch over slack beyond which the stretch rules. */
    private static final double MUCH = 10;

    private double chord() {
        return Math.sqrt(run * run + rise * rise);
    }

    /** Horizontal tension from the tension at the first support [N]; NaN if there is none. */
    double fromTension(double tension) {
        // T² = H² + (H m − w s/2)² with the slope m of the chord.
        double m = rise / run;
        double half = 0.5 * w * chord() / (1 + compliance * tension);
        double one = 1 + m * m;
        double root = one * tension * tension - half * half;
        return (m * half + Math.sqrt(root)) / one;
    }

    /** Unstretched length at a horizontal tension [m]. */
    double length(double horizontal) {
        double c = chord();
        return (c + sagging(c) / (horizontal * horizontal)) / (1 + compliance * horizontal * c / run);
    }

    /** Horizontal tension from the unstretched length [N]. */
    double fromLength(double length) {
        double c = chord();
        return balance(sagging(c), length - c, length * compliance * c / run);
    }

    /**
     * The horizontal tension at which what the sag takes up is what slack and stretch give: k/H² = slack + b H. Left of
     * the root the difference is below zero and concave, so that Newton's steps from there rise to it and never pass it.
     */
    static double balance(double k, double slack, double b) {
        double h;
        if (slack < 0) {
            h = -slack / b;
        } else {
            // Any tension above the root gives one below it: that without stretch, or that without slack.
            double above = Math.sqrt(k / slack);
            h = Math.sqrt(k / (slack + b * (b * above < MUCH * slack ? above : Elementary.power(k / b, 1.0 / 3))));
        }
        for (int i = 0; i < ITERATIONS; i++) {
            double curve = k / (h * h);
            double step = (curve - slack - b * h) / (b + 2 * curve / h);
            h += step;
            if (!(step > CatenaryTolerances.ESTIMATE * h)) {
                break;
            }
        }
        return h;
    }

    private double sagging(double c) {
        return w * w * run * run * run * run / (24 * c);
    }
}
