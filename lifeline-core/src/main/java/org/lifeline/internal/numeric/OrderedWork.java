package org.lifeline.internal.numeric;

import java.util.concurrent.CancellationException;
import java.util.function.LongFunction;
import org.jspecify.annotations.Nullable;

/**
 * Independent pieces of work whose results are taken in order, so that the outcome is the same for any number of
 * threads. Without threads to share it, the calling thread does one piece after the other and needs nothing of
 * {@code java.util.concurrent} but the exception: that is the way where there are no threads.
 */
public final class OrderedWork {
    private OrderedWork() {}

    /**
     * Takes one result after the other.
     *
     * @param <T> result of a piece of work
     */
    @FunctionalInterface
    public interface Sink<T> {
        /**
         * Takes the next result.
         *
         * @param index number of the piece of work, from 0
         * @param result its result
         * @return true to go on, false to stop
         */
        boolean take(long index, T result);
    }

    /**
     * Does the work.
     *
     * @param <T> result of a piece of work
     * @param count number of pieces
     * @param task the work of one piece
     * @param shared the threads that share the work; the calling thread alone if there are none
     * @param sink takes the results, in order, in the calling thread
     * @return number of results taken: less than count when the sink stopped the work, or when the calling thread or one
     *     that worked for it was interrupted. The calling thread's interrupt flag stays set. Pieces under way are
     *     interrupted, and what a piece gave after its thread was interrupted is not taken: it may be half of a result
     */
    public static <T> long run(long count, LongFunction<T> task, @Nullable SharedWork shared, Sink<T> sink) {
        return shared == null ? alone(count, task, sink) : shared.run(count, task, sink);
    }

    private static <T> long alone(long count, LongFunction<T> task, Sink<T> sink) {
        for (long i = 0; i < count; i++) {
            T result;
            try {
                stopIfInterrupted();
                result = task.apply(i);
                stopIfInterrupted();
            } catch (CancellationException e) {
                return i;
            }
            if (!sink.take(i, result)) {
                return i + 1;
            }
        }
        return count;
    }

    /**
     * Ends a long piece of work whose thread was interrupted; to be called every few milliseconds.
     *
     * @throws CancellationException if the current thread is interrupted; its interrupt flag stays set
     */
    public static void stopIfInterrupted() {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("interrupted");
        }
    }
}
