package org.lifeline.verify;

import java.util.function.DoubleUnaryOperator;

/**
 * Adaptive Gauss–Legendre quadrature: an interval is halved until the rule over the whole agrees with the sum over the
 * halves.
 *
 * <p>The nodes are the roots of the Legendre polynomial, found by Newton's method from Tricomi's first guess
 * cos(π (i + 3/4)/(n + 1/2)); weights 2/((1 − x²) P′ₙ(x)²) (Abramowitz and Stegun, <i>Handbook of Mathematical
 * Functions</i>, 1964, 25.4.29). Immutable and thread-safe.
 */
final class Quadrature {
    private static final int DEEPEST = 60;

    private final double[] node;
    private final double[] weight;
    private final double tolerance;

    /**
     * A rule.
     *
     * @param points number of points in an interval
     * @param tolerance largest difference between an interval and its halves, relative to ∫|f| over everything [-]
     */
    Quadrature(int points, double tolerance) {
        this.node = new double[points];
        this.weight = new double[points];
        this.tolerance = tolerance;
        for (int i = 0; i < points; i++) {
            double x = Math.cos(Math.PI * (i + 0.75) / (points + 0.5));
            double slope = 0;
            for (int k = 0; k < 100; k++) {
                double p0 = 1;
                double p1 = x;
                for (int j = 2; j <= points; j++) {
                    double p2 = ((2 * j - 1) * x * p1 - (j - 1) * p0) / j;
                    p0 = p1;
                    p1 = p2;
                }
                slope = points * (x * p1 - p0) / (x * x - 1);
                double step = p1 / slope;
                x -= step;
                if (Math.abs(step) < 1e-15) {
                    break;
                }
            }
            node[i] = x;
            weight[i] = 2 / ((1 - x * x) * slope * slope);
        }
    }

    /** ∫f from a to b; NaN or infinite where f is. */
    double integrate(DoubleUnaryOperator f, double a, double b) {
        if (a == b) {
            return 0;
        }
        double whole = rule(f, a, b);
        double scale = rule(s -> Math.abs(f.applyAsDouble(s)), a, b);
        return refine(f, new double[] {a, b}, whole, tolerance * scale, 0);
    }

    private double refine(DoubleUnaryOperator f, double[] ends, double whole, double allowed, int depth) {
        double mid = 0.5 * (ends[0] + ends[1]);
        double left = rule(f, ends[0], mid);
        double right = rule(f, mid, ends[1]);
        double sum = left + right;
        if (!(Math.abs(sum - whole) > allowed) || depth == DEEPEST || mid == ends[0] || mid == ends[1]) {
            return sum;
        }
        return refine(f, new double[] {ends[0], mid}, left, allowed, depth + 1)
                + refine(f, new double[] {mid, ends[1]}, right, allowed, depth + 1);
    }

    private double rule(DoubleUnaryOperator f, double a, double b) {
        double half = 0.5 * (b - a);
        double mid = 0.5 * (a + b);
        double sum = 0;
        for (int i = 0; i < node.length; i++) {
            sum += weight[i] * f.applyAsDouble(mid + half * node[i]);
        }
        return half * sum;
    }
}
