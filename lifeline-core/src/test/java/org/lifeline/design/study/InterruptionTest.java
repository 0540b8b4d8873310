package org.lifeline.design.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.ProgressListener;
import org.lifeline.base.Violation;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.DesignResult;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.WorstCases;
import org.lifeline.design.variable.Axis;
import org.lifeline.design.variable.DesignMap;
import org.lifeline.design.variable.DesignMapResult;
import org.lifeline.design.variable.DesignVariable;
import org.lifeline.design.variable.DesignVariables;
import org.lifeline.design.variable.FeasibleResult;
import org.lifeline.design.variable.FeasibleSearch;
import org.lifeline.model.Attachment;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.absorber.DeploymentForce;

/** Long calls end when their thread is interrupted, keep what is complete and say that it is not all. */
@Timeout(120)
class InterruptionTest {
    private static final LifelineDesign DESIGN = design();
    private static final DesignVariable TENSION = DesignVariables.pretension(Interval.of(500, 5e3));
    private static final List<UncertainVariable> UNCERTAIN =
            List.of(new UncertainVariable(TENSION, Distribution.uniform(Interval.of(1000, 2000))));
    private static final List<Criterion> CRITERIA =
            List.of(Criteria.of("us-osha-hll-factor").orElseThrow());

    private static LifelineDesign design() {
        return Designs.fallInTheMiddle(
                Designs.design(2, Passage.free(), Attachment.FREE_RUNNING).withTemperatures(List.of(15.0)));
    }

    @AfterEach
    void clear() {
        Thread.interrupted();
    }

    /** An evaluation that interrupts the thread that asked for the study in a certain case. */
    private static Evaluation interrupting(int at, Thread caller, AtomicInteger begun) {
        return Evaluation.ofOne(new Response("x", "-"), d -> {
            if (begun.incrementAndGet() == at) {
                caller.interrupt();
            }
            return begun.get();
        });
    }

    /** The same, where no later case ends by itself: each lasts until its own thread is interrupted. */
    private static Evaluation interruptingAndLasting(int at, Thread caller, AtomicInteger begun) {
        Evaluation inner = interrupting(at, caller, begun);
        CountDownLatch never = new CountDownLatch(1);
        return Evaluation.ofOne(new Response("x", "-"), d -> {
            double value = inner.evaluate(d)[0];
            if (value >= at) {
                try {
                    never.await();
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
            }
            return value;
        });
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 2})
    void aStudyOfSixtyThousandCasesEnds(int threads) throws InterruptedException {
        ExecutorService pool = threads == 0 ? null : Executors.newFixedThreadPool(threads);
        AtomicInteger begun = new AtomicInteger();
        MonteCarlo study = MonteCarlo.withSeed(18);
        MonteCarloResult r = (pool == null ? study : study.withExecutor(pool))
                .solve(DESIGN, UNCERTAIN, interruptingAndLasting(352, Thread.currentThread(), begun), 60_000);
        assertThat(Thread.interrupted()).isTrue();
        assertThat(r.isComplete()).isFalse();
        assertThat(r.cases()).isLessThan(352);
        assertThat(r.failed()).isZero();
        assertThat(r.incompleteBecause()).contains("the study was ended after " + r.cases() + " of 60000 cases");
        if (pool != null) {
            pool.shutdown();
            assertThat(pool.awaitTermination(30, TimeUnit.SECONDS)).isTrue();
        }
        // The batches under way end at their next case, one for each thread; those that were not begun never begin.
        assertThat(begun.get()).isBetween(352, 352 + threads);
    }

    @Test
    void aSweepEnds() {
        AtomicInteger begun = new AtomicInteger();
        SweepResult table = Sweep.withDefaults()
                .solve(DESIGN, List.of(Axis.even(TENSION, 1000)), interrupting(20, Thread.currentThread(), begun));
        assertThat(table.rows()).hasSize(19);
        assertThat(table.isComplete()).isFalse();
        assertThat(table.incompleteBecause()).hasValue("the sweep was ended after 19 of 1000 rows");
        assertThat(begun.get()).isEqualTo(20);
    }

    /** Interrupts the thread in a certain analysis of a design. */
    private static WorstCases interrupting(int at, AtomicInteger begun) {
        DesignAnalysis inner = DesignAnalysis.withDefaults();
        return d -> {
            if (begun.incrementAndGet() == at) {
                Thread.currentThread().interrupt();
            }
            return inner.extremes(d);
        };
    }

    @Test
    void aSearchThatWasEndedSaysNothingOfWhatItDidNotTry() {
        FeasibleResult r = FeasibleSearch.withCriteria(CRITERIA)
                .withAnalysis(interrupting(3, new AtomicInteger()))
                .solve(DESIGN, TENSION);
        assertThat(Thread.interrupted()).isTrue();
        assertThat(r.isComplete()).isFalse();
        assertThat(r.trials()).hasSize(2).noneMatch(t -> t.reason().contains("ended early"));
        assertThat(r.noneBecause().orElse("")).doesNotContain("meets all criteria; the least bad");

        FeasibleResult byListener = FeasibleSearch.withCriteria(CRITERIA)
                .withAnalysis(DesignAnalysis.withDefaults())
                .withProgress((done, total) -> done < 2)
                .solve(DESIGN, TENSION);
        assertThat(byListener.isComplete()).isFalse();
        assertThat(byListener.noneBecause())
                .hasValueSatisfying(why ->
                        assertThat(why).contains("was ended after 2 values").contains("of the others it says nothing"));

        Thread.currentThread().interrupt();
        assertThatThrownBy(() -> FeasibleSearch.withCriteria(CRITERIA).solve(DESIGN, TENSION))
                .isInstanceOf(CancellationException.class)
                .hasMessageContaining("before a value of");
    }

    @Test
    void aMapEndsWithTheColumnsThatAreWhole() {
        Axis first = Axis.even(DesignVariables.lineElevation(Interval.of(10, 12)), 5);
        AtomicInteger calls = new AtomicInteger();
        DesignMapResult wholeMap = DesignMap.withCriteria(CRITERIA)
                .withAnalysis(interrupting(-1, calls))
                .solve(DESIGN, first, Axis.even(TENSION, 3));
        List<DesignMap.Column> whole = wholeMap.columns();
        assertThat(whole).hasSize(5);
        assertThat(wholeMap.isComplete()).isTrue();
        DesignMapResult someMap = DesignMap.withCriteria(CRITERIA)
                .withAnalysis(interrupting(calls.get() / 2, new AtomicInteger()))
                .solve(DESIGN, first, Axis.even(TENSION, 3));
        assertThat(Thread.interrupted()).isTrue();
        List<DesignMap.Column> some = someMap.columns();
        assertThat(some).hasSizeBetween(1, 4);
        assertThat(someMap.isComplete()).isFalse();
        assertThat(someMap.incompleteBecause())
                .hasValueSatisfying(
                        why -> assertThat(why).startsWith("the map was ended after " + some.size() + " of 5 columns"));
        for (int i = 0; i < some.size(); i++) {
            assertThat(some.get(i).range().isComplete()).isTrue();
            assertThat(some.get(i).cells()).isEqualTo(whole.get(i).cells());
        }
    }

    @Test
    void anEnvelopeAndAnAnalysisEnd() {
        ProgressListener third = (done, total) -> {
            if (done == 3) {
                Thread.currentThread().interrupt();
            }
            return true;
        };
        EnvelopeResult envelope = Envelope.withDefaults().withProgress(third).solve(DESIGN);
        assertThat(Thread.interrupted()).isTrue();
        assertThat(envelope.isComplete()).isFalse();
        assertThat(envelope.extremes().coversEverything()).isFalse();

        LifelineDesign many = DESIGN.withTemperatures(List.of(5.0, 10.0, 15.0, 20.0));
        DesignResult result = DesignAnalysis.withDefaults().withProgress(third).solve(many);
        assertThat(Thread.interrupted()).isTrue();
        assertThat(result.arrests()).hasSize(3);
        assertThat(result.failures()).isEmpty();
        assertThat(result.extremes().coversEverything()).isFalse();
    }

    /** What a caller's own evaluation throws by mistake is thrown, with threads and without; no case counts as failed. */
    @Test
    void aFaultOfTheCallersOwnEvaluationIsThrown() {
        Evaluation faulty = Evaluation.ofOne(new Response("x", "-"), d -> {
            throw new ArithmeticException("a slip of the caller");
        });
        Evaluation wrongSize = Evaluation.of(List.of(new Response("x", "-")), d -> new double[2]);
        ExecutorService pool = Executors.newFixedThreadPool(2);
        try {
            for (MonteCarlo study :
                    List.of(MonteCarlo.withSeed(1), MonteCarlo.withSeed(1).withExecutor(pool))) {
                assertThatThrownBy(() -> study.solve(DESIGN, UNCERTAIN, faulty, 200))
                        .isInstanceOf(ArithmeticException.class)
                        .hasMessage("a slip of the caller");
                assertThatThrownBy(() -> study.solve(DESIGN, UNCERTAIN, wrongSize, 200))
                        .isInstanceOf(IllegalStateException.class)
                        .hasMessage("the evaluation gave 2 values for 1 responses");
            }
            assertThatThrownBy(() -> Sweep.withDefaults().solve(DESIGN, List.of(Axis.even(TENSION, 9)), faulty))
                    .isInstanceOf(ArithmeticException.class);
        } finally {
            pool.shutdownNow();
        }
    }

    @Test
    void aStudyWithFailedCasesSaysSo() {
        AtomicInteger number = new AtomicInteger();
        Evaluation some = Evaluation.ofOne(new Response("x", "-"), d -> {
            if (number.incrementAndGet() % 2 == 0) {
                throw new InvalidInputException(List.of(new Violation("x", "2", "must be odd")));
            }
            return 1;
        });
        MonteCarloResult r = MonteCarlo.withSeed(5).solve(DESIGN, UNCERTAIN, some, 200);
        assertThat(r.isComplete()).isTrue();
        assertThat(r.failed()).isEqualTo(100);
        assertThat(r.incompleteBecause())
                .contains("100 of 200 cases have no result, the first because: x: 2: must be odd");
        Evaluation all = Evaluation.firstFall(DeploymentForce.MAXIMUM, List.of(Quantity.END_ANCHOR_LOAD));
        assertThat(MonteCarlo.withSeed(5).solve(DESIGN, UNCERTAIN, all, 20).incompleteBecause())
                .isEmpty();
    }
}
