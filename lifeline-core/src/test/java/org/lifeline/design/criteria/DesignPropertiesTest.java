package org.lifeline.design.criteria;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/**
 * Quantities of a design itself, which need no arrest, by geometry: a line of three spans with runs of 4, 5 (3, 4) and 6 m, rises of
 * 3, 0 and -1 m, that turns by 36.87° and back by 36.87°.
 */
class DesignPropertiesTest {
    private static final LoadingCurve SPRING = LoadingCurve.spring(5e4);
    private static final Cable CABLE =
            Cable.builder().massPerLength(0.5).axialStiffness(5e6).build();

    private static Worker worker(String id, double mass) {
        return Worker.builder(id)
                .mass(mass)
                .walkingLevel(10)
                .connection(Connection.plainLanyard(1.8, SPRING))
                .build();
    }

    private static Lifeline.Builder line(Cable cable, Passage second) {
        return Lifeline.builder()
                .cable(cable)
                .support(Support.end("west", Point.of(0, 0, 11)).withCapacity(3e4))
                .support(Support.intermediate("one", Point.of(4, 0, 14), Passage.clamped()))
                .support(Support.intermediate("two", Point.of(8, 3, 14), second).withCapacity(1e4))
                .support(Support.end("east", Point.of(14, 3, 13)).withCapacity(2e4))
                .pretension(2000);
    }

    private static LifelineDesign.Builder design(Lifeline line) {
        return LifelineDesign.builder("d").line(line).worker(worker("A", 100));
    }

    private static LifelineDesign plain() {
        return design(line(CABLE, Passage.free()).build()).build();
    }

    private static List<CheckedValue> values(CheckedQuantity quantity, LifelineDesign design) {
        return quantity.values(new CheckedDesign(Extremes.ofCases(design, List.of())));
    }

    private static double only(CheckedQuantity quantity, LifelineDesign design) {
        List<CheckedValue> list = values(quantity, design);
        assertThat(list).hasSize(1);
        return list.get(0).value();
    }

    @Test
    void spansAndTheirLengths() {
        assertThat(values(CheckedQuantity.SPAN_LENGTH, plain()))
                .extracting(v -> v.label() + " " + v.value())
                .containsExactly("span 1 4.0", "span 2 5.0", "span 3 6.0");
        assertThat(only(CheckedQuantity.SPANS, plain())).isEqualTo(3);
        assertThat(only(CheckedQuantity.LINE_LENGTH, plain())).isEqualTo(15);
    }

    /** atan(3/4), 0, atan(1/6): up and down alike. */
    @Test
    void chordsAreInclinedByRiseOverRun() {
        List<CheckedValue> list = values(CheckedQuantity.CHORD_ANGLE, plain());
        assertThat(list).extracting(CheckedValue::label).containsExactly("span 1", "span 2", "span 3");
        assertThat(list.get(0).value()).isCloseTo(0.6435011087932844, within(1e-15));
        assertThat(list.get(1).value()).isZero();
        assertThat(list.get(2).value()).isCloseTo(0.16514867741462683, within(1e-15));
    }

    /** Angle between the chords in space, from the cosine by hand: (4,0,3)·(4,3,0)/25 = 0.64; (4,3,0)·(6,0,-1)/(5 √37). */
    @Test
    void theLineTurnsAtEachIntermediateAnchor() {
        List<CheckedValue> list = values(CheckedQuantity.LINE_TURN, plain());
        assertThat(list).extracting(CheckedValue::label).containsExactly("one", "two");
        assertThat(list.get(0).value()).isCloseTo(Math.acos(0.64), within(1e-14));
        assertThat(list.get(1).value()).isCloseTo(Math.acos(24 / (5 * Math.sqrt(37))), within(1e-14));
    }

    @Test
    void aLineOfOneSpanTurnsNowhereAndHasNoPosts() {
        Lifeline one = Lifeline.builder()
                .cable(CABLE)
                .endAnchor("a", Point.of(0, 0, 12))
                .endAnchor("b", Point.of(12, 0, 12))
                .pretension(2000)
                .build();
        LifelineDesign d = design(one).build();
        assertThat(values(CheckedQuantity.LINE_TURN, d)).isEmpty();
        assertThat(only(CheckedQuantity.FIXED_POSTS, d))
                .as("none that lets the cable run")
                .isEqualTo(1);
        assertThat(values(CheckedQuantity.INTERMEDIATE_ANCHOR_CAPACITY, d)).isEmpty();
        assertThat(values(CheckedQuantity.of(Quantity.INTERMEDIATE_ANCHOR_LOAD), d)
                        .get(0)
                        .reason())
                .isEqualTo("there is no intermediate anchor");
        // Parabola w L²/(8 H) with the weight of the stretched cable, w/(1 + T/EA), and H from T at the end; the
        // catenary
        // is deeper by the share (w L/H)²/48 = 1.8e-5.
        double w = 0.5 * 9.80665 / (1 + 2000 / 5e6);
        double h = Math.sqrt(2000 * 2000 - 36 * w * w);
        double sag = w * 144 / (8 * h);
        assertThat(only(CheckedQuantity.INITIAL_SAG_RATIO, d)).isCloseTo(sag / 12, within(3e-5 * sag / 12));
        assertThat(only(CheckedQuantity.INITIAL_SLOPE, d)).isEqualTo(2 * only(CheckedQuantity.INITIAL_SAG_RATIO, d));
        // At the ends the cable is steeper than the straight leg: half of its weight over H.
        assertThat(only(CheckedQuantity.LINE_SLOPE, d)).isCloseTo(Math.atan(6 * w / h), within(1e-4 * 6 * w / h));
    }

    /** A warmer cable hangs deeper: the slope over all temperatures is that of the warmest. */
    @Test
    void theSlopeIsThatOfTheWorstTemperature() {
        Lifeline line = line(CABLE, Passage.free()).build();
        LifelineDesign cold = design(line).temperature(-20).build();
        LifelineDesign warm = design(line).temperature(50).build();
        LifelineDesign both =
                design(line).temperature(-20).temperature(50).temperature(50).build();
        for (int i = 0; i < 3; i++) {
            double of = values(CheckedQuantity.LINE_SLOPE, both).get(i).value();
            double hot = values(CheckedQuantity.LINE_SLOPE, warm).get(i).value();
            assertThat(of).isEqualTo(hot);
            assertThat(hot)
                    .isGreaterThan(
                            values(CheckedQuantity.LINE_SLOPE, cold).get(i).value());
            assertThat(of)
                    .isGreaterThan(
                            values(CheckedQuantity.CHORD_ANGLE, both).get(i).value());
        }
    }

    @ParameterizedTest
    @CsvSource({"true, 1", "false, 0.5"})
    void theShareOfPostsThatHoldTheCable(boolean clamped, double share) {
        Passage second = clamped ? Passage.clamped() : Passage.friction(0.2);
        assertThat(only(
                        CheckedQuantity.FIXED_POSTS,
                        design(line(CABLE, second).build()).build()))
                .isEqualTo(share);
    }

    @Test
    void capacitiesOfAllEndAndIntermediateAnchors() {
        assertThat(values(CheckedQuantity.ANCHOR_CAPACITY, plain()))
                .extracting(v -> v.label() + " " + v.value() + v.reason())
                .containsExactly("west 30000.0", "one NaNits capacity is not given", "two 10000.0", "east 20000.0");
        assertThat(values(CheckedQuantity.END_ANCHOR_CAPACITY, plain()))
                .extracting(CheckedValue::value)
                .containsExactly(3e4, 2e4);
        assertThat(values(CheckedQuantity.INTERMEDIATE_ANCHOR_CAPACITY, plain()))
                .extracting(CheckedValue::label)
                .containsExactly("one", "two");
    }

    @Test
    void theDiameterWhereItIsGiven() {
        assertThat(values(CheckedQuantity.CABLE_DIAMETER, plain()).get(0).reason())
                .isEqualTo("its diameter is not given");
        Cable thick = CABLE.toBuilder().diameter(0.012).build();
        CheckedValue v = values(
                        CheckedQuantity.CABLE_DIAMETER,
                        design(line(thick, Passage.free()).build()).build())
                .get(0);
        assertThat(v.value()).isEqualTo(0.012);
        assertThat(v.label()).isEqualTo("cable");
    }

    /** More than the workers listed take part in no fall; one who is listed but in no fall counts; so does who hangs. */
    @Test
    void workersAreThoseOfTheDesignOrOfItsLargestFall() {
        Worker a = worker("A", 100);
        Worker b = worker("B", 140);
        Lifeline line = line(CABLE, Passage.free()).build();
        LifelineDesign two = design(line)
                .worker(b)
                .fall(Fall.builder("f")
                        .at(Place.of(1, 2))
                        .faller(a)
                        .hanging(b, Place.of(2, 1))
                        .build())
                .build();
        for (CheckedQuantity each : List.of(CheckedQuantity.WORKERS, CheckedQuantity.WORKERS_IN_ONE_SPAN)) {
            assertThat(only(each, plain())).isEqualTo(1);
            assertThat(only(each, two)).isEqualTo(2);
        }
        assertThat(only(CheckedQuantity.WORKER_MASS, plain())).isEqualTo(100);
        assertThat(only(CheckedQuantity.WORKER_MASS, two)).isEqualTo(140);
    }

    @Test
    void statedDistancesAreThoseOfTheClearanceRules() {
        LifelineDesign d = plain().toBuilder()
                .clearance(ClearanceRules.commonPractice().withMargin(0.9).withHarnessStretch(0.45))
                .build();
        assertThat(only(CheckedQuantity.STATED_MARGIN, d)).isEqualTo(0.9);
        assertThat(only(CheckedQuantity.STATED_HARNESS_STRETCH, d)).isEqualTo(0.45);
    }

    /**
     * (40/11)(H - 4): the floor is at 10 m; an obstruction at 0.5 m below span 1 alone (0 to 4 m), one at 6.5 m that only
     * touches span 3 at 9 m and so span 2 as well: H = 9.5, 3.5, 3.5 m; allowed 20 m, and none where H is below 4 m.
     */
    @Test
    void aSpanForTheHeightAboveTheHighestObstructionBelowIt() {
        LifelineDesign d = plain().toBuilder()
                .workingFloor(10)
                .clearance(ClearanceRules.commonPractice()
                        .withObstructions(List.of(
                                new Obstruction(0, 3.9, 0.5), new Obstruction(1, 2, 0.2), new Obstruction(9, 20, 6.5))))
                .build();
        List<CheckedValue> list = values(CheckedQuantity.SPAN_FOR_HEIGHT, d);
        assertThat(list.get(0).value()).isCloseTo(4 / 20.0, within(1e-15));
        assertThat(list.get(0).shownLimit(1)).isCloseTo(20, within(1e-14));
        assertThat(list.get(0).shownValue()).isCloseTo(4, within(1e-14));
        assertThat(list.get(0).unit("-")).isEqualTo("m");
        assertThat(list.get(1).value()).isInfinite();
        assertThat(list.get(2).value()).isInfinite();
    }

    @Test
    void whatTheSpanForHeightNeedsIsNamed() {
        LifelineDesign floored = plain().toBuilder().workingFloor(10).build();
        assertThat(values(CheckedQuantity.SPAN_FOR_HEIGHT, floored))
                .extracting(CheckedValue::reason)
                .containsOnly("no obstruction is given below it");
        assertThat(values(CheckedQuantity.SPAN_FOR_HEIGHT, plain()))
                .extracting(CheckedValue::reason)
                .containsOnly("the elevation of the working floor that carries the posts is not given");
    }

    @Test
    void withoutAnArrestEveryLoadSaysWhy() {
        LifelineDesign d = plain();
        assertThat(values(CheckedQuantity.of(Quantity.ARREST_FORCE), d).get(0).reason())
                .isEqualTo("no arrest could be computed");
        assertThat(values(CheckedQuantity.of(Quantity.INLINE_EXTENSION), d)
                        .get(0)
                        .reason())
                .isEqualTo("there is no in-line energy absorber");
        assertThat(values(CheckedQuantity.of(Quantity.INTERMEDIATE_ANCHOR_LOAD), d)
                        .get(0)
                        .reason())
                .isEqualTo("no arrest could be computed");
        assertThat(values(CheckedQuantity.of(Quantity.CLEARANCE_MARGIN), d)
                        .get(0)
                        .reason())
                .isEqualTo("no obstruction is given");
        assertThat(values(CheckedQuantity.FREE_HEIGHT, d).get(0).reason()).isEqualTo("no obstruction is given");
        LifelineDesign over = d.toBuilder()
                .clearance(ClearanceRules.commonPractice().withObstructions(List.of(new Obstruction(90, 99, 0))))
                .build();
        assertThat(values(CheckedQuantity.FREE_HEIGHT, over).get(0).reason()).isEqualTo("no arrest could be computed");
        assertThat(values(CheckedQuantity.loadOnSupport("one"), d).get(0).reason())
                .isEqualTo("no arrest could be computed");
        assertThat(values(CheckedQuantity.loadOnSupport("north"), d).get(0).reason())
                .isEqualTo("no support has this id");
    }

    @Test
    void strengthsWithoutAnArrestSayWhatIsLackingFirst() {
        assertThat(values(CheckedQuantity.STRENGTH_FACTOR, plain()))
                .extracting(v -> v.label() + ": " + v.reason())
                .containsExactly(
                        "cable: its minimum breaking strength is not given",
                        "west: no arrest could be computed",
                        "one: its capacity is not given",
                        "two: no arrest could be computed",
                        "east: no arrest could be computed");
        Cable strong = CABLE.withBreakingStrength(5e4);
        LifelineDesign d = design(line(strong, Passage.free()).build()).build();
        assertThat(values(CheckedQuantity.CABLE_STRENGTH_FACTOR, d).get(0).reason())
                .isEqualTo("no arrest could be computed");
        assertThat(values(CheckedQuantity.ANCHOR_STRENGTH_FACTOR, d)).hasSize(4);
        assertThat(values(CheckedQuantity.IMPACT_STRENGTH, d))
                .extracting(CheckedValue::reason)
                .containsExactly(
                        "no arrest could be computed",
                        "no arrest could be computed",
                        "its capacity is not given",
                        "no arrest could be computed",
                        "no arrest could be computed");
        // Strength is the breaking strength times the lowest efficiency where none is stated.
        assertThat(Strengths.strengthOf(strong).orElseThrow()).isEqualTo(0.8 * 5e4);
        assertThat(Strengths.strengthOf(CABLE)).isEmpty();
    }
}
