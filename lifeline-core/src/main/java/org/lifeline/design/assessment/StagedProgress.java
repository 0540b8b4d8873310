package org.lifeline.design.assessment;

import org.lifeline.base.ProgressListener;

/** Adds up the pieces of work of several stages for one listener; the total grows as stages become known. Not thread-safe. */
final class StagedProgress {
    private final ProgressListener listener;
    private long before;
    private long stage;
    private boolean going = true;

    StagedProgress(ProgressListener listener) {
        this.listener = listener;
    }

    /** Begins a stage of so many pieces; the former stage is over. */
    void begin(long pieces) {
        before += stage;
        stage = pieces;
    }

    /** So many pieces of the stage are done. */
    boolean done(long pieces) {
        going = going && listener.progress(before + pieces, before + stage);
        return going;
    }

    /** A listener for a stage that counts for itself. */
    ProgressListener stage() {
        begin(0);
        return (done, total) -> {
            stage = total;
            return done(done);
        };
    }

    boolean going() {
        return going;
    }
}
