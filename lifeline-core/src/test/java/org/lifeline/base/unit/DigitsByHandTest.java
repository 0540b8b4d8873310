package org.lifeline.base.unit;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Numbers to a count of significant digits, each rounded and laid out by hand. */
class DigitsByHandTest {
    @ParameterizedTest
    @CsvSource({
        "1234.5, 2, 1.2e+03",
        "1234.5, 4, 1235",
        "1234.5, 5, 1234.5",
        "1234.5, 6, 1234.50",
        "99.96, 3, 100",
        "999.6, 3, 1.00e+03",
        "-0.00012345, 3, -0.000123",
        "0.000099996, 3, 0.000100",
        "0.00009994, 3, 9.99e-05",
        "1e-9, 1, 1e-09",
        "1e-10, 1, 1e-10",
        "1e9, 2, 1.0e+09",
        "1e10, 2, 1.0e+10",
        "1e100, 1, 1e+100",
        "0, 1, 0",
        "0, 4, 0.000",
        "-0.0, 2, 0.0",
        "2.5, 1, 3",
        "-2.5, 1, -3",
        "0.15, 1, 0.2"
    })
    void numbersAreRoundedAndLaidOut(double value, int digits, String text) {
        assertThat(SignificantDigits.of(value, digits)).isEqualTo(text);
    }

    @Test
    void infinityIsSaid() {
        assertThat(SignificantDigits.of(Double.POSITIVE_INFINITY, 5)).isEqualTo("Infinity");
    }

    /** Rounding to n digits errs by at most half a unit of the last digit shown. */
    @Test
    void theErrorIsAtMostHalfOfTheLastDigit() {
        for (double value = 1.234567e-6; value < 1e9; value *= 3.7) {
            for (int digits = 1; digits <= 6; digits++) {
                double shown = Double.parseDouble(SignificantDigits.of(value, digits));
                double unit = StrictMath.pow(10, Math.floor(StrictMath.log10(value)) - digits + 1);
                assertThat(Math.abs(shown - value))
                        .as("%s with %d", value, digits)
                        .isLessThanOrEqualTo(0.5 * unit * (1 + 1e-9));
            }
        }
    }
}
