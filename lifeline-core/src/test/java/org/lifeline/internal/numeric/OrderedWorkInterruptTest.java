package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** An interrupt of the caller ends ordered work at once, keeps what is complete and leaves no thread at work. */
@Timeout(60)
class OrderedWorkInterruptTest {
    /** Pieces that may be begun before the caller looks: the window, and one for each thread. */
    private static final long SLACK = 64 + 4;

    @AfterEach
    void clear() {
        Thread.interrupted();
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 4})
    void anInterruptEndsTheWork(int threads) throws InterruptedException {
        ExecutorService pool = threads == 0 ? null : Executors.newFixedThreadPool(threads);
        Thread caller = Thread.currentThread();
        AtomicLong begun = new AtomicLong();
        AtomicLong taken = new AtomicLong();
        long got = OrderedWork.run(
                60_000,
                i -> {
                    if (begun.incrementAndGet() == 352) {
                        caller.interrupt();
                    }
                    return i;
                },
                pool == null ? null : new SharedWork(pool),
                (i, x) -> {
                    assertThat(x).isEqualTo(i);
                    return taken.incrementAndGet() > 0;
                });
        assertThat(Thread.interrupted()).as("the flag stays set").isTrue();
        assertThat(got).isEqualTo(taken.get()).isLessThan(352);
        if (pool != null) {
            pool.shutdown();
            assertThat(pool.awaitTermination(30, TimeUnit.SECONDS)).isTrue();
        }
        assertThat(begun.get()).isBetween(352L, 352 + SLACK);
    }

    /** A caller that waits for long pieces, and threads that are in the middle of them. */
    @Test
    void threadsInTheMiddleOfAPieceAreInterrupted() throws InterruptedException {
        ExecutorService pool = Executors.newFixedThreadPool(2);
        Thread caller = Thread.currentThread();
        CountDownLatch never = new CountDownLatch(1);
        AtomicLong ended = new AtomicLong();
        long got = OrderedWork.run(
                1000,
                i -> {
                    if (Thread.currentThread() == caller) {
                        caller.interrupt();
                        OrderedWork.stopIfInterrupted();
                    }
                    try {
                        never.await();
                    } catch (InterruptedException e) {
                        ended.incrementAndGet();
                        Thread.currentThread().interrupt();
                    }
                    return i;
                },
                new SharedWork(pool),
                (i, x) -> true);
        assertThat(Thread.interrupted()).isTrue();
        assertThat(got).isZero();
        AtomicLong clean = new AtomicLong();
        for (int i = 0; i < 8; i++) {
            pool.execute(() -> {
                if (!Thread.currentThread().isInterrupted()) {
                    clean.incrementAndGet();
                }
            });
        }
        pool.shutdown();
        assertThat(pool.awaitTermination(30, TimeUnit.SECONDS))
                .as("no thread is left at work")
                .isTrue();
        assertThat(clean.get()).as("no interrupt is left to other tasks").isEqualTo(8);
    }

    @Test
    void anExecutorThatRunsInTheCallerIsStoppedToo() {
        Executor direct = Runnable::run;
        AtomicLong begun = new AtomicLong();
        long got = OrderedWork.run(
                60_000,
                i -> {
                    if (begun.incrementAndGet() == 10) {
                        Thread.currentThread().interrupt();
                    }
                    return i;
                },
                new SharedWork(direct),
                (i, x) -> true);
        assertThat(got).isZero();
        assertThat(begun.get()).isEqualTo(10);
    }

    /** A pool that its owner shuts down: what its threads were at is not taken for a result. */
    @Test
    void aPoolThatIsShutDownGivesNoHalfResults() {
        ExecutorService pool = Executors.newFixedThreadPool(1);
        AtomicLong wrong = new AtomicLong();
        long got = OrderedWork.run(
                40,
                i -> {
                    if (i == 5) {
                        pool.shutdownNow();
                    }
                    return Thread.currentThread().isInterrupted() ? -1L : i;
                },
                new SharedWork(pool),
                (i, x) -> {
                    wrong.addAndGet(x == i ? 0 : 1);
                    return true;
                });
        assertThat(got).isLessThanOrEqualTo(40);
        assertThat(wrong.get()).isZero();
    }

    @Test
    void faultsAreThrownWithAndWithoutThreads() {
        assertThatThrownBy(() -> OrderedWork.run(9, OrderedWorkInterruptTest::faulty, null, (i, x) -> true))
                .isInstanceOf(ArithmeticException.class);
        ExecutorService pool = Executors.newFixedThreadPool(2);
        try {
            assertThatThrownBy(() ->
                            OrderedWork.run(9, OrderedWorkInterruptTest::faulty, new SharedWork(pool), (i, x) -> true))
                    .isInstanceOf(ArithmeticException.class);
        } finally {
            pool.shutdownNow();
        }
    }

    private static Long faulty(long i) {
        if (i == 4) {
            throw new ArithmeticException("a fault");
        }
        return i;
    }
}
