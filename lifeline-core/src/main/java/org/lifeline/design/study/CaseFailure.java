package org.lifeline.design.study;

/** A case of a study has no result; the message is the reason. */
final class CaseFailure extends RuntimeException {
    private static final long serialVersionUID = 1L;

    CaseFailure(String reason) {
        super(reason);
    }

    /** Puts a failure into words. */
    static String reason(RuntimeException e) {
        String message = e.getMessage() == null ? "" : e.getMessage();
        if (e instanceof CaseFailure || e.getClass().getName().startsWith("org.lifeline.base.")) {
            return message;
        }
        return "fault of the program: " + e.getClass().getSimpleName() + (message.isEmpty() ? "" : ": " + message);
    }
}
