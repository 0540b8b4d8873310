package org.lifeline.internal.motion.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;
import org.lifeline.model.cable.LoadElongation.Corner;

/** Tension, slope and energy of a cable against strain, beside the integral and the difference of the tension. */
class TensionStrainLawTest {
    private static final double EA = 3e6;

    private static TensionStrainLaw linear() {
        return new TensionStrainLaw(
                Cable.builder().massPerLength(0.4).axialStiffness(EA).build().elongation());
    }

    private static TensionStrainLaw rope() {
        return new TensionStrainLaw(LoadElongation.curve(List.of(
                new Corner(0, 0), new Corner(0.004, 4000), new Corner(0.010, 16_000), new Corner(0.020, 24_000))));
    }

    @Test
    void aLinearCableIsHookes() {
        TensionStrainLaw law = linear();
        assertThat(law.linear).isTrue();
        assertThat(law.stiffest).isEqualTo(law.stiffness);
        for (double e : new double[] {1e-9, 1e-4, 3e-3, 0.02}) {
            assertThat(law.tension(e)).isCloseTo(EA * e, within(1e-9 * EA * e));
            assertThat(law.energy(e)).isCloseTo(0.5 * EA * e * e, within(1e-9 * EA * e * e));
            assertThat(law.slope(e)).isCloseTo(EA, within(1e-9 * EA));
        }
    }

    @Test
    void nothingPushes() {
        for (TensionStrainLaw law : new TensionStrainLaw[] {linear(), rope()}) {
            assertThat(law.tension(0)).isZero();
            assertThat(law.tension(-0.01)).isZero();
            assertThat(law.energy(-0.01)).isZero();
        }
    }

    @Test
    void aRopeFollowsItsCornersAndGoesOnBeyondThem() {
        TensionStrainLaw law = rope();
        assertThat(law.linear).isFalse();
        assertThat(law.tension(0.002)).isCloseTo(2000, within(1e-6));
        assertThat(law.tension(0.004)).isCloseTo(4000, within(1e-6));
        assertThat(law.tension(0.007)).isCloseTo(10_000, within(1e-6));
        assertThat(law.tension(0.015)).isCloseTo(20_000, within(1e-6));
        assertThat(law.tension(0.030)).isCloseTo(32_000, within(1e-6));
        assertThat(law.stiffness).isCloseTo(1e6, within(1e-3));
        assertThat(law.stiffest).isCloseTo(2e6, within(1e-3));
    }

    /** Energy is the integral of the tension (Simpson's rule on each piece is exact), slope its difference. */
    @Test
    void energyIsTheIntegralAndSlopeTheDerivative() {
        TensionStrainLaw law = rope();
        double sum = 0;
        double step = 1e-5;
        for (int i = 0; i < 2500; i++) {
            double a = i * step;
            sum += step / 6 * (law.tension(a) + 4 * law.tension(a + 0.5 * step) + law.tension(a + step));
            assertThat(law.energy(a + step)).isCloseTo(sum, within(1e-6 + 1e-6 * sum));
            double middle = a + 0.5 * step;
            double slope = (law.tension(middle + 1e-8) - law.tension(middle - 1e-8)) / 2e-8;
            assertThat(law.slope(middle)).isCloseTo(slope, within(1e-4 * slope));
        }
    }
}
