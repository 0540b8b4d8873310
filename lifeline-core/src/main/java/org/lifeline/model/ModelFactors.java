package org.lifeline.model;

import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violations;

/**
 * Factors by which an engineer scales computed forces and distances to cover the difference between method and test;
 * 1 unless the engineer sets them. Reports print them.
 *
 * <p>A factor below 1 makes the line look better than it was computed: it needs a reason, which reports print in front.
 *
 * <p>Immutable and thread-safe.
 *
 * @param force factor on computed forces [-], from 0.5 to 10
 * @param distance factor on computed distances [-], from 0.5 to 10
 * @param reason why these factors; empty where none is stated, which is allowed where no factor is below 1
 * @since 1.0.0
 */
public record ModelFactors(double force, double distance, String reason) {

    /**
     * Checks the factors.
     *
     * @param force factor on computed forces [-], from 0.5 to 10
     * @param distance factor on computed distances [-], from 0.5 to 10
     * @param reason why these factors; empty where none is stated, which is allowed where no factor is below 1
     * @throws org.lifeline.base.InvalidInputException if one is out of range, or below 1 without a reason
     */
    public ModelFactors {
        Violations v = new Violations();
        PlausibleRange.MODEL_FACTOR.check(v, "force", force);
        PlausibleRange.MODEL_FACTOR.check(v, "distance", distance);
        boolean stated = !Violations.required("reason", reason).isBlank();
        if (v.isEmpty() && !stated && (force < 1 || distance < 1)) {
            v.add("reason", GivenValue.missing(), InputRule.REASON_NEEDED);
        }
        v.throwIfAny();
    }

    /**
     * Factors without a stated reason.
     *
     * @param force factor on computed forces [-], from 1 to 10
     * @param distance factor on computed distances [-], from 1 to 10
     * @throws org.lifeline.base.InvalidInputException if one is out of range
     */
    public ModelFactors(double force, double distance) {
        this(force, distance, "");
    }

    /**
     * No scaling.
     *
     * @return both factors 1
     */
    public static ModelFactors none() {
        return new ModelFactors(1, 1);
    }

    /**
     * Tells whether a factor makes the line look better than it was computed.
     *
     * @return true if one is below 1
     */
    public boolean isBelowOne() {
        return force < 1 || distance < 1;
    }
}
