package org.lifeline.design.study;

import org.lifeline.design.variable.DesignVariable;

/**
 * A variable whose value is uncertain.
 *
 * <p>Immutable and thread-safe.
 *
 * @param variable the variable
 * @param distribution how its value is distributed; the bounds of the variable do not cut it off
 */
public record UncertainVariable(DesignVariable variable, Distribution distribution) {}
