package org.lifeline.design.variable;

/**
 * A value of a variable that was tried.
 *
 * <p>Immutable and thread-safe.
 *
 * @param value the value [unit of the variable]
 * @param ratio worst demand over capacity [-]; infinite where the design could not be analysed
 * @param governing id of the criterion with the worst ratio; empty where the design could not be analysed
 * @param reason why the design could not be analysed; empty where it was
 * @since 1.0.0
 */
public record Trial(double value, double ratio, String governing, String reason) {
    /**
     * Tells whether all criteria that were evaluated are met.
     *
     * @return true if the worst ratio is at most 1
     */
    public boolean isFeasible() {
        return ratio <= 1;
    }
}
