package org.lifeline.design.study;

import org.lifeline.design.envelope.FailedCase;

/** A case of a study has no result; the message is the reason. */
final class CaseFailure extends RuntimeException {
    private static final long serialVersionUID = 1L;

    CaseFailure(String reason) {
        super(reason);
    }

    /** Puts a failure into words. */
    static String reason(RuntimeException e) {
        return e instanceof CaseFailure ? String.valueOf(e.getMessage()) : FailedCase.words(e);
    }
}
