package org.lifeline.base;

/**
 * Told how far a long computation has come; can end it. Called from the thread that started the computation.
 *
 * @since 1.0.0
 */
@FunctionalInterface
public interface ProgressListener {
    /**
     * Says how far the computation has come.
     *
     * @param done number of pieces of work done
     * @param total number of pieces of work in all, as far as it is known yet
     * @return true to go on, false to stop and keep what was done
     */
    boolean progress(long done, long total);

    /**
     * A listener that hears nothing and never stops.
     *
     * @return the listener
     */
    static ProgressListener none() {
        return (done, total) -> true;
    }
}
