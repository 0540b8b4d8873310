package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.base.NoEquilibriumException;

/** Where minima and crossings lie, to which accuracy, and what is told when there is none. */
class RootsLimitsTest {
    @Test
    void aMinimumAtAnyScaleIsFoundToTheRootOfRounding() {
        for (double scale = 1e-9; scale < 1e10; scale *= 1e3) {
            double at = 0.3 * scale;
            assertThat(Roots.minimum(x -> 1 + Math.pow(x / at - 1, 2), 0, scale))
                    .isCloseTo(at, within(1e-7 * at));
            assertThat(Roots.minimum(x -> 1 + Math.pow(x / at + 1, 2), -scale, 0))
                    .isCloseTo(-at, within(1e-7 * at));
        }
    }

    @Test
    void aMinimumAtAnEndIsFoundThere() {
        assertThat(Roots.minimum(x -> x, 2, 5)).isCloseTo(2, within(1e-7));
        assertThat(Roots.minimum(x -> -x, 2, 5)).isCloseTo(5, within(1e-7));
        assertThat(Roots.roughMinimum(x -> -x, 2, 5, 1e-3)).isCloseTo(5, within(0.01));
    }

    @Test
    void aRoughMinimumCostsLessTheRougherItIs() {
        int[] calls = new int[2];
        double rough = Roots.roughMinimum(
                x -> {
                    calls[0]++;
                    return Math.cosh(x - 1);
                },
                -3,
                4,
                1e-2);
        double fine = Roots.roughMinimum(
                x -> {
                    calls[1]++;
                    return Math.cosh(x - 1);
                },
                -3,
                4,
                1e-6);
        assertThat(rough).isCloseTo(1, within(0.07));
        assertThat(fine).isCloseTo(1, within(7e-6));
        assertThat(calls[0]).isLessThan(calls[1]);
        assertThat(Roots.roughMinimum(x -> Math.cosh(x - 101), 97, 104, 1e-6)).isCloseTo(101, within(7e-6));
    }

    @Test
    void aCrossingOfAFallingFunctionIsOnTheSideNotAboveZero() {
        double x = Roots.crossing("falling", t -> 2 - t * t, 0, 4, 1e-6);
        assertThat(2 - x * x).isBetween(-1e-6, 0.0);
    }

    @Test
    void aCrossingEndsAtItsAccuracy() {
        int[] calls = new int[1];
        double x = Roots.crossing(
                "rough",
                t -> {
                    calls[0]++;
                    return t * t * t - 0.1;
                },
                0,
                1,
                0.05);
        assertThat(x * x * x - 0.1).isBetween(-0.05, 0.0);
        assertThat(calls[0]).isLessThan(8);
    }

    @Test
    void aJumpIsMetToABillionthOfTheSearch() {
        double x = Roots.crossing("jump", t -> t < 300 ? -5 : 5, 0, 1000, 1e-9);
        assertThat(x).isLessThan(300).isCloseTo(300, within(1e-6));
        double other = Roots.crossing("jump", t -> t < 300 ? 5 : -5, 0, 1000, 1e-9);
        assertThat(other).isGreaterThanOrEqualTo(300).isCloseTo(300, within(1e-6));
    }

    @Test
    void noCrossingIsToldWithTheNearerEnd() {
        NoEquilibriumException e = catchThrowableOfType(
                NoEquilibriumException.class, () -> Roots.crossing("a span", t -> t + 3, 0, 2, 1e-4));
        assertThat(e.where()).isEqualTo("a span");
        assertThat(e.convergence().residual()).isEqualTo(3);
        assertThat(e).hasCauseInstanceOf(org.apache.commons.math3.exception.NoBracketingException.class);
    }

    @Test
    void theAccuracyOfARootGoesWithItsBracket() {
        NoEquilibriumException e = catchThrowableOfType(
                NoEquilibriumException.class, () -> Roots.bracketed("none", t -> 1 + t * t, -40, 30));
        assertThat(e.convergence().tolerance()).isCloseTo(4e-14, within(1e-26));
        assertThat(e.convergence().residual()).isEqualTo(901);
    }
}
