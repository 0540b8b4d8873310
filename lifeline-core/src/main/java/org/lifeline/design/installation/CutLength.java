package org.lifeline.design.installation;

/**
 * Stress-free cable that hangs in one span as installed.
 *
 * <p>Immutable and thread-safe.
 *
 * @param span number of the span, from 1
 * @param run horizontal length of the span [m]
 * @param unstretched stress-free length at the temperature of installation of the design [m]
 * @since 1.0.0
 */
public record CutLength(int span, double run, double unstretched) {}
