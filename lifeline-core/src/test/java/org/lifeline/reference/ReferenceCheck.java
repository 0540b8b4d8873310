package org.lifeline.reference;

/**
 * A published number beside the one computed here.
 *
 * @param source where it was published
 * @param title the case
 * @param quantity what it is
 * @param unit unit of the two values
 * @param mark published, computed or recalled
 * @param expected value of the source [unit of the check], as printed there
 * @param computed value computed here [unit of the check]
 * @param tolerance largest relative difference [-]
 * @param reason why the tolerance is what it is
 */
record ReferenceCheck(
        String source,
        String title,
        String quantity,
        String unit,
        String mark,
        String expected,
        double computed,
        double tolerance,
        String reason) {

    double expectedValue() {
        return Double.parseDouble(expected);
    }

    /** Relative difference. */
    double difference() {
        return computed / expectedValue() - 1;
    }

    boolean holds() {
        return Math.abs(difference()) <= tolerance;
    }
}
