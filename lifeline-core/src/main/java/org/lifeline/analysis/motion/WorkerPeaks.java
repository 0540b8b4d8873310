package org.lifeline.analysis.motion;

/**
 * Extremes of one worker within a window of time.
 *
 * <p>Immutable and thread-safe.
 *
 * @param id the worker
 * @param force largest force in the connecting subsystem, its value in [N]
 * @param filteredForce the same behind a low-pass filter of 100 Hz, as laboratories record it [N]
 * @param lowest lowest elevation of the harness attachment, its value in [m]
 * @param extension largest extension of the connecting subsystem beyond its taut length [m]
 * @since 1.0.0
 */
public record WorkerPeaks(String id, Peak force, double filteredForce, Peak lowest, double extension) {}
