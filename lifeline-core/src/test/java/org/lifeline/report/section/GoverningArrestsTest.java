package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.report.ReportSamples;
import org.lifeline.report.document.ReportDetail;
import org.lifeline.samples.SampleDesigns;

/** Which arrest governs what, against a walk over all of them; the order in which they stand does not matter. */
class GoverningArrestsTest {
    private static final LifelineDesign DESIGN = SampleDesigns.design("d");
    private static final List<ArrestResult> ARRESTS = ReportSamples.arrests(DESIGN);

    private static GoverningArrests governing(List<ArrestResult> arrests) {
        return new GoverningArrests(DESIGN, arrests);
    }

    private static double largest(ToDoubleFunction<ArrestResult> of) {
        return ARRESTS.stream()
                .mapToDouble(of)
                .filter(v -> !Double.isNaN(v))
                .max()
                .orElseThrow();
    }

    private static double smallest(ToDoubleFunction<ArrestResult> of) {
        return ARRESTS.stream()
                .mapToDouble(of)
                .filter(v -> !Double.isNaN(v))
                .min()
                .orElseThrow();
    }

    @Test
    void theWorstAreThoseOfTheResults() {
        GoverningArrests g = governing(ARRESTS);
        assertThat(g.worst(Quantity.ARREST_FORCE).orElseThrow().computed())
                .isEqualTo(largest(ArrestResult::arrestForce));
        assertThat(g.worst(Quantity.TOTAL_FALL_DISTANCE).orElseThrow().computed())
                .isEqualTo(largest(ArrestResult::totalFallDistance));
        assertThat(g.worst(Quantity.MAXIMUM_TENSION).orElseThrow().computed())
                .isEqualTo(largest(ArrestResult::maximumTension));
        assertThat(g.worst(Quantity.CLEARANCE_MARGIN).orElseThrow().computed())
                .as("of margins the smallest is the worst")
                .isCloseTo(smallest(r -> r.clearance().margin().orElse(Double.NaN)), within(1e-12));
        for (int i = 0; i < DESIGN.line().supports().size(); i++) {
            int support = i;
            // The length of the vector, against the force that the reaction itself gives: one rounding.
            double force = largest(r -> r.supports().get(support).force());
            assertThat(g.onSupport(i).orElseThrow().computed()).isCloseTo(force, within(1e-12 * force));
        }
    }

    @ParameterizedTest
    @EnumSource(Quantity.class)
    void theNumberIsThatOfTheArrest(Quantity quantity) {
        governing(ARRESTS).worst(quantity).ifPresent(w -> {
            double value = quantity.value(ARRESTS.get(w.number() - 1), ModelFactors.none());
            assertThat(w.computed()).isEqualTo(value);
            for (ArrestResult r : ARRESTS) {
                double other = quantity.value(r, DESIGN.modelFactors());
                if (!Double.isNaN(other)) {
                    assertThat(quantity.largestIsWorst() ? other <= w.factored() : other >= w.factored())
                            .isTrue();
                }
            }
        });
    }

    @Test
    void theOrderDoesNotMatter() {
        GoverningArrests straight = governing(ARRESTS);
        for (long seed = 1; seed <= 20; seed++) {
            List<ArrestResult> shuffled = new ArrayList<>(ARRESTS);
            Collections.shuffle(shuffled, new Random(seed));
            GoverningArrests g = governing(shuffled);
            for (Quantity q : Quantity.values()) {
                assertThat(g.worst(q).map(GoverningArrests.Worst::factored))
                        .as("seed %d, %s", seed, q)
                        .isEqualTo(straight.worst(q).map(GoverningArrests.Worst::factored));
            }
        }
    }

    /** The free fall is the same with both deployment forces; as a distance it is that of the clearance force. */
    @Test
    void aTieIsDecidedByTheForceThatTheQuantityIsMeantFor() {
        List<ArrestResult> turned = new ArrayList<>(ARRESTS);
        Collections.reverse(turned);
        for (List<ArrestResult> arrests : List.of(ARRESTS, turned)) {
            int number =
                    governing(arrests).worst(Quantity.FREE_FALL).orElseThrow().number();
            assertThat(arrests.get(number - 1).side()).isEqualTo(DeploymentForce.CLEARANCE);
        }
    }

    @Test
    void whatIsShownGrowsWithTheDetail() {
        GoverningArrests g = governing(ARRESTS);
        assertThat(g.shown(ReportDetail.SHORT)).isEmpty();
        assertThat(g.lineByLine(ReportDetail.SHORT)).isEmpty();
        assertThat(g.shown(ReportDetail.FULL))
                .hasSize(ARRESTS.size())
                .startsWith(1)
                .endsWith(ARRESTS.size());
        assertThat(g.shown(ReportDetail.GOVERNING)).isEqualTo(g.calculated());
        assertThat(g.calculated()).isNotEmpty().isSorted().doesNotHaveDuplicates();
        assertThat(g.numbers()).containsAll(g.calculated()).isSorted().doesNotHaveDuplicates();
        assertThat(g.lineByLine(ReportDetail.GOVERNING))
                .containsExactly(g.worst(Quantity.END_ANCHOR_LOAD).orElseThrow().number());
        assertThat(g.lineByLine(ReportDetail.FULL)).isEqualTo(g.shown(ReportDetail.FULL));
    }

    @Test
    void ofNoArrestsNothingGoverns() {
        GoverningArrests none = governing(List.of());
        assertThat(none.numbers()).isEmpty();
        assertThat(none.calculated()).isEmpty();
        assertThat(none.lineByLine(ReportDetail.GOVERNING)).isEmpty();
        assertThat(none.worst(Quantity.ARREST_FORCE)).isEmpty();
        assertThat(none.onSupport(0)).isEmpty();
    }

    @Test
    void aModelFactorShiftsWhatCountsNotWhatWasComputed() {
        LifelineDesign scaled =
                DESIGN.toBuilder().modelFactors(new ModelFactors(1.25, 1)).build();
        GoverningArrests g = new GoverningArrests(scaled, ARRESTS);
        GoverningArrests.Worst w = g.worst(Quantity.ARREST_FORCE).orElseThrow();
        assertThat(w.factored()).isCloseTo(1.25 * w.computed(), within(1e-9));
        assertThat(g.onSupport(0).orElseThrow().factored())
                .isCloseTo(1.25 * g.onSupport(0).orElseThrow().computed(), within(1e-9));
        assertThat(g.isScaled()).isTrue();
    }
}
