package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class EventBracketTest {
    @Test
    void theParabolaIsExactForOne() {
        EventBracket b = new EventBracket();
        DoubleUnaryOperator f = x -> -3 + 2 * x + 0.5 * x * x;
        b.start(0, 4, f.applyAsDouble(0), f.applyAsDouble(4));
        assertThat(b.parabola(2)).isCloseTo(-2 + Math.sqrt(10), within(1e-14));
    }

    @Test
    void aSlopeOfTheWrongSignLeavesTheChord() {
        EventBracket b = new EventBracket();
        b.start(10, 20, -1, 3);
        // b² − 4 a c is below zero for no slope that leads up; the chord meets zero at a quarter.
        assertThat(b.parabola(Double.NaN)).isEqualTo(12.5);
    }

    @Test
    void aSmoothRootIsMetInAFewSteps() {
        SplittableRandom r = new SplittableRandom(3);
        int most = 0;
        for (int n = 0; n < 500; n++) {
            double root = r.nextDouble(0.3, 0.95);
            double bend = r.nextDouble(-0.4, 0.8);
            DoubleUnaryOperator f = x -> (Math.exp(bend * x) - Math.exp(bend * root)) / bend;
            most = Math.max(most, stepsToRoot(f, 1, root));
        }
        assertThat(most).isLessThanOrEqualTo(4);
    }

    /** A corner just before the root misleads interpolation; the bracket is halved all the same. */
    @Test
    void aCornerIsMetToo() {
        for (double corner : new double[] {0.1, 0.5, 0.9, 0.999}) {
            double root = corner + 0.5 * (1 - corner);
            DoubleUnaryOperator f =
                    x -> x < corner ? -1 + 1e-6 * x : -1 + 1e-6 * corner + (x - corner) / (root - corner);
            assertThat(stepsToRoot(f, 1e-6, root)).isLessThan(60);
        }
    }

    private static int stepsToRoot(DoubleUnaryOperator f, double slope, double root) {
        EventBracket b = new EventBracket();
        b.start(0, 1, f.applyAsDouble(0), f.applyAsDouble(1));
        double x = b.parabola(slope);
        for (int k = 0; k < 100; k++) {
            double value = f.applyAsDouble(x);
            assertThat(x).isGreaterThan(b.low()).isLessThan(b.low() + b.width());
            if (Math.abs(value) < 1e-9) {
                return k + 1;
            }
            b.add(x, value, value > 0);
            x = b.next(k);
        }
        throw new AssertionError("no root near " + root);
    }
}
