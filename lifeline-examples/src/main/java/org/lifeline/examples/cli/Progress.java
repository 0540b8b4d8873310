package org.lifeline.examples.cli;

import java.io.PrintStream;
import java.util.Locale;
import java.util.function.LongSupplier;
import org.lifeline.base.ProgressListener;

/** Says how far a long computation is: nothing within the first second, then about once a second. Not thread-safe. */
public final class Progress implements ProgressListener {
    private static final long SECOND = 1_000_000_000L;

    private final PrintStream err;
    private final LongSupplier nanoTime;
    private long next;

    /**
     * Begins.
     *
     * @param err where it is said
     * @param nanoTime a clock [ns]
     */
    public Progress(PrintStream err, LongSupplier nanoTime) {
        this.err = err;
        this.nanoTime = nanoTime;
        this.next = nanoTime.getAsLong() + SECOND;
    }

    @Override
    public boolean progress(long done, long total) {
        long now = nanoTime.getAsLong();
        if (now - next >= 0) {
            err.println(String.format(Locale.ROOT, "computing: %d of %d done", done, total));
            err.flush();
            next = now + SECOND;
        }
        return true;
    }
}
