package org.lifeline.design.study;

import org.lifeline.base.Violations;

/**
 * A number that is read off each case of a study.
 *
 * <p>Immutable and thread-safe.
 *
 * @param name what it is
 * @param unit SI unit, {@code "-"} for a bare number
 * @since 1.0.0
 */
public record Response(String name, String unit) {
    /**
     * Checks that both are given.
     *
     * @param name what it is
     * @param unit SI unit, {@code "-"} for a bare number
     * @throws org.lifeline.base.InvalidInputException if one is missing
     */
    public Response {
        Violations.required("name", name);
        Violations.required("unit", unit);
    }

    @Override
    public String toString() {
        return unit.equals("-") ? name : name + " [" + unit + "]";
    }
}
