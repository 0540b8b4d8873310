package org.lifeline.internal.numeric;

import java.util.ArrayDeque;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.FutureTask;
import java.util.concurrent.RejectedExecutionException;
import java.util.function.BiFunction;
import java.util.function.LongFunction;

/**
 * Ordered work on the threads of an executor. At most {@value #WINDOW} pieces are under way, so that memory does not grow with
 * their number. The calling thread helps: while the piece that is due is not done, the caller does pieces that no thread of the
 * executor has begun, so that no thread idles, and an executor that is busy, or that the caller itself runs on, cannot block.
 *
 * <p>Everything that needs threads is reached through an object of this class, which nobody makes who names no executor: a
 * compiler for a place without threads, such as a browser, leaves it out. It is not final for that reason: such a compiler
 * follows a call of a final class without an object of it. Immutable and thread-safe.
 */
public class SharedWork {
    private static final int WINDOW = 64;

    private final Executor executor;

    /**
     * Work on an executor.
     *
     * @param executor where the work is done
     */
    public SharedWork(Executor executor) {
        this.executor = executor;
    }

    /**
     * Hands the executor on to another analysis.
     *
     * @param <A> the analysis
     * @param analysis an analysis that does its work alone
     * @param with how it takes an executor
     * @return the analysis with the executor
     */
    public <A> A given(A analysis, BiFunction<A, Executor, A> with) {
        return with.apply(analysis, executor);
    }

    /** Offers a piece to the executor; one that takes no more leaves it to the caller, who runs what nobody has run. */
    private void offer(Runnable piece) {
        try {
            executor.execute(piece);
        } catch (RejectedExecutionException e) {
            // The caller comes to the piece in its turn.
        }
    }

    <T> long run(long count, LongFunction<T> task, OrderedWork.Sink<T> sink) {
        ArrayDeque<FutureTask<T>> underWay = new ArrayDeque<>();
        Thread caller = Thread.currentThread();
        long next = 0;
        long taken = 0;
        try {
            while (taken < count) {
                while (next < count && underWay.size() < WINDOW) {
                    OrderedWork.stopIfInterrupted();
                    FutureTask<T> piece = piece(task, next++);
                    underWay.add(piece);
                    offer(() -> runFor(caller, piece));
                }
                FutureTask<T> first = underWay.element();
                first.run();
                help(first, underWay);
                OrderedWork.stopIfInterrupted();
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
            // The last first: a thread that is set free by its piece's end finds none left to begin.
            underWay.descendingIterator().forEachRemaining(f -> f.cancel(true));
        }
    }

    private static <T> FutureTask<T> piece(LongFunction<T> task, long index) {
        return new FutureTask<>(() -> {
            T result = task.apply(index);
            OrderedWork.stopIfInterrupted();
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
