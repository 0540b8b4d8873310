package org.lifeline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.lifeline.model.ModelParts.SPRING;
import static org.lifeline.model.ModelParts.absorber;
import static org.lifeline.model.ModelParts.fall;
import static org.lifeline.model.ModelParts.threeSpans;
import static org.lifeline.model.ModelParts.worker;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.Refusal;
import org.lifeline.base.Violation;

/** Falls: who takes part, what is refused, changed copies, and whether a connection reaches the line. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class FallRulesTest {
    private static final Worker A = worker("A").build();
    private static final Worker B = worker("B").mass(80).offset(0.4).build();
    private static final Worker C = worker("C").mass(120).offset(0.2).build();

    @Test
    void everythingGivenComesBack() {
        Fall f = Fall.builder("north bay")
                .at(Place.of(2, 3.5))
                .faller(A)
                .faller(B)
                .hanging(C, Place.atSupport("post 1"))
                .freeFall(1.5)
                .build();
        assertThat(f.id()).isEqualTo("north bay");
        assertThat(f.place()).isEqualTo(Place.of(2, 3.5));
        assertThat(f.fallers()).containsExactly(A, B);
        assertThat(f.hanging()).containsExactly(new Fall.Hanging(C, Place.atSupport("post 1")));
        assertThat(f.freeFall()).hasValue(1.5);
        assertThat(f.fallingMass()).as("those who hang do not fall").isEqualTo(180);
        assertThat(f.largestOffset()).isEqualTo(0.4);
        assertThat(f).hasToString("north bay: [A, B] at span 2, station 3.5 m, [C] hanging, free fall 1.5 m");
        assertThatThrownBy(() -> f.fallers().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> f.hanging().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void aFallOfOneAlone() {
        Fall f = fall(A).build();
        assertThat(f.freeFall()).isEmpty();
        assertThat(f.hanging()).isEmpty();
        assertThat(f.largestOffset()).isZero();
        assertThat(f).hasToString("f: [A] at span 1, station 2.0 m");
    }

    @ParameterizedTest
    @CsvSource({
        "FREE_RUNNING, true, true",
        "FREE_RUNNING, false, false",
        "GRIPPED, true, false",
        "GRIPPED, false, false"
    })
    void onlyAFreeAttachmentWithinASpanCanRun(Attachment attachment, boolean inSpan, boolean runs) {
        Worker w = worker("A").attachment(attachment).build();
        Place place = inSpan ? Place.of(1, 2) : Place.atSupport("post 1");
        assertThat(Fall.builder("f").at(place).faller(w).build().canRun()).isEqualTo(runs);
    }

    @Test
    void whatIsLackingIsNamed() {
        assertThat(Refusal.of(() -> Fall.builder(null).build()))
                .containsExactly(
                        "id: missing: must be given",
                        "faller: []: must name at least one worker",
                        "at: missing: must be given");
        assertThat(Refusal.of(
                        () -> Fall.builder(" ").at(Place.of(1, 1)).faller(A).build()))
                .containsExactly("id: \" \": must not be blank");
        assertThat(Refusal.of(() -> fall(A).at(null).build())).containsExactly("at: missing: must be given");
        assertThat(Refusal.of(() -> fall(A, null).build())).containsExactly("faller[1]: missing: must be given");
        assertThat(Refusal.of(() -> fall(A).hanging(null, null).build()))
                .containsExactly(
                        "hanging[0].worker: missing: must be given", "hanging[0].place: missing: must be given");
        assertThat(Refusal.of(() -> fall(A).hanging(B, null).build()))
                .containsExactly("hanging[0].place: missing: must be given");
        assertThat(Refusal.of(() -> new Fall.Hanging(null, Place.of(1, 1))))
                .containsExactly("worker: null: must be given");
        assertThat(Refusal.of(() -> new Fall.Hanging(A, null))).containsExactly("place: null: must be given");
    }

    @Test
    void nobodyTakesPartTwice() {
        assertThat(Refusal.of(() -> fall(A, B, A).build()))
                .containsExactly("faller[2]: A: must not be named twice in one fall");
        assertThat(Refusal.of(() -> fall(A).hanging(A, Place.of(1, 3)).build()))
                .containsExactly("hanging[0].worker: A: must not be named twice in one fall");
        assertThat(Refusal.of(() -> fall(A).hanging(B, Place.of(1, 3))
                        .hanging(B, Place.of(1, 4))
                        .build()))
                .containsExactly("hanging[1].worker: B: must not be named twice in one fall");
    }

    @Test
    void allWhoFallAtOnePlaceAreAttachedAlike() {
        Worker gripped = worker("G").attachment(Attachment.GRIPPED).build();
        assertThat(Refusal.of(() -> fall(A, gripped, B).build()))
                .containsExactly("faller[1]: G: must be attached to the line in the same way as the others who fall at"
                        + " this place");
        assertThat(Refusal.of(() -> fall(A).hanging(gripped, Place.of(1, 4)).build()))
                .as("who hangs elsewhere may be attached in another way")
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.001, 1000.001, Double.NaN, Double.POSITIVE_INFINITY})
    void aFreeFallIsALength(double value) {
        assertThat(Refusal.paths(() -> fall(A).freeFall(value).build())).containsExactly("freeFall");
        assertThat(fall(A).freeFall(0).build().freeFall()).hasValue(0);
        assertThat(fall(A).freeFall(1000).build().freeFall()).hasValue(1000);
    }

    @Test
    void aCopyAtAnotherPlaceKeepsAllElse() {
        Fall f = fall(A, B).hanging(C, Place.of(3, 1)).freeFall(1.2).build();
        Fall moved = f.at(Place.atSupport("post 2"));
        assertThat(moved.place()).isEqualTo(Place.atSupport("post 2"));
        assertThat(moved.at(Place.of(1, 2))).isEqualTo(f).hasSameHashCodeAs(f);
        assertThat(moved).isNotEqualTo(f);
        assertThat(f.differences(moved))
                .extracting(d -> d.path())
                .containsExactly("at.span", "at.station", "at.support");
        assertThat(Refusal.paths(() -> f.at(null))).containsExactly("at");
    }

    @Test
    void changedWorkersAreChangedWhereTheyFallAndWhereTheyHang() {
        Fall f = fall(A, B).hanging(C, Place.of(3, 1)).freeFall(1.2).build();
        Fall heavy = f.withWorkers(w -> w.withMass(2 * w.mass()));
        assertThat(heavy.fallingMass()).isEqualTo(360);
        assertThat(heavy.hanging().get(0).worker().mass()).isEqualTo(240);
        assertThat(heavy.hanging().get(0).place()).isEqualTo(Place.of(3, 1));
        assertThat(heavy.freeFall()).hasValue(1.2);
        assertThat(f.withWorkers(w -> w)).isEqualTo(f);
        assertThat(Refusal.paths(() -> f.withWorkers(null))).containsExactly("change");
        assertThat(Refusal.paths(() -> fall(A).build().withWorkers(w -> null))).containsExactly("faller[0]");
    }

    @Test
    void aBuilderUsedTwiceLeavesTheFirstFallAlone() {
        Fall.Builder b = fall(A);
        Fall first = b.build();
        Fall second = b.faller(B).freeFall(1).build();
        assertThat(first.fallers()).containsExactly(A);
        assertThat(first.freeFall()).isEmpty();
        assertThat(second.fallers()).containsExactly(A, B);
    }

    @Test
    void theFormNamesPlacesAndPeopleByTheirIds() {
        String form = fall(A).hanging(B, Place.atSupport("post 1"))
                .freeFall(1.5)
                .build()
                .canonicalForm()
                .toString();
        assertThat(form)
                .startsWith("fall\nid: f\nat.span: 1.0\nat.station: 2.0 m\nfaller[A].id: A\nfaller[A].mass: 100.0 kg")
                .contains("\nhanging[B].worker.mass: 80.0 kg\n", "\nhanging[B].place.support: post 1\n")
                .endsWith("\nfreeFall: 1.5 m");
    }

    /**
     * The line at post 1 is 13 m high, the harness h below or above it, the worker e aside: a connection of L reaches if h² + e²
     * is at most L². 3-4-5 triangles scaled to 1.5 m.
     */
    @ParameterizedTest
    @CsvSource({
        "11.8, 0.9, 1.5, true",
        "11.8, 0.9, 1.4999, false",
        "11.8, 0.91, 1.5, false",
        "14.2, 0.9, 1.5, true",
        "14.2, 0.9, 1.499, false",
        "13, 1.5, 1.5, true",
        "13, 1.51, 1.5, false",
        "13, 0, 0, true"
    })
    void aConnectionReachesTheLineByPythagoras(double harness, double offset, double length, boolean reaches) {
        Worker w = worker("W")
                .walkingLevel(harness - 1.5)
                .offset(offset)
                .connection(Connection.plainLanyard(length, SPRING))
                .build();
        Fall f = Fall.builder("f").at(Place.atSupport("post 1")).faller(w).build();
        List<Violation> found = f.checkReach(threeSpans().build(), 13);
        assertThat(found.isEmpty()).isEqualTo(reaches);
        for (Violation each : found) {
            assertThat(each.path()).isEqualTo("faller[0].connection.tautLength");
            assertThat(each.value()).isEqualTo(length + " m");
            double least = Math.hypot(13 - harness, offset);
            AllowedRange allowed = each.allowed().orElseThrow();
            assertThat(allowed.contains(least + 1e-9)).isTrue();
            assertThat(allowed.contains(least - 1e-9)).isFalse();
        }
    }

    @Test
    void theRefusalSaysWhereTheLineIs() {
        Lifeline line = threeSpans().build();
        Worker low = worker("low").walkingLevel(9).build();
        assertThat(fall(low).build().checkReach(line, 12.4))
                .extracting(Violation::toString)
                .singleElement()
                .asString()
                .startsWith("faller[0].connection.tautLength: 1.8 m: does not reach the line, which is 1.9")
                .endsWith("m above the harness attachment of low");
        Worker aside = worker("aside").walkingLevel(10.9).offset(2).build();
        assertThat(fall(aside).build().checkReach(line, 12.4))
                .extracting(Violation::rule)
                .containsExactly(
                        "does not reach the line, which is 0.0 m beside the harness attachment of aside and 2.0 m"
                                + " aside");
        Worker high = worker("high").walkingLevel(15).build();
        // The chord at 2 m of 5 m is at 12.4 m, the line hangs 0.4 m lower; it can be lifted to its chord.
        assertThat(fall(high).build().checkReach(line, 12.0))
                .extracting(Violation::rule)
                .singleElement()
                .asString()
                .endsWith("m below the harness attachment of high when it is lifted straight");
    }

    /** Longest free fall: from a connection's length above the line to as much below, and what the line was lifted. */
    @ParameterizedTest
    @CsvSource({"12.4, 3.6, true", "12.4, 3.61, false", "12.0, 4.0, true", "12.0, 4.01, false"})
    void aFreeFallStatedLongerThanItCanBe(double atRest, double stated, boolean possible) {
        Worker w = worker("W").walkingLevel(10.9).build();
        Fall f = fall(w).freeFall(stated).build();
        List<Violation> found = f.checkReach(threeSpans().build(), atRest);
        assertThat(found.isEmpty()).isEqualTo(possible);
        found.forEach(v -> assertThat(v.path()).isEqualTo("freeFall"));
    }

    @Test
    void aDeviceThatRetractsReachesEverywhere() {
        Worker w = worker("W")
                .walkingLevel(-100)
                .offset(50)
                .connection(Connection.selfRetracting(0.6, absorber()))
                .build();
        assertThat(fall(w).freeFall(200).build().checkReach(threeSpans().build(), 12.4))
                .isEmpty();
        assertThat(Refusal.paths(() -> fall(w).build().checkReach(null, 12))).containsExactly("line");
    }

    @Test
    void everyFallerIsJudgedByTheOwnConnection() {
        Worker far = worker("far").walkingLevel(2).build();
        Worker alsoFar = worker("also far").walkingLevel(1).build();
        assertThat(fall(worker("near").build(), far, alsoFar)
                        .build()
                        .checkReach(threeSpans().build(), 12.4))
                .extracting(Violation::path)
                .containsExactly("faller[1].connection.tautLength", "faller[2].connection.tautLength");
    }

    /** What is null has the number at which it was given, and so has what comes after it. */
    @Test
    void everyNullHasItsNumber() {
        assertThat(Refusal.paths(() -> fall(A, null, null, A)
                        .hanging(null, null)
                        .hanging(A, null)
                        .hanging(A, Place.of(1, 1))
                        .build()))
                .containsExactly(
                        "faller[1]",
                        "faller[2]",
                        "hanging[0].worker",
                        "hanging[0].place",
                        "hanging[1].place",
                        "faller[3]",
                        "hanging[2].worker");
        assertThat(Refusal.paths(() -> fall().hanging(null, Place.of(1, 1)).build()))
                .as("nobody falls, whatever else is wrong")
                .containsExactly("hanging[0].worker", "faller");
    }
}
