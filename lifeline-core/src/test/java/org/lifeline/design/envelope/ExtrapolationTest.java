package org.lifeline.design.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** What samples of a quantity foresee, against functions that are known everywhere. */
class ExtrapolationTest {
    private static final int CASES = 1000;

    private static final Extrapolation.Step NONE = new Extrapolation.Step(0, 0);

    /** From four samples before (or behind) the start of an interval, seen toward it. */
    private static Extrapolation of(DoubleUnaryOperator f, double near, double far, double width) {
        return Extrapolation.through(
                step(f, 0, near), step(f, near, far), step(f, near + far, far), f.applyAsDouble(0), width);
    }

    private static Extrapolation.Step step(DoubleUnaryOperator f, double from, double length) {
        return new Extrapolation.Step(length, f.applyAsDouble(-from) - f.applyAsDouble(-from - length));
    }

    @Test
    void aParabolaThatRisesSteeperAndSteeperIsForeseenExactly() {
        SplittableRandom r = new SplittableRandom(1);
        for (int n = 0; n < CASES; n++) {
            double c = r.nextDouble(0, 5);
            double near = r.nextDouble(0.05, 1);
            double far = r.nextDouble(0.05, 1);
            double slope = 2 * c * (near + far) + r.nextDouble(0, 3);
            DoubleUnaryOperator f = x -> 7 + slope * x + c * x * x;
            Extrapolation e = of(f, near, far, 0.7);
            assertThat(e.slope()).isCloseTo(slope, within(1e-10));
            assertThat(e.at(0.7)).isCloseTo(f.applyAsDouble(0.7), within(1e-9));
        }
    }

    /** Where the curvature grows as well, as toward a post, it is that at the far end of the interval: 99 % of the rise is foreseen. */
    @Test
    void whatRisesMoreAndMoreIsForeseen() {
        SplittableRandom r = new SplittableRandom(3);
        for (int n = 0; n < CASES; n++) {
            double pole = r.nextDouble(0.5, 2);
            double power = r.nextDouble(0.2, 2);
            DoubleUnaryOperator f = x -> StrictMath.pow(pole + 1 - x, -power);
            double width = r.nextDouble(0.05, 0.2) * pole;
            Extrapolation e = of(f, 0.6 * width, width, width);
            for (double x : new double[] {0.2 * width, 0.6 * width, width}) {
                double rise = f.applyAsDouble(x) - f.applyAsDouble(0);
                assertThat(e.at(x)).as("case %d at %s", n, x).isGreaterThan(f.applyAsDouble(x) - 0.01 * rise);
            }
        }
        // Three samples alone tell of no growth.
        Extrapolation.Step last = new Extrapolation.Step(1, 3);
        Extrapolation.Step before = new Extrapolation.Step(1, 1);
        assertThat(Extrapolation.through(last, before, NONE, 5, 2)).isEqualTo(new Extrapolation(5, 4, 2));
        // Growth of 1 a length: 2 at the mean of the last three samples, 3 at the last one, 5 at the far end.
        Extrapolation.Step first = new Extrapolation.Step(1, 0);
        assertThat(Extrapolation.through(last, before, first, 5, 2)).isEqualTo(new Extrapolation(5, 4.5, 5));
    }

    /** A concave curve lies below the line, and so does one that falls; a single other sample gives no more than a line. */
    @Test
    void elsewhereItIsTheLineThroughTwoSamples() {
        DoubleUnaryOperator concave = x -> 5 + 3 * x - x * x;
        assertThat(of(concave, 0.5, 0.5, 1)).isEqualTo(new Extrapolation(5, 3.5, 0));
        DoubleUnaryOperator falling = x -> 5 - 3 * x + x * x;
        assertThat(of(falling, 0.5, 0.5, 1)).isEqualTo(new Extrapolation(5, -3.5, 0));
        assertThat(Extrapolation.through(new Extrapolation.Step(0.5, 2), NONE, NONE, 5, 1))
                .isEqualTo(new Extrapolation(5, 4, 0));
        Extrapolation.Step failed = new Extrapolation.Step(0.5, Double.NaN);
        assertThat(Extrapolation.through(new Extrapolation.Step(0.5, 2), failed, NONE, 5, 1))
                .isEqualTo(new Extrapolation(5, 4, 0));
        assertThat(Extrapolation.through(failed, NONE, NONE, 5, 1).isUnknown()).isTrue();
        assertThat(Extrapolation.unknown(5).isUnknown()).isTrue();
        assertThat(Extrapolation.unknown(5).reaching(9, 1).isUnknown()).isTrue();
        assertThat(new Extrapolation(5, 4, 0).isUnknown()).isFalse();
    }

    /** Two convex branches that meet in a kink, as where an in-line absorber begins to yield: the peak is where they meet. */
    @Test
    void theKinkOfTwoParabolasIsFound() {
        SplittableRandom r = new SplittableRandom(2);
        for (int n = 0; n < CASES; n++) {
            double width = r.nextDouble(0.1, 2);
            double kink = width * r.nextDouble(0.02, 0.98);
            double[] c = {r.nextDouble(0, 5), r.nextDouble(0, 5)};
            double[] s = {r.nextDouble(0.1, 3), r.nextDouble(0.1, 3)};
            Extrapolation left = new Extrapolation(10 - s[0] * kink - c[0] * kink * kink, s[0], 2 * c[0]);
            double back = width - kink;
            Extrapolation right = new Extrapolation(10 - s[1] * back - c[1] * back * back, s[1], 2 * c[1]);
            double x = left.meeting(right, width);
            assertThat(x).as("case %d", n).isCloseTo(kink, within(1e-9));
            assertThat(left.at(x)).as("case %d", n).isCloseTo(10, within(1e-9));
            assertThat(right.meeting(left, width)).as("case %d", n).isCloseTo(back, within(1e-9));
        }
    }

    @Test
    void whatDoesNotMeetWithinTheIntervalHasNoPeakThere() {
        Extrapolation left = new Extrapolation(1, 2, 0);
        assertThat(left.meeting(new Extrapolation(5, 1, 0), 1))
                .as("beyond the end")
                .isNaN();
        assertThat(left.meeting(new Extrapolation(0, 0.5, 0), 1))
                .as("before the start")
                .isNaN();
        assertThat(left.meeting(new Extrapolation(3, -2, 0), 1))
                .as("the same line")
                .isNaN();
        assertThat(left.meeting(new Extrapolation(2, -3, 0), 1)).as("a valley").isNaN();
        assertThat(left.meeting(Extrapolation.unknown(3), 1)).isNaN();
        assertThat(Extrapolation.unknown(3).meeting(left, 1)).isNaN();
    }

    /** Where the next sample is higher than foreseen, the curve may pass above it by as much. */
    @Test
    void whatItFailedToForeseeCountsOnceMore() {
        Extrapolation e = new Extrapolation(1, 2, 0.5);
        double foreseen = e.at(0.8);
        assertThat(e.reaching(foreseen + 0.3, 0.8).at(0.8)).isCloseTo(foreseen + 0.6, within(1e-12));
        assertThat(e.reaching(foreseen + 0.3, 0.8).slope()).isEqualTo(2);
        assertThat(e.reaching(foreseen - 0.3, 0.8)).isEqualTo(e);
        assertThat(e.reaching(Double.NaN, 0.8)).isEqualTo(e);
        Extrapolation falls = new Extrapolation(1, -2, 0);
        assertThat(falls.reaching(4, 0.8)).isEqualTo(falls);
    }
}
