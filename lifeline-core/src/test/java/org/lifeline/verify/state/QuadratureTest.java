package org.lifeline.verify.state;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class QuadratureTest {
    private final Quadrature rule = new Quadrature(12, 1e-13);

    /** A rule of n points is exact to degree 2n − 1 (Abramowitz and Stegun 25.4.29). */
    @Test
    void polynomialsOfDegree23AreExact() {
        assertThat(new Quadrature(12, 1).integrate(x -> Math.pow(x, 22) - Math.pow(x, 23), 0, 1))
                .isCloseTo(1.0 / 23 - 1.0 / 24, within(1e-16));
        assertThat(new Quadrature(3, 1).integrate(x -> 7 * Math.pow(x, 5) + 3 * x * x, -1, 2))
                .isCloseTo(7 * 63 / 6.0 + 9, within(1e-12));
    }

    /** To rounding: a dozen ulp, for the weights and the sum over them. */
    @Test
    void smoothFunctionsComeOutToRounding() {
        assertThat(rule.integrate(Math::exp, 0, 10)).isCloseTo(Math.expm1(10), within(3e-15 * Math.expm1(10)));
        assertThat(rule.integrate(Math::sin, 0, Math.PI)).isCloseTo(2, within(1e-14));
    }

    /** The integrand of a slack cable near its lowest point: 1/√(h² + s²), h tiny. */
    @Test
    void sharpTurnsAreResolved() {
        double h = 1e-9;
        double s = 3;

        double area = rule.integrate(x -> 1 / Math.sqrt(h * h + x * x), 0, s);

        assertThat(area).isCloseTo(Math.log((s + Math.hypot(s, h)) / h), within(1e-11));
    }

    @Test
    void kinksAreResolved() {
        assertThat(rule.integrate(x -> Math.abs(x - 0.3), 0, 1)).isCloseTo(0.5 * (0.09 + 0.49), within(1e-13));
    }

    @Test
    void anEmptyRangeHasNoArea() {
        assertThat(rule.integrate(x -> 1 / x, 0, 0)).isZero();
    }

    @Test
    void aRangeTurnedRoundChangesTheSign() {
        assertThat(rule.integrate(Math::exp, 1, 0)).isCloseTo(-Math.expm1(1), within(3e-15));
    }

    @Test
    void whatIsNotANumberStaysOne() {
        assertThat(rule.integrate(x -> Double.NaN, 0, 1)).isNaN();
    }
}
