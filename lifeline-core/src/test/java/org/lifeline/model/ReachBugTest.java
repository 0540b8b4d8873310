package org.lifeline.model;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.lifeline.base.Refusal;
import org.lifeline.base.Violation;
import org.lifeline.model.Connection.PersonalAbsorber;

/** A worker who cannot reach the line, and a free fall that the connection cannot give, are refused with both lengths. */
class ReachBugTest {
    private static Worker.Builder worker(Connection connection) {
        return Worker.builder("A").mass(100).walkingLevel(8.5).connection(connection);
    }

    private static Connection lanyard() {
        return Connection.plainLanyard(1.8, LoadingCurve.spring(5e4));
    }

    @Test
    void aLineOutOfReachAbove() {
        Worker a = worker(lanyard()).build();

        assertThat(a.checkReach(10 + 10.85))
                .extracting(Violation::toString)
                .containsExactly("connection.tautLength: 1.8 m: does not reach the line, which is 10.850000000000001 m"
                        + " above the harness attachment");
    }

    @Test
    void aLineOutOfReachBelowAndAside() {
        Fall fall = Fall.builder("f")
                .at(Place.of(1, 3))
                .faller(worker(lanyard()).build())
                .faller(worker(lanyard()).offset(2).build().toBuilder("B").build())
                .build();

        assertThat(fall.checkReach(1))
                .extracting(Violation::toString)
                .containsExactly(
                        "fallers[0].connection.tautLength: 1.8 m: does not reach the line, which is 9.0 m below the"
                                + " harness attachment",
                        "fallers[1].connection.tautLength: 1.8 m: does not reach the line, which is 9.0 m below the"
                                + " harness attachment and 2.0 m aside");
        assertThat(fall.checkReach(10)).extracting(Violation::path).containsExactly("fallers[1].connection.tautLength");
    }

    @Test
    void withinReachUpToTheTautLength() {
        Worker a = worker(lanyard()).build();

        assertThat(a.checkReach(11.8)).isEmpty();
        assertThat(a.checkReach(8.2)).isEmpty();
        assertThat(a.checkReach(10)).isEmpty();
        assertThat(a.checkReach(11.8001)).isNotEmpty();
        assertThat(a.checkReach(8.1999)).isNotEmpty();
    }

    @Test
    void aRetractableReachesAnyLine() {
        PersonalAbsorber brake = PersonalAbsorber.builder()
                .clearanceForce(3000)
                .maximumForce(6000)
                .maximumExtension(1)
                .build();

        assertThat(worker(Connection.selfRetracting(0.6, brake)).build().checkReach(20))
                .isEmpty();
    }

    @Test
    void aFreeFallLongerThanTheConnectionGives() {
        Fall.Builder b =
                Fall.builder("f").at(Place.of(1, 3)).faller(worker(lanyard()).build());

        assertThat(b.freeFall(3.6).build().freeFall()).hasValue(3.6);
        assertThat(Refusal.of(() -> b.freeFall(3.7).build()))
                .containsExactly(
                        "freeFall: 3.7 m: is more than twice the taut length of A, 1.8 m: the connection cannot give it");
    }
}
