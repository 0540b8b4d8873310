package org.lifeline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.lifeline.model.ModelParts.SPRING;
import static org.lifeline.model.ModelParts.absorber;
import static org.lifeline.model.ModelParts.worker;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.base.Point;
import org.lifeline.base.Refusal;
import org.lifeline.model.cable.Cable;

/** Workers, places, obstructions, clearance rules and model factors: bounds, text, form and equality. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class PeopleAndPlacesTest {
    @Test
    void everythingGivenOfAWorkerComesBack() {
        Connection c = Connection.lanyard(1.8, absorber());
        Worker w = Worker.builder("A")
                .mass(100)
                .walkingLevel(10)
                .attachmentHeight(1.4)
                .attachment(Attachment.GRIPPED)
                .connection(c)
                .offset(0.3)
                .build();
        assertThat(w.id()).isEqualTo("A");
        assertThat(w.mass()).isEqualTo(100);
        assertThat(w.walkingLevel()).isEqualTo(10);
        assertThat(w.attachmentHeight()).isEqualTo(1.4);
        assertThat(w.harnessElevation()).isEqualTo(11.4);
        assertThat(w.attachment()).isEqualTo(Attachment.GRIPPED);
        assertThat(w.connection()).isSameAs(c);
        assertThat(w.offset()).isEqualTo(0.3);
        assertThat(w.toString()).isEqualTo("A, 100.0 kg, walking level 10.0 m, " + c);
        Worker copy = w.toBuilder("A").build();
        assertThat(copy).isEqualTo(w).hasSameHashCodeAs(w);
        assertThat(w.toBuilder("B").build().id()).isEqualTo("B");
    }

    @Test
    void whatIsNotStatedOfAWorkerIsThatOfCommonPractice() {
        Worker w = worker("A").build();
        assertThat(w.attachmentHeight()).as("1.5 m: common practice, no source").isEqualTo(1.5);
        assertThat(w.attachment()).isEqualTo(Attachment.FREE_RUNNING);
        assertThat(w.offset()).isZero();
    }

    @Test
    void changedCopiesOfAWorkerKeepAllElse() {
        Worker w = worker("A").offset(0.3).attachment(Attachment.GRIPPED).build();
        assertThat(w.withMass(120).mass()).isEqualTo(120);
        assertThat(w.withMass(120).withMass(100)).isEqualTo(w);
        Connection other = Connection.plainLanyard(2, SPRING);
        assertThat(w.withConnection(other).connection()).isSameAs(other);
        assertThat(w.withConnection(other).offset()).isEqualTo(0.3);
        assertThat(w.withConnection(other).withConnection(w.connection())).isEqualTo(w);
        assertThat(Refusal.paths(() -> w.withConnection(null))).containsExactly("connection");
        assertThat(Refusal.paths(() -> w.withMass(9))).containsExactly("mass");
    }

    @Test
    void theFormOfAWorker() {
        assertThat(worker("A").offset(0.25).build().canonicalForm().toString())
                .startsWith("worker\nid: A\nmass: 100.0 kg\nwalkingLevel: 10.0 m\nattachmentHeight: 1.5 m"
                        + "\nattachment: FREE_RUNNING\noffset: 0.25 m\nconnection.kind: PLAIN_LANYARD\n");
    }

    @Test
    void whatIsLackingOfAWorkerIsNamed() {
        assertThat(Refusal.of(() -> Worker.builder(null).attachment(null).build()))
                .containsExactly(
                        "id: missing: must be given",
                        "mass: missing: must be given",
                        "walkingLevel: missing: must be given",
                        "attachment: missing: must be given",
                        "connection: missing: must be given");
        assertThat(Refusal.of(() -> worker("\t").build())).containsExactly("id: \"\t\": must not be blank");
    }

    @ParameterizedTest
    @CsvSource({
        "mass, 10, 10000, 9.999, 10000.1",
        "walkingLevel, -1e6, 1e6, -1.1e6, 1.1e6",
        "attachmentHeight, 0.05, 10, 0.049, 10.01",
        "offset, 0, 1000, -0.001, 1000.1"
    })
    void numbersOfAWorkerAtTheirBoundsAndBeyond(String field, double low, double high, double below, double above) {
        assertThat(Refusal.of(() -> with(field, low).build())).isEmpty();
        assertThat(Refusal.of(() -> with(field, high).build())).isEmpty();
        for (double bad : new double[] {below, above, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThat(Refusal.paths(() -> with(field, bad).build())).containsExactly(field);
        }
    }

    private static Worker.Builder with(String field, double value) {
        return switch (field) {
            case "mass" -> worker("A").mass(value);
            case "walkingLevel" -> worker("A").walkingLevel(value);
            case "attachmentHeight" -> worker("A").attachmentHeight(value);
            default -> worker("A").offset(value);
        };
    }

    @Test
    void aPlaceIsInASpanOrAtASupport() {
        Place p = Place.of(2, 6.5);
        assertThat(p.span()).isEqualTo(2);
        assertThat(p.station()).isEqualTo(6.5);
        assertThat(p.support()).isEmpty();
        assertThat(p.isAtSupport()).isFalse();
        assertThat(p).hasToString("span 2, station 6.5 m");
        Place s = Place.atSupport("post");
        assertThat(s.isAtSupport()).isTrue();
        assertThat(s.support()).contains("post");
        assertThat(s).hasToString("support post");
        assertThatThrownBy(s::span)
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("the place is at the support post, in no span: ask the line");
        assertThatThrownBy(s::station).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void placesAreEqualWhenSpanStationAndSupportAre() {
        Place p = Place.of(2, 6.5);
        assertThat(p).isEqualTo(Place.of(2, 6.5)).hasSameHashCodeAs(Place.of(2, 6.5));
        assertThat(p)
                .isNotEqualTo(Place.of(1, 6.5))
                .isNotEqualTo(Place.of(2, 6))
                .isNotEqualTo("span 2");
        assertThat(Place.atSupport("a")).isEqualTo(Place.atSupport("a")).isNotEqualTo(Place.atSupport("b"));
        assertThat(Place.atSupport("a").hashCode())
                .isNotEqualTo(Place.atSupport("b").hashCode());
        assertThat(Place.of(0, 0)).isNotEqualTo(Place.atSupport("a"));
        assertThat(Refusal.of(() -> Place.of(1, Double.NaN)))
                .containsExactly("station: NaN m: must be a finite number");
        assertThat(Refusal.of(() -> Place.atSupport(null))).containsExactly("id: null: must be given");
    }

    @ParameterizedTest
    @CsvSource({"2, true", "1.999, false", "5, true", "5.001, false", "3, true"})
    void anObstructionIsBelowItsStretchOfTheLine(double along, boolean below) {
        assertThat(new Obstruction(2, 5, 3).isBelow(along)).isEqualTo(below);
        assertThat(new Obstruction(2, 2, 3).isBelow(2)).isTrue();
    }

    /** Half the breadth of a person, 0.3 m (common practice, no source), on either side of where the fall goes down. */
    @ParameterizedTest
    @CsvSource({"0, 0, true", "0.3, 0, true", "0.31, 0, false", "0.8, 0.5, true", "0.81, 0.5, false", "0, 9, true"})
    void anObstructionAsideIsUnderWhoFallsThere(double distance, double offset, boolean under) {
        assertThat(new Obstruction(0, 5, 3, distance).isUnder(offset)).isEqualTo(under);
        assertThat(Obstruction.HALF_BREADTH).isEqualTo(0.3);
    }

    /** Spans of 5 and 7 m, a corner between them: stations count in plan from the first support of their span. */
    @Test
    void obstructionsAreLookedAtInTheirMiddleAndAtTheirEnds() {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().weightPerLength(5).axialStiffness(1e6).build())
                .endAnchor("a", Point.of(0, 0, 4))
                .intermediateAnchor("p", Point.of(3, 4, 9), Passage.free())
                .endAnchor("b", Point.of(10, 4, 9))
                .pretension(1000)
                .build();
        ClearanceRules rules = ClearanceRules.commonPractice()
                .withObstructions(
                        List.of(new Obstruction(1, 2, 0), new Obstruction(4, 6, 1), new Obstruction(-3, 20, 1)));
        assertThat(rules.obstructionStations(line, 1)).containsExactly(1.5, 1.0, 2.0, 4.0);
        assertThat(rules.obstructionStations(line, 2)).containsExactly(1.0, 3.5);
        assertThat(ClearanceRules.commonPractice()
                        .withObstructions(List.of(new Obstruction(2, 2, 0)))
                        .obstructionStations(line, 1))
                .containsExactly(2.0);
        assertThat(ClearanceRules.commonPractice().obstructionStations(line, 1)).isEmpty();
        assertThat(Refusal.paths(() -> rules.obstructionStations(line, 3))).containsExactly("span");
        assertThat(Refusal.paths(() -> rules.obstructionStations(line, 0))).containsExactly("span");
    }

    /** 12.3 m and 1.07 m are a little more than 13.37 m in binary: what ends there stands there. */
    @Test
    void aPlaceOnTheEndOfAnObstructionIsAboveIt() {
        Obstruction o = new Obstruction(13, 13.37, 2);
        assertThat(12.3 + 1.07).isGreaterThan(13.37);
        assertThat(o.isBelow(12.3 + 1.07)).isTrue();
        assertThat(o.standsBetween(12.3 + 1.07, 20)).isTrue();
        assertThat(o.standsBetween(20, 12.3 + 1.07)).isTrue();
        assertThat(o.standsBetween(12, 13)).isTrue();
        assertThat(o.standsBetween(12, 14)).isTrue();
        assertThat(o.standsBetween(13.38, 20)).isFalse();
        assertThat(o.standsBetween(12, 12.99)).isFalse();
    }

    @Test
    void obstructionsAreRefusedByTheNamesOfTheirNumbers() {
        assertThat(Refusal.of(() -> new Obstruction(5, 4, 3))).containsExactly("to: 4.0 m: must not lie before from");
        assertThat(Refusal.paths(() -> new Obstruction(Double.NaN, 2e6, -2e6, -1)))
                .containsExactly("from", "to", "elevation", "distance");
        assertThat(new Obstruction(0, 5, 3).distance()).isZero();
        assertThat(new Obstruction(0, 5, 3, 1000).distance()).isEqualTo(1000);
    }

    @Test
    void clearanceRulesChangeOneThingAtATime() {
        ClearanceRules common = ClearanceRules.commonPractice();
        assertThat(common.harnessStretch()).isEqualTo(0.3);
        assertThat(common.margin()).isEqualTo(0.6);
        assertThat(common.obstructions()).isEmpty();
        List<Obstruction> list = new ArrayList<>(List.of(new Obstruction(0, 5, 3)));
        ClearanceRules changed = common.withObstructions(list).withMargin(1).withHarnessStretch(0.4);
        list.clear();
        assertThat(changed).isEqualTo(new ClearanceRules(0.4, 1, List.of(new Obstruction(0, 5, 3))));
        assertThatThrownBy(() -> changed.obstructions().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThat(changed.withMargin(0.6).withHarnessStretch(0.3).withObstructions(List.of()))
                .isEqualTo(common);
    }

    @Test
    void clearanceRulesAreRefusedByName() {
        ClearanceRules common = ClearanceRules.commonPractice();
        assertThat(Refusal.paths(() -> common.withHarnessStretch(-0.1))).containsExactly("harnessStretch");
        assertThat(Refusal.paths(() -> common.withMargin(1001))).containsExactly("margin");
        assertThat(Refusal.paths(() -> common.withObstructions(null))).containsExactly("obstructions");
        assertThat(Refusal.paths(() -> common.withObstructions(Arrays.asList(new Obstruction(0, 1, 0), null))))
                .containsExactly("obstructions[1]");
        assertThat(Refusal.paths(() -> new ClearanceRules(Double.NaN, -1, List.of())))
                .containsExactly("harnessStretch", "margin");
    }

    @Test
    void theDistanceOfAnObstructionIsInTheFormOnlyWhereThereIsOne() {
        ClearanceRules rules = ClearanceRules.commonPractice()
                .withObstructions(List.of(new Obstruction(0, 5, 3), new Obstruction(6, 7, 2, 0.5)));
        assertThat(rules.canonicalForm())
                .hasToString("clearance\nharnessStretch: 0.3 m\nmargin: 0.6 m"
                        + "\nobstruction[0].from: 0.0 m\nobstruction[0].to: 5.0 m\nobstruction[0].elevation: 3.0 m"
                        + "\nobstruction[1].from: 6.0 m\nobstruction[1].to: 7.0 m\nobstruction[1].elevation: 2.0 m"
                        + "\nobstruction[1].distance: 0.5 m");
    }

    @ParameterizedTest
    @CsvSource({"1, 1, false", "0.9, 1, true", "1, 0.9, true", "1.2, 1.3, false", "10, 10, false"})
    void aFactorBelowOneNeedsAReason(double force, double distance, boolean below) {
        assertThat(new ModelFactors(force, distance, "tests of the maker").isBelowOne())
                .isEqualTo(below);
        assertThat(Refusal.of(() -> new ModelFactors(force, distance)))
                .isEqualTo(below ? List.of("reason: missing: must say why a factor is below 1") : List.of());
    }

    @Test
    void factorsLieFromAHalfToTen() {
        assertThat(Refusal.paths(() -> new ModelFactors(0.49, 10.1, "x"))).containsExactly("force", "distance");
        assertThat(Refusal.paths(() -> new ModelFactors(0.49, 0.9)))
                .as("the number first")
                .containsExactly("force");
        assertThat(Refusal.paths(() -> new ModelFactors(1, 1, null))).containsExactly("reason");
        assertThat(new ModelFactors(0.5, 0.5, "x").reason()).isEqualTo("x");
        assertThat(ModelFactors.none()).isEqualTo(new ModelFactors(1, 1, ""));
    }
}
