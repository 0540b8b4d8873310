package org.lifeline.internal.path;

/**
 * Quadrature over a step of a path from values and slopes at both its ends, and at a third point of the path
 * where there is one: cubic interpolation, or of degree five, and five Gauss points, which are exact for both (Abramowitz
 * and Stegun, table 25.4).
 */
final class PathQuadrature {
    private static final double[] GAUSS = {
        0.046910077030668004, 0.23076534494715845, 0.5, 0.7692346550528415, 0.953089922969332
    };
    private static final double[] WEIGHT = {
        0.11846344252809454, 0.23931433524968324, 0.28444444444444444, 0.23931433524968324, 0.11846344252809454
    };

    /** Orders in the step of the errors of a quadrature over two points, over three, and of the trapezoidal rule. */
    static final int ORDER_OF_TWO = 5;

    static final int ORDER_OF_THREE = 7;
    static final int ORDER_OF_TRAPEZOID = 3;

    /** How near to the step, and how far from its start, in steps, a third point may be to be of use. */
    private static final double NEAR = 0.15;

    private static final double FAR = 6;

    private PathQuadrature() {}

    /**
     * ∫f dg over a step, f and g cubic by values and slopes at both ends.
     *
     * @param step length of the step, in what the slopes go by
     * @param f value and slope at the start, at the end
     * @param g likewise
     */
    static double integral(double step, double[] f, double[] g) {
        double sum = 0;
        for (int k = 0; k < GAUSS.length; k++) {
            sum += WEIGHT[k] * cubic(f, step, GAUSS[k]) * cubicSlope(g, step, GAUSS[k]);
        }
        return sum;
    }

    /**
     * Tells whether a third point is far enough from both ends of a step, and near enough, to be of use.
     *
     * @param third where it is on a scale on which the step runs from 0 to 1
     */
    static boolean isOfUse(double third) {
        return third < 0 ? third < -NEAR && third > -FAR : third > 1 + NEAR && third < FAR;
    }

    /**
     * ∫f dg over a step, f and g of degree five by values and slopes at both ends and at a third point.
     *
     * @param f value and slope at 0, at 1, at the third point; slopes by the step scaled to run from 0 to 1
     * @param g likewise
     * @param third where the third point is on that scale
     */
    static double integral(double[] f, double[] g, double third) {
        double f4 = fourth(f, third);
        double f5 = fifth(f, third, f4);
        double g4 = fourth(g, third);
        double g5 = fifth(g, third, g4);
        double sum = 0;
        for (int k = 0; k < GAUSS.length; k++) {
            double t = GAUSS[k];
            double bubble = bubble(t);
            double value = cubic(f, 1, t) + bubble * (f4 + f5 * (t - third));
            double slope = cubicSlope(g, 1, t) + bubbleSlope(t) * (g4 + g5 * (t - third)) + bubble * g5;
            sum += WEIGHT[k] * value * slope;
        }
        return sum;
    }

    /** Factor of t²(1 − t)² that brings the cubic to the third value. */
    private static double fourth(double[] f, double t) {
        return (f[4] - cubic(f, 1, t)) / bubble(t);
    }

    /** Factor of t²(1 − t)²(t − third) that brings it to the third slope as well. */
    private static double fifth(double[] f, double t, double fourth) {
        return (f[5] - cubicSlope(f, 1, t) - bubbleSlope(t) * fourth) / bubble(t);
    }

    private static double bubble(double t) {
        return t * t * (1 - t) * (1 - t);
    }

    private static double bubbleSlope(double t) {
        return 2 * t * (1 - t) * (1 - 2 * t);
    }

    private static double cubic(double[] f, double step, double t) {
        double s = 1 - t;
        return f[0] * (1 + 2 * t) * s * s + f[2] * t * t * (3 - 2 * t) + step * (f[1] * s - f[3] * t) * t * s;
    }

    /** By the scaled step. */
    private static double cubicSlope(double[] f, double step, double t) {
        double s = 1 - t;
        return 6 * t * s * (f[2] - f[0]) + step * (f[1] * s * (1 - 3 * t) + f[3] * t * (3 * t - 2));
    }
}
