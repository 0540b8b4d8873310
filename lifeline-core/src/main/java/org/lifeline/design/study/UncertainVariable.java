package org.lifeline.design.study;

import org.lifeline.base.Violations;
import org.lifeline.design.variable.DesignVariable;

/**
 * A variable whose value is uncertain.
 *
 * <p>Immutable and thread-safe.
 *
 * @param variable the variable
 * @param distribution how its value is distributed; a value drawn outside the bounds of the variable is a case that failed
 * @since 1.0.0
 */
public record UncertainVariable(DesignVariable variable, Distribution distribution) {
    /**
     * Checks that both are given.
     *
     * @param variable the variable
     * @param distribution how its value is distributed
     * @throws org.lifeline.base.InvalidInputException if one is missing
     */
    public UncertainVariable {
        Violations.required("variable", variable);
        Violations.required("distribution", distribution);
    }
}
