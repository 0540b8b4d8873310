package org.lifeline.verify.state;

import java.util.function.DoubleUnaryOperator;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.Violations;

/**
 * Adaptive Gauss–Legendre quadrature: an interval is halved until the rule over the whole agrees with the sum over the
 * halves.
 *
 * <p>The nodes are the roots of the Legendre polynomial, found by Newton's method from Tricomi's first guess
 * cos(π (i + 3/4)/(n + 1/2)); weights 2/((1 − x²) P′ₙ(x)²) with (1 − x²) P′ₙ = n Pₙ₋₁ at a root (Abramowitz and Stegun,
 * <i>Handbook of Mathematical Functions</i>, 1964, 25.4.29 and 8.5.4). Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Quadrature {
    private final double[] node;
    private final double[] weight;
    private final double tolerance;

    /**
     * A rule.
     *
     * @param points number of points in an interval, from 1 to {@value StateTolerances#MOST_POINTS}
     * @param tolerance largest difference between an interval and its halves, relative to ∫|f| over everything [-]; not
     *     negative
     * @throws org.lifeline.base.InvalidInputException if there is no such rule
     */
    public Quadrature(int points, double tolerance) {
        new Violations()
                .numbered("points", points, Interval.of(1, StateTolerances.MOST_POINTS), InputRule.COUNT_RANGE)
                .notNegative("tolerance", tolerance, "")
                .throwIfAny();
        this.node = new double[points];
        this.weight = new double[points];
        this.tolerance = tolerance;
        for (int i = 0; i < points; i++) {
            double x = StrictMath.cos(Math.PI * (i + 0.75) / (points + 0.5));
            for (int k = 0; k < StateTolerances.NEWTON_STEPS; k++) {
                double[] p = legendre(points, x);
                x -= p[1] * (x * x - 1) / (points * (x * p[1] - p[0]));
            }
            double lower = points * legendre(points, x)[0];
            node[i] = x;
            weight[i] = 2 * (1 - x) * (1 + x) / (lower * lower);
        }
    }

    /** Legendre polynomials of degree n − 1 and n. */
    private static double[] legendre(int n, double x) {
        double before = 1;
        double last = x;
        for (int j = 2; j <= n; j++) {
            double next = ((2 * j - 1) * x * last - (j - 1) * before) / j;
            before = last;
            last = next;
        }
        return new double[] {before, last};
    }

    /**
     * Integrates a function.
     *
     * @param f the function [unit of the integrand]
     * @param a where to begin [unit of the variable]
     * @param b where to end [unit of the variable]
     * @return ∫f from a to b [unit of the integral]; NaN or infinite where f is
     * @throws org.lifeline.base.InvalidInputException if there is no function
     */
    public double integrate(DoubleUnaryOperator f, double a, double b) {
        Violations.required("f", f);
        if (a == b) {
            return 0;
        }
        double whole = rule(f, a, b);
        double scale = rule(s -> Math.abs(f.applyAsDouble(s)), a, b);
        return refine(f, new double[] {a, b}, whole, tolerance * Math.abs(scale), 0);
    }

    private double refine(DoubleUnaryOperator f, double[] ends, double whole, double allowed, int depth) {
        double mid = 0.5 * (ends[0] + ends[1]);
        double left = rule(f, ends[0], mid);
        double right = rule(f, mid, ends[1]);
        double sum = left + right;
        if (!(Math.abs(sum - whole) > allowed)
                || depth == StateTolerances.MOST_HALVINGS
                || mid == ends[0]
                || mid == ends[1]) {
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
