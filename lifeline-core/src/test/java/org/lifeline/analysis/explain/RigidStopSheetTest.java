package org.lifeline.analysis.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.samples.SampleDesigns;

/**
 * A connection that is rigid where it comes to rest, at its stop or before it begins to give: the force there is not that of
 * its curve, and does no work. The sheet took the work of the stop's whole force over the last piece, and of two who fall
 * together printed the force of the curve at a stop, and the whole load on the line before a rigid start gave.
 */
class RigidStopSheetTest {
    private static ArrestResult fall(Worker... workers) {
        Fall.Builder fall = Fall.builder("fall").at(Place.of(1, 4));
        List.of(workers).forEach(fall::faller);
        return EnergyBalance.withDefaults()
                .solve(SampleDesigns.single(SampleDesigns.steel(), Installed.pretension(2000)), fall.build());
    }

    private static Worker worker(String id, double mass, Connection connection) {
        return SampleDesigns.worker(id, mass, Attachment.GRIPPED, connection);
    }

    /** An absorber of 3 kN that is used up after a way; its stop is rigid, which it is unless something else is said. */
    private static Connection lanyard(double most) {
        return Connection.lanyard(
                1.8,
                PersonalAbsorber.builder()
                        .clearanceForce(3000)
                        .maximumForce(3000)
                        .maximumExtension(most)
                        .initialStiffness(1e5)
                        .build());
    }

    /** A device that is rigid up to its brake force. */
    private static Connection brake(double force) {
        return Connection.selfRetracting(
                0.1,
                PersonalAbsorber.builder()
                        .clearanceForce(force)
                        .maximumForce(force)
                        .maximumExtension(1)
                        .build());
    }

    private static Map<String, CalculationStep> by(ArrestResult r) {
        List<CalculationStep> steps = r.explain();
        Reviewer.recompute(steps);
        return Reviewer.bySymbol(steps);
    }

    private static double value(Map<String, CalculationStep> by, String symbol) {
        return Objects.requireNonNull(by.get(symbol), symbol).value();
    }

    @Test
    void theForceOfAStopDoesNoWork() {
        Connection rising = Connection.givenCurve(
                1.8,
                LoadingCurve.through(
                        List.of(
                                new LoadingCurve.Corner(0, 0),
                                new LoadingCurve.Corner(0.1, 2000),
                                new LoadingCurve.Corner(0.4, 4000)),
                        Double.POSITIVE_INFINITY,
                        Double.POSITIVE_INFINITY));
        // 3 kN over 0.4 m less the first rise over 30 mm; 1 kN over 0.1 m and 3 kN over 0.3 m.
        Map<Connection, Double> areas = Map.of(lanyard(0.4), 1155.0, rising, 1000.0);
        areas.forEach((connection, area) -> {
            ArrestResult r = fall(worker("heavy", 140, connection));
            assertThat(r.bottomedOut()).isTrue();
            assertThat(r.deployment()).isEqualTo(0.4);
            Map<String, CalculationStep> by = by(r);
            assertThat(value(by, "P")).isEqualTo(r.lineLoad()).isGreaterThan(8000);
            assertThat(value(by, "W_c")).isCloseTo(area, within(1e-6));
            assertThat(value(by, "W_c")).isCloseTo(r.energy().connection(), within(1e-6));
            assertThat(value(by, "W_r")).isCloseTo(0, within(1e-3));
            // Any force goes with the extension of a stop: it is not found a second time from the force.
            assertThat(by).doesNotContainKey("x_P");
        });
    }

    /** Of two who are not alike one is at his stop: his force is what the other leaves. */
    @Test
    void aStopCarriesWhatTheOthersLeave() {
        ArrestResult r = fall(worker("a", 140, lanyard(0.4)), worker("b", 100, lanyard(1.5)));
        Map<String, CalculationStep> by = by(r);
        assertThat(r.deployments().get(0)).isEqualTo(0.4);
        assertThat(value(by, "P")).isCloseTo(r.lineLoad(), within(1e-6));
        assertThat(value(by, "P_1")).isCloseTo(r.arrestForce(), within(1e-6)).isGreaterThan(10_000);
        assertThat(value(by, "P_2")).isCloseTo(3000, within(1e-6));
        assertThat(value(by, "W_c_1")).isCloseTo(1155, within(1e-6));
        assertThat(value(by, "W_c")).isCloseTo(r.energy().connection(), within(1e-6));
    }

    /** A brake that is not driven to its force has taken nothing, and holds what the other leaves. */
    @Test
    void aBrakeThatDoesNotSlipCarriesWhatTheOthersLeave() {
        Connection soft = Connection.lanyard(
                0.9,
                PersonalAbsorber.builder()
                        .clearanceForce(1500)
                        .maximumForce(1500)
                        .maximumExtension(1.5)
                        .initialStiffness(1e5)
                        .build());
        ArrestResult r = fall(worker("light", 50, brake(9000)), worker("heavy", 60, soft));
        assertThat(r.deployments().get(0)).isZero();
        Map<String, CalculationStep> by = by(r);
        assertThat(value(by, "x_1")).isZero();
        assertThat(value(by, "W_c_1")).isZero();
        assertThat(value(by, "P_2")).isCloseTo(1500, within(1e-6));
        assertThat(value(by, "P_1")).isCloseTo(r.arrestForce(), within(1e-6));
        assertThat(value(by, "P")).isCloseTo(r.lineLoad(), within(1e-6));
    }

    /** Two brakes that do not slip share the load on the line: the sheet says that it is a share. */
    @Test
    void severalRigidConnectionsShareTheLoadOnTheLine() {
        ArrestResult r = fall(worker("a", 50, brake(9000)), worker("b", 60, brake(9500)));
        assertThat(r.deployments()).containsExactly(0.0, 0.0);
        Map<String, CalculationStep> by = by(r);
        assertThat(value(by, "P_1")).isCloseTo(r.lineLoad() / 2, within(1e-6));
        assertThat(value(by, "P_2")).isEqualTo(value(by, "P_1"));
        assertThat(Objects.requireNonNull(by.get("P_1")).what()).contains("share");
        assertThat(value(by, "P")).isCloseTo(r.lineLoad(), within(1e-6));
        assertThat(value(by, "W_c")).isZero();
    }
}
