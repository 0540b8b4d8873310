package org.lifeline.design.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.motion.ForceFilter;
import org.lifeline.base.Direction;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.absorber.DeploymentForce;

/** What governs, and which case does where several give the same value. */
class ExtremesTest {
    private static final long SEED = 20_261_128L;

    private static LifelineDesign design(Place... places) {
        LifelineDesign d =
                Designs.design(2, Passage.clamped(), Attachment.GRIPPED).withTemperatures(List.of(15.0));
        List<Fall> falls = new ArrayList<>();
        for (int i = 0; i < places.length; i++) {
            falls.add(Fall.builder("fall " + (i + 1))
                    .at(places[i])
                    .faller(d.workers().get(0))
                    .build());
        }
        return d.withFalls(falls);
    }

    /** The two halves of a symmetric line give equal values but for rounding: the fall that is stated first governs. */
    @Test
    void ofFallsAtMirroredPlacesTheFirstStatedGoverns() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int n = 0; n < 6; n++) {
            double station = random.nextDouble(1, 11);
            Place here = Place.of(1, station);
            Place mirrored = Place.of(2, 12 - station);
            for (List<Place> order : List.of(List.of(here, mirrored), List.of(mirrored, here))) {
                DesignResult r = DesignAnalysis.withDefaults().solve(design(order.toArray(new Place[0])));
                double a = r.arrests().get(0).maximumTension();
                double b = r.arrests().get(2).maximumTension();
                assertThat(b).as("seed %d, station %s", SEED, station).isEqualTo(a, within(1e-9 * a));
                for (Quantity q : Extremes.GOVERNING) {
                    Extreme e = r.extremes().of(q).orElseThrow();
                    assertThat(e.fallCase().fall().id())
                            .as("seed %d, station %s, %s", SEED, station, q.key())
                            .isEqualTo("fall 1");
                }
            }
        }
    }

    /** A plain value that both sides of the force range share: loads name the maximum side, lengths the clearance side. */
    @Test
    void ofEqualSidesTheOneThatTheQuantityIsMeantForGoverns() {
        LifelineDesign d = design(Place.of(1, 6))
                .withWorkers(w -> w.withConnection(org.lifeline.model.Connection.lanyard(
                        1.8,
                        org.lifeline.model.Connection.PersonalAbsorber.builder()
                                .clearanceForce(5000)
                                .maximumForce(5000)
                                .maximumExtension(1.2)
                                .build())));
        DesignResult r = DesignAnalysis.withDefaults().solve(d);
        for (List<ArrestResult> order : List.of(r.arrests(), reversed(r.arrests()))) {
            Extremes e = Extremes.of(d, order);
            for (Extreme each : e.governing()) {
                assertThat(each.fallCase().side())
                        .as(each.name())
                        .isEqualTo(each.unit().equals("N") ? DeploymentForce.MAXIMUM : DeploymentForce.CLEARANCE);
            }
        }
    }

    private static List<ArrestResult> reversed(List<ArrestResult> list) {
        List<ArrestResult> copy = new ArrayList<>(list);
        Collections.reverse(copy);
        return copy;
    }

    @Test
    void aValueThatIsWorseByMoreThanRoundingGoverns() {
        assertThat(EnvelopeTolerances.isWorse(1 + 2e-9, 1)).isTrue();
        assertThat(EnvelopeTolerances.isWorse(1 + 0.5e-9, 1)).isFalse();
        assertThat(EnvelopeTolerances.isWorse(-1, -1 - 2e-9)).isTrue();
        assertThat(EnvelopeTolerances.isWorse(-1 - 2e-9, -1)).isFalse();
        DesignResult r = DesignAnalysis.withDefaults().solve(design(Place.of(1, 3), Place.of(1, 6)));
        for (Quantity q : Extremes.GOVERNING) {
            double worst = r.arrests().stream()
                    .mapToDouble(a -> (q.largestIsWorst() ? 1 : -1) * q.value(a, ModelFactors.none()))
                    .max()
                    .orElseThrow();
            double value = r.extremes().of(q).orElseThrow().value();
            assertThat((q.largestIsWorst() ? 1 : -1) * value)
                    .as(q.key())
                    .isEqualTo(worst, within(1e-9 * Math.abs(worst)));
        }
    }

    @Test
    void whatGovernsIsOneListWithComputedAndFactoredValues() {
        LifelineDesign d = design(Place.of(1, 4)).toBuilder()
                .modelFactors(new ModelFactors(1.25, 1.1))
                .build();
        DesignResult r = DesignAnalysis.withDefaults().solve(d);
        List<Extreme> list = r.extremes().governing();
        assertThat(list)
                .extracting(Extreme::name)
                .containsExactly(
                        "endAnchorLoad",
                        "maximumTension",
                        "arrestForce",
                        "freeFall",
                        "deployment",
                        "sag",
                        "lineDescent",
                        "totalFallDistance",
                        "requiredBelowLine",
                        "clearanceMargin",
                        "load on north",
                        "load on post 1",
                        "load on south");
        Extremes again = Extremes.of(d, r.arrests());
        for (int i = 0; i < list.size(); i++) {
            Extreme e = list.get(i);
            Quantity q = e.quantity().orElseThrow();
            boolean onSupport = e.support().isPresent();
            double computed =
                    onSupport ? e.arrest().anchorLoad(e.support().get()) : q.value(e.arrest(), ModelFactors.none());
            assertThat(e.computed()).as(e.name()).isEqualTo(computed, within(1e-12 * Math.abs(computed)));
            if (e.unit().equals("N")) {
                assertThat(e.value()).as(e.name()).isEqualTo(1.25 * computed, within(1e-9 * computed));
            }
            assertThat(again.governing().get(i).value()).as(e.name()).isEqualTo(e.value());
            assertThat(again.governing().get(i).fallCase().describe())
                    .isEqualTo(e.fallCase().describe());
            assertThat(e.toString()).startsWith(e.name());
        }
        Extreme component =
                r.extremes().onSupportToward("north", Direction.PLUS_X).orElseThrow();
        assertThat(component.quantity()).isEmpty();
        assertThat(component.support()).contains("north");
        assertThat(component.value()).isEqualTo(1.25 * component.computed(), within(1e-9));
        Extreme margin = r.extremes().overObstruction(0).orElseThrow();
        assertThat(margin.support()).isEmpty();
        assertThat(margin.value()).isLessThan(margin.computed());
        assertThatThrownBy(() -> r.extremes().onSupport("nowhere")).isInstanceOf(IllegalArgumentException.class);
        assertThat(r.extremes().massTolerance()).isEmpty();
        assertThat(Extremes.of(d, List.of()).governing()).isEmpty();
    }

    /** A value that is read by itself is that of the row of its arrest, whichever arrest was read before. */
    @Test
    void aValueIsThatOfItsRow() {
        LifelineDesign d = design(Place.of(1, 5), Place.of(2, 5));
        List<ArrestResult> arrests = DesignAnalysis.withDefaults().solve(d).arrests();
        Extremes extremes = Extremes.of(d, arrests);
        ArrestQuantities quantities = ArrestQuantities.withoutFactors(d, ForceFilter.NONE);
        ArrestQuantities.Reader reader = new ArrestQuantities.Reader(quantities);
        for (ArrestResult each : arrests) {
            double[] all = quantities.computed(each);
            for (int i = 0; i < all.length; i++) {
                ArrestQuantities.Value value = reader.read(each, i);
                assertThat(value.computed()).isEqualTo(Double.valueOf(all[i]));
                assertThat(value.hidden()).isIn(0.0, Double.NaN);
            }
        }
        List<Extreme> loads = extremes.governing().stream()
                .filter(e -> e.support().isPresent())
                .toList();
        assertThat(loads).hasSize(d.line().supports().size());
        for (Extreme each : loads) {
            Extreme alone = extremes.onSupport(each.support().get()).orElseThrow();
            assertThat(each.value()).isEqualTo(alone.value());
            assertThat(each.arrest()).isSameAs(alone.arrest());
        }
    }
}
