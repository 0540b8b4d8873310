package org.lifeline.design.variable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.WorstCases;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.absorber.LoadingCurve;

class FeasibleSearchTest {
    private static final LifelineDesign DESIGN = Designs.design(1, Passage.free(), Attachment.GRIPPED);
    private static final List<Criterion> CRITERIA = List.of(
            Criteria.of("us-osha-hll-factor").orElseThrow(),
            Criterion.stated("clearance", CheckedQuantity.of(Quantity.CLEARANCE_MARGIN), 0, "test"));

    private static double worst(LifelineDesign design, List<Criterion> criteria) {
        Extremes e = Envelope.withDefaults().solve(design).extremes();
        return Criteria.check(criteria, e).stream()
                .mapToDouble(CriterionResult::ratio)
                .max()
                .orElseThrow();
    }

    /** Solved designs, analysed again, sit on their limit to 0.1 %. */
    private static void onItsLimit(DesignVariable v, FeasibleInterval.End end, List<Criterion> criteria) {
        LifelineDesign again = v.apply(DESIGN, end.value());
        assertThat(worst(again, criteria)).as("%s at %s", v, end.value()).isBetween(0.999, 1 + 1e-12);
        CriterionResult closing = criteria.stream()
                .filter(c -> c.id().equals(end.by()))
                .findFirst()
                .orElseThrow()
                .check(Envelope.withDefaults().solve(again).extremes());
        assertThat(closing.ratio()).isBetween(0.999, 1 + 1e-12);
    }

    /** Whoever does the work: the same ranges by the same trials, to the last digit. */
    @Test
    void threadsDoNotChangeTheResult() {
        DesignVariable v = DesignVariables.anchorCapacity(Interval.of(10e3, 200e3));
        ExecutorService threads = Executors.newFixedThreadPool(3);
        try {
            AtomicInteger pieces = new AtomicInteger();
            Executor counting = piece -> {
                pieces.incrementAndGet();
                threads.execute(piece);
            };
            FeasibleSearch alone = FeasibleSearch.withCriteria(CRITERIA).withSamples(3);
            for (WorstCases each : List.of(Envelope.withDefaults(), DesignAnalysis.withDefaults())) {
                FeasibleResult one = alone.withAnalysis(each).solve(DESIGN, v);
                int before = pieces.get();
                FeasibleResult shared =
                        alone.withAnalysis(each).withExecutor(counting).solve(DESIGN, v);
                assertThat(pieces.get()).as("pieces given to the executor").isGreaterThan(before);
                assertThat(shared.trials()).isEqualTo(one.trials());
                assertThat(shared.intervals()).isEqualTo(one.intervals());
                assertThat(shared.isComplete()).isTrue();
            }
        } finally {
            threads.shutdownNow();
        }
    }

    /** Capacity of the anchors for a factor of 2: twice the load, directly. */
    @Test
    void lowestAnchorCapacityIsTwiceTheLoad() {
        DesignVariable v = DesignVariables.anchorCapacity(Interval.of(10e3, 200e3));
        FeasibleResult r = FeasibleSearch.withCriteria(CRITERIA).solve(DESIGN, v);
        double load = Envelope.withDefaults()
                .solve(DESIGN)
                .extremes()
                .of(Quantity.END_ANCHOR_LOAD)
                .orElseThrow()
                .value();
        assertThat(r.intervals()).hasSize(1);
        FeasibleInterval i = r.intervals().get(0);
        assertThat(i.low().value()).isEqualTo(2 * load, within(1e-3 * load));
        assertThat(i.low().closure()).isEqualTo(FeasibleInterval.Closure.CRITERION);
        assertThat(i.low().by()).isEqualTo("us-osha-hll-factor");
        assertThat(i.high().closure()).isEqualTo(FeasibleInterval.Closure.BOUND);
        assertThat(i.high().value()).isEqualTo(200e3);
        onItsLimit(v, i.low(), CRITERIA);
    }

    @Test
    void lowestLineSitsOnTheClearance() {
        DesignVariable v = DesignVariables.lineElevation(Interval.of(9.5, 14));
        List<Criterion> clearance = List.of(CRITERIA.get(1));
        LifelineDesign near = DESIGN.toBuilder()
                .clearance(DESIGN.clearance().withObstructions(List.of(new Obstruction(0, 12, 6.5))))
                .build();
        FeasibleResult r = FeasibleSearch.withCriteria(clearance).solve(near, v);
        assertThat(r.intervals()).hasSize(1);
        double low = r.intervals().get(0).low().value();
        Extremes again = Envelope.withDefaults().solve(v.apply(near, low)).extremes();
        assertThat(again.of(Quantity.CLEARANCE_MARGIN).orElseThrow().value()).isEqualTo(0, within(5e-3));
        assertThat(clearance.get(0).check(again).ratio()).isBetween(0.999, 1 + 1e-12);
    }

    @Test
    void pretensionHasARangeClosedByLoadAboveAndClearanceBelow() {
        List<Criterion> criteria = List.of(
                Criterion.stated("load", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 28.5e3, "test"),
                Criterion.stated("drop", CheckedQuantity.of(Quantity.REQUIRED_BELOW_WALKING_LEVEL), 4.2, "test"));
        DesignVariable v = DesignVariables.pretension(Interval.of(200, 12e3));
        FeasibleResult r = FeasibleSearch.withCriteria(criteria).withSamples(7).solve(DESIGN, v);
        assertThat(r.intervals()).as(r.noneBecause().orElse("")).hasSize(1);
        FeasibleInterval i = r.intervals().get(0);
        assertThat(i.high().by()).isEqualTo("load");
        assertThat(i.low().by()).isEqualTo("drop");
        onItsLimit(v, i.high(), criteria);
        onItsLimit(v, i.low(), criteria);
        for (double share : new double[] {0.01, 0.5, 0.99}) {
            double inside =
                    i.low().value() + share * (i.high().value() - i.low().value());
            assertThat(worst(v.apply(DESIGN, inside), criteria)).isLessThanOrEqualTo(1);
            assertThat(i.contains(inside)).isTrue();
        }
        assertThat(worst(v.apply(DESIGN, i.low().value() * 0.98), criteria)).isGreaterThan(1);
        assertThat(worst(v.apply(DESIGN, i.high().value() * 1.02), criteria)).isGreaterThan(1);
    }

    @Test
    void longestSpan() {
        List<Criterion> criteria = List.of(
                Criterion.stated("drop", CheckedQuantity.of(Quantity.REQUIRED_BELOW_WALKING_LEVEL), 4.5, "test"));
        DesignVariable v = DesignVariables.spanLengths(Interval.of(4, 40));
        FeasibleResult r = FeasibleSearch.withCriteria(criteria).solve(DESIGN, v);
        FeasibleInterval i = r.intervals().get(0);
        assertThat(i.low().closure()).isEqualTo(FeasibleInterval.Closure.BOUND);
        onItsLimit(v, i.high(), criteria);
    }

    @Test
    void activationOfAnInlineAbsorber() {
        LifelineDesign d = DESIGN.withLine(DESIGN.line()
                .withSupports(s -> s.id().equals("south")
                        ? s.withInlineAbsorber(InlineAbsorber.of(LoadingCurve.through(
                                List.of(new LoadingCurve.Corner(0, 8e3), new LoadingCurve.Corner(0.8, 8e3)),
                                8e6,
                                2.2e5)))
                        : s));
        List<Criterion> criteria =
                List.of(Criterion.stated("load", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 15e3, "test"));
        DesignVariable v = DesignVariables.inlineActivation("south", Interval.of(3e3, 25e3));
        FeasibleResult r = FeasibleSearch.withCriteria(criteria).solve(d, v);
        FeasibleInterval i = r.intervals().get(r.intervals().size() - 1);
        Extremes again =
                Envelope.withDefaults().solve(v.apply(d, i.high().value())).extremes();
        assertThat(again.of(Quantity.END_ANCHOR_LOAD).orElseThrow().value()).isEqualTo(15e3, within(15.0));
    }

    @Test
    void stiffnessOfAPost() {
        List<Criterion> criteria =
                List.of(Criterion.stated("load", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 22e3, "test"));
        DesignVariable v = DesignVariables.supportStiffness("south", Interval.of(1e4, 1e7));
        FeasibleResult r = FeasibleSearch.withCriteria(criteria).solve(DESIGN, v);
        FeasibleInterval i = r.intervals().get(0);
        assertThat(i.high().by()).isEqualTo("load");
        onItsLimit(v, i.high(), criteria);
    }

    @Test
    void numberOfWorkersIsWhole() {
        List<Criterion> criteria =
                List.of(Criterion.stated("load", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 45e3, "test"));
        DesignVariable v = DesignVariables.workersTogether(Interval.of(1, 4));
        FeasibleResult r = FeasibleSearch.withCriteria(criteria).solve(DESIGN, v);
        assertThat(r.trials()).extracting(Trial::value).containsExactly(1.0, 2.0, 3.0, 4.0);
        FeasibleInterval i = r.intervals().get(0);
        assertThat(i.high().closure()).isEqualTo(FeasibleInterval.Closure.JUMP);
        assertThat(i.high().by()).isEqualTo("load");
        double n = i.high().value();
        assertThat(n).isEqualTo(Math.rint(n));
        assertThat(worst(v.apply(DESIGN, n), criteria)).isLessThanOrEqualTo(1);
        assertThat(worst(v.apply(DESIGN, n + 1), criteria)).isGreaterThan(1);
    }

    @Test
    void noneHasAReason() {
        List<Criterion> impossible =
                List.of(Criterion.stated("load", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 1e3, "test"));
        FeasibleResult r = FeasibleSearch.withCriteria(impossible)
                .withSamples(5)
                .solve(DESIGN, DesignVariables.pretension(Interval.of(500, 5e3)));
        assertThat(r.intervals()).isEmpty();
        assertThat(r.noneBecause().orElseThrow()).contains("pretension [N]", "load", "ratio of demand to capacity");
        assertThat(r.best().ratio()).isGreaterThan(1);
    }

    /** Limits that are reached at 2,050 N from below and at 1,950 N from above; the samples stand at 500, 4,750 and 9,000 N. */
    @Test
    void aRangeBetweenTwoSamplesIsFound() {
        DesignVariable v = DesignVariables.pretension(Interval.of(500, 9e3));
        double load = value(v.apply(DESIGN, 2050), Quantity.END_ANCHOR_LOAD);
        double drop = value(v.apply(DESIGN, 1950), Quantity.REQUIRED_BELOW_WALKING_LEVEL);
        List<Criterion> band = List.of(
                Criterion.stated("load", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), load, "test"),
                Criterion.stated("drop", CheckedQuantity.of(Quantity.REQUIRED_BELOW_WALKING_LEVEL), drop, "test"));
        FeasibleResult r = FeasibleSearch.withCriteria(band).withSamples(3).solve(DESIGN, v);
        assertThat(r.intervals()).hasSize(1);
        assertThat(r.intervals().get(0).low().value()).isEqualTo(1950, within(20.0));
        assertThat(r.intervals().get(0).high().value()).isEqualTo(2050, within(20.0));
        onItsLimit(v, r.intervals().get(0).low(), band);
        onItsLimit(v, r.intervals().get(0).high(), band);
    }

    private static double value(LifelineDesign design, Quantity quantity) {
        return Envelope.withDefaults()
                .solve(design)
                .extremes()
                .of(quantity)
                .orElseThrow()
                .value();
    }

    @Test
    void whereTheDesignCannotBeAnalysedTheRangeEndsWithTheReason() {
        List<Criterion> any =
                List.of(Criterion.stated("load", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 1e6, "test"));
        DesignVariable v = DesignVariable.of(
                "mass", "kg", Interval.of(-50, 100), (d, x) -> d.withWorkers(w -> w.withMass(x > 0 ? 100 : x)));
        FeasibleResult r = FeasibleSearch.withCriteria(any).withSamples(4).solve(DESIGN, v);
        FeasibleInterval i = r.intervals().get(0);
        assertThat(i.low().closure()).isEqualTo(FeasibleInterval.Closure.FAILURE);
        assertThat(i.low().by()).contains("mass", "above zero");
        assertThat(i.low().value()).isEqualTo(0, within(1e-5));
        FeasibleResult nothing =
                FeasibleSearch.withCriteria(any).withSamples(3).solve(DESIGN, v.within(Interval.of(-50, -10)));
        assertThat(nothing.noneBecause().orElseThrow()).contains("can be analysed", "mass");
    }

    @Test
    void statedFallsAloneCanBeTheCases() {
        LifelineDesign d = DESIGN.withFalls(List.of(Fall.builder("quarter")
                .at(Place.of(1, 3))
                .faller(DESIGN.workers().get(0))
                .build()));
        List<Criterion> criteria = List.of(Criteria.of("us-osha-hll-factor").orElseThrow());
        FeasibleResult r = FeasibleSearch.withCriteria(criteria)
                .withAnalysis(DesignAnalysis.withDefaults())
                .solve(d, DesignVariables.anchorCapacity(Interval.of(10e3, 200e3)));
        double load = DesignAnalysis.withDefaults()
                .extremes(d)
                .of(Quantity.END_ANCHOR_LOAD)
                .orElseThrow()
                .value();
        assertThat(r.intervals().get(0).low().value()).isEqualTo(2 * load, within(1e-3 * load));
    }

    @Test
    void whatIsNotEvaluatedIsNamed() {
        List<Criterion> criteria = List.of(
                Criterion.stated("load", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 1e6, "test"),
                Criterion.stated("inline", CheckedQuantity.of(Quantity.INLINE_EXTENSION), 1, "test"));
        FeasibleResult r = FeasibleSearch.withCriteria(criteria)
                .withSamples(3)
                .solve(DESIGN, DesignVariables.pretension(Interval.of(500, 5e3)));
        assertThat(r.notEvaluated()).containsExactly("inline: there is no in-line energy absorber");
    }

    @Test
    void stoppingKeepsTheTrials() {
        FeasibleResult r = FeasibleSearch.withCriteria(CRITERIA)
                .withProgress((done, total) -> done < 4)
                .solve(DESIGN, DesignVariables.pretension(Interval.of(500, 5e3)));
        assertThat(r.isComplete()).isFalse();
        assertThat(r.trials()).hasSize(4);
    }

    @Test
    void mapOverTwoVariables() {
        List<Criterion> criteria = List.of(
                Criterion.stated("drop", CheckedQuantity.of(Quantity.REQUIRED_BELOW_WALKING_LEVEL), 4.4, "test"));
        Axis spans = Axis.even(DesignVariables.spanLengths(Interval.of(8, 20)), 3);
        Axis tensions = Axis.even(DesignVariables.pretension(Interval.of(500, 5e3)), 4);
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<DesignMap.Column> map = DesignMap.withCriteria(criteria)
                    .withExecutor(two)
                    .solve(DESIGN, spans, tensions)
                    .columns();
            List<DesignMap.Column> alone = DesignMap.withCriteria(criteria)
                    .solve(DESIGN, spans, tensions)
                    .columns();
            assertThat(map).hasSize(3);
            for (int i = 0; i < 3; i++) {
                assertThat(map.get(i).cells()).isEqualTo(alone.get(i).cells()).hasSize(4);
                LifelineDesign d = spans.variable().apply(DESIGN, spans.values().get(i));
                for (int j = 0; j < 4; j++) {
                    double expected =
                            worst(tensions.variable().apply(d, tensions.values().get(j)), criteria);
                    assertThat(map.get(i).cells().get(j).ratio()).isEqualTo(expected, within(1e-12));
                }
            }
        } finally {
            two.shutdown();
        }
    }

    @Test
    void badSettingsAreRefused() {
        assertThatThrownBy(() -> FeasibleSearch.withCriteria(List.of())).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> FeasibleSearch.withCriteria(CRITERIA).withSamples(2))
                .isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> DesignVariables.supportStiffness("x", Interval.of(0, 1)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("logarithmic");
        assertThatThrownBy(() ->
                        DesignVariables.supportStiffness("x", Interval.of(1, 2)).apply(DESIGN, 1))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("id of a support");
        assertThatThrownBy(() -> DesignVariables.inlineActivation("south", Interval.of(1, 2))
                        .apply(DESIGN, 1))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("in-line");
        assertThatThrownBy(() -> Axis.even(DesignVariables.pretension(Interval.of(1, 2)), 1))
                .isInstanceOf(InvalidInputException.class);
    }
}
