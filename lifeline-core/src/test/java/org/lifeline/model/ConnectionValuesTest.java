package org.lifeline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lifeline.model.ModelParts.SPRING;
import static org.lifeline.model.ModelParts.absorber;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.Refusal;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.absorber.LoadingCurve.Corner;

/** Connecting subsystems: free fall by geometry, changed copies, text and form, and absorbers at their bounds. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class ConnectionValuesTest {
    /** A rope of length L from a line h above the harness is taut after L - h; never before the fall began. */
    @ParameterizedTest
    @CsvSource({"1.8, 0, 1.8", "1.8, 1.8, 0", "1.8, 1.79, 0.01", "1.8, 5, 0", "1.8, -1.8, 3.6", "0, 0, 0", "0, -2, 2"})
    void freeFallOnARopeOfGivenLength(double length, double lineAbove, double fall) {
        for (Connection c : List.of(
                Connection.lanyard(length, absorber()),
                Connection.plainLanyard(length, SPRING),
                Connection.givenCurve(length, SPRING))) {
            assertThat(c.freeFall(lineAbove)).isCloseTo(fall, within(1e-15));
            assertThat(c.tautLength(lineAbove)).isEqualTo(length);
        }
    }

    /** A device h above has h of rope out: locks after its distance. One h below: the rope goes out by 2 h more. */
    @ParameterizedTest
    @CsvSource({"0.6, 3, 0.6, 3.6", "0.6, 0, 0.6, 0.6", "0.6, -1.5, 3.6, 2.1", "0, 2, 0, 2", "0, -2, 4, 2"})
    void freeFallOnADeviceThatRetracts(double lock, double lineAbove, double fall, double taut) {
        Connection c = Connection.selfRetracting(lock, absorber());
        assertThat(c.freeFall(lineAbove)).isCloseTo(fall, within(1e-15));
        assertThat(c.tautLength(lineAbove)).isEqualTo(taut);
    }

    @Test
    void freeFallShrinksAsTheLineIsHigher() {
        Connection rope = Connection.lanyard(1.8, absorber());
        Connection device = Connection.selfRetracting(0.6, absorber());
        for (double h = -2; h < 2; h += 0.125) {
            assertThat(rope.freeFall(h + 0.125)).isLessThanOrEqualTo(rope.freeFall(h));
            assertThat(device.freeFall(h + 0.125)).isLessThanOrEqualTo(device.freeFall(h) + 1e-12);
        }
    }

    @Test
    void scaledForcesLeaveLengthAndExtension() {
        Connection c = Connection.lanyard(1.8, absorber()).withForcesScaled(1.5);
        assertThat(c.curve(DeploymentForce.CLEARANCE).activationForce()).isEqualTo(4500);
        assertThat(c.curve(DeploymentForce.MAXIMUM).activationForce()).isEqualTo(9000);
        assertThat(c.curve(DeploymentForce.MAXIMUM).initialStiffness()).isEqualTo(1.5e5);
        assertThat(c.maximumExtension()).isEqualTo(1.2);
        assertThat(c.tautLength(0)).isEqualTo(1.8);
        assertThat(c.kind()).isEqualTo(Connection.Kind.LANYARD_WITH_ABSORBER);
        assertThat(Refusal.paths(() -> c.withForcesScaled(0))).containsExactly("factor");
    }

    @Test
    void anotherLengthLeavesForcesAndKind() {
        Connection device = Connection.selfRetracting(0.6, absorber());
        Connection longer = device.withLength(0.9);
        assertThat(longer.freeFall(1)).isCloseTo(0.9, within(1e-15));
        assertThat(longer.kind()).isEqualTo(Connection.Kind.SELF_RETRACTING);
        assertThat(longer.curve(DeploymentForce.CLEARANCE)).isSameAs(device.curve(DeploymentForce.CLEARANCE));
        assertThat(longer.withLength(0.6)).isEqualTo(device);
        assertThat(Refusal.paths(() -> device.withLength(-1))).containsExactly("lockDistance");
        assertThat(Refusal.paths(() -> Connection.plainLanyard(1, SPRING).withLength(1001)))
                .containsExactly("tautLength");
        assertThat(Connection.plainLanyard(1000, SPRING).tautLength(0)).isEqualTo(1000);
    }

    @Test
    void aPlainLanyardStretchesWithoutEndAndTheOthersToTheirCurves() {
        assertThat(Connection.plainLanyard(1.8, SPRING).maximumExtension()).isInfinite();
        assertThat(Connection.givenCurve(1.8, SPRING).maximumExtension()).isZero();
        assertThat(Connection.selfRetracting(0.6, absorber()).maximumExtension())
                .isEqualTo(1.2);
    }

    @Test
    void connectionsArePrintedByTheirKind() {
        assertThat(Connection.plainLanyard(1.8, SPRING))
                .hasToString("plain lanyard, 1.8 m, [0.0] N at [0.0] m, then 50000.0 N/m");
        assertThat(Connection.givenCurve(1.8, SPRING).toString()).startsWith("lanyard, 1.8 m, [0.0] N");
        assertThat(Connection.lanyard(1.8, absorber()))
                .hasToString("lanyard with absorber, 1.8 m, [0.0, 3000.0, 3000.0] N at [0.0, 0.03, 1.2] m to"
                        + " [0.0, 6000.0, 6000.0] N at [0.0, 0.06, 1.2] m");
        assertThat(Connection.selfRetracting(0.6, absorber()).toString()).startsWith("self-retracting device, 0.6 m, ");
        assertThat(absorber())
                .hasToString("absorber: [0.0, 3000.0, 3000.0] N at [0.0, 0.03, 1.2] m to [0.0, 6000.0, 6000.0] N at"
                        + " [0.0, 0.06, 1.2] m");
    }

    @Test
    void theFormTellsKindLengthAndBothCurves() {
        assertThat(Connection.plainLanyard(1.8, SPRING).canonicalForm())
                .hasToString("connection\nkind: PLAIN_LANYARD\nlength: 1.8 m"
                        + "\nclearanceCurve[0].extension: 0.0 m\nclearanceCurve[0].force: 0.0 N"
                        + "\nclearanceCurve.activationForce: 0.0 N\nclearanceCurve.initialStiffness: Infinity N/m"
                        + "\nclearanceCurve.stopStiffness: 50000.0 N/m"
                        + "\nmaximumCurve[0].extension: 0.0 m\nmaximumCurve[0].force: 0.0 N"
                        + "\nmaximumCurve.activationForce: 0.0 N\nmaximumCurve.initialStiffness: Infinity N/m"
                        + "\nmaximumCurve.stopStiffness: 50000.0 N/m");
    }

    @Test
    void whatIsNotGivenIsRefusedByItsName() {
        assertThat(Refusal.paths(() -> Connection.lanyard(1, null))).containsExactly("absorber");
        assertThat(Refusal.paths(() -> Connection.plainLanyard(1, null))).containsExactly("stiffness");
        assertThat(Refusal.paths(() -> Connection.givenCurve(1, null))).containsExactly("loadingCurve");
        assertThat(Refusal.paths(() -> Connection.selfRetracting(1, null))).containsExactly("brakeForce");
        assertThat(Refusal.paths(() -> Connection.plainLanyard(1, SPRING).curve(null)))
                .containsExactly("side");
        assertThat(Refusal.paths(() -> absorber().curve(null))).containsExactly("side");
        assertThat(Refusal.paths(() -> InlineAbsorber.of(null))).containsExactly("curve");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY, 1.1e9})
    void aDeploymentForceIsFiniteAndAboveZero(double force) {
        assertThat(Refusal.paths(() -> PersonalAbsorber.builder()
                        .clearanceForce(force)
                        .maximumForce(1e9)
                        .maximumExtension(1)
                        .build()))
                .contains("clearanceForce");
    }

    @Test
    void bothForcesMayBeEqualButNotTurnedRound() {
        var b = PersonalAbsorber.builder().maximumExtension(1).clearanceForce(4000);
        PersonalAbsorber equal = b.maximumForce(4000).build();
        assertThat(equal.curve(DeploymentForce.CLEARANCE)).isEqualTo(equal.curve(DeploymentForce.MAXIMUM));
        assertThat(Refusal.of(() -> b.maximumForce(Math.nextDown(4000.0)).build()))
                .singleElement()
                .asString()
                .startsWith("maximumForce: 3999.9")
                .endsWith("N: must not be lower than clearanceForce");
    }

    @Test
    void aBuilderUsedTwiceGivesTwoAbsorbers() {
        var b = PersonalAbsorber.builder()
                .clearanceForce(3000)
                .maximumForce(6000)
                .maximumExtension(1.2);
        PersonalAbsorber rigid = b.build();
        PersonalAbsorber elastic = b.initialStiffness(1e5).build();
        assertThat(elastic).isEqualTo(absorber()).isNotEqualTo(rigid);
        assertThat(rigid.curve(DeploymentForce.MAXIMUM).corners())
                .containsExactly(new Corner(0, 6000), new Corner(1.2, 6000));
        assertThat(rigid.hashCode()).isNotEqualTo(elastic.hashCode());
        assertThat(b.stopStiffness(2e5).build().curve(DeploymentForce.CLEARANCE).stopStiffness())
                .isEqualTo(2e5);
    }

    @Test
    void stiffnessesOfAnAbsorberStayWithinWhatDoublesCarry() {
        var b = PersonalAbsorber.builder()
                .clearanceForce(3000)
                .maximumForce(6000)
                .maximumExtension(1.2);
        assertThat(Refusal.paths(() -> b.initialStiffness(1e16).build())).containsExactly("initialStiffness");
        assertThat(Refusal.paths(
                        () -> b.initialStiffness(1e15).stopStiffness(Double.NaN).build()))
                .containsExactly("stopStiffness");
        assertThat(Refusal.paths(() -> b.stopStiffness(0.009).build())).containsExactly("stopStiffness");
        assertThat(Refusal.of(() -> b.stopStiffness(0.01).build())).isEmpty();
    }

    @Test
    void anInlineAbsorberIsItsCurve() {
        LoadingCurve curve = LoadingCurve.through(List.of(new Corner(0, 5000), new Corner(1, 5000)), 2e5, 1e5);
        InlineAbsorber a = InlineAbsorber.of(curve);
        assertThat(a.curve()).isSameAs(curve);
        assertThat(a.initialStiffness()).isEqualTo(2e5);
        assertThat(a).isEqualTo(InlineAbsorber.of(curve)).hasSameHashCodeAs(InlineAbsorber.of(curve));
        assertThat(a).isNotEqualTo(InlineAbsorber.of(SPRING)).isNotEqualTo(curve);
        assertThat(a.hashCode()).isNotEqualTo(InlineAbsorber.of(SPRING).hashCode());
        assertThat(a)
                .hasToString("in-line absorber: [0.0, 5000.0, 5000.0] N at [0.0, 0.025, 1.0] m, then 100000.0 N/m");
    }
}
