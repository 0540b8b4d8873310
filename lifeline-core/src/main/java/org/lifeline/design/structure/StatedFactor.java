package org.lifeline.design.structure;

import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;

/**
 * A factor on service loads, as the user states it with its source. The library applies none of its own.
 *
 * <p>Immutable and thread-safe.
 *
 * @param name what it is for, for example a limit state
 * @param factor factor on the loads [-], above zero, at most 10
 * @param source where it comes from
 * @since 1.0.0
 */
public record StatedFactor(String name, double factor, String source) {
    private static final double MOST = 10;

    /**
     * Checks all three.
     *
     * @param name what it is for
     * @param factor factor on the loads [-]
     * @param source where it comes from
     */
    public StatedFactor {
        Violations v = new Violations();
        v.require(!Violations.required("name", name).isBlank(), "name", GivenValue.quoted(name), InputRule.BLANK);
        v.require(
                !Violations.required("source", source).isBlank(),
                "source",
                GivenValue.quoted(source),
                InputRule.SOURCE_NEEDED);
        v.require(
                factor > 0 && factor <= MOST,
                "factor",
                GivenValue.number(factor, ""),
                InputRule.NOT_ABOVE_AND_AT_MOST,
                "zero",
                (int) MOST);
        v.throwIfAny();
    }
}
