package org.lifeline.analysis.explain;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.base.unit.Dimension;

/** Digits of the numbers of a sheet: enough to follow, no more than the number has. */
class FigureTest {
    private static Figure computed(double value, Dimension dimension) {
        return new Figure("x", value, dimension, false);
    }

    private static Figure given(double value) {
        return new Figure("x", value, Dimension.LENGTH, true);
    }

    @ParameterizedTest
    @CsvSource({
        "12.4, 12.4",
        "0.5, 0.5",
        "1500, 1500",
        "0.000012, 0.000012",
        "-3.25, −3.25",
        "0, 0",
        "123456789, 123456789",
        "1e6, 1000000",
    })
    void whatIsPutInStandsAsItIs(double value, String printed) {
        assertThat(given(value).printed()).isEqualTo(printed);
    }

    /** 12.6 − 12.4 is 0.1999999999999993 as a double: what was meant are two tenths. */
    @Test
    void theNoiseOfADifferenceOfInputsIsNotPrinted() {
        assertThat(given(12.6 - 12.4).printed()).isEqualTo("0.2");
    }

    @ParameterizedTest
    @CsvSource({
        "LENGTH, 1.23456789, 1.23457",
        "LENGTH, 12345.6789, 12345.7",
        "LENGTH, 0.000123456, 0.000123",
        "FORCE, 6123.456, 6123.46",
        "FORCE, 0.123456, 0.123",
        "ENERGY, 999.9996, 1000.000",
        "MASS, 0.123456, 0.1235",
        "TEMPERATURE, 0.123456, 0.1235",
        "ANGLE, 0.0123456789, 0.0123457",
        "RATIO, 0.0000123456789, 0.0000123457",
        "LENGTH_PER_FORCE, 0.00000000000012345, 0.000000000000",
        "LENGTH, -1.23456789, −1.23457",
    })
    void whatIsComputedHasSixDigitsButNotBeyondItsFinestPlace(Dimension dimension, double value, String printed) {
        assertThat(computed(value, dimension).printed()).isEqualTo(printed);
    }

    @ParameterizedTest
    @EnumSource(Dimension.class)
    void aNumberThatIsZeroHasNoDigitsToAdd(Dimension dimension) {
        Figure zero = computed(0, dimension);
        assertThat(zero.printed()).isEqualTo("0");
        assertThat(zero.refine()).isFalse();
    }

    @Test
    void digitsAreAddedOneByOneUpToFourteen() {
        Figure f = computed(Math.PI, Dimension.LENGTH);
        int first = f.decimals();
        int added = 0;
        while (f.refine()) {
            added++;
            assertThat(f.decimals()).isEqualTo(first + added);
        }
        assertThat(first).isEqualTo(5);
        assertThat(f.printed()).isEqualTo("3.1415926535898");
    }

    @Test
    void anInputOfManyDigitsIsRoundedLikeWhatIsComputed() {
        assertThat(given(1.0 / 3).printed()).isEqualTo("0.333333");
        assertThat(given(1.0 / 3).refine()).isTrue();
        assertThat(given(0.123456789).refine()).isFalse();
    }

    /** Rounded half up, and never farther from the number than half of the last place. */
    @Test
    void theRoundedNumberIsTheNearest() {
        for (long seed = 1; seed <= 2000; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double value = (r.nextBoolean() ? 1 : -1) * Math.pow(10, r.nextDouble(-5, 7)) * r.nextDouble(1, 10);
            Dimension dimension = List.of(Dimension.values()).get(r.nextInt(Dimension.values().length));
            Figure f = computed(value, dimension);
            for (int i = r.nextInt(4); i > 0; i--) {
                f.refine();
            }
            BigDecimal last = BigDecimal.ONE.movePointLeft(f.decimals());
            assertThat(f.rounded().subtract(new BigDecimal(value)).abs().multiply(BigDecimal.valueOf(1.999999)))
                    .as("seed %d: %s as %s", seed, value, f.printed())
                    .isLessThanOrEqualTo(last);
            assertThat(f.rounded().scale()).as("seed %d", seed).isEqualTo(f.decimals());
            assertThat(new BigDecimal(f.printed().replace('−', '-')))
                    .as("seed %d", seed)
                    .isEqualByComparingTo(f.rounded());
        }
    }

    /** 0.15 is 0.1499999999999999944 as a double; it was a tie for whoever wrote it. */
    @Test
    void aTieInDecimalIsRoundedUpAlthoughTheDoubleIsBelow() {
        Figure f = computed(100000, Dimension.LENGTH);
        assertThat(f.decimals()).isZero();
        assertThat(f.round(0.5)).isEqualByComparingTo("1");
        assertThat(f.round(1.4999999999999998)).isEqualByComparingTo("2");
        assertThat(f.round(1.49999999)).isEqualByComparingTo("1");
    }

    @Test
    void digitsGivenBackAreGoneForGood() {
        Figure f = computed(Math.PI, Dimension.LENGTH);
        assertThat(f.refine()).isTrue();
        assertThat(f.printed()).isEqualTo("3.141593");
        assertThat(f.coarsen()).isTrue();
        assertThat(f.printed()).isEqualTo("3.14159");
        assertThat(f.refine()).isFalse();
        assertThat(f.coarsen()).isTrue();
        assertThat(f.printed()).isEqualTo("3.1416");
        assertThat(f.refine()).isFalse();
    }

    @Test
    void aWholeNumberAndAnInputHaveNoDigitToGiveBack() {
        Figure whole = computed(123456.7, Dimension.LENGTH);
        assertThat(whole.decimals()).isZero();
        assertThat(whole.coarsen()).isFalse();
        assertThat(whole.printed()).isEqualTo("123457");
        Figure input = given(12.4);
        assertThat(input.coarsen()).isFalse();
        assertThat(input.printed()).isEqualTo("12.4");
    }

    @Test
    void aNegativeNumberWithinAFormulaHasBrackets() {
        assertThat(given(-2).write(true)).isEqualTo("(−2)");
        assertThat(given(2).write(true)).isEqualTo("2");
        assertThat(given(-2).write(false)).isEqualTo("x");
        assertThat(given(-2).symbol()).isEqualTo("x");
    }
}
