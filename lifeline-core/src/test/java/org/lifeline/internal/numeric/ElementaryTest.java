package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The elementary functions against their series and identities. */
class ElementaryTest {
    @ParameterizedTest
    @ValueSource(doubles = {1e-9, -1e-9, 1e-5, -1e-5, 1e-3, -1e-3})
    void smallArgumentsKeepAllDigits(double x) {
        double square = x * x;
        assertThat(Elementary.log1p(x))
                .isCloseTo(
                        x - square / 2 + square * x / 3 - square * square / 4 + square * square * x / 5,
                        within(4e-16 * Math.abs(x)));
        assertThat(Elementary.sinh(x))
                .isCloseTo(x + square * x / 6 + square * square * x / 120, within(4e-16 * Math.abs(x)));
        assertThat(Elementary.cosh(x) - 1).isCloseTo(square / 2 + square * square / 24, within(3e-16));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-3, -0.4, 0, 0.7, 2, 9})
    void hyperbolicFunctionsAreSumsOfExponentials(double x) {
        double up = Math.exp(x);
        double down = Math.exp(-x);
        assertThat(Elementary.sinh(x)).isCloseTo(0.5 * (up - down), within(1e-15 * (up + down)));
        assertThat(Elementary.cosh(x)).isCloseTo(0.5 * (up + down), within(1e-15 * (up + down)));
    }

    @Test
    void theLogarithmUndoesTheExponential() {
        for (double x = 0.01; x < 40; x *= 3) {
            assertThat(Elementary.log1p(Math.expm1(x))).isCloseTo(x, within(1e-14 * x + 1e-15));
        }
    }

    @Test
    void powersMultiply() {
        assertThat(Elementary.power(2, 10)).isCloseTo(1024, within(1e-12));
        assertThat(Elementary.power(9, 0.5)).isCloseTo(3, within(1e-15));
        assertThat(Elementary.power(7, 0)).isEqualTo(1);
        assertThat(Elementary.power(5, -1)).isCloseTo(0.2, within(1e-16));
        for (double x : new double[] {0.3, 1.7, 40}) {
            assertThat(Elementary.power(x, 1.3) * Elementary.power(x, 0.7)).isCloseTo(x * x, within(1e-14 * x * x));
        }
    }

    @Test
    void theHypotenuseNeitherOverflowsNorVanishes() {
        assertThat(Elementary.hypot(3, -4)).isEqualTo(5);
        assertThat(Elementary.hypot(3e200, 4e200)).isCloseTo(5e200, within(1e185));
        assertThat(Elementary.hypot(3e-200, 4e-200)).isCloseTo(5e-200, within(1e-215));
        assertThat(Elementary.hypot(0, 0)).isZero();
    }
}
