package org.lifeline.design.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;

/** Quantiles against their closed forms. */
class DistributionTest {
    @Test
    void normal() {
        Distribution d = Distribution.normal(10, 2);
        assertThat(d.quantile(0.5)).isEqualTo(10, within(1e-9));
        // 0.975 of the standard normal distribution: 1.959964 (any table)
        assertThat(d.quantile(0.975)).isEqualTo(10 + 2 * 1.959964, within(1e-5));
    }

    @Test
    void truncatedNormalStaysInItsRangeAndKeepsItsShape() {
        Distribution d = Distribution.truncatedNormal(0, 1, Interval.of(-1, 1));
        assertThat(d.quantile(1e-12)).isBetween(-1.0, -0.999);
        assertThat(d.quantile(1 - 1e-12)).isBetween(0.999, 1.0);
        assertThat(d.quantile(0.5)).isEqualTo(0, within(1e-9));
        // Φ(0.5) = 0.691462, Φ(1) = 0.841345: (0.691462 − 0.158655)/(0.841345 − 0.158655) = 0.780450
        assertThat(d.quantile(0.780450)).isEqualTo(0.5, within(1e-5));
        assertThatThrownBy(() -> Distribution.truncatedNormal(0, 1, Interval.of(50, 60)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("range");
    }

    @Test
    void logNormalByMedianAndVariation() {
        Distribution d = Distribution.logNormal(5, 0.3);
        assertThat(d.quantile(0.5)).isEqualTo(5, within(1e-9));
        double shape = Math.sqrt(Math.log(1 + 0.09));
        assertThat(d.quantile(0.975)).isEqualTo(5 * Math.exp(1.959964 * shape), within(1e-4));
    }

    @Test
    void uniformTriangularWeibullGumbel() {
        assertThat(Distribution.uniform(Interval.of(2, 6)).quantile(0.25)).isEqualTo(3, within(1e-12));
        // Triangle from 0 over 1 to 4: F(1) = 1/4; F(x) = 1 − (4 − x)²/12
        assertThat(Distribution.triangular(Interval.of(0, 4), 1).quantile(0.25)).isEqualTo(1, within(1e-9));
        assertThat(Distribution.triangular(Interval.of(0, 4), 1).quantile(0.75))
                .isEqualTo(4 - Math.sqrt(12 * 0.25), within(1e-9));
        assertThat(Distribution.weibull(2, 3).quantile(0.5)).isEqualTo(3 * Math.sqrt(Math.log(2)), within(1e-9));
        assertThat(Distribution.gumbel(1, 2).quantile(0.5)).isEqualTo(1 - 2 * Math.log(Math.log(2)), within(1e-9));
    }

    @Test
    void badNumbersAreRefused() {
        assertThatThrownBy(() -> Distribution.normal(0, 0)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Distribution.logNormal(-1, 0.1)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Distribution.weibull(0, 1)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Distribution.gumbel(0, Double.NaN)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Distribution.triangular(Interval.of(1, 2), 3))
                .isInstanceOf(InvalidInputException.class);
    }
}
