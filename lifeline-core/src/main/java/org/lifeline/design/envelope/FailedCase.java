package org.lifeline.design.envelope;

import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Violations;

/**
 * A case that could not be computed.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class FailedCase {
    private final FallCase fallCase;
    private final RuntimeException cause;

    FailedCase(FallCase fallCase, RuntimeException cause) {
        this.fallCase = fallCase;
        this.cause = cause;
    }

    /**
     * A case that an analysis of one's own could not compute.
     *
     * @param fallCase the case
     * @param cause what the analysis threw
     * @return the failed case
     */
    public static FailedCase of(FallCase fallCase, RuntimeException cause) {
        return new FailedCase(fallCase, cause);
    }

    /**
     * The case.
     *
     * @return the case
     */
    public FallCase fallCase() {
        return fallCase;
    }

    /**
     * What the analysis threw: a {@link NoEquilibriumException} with its numbers, an {@link InvalidInputException} with its
     * violations, or a fault of the program.
     *
     * @return the exception
     */
    public RuntimeException cause() {
        return cause;
    }

    /**
     * Why the case could not be computed, in words.
     *
     * @return the reason
     */
    public String reason() {
        return words(cause);
    }

    /**
     * Puts what an analysis threw into words.
     *
     * @param cause the exception
     * @return its message, after the words "fault of the program" where it is one
     */
    public static String words(RuntimeException cause) {
        Violations.required("cause", cause);
        String message = cause.getMessage() == null ? "" : cause.getMessage();
        if (cause instanceof NoEquilibriumException || cause instanceof InvalidInputException) {
            return message;
        }
        return "fault of the program: " + cause.getClass().getSimpleName() + (message.isEmpty() ? "" : ": " + message);
    }

    @Override
    public String toString() {
        return fallCase.describe() + ": " + reason();
    }
}
