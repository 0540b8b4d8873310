package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The coordinate in which a path is measured: inverse functions, derivatives by differences, both its limits. */
class PathCoordinateTest {
    private static final int CASES = Integer.getInteger("lifeline.cases", 1000);

    private static PathCoordinate random(SplittableRandom r) {
        return new PathCoordinate(Math.exp(r.nextDouble(-10, 10)));
    }

    private static double value(SplittableRandom r, PathCoordinate c) {
        return c.scale() * Math.exp(r.nextDouble(-15, 15));
    }

    /** P = P₀ (4 w³ + 3 w): the load on a taut span by its deflection. */
    @Test
    void theValueIsTheCubicOfW() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            PathCoordinate c = random(r);
            double p = value(r, c);
            double w = c.w(p);
            assertThat(c.scale() * (4 * w * w * w + 3 * w)).as("seed %d", seed).isCloseTo(p, within(1e-9 * p));
        }
    }

    @Test
    void aStepAndTheValueBeyondItAreInverse() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            PathCoordinate c = random(r);
            double from = r.nextBoolean() ? 0 : value(r, c);
            double step = Math.exp(r.nextDouble(-20, 3));
            double to = c.beyond(from, step);
            assertThat(to).as("seed %d", seed).isGreaterThanOrEqualTo(from);
            double rise = to - from;
            // The rise is known to the rounding of the values it is a difference of.
            double rounding = 4 * Math.ulp(to) / Math.max(rise, Double.MIN_NORMAL);
            assertThat(c.step(from, rise)).as("seed %d", seed).isCloseTo(step, within(step * (1e-12 + rounding)));
        }
    }

    /** asinh of the end less asinh of the start, where that difference keeps its digits. */
    @Test
    void aLongStepIsTheDifferenceOfTheInverseHyperbolicSines() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            PathCoordinate c = random(r);
            double a = r.nextDouble(0, 5);
            double b = a + r.nextDouble(1, 50);
            double expected = Math.log(b + Math.hypot(1, b)) - Math.log(a + Math.hypot(1, a));
            assertThat(c.step(a * c.scale(), (b - a) * c.scale()))
                    .as("seed %d", seed)
                    .isCloseTo(expected, within(1e-13 * (1 + expected)));
        }
    }

    @Test
    void twoStepsAreOneOfTheirSum() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            PathCoordinate c = random(r);
            double from = value(r, c);
            double a = r.nextDouble(0, 2);
            double b = r.nextDouble(0, 2);
            double once = c.beyond(from, a + b);
            assertThat(c.beyond(c.beyond(from, a), b)).as("seed %d", seed).isCloseTo(once, within(1e-12 * once));
        }
    }

    @Test
    void ratesAreDifferenceQuotients() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            PathCoordinate c = random(r);
            double p = value(r, c);
            double h = 1e-5;
            double byStep = (c.beyond(p, h) - c.beyond(p, -h)) / (2 * h);
            assertThat(c.perStep(p)).as("seed %d", seed).isCloseTo(byStep, within(1e-7 * byStep));
        }
    }

    /** Far below its scale the coordinate is proportional to the value, far above to its cube root. */
    @Test
    void theLimits() {
        PathCoordinate c = new PathCoordinate(100);
        assertThat(c.w(0)).isZero();
        assertThat(c.w(1e-6)).isCloseTo(1e-8 / 3, within(1e-16));
        assertThat(c.w(1e14)).isCloseTo(Math.cbrt(1e12 / 4), within(1e-4));
        assertThat(c.w(8e14) / c.w(1e14)).isCloseTo(2, within(1e-6));
        assertThat(c.perStep(0)).isEqualTo(100);
    }
}
