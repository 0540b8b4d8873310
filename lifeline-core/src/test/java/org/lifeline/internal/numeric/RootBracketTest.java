package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.numeric.RootBracket.Sample;

class RootBracketTest {
    private static Sample sample(DoubleUnaryOperator f, double x, double slope) {
        return new Sample(x, f.applyAsDouble(x), slope);
    }

    @Test
    void theParabolaIsExactForOne() {
        DoubleUnaryOperator f = x -> -3 + 2 * x + 0.5 * x * x;
        RootBracket b = new RootBracket();
        b.begin(sample(f, 0, 2), sample(f, 4, Double.NaN));
        assertThat(b.next()).isCloseTo(-2 + Math.sqrt(10), within(1e-14));
    }

    @Test
    void theChordServesWhereNothingElseIsKnown() {
        RootBracket b = new RootBracket();
        b.begin(new Sample(10, -1, Double.NaN), new Sample(20, 3, Double.NaN));
        assertThat(b.next()).isEqualTo(12.5);
    }

    @Test
    void theInverseCubicIsExactForOne() {
        // x = y³ + y, from y = −1 to 2: the place is a cubic of the value.
        RootBracket b = new RootBracket();
        b.begin(new Sample(-2, -1, 1.0 / 4), new Sample(10, 2, 1.0 / 13));
        assertThat(b.next()).isBetween(-2.0, 10.0);
        RootBracket c = new RootBracket();
        c.begin(new Sample(-0.02, -0.02 / 1.0004, 1 / 1.0012), new Sample(0.03, 0.03 / 1.0009, 1 / 1.0027));
        assertThat(c.next()).isCloseTo(0, within(1e-7));
    }

    @Test
    void fallingFunctionsAreTheSame() {
        DoubleUnaryOperator f = x -> Math.exp(-x) - 0.5;
        assertThat(stepsToRoot(f, Double.NaN, Math.log(2))).isLessThan(12);
    }

    @Test
    void smoothRootsAreMetInAFewSteps() {
        SplittableRandom r = new SplittableRandom(3);
        int most = 0;
        for (int n = 0; n < 500; n++) {
            double root = r.nextDouble(0.3, 0.95);
            double bend = r.nextDouble(-0.4, 0.8);
            DoubleUnaryOperator f = x -> (Math.exp(bend * x) - Math.exp(bend * root)) / bend;
            most = Math.max(most, stepsToRoot(f, 1, root));
        }
        assertThat(most).isLessThanOrEqualTo(6);
    }

    /** A corner just before the root misleads interpolation; the bracket is halved all the same. */
    @Test
    void cornersAreMetToo() {
        for (double corner : new double[] {0.1, 0.5, 0.9, 0.999}) {
            double root = corner + 0.5 * (1 - corner);
            DoubleUnaryOperator f =
                    x -> x < corner ? -1 + 1e-6 * x : -1 + 1e-6 * corner + (x - corner) / (root - corner);
            assertThat(stepsToRoot(f, 1e-6, root)).isLessThan(90);
        }
    }

    private static int stepsToRoot(DoubleUnaryOperator f, double slope, double root) {
        RootBracket b = new RootBracket();
        b.begin(sample(f, 0, slope), sample(f, 1, Double.NaN));
        double rise = Math.signum(b.high().value());
        for (int k = 0; k < 100; k++) {
            double x = b.next();
            assertThat(x).isGreaterThan(b.low().at()).isLessThan(b.low().at() + b.width());
            double value = f.applyAsDouble(x);
            if (Math.abs(value) < 1e-9) {
                assertThat(x).isCloseTo(root, within(1e-6));
                return k + 1;
            }
            b.add(new Sample(x, value, Double.NaN), value * rise > 0);
        }
        throw new AssertionError("no root near " + root);
    }
}
