package org.lifeline.internal.motion.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.model.cable.LoadElongation;

/** Tension by strain against the rope's strain by tension: inverse functions, their slopes and their energies. */
class StrainLawAgainstRopeTest {
    private static final int CASES = Integer.getInteger("lifeline.cases", 300);

    private static LoadElongation random(SplittableRandom r) {
        if (r.nextInt(3) == 0) {
            return LoadElongation.linear(r.nextDouble(1e5, 1e7));
        }
        List<LoadElongation.Corner> corners = new ArrayList<>(List.of(new LoadElongation.Corner(0, 0)));
        double strain = 0;
        double tension = 0;
        for (int i = r.nextInt(1, 5); i > 0; i--) {
            strain += r.nextDouble(0.002, 0.02);
            tension += r.nextDouble(500, 8000);
            corners.add(new LoadElongation.Corner(strain, tension));
        }
        return LoadElongation.curve(corners);
    }

    @Test
    void tensionIsTheInverseOfStrain() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            LoadElongation rope = random(r);
            TensionStrainLaw law = new TensionStrainLaw(rope);
            for (int i = 0; i < 10; i++) {
                double tension = r.nextDouble(1, 30_000);
                assertThat(law.tension(rope.strain(tension)))
                        .as("seed %d", seed)
                        .isCloseTo(tension, within(1e-10 * tension + 1e-9));
            }
        }
    }

    @Test
    void energyIsTheSameFromBothSides() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            LoadElongation rope = random(r);
            TensionStrainLaw law = new TensionStrainLaw(rope);
            double tension = r.nextDouble(1, 30_000);
            double strain = rope.strain(tension);
            double expected = tension * strain - rope.complementaryEnergy(tension);
            assertThat(law.energy(strain)).as("seed %d", seed).isCloseTo(expected, within(1e-9 * tension * strain));
        }
    }

    /** The slope of the energy is the tension, that of the tension the slope, but at corners. */
    @Test
    void derivativesAreDifferenceQuotients() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            TensionStrainLaw law = new TensionStrainLaw(random(r));
            double e = r.nextDouble(1e-4, 0.08);
            double h = 1e-8;
            double byTension = (law.tension(e + h) - law.tension(e - h)) / (2 * h);
            if (law.slope(e - h) == law.slope(e + h)) {
                assertThat(law.slope(e)).as("seed %d", seed).isCloseTo(byTension, within(1e-4 * byTension));
            }
            double byEnergy = (law.energy(e + h) - law.energy(e - h)) / (2 * h);
            assertThat(law.tension(e)).as("seed %d", seed).isCloseTo(byEnergy, within(1e-4 * byEnergy + 1));
            assertThat(law.slope(e)).as("seed %d", seed).isLessThanOrEqualTo(law.stiffest);
        }
    }

    @Test
    void aSlackRopeHoldsNothing() {
        for (long seed = 1; seed <= CASES; seed++) {
            TensionStrainLaw law = new TensionStrainLaw(random(new SplittableRandom(seed)));
            for (double e : new double[] {0, -1e-12, -0.5, -0.0}) {
                assertThat(law.tension(e)).isZero();
                assertThat(law.energy(e)).isZero();
            }
        }
    }
}
