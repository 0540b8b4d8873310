package org.lifeline.analysis.motion;

/**
 * Extremes of one worker within a window of time.
 *
 * <p>Immutable and thread-safe.
 *
 * @param id the worker
 * @param force largest force in the connecting subsystem, its value in [N]
 * @param lowest lowest elevation of the harness attachment, its value in [m]
 * @param extension largest extension of the connecting subsystem beyond its taut length [m]
 */
public record WorkerPeaks(String id, Peak force, Peak lowest, double extension) {}
