package org.lifeline.internal.mechanics;

/**
 * Quadrature over a step of a {@link LoadPath} from values and slopes at both its ends and at a third point of the path:
 * interpolation of degree five, and Gauss points that are exact for it (Abramowitz and Stegun, table 25.4).
 */
final class PathQuadrature {
    private static final double[] GAUSS = {
        0.046910077030668004, 0.23076534494715845, 0.5, 0.7692346550528415, 0.953089922969332
    };
    private static final double[] WEIGHT = {
        0.11846344252809454, 0.23931433524968324, 0.28444444444444444, 0.23931433524968324, 0.11846344252809454
    };

    /** How near to the step, and how far from it, in steps, a third point may be to be of use. */
    private static final double NEAR = 0.15;

    private static final double FAR = 6;

    private PathQuadrature() {}

    /**
     * ∫f dg over a step, which is scaled to run from 0 to 1.
     *
     * @param f value and slope at 0, at 1, at the third point, one after the other; slopes by the scaled step
     * @param g likewise
     * @param third where the third point is on the scale; NaN if there is none
     */
    static double integral(double[] f, double[] g, double third) {
        boolean use = third < 0 ? third < -NEAR && third > -FAR : third > 1 + NEAR && third < FAR;
        double f4 = use ? fourth(f, third) : 0;
        double f5 = use ? fifth(f, third, f4) : 0;
        double g4 = use ? fourth(g, third) : 0;
        double g5 = use ? fifth(g, third, g4) : 0;
        double at = use ? third : 0;
        double sum = 0;
        for (int k = 0; k < GAUSS.length; k++) {
            double t = GAUSS[k];
            double bubble = bubble(t);
            double value = cubic(f, t) + bubble * (f4 + f5 * (t - at));
            double slope = cubicSlope(g, t) + bubbleSlope(t) * (g4 + g5 * (t - at)) + bubble * g5;
            sum += WEIGHT[k] * value * slope;
        }
        return sum;
    }

    /** Factor of t²(1 − t)² that brings the cubic to the third value. */
    private static double fourth(double[] f, double t) {
        return (f[4] - cubic(f, t)) / bubble(t);
    }

    /** Factor of t²(1 − t)²(t − third) that brings it to the third slope as well. */
    private static double fifth(double[] f, double t, double fourth) {
        return (f[5] - cubicSlope(f, t) - bubbleSlope(t) * fourth) / bubble(t);
    }

    private static double bubble(double t) {
        return t * t * (1 - t) * (1 - t);
    }

    private static double bubbleSlope(double t) {
        return 2 * t * (1 - t) * (1 - 2 * t);
    }

    private static double cubic(double[] f, double t) {
        double s = 1 - t;
        return f[0] * (1 + 2 * t) * s * s + f[1] * t * s * s + f[2] * t * t * (3 - 2 * t) - f[3] * t * t * s;
    }

    private static double cubicSlope(double[] f, double t) {
        double s = 1 - t;
        return 6 * t * s * (f[2] - f[0]) + f[1] * s * (1 - 3 * t) + f[3] * t * (3 * t - 2);
    }
}
