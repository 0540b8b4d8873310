package org.lifeline.verify.state;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.model.cable.LoadElongation;
import org.lifeline.model.cable.LoadElongation.Corner;

class ElongationTableTest {
    private final ElongationTable linear = new ElongationTable(LoadElongation.linear(2e6));
    private final LoadElongation curve =
            LoadElongation.curve(List.of(new Corner(0, 0), new Corner(0.01, 500), new Corner(0.03, 4000)));

    @Test
    void aLinearRopeFollowsHooke() {
        assertThat(linear.strain(5000)).isCloseTo(0.0025, within(1e-18));
        assertThat(linear.energy(5000)).isCloseTo(5000.0 * 5000 / (2 * 2e6), within(1e-12));
        assertThat(linear.cornerTensions()).isEmpty();
    }

    @Test
    void aCurveGoesOnBehindItsLastCorner() {
        ElongationTable law = new ElongationTable(curve);

        assertThat(law.strain(250)).isCloseTo(0.005, within(1e-17));
        assertThat(law.strain(2250)).isCloseTo(0.02, within(1e-17));
        assertThat(law.strain(7500)).isCloseTo(0.05, within(1e-16));
        assertThat(law.energy(7500)).isCloseTo(2.5 + 45 + 0.02 * 5750, within(1e-12));
        assertThat(law.cornerTensions()).containsExactly(500);
    }

    @Test
    void itAgreesWithTheModel() {
        ElongationTable law = new ElongationTable(curve);

        for (double t : new double[] {0, 100, 500, 501, 3999, 4000, 20_000}) {
            assertThat(law.strain(t)).isCloseTo(curve.strain(t), within(1e-15));
            assertThat(law.energy(t)).isCloseTo(curve.strainEnergy(t), within(1e-10));
        }
    }
}
