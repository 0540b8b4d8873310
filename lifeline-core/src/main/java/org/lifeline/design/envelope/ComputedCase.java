package org.lifeline.design.envelope;

import org.lifeline.analysis.ArrestResult;

/**
 * A case and the arrest that was computed for it, by whatever method.
 *
 * <p>Immutable and thread-safe.
 *
 * @param fallCase the case
 * @param arrest its arrest
 * @since 1.0.0
 */
public record ComputedCase(FallCase fallCase, ArrestResult arrest) {}
