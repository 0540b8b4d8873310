package org.lifeline.verify;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Point;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** A fall of little energy on a taut line far from the origin: rounding of the coordinates hides errors of its energies. */
class NotCheckableTest {
    private static VerificationReport check(double x) {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(4).axialStiffness(1e8).build())
                .endAnchor("a", Point.of(x, 0, 10))
                .endAnchor("b", Point.of(x + 10, 0, 10))
                .pretension(4e6)
                .build();
        Worker light = Worker.builder("light")
                .mass(10)
                .walkingLevel(7)
                .connection(Connection.plainLanyard(1.5, LoadingCurve.spring(1e6)))
                .build();
        ArrestResult r = EnergyBalance.withDefaults()
                .solve(
                        line,
                        Fall.builder("small")
                                .at(Place.of(1, 5))
                                .faller(light)
                                .freeFall(0)
                                .build());
        return Verifier.withDefaults().arrest(r);
    }

    @Test
    void farFromTheOriginNothingIsClaimed() {
        VerificationReport report = check(9e5);

        assertThat(report.passed()).isFalse();
        assertThat(report.notCheckable())
                .extracting(CheckResult::check)
                .contains(Check.ENERGY_CABLE, Check.ENERGY_RESIDUAL);
        assertThat(report.notCheckable()).allSatisfy(r -> {
            assertThat(r.value()).isGreaterThan(1e-6);
            assertThat(r.limit()).isEqualTo(1e-6);
        });
    }
}
