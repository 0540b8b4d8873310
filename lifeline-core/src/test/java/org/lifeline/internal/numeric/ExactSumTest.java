package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against decimal arithmetic of the JDK, which is exact for sums and products of doubles. */
class ExactSumTest {
    private static double any(Random random) {
        double value;
        do {
            value = Double.longBitsToDouble(random.nextLong());
        } while (!Double.isFinite(value) || Math.abs(value) > 1e300);
        return value;
    }

    @Test
    void aSumIsThatOfDecimalArithmetic() {
        for (long seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            ExactSum sum = new ExactSum();
            BigDecimal exact = BigDecimal.ZERO;
            int n = 1 + random.nextInt(40);
            for (int i = 0; i < n; i++) {
                double x = seed % 2 == 0 ? any(random) : random.nextGaussian() * Math.pow(10, random.nextInt(12));
                sum.add(x);
                exact = exact.add(new BigDecimal(x));
            }
            assertThat(sum.over(1)).as("seed %d", seed).isEqualTo(exact.doubleValue());
            assertThat(sum.over(n))
                    .as("seed %d, mean", seed)
                    .isEqualTo(exact.divide(BigDecimal.valueOf(n), new MathContext(400))
                            .doubleValue());
        }
    }

    @Test
    void aSumOfProductsIsThatOfDecimalArithmetic() {
        for (long seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            ExactSum sum = new ExactSum();
            BigDecimal exact = BigDecimal.ZERO;
            for (int i = 0; i < 40; i++) {
                double a = random.nextGaussian() * 1e4;
                double b = i % 3 == 0 ? -a : random.nextGaussian();
                sum.addProduct(a, b);
                exact = exact.add(new BigDecimal(a).multiply(new BigDecimal(b)));
            }
            assertThat(sum.over(1)).as("seed %d", seed).isEqualTo(exact.doubleValue());
        }
    }

    /** Terms that take each other away leave what is left, however small: plain addition gives 0 here. */
    @Test
    void nothingIsLostByCancellation() {
        double[] terms = {1e300, 1, Double.MIN_VALUE, -1e300, -1};
        double plain = 0;
        ExactSum sum = new ExactSum();
        for (double t : terms) {
            plain += t;
            sum.add(t);
        }
        assertThat(plain).isNotEqualTo(Double.MIN_VALUE);
        assertThat(sum.over(1)).isEqualTo(Double.MIN_VALUE);
    }

    @Test
    void groupingAndTextDoNotMatter() {
        for (long seed = 1; seed <= 100; seed++) {
            Random random = new Random(seed);
            ExactSum all = new ExactSum();
            ExactSum[] parts = {new ExactSum(), new ExactSum(), new ExactSum()};
            for (int i = 0; i < 60; i++) {
                double x = any(random);
                all.add(x);
                parts[random.nextInt(3)].add(x);
            }
            ExactSum joined = ExactSum.parse(parts[2].text());
            joined.add(parts[0]);
            joined.add(ExactSum.parse(parts[1].text()));
            assertThat(joined.text()).as("seed %d", seed).isEqualTo(all.text());
            assertThat(joined.over(1)).as("seed %d", seed).isEqualTo(all.over(1));
        }
    }

    @Test
    void texts() {
        ExactSum sum = new ExactSum();
        assertThat(sum.text()).isEqualTo("0");
        sum.add(-3.875);
        assertThat(sum.text()).isEqualTo("-1fp-3");
        sum.add(Double.POSITIVE_INFINITY);
        assertThat(sum.text()).isEqualTo("NaN");
        assertThat(ExactSum.parse("NaN").over(1)).isNaN();
        assertThat(sum.over(1)).isNaN();
        for (String bad : new String[] {"", "1", "p", "xp1", "1p", "1p2000", "1p-1089", "f".repeat(700) + "p0"}) {
            assertThatThrownBy(() -> ExactSum.parse(bad)).as(bad).isInstanceOf(NumberFormatException.class);
        }
    }

    /** A quotient that is subnormal is rounded once: a little less than 1.5 of the least number is that number. */
    @Test
    void aSubnormalQuotientIsRoundedOnce() {
        BigInteger belowHalf = BigInteger.valueOf(3).shiftLeft(59).subtract(BigInteger.ONE);
        assertThat(ExactSum.quotient(belowHalf, BigInteger.ONE, 60 + 1074)).isEqualTo(Double.MIN_VALUE);
        assertThat(ExactSum.quotient(belowHalf.negate(), BigInteger.ONE, 60 + 1074))
                .isEqualTo(-Double.MIN_VALUE);
        assertThat(ExactSum.quotient(BigInteger.valueOf(3), BigInteger.ONE, 1 + 1074))
                .as("a tie goes to the even one")
                .isEqualTo(2 * Double.MIN_VALUE);
        assertThat(ExactSum.quotient(BigInteger.ONE, BigInteger.ONE, 1 + 1074)).isZero();
        assertThat(ExactSum.quotient(BigInteger.ONE, BigInteger.valueOf(7), 2000))
                .isZero();
        // The largest of them rounds up to the least normal number.
        BigInteger ones = BigInteger.ONE.shiftLeft(53).subtract(BigInteger.ONE);
        assertThat(ExactSum.quotient(ones, BigInteger.ONE, 1 + 1074)).isEqualTo(Double.MIN_NORMAL);
        for (long seed = 1; seed <= 2000; seed++) {
            Random random = new Random(seed);
            double tiny = random.nextDouble() * Math.scalb(1.0, -1021 - random.nextInt(50));
            long n = 3L + random.nextInt(1000);
            ExactSum sum = new ExactSum();
            sum.add(tiny);
            double want = new BigDecimal(tiny)
                    .divide(BigDecimal.valueOf(n), new MathContext(1200))
                    .doubleValue();
            assertThat(sum.over(n)).as("seed %d", seed).isEqualTo(want);
        }
    }
}
