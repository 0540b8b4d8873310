package org.lifeline.design.study;

import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.Violations;
import org.lifeline.internal.numeric.Covariances;
import org.lifeline.internal.numeric.LogHistogram;
import org.lifeline.internal.numeric.Ranks;

/**
 * What a study says of one response. Cases without a value are left out.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Summary {
    private static final double CONFIDENCE = 0.95;

    private final Response response;
    private final LogHistogram histogram;
    private final double mean;
    private final double variance;

    Summary(Response response, LogHistogram histogram, Covariances moments) {
        this.response = response;
        this.histogram = histogram;
        int last = moments.size() - 1;
        this.mean = moments.count() == 0 ? Double.NaN : moments.mean(last);
        this.variance = moments.of(last, last);
    }

    /**
     * The response.
     *
     * @return name and unit
     */
    public Response response() {
        return response;
    }

    /**
     * Number of cases with a value.
     *
     * @return the number
     */
    public long count() {
        return histogram.count();
    }

    /**
     * Mean.
     *
     * @return mean [unit of the response]; NaN without a value
     */
    public double mean() {
        return mean;
    }

    /**
     * Standard deviation of the sample.
     *
     * @return deviation [unit of the response]; NaN for fewer than two values
     */
    public double deviation() {
        return Math.sqrt(variance);
    }

    /**
     * Range in which the true mean lies with a confidence of 95 %, by the central limit theorem.
     *
     * @return the range [unit of the response]
     * @throws org.lifeline.base.InvalidInputException for fewer than two values
     */
    public Interval meanRange() {
        double half = Ranks.deviations(CONFIDENCE) * Math.sqrt(variance / count());
        return Interval.of(mean - half, mean + half);
    }

    /**
     * Smallest value, exactly.
     *
     * @return the value [unit of the response]
     */
    public double smallest() {
        return histogram.smallest();
    }

    /**
     * Largest value, exactly.
     *
     * @return the value [unit of the response]
     */
    public double largest() {
        return histogram.largest();
    }

    /**
     * A quantile.
     *
     * @param share share of the distribution below it [-], above 0 and below 1
     * @return the quantile of the sample and the range of the true one
     * @throws org.lifeline.base.InvalidInputException if the share is out of range or there is no value
     */
    public QuantileEstimate quantile(double share) {
        new Violations()
                .require(
                        share > 0 && share < 1, "share", GivenValue.number(share, ""), InputRule.NOT_INSIDE_RANGE, 0, 1)
                .require(count() > 0, "cases", GivenValue.text("0"), InputRule.EMPTY, "value")
                .throwIfAny();
        long[] ranks = Ranks.quantileRanks(count(), share, CONFIDENCE);
        return new QuantileEstimate(
                share,
                histogram.ranked((long) Math.ceil(share * count())),
                ranks[0] < 1 ? Double.NEGATIVE_INFINITY : histogram.ranked(ranks[0]),
                ranks[1] > count() ? Double.POSITIVE_INFINITY : histogram.ranked(ranks[1]));
    }

    /**
     * Share of the values above a limit. Values within 0.01 % of the limit may be counted on either side.
     *
     * @param limit the limit [unit of the response]
     * @return share [-], from 0 to 1
     */
    public double shareAbove(double limit) {
        return (double) histogram.above(limit) / count();
    }

    /**
     * Range in which the true share above a limit lies with a confidence of 95 % (E. B. Wilson, J. Am. Stat. Assoc.
     * 22(158):209–212, 1927).
     *
     * @param limit the limit [unit of the response]
     * @return the range [-]
     */
    public Interval shareAboveRange(double limit) {
        double z = Ranks.deviations(CONFIDENCE);
        double n = count();
        double p = shareAbove(limit);
        double middle = (p + z * z / (2 * n)) / (1 + z * z / n);
        double half = z / (1 + z * z / n) * Math.sqrt(p * (1 - p) / n + z * z / (4 * n * n));
        return Interval.of(Math.max(0, middle - half), Math.min(1, middle + half));
    }
}
