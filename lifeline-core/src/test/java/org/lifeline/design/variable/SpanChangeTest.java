package org.lifeline.design.variable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lifeline.design.variable.PlainSearch.BASE;
import static org.lifeline.design.variable.PlainSearch.NOTHING;
import static org.lifeline.design.variable.PlainSearch.run;
import static org.lifeline.design.variable.PlainSearch.search;
import static org.lifeline.design.variable.PlainSearch.span;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.base.Interval;
import org.lifeline.base.Point;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Support;

/**
 * Lengths of spans changed by hand: a line from (2, 3) with runs of 5 m (3, 4) and 10 m (8, -6), and what lies along it; and what
 * closes a range where two things change at once.
 */
class SpanChangeTest {
    private static final Interval ANY = Interval.of(0.1, 100);

    private static LifelineDesign turning(Fall fall, Obstruction... obstructions) {
        Lifeline line = Lifeline.builder()
                .cable(BASE.line().cable())
                .endAnchor("a", Point.of(2, 3, 12))
                .intermediateAnchor("b", Point.of(5, 7, 12.5), Passage.free())
                .endAnchor("c", Point.of(13, 1, 12))
                .pretension(1500)
                .build();
        return BASE.toBuilder()
                .line(line)
                .clearance(BASE.clearance().withObstructions(List.of(obstructions)))
                .build()
                .withFalls(List.of(fall));
    }

    private static Fall at(Place place) {
        return Fall.builder("f").at(place).faller(BASE.workers().get(0)).build();
    }

    @Test
    void supportsMoveAlongTheirChordsAndKeepTheirElevation() {
        LifelineDesign d = turning(at(Place.of(1, 2)));
        LifelineDesign first = DesignVariables.spanLength(1, ANY).apply(d, 10);
        assertThat(first.line().supports())
                .extracting(Support::position)
                .containsExactly(Point.of(2, 3, 12), Point.of(8, 11, 12.5), Point.of(16, 5, 12));
        LifelineDesign second = DesignVariables.spanLength(2, ANY).apply(d, 5);
        assertThat(second.line().supports())
                .extracting(Support::position)
                .containsExactly(Point.of(2, 3, 12), Point.of(5, 7, 12.5), Point.of(9, 4, 12));
        assertThat(first.line().gravity()).isEqualTo(d.line().gravity());
        assertThat(first.line().installed()).isEqualTo(d.line().installed());
    }

    @Test
    void aPlaceKeepsItsShareOfTheSpanAndASupportStaysASupport() {
        LifelineDesign inSpan = turning(at(Place.of(2, 4)));
        assertThat(DesignVariables.spanLengths(ANY)
                        .apply(inSpan, 20)
                        .falls()
                        .get(0)
                        .place())
                .isEqualTo(Place.of(2, 8));
        LifelineDesign onSupport = turning(at(Place.atSupport("b")));
        assertThat(DesignVariables.spanLengths(ANY)
                        .apply(onSupport, 20)
                        .falls()
                        .get(0)
                        .place())
                .isEqualTo(Place.atSupport("b"));
    }

    /** Spans of 5 and 10 m become 10 and 10 m: twice the distance up to 5 m, 5 m more beyond; before the start as it was. */
    @ParameterizedTest
    @CsvSource({"-3, -3", "0, 0", "2, 4", "5, 10", "6, 11", "15, 20", "18, 23"})
    void anObstructionGoesWithTheLineAboveIt(double distance, double moved) {
        LifelineDesign d = turning(at(Place.of(1, 2)), new Obstruction(distance, distance, 3, 0.4));
        Obstruction o = DesignVariables.spanLength(1, ANY)
                .apply(d, 10)
                .clearance()
                .obstructions()
                .get(0);
        assertThat(o.from()).isCloseTo(moved, within(1e-14));
        assertThat(o.to()).isEqualTo(o.from());
        assertThat(o.elevation()).isEqualTo(3);
        assertThat(o.distance()).isEqualTo(0.4);
    }

    /** Just beyond 0.3 the span is too long; at the sample of 0.375 the anchors are what is worst. */
    @Test
    void aJumpIsClosedByWhatFailsJustBeyondIt() {
        Criterion capacity = Criterion.stated("capacity", CheckedQuantity.ANCHOR_CAPACITY, 1e4, "test");
        DesignVariable length = run(Interval.of(0, 1), x -> x < 0.3 ? 8 : 20);
        DesignVariable both = DesignVariable.of(
                "v",
                "-",
                Interval.of(0, 1),
                (d, v) -> DesignVariables.anchorCapacity(ANY).apply(length.apply(d, v), v < 0.36 ? 2e4 : 1e3));
        FeasibleResult r = search(span(10), capacity).solve(BASE, both);
        assertThat(r.intervals()).hasSize(1);
        assertThat(r.intervals().get(0).high().closure()).isEqualTo(FeasibleInterval.Closure.JUMP);
        assertThat(r.intervals().get(0).high().by()).isEqualTo("span");
        assertThat(r.trials())
                .filteredOn(t -> t.value() == 0.375)
                .extracting(Trial::governing)
                .containsExactly("capacity");
    }

    @Test
    void aMapWithAColumnThatWasStoppedIsNotComplete() {
        FeasibleResult stopped = search(span(10))
                .withProgress((n, total) -> false)
                .solve(BASE, DesignVariables.spanLength(1, Interval.of(5, 20)));
        FeasibleResult whole = search(span(10)).solve(BASE, DesignVariables.spanLength(1, Interval.of(5, 20)));
        DesignMap.Column good = new DesignMap.Column(1, List.of(), whole);
        DesignMap.Column cut = new DesignMap.Column(2, List.of(), stopped);
        assertThat(new DesignMapResult(List.of(good), 1).isComplete()).isTrue();
        assertThat(new DesignMapResult(List.of(good, cut), 2).isComplete()).isFalse();
        assertThat(new DesignMapResult(List.of(good), 2).isComplete()).isFalse();
        assertThat(new DesignMapResult(List.of(), 0).incompleteBecause()).isEmpty();
    }

    @Test
    void anAnalysisThatFailsForOneValueIsAFailureOfThatValue() {
        FeasibleSearch s = search(span(10)).withAnalysis(design -> {
            if (design.line().run(1) > 9) {
                throw new org.lifeline.base.InvalidInputException(
                        List.of(new org.lifeline.base.Violation("line", "long", "must be short")));
            }
            return NOTHING.extremes(design);
        });
        FeasibleResult r = s.solve(BASE, DesignVariables.spanLength(1, Interval.of(5, 20)));
        FeasibleInterval.End high = r.intervals().get(0).high();
        assertThat(high.closure()).isEqualTo(FeasibleInterval.Closure.FAILURE);
        assertThat(high.by()).isEqualTo("line: long: must be short");
        assertThat(high.value()).isLessThanOrEqualTo(9).isCloseTo(9, within(1e-7));
    }
}
