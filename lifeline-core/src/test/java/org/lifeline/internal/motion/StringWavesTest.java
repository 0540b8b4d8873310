package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Units;

/** Frequencies and wave speeds of the chain, from simulated signals. */
class StringWavesTest {
    /** One pound-second squared per inch as a mass [kg]. */
    private static final double SLINCH = Units.POUND_FORCE / Units.INCH;

    private static double modeOf(int number, int segments) {
        return WaveSignals.mode(
                new double[] {Units.poundsForce(500), Units.poundsForce(30e6 * 0.00306796)},
                new double[] {Units.inches(100), 7.3e-4 * 0.00306796 * SLINCH / Units.INCH},
                number,
                segments);
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

    /** Width of the hump w in segments of the coarser mesh. */
    private static final double WIDTH = 12;

    /**
     * Transverse wave speed √(T/μ): 100 N, 2.0 kg/m: 7.07 m/s (published value of a textbook example). A chain of segments
     * h carries waves of the number k at c (1 − (kh)²/24), so that the crest of a hump exp(−(x/w)²) comes late by the
     * share h²/(4 w²): from u_t + c u_x + (c h²/24) u_xxx = 0 it shifts by −(c h² t/24) u_xxxx/u_xx. That is 0.17 % on the
     * coarser mesh here and a quarter of it on the finer one, and the limit of the two is the speed itself.
     */
    @Test
    void aHumpTravelsAtTheSpeedOfTransverseWaves() {
        double coarse = WaveSignals.hump(100, 2, 400);
        double fine = WaveSignals.hump(100, 2, 800);
        double speed = Math.sqrt(50);
        assertThat(fine).isCloseTo(7.07, within(0.005));
        assertThat(1 - coarse / speed).isCloseTo(0.25 / (WIDTH * WIDTH), Percentage.withPercentage(10));
        assertThat(1 - fine / speed).isCloseTo(0.25 / (4 * WIDTH * WIDTH), Percentage.withPercentage(10));
        assertThat((4 * fine - coarse) / 3).isCloseTo(speed, Percentage.withPercentage(0.01));
    }

    /**
     * Axial wave speed √((EA + T)/μ) along the stretched cable, μ per stretched length, from a push along the cable. It is
     * taken between two moments: damping lets a hump that starts from rest come late by c τ/2 once and for all. The least
     * damping of a mesh shrinks with its segments, and both it and the mesh slow waves down by the square of them, as long
     * as damping has not widened the hump: √(2 c² τ t) is a fifth of its width here.
     */
    @Test
    void aPushTravelsAtTheSpeedOfAxialWaves() {
        double speed = Math.sqrt((4.9e6 + 1500) / 0.576);
        double coarse = WaveSignals.push(new double[] {1500, 4.9e6}, 0.576, 1200);
        double fine = WaveSignals.push(new double[] {1500, 4.9e6}, 0.576, 2400);
        assertThat(fine).isCloseTo(speed, Percentage.withPercentage(0.01));
        assertThat((speed - coarse) / (speed - fine)).isCloseTo(4, within(0.5));
        assertThat((4 * fine - coarse) / 3).isCloseTo(speed, Percentage.withPercentage(0.001));
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
        for (int i = 0; i < lambda.length; i++) {
            assertThat(WaveSignals.sagged(lambda[i], root[i], 80))
                    .as("λ² = %s", lambda[i])
                    .isCloseTo(root[i], Percentage.withPercentage(0.3));
        }
    }
}
