package org.lifeline.internal.mechanics.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Units;

/** Frequencies and wave speeds of the chain, from simulated signals. */
class StringWavesTest {
    /** One pound-second squared per inch as a mass [kg]. */
    private static final double SLINCH = Units.POUND_FORCE / Units.INCH;

    private static double modeOf(int number, int segments) {
        double length = Units.inches(100);
        double mass = 7.3e-4 * 0.00306796 * SLINCH / Units.INCH;
        MotionSystem string = Strings.string(
                new double[] {Units.poundsForce(500), Units.poundsForce(30e6 * 0.00306796)},
                new double[] {length, mass},
                Strings.NONE,
                segments);
        double[] rest = string.chain.z.clone();
        DoubleUnaryOperator shape = x -> Math.sin(number * Math.PI * x / length);
        Strings.deflect(string, x -> 1e-5 * shape.applyAsDouble(x));
        return Strings.frequency(string, rest, shape, 12) / (2 * Math.PI);
    }

    /**
     * Taut string: 74.708, 149.42, 224.12 Hz (published: Thomson, Vibration Theory and Applications, p. 264). A chain of
     * N lumped masses has its modes lower by (nπ/2N)²/6; with 128 that is 0.02 % for the third.
     */
    @Test
    void tautStringHasThePublishedFrequencies() {
        double[] published = {74.708, 149.42, 224.12};
        for (int n = 1; n <= 3; n++) {
            double chain = published[n - 1] * (1 - Math.pow(n * Math.PI / 256, 2) / 6);
            assertThat(modeOf(n, 128)).as("mode %d", n).isCloseTo(chain, Percentage.withPercentage(0.01));
            assertThat(modeOf(n, 128)).as("mode %d", n).isCloseTo(published[n - 1], Percentage.withPercentage(0.03));
        }
    }

    /** The error of a frequency falls with the square of the segment: four times as small when the mesh is halved. */
    @Test
    void frequencyConvergesWithTheSquareOfTheMesh() {
        double exact = 3
                / (2 * Units.inches(100))
                * Math.sqrt(Units.poundsForce(500) / (7.3e-4 * 0.00306796 * SLINCH / Units.INCH));
        double coarse = exact - modeOf(3, 16);
        double fine = exact - modeOf(3, 32);
        double finest = exact - modeOf(3, 64);
        assertThat(coarse / fine).isCloseTo(4, within(0.1));
        assertThat(fine / finest).isCloseTo(4, within(0.1));
    }

    /** Transverse wave speed √(T/μ): 100 N, 2.0 kg/m: 7.07 m/s (published value of a textbook example). */
    @Test
    void aHumpTravelsAtTheSpeedOfTransverseWaves() {
        MotionSystem string = Strings.string(new double[] {100, 1e5}, new double[] {20, 2}, Strings.NONE, 400);
        Strings.deflect(string, x -> 1e-4 * Math.exp(-Math.pow((x - 10) / 0.6, 2)));
        Strings.run(string, 1);
        Chain c = string.chain;
        double right = Strings.crest(Arrays.copyOf(c.x, c.nodes), Arrays.copyOf(c.z, c.nodes), 12, 20);
        double left = Strings.crest(Arrays.copyOf(c.x, c.nodes), Arrays.copyOf(c.z, c.nodes), 0, 8);
        assertThat((right - 10) / string.time).isCloseTo(7.07, within(0.01));
        assertThat((right - 10) / string.time).isCloseTo(Math.sqrt(50), Percentage.withPercentage(0.05));
        assertThat(10 - left).isCloseTo(right - 10, within(1e-6));
    }

    /** Axial wave speed √(EA/μ), from a push along the cable. */
    @Test
    void aPushTravelsAtTheSpeedOfAxialWaves() {
        MotionSystem string = Strings.string(new double[] {1500, 4.9e6}, new double[] {60, 0.576}, Strings.NONE, 600);
        Chain c = string.chain;
        double[] home = c.x.clone();
        for (int i = 1; i < c.nodes - 1; i++) {
            c.x[i] += 1e-4 * Math.exp(-Math.pow((home[i] - 30) / 1.5, 2));
        }
        Strings.run(string, 8e-3);
        double[] moved = new double[c.nodes];
        for (int i = 0; i < c.nodes; i++) {
            moved[i] = c.x[i] - home[i];
        }
        double right = Strings.crest(Arrays.copyOf(home, c.nodes), moved, 40, 60);
        assertThat((right - 30) / string.time).isCloseTo(Math.sqrt((4.9e6 + 1500) / 0.576), Percentage.withPercentage(0.1));
    }

    /**
     * First symmetric in-plane mode of a sagged cable: tan(ω̄/2) = ω̄/2 − (4/λ²)(ω̄/2)³ (Irvine and Caughey, Proc. R. Soc.
     * London A 341, 1974; equation recalled, roots computed), ω̄ = ω L/√(H/m). The theory is of the first order in the
     * sag, here 1/200 of the span.
     */
    @Test
    void saggedCableHasItsFirstSymmetricMode() {
        double[] lambda = {1, 10, 100};
        double[] root = {3.2678862, 4.2258333, 8.1592959};
        double length = 30;
        double weight = 5;
        double gravity = Units.STANDARD_GRAVITY;
        double ratio = 8.0 / 200;
        double h = weight * length / ratio;
        double stretched = 1 + ratio * ratio / 8;
        for (int i = 0; i < lambda.length; i++) {
            double ea = lambda[i] * h * stretched / (ratio * ratio);
            double end = Math.hypot(h, 0.5 * weight * length);
            MotionSystem cable =
                    Strings.string(new double[] {end, ea}, new double[] {length, weight / gravity}, gravity, 80);
            double[] rest = cable.chain.z.clone();
            double b = root[i];
            DoubleUnaryOperator shape = x -> 1 - Math.tan(b / 2) * Math.sin(b * x / length) - Math.cos(b * x / length);
            Strings.deflect(cable, x -> 1e-3 * shape.applyAsDouble(x));
            double omega = Strings.frequency(cable, rest, shape, 12);
            double reduced = omega * length / Math.sqrt(h * gravity / weight);
            assertThat(reduced).as("λ² = %s", lambda[i]).isCloseTo(b, Percentage.withPercentage(0.3));
        }
    }
}
