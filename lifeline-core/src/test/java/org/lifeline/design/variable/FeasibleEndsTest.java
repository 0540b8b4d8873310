package org.lifeline.design.variable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.Interval;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.WorstCases;
import org.lifeline.design.variable.FeasibleInterval.Closure;
import org.lifeline.model.Attachment;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;

/** Ends of feasible ranges where a ratio stays at exactly 1, and ranges without width. */
class FeasibleEndsTest {
    /** One span of 12 m, nobody falls: the criteria are on facts of the design. */
    private static final LifelineDesign DESIGN = Designs.design(1, Passage.free(), Attachment.GRIPPED);

    private static final WorstCases NO_FALLS = design -> Extremes.of(design, List.of());

    private static Criterion span(double most) {
        return Criterion.stated("span", CheckedQuantity.SPAN_LENGTH, most, "test");
    }

    private static Criterion anchors(double least) {
        return Criterion.stated("anchors", CheckedQuantity.ANCHOR_CAPACITY, least, "test");
    }

    private static FeasibleResult anchorsFrom(double low, double high, double least) {
        return FeasibleSearch.withCriteria(List.of(span(12), anchors(least)))
                .withAnalysis(NO_FALLS)
                .solve(DESIGN, DesignVariables.anchorCapacity(Interval.of(low, high)));
    }

    /** The span is at its limit whatever the anchors are: that ratio of 1 is not where the range ends. */
    @ParameterizedTest
    @CsvSource({"10e3, 40e3, 16e3", "10e3, 40e3, 17500", "10e3, 40e3, 38e3", "1e3, 1000e3, 16e3"})
    void anotherCriterionAtItsLimitDoesNotEndTheRange(double low, double high, double least) {
        FeasibleResult r = anchorsFrom(low, high, least);
        assertThat(r.intervals()).hasSize(1);
        FeasibleInterval i = r.intervals().get(0);
        // The search ends where the ratio beyond lies within 2e-4 of 1.
        assertThat(i.low().value()).isBetween(least, least * (1 + 2e-4));
        assertThat(i.low().closure()).isEqualTo(Closure.CRITERION);
        assertThat(i.low().by()).isEqualTo("anchors");
        assertThat(i.low().trial().isFeasible()).isTrue();
        assertThat(i.high().value()).isEqualTo(high);
        assertThat(i.high().closure()).isEqualTo(Closure.BOUND);
    }

    /** The same at an upper end: the largest span of two, while the anchors are at their least capacity. */
    @Test
    void anUpperEndIsFoundAsWell() {
        LifelineDesign design =
                DesignVariables.anchorCapacity(Interval.of(1, 1e6)).apply(DESIGN, 16e3);
        FeasibleResult r = FeasibleSearch.withCriteria(List.of(anchors(16e3), span(9.1)))
                .withAnalysis(NO_FALLS)
                .solve(design, DesignVariables.spanLength(1, Interval.of(5, 13)));
        assertThat(r.intervals()).hasSize(1);
        FeasibleInterval.End high = r.intervals().get(0).high();
        assertThat(high.value()).isBetween(9.1 * (1 - 2e-4), 9.1);
        assertThat(high.by()).isEqualTo("span");
        assertThat(high.closure()).isEqualTo(Closure.CRITERION);
    }

    /** By the whole envelope: its confirmed ends lie no further inside either. */
    @Test
    void anEnvelopeFindsTheSameEnd() {
        FeasibleResult r = FeasibleSearch.withCriteria(List.of(span(12), anchors(16e3)))
                .withAnalysis(Envelope.withDefaults())
                .withSamples(3)
                .solve(DESIGN, DesignVariables.anchorCapacity(Interval.of(10e3, 40e3)));
        assertThat(r.intervals()).hasSize(1);
        assertThat(r.intervals().get(0).low().value()).isBetween(16e3, 16e3 * (1 + 2e-4));
        assertThat(r.intervals().get(0).low().by()).isEqualTo("anchors");
    }

    /** A sample that lies on the end itself costs one trial more, no search. */
    @Test
    void aSampleOnTheEndIsTheEnd() {
        FeasibleResult r = FeasibleSearch.withCriteria(List.of(anchors(25e3)))
                .withAnalysis(NO_FALLS)
                .solve(DESIGN, DesignVariables.anchorCapacity(Interval.of(10e3, 40e3)));
        assertThat(r.intervals().get(0).low().value()).isEqualTo(25e3);
        assertThat(r.intervals().get(0).low().closure()).isEqualTo(Closure.CRITERION);
        assertThat(r.trials()).hasSize(10);
    }

    /** 8 m where 7 m are allowed: 8/7. */
    @Test
    void boundsWithoutWidthThatAreNotMetGiveNoRangeAndTheReason() {
        for (WorstCases each : List.of(NO_FALLS, Envelope.withDefaults())) {
            FeasibleResult r = FeasibleSearch.withCriteria(List.of(span(7)))
                    .withAnalysis(each)
                    .solve(DESIGN, DesignVariables.spanLength(1, Interval.exactly(8)));
            assertThat(r.intervals()).isEmpty();
            assertThat(r.isComplete()).isTrue();
            assertThat(r.best().ratio()).isEqualTo(8.0 / 7, within(1e-12));
            assertThat(r.noneBecause().orElseThrow())
                    .contains("from 8.0000 to 8.0000 meets all criteria")
                    .contains("span has a ratio of demand to capacity of 1.1429");
        }
    }

    @Test
    void boundsWithoutWidthThatAreMetAreTheRange() {
        for (WorstCases each : List.of(NO_FALLS, Envelope.withDefaults())) {
            FeasibleResult r = FeasibleSearch.withCriteria(List.of(span(9)))
                    .withAnalysis(each)
                    .solve(DESIGN, DesignVariables.spanLength(1, Interval.exactly(8)));
            assertThat(r.intervals()).hasSize(1);
            assertThat(r.intervals().get(0).low().value()).isEqualTo(8);
            assertThat(r.intervals().get(0).high().value()).isEqualTo(8);
        }
    }

    /** Bounds between whole numbers: every whole number inside is tried, and none else. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void wholeNumbersWithinTheBoundsAreTried(boolean envelope) {
        FeasibleSearch search = FeasibleSearch.withCriteria(List.of(span(12)))
                .withAnalysis(envelope ? Envelope.withDefaults() : NO_FALLS);
        FeasibleResult r = search.solve(DESIGN, DesignVariables.workersTogether(Interval.of(0.6, 2.4)));
        assertThat(r.trials()).extracting(Trial::value).containsExactly(1.0, 2.0);
        assertThat(r.intervals()).hasSize(1);
        assertThat(r.intervals().get(0).low().value()).isEqualTo(1);
        assertThat(r.intervals().get(0).high().value()).isEqualTo(2);
        FeasibleResult one = search.solve(DESIGN, DesignVariables.workersTogether(Interval.exactly(2)));
        assertThat(one.trials()).extracting(Trial::value).containsExactly(2.0);
        assertThat(one.intervals()).hasSize(1);
    }
}
