package org.lifeline.analysis.warning;

/**
 * What a warning found, and what it is set against.
 *
 * <p>Immutable and thread-safe.
 *
 * @param value what was found [unit of the warning]; NaN where no number is at stake
 * @param unit SI unit of value and limit: {@code "N"}, {@code "m"}, {@code "rad"}, or {@code "-"} for bare numbers
 * @param limit what it is set against [unit of the warning]; NaN where there is none
 * @since 1.0.0
 */
public record Measured(double value, String unit, double limit) {
    /**
     * No number is at stake.
     *
     * @return a value and a limit that are NaN
     */
    public static Measured nothing() {
        return new Measured(Double.NaN, "-", Double.NaN);
    }
}
