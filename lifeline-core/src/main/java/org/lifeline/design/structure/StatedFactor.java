package org.lifeline.design.structure;

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
        v.require(!Violations.required("name", name).isBlank(), "name", '"' + name + '"', "must not be blank");
        v.require(
                !Violations.required("source", source).isBlank(),
                "source",
                '"' + source + '"',
                "must not be blank: a factor without source is nobody's");
        v.require(
                factor > 0 && factor <= MOST,
                "factor",
                Violations.show(factor, ""),
                "must be above zero and at most " + (int) MOST);
        v.throwIfAny();
    }
}
