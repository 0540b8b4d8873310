package org.lifeline.file.units;

/**
 * A quantity of a design file.
 *
 * <p>Immutable and thread-safe.
 *
 * @param si the value in SI [unit of the dimension]; temperatures [°C]
 * @param unit the unit in which it was written
 * @param written the text as written
 */
public record Quantity(double si, Unit unit, String written) {}
