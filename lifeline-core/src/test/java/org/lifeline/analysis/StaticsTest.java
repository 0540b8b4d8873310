package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.cable.Cable;

/** Statics: its settings reach the result, its loads are carried by the supports, and places off the line are refused. */
class StaticsTest {
    private static final Lifeline LINE = Lifeline.builder()
            .cable(Cable.builder()
                    .weightPerLength(4.2)
                    .axialStiffness(4.9e6)
                    .thermalExpansion(1.2e-5)
                    .build())
            .endAnchor("a", Point.of(0, 0, 12))
            .intermediateAnchor("p", Point.of(9, 0, 12), Passage.free())
            .endAnchor("b", Point.of(20, 0, 12.5))
            .pretension(1500)
            .build();

    private static double up(LineEquilibrium state) {
        return -state.supports().stream().mapToDouble(s -> s.vector().z()).sum();
    }

    @Test
    void theTemperatureIsThatOfInstallationUnlessItIsSaid() {
        double installed = LINE.installed().temperature();
        LineEquilibrium plain = Statics.withDefaults().solve(LINE, List.of());
        assertThat(plain.temperature()).isEqualTo(installed);
        assertThat(plain.firstTension()).isCloseTo(1500, within(1e-6));
        LineEquilibrium cold = Statics.withDefaults().withTemperature(-30).solve(LINE, List.of());
        assertThat(cold.temperature()).isEqualTo(-30);
        assertThat(cold.firstTension()).isGreaterThan(1600);
        LineEquilibrium again = Statics.withDefaults()
                .withTemperature(-30)
                .atInstalledTemperature()
                .solve(LINE, List.of());
        assertThat(again.temperature()).isEqualTo(installed);
        assertThat(again.firstTension()).isEqualTo(plain.firstTension());
        assertThat(Statics.withDefaults().withTemperature(-30).canonicalForm())
                .isNotEqualTo(Statics.withDefaults().canonicalForm())
                .isNotEqualTo(Statics.withDefaults().withTemperature(-29).canonicalForm());
    }

    /** A load at a post goes into the post alone; one in a span pulls the cable, and the supports carry it with the cable. */
    @Test
    void supportsCarryCableAndLoads() {
        LineEquilibrium bare = Statics.withDefaults().solve(LINE, List.of());
        LineEquilibrium post = Statics.withDefaults()
                .solve(LINE, List.of(new AppliedLoad(Place.atSupport("p"), Attachment.GRIPPED, 900)));
        assertThat(up(post) - up(bare)).isCloseTo(900, within(1e-6));
        assertThat(post.maximumTension()).isCloseTo(bare.maximumTension(), within(1e-6));
        assertThat(post.loads().get(0).span()).isZero();
        LineEquilibrium span =
                Statics.withDefaults().solve(LINE, List.of(new AppliedLoad(Place.of(2, 4), Attachment.GRIPPED, 900)));
        assertThat(up(span) - up(bare)).isCloseTo(900, within(1e-5));
        assertThat(span.maximumTension()).isGreaterThan(bare.maximumTension() + 500);
        assertThat(span.loads().get(0).span()).isEqualTo(2);
    }

    /** Gripped off the middle the load stays on its point; free-running it goes to where both sides are as steep. */
    @Test
    void aLoadIsHeldOrRunsAsItsAttachmentSays() {
        LineEquilibrium held =
                Statics.withDefaults().solve(LINE, List.of(new AppliedLoad(Place.of(1, 2), Attachment.GRIPPED, 1500)));
        LineEquilibrium running = Statics.withDefaults()
                .solve(LINE, List.of(new AppliedLoad(Place.of(1, 2), Attachment.FREE_RUNNING, 1500)));
        assertThat(held.loads().get(0).point().x()).isCloseTo(2, within(0.1));
        assertThat(running.loads().get(0).point().x()).isCloseTo(4.5, within(0.1));
    }

    @Test
    void aPlaceOffTheLineIsRefusedByItsNumber() {
        AppliedLoad good = new AppliedLoad(Place.of(1, 2), Attachment.GRIPPED, 900);
        AppliedLoad bad = new AppliedLoad(Place.of(3, 2), Attachment.GRIPPED, 900);
        assertThatThrownBy(() -> Statics.withDefaults().solve(LINE, List.of(good, bad)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("loads[1].place");
        assertThat(Statics.withDefaults().attempt(LINE, List.of(bad)).result()).isEmpty();
        assertThat(Statics.withDefaults().attempt(LINE, List.of(good)).result()).isPresent();
    }

    @Test
    @SuppressWarnings("NullAway")
    void withoutLineLoadsOrListenerItRefuses() {
        Statics statics = Statics.withDefaults();
        assertThatThrownBy(() -> statics.solve(null, List.of())).hasMessageContaining("line");
        assertThatThrownBy(() -> statics.solve(LINE, null)).hasMessageContaining("loads");
        assertThatThrownBy(() -> statics.withProgress(null)).hasMessageContaining("progress");
        assertThatThrownBy(() -> Statics.withYieldedSupports(null)).hasMessageContaining("line");
        assertThatThrownBy(() -> statics.withTemperature(-300)).hasMessageContaining("temperature");
    }

    /** The line, its temperature and each load are a part of the work each; at the end all are done. */
    @Test
    void theListenerHearsOfEachPart() {
        List<Double> done = new ArrayList<>();
        List<Double> total = new ArrayList<>();
        Statics.withDefaults()
                .withProgress((d, t) -> {
                    done.add((double) d);
                    total.add((double) t);
                    return true;
                })
                .solve(
                        LINE,
                        List.of(
                                new AppliedLoad(Place.of(1, 2), Attachment.GRIPPED, 900),
                                new AppliedLoad(Place.of(2, 2), Attachment.GRIPPED, 700)));
        assertThat(total).allSatisfy(t -> assertThat(t).isEqualTo(4.0));
        assertThat(done).contains(1.0, 2.0, 3.0, 4.0).isSorted();
    }

    /** Points of the cable: the ends themselves are no points between the ends, nor is what lies beyond. */
    @Test
    void aPointOfTheCableLiesBetweenItsEnds() {
        double whole = Statics.withDefaults().solve(LINE, List.of()).spans().stream()
                .mapToDouble(SpanState::unstretchedLength)
                .sum();
        for (double length : List.of(0.0, -1.0, whole + 0.1, Double.NaN)) {
            assertThatThrownBy(() -> Statics.placeOfCablePoint(LINE, length))
                    .as("%s m", length)
                    .isInstanceOf(InvalidInputException.class)
                    .hasMessageContaining("length");
        }
        Place near = Statics.placeOfCablePoint(LINE, 0.01);
        assertThat(near.span()).isEqualTo(1);
        assertThat(near.station()).isCloseTo(0.01, within(1e-4));
        assertThat(Statics.placeOfCablePoint(LINE, whole - 0.01).span()).isEqualTo(2);
    }
}
