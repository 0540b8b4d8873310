package org.lifeline.file.output;

import java.io.IOException;

/** An output was refused, or could not be written; the message names the output and says why. */
public final class OutputException extends IOException {
    private static final long serialVersionUID = 1L;

    /** True if the place was refused, false if writing failed. */
    private final boolean refused;

    private OutputException(String message, boolean refused) {
        super(message);
        this.refused = refused;
    }

    static OutputException refused(String name, String why) {
        return new OutputException(name + ": " + why, true);
    }

    static OutputException failed(String name, IOException cause) {
        if (cause instanceof OutputException e) {
            return e;
        }
        OutputException e = new OutputException(name + ": " + FileNames.reason(cause), false);
        e.initCause(cause);
        return e;
    }

    /**
     * Tells a bad choice of place from a failure of the machine.
     *
     * @return true if the place was refused; false if writing there failed, such as on a full disk
     */
    public boolean isRefused() {
        return refused;
    }
}
