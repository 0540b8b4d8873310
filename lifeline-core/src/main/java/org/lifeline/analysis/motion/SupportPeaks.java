package org.lifeline.analysis.motion;

/**
 * Extremes of one support within a window of time.
 *
 * <p>Immutable and thread-safe.
 *
 * @param id the support
 * @param force largest force of the line on it, its value in [N]
 * @param filteredForce the same behind a low-pass filter of 100 Hz, as laboratories record it [N]
 * @param tensionBefore largest tension of the cable that comes to it from the start of the line [N]; 0 at the first
 * @param tensionBehind largest tension of the cable that leaves it toward the end [N]; 0 at the last
 * @since 1.0.0
 */
public record SupportPeaks(String id, Peak force, double filteredForce, double tensionBefore, double tensionBehind) {}
