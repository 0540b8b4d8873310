package org.lifeline.base.unit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SignificantDigitsTest {
    @ParameterizedTest
    @ValueSource(
            doubles = {
                0,
                1,
                -1,
                0.5,
                17012.4,
                16000,
                999999.4,
                999999.6,
                1e6,
                123456789,
                1e-4,
                9.99994e-5,
                9.999996e-5,
                1.5e-7,
                -2e-9,
                1e300,
                4.9e-324,
                0.1234565,
                2.5,
                99999.95
            })
    void numbersAreThoseOfTheFormatOfTheJdk(double value) {
        for (int digits = 1; digits <= 7; digits++) {
            assertThat(SignificantDigits.of(value, digits))
                    .as("%s with %d digits", value, digits)
                    .isEqualTo(String.format(Locale.ROOT, "%." + digits + "g", value));
        }
    }

    @Test
    void randomNumbersAreThoseOfTheFormatOfTheJdk() {
        Random random = new Random(7);
        for (int i = 0; i < 20_000; i++) {
            double value = random.nextGaussian() * StrictMath.pow(10, 4 * random.nextGaussian());
            assertThat(SignificantDigits.of(value, 6)).isEqualTo(String.format(Locale.ROOT, "%.6g", value));
        }
    }

    @Test
    void whatIsNoNumberIsSaid() {
        assertThat(SignificantDigits.of(Double.NaN, 3)).isEqualTo("NaN");
        assertThat(SignificantDigits.of(Double.NEGATIVE_INFINITY, 3)).isEqualTo("-Infinity");
    }
}
