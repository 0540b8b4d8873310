package org.lifeline.design.envelope;

import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;

/** Puts a failure into words. */
final class Reasons {
    private Reasons() {}

    static String of(RuntimeException e) {
        String message = e.getMessage() == null ? "" : e.getMessage();
        if (e instanceof NoEquilibriumException || e instanceof InvalidInputException) {
            return message;
        }
        return "fault of the program: " + e.getClass().getSimpleName() + (message.isEmpty() ? "" : ": " + message);
    }
}
