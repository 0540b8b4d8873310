package org.lifeline.design.variable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Interval;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Attachment;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;

/** The cases that a search has learned stand for the whole envelope. */
class GoverningCasesTest {
    private static final LifelineDesign DESIGN = Designs.design(1, Passage.free(), Attachment.GRIPPED);

    /** A place that a worker cannot reach in a varied design is a case that failed, not the end of the analysis. */
    @Test
    void governingCasesKeepWhatCannotBeComputed() {
        Envelope envelope = Envelope.withDefaults();
        GoverningCases cases = GoverningCases.of(envelope).and(envelope.extremes(DESIGN));
        assertThat(cases.extremes(DESIGN).coversEverything()).isTrue();
        LifelineDesign high = DesignVariables.lineElevation(Interval.of(9, 30)).apply(DESIGN, 28);
        Extremes extremes = cases.extremes(high);
        assertThat(extremes.failures()).hasSize(cases.size());
        assertThat(extremes.failures()).allMatch(f -> f.reason().contains("does not reach the line"));
        assertThat(extremes.coversEverything()).isFalse();
        assertThat(extremes.all()).isEmpty();
    }

    /** The search with learned cases finds what a search with the envelope at every trial finds. */
    @Test
    void learnedCasesGiveTheRangesOfTheWholeEnvelope() {
        List<Criterion> criteria = List.of(
                Criterion.stated("load", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 28.5e3, "test"),
                Criterion.stated("drop", CheckedQuantity.of(Quantity.REQUIRED_BELOW_WALKING_LEVEL), 4.2, "test"));
        LifelineDesign rough = Designs.design(2, Passage.friction(0.15), Attachment.FREE_RUNNING);
        for (DesignVariable v : List.of(
                DesignVariables.pretension(Interval.of(200, 12e3)), DesignVariables.spanLengths(Interval.of(6, 14)))) {
            FeasibleResult throughout = FeasibleSearch.withCriteria(criteria)
                    .withAnalysis(d -> Envelope.withDefaults().extremes(d))
                    .solve(rough, v);
            FeasibleResult learned = FeasibleSearch.withCriteria(criteria).solve(rough, v);
            assertThat(learned.intervals()).as(v.name()).hasSameSizeAs(throughout.intervals());
            for (int i = 0; i < learned.intervals().size(); i++) {
                FeasibleInterval a = learned.intervals().get(i);
                FeasibleInterval b = throughout.intervals().get(i);
                double width = v.bounds().width();
                assertThat(a.low().value()).as(v.name()).isCloseTo(b.low().value(), within(2e-3 * width));
                assertThat(a.high().value()).as(v.name()).isCloseTo(b.high().value(), within(2e-3 * width));
                assertThat(a.low().by()).isEqualTo(b.low().by());
                assertThat(a.high().by()).isEqualTo(b.high().by());
            }
        }
    }

    /** What governs an envelope governs over its cases alone; between two of them another place may, for a little more. */
    @Test
    void governingCasesGiveTheWorstOfTheEnvelope() {
        LifelineDesign rough = Designs.design(2, Passage.friction(0.15), Attachment.FREE_RUNNING);
        DesignVariable tension = DesignVariables.pretension(Interval.of(300, 4e3));
        GoverningCases cases = GoverningCases.of(Envelope.withDefaults());
        assertThat(cases.size()).isZero();
        for (double v : new double[] {300, 4e3}) {
            cases = cases.and(Envelope.withDefaults().extremes(tension.apply(rough, v)));
        }
        for (double v : new double[] {300, 2e3, 4e3}) {
            LifelineDesign d = tension.apply(rough, v);
            Extremes whole = Envelope.withDefaults().extremes(d);
            for (Quantity q :
                    List.of(Quantity.END_ANCHOR_LOAD, Quantity.TOTAL_FALL_DISTANCE, Quantity.REQUIRED_BELOW_LINE)) {
                double most = whole.of(q).orElseThrow().value();
                assertThat(cases.extremes(d).of(q).orElseThrow().value())
                        .as("%s at %s N", q, v)
                        // A place known from another value may lie nearer to the worst than where the search ends,
                        // which does not
                        // look for a gain of 1e-4.
                        .isBetween((v == 2e3 ? 0.98 : 1 - 1e-9) * most, most * (1 + 1e-4));
            }
        }
    }
}
