package org.lifeline.internal.numeric;

import java.util.ArrayDeque;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.FutureTask;
import java.util.function.LongFunction;
import org.jspecify.annotations.Nullable;

/**
 * Independent pieces of work whose results are taken in order, so that the outcome is the same for any number of
 * threads. At most {@value #WINDOW} pieces are under way, so that memory does not grow with their number. The calling
 * thread helps: while the piece that is due is not done, the caller does pieces that no thread of the executor has begun, so
 * that no thread idles, and an executor that is busy, or that the caller itself runs on, cannot block.
 */
public final class OrderedWork {
    private static final int WINDOW = 64;

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
     * @param executor where the work is done; the calling thread alone if there is none
     * @param sink takes the results, in order, in the calling thread
     * @return number of results taken: less than count when the sink stopped the work, or the calling thread was
     *     interrupted (its interrupt flag is then set)
     */
    public static <T> long run(long count, LongFunction<T> task, @Nullable Executor executor, Sink<T> sink) {
        if (executor == null) {
            for (long i = 0; i < count; i++) {
                if (!sink.take(i, task.apply(i))) {
                    return i + 1;
                }
            }
            return count;
        }
        ArrayDeque<FutureTask<T>> underWay = new ArrayDeque<>();
        long next = 0;
        try {
            for (long i = 0; i < count; i++) {
                while (next < count && underWay.size() < WINDOW) {
                    long index = next++;
                    FutureTask<T> piece = new FutureTask<>(() -> task.apply(index));
                    underWay.add(piece);
                    executor.execute(piece);
                }
                FutureTask<T> first = underWay.remove();
                first.run();
                help(first, underWay);
                if (!sink.take(i, first.get())) {
                    return i + 1;
                }
            }
            return count;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return next - underWay.size() - 1;
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            if (e.getCause() instanceof Error cause) {
                throw cause;
            }
            throw new IllegalStateException("a task threw a checked exception", e.getCause());
        } finally {
            underWay.forEach(f -> f.cancel(false));
        }
    }

    /** Does what nobody has begun, until a piece is done or all are begun; running a piece that has begun does nothing. */
    private static <T> void help(FutureTask<T> awaited, Iterable<FutureTask<T>> others) {
        for (FutureTask<T> each : others) {
            if (awaited.isDone()) {
                return;
            }
            each.run();
        }
    }
}
