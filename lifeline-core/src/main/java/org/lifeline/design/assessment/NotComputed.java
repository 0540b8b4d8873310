package org.lifeline.design.assessment;

/**
 * Something that could not be computed, or was left out.
 *
 * <p>Immutable and thread-safe.
 *
 * @param what what it is, for example a case in words
 * @param why the reason
 * @since 1.0.0
 */
public record NotComputed(String what, String why) {}
