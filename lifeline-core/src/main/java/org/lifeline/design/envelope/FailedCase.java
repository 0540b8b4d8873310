package org.lifeline.design.envelope;

/**
 * A case that could not be computed.
 *
 * <p>Immutable and thread-safe.
 *
 * @param fallCase the case
 * @param reason what the analysis said
 */
public record FailedCase(FallCase fallCase, String reason) {}
