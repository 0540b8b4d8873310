package org.lifeline.design.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.study.partial.CaseRange;
import org.lifeline.design.study.partial.StudyPartial;
import org.lifeline.design.variable.DesignVariables;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.absorber.DeploymentForce;

/** Parts of a study, in any order and grouping, give what one machine gives, to the last bit. */
class MonteCarloPartTest {
    private static final LifelineDesign DESIGN = Designs.fallInTheMiddle();
    private static final MonteCarlo STUDY = MonteCarlo.withSeed(11);

    /** Some cases fail: the pretension is drawn beyond its bounds now and then. */
    private static final List<UncertainVariable> VARIABLES = List.of(
            new UncertainVariable(DesignVariables.pretension(Interval.of(900, 5e3)), Distribution.normal(1500, 300)),
            new UncertainVariable(
                    DesignVariables.axialStiffness(Interval.of(1e6, 1e7)), Distribution.logNormal(4.9e6, 0.1)),
            new UncertainVariable(DesignVariables.workerMass(Interval.of(50, 150)), Distribution.gumbel(90, 6)));

    private static final Evaluation REAL =
            Evaluation.firstFall(DeploymentForce.MAXIMUM, List.of(Quantity.END_ANCHOR_LOAD, Quantity.SAG));

    /** A response of both signs that some cases lack, so cheap that many cases are no burden. */
    private static final Evaluation CHEAP = Evaluation.of(
            List.of(new Response("tension less a limit", "N"), new Response("mass where light", "kg")), d -> {
                double mass = d.workers().get(0).mass();
                return new double[] {
                    d.line().installed().value() - 1480 + 3 * (mass - 90), mass < 95 ? mass : Double.NaN
                };
            });

    /** Every number that a result gives, bit by bit. */
    private static List<String> digits(MonteCarloResult r) {
        List<String> list = new ArrayList<>();
        list.add(r.seed() + " " + r.cases() + " " + r.failed() + " " + r.isComplete() + " " + r.incompleteBecause());
        for (StudyRow row : r.failures()) {
            list.add(row.toString());
        }
        for (int i = 0; i < r.summaries().size(); i++) {
            Summary s = r.summaries().get(i);
            double[] numbers = {
                s.mean(), s.deviation(), s.smallest(), s.largest(), s.shareAbove(s.mean()), r.determination(i)
            };
            list.add(s.response() + " " + s.count());
            for (double x : numbers) {
                list.add(Double.toHexString(x));
            }
            for (double share : new double[] {0.01, 0.5, 0.95, 0.999}) {
                QuantileEstimate q = s.quantile(share);
                list.add(Double.toHexString(q.value()) + " " + q.low() + " " + q.high());
            }
            for (Sensitivity each : r.ranking(i)) {
                list.add(each.variable().name() + " " + Double.toHexString(each.regression()) + " "
                        + Double.toHexString(each.correlation()) + " " + Double.toHexString(each.rankCorrelation()));
            }
        }
        return list;
    }

    private static StudyPartial part(Evaluation evaluation, CaseRange range) {
        return STUDY.withCases(range.first(), range.last()).solve(DESIGN, VARIABLES, evaluation);
    }

    private static MonteCarloResult result(StudyPartial part, Evaluation evaluation, long cases) {
        return MonteCarloResult.of(part, VARIABLES, evaluation.responses(), cases);
    }

    /** Cut anywhere, merged two at a time in any order: balanced, one-sided, whatever comes. */
    @Test
    void anyOrderAndGroupingGivesTheSameBits() {
        int cases = 12_000; // more than the 4,096 that are kept, in every part of a cut into two
        MonteCarloResult one = STUDY.solve(DESIGN, VARIABLES, CHEAP, cases);
        assertThat(one.failed()).as("some cases fail").isPositive();
        assertThat(one.summaries().get(1).count()).as("some lack a value").isLessThan(one.cases() - one.failed());
        List<String> expected = digits(one);
        for (long seed = 1; seed <= 12; seed++) {
            Random random = new Random(seed);
            List<StudyPartial> parts = new ArrayList<>();
            long next = 1;
            while (next <= cases) {
                long last = Math.min(cases, next + random.nextInt(seed % 3 == 0 ? 7000 : 2500));
                parts.add(part(CHEAP, new CaseRange(next, last)));
                next = last + 1;
            }
            Collections.shuffle(parts, random);
            while (parts.size() > 1) {
                StudyPartial a = parts.remove(random.nextInt(parts.size()));
                StudyPartial b = parts.remove(random.nextInt(parts.size()));
                parts.add(a.merge(b));
            }
            assertThat(parts.get(0).cases()).containsExactly(new CaseRange(1, cases));
            assertThat(digits(result(parts.get(0), CHEAP, cases)))
                    .as("seed %d", seed)
                    .isEqualTo(expected);
        }
    }

    @Test
    void realArrestsOnSeveralThreads() {
        List<String> expected = digits(STUDY.solve(DESIGN, VARIABLES, REAL, 300));
        ExecutorService pool = Executors.newFixedThreadPool(2);
        try {
            StudyPartial second = STUDY.withExecutor(pool).withCases(101, 300).solve(DESIGN, VARIABLES, REAL);
            StudyPartial all = second.merge(part(REAL, new CaseRange(1, 100)));
            assertThat(digits(result(all, REAL, 300))).isEqualTo(expected);
        } finally {
            pool.shutdownNow();
        }
    }

    @Test
    void noCaseIsDrawnTwice() {
        StudyPartial a = part(CHEAP, new CaseRange(1, 20));
        StudyPartial b = part(CHEAP, new CaseRange(20, 30));

        assertThatThrownBy(() -> a.merge(b))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("20 … 30")
                .hasMessageContaining("must not be drawn twice");
        assertThatThrownBy(() -> a.merge(a)).isInstanceOf(InvalidInputException.class);
    }

    @Test
    void partsOfAnotherStudyAreRefused() {
        StudyPartial a = part(CHEAP, new CaseRange(1, 20));
        CaseRange rest = new CaseRange(21, 30);
        StudyPartial seed = MonteCarlo.withSeed(12).withCases(21, 30).solve(DESIGN, VARIABLES, CHEAP);
        StudyPartial named = STUDY.withCases(21, 30).ofStudy("another line").solve(DESIGN, VARIABLES, CHEAP);
        StudyPartial fewer = STUDY.withCases(21, 30).solve(DESIGN, VARIABLES.subList(0, 2), CHEAP);

        assertThatThrownBy(() -> a.merge(seed)).hasMessageContaining("seed").hasMessageContaining("11");
        assertThatThrownBy(() -> a.merge(named)).hasMessageContaining("another line");
        assertThatThrownBy(() -> a.merge(fewer)).hasMessageContaining("variables");
        assertThatThrownBy(() -> a.merge(part(REAL, rest))).hasMessageContaining("responses");
        assertThatThrownBy(() -> result(a, REAL, 20)).hasMessageContaining("responses");
        assertThatThrownBy(() -> result(a, CHEAP, 19)).hasMessageContaining("must be at least the last one done, 20");
    }

    @Test
    void aPartThatIsMissingIsSaid() {
        StudyPartial a = part(CHEAP, new CaseRange(1, 20)).merge(part(CHEAP, new CaseRange(31, 40)));

        MonteCarloResult r = result(a, CHEAP, 40);

        assertThat(a.cases()).containsExactly(new CaseRange(1, 20), new CaseRange(31, 40));
        assertThat(r.isComplete()).isFalse();
        assertThat(r.incompleteBecause().orElse("")).contains("30 of 40 cases");
    }

    /** A part that its listener ended holds what it did, and the rest can be done later. */
    @Test
    void aPartThatWasEndedEarly() {
        StudyPartial begun =
                STUDY.withProgress((done, all) -> done < 512).withCases(1, 2000).solve(DESIGN, VARIABLES, CHEAP);
        assertThat(begun.cases()).containsExactly(new CaseRange(1, 512));

        StudyPartial all = part(CHEAP, new CaseRange(513, 2000)).merge(begun);

        assertThat(digits(result(all, CHEAP, 2000))).isEqualTo(digits(STUDY.solve(DESIGN, VARIABLES, CHEAP, 2000)));
    }

    @Test
    void rangesOfNearlyEqualSize() {
        assertThat(CaseRange.parts(10, 3))
                .containsExactly(new CaseRange(1, 4), new CaseRange(5, 7), new CaseRange(8, 10));
        assertThatThrownBy(() -> CaseRange.parts(2, 3)).hasMessageContaining("must be a number from 1 to 2");
        assertThatThrownBy(() -> STUDY.withCases(5, 4)).hasMessageContaining("must be at least the first, 5");
        assertThatThrownBy(() -> STUDY.withCases(0, 4)).hasMessageContaining("must be at least 1");
    }
}
