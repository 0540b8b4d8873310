package org.lifeline.model.absorber;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lifeline.base.Units.kN;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Forces that are none, or without end. */
class LoadingCurveEdgesTest {
    private static final LoadingCurve SPRING = LoadingCurve.spring(1e5);

    @Test
    void whatIsNoForceHasNoExtension() {
        assertThat(SPRING.farExtension(Double.NaN)).isNaN();
        assertThat(SPRING.nearExtension(Double.NaN)).isNaN();
    }

    @Test
    void aRigidStopGivesUnderNoForce() {
        LoadingCurve stop = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, kN(2)), new LoadingCurve.Corner(0.5, kN(4))),
                Double.POSITIVE_INFINITY,
                Double.POSITIVE_INFINITY);
        assertThat(stop.farExtension(Double.POSITIVE_INFINITY)).isEqualTo(stop.maximumExtension());
        assertThat(stop.nearExtension(kN(40))).isEqualTo(stop.maximumExtension());
    }
}
