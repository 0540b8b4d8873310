package org.lifeline.design.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;

/** Moments of the distributions by integration of their quantiles, against the formulas of handbooks. */
class DistributionPropertyTest {
    /** Euler's constant, to which the mean of a Gumbel distribution lies above its mode in scales. */
    private static final double EULER = 0.5772156649015329;

    private static Map<String, Distribution> all() {
        Map<String, Distribution> map = new LinkedHashMap<>();
        map.put("normal", Distribution.normal(10, 2));
        map.put("truncated", Distribution.truncatedNormal(10, 2, Interval.of(7, 12)));
        map.put("lognormal", Distribution.logNormal(5, 0.3));
        map.put("uniform", Distribution.uniform(Interval.of(-1, 3)));
        map.put("triangular", Distribution.triangular(Interval.of(0, 4), 1));
        map.put("weibull", Distribution.weibull(2, 3));
        map.put("gumbel", Distribution.gumbel(1, 2));
        return map;
    }

    /** ∫ g(x(p)) dp by midpoints, refined toward the ends where quantiles run away. */
    private static double expected(Distribution d, DoubleUnaryOperator g) {
        int n = 20_000;
        double sum = 0;
        for (int i = 0; i < n; i++) {
            // p = u³(10 − 15 u + 6 u²): its slope dies at both ends with the square of the distance.
            double u = (i + 0.5) / n;
            double p = u * u * u * (10 - 15 * u + 6 * u * u);
            double slope = 30 * u * u * (1 - u) * (1 - u);
            sum += g.applyAsDouble(d.quantile(p)) * slope / n;
        }
        return sum;
    }

    private static double mean(Distribution d) {
        return expected(d, x -> x);
    }

    private static double deviation(Distribution d) {
        double mean = mean(d);
        return Math.sqrt(expected(d, x -> (x - mean) * (x - mean)));
    }

    @Test
    void quantilesRiseWithTheShare() {
        all().forEach((name, d) -> {
            double last = Double.NEGATIVE_INFINITY;
            for (double p = 0.001; p < 1; p += 0.001) {
                double x = d.quantile(p);
                assertThat(x).as("%s at %s", name, p).isFinite().isGreaterThan(last);
                last = x;
            }
        });
    }

    @Test
    void normal() {
        Distribution d = Distribution.normal(10, 2);
        assertThat(mean(d)).isCloseTo(10, within(1e-8));
        assertThat(deviation(d)).isCloseTo(2, within(1e-4));
        for (double p : new double[] {0.01, 0.1, 0.3}) {
            assertThat(d.quantile(p) + d.quantile(1 - p))
                    .as("symmetry at %s", p)
                    .isCloseTo(20, within(1e-9));
        }
    }

    /** Variation is the deviation over the mean; the mean is median √(1 + variation²). */
    @Test
    void logNormal() {
        Distribution d = Distribution.logNormal(5, 0.3);
        assertThat(mean(d)).isCloseTo(5 * Math.sqrt(1 + 0.09), within(1e-4));
        assertThat(deviation(d) / mean(d)).isCloseTo(0.3, within(1e-4));
    }

    @Test
    void uniformAndTriangular() {
        assertThat(mean(all().getOrDefault("uniform", Distribution.normal(0, 1))))
                .isCloseTo(1, within(1e-9));
        assertThat(deviation(Distribution.uniform(Interval.of(-1, 3)))).isCloseTo(4 / Math.sqrt(12), within(1e-7));
        Distribution t = Distribution.triangular(Interval.of(0, 4), 1);
        assertThat(mean(t)).as("a third of a + b + c").isCloseTo(5.0 / 3, within(1e-7));
        assertThat(deviation(t)).isCloseTo(Math.sqrt((16 + 1 - 4) / 18.0), within(1e-7));
    }

    /** Γ(3/2) = √π/2: the mean of a Weibull distribution of shape 2, which is Rayleigh's, is scale √π/2. */
    @Test
    void weibull() {
        Distribution d = Distribution.weibull(2, 3);
        assertThat(mean(d)).isCloseTo(3 * Math.sqrt(Math.PI) / 2, within(1e-6));
        assertThat(deviation(d)).isCloseTo(3 * Math.sqrt(1 - Math.PI / 4), within(1e-5));
        // Of shape 1 it is exponential: mean and deviation are the scale.
        Distribution exponential = Distribution.weibull(1, 3);
        assertThat(mean(exponential)).isCloseTo(3, within(1e-5));
        assertThat(deviation(exponential)).isCloseTo(3, within(1e-3));
    }

    /** Mean mode + γ scale, deviation π/√6 scale: E. J. Gumbel, Statistics of Extremes, 1958 (recalled). */
    @Test
    void gumbel() {
        Distribution d = Distribution.gumbel(1, 2);
        assertThat(mean(d)).isCloseTo(1 + 2 * EULER, within(1e-5));
        assertThat(deviation(d)).isCloseTo(2 * Math.PI / Math.sqrt(6), within(1e-3));
    }

    /** The mean of a normal distribution cut at a and b lies at m + s (φ(a) − φ(b))/(Φ(b) − Φ(a)). */
    @Test
    void truncatedNormal() {
        Distribution d = Distribution.truncatedNormal(10, 2, Interval.of(7, 12));
        double phiA = Math.exp(-1.125) / Math.sqrt(2 * Math.PI);
        double phiB = Math.exp(-0.5) / Math.sqrt(2 * Math.PI);
        // Φ(1) = 0.8413447, Φ(−1.5) = 0.0668072 (any table).
        double expected = 10 + 2 * (phiA - phiB) / (0.8413447 - 0.0668072);
        assertThat(mean(d)).isCloseTo(expected, within(1e-5));
    }

    @Test
    void namesTellTheNumbers() {
        assertThat(Distribution.normal(10, 2)).hasToString("normal(mean 10.0, deviation 2.0)");
        all().forEach((name, d) -> assertThat(d.toString()).as(name).matches(".*[0-9].*"));
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1, 0})
    void everyNumberIsLookedAt(double bad) {
        List<org.assertj.core.api.ThrowableAssert.ThrowingCallable> calls = List.of(
                () -> Distribution.normal(1, bad),
                () -> Distribution.truncatedNormal(1, bad, Interval.of(0, 2)),
                () -> Distribution.logNormal(bad, 0.1),
                () -> Distribution.logNormal(1, bad),
                () -> Distribution.weibull(bad, 1),
                () -> Distribution.weibull(1, bad),
                () -> Distribution.gumbel(1, bad));
        List<String> fields = List.of("deviation", "deviation", "median", "variation", "shape", "scale", "scale");
        for (int i = 0; i < calls.size(); i++) {
            assertThatThrownBy(calls.get(i))
                    .as("call %d", i)
                    .isInstanceOf(InvalidInputException.class)
                    .hasMessageContaining(fields.get(i));
        }
        if (!Double.isFinite(bad)) {
            assertThatThrownBy(() -> Distribution.normal(bad, 1)).hasMessageContaining("mean");
            assertThatThrownBy(() -> Distribution.gumbel(bad, 1)).hasMessageContaining("mode");
        }
    }
}
