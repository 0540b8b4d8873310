package org.lifeline.internal.numeric;

import java.util.concurrent.CancellationException;
import org.lifeline.base.ProgressListener;

/**
 * One long computation under way: a listener hears of its parts, and hears again while a part goes on, so that it can end it
 * there. It is told by the amount of work done and not by the clock. Not thread-safe.
 */
public final class WatchedWork {
    /** Work after which the listener is asked again [unknowns times Newton steps]: some tens of milliseconds. */
    private static final long BETWEEN = 50_000;

    private final ProgressListener listener;
    private final long parts;
    private long done;
    private long since;

    /**
     * Work of some parts.
     *
     * @param parts number of parts
     * @param listener hears of them
     */
    public WatchedWork(long parts, ProgressListener listener) {
        this.parts = parts;
        this.listener = listener;
    }

    /**
     * Work that nobody listens to: it ends by an interrupt only.
     *
     * @return the work
     */
    public static WatchedWork alone() {
        return new WatchedWork(0, ProgressListener.none());
    }

    /**
     * A small piece of work, some milliseconds at most, is about to be done.
     *
     * @param amount how much it is
     * @throws CancellationException if the thread is interrupted, whose flag stays set, or the listener wants no more
     */
    public void goOn(long amount) {
        OrderedWork.stopIfInterrupted();
        since += amount;
        if (since >= BETWEEN) {
            tell();
        }
    }

    /**
     * A part is done.
     *
     * @throws CancellationException if the thread is interrupted, whose flag stays set, or the listener wants no more
     */
    public void partDone() {
        OrderedWork.stopIfInterrupted();
        done++;
        tell();
    }

    private void tell() {
        since = 0;
        if (!listener.progress(done, parts)) {
            throw new CancellationException("ended by the listener");
        }
    }
}
