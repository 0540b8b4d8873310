package org.lifeline.base.unit;

/**
 * A quantity as it was written.
 *
 * <p>Immutable and thread-safe.
 *
 * @param si the value in SI [unit of the dimension]; temperatures [°C]
 * @param unit the unit in which it was written
 * @param written the text as written
 * @since 1.0.0
 */
public record Quantity(double si, Unit unit, String written) {}
