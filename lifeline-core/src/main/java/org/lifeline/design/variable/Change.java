package org.lifeline.design.variable;

import org.lifeline.model.LifelineDesign;

/**
 * Turns a value of a variable into a changed design. Must be a pure function; may be called from several threads.
 *
 * @since 1.0.0
 */
@FunctionalInterface
public interface Change {
    /**
     * The design with one thing changed.
     *
     * @param base the design to start from
     * @param value value of the variable [unit of the variable]
     * @return the changed design
     * @throws org.lifeline.base.InvalidInputException if the value makes no design
     */
    LifelineDesign apply(LifelineDesign base, double value);
}
