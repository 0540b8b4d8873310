package org.lifeline.design.study;

import java.util.List;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;
import org.lifeline.internal.numeric.InverseCdf;

/**
 * How an uncertain variable is distributed.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Distribution {
    /** Least share of a distribution that a cut may leave [-]; the inverse keeps about ten digits down to there. */
    private static final double LEAST_SHARE = 1e-6;

    /** Coefficient of variation below which ln(1 + v²) is v² to the last digit [-]: their ratio is 1 − v²/2. */
    private static final double SMALL_VARIATION = 1e-8;

    private final String name;
    private final Inverse inverse;

    /** The inverse of a cumulative distribution. */
    private interface Inverse {
        double at(double p);
    }

    private Distribution(String name, Inverse inverse) {
        this.name = name;
        this.inverse = inverse;
    }

    /**
     * Normal.
     *
     * @param mean mean [unit of the variable]
     * @param deviation standard deviation [unit of the variable], above zero
     * @return the distribution
     * @throws org.lifeline.base.InvalidInputException if a number is out of range
     */
    public static Distribution normal(double mean, double deviation) {
        new Violations()
                .finite("mean", mean, "")
                .positive("deviation", deviation, "")
                .throwIfAny();
        return new Distribution(
                "normal(mean " + mean + ", deviation " + deviation + ")", InverseCdf.normal(mean, deviation)::at);
    }

    /**
     * Normal, cut off at both ends of a range.
     *
     * @param mean mean before the cut [unit of the variable]
     * @param deviation standard deviation before the cut [unit of the variable], above zero
     * @param range the range that is left [unit of the variable]; must hold at least a millionth of the distribution
     * @return the distribution
     * @throws org.lifeline.base.InvalidInputException if a number is out of range
     */
    public static Distribution truncatedNormal(double mean, double deviation, Interval range) {
        Violations.required("range", range);
        new Violations()
                .finite("mean", mean, "")
                .positive("deviation", deviation, "")
                .throwIfAny();
        InverseCdf cut = InverseCdf.normal(mean, deviation).truncated(range.low(), range.high());
        new Violations()
                .require(cut.share() >= LEAST_SHARE, "range", GivenValue.text(range.toString()), InputRule.CUT_TOO_FAR)
                .throwIfAny();
        return new Distribution(
                "normal(mean " + mean + ", deviation " + deviation + ") from " + range.low() + " to " + range.high(),
                p -> Math.min(range.high(), Math.max(range.low(), cut.at(p))));
    }

    /**
     * Lognormal, by its median and coefficient of variation.
     *
     * @param median median [unit of the variable], above zero
     * @param variation coefficient of variation: standard deviation over mean [-], above zero
     * @return the distribution
     * @throws org.lifeline.base.InvalidInputException if a number is out of range
     */
    public static Distribution logNormal(double median, double variation) {
        new Violations()
                .positive("median", median, "")
                .positive("variation", variation, "")
                .throwIfAny();
        // By the normal quantile of the logarithm, to all digits: a search for the quantile would end at 1e-9 of any
        // unit.
        InverseCdf logarithm = InverseCdf.normal(StrictMath.log(median), logDeviation(variation));
        return new Distribution(
                "lognormal(median " + median + ", variation " + variation + ")", p -> StrictMath.exp(logarithm.at(p)));
    }

    /** Deviation of the logarithm, √ln(1 + v²); its square must not be lost below the smallest double. */
    private static double logDeviation(double variation) {
        return variation < SMALL_VARIATION ? variation : Math.sqrt(StrictMath.log1p(variation * variation));
    }

    /**
     * Uniform.
     *
     * @param range the range [unit of the variable]
     * @return the distribution
     */
    public static Distribution uniform(Interval range) {
        Violations.required("range", range);
        return new Distribution(
                "uniform from " + range.low() + " to " + range.high(), p -> range.low() + p * range.width());
    }

    /**
     * Triangular.
     *
     * @param range the range [unit of the variable], of some width
     * @param mode most likely value [unit of the variable], in the range
     * @return the distribution
     * @throws org.lifeline.base.InvalidInputException if the mode lies outside, or the range has no width
     */
    public static Distribution triangular(Interval range, double mode) {
        Violations.required("range", range);
        new Violations()
                .require(range.contains(mode), "mode", GivenValue.number(mode, ""), InputRule.NOT_IN_RANGE, range)
                .require(range.width() > 0, "range", GivenValue.text(range.toString()), InputRule.NO_WIDTH)
                .throwIfAny();
        return new Distribution(
                "triangular from " + range.low() + " over " + mode + " to " + range.high(),
                InverseCdf.triangular(range.low(), mode, range.high())::at);
    }

    /**
     * Weibull, with its lower end at zero: for strengths.
     *
     * @param shape shape [-], above zero
     * @param scale scale [unit of the variable], above zero
     * @return the distribution
     * @throws org.lifeline.base.InvalidInputException if a number is out of range
     */
    public static Distribution weibull(double shape, double scale) {
        new Violations()
                .positive("shape", shape, "")
                .positive("scale", scale, "")
                .throwIfAny();
        return new Distribution(
                "Weibull(shape " + shape + ", scale " + scale + ")", InverseCdf.weibull(shape, scale)::at);
    }

    /**
     * Gumbel, of largest values.
     *
     * @param mode most likely value [unit of the variable]
     * @param scale scale [unit of the variable], above zero
     * @return the distribution
     * @throws org.lifeline.base.InvalidInputException if a number is out of range
     */
    public static Distribution gumbel(double mode, double scale) {
        new Violations().finite("mode", mode, "").positive("scale", scale, "").throwIfAny();
        return new Distribution("Gumbel(mode " + mode + ", scale " + scale + ")", InverseCdf.gumbel(mode, scale)::at);
    }

    /**
     * The value below which a share of the distribution lies.
     *
     * @param share share [-], above 0 and below 1
     * @return the quantile [unit of the variable]
     * @throws InvalidInputException if the share lies outside
     */
    public double quantile(double share) {
        if (!(share > 0 && share < 1)) {
            Violation found = Violation.of("share", GivenValue.number(share, ""), InputRule.NOT_INSIDE_RANGE, 0, 1);
            throw new InvalidInputException(List.of(found.allowing(AllowedRange.inside(Interval.of(0, 1)))));
        }
        return inverse.at(share);
    }

    /**
     * The distribution in words, with its numbers in SI.
     *
     * @return for example {@code "normal(mean 1500.0, deviation 100.0)"}
     */
    @Override
    public String toString() {
        return name;
    }
}
