package org.lifeline.design.envelope;

import org.lifeline.model.LifelineDesign;

/**
 * An analysis that gives the worst values of a design: an {@link Envelope}, or a {@link DesignAnalysis} of its falls.
 *
 * @since 1.0.0
 */
@FunctionalInterface
public interface WorstCases {
    /**
     * The worst values of a design.
     *
     * @param design the design
     * @return the extremes
     * @throws org.lifeline.base.InvalidInputException if the line cannot hang as stated
     * @throws org.lifeline.base.NoEquilibriumException if the line alone finds no equilibrium
     */
    Extremes extremes(LifelineDesign design);
}
