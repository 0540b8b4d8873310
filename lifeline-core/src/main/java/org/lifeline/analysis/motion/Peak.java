package org.lifeline.analysis.motion;

/**
 * An extreme value and when it was met.
 *
 * <p>Immutable and thread-safe.
 *
 * @param value the value [unit of the quantity]
 * @param time time since the start of the fall [s]
 * @since 1.0.0
 */
public record Peak(double value, double time) {}
