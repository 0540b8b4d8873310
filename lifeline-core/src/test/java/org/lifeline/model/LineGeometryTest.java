package org.lifeline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.lifeline.model.ModelParts.CABLE;
import static org.lifeline.model.ModelParts.threeSpans;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.base.Refusal;
import org.lifeline.base.Violation;
import org.lifeline.model.cable.Cable;

/** Places along a line of 5, 10 and 12 m, the rules for its supports, and its changed copies. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class LineGeometryTest {
    private static final Lifeline LINE = threeSpans().build();

    private static Lifeline.Builder twoAnchors(Point from, Point to) {
        return Lifeline.builder()
                .cable(CABLE)
                .endAnchor("a", from)
                .endAnchor("b", to)
                .pretension(1000);
    }

    /** Stations add up: 2 m in span 3 is 5 + 10 + 2 m; elevations go straight from 12 to 13, 12.5 and 12.5 m. */
    @ParameterizedTest
    @CsvSource({
        "1, 1.25, 1.25, 12.25",
        "1, 5, 5, 13",
        "2, 5, 10, 12.75",
        "2, 0, 5, 13",
        "3, 2, 17, 12.5",
        "3, 12, 27, 12.5"
    })
    void distanceAndElevationOfAStation(int span, double station, double along, double elevation) {
        Place p = Place.of(span, station);
        assertThat(LINE.along(p)).isCloseTo(along, within(1e-14));
        assertThat(LINE.chordElevation(p)).isCloseTo(elevation, within(1e-14));
        assertThat(LINE.spanOf(p)).isEqualTo(span);
        assertThat(LINE.stationOf(p)).isEqualTo(station);
    }

    /** A place at a support starts the span after it; at the last support it ends the span before. */
    @ParameterizedTest
    @CsvSource({
        "north, 0, 1, 0, 0, 12",
        "post 1, 1, 2, 0, 5, 13",
        "post 2, 2, 3, 0, 15, 12.5",
        "south, 3, 3, 12, 27, 12.5"
    })
    void aPlaceAtASupport(String id, int number, int span, double station, double along, double elevation) {
        Place p = Place.atSupport(id);
        assertThat(LINE.supportOf(p)).isEqualTo(number);
        assertThat(LINE.spanOf(p)).isEqualTo(span);
        assertThat(LINE.stationOf(p)).isEqualTo(station);
        assertThat(LINE.along(p)).isEqualTo(along);
        assertThat(LINE.chordElevation(p)).isEqualTo(elevation);
        assertThat(LINE.check(p)).isEmpty();
    }

    @Test
    void anUnknownSupportIsRefusedWhereverItIsAskedFor() {
        Place p = Place.atSupport("west");
        assertThat(LINE.check(p))
                .extracting(Violation::toString)
                .containsExactly("support: west: must be the id of a support of the line");
        String rule = "place: support west: must be the id of a support of the line";
        assertThat(Refusal.of(() -> LINE.supportOf(p))).containsExactly(rule);
        assertThat(Refusal.of(() -> LINE.spanOf(p))).containsExactly(rule);
        assertThat(Refusal.of(() -> LINE.stationOf(p))).containsExactly(rule);
        assertThat(Refusal.of(() -> LINE.along(p))).containsExactly(rule);
        assertThat(Refusal.of(() -> LINE.chordElevation(p))).containsExactly(rule);
        assertThat(Refusal.paths(() -> LINE.supportOf(Place.of(1, 2))))
                .as("within a span is at no support")
                .containsExactly("place");
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 4, -1, Integer.MAX_VALUE})
    void aSpanThatIsNotThere(int span) {
        String rule = "span: " + span + ": must be a span from 1 to 3";
        assertThatThrownBy(() -> LINE.run(span))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage(rule);
        assertThatThrownBy(() -> LINE.rise(span)).hasMessage(rule);
        assertThat(LINE.check(Place.of(span, 1)))
                .extracting(Violation::toString)
                .containsExactly(rule);
    }

    @Test
    void aStationIsInsideItsSpanOrRefusedWithTheRange() {
        assertThat(LINE.check(Place.of(1, Double.MIN_VALUE))).isEmpty();
        assertThat(LINE.check(Place.of(1, Math.nextDown(5.0)))).isEmpty();
        for (double station : new double[] {0, 5, -0.0, 5.1}) {
            Violation v = LINE.check(Place.of(1, station)).get(0);
            assertThat(v.code().key()).isEqualTo("STATION_OUTSIDE_SPAN");
            assertThat(v.allowed()).contains(AllowedRange.inside(org.lifeline.base.Interval.of(0, 5)));
        }
    }

    @Test
    void whatIsAskedOfNothingIsRefused() {
        assertThat(Refusal.paths(() -> LINE.along(null))).containsExactly("place");
        assertThat(Refusal.paths(() -> LINE.chordElevation(null))).containsExactly("place");
        assertThat(Refusal.paths(() -> LINE.spanOf(null))).containsExactly("place");
        assertThat(Refusal.paths(() -> LINE.stationOf(null))).containsExactly("place");
        assertThat(Refusal.paths(() -> LINE.supportOf(null))).containsExactly("place");
        assertThat(Refusal.paths(() -> LINE.check(null))).containsExactly("place");
        assertThat(Refusal.paths(() -> LINE.withSupports(null))).containsExactly("change");
        assertThat(Refusal.paths(() -> LINE.withSupports(s -> null))).containsExactly("support");
        assertThat(Refusal.paths(() -> LINE.withCable(null))).containsExactly("cable");
        assertThat(Refusal.paths(() -> LINE.withInstalled(null))).containsExactly("installed");
        assertThat(Refusal.paths(() -> threeSpans().support(null).build())).containsExactly("support[4]");
    }

    /** tan 80° = 5.67128182 (tables, recalled): 5.671 m over a run of 1 m is taken, 5.672 m is not, up or down. */
    @ParameterizedTest
    @CsvSource({"5.671, true", "5.672, false", "-5.671, true", "-5.672, false"})
    void noSpanIsSteeperThanEightyDegrees(double rise, boolean taken) {
        List<String> refused = Refusal.of(
                () -> twoAnchors(Point.of(0, 0, 0), Point.of(1, 0, rise)).build());
        assertThat(refused.isEmpty()).isEqualTo(taken);
        if (!taken) {
            assertThat(refused)
                    .containsExactly("endAnchor[1].position: [1.0 m, 0.0 m, " + rise
                            + " m]: the span before it must not be" + " steeper than 80° (run 1.0 m, rise 5.672 m)");
        }
    }

    @Test
    void twoSupportsAtOnePlaceAreNoSpan() {
        assertThat(Refusal.of(
                        () -> twoAnchors(Point.of(2, 2, 0), Point.of(2, 2, 0)).build()))
                .containsExactly(
                        "endAnchor[1].position: [2.0 m, 2.0 m, 0.0 m]: the span before it must not be steeper than"
                                + " 80° (run 0.0 m, rise 0.0 m)");
    }

    /** 3-4-5: a run of 60 km and a rise of 80 km are a span of exactly the longest 100 km. */
    @ParameterizedTest
    @CsvSource({"0.001, 0, true", "0.000999, 0, false", "60000, 80000, true", "60000.1, 80000, false", "100000, 0, true"
    })
    void spansAreFromAMillimetreToAHundredKilometres(double run, double rise, boolean taken) {
        List<String> refused = Refusal.paths(
                () -> twoAnchors(Point.of(0, 0, 0), Point.of(run, 0, rise)).build());
        assertThat(refused).isEqualTo(taken ? List.of() : List.of("endAnchor[1].position"));
    }

    @Test
    void supportsAreNamedByTheMethodThatTookThem() {
        Lifeline.Builder b = Lifeline.builder()
                .cable(CABLE)
                .pretension(1000)
                .support(Support.end("a", Point.of(0, 0, 0)))
                .intermediateAnchor("b", Point.of(5, 0, 0), Passage.free())
                .support(Support.intermediate("a", Point.of(10, 0, 0), Passage.free()))
                .endAnchor("a", Point.of(15, 0, 0));
        assertThat(Refusal.of(b::build))
                .containsExactly(
                        "support[2].id: a: is the id of support[0] as well",
                        "endAnchor[3].id: a: is the id of support[0] as well");
    }

    @Test
    void oneSupportIsNoLine() {
        assertThat(Refusal.of(() -> Lifeline.builder()
                        .cable(CABLE)
                        .pretension(1)
                        .endAnchor("a", Point.of(0, 0, 0))
                        .build()))
                .containsExactly("support: 1 supports: must have at least two");
        assertThat(Refusal.paths(() -> Lifeline.builder()
                        .cable(CABLE)
                        .pretension(1)
                        .endAnchor("", Point.of(0, 0, 0))
                        .build()))
                .containsExactly("endAnchor[0].id", "support");
    }

    @Test
    void gravityIsTakenFromAsteroidsToNeutronStars() {
        assertThat(threeSpans().gravity(1e-6).build().gravity()).isEqualTo(1e-6);
        assertThat(threeSpans().gravity(1000).build().gravity()).isEqualTo(1000);
        assertThat(Refusal.paths(() -> threeSpans().gravity(9e-7).build())).containsExactly("gravity");
        assertThat(Refusal.paths(() -> threeSpans().gravity(1000.1).build())).containsExactly("gravity");
        assertThat(threeSpans().gravity(1.62).build().weightPerLength()).isEqualTo(0.5 * 1.62);
    }

    @Test
    void changedCopiesKeepAllElse() {
        Lifeline moon = threeSpans().gravity(1.62).build();
        Lifeline raised = moon.withSupports(s -> s.withCapacity(2e4));
        assertThat(raised.supports()).allSatisfy(s -> assertThat(s.capacity()).hasValue(2e4));
        assertThat(raised.gravity()).isEqualTo(1.62);
        assertThat(raised.installed()).isEqualTo(moon.installed());
        Cable other = Cable.builder().massPerLength(0.7).axialStiffness(5e6).build();
        assertThat(moon.withCable(other).cable()).isSameAs(other);
        assertThat(moon.withCable(other).withCable(CABLE)).isEqualTo(moon).hasSameHashCodeAs(moon);
        assertThat(moon.toBuilder().build()).isEqualTo(moon);
        assertThat(moon.withInstalled(Installed.initialSag(2, 0.2)).gravity()).isEqualTo(1.62);
        assertThat(moon).isNotEqualTo(LINE).isNotEqualTo("line");
    }

    @Test
    void aBuilderUsedTwiceLeavesTheFirstLineAlone() {
        Lifeline.Builder b = twoAnchors(Point.of(0, 0, 5), Point.of(10, 0, 5));
        Lifeline first = b.build();
        Lifeline second = b.gravity(9.81).pretension(2000).build();
        assertThat(first.installed().value()).isEqualTo(1000);
        assertThat(second.installed().value()).isEqualTo(2000);
        assertThat(second.supports()).isEqualTo(first.supports());
        assertThat(second.gravity()).isEqualTo(9.81);
    }

    @Test
    void aLineIsPrintedByItsEnds() {
        assertThat(LINE.toString())
                .startsWith("north to south, 3 spans, cable, w ")
                .endsWith(", pretension 1500.0 N at 15.0 °C");
        assertThat(twoAnchors(Point.of(0, 0, 5), Point.of(10, 0, 5)).build().toString())
                .startsWith("a to b, 1 span, cable, w ");
    }

    @Test
    void theFormGoesThroughCableSupportsAndInstalledState() {
        assertThat(twoAnchors(Point.of(0, 0, 5), Point.of(10, 0, 5))
                        .build()
                        .canonicalForm()
                        .entries())
                .extracting(e -> e.path())
                .startsWith("cable.name", "cable.massPerLength", "cable.axialStiffness")
                .contains("support[a].position.z", "support[b].stiffness.x", "installed.value")
                .endsWith("gravity");
    }
}
