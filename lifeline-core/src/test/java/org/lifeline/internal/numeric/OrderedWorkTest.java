package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import java.util.function.LongFunction;
import java.util.stream.LongStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The same truths for work alone and for work on executors that need no thread of their own. */
@Timeout(20)
class OrderedWorkTest {
    /** Ways to have the work done. */
    enum Way {
        ALONE,
        AT_ONCE,
        REFUSING,
        FORGETFUL;

        SharedWork shared() {
            Executor executor =
                    switch (this) {
                        case ALONE, AT_ONCE -> Runnable::run;
                        case REFUSING ->
                            piece -> {
                                throw new RejectedExecutionException("no more");
                            };
                        case FORGETFUL -> piece -> {};
                    };
            return new SharedWork(executor);
        }
    }

    private final List<Long> taken = new ArrayList<>();

    private long run(Way way, long count, LongFunction<Long> task, long last) {
        return OrderedWork.run(count, task, way == Way.ALONE ? null : way.shared(), (i, x) -> {
            assertThat(x).isEqualTo(i * i);
            taken.add(i);
            return i < last;
        });
    }

    private static List<Long> upTo(long count) {
        return LongStream.range(0, count).boxed().toList();
    }

    @AfterEach
    void clear() {
        Thread.interrupted();
    }

    @ParameterizedTest
    @EnumSource
    void allResultsAreTakenInOrder(Way way) {
        assertThat(run(way, 200, i -> i * i, 1000)).isEqualTo(200);
        assertThat(taken).isEqualTo(upTo(200));
    }

    @ParameterizedTest
    @EnumSource
    void noWorkIsDoneForNothing(Way way) {
        assertThat(run(way, 0, i -> i * i, 1000)).isZero();
        assertThat(taken).isEmpty();
    }

    @ParameterizedTest
    @EnumSource
    void theSinkStopsTheWork(Way way) {
        assertThat(run(way, 200, i -> i * i, 6)).isEqualTo(7);
        assertThat(taken).isEqualTo(upTo(7));
    }

    @ParameterizedTest
    @EnumSource
    void aPieceThatIsCancelledEndsTheWorkBeforeIt(Way way) {
        LongFunction<Long> task = i -> {
            if (i == 5) {
                throw new CancellationException("enough");
            }
            return i * i;
        };
        assertThat(run(way, 200, task, 1000)).isEqualTo(5);
        assertThat(taken).isEqualTo(upTo(5));
    }

    @ParameterizedTest
    @EnumSource
    void anInterruptedCallerBeginsNothing(Way way) {
        Thread.currentThread().interrupt();
        assertThat(run(way, 200, i -> i * i, 1000)).isZero();
        assertThat(Thread.interrupted()).as("the flag stays set").isTrue();
        assertThat(taken).isEmpty();
    }

    @ParameterizedTest
    @EnumSource
    void whatAPieceGaveAfterAnInterruptIsNotTaken(Way way) {
        LongFunction<Long> task = i -> {
            if (i == 3) {
                Thread.currentThread().interrupt();
                return -1L;
            }
            return i * i;
        };
        long got = run(way, 200, task, 1000);
        assertThat(got).isEqualTo(taken.size()).isLessThanOrEqualTo(3);
        assertThat(Thread.interrupted()).isTrue();
    }

    @ParameterizedTest
    @EnumSource
    void faultsAndErrorsComeThroughAsTheyAre(Way way) {
        RuntimeException fault = new ArithmeticException("a fault");
        Error error = new StackOverflowError("an error");
        assertThatThrownBy(() -> run(way, 9, i -> thrown(fault, i), 1000)).isSameAs(fault);
        assertThatThrownBy(() -> run(way, 9, i -> thrown(error, i), 1000)).isSameAs(error);
    }

    @SuppressWarnings("unchecked")
    private static <E extends Throwable> Long thrown(Throwable e, long i) throws E {
        if (i == 2) {
            throw (E) e;
        }
        return i * i;
    }

    /** No task that the compiler lets pass throws one; a task that does all the same is told by name. */
    @Test
    void aCheckedExceptionIsWrapped() {
        Exception checked = new Exception("checked");
        assertThatThrownBy(() -> run(Way.AT_ONCE, 9, i -> OrderedWorkTest.<RuntimeException>thrown(checked, i), 1000))
                .isInstanceOf(IllegalStateException.class)
                .hasCause(checked);
    }

    @Test
    void noMoreThanTheWindowIsUnderWay() {
        List<Long> begun = new ArrayList<>();
        LongFunction<Long> task = i -> {
            begun.add(i);
            return i * i;
        };
        assertThat(run(Way.AT_ONCE, 1000, task, 0)).isEqualTo(1);
        assertThat(begun).hasSize(64);
        begun.clear();
        taken.clear();
        assertThat(run(Way.ALONE, 1000, task, 0)).isEqualTo(1);
        assertThat(begun).hasSize(1);
    }

    @Test
    void theExecutorIsHandedOn() {
        Executor executor = Runnable::run;
        Executor[] handed = new Executor[1];
        String result = new SharedWork(executor).given("analysis", (a, e) -> {
            handed[0] = e;
            return a + " with threads";
        });
        assertThat(result).isEqualTo("analysis with threads");
        assertThat(handed[0]).isSameAs(executor);
    }
}
