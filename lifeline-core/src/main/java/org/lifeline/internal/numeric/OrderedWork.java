package org.lifeline.internal.numeric;

import java.util.ArrayDeque;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.FutureTask;
import java.util.concurrent.RejectedExecutionException;
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
     * @return number of results taken: less than count when the sink stopped the work, or when the calling thread or one
     *     that worked for it was interrupted. The calling thread's interrupt flag stays set. Pieces under way are
     *     interrupted, and what a piece gave after its thread was interrupted is not taken: it may be half of a result
     */
    public static <T> long run(long count, LongFunction<T> task, @Nullable Executor executor, Sink<T> sink) {
        return executor == null ? alone(count, task, sink) : shared(count, task, executor, sink);
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

    /** Offers a piece to the executor; one that takes no more leaves it to the caller, who runs what nobody has run. */
    private static void offer(Executor executor, Runnable piece) {
        try {
            executor.execute(piece);
        } catch (RejectedExecutionException e) {
            // The caller comes to the piece in its turn.
        }
    }

    private static <T> long shared(long count, LongFunction<T> task, Executor executor, Sink<T> sink) {
        ArrayDeque<FutureTask<T>> underWay = new ArrayDeque<>();
        Thread caller = Thread.currentThread();
        long next = 0;
        long taken = 0;
        try {
            while (taken < count) {
                while (next < count && underWay.size() < WINDOW) {
                    stopIfInterrupted();
                    FutureTask<T> piece = piece(task, next++);
                    underWay.add(piece);
                    offer(executor, () -> runFor(caller, piece));
                }
                FutureTask<T> first = underWay.element();
                first.run();
                help(first, underWay);
                stopIfInterrupted();
                T result = first.get();
                underWay.remove();
                if (!sink.take(taken++, result)) {
                    return taken;
                }
            }
            return count;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return taken;
        } catch (CancellationException e) {
            return taken;
        } catch (ExecutionException e) {
            if (e.getCause() instanceof CancellationException) {
                return taken;
            }
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            if (e.getCause() instanceof Error cause) {
                throw cause;
            }
            throw new IllegalStateException("a task threw a checked exception", e.getCause());
        } finally {
            underWay.forEach(f -> f.cancel(true));
        }
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

    private static <T> FutureTask<T> piece(LongFunction<T> task, long index) {
        return new FutureTask<>(() -> {
            T result = task.apply(index);
            stopIfInterrupted();
            return result;
        });
    }

    /** Runs a piece; the interrupt by which it was cancelled is not left to the next task of the same thread. */
    private static void runFor(Thread caller, FutureTask<?> piece) {
        piece.run();
        if (piece.isCancelled() && Thread.currentThread() != caller) {
            Thread.interrupted();
        }
    }

    /** Does what nobody has begun, until a piece is done or all are begun; running a piece that has begun does nothing. */
    private static <T> void help(FutureTask<T> awaited, Iterable<FutureTask<T>> others) {
        for (FutureTask<T> each : others) {
            if (awaited.isDone() || Thread.currentThread().isInterrupted()) {
                return;
            }
            each.run();
        }
    }
}
