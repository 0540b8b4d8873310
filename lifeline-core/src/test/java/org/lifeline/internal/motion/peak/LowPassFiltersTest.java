package org.lifeline.internal.motion.peak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** A second-order low-pass filter of Butterworth's kind, beside its closed forms. */
class LowPassFiltersTest {
    private static final double CORNER = 100;

    /** Amplitude of the output of a sine of a frequency, once it has settled. */
    private static double gain(double frequency, double step) {
        LowPassFilters filters = new LowPassFilters(CORNER, 1);
        filters.step(0);
        filters.take(0, 0);
        filters.start();
        double most = 0;
        double end = 0.1 + 5 / frequency;
        for (double t = step; t < end; t += step) {
            filters.step(step);
            filters.take(0, Math.sin(2 * Math.PI * frequency * t));
            if (t > 0.1) {
                most = Math.max(most, Math.abs(filters.value(0)));
            }
        }
        return most;
    }

    /** |H|² = 1 / (1 + (f/f₀)⁴) (Butterworth 1930, of the second order). */
    @Test
    void gainsAreThoseOfButterworth() {
        for (double f : new double[] {10, 50, 100, 200, 1000}) {
            double exact = 1 / Math.sqrt(1 + Math.pow(f / CORNER, 4));
            assertThat(gain(f, 1e-6)).as("at %s Hz", f).isCloseTo(exact, within(1e-3 * exact));
        }
        assertThat(gain(CORNER, 1e-6)).isCloseTo(Math.sqrt(0.5), within(1e-4));
    }

    /** A step overshoots by e^−π, 4.3 %, as a system with 1/√2 of critical damping does (textbook of vibrations). */
    @Test
    void aStepOvershootsByEToTheMinusPi() {
        LowPassFilters filters = new LowPassFilters(CORNER, 1);
        filters.step(0);
        filters.take(0, 0);
        filters.start();
        double most = 0;
        for (int i = 0; i < 20_000; i++) {
            filters.step(5e-6);
            filters.take(0, 1);
            most = Math.max(most, filters.value(0));
        }
        assertThat(most).isCloseTo(1 + Math.exp(-Math.PI), within(1e-5));
        assertThat(filters.value(0)).isCloseTo(1, within(1e-9));
    }

    /** Steps of any length give the same signal, to the second order of the step. */
    @Test
    void stepsOfAnyLengthGiveTheSame() {
        Random chance = new Random(4711);
        LowPassFilters even = new LowPassFilters(CORNER, 1);
        LowPassFilters uneven = new LowPassFilters(CORNER, 1);
        for (LowPassFilters each : new LowPassFilters[] {even, uneven}) {
            each.step(0);
            each.take(0, 1);
            each.start();
        }
        double t = 0;
        for (int i = 0; i < 2000; i++) {
            t += 1e-5;
            even.step(1e-5);
            even.take(0, Math.cos(300 * t));
        }
        double u = 0;
        while (u < t) {
            double step = Math.min(t - u, 2e-5 * chance.nextDouble() + 1e-7);
            u += step;
            uneven.step(step);
            uneven.take(0, Math.cos(300 * u));
        }
        assertThat(uneven.value(0)).isCloseTo(even.value(0), within(1e-5));
    }

    /** What stands still passes as it is, from the first value on, and signals do not mix. */
    @Test
    void aConstantPassesFromTheStart() {
        LowPassFilters filters = new LowPassFilters(CORNER, 3);
        for (int i = 0; i < 100; i++) {
            for (int k = 0; k < 3; k++) {
                filters.step(1e-4);
                filters.take(k, 10 * k - 5);
            }
            filters.start();
            for (int k = 0; k < 3; k++) {
                assertThat(filters.value(k)).isEqualTo(10 * k - 5);
            }
        }
    }

    /** A spike much shorter than the corner's period leaves next to nothing: its impulse times ω e^(−π/4)/… at most. */
    @Test
    void aSpikeIsSmoothed() {
        LowPassFilters filters = new LowPassFilters(CORNER, 1);
        filters.step(0);
        filters.take(0, 0);
        filters.start();
        double most = 0;
        for (int i = 0; i < 10_000; i++) {
            filters.step(1e-5);
            filters.take(0, i < 10 ? 1 : 0);
            most = Math.max(most, filters.value(0));
        }
        // The response to a unit impulse is √2 ω e^(−ωt/√2) sin(ωt/√2), at most √2 ω e^(−π/4)/√2.
        double impulse = 10 * 1e-5;
        double exact = impulse * 2 * Math.PI * CORNER * Math.exp(-Math.PI / 4);
        assertThat(most).isCloseTo(exact, within(0.01 * exact));
    }
}
