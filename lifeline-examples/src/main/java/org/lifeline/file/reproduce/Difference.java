package org.lifeline.file.reproduce;

/**
 * A value of a result file that did not come out again.
 *
 * <p>Immutable and thread-safe.
 *
 * @param path where it stands, for example {@code arrests[2].sag}
 * @param stored the value in the file; empty if it is missing there
 * @param recomputed the value computed now; empty if there is none
 * @param relative relative difference of two numbers [-]; NaN for anything else
 * @since 1.0.0
 */
public record Difference(String path, String stored, String recomputed, double relative) {}
