package org.lifeline.design.variable;

/**
 * A range of a variable over which all criteria are met.
 *
 * <p>Immutable and thread-safe.
 *
 * @param low its lower end
 * @param high its upper end
 * @since 1.0.0
 */
public record FeasibleInterval(End low, End high) {
    /**
     * What closes an end.
     *
     * @since 1.0.0
     */
    public enum Closure {
        /** A criterion whose ratio reaches 1. */
        CRITERION,
        /** A criterion that jumps from met to not met there, as a count or a rule that begins to apply does. */
        JUMP,
        /** A bound of the variable. */
        BOUND,
        /** Beyond it the design cannot be analysed. */
        FAILURE
    }

    /**
     * An end of the range.
     *
     * @param trial the last value at which all criteria are met
     * @param closure what closes the end
     * @param by id of the criterion, or why the design beyond cannot be analysed; empty for a bound
     * @since 1.0.0
     */
    public record End(Trial trial, Closure closure, String by) {
        /**
         * Where the end lies.
         *
         * @return the value [unit of the variable]
         */
        public double value() {
            return trial.value();
        }
    }

    /**
     * Tells whether a value lies in the range.
     *
     * @param value the value [unit of the variable]
     * @return true if it does, ends included
     */
    public boolean contains(double value) {
        return value >= low.value() && value <= high.value();
    }
}
