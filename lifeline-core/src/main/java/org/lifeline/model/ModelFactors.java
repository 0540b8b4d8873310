package org.lifeline.model;

import org.lifeline.base.Violations;

/**
 * Factors by which an engineer scales computed forces and distances to cover the difference between method and test;
 * 1 unless the engineer sets them. Reports print them.
 *
 * <p>Immutable and thread-safe.
 *
 * @param force factor on computed forces [-], above zero
 * @param distance factor on computed distances [-], above zero
 */
public record ModelFactors(double force, double distance) {

    /**
     * Checks the factors.
     *
     * @param force factor on computed forces [-], above zero
     * @param distance factor on computed distances [-], above zero
     * @throws org.lifeline.base.InvalidInputException if one is not above zero
     */
    public ModelFactors {
        new Violations()
                .positive("force", force, "")
                .positive("distance", distance, "")
                .throwIfAny();
    }

    /**
     * No scaling.
     *
     * @return both factors 1
     */
    public static ModelFactors none() {
        return new ModelFactors(1, 1);
    }
}
