package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** What samples of a quantity foresee, against functions that are known everywhere. */
class ExtrapolationTest {
    private static final int CASES = 1000;

    /** Samples of a function at stations; those at which it is NaN are of cases that failed. */
    private static Extrapolation.Samples samples(DoubleUnaryOperator f, double... stations) {
        return table(stations, Arrays.stream(stations).map(f).toArray());
    }

    private static Extrapolation.Samples table(double[] places, double[] values) {
        return new Extrapolation.Samples() {
            @Override
            public int count() {
                return places.length;
            }

            @Override
            public double place(int i) {
                return places[i];
            }

            @Override
            public double value(int i) {
                return values[i];
            }
        };
    }

    private static Extrapolation beyond(Extrapolation.Samples samples, int i, int side) {
        Extrapolation e = new Extrapolation();
        e.beyond(samples, i, side);
        return e;
    }

    /** Beyond 0, by four samples before it, into an interval whose other end is not higher than foreseen. */
    private static Extrapolation of(DoubleUnaryOperator f, double near, double far, double width) {
        return beyond(
                samples(x -> x > 0 ? -1e9 : f.applyAsDouble(x), -near - 2 * far, -near - far, -near, 0, width), 3, -1);
    }

    private static void assertLine(Extrapolation e, double value, double slope) {
        assertThat(e.value()).isEqualTo(value);
        assertThat(e.slope()).isCloseTo(slope, within(1e-12));
        assertThat(e.curvature()).isZero();
    }

    @Test
    void aParabolaThatRisesSteeperAndSteeperIsForeseenExactly() {
        SplittableRandom r = new SplittableRandom(1);
        for (int n = 0; n < CASES; n++) {
            double c = r.nextDouble(0, 5);
            double near = r.nextDouble(0.05, 1);
            double far = r.nextDouble(0.05, 1);
            double slope = 4 * c * (near + far) + r.nextDouble(0, 3);
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
    }

    /** Growth of 1 a length: 2 at the mean of the last three samples, 3 at the last one, 5 at the far end. Three tell of no growth. */
    @Test
    void growthIsThatOverFourSamples() {
        Extrapolation e = new Extrapolation();
        e.beyond(table(new double[] {0, 1, 2, 3, 5}, new double[] {1, 1, 2, 5, -1e9}), 3, -1);
        assertThat(List.of(e.value(), e.slope(), e.curvature())).containsExactly(5.0, 4.5, 5.0);
        e.beyond(table(new double[] {1, 2, 3, 5}, new double[] {1, 2, 5, -1e9}), 2, -1);
        assertThat(List.of(e.value(), e.slope(), e.curvature())).containsExactly(5.0, 4.0, 2.0);
    }

    /** A concave curve lies below the line, and so does one that falls; a single other sample gives no more than a line. */
    @Test
    void elsewhereItIsTheLineThroughTwoSamples() {
        assertLine(of(x -> 5 + 3 * x - x * x, 0.5, 0.5, 1), 5, 3.5);
        assertLine(of(x -> 5 - 3 * x + x * x, 0.5, 0.5, 1), 5, -3.5);
        Extrapolation e = new Extrapolation();
        DoubleUnaryOperator steeper = x -> x <= 0 ? 5 + 4 * x : -9;
        e.beyond(samples(steeper, -0.5, 0, 1), 1, -1);
        assertLine(e, 5, 4);
        e.beyond(samples(x -> x < -0.6 ? Double.NaN : steeper.applyAsDouble(x), -1, -0.5, 0, 1), 2, -1);
        assertLine(e, 5, 4);
        e.beyond(samples(steeper, 0, 1), 0, -1);
        assertThat(e.isUnknown()).isTrue();
        e.beyond(samples(x -> x < 0 ? Double.NaN : 5, -0.5, 0, 1), 1, -1);
        assertThat(e.isUnknown()).isTrue();
    }

    /** Seen from both ends of an interval: two convex branches that meet in a kink, as where an absorber begins to yield. */
    @Test
    void theKinkOfTwoParabolasIsFound() {
        SplittableRandom r = new SplittableRandom(2);
        for (int n = 0; n < CASES; n++) {
            double width = r.nextDouble(0.1, 2);
            double kink = width * r.nextDouble(0.02, 0.98);
            double[] c = {r.nextDouble(0, 5), r.nextDouble(0, 5)};
            double h = r.nextDouble(0.1, 1);
            // Each branch rises toward the kink everywhere, and from its samples at distance h on.
            double[] s = {
                2 * c[0] * (kink + 3 * h) + r.nextDouble(0.1, 3),
                2 * c[1] * (width - kink + 3 * h) + r.nextDouble(0.1, 3)
            };
            DoubleUnaryOperator f = x -> {
                double d = kink - x;
                int side = d > 0 ? 0 : 1;
                return 10 - s[side] * Math.abs(d) + c[side] * d * d;
            };
            Extrapolation.Samples list =
                    samples(f, -3 * h, -2 * h, -h, 0, width, width + h, width + 2 * h, width + 3 * h);
            Extrapolation left = beyond(list, 3, -1);
            Extrapolation right = beyond(list, 4, 1);
            double x = left.meeting(right, width);
            assertThat(x).as("case %d", n).isCloseTo(kink, within(1e-9));
            assertThat(left.at(x)).as("case %d", n).isCloseTo(10, within(1e-8));
            assertThat(right.meeting(left, width)).as("case %d", n).isCloseTo(width - kink, within(1e-9));
        }
    }

    @Test
    void whatDoesNotMeetWithinTheIntervalHasNoPeakThere() {
        assertThat(meeting(x -> x)).as("rises on and on").isNaN();
        assertThat(meeting(x -> Math.abs(x - 0.5))).as("a valley").isNaN();
        assertThat(meeting(x -> x < 0.5 ? 1 : 0)).as("a step").isNaN();
        assertThat(meeting(x -> x < 0 ? Double.NaN : -x))
                .as("nothing known before")
                .isNaN();
        assertThat(meeting(x -> -Math.abs(x - 0.25))).as("a roof").isCloseTo(0.25, within(1e-12));
    }

    /** Where what is foreseen from both ends of the interval from 0 to 1 meets. */
    private static double meeting(DoubleUnaryOperator f) {
        Extrapolation.Samples list = samples(f, -0.5, 0, 1, 1.5);
        return beyond(list, 1, -1).meeting(beyond(list, 2, 1), 1);
    }

    /** Where the next sample is higher than foreseen, the curve may pass above it by as much; only where it rises. */
    @Test
    void whatItFailedToForeseeCountsOnceMore() {
        Extrapolation e = new Extrapolation();
        e.beyond(samples(x -> x < 0.5 ? 1 + 2 * x : 3.1, -0.5, 0, 0.8), 1, -1);
        assertThat(e.at(0.8)).isCloseTo(2.6 + 2 * 0.5, within(1e-12));
        assertThat(e.slope()).isEqualTo(2);
        e.beyond(samples(x -> x < 0.5 ? 1 + 2 * x : 2.5, -0.5, 0, 0.8), 1, -1);
        assertLine(e, 1, 2);
        e.beyond(samples(x -> x < 0.5 ? 1 + 2 * x : Double.NaN, -0.5, 0, 0.8), 1, -1);
        assertLine(e, 1, 2);
        e.beyond(samples(x -> x < 0.5 ? 1 - 2 * x : 4, -0.5, 0, 0.8), 1, -1);
        assertLine(e, 1, -2);
    }
}
