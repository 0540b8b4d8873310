package org.lifeline.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Violation;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** A worker who cannot reach the line, and a free fall that the connection cannot give, are refused with both lengths. */
class ReachBugTest {
    /** The chord is 12 m up at mid-span; where the line hangs is said by each test. */
    private static final Lifeline LINE = Lifeline.builder()
            .cable(Cable.builder().massPerLength(0.5).axialStiffness(5e6).build())
            .endAnchor("a", Point.of(0, 0, 11))
            .endAnchor("b", Point.of(10, 0, 13))
            .pretension(1000)
            .build();

    private static Worker.Builder worker(String id, double harness) {
        return Worker.builder(id)
                .mass(100)
                .walkingLevel(harness - 1.5)
                .connection(Connection.plainLanyard(1.8, LoadingCurve.spring(5e4)));
    }

    private static Fall.Builder fall(Worker... workers) {
        Fall.Builder b = Fall.builder("f").at(Place.of(1, 5));
        List.of(workers).forEach(b::faller);
        return b;
    }

    private static List<String> check(Fall.Builder fall, double elevation) {
        return fall.build().checkReach(LINE, elevation).stream()
                .map(Violation::toString)
                .toList();
    }

    @Test
    void theChordAtAPlace() {
        assertThat(LINE.chordElevation(Place.of(1, 5))).isEqualTo(12);
        assertThat(LINE.chordElevation(Place.of(1, 2.5))).isEqualTo(11.5);
        assertThat(LINE.chordElevation(Place.atSupport("b"))).isEqualTo(13);
    }

    @Test
    void aLineOutOfReachOverhead() {
        Fall.Builder f = fall(worker("A", 1).build());

        assertThat(check(f, 11.85))
                .containsExactly(
                        "faller[0].connection.tautLength: 1.8 m: does not reach the line, which is 10.85 m above"
                                + " the harness attachment of A");
    }

    @Test
    void aLineOutOfReachBelow() {
        Fall.Builder f = fall(worker("A", 21).build());

        assertThat(check(f, 12))
                .containsExactly("faller[0].connection.tautLength: 1.8 m: does not reach the line, which is 9.0 m below"
                        + " the harness attachment of A");
        assertThat(check(f, 11.5))
                .containsExactly("faller[0].connection.tautLength: 1.8 m: does not reach the line, which is 9.0 m below"
                        + " the harness attachment of A when it is lifted straight");
    }

    @Test
    void aLineOutOfReachAside() {
        Fall.Builder f =
                fall(worker("A", 11.5).build(), worker("B", 11.5).offset(2).build());

        assertThat(check(f, 11))
                .containsExactly(
                        "faller[1].connection.tautLength: 1.8 m: does not reach the line, which is 0.0 m beside"
                                + " the harness attachment of B and 2.0 m aside");
        assertThat(check(f, 12.5))
                .containsExactly("faller[1].connection.tautLength: 1.8 m: does not reach the line, which is 1.0 m above"
                        + " the harness attachment of B and 2.0 m aside");
    }

    /** A slack line hangs farther below than the lanyard is long; lifted toward its supports it is within reach. */
    @Test
    void aSlackLineIsLifted() {
        Fall.Builder f = fall(worker("A", 13.7).build());

        assertThat(check(f, 10)).isEmpty();
        assertThat(check(fall(worker("A", 13.9).build()), 10)).hasSize(1);
    }

    @Test
    void withinReachUpToTheTautLength() {
        assertThat(check(fall(worker("A", 10.2).build()), 12)).isEmpty();
        assertThat(check(fall(worker("A", 10.1999).build()), 12)).hasSize(1);
        assertThat(check(fall(worker("A", 13.8).build()), 12)).isEmpty();
        assertThat(check(fall(worker("A", 13.8001).build()), 12)).hasSize(1);
    }

    @Test
    void aRetractableReachesAnyLine() {
        PersonalAbsorber brake = PersonalAbsorber.builder()
                .clearanceForce(3000)
                .maximumForce(6000)
                .maximumExtension(1)
                .build();
        Worker w =
                worker("A", 1).connection(Connection.selfRetracting(0.6, brake)).build();

        assertThat(check(fall(w).freeFall(9), 12)).isEmpty();
    }

    @Test
    void aFreeFallLongerThanTheConnectionGives() {
        Worker w = worker("A", 11).build();

        assertThat(check(fall(w).freeFall(3.6), 12)).isEmpty();
        assertThat(check(fall(w).freeFall(3.7), 12))
                .containsExactly(
                        "freeFall: 3.7 m: is more than the connection of A can give: 3.6 m, from 1.8 m above the"
                                + " line to as much below it");
        assertThat(check(fall(w).freeFall(3.7), 11.5)).isEmpty();
        assertThat(check(fall(w).freeFall(4.2), 11.5)).hasSize(1);
    }
}
