package org.lifeline.design.installation;

import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.Violations;

/**
 * Constructional stretch of a rope: the lengthening for good as its wires and strands bed in under first loads.
 *
 * <p>Immutable and thread-safe.
 *
 * @param range lengthening over length [-], from 0 to 0.05
 * @param source where the range comes from
 * @since 1.0.0
 */
public record ConstructionalStretch(Interval range, String source) {
    /** Steel wire rope with steel core: 0.125 to 0.25 % (published, rope maker's guide). */
    public static final ConstructionalStretch STEEL_CORE =
            new ConstructionalStretch(Interval.of(0.00125, 0.0025), "rope maker's guide, steel core (published)");

    /** Steel wire rope with fibre core: 0.25 to 0.5 % (published, rope maker's guide). */
    public static final ConstructionalStretch FIBRE_CORE =
            new ConstructionalStretch(Interval.of(0.0025, 0.005), "rope maker's guide, fibre core (published)");

    /** More is no bedding in of a rope [-]. */
    private static final double MOST = 0.05;

    /**
     * Checks both.
     *
     * @param range lengthening over length [-]
     * @param source where the range comes from
     */
    public ConstructionalStretch {
        Violations v = new Violations();
        Violations.required("range", range);
        v.require(
                range.low() >= 0 && range.high() <= MOST,
                "constructionalStretch",
                GivenValue.text(range.toString()),
                InputRule.OUTSIDE_RANGE,
                0,
                "5 %");
        v.require(
                !Violations.required("source", source).isBlank(), "source", GivenValue.quoted(source), InputRule.BLANK);
        v.throwIfAny();
    }
}
