package org.lifeline.internal.numeric;

import org.apache.commons.math3.distribution.GumbelDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.RealDistribution;
import org.apache.commons.math3.distribution.TriangularDistribution;
import org.apache.commons.math3.distribution.WeibullDistribution;

/** Inverse cumulative distribution functions, by Commons Math. Immutable and thread-safe. */
public final class InverseCdf {
    private final RealDistribution distribution;
    private final double from;
    private final double width;

    private InverseCdf(RealDistribution distribution, double from, double width) {
        this.distribution = distribution;
        this.from = from;
        this.width = width;
    }

    private static InverseCdf of(RealDistribution distribution) {
        return new InverseCdf(distribution, 0, 1);
    }

    /**
     * Normal distribution.
     *
     * @param mean mean
     * @param deviation standard deviation, above zero
     * @return the inverse
     */
    public static InverseCdf normal(double mean, double deviation) {
        // No generator is needed: only the inverse is asked for.
        return of(new NormalDistribution(null, mean, deviation));
    }

    /**
     * Triangular distribution.
     *
     * @param low lower end
     * @param mode most likely value
     * @param high upper end
     * @return the inverse
     */
    public static InverseCdf triangular(double low, double mode, double high) {
        return of(new TriangularDistribution(null, low, mode, high));
    }

    /**
     * Weibull distribution.
     *
     * @param shape shape, above zero
     * @param scale scale, above zero
     * @return the inverse
     */
    public static InverseCdf weibull(double shape, double scale) {
        return of(new WeibullDistribution(null, shape, scale));
    }

    /**
     * Gumbel distribution of largest values.
     *
     * @param location mode
     * @param scale scale, above zero
     * @return the inverse
     */
    public static InverseCdf gumbel(double location, double scale) {
        return of(new GumbelDistribution(null, location, scale));
    }

    /**
     * The same distribution cut off at both ends.
     *
     * @param low lower end
     * @param high upper end
     * @return the inverse; share of the distribution that is left: {@link #share}
     */
    public InverseCdf truncated(double low, double high) {
        double a = distribution.cumulativeProbability(low);
        double b = distribution.cumulativeProbability(high);
        return new InverseCdf(distribution, a, b - a);
    }

    /**
     * Share of the whole distribution that this one covers.
     *
     * @return 1 unless it is cut off
     */
    public double share() {
        return width;
    }

    /**
     * The value below which a share of the distribution lies.
     *
     * @param p share, above 0 and below 1
     * @return the quantile
     */
    public double at(double p) {
        return distribution.inverseCumulativeProbability(from + p * width);
    }
}
