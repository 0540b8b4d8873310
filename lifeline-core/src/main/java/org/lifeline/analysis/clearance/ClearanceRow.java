package org.lifeline.analysis.clearance;

/**
 * A step of the clearance account, downward from the line.
 *
 * <p>Immutable and thread-safe.
 *
 * @param item what the step is
 * @param value its length [m], positive down
 * @param elevation elevation reached after it [m]
 * @param source where the value comes from
 * @since 1.0.0
 */
public record ClearanceRow(String item, double value, double elevation, String source) {}
