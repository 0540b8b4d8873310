package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The ends of the range of exact sums, and the rounding of their quotients. */
class ExactSumLimitsTest {
    private static ExactSum of(double... terms) {
        ExactSum s = new ExactSum();
        for (double t : terms) {
            s.add(t);
        }
        return s;
    }

    @ParameterizedTest
    @ValueSource(
            doubles = {
                Double.MIN_VALUE,
                -Double.MIN_VALUE,
                Double.MIN_NORMAL,
                0x1.fffffffffffffp-1023,
                -1,
                3.5,
                0x1.fffffffffffffp31,
                0x1p32,
                Double.MAX_VALUE,
                -Double.MAX_VALUE
            })
    void oneTermIsItself(double x) {
        assertThat(of(x).over(1)).isEqualTo(x);
        assertThat(of(x, x, -x).over(1)).isEqualTo(x);
        assertThat(ExactSum.parse(of(x).text()).over(1)).isEqualTo(x);
        assertThat(of(x).units()).isEqualTo(of(-x).units().negate());
    }

    @Test
    void sumsBeyondTheLargestNumberAreKeptAndComeBack() {
        ExactSum s = of(Double.MAX_VALUE, Double.MAX_VALUE, Double.MAX_VALUE, 1);
        assertThat(s.over(1)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(s.over(3)).isEqualTo(Double.MAX_VALUE);
        s.add(-Double.MAX_VALUE);
        s.add(-Double.MAX_VALUE);
        s.add(-Double.MAX_VALUE);
        assertThat(s.over(1)).isEqualTo(1);
    }

    @Test
    void halvesAreRoundedToEven() {
        // 2⁵³ + 1 lies between two doubles.
        assertThat(of(0x1p53, 1).over(1)).isEqualTo(0x1p53);
        assertThat(of(0x1p53, 3).over(1)).isEqualTo(0x1p53 + 4);
        assertThat(of(0x1p53, 1, 0x1p-900).over(1)).as("a trace above the half").isEqualTo(0x1p53 + 2);
        assertThat(of(0x1p53, 1, -0x1p-900).over(1)).as("a trace below it").isEqualTo(0x1p53);
        assertThat(of(-0x1p53, -1, -0x1p-900).over(1)).isEqualTo(-0x1p53 - 2);
    }

    @Test
    void quotientsAreThoseOfSingleDivisions() {
        for (int n = 1; n <= 60; n++) {
            for (double x : new double[] {1, -7, 1e17, 3e-20}) {
                assertThat(of(x).over(n)).as("%s over %d", x, n).isEqualTo(x / n);
            }
        }
        assertThat(of().over(7)).isZero();
        assertThat(ExactSum.quotient(BigInteger.TEN, BigInteger.valueOf(4), 1)).isEqualTo(1.25);
    }

    @Test
    void productsAreNotRounded() {
        double a = 1 + 0x1p-52;
        ExactSum s = new ExactSum();
        s.addProduct(a, a);
        s.add(-1);
        s.add(-0x1p-51);
        assertThat(s.over(1)).as("the square of the last bit").isEqualTo(0x1p-104);
        ExactSum huge = new ExactSum();
        huge.addProduct(1e200, 1e200);
        assertThat(huge.over(1)).isNaN();
        assertThat(huge.isFinite()).isFalse();
    }

    @Test
    void whatIsNotFiniteStays() {
        for (double bad : new double[] {Double.NaN, Double.NEGATIVE_INFINITY}) {
            ExactSum s = of(1, bad, 2);
            assertThat(s.isFinite()).isFalse();
            assertThatThrownBy(s::units).isInstanceOf(ArithmeticException.class).hasMessageContaining("not finite");
            ExactSum other = of(5);
            other.add(s);
            assertThat(other.over(1)).isNaN();
            assertThat(of(5).isFinite()).isTrue();
        }
    }

    @Test
    void sumsAddUpManyTimesOver() {
        ExactSum s = of(0.1, -1e20);
        BigInteger want = s.units();
        for (int k = 0; k < 12; k++) {
            s.add(ExactSum.parse(s.text()));
            want = want.shiftLeft(1);
            assertThat(s.units()).isEqualTo(want);
        }
    }

    @Test
    void anotherSumKeepsItsValue() {
        ExactSum one = of(-3, 1e-300);
        ExactSum other = of(-5);
        one.add(other);
        assertThat(other.text()).isEqualTo("-5p0");
        assertThat(one.text()).isEqualTo(of(-8, 1e-300).text());
    }

    @Test
    void textsAtTheEndsOfTheRange() {
        assertThat(ExactSum.parse("1p-1088").units()).isEqualTo(BigInteger.ONE);
        assertThat(ExactSum.parse("-1p1079").units())
                .isEqualTo(BigInteger.ONE.shiftLeft(1079 + 1088).negate());
        assertThat(ExactSum.parse("0").text()).isEqualTo("0");
        assertThat(ExactSum.parse("NaN").text()).isEqualTo("NaN");
        assertThat(ExactSum.parse("0".repeat(599) + "1p0").over(1)).isEqualTo(1);
        for (String bad : new String[] {"1p1080", "3p1079", "1p-1089", "0".repeat(600) + "1p0"}) {
            assertThatThrownBy(() -> ExactSum.parse(bad)).as(bad).isInstanceOf(NumberFormatException.class);
        }
    }
}
