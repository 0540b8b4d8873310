package org.lifeline.design.field;

/**
 * A value to be read in the field, with the range that the tolerance on the pretension allows.
 *
 * <p>Immutable and thread-safe.
 *
 * @param low lowest value allowed [N] or [m]
 * @param nominal value of the design [N] or [m]
 * @param high highest value allowed [N] or [m]
 * @since 1.0.0
 */
public record Reading(double low, double nominal, double high) {}
