package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.model.cable.LoadElongation;

/** What a unit of cable that slips over a support turns to heat, against an integral and against the energy of the cable. */
class PathEnergyTest {
    private static final int CASES = Integer.getInteger("lifeline.cases", 300);

    private static LoadElongation law(SplittableRandom r) {
        if (r.nextBoolean()) {
            return LoadElongation.linear(r.nextDouble(1e5, 1e7));
        }
        return LoadElongation.curve(List.of(
                new LoadElongation.Corner(0, 0),
                new LoadElongation.Corner(r.nextDouble(0.001, 0.01), r.nextDouble(500, 2000)),
                new LoadElongation.Corner(r.nextDouble(0.02, 0.05), r.nextDouble(3000, 9000)),
                new LoadElongation.Corner(0.3, 60_000)));
    }

    /** T + ∫ε dT has the derivative 1 + ε: the stretched length of what passes, times the tension that falls on it. */
    @Test
    void itIsTheIntegralOfTheStretchedLengthOverTheTension() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            LoadElongation law = law(r);
            double start = r.nextDouble(0, 20_000);
            double end = r.nextDouble(0, 20_000);
            int n = 4000;
            double sum = 0;
            for (int i = 0; i < n; i++) {
                double tension = start + (end - start) * (i + 0.5) / n;
                sum += (1 + law.strain(tension)) * (end - start) / n;
            }
            // The rule of the middle misses a corner of the curve by less than a step squared.
            assertThat(PathEnergy.slipForce(law, start, end))
                    .as("seed %d", seed)
                    .isCloseTo(sum, within(1e-6 * (1 + Math.abs(start - end))));
        }
    }

    @Test
    void slipBothWaysBetweenTwoTensionsTakesTheSame() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            LoadElongation law = law(r);
            double a = r.nextDouble(0, 20_000);
            double b = r.nextDouble(0, 20_000);
            double there = PathEnergy.slipForce(law, a, b);
            assertThat(PathEnergy.slipForce(law, b, a))
                    .as("seed %d", seed)
                    .isCloseTo(-there, within(1e-9 * Math.abs(there)));
            assertThat(PathEnergy.slipForce(law, a, a)).isZero();
        }
    }

    /** A cable that hardly stretches: the difference of the tensions, Euler's and Eytelwein's belt. */
    @Test
    void ofAnInextensibleCableItIsTheDifferenceOfTheTensions() {
        assertThat(PathEnergy.slipForce(LoadElongation.linear(1e15), 3000, 8000))
                .isCloseTo(5000, within(1e-6));
    }

    /** Linear cable: T + T²/2EA. */
    @Test
    void ofALinearCableItIsAParabola() {
        double stiffness = 2e6;
        double a = 1500;
        double b = 9000;
        assertThat(PathEnergy.slipForce(LoadElongation.linear(stiffness), a, b))
                .isCloseTo(b - a + (b * b - a * a) / (2 * stiffness), within(1e-9));
    }
}
