package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.internal.numeric.RootBracket.Sample;

/** Each way of interpolation is exact for the functions that it stands for, and each rule holds on both sides of its limit. */
class RootBracketStepTest {
    private static final double NONE = Double.NaN;

    private static RootBracket of(Sample low, Sample high) {
        RootBracket b = new RootBracket();
        b.begin(low, high);
        return b;
    }

    /** A place that is a polynomial of the value: p + q v + r v² + s v³. */
    private static Sample inverse(double v, double q, double r, double s, boolean slope) {
        double at = 2 + q * v + r * v * v + s * v * v * v;
        return new Sample(at, v, slope ? 1 / (q + 2 * r * v + 3 * s * v * v) : NONE);
    }

    @Test
    void theEndsAreThoseThatWereGiven() {
        Sample low = new Sample(1, -1, NONE);
        Sample high = new Sample(4, 1, NONE);
        RootBracket b = of(low, high);
        assertThat(b.low()).isSameAs(low);
        assertThat(b.high()).isSameAs(high);
        assertThat(b.width()).isEqualTo(3);
        Sample above = new Sample(3, 0.5, NONE);
        b.add(above, true);
        assertThat(b.high()).isSameAs(above);
        assertThat(b.low()).isSameAs(low);
        Sample below = new Sample(1.5, -0.5, NONE);
        b.add(below, false);
        assertThat(b.low()).isSameAs(below);
        assertThat(b.width()).isEqualTo(1.5);
    }

    @Test
    void theInverseParabolaThroughThreePointsIsExactOnBothSides() {
        RootBracket left = of(inverse(-3, 5, 0.4, 0, false), inverse(2, 5, 0.4, 0, false));
        left.add(inverse(-1, 5, 0.4, 0, false), false);
        assertThat(left.next()).isCloseTo(2, within(1e-14));
        RootBracket right = of(inverse(-3, 5, 0.4, 0, false), inverse(2, 5, 0.4, 0, false));
        right.add(inverse(0.7, 5, 0.4, 0, false), true);
        assertThat(right.next()).isCloseTo(2, within(1e-14));
    }

    @Test
    void theSlopeAtTheHighEndAloneMakesAnInverseParabola() {
        RootBracket b = of(inverse(-3, 5, 0.4, 0, false), inverse(2, 5, 0.4, 0, true));
        assertThat(b.next()).isCloseTo(2, within(1e-14));
    }

    @Test
    void bothSlopesMakeAnInverseCubic() {
        RootBracket rising = of(inverse(-1, 1, 0.1, 0.5, true), inverse(0.8, 1, 0.1, 0.5, true));
        assertThat(rising.next()).isCloseTo(2, within(1e-14));
        RootBracket falling = of(inverse(1, -1, 0.1, -0.5, true), inverse(-0.8, -1, 0.1, -0.5, true));
        assertThat(falling.next()).isCloseTo(2, within(1e-14));
    }

    /** The slopes of the chord make the cubic the chord itself. */
    @Test
    void aStraightLineIsMetAtOnceByEveryWay() {
        for (double slope : new double[] {2, NONE}) {
            for (double other : new double[] {2, NONE}) {
                assertThat(of(new Sample(0, -2, slope), new Sample(5, 8, other)).next())
                        .isCloseTo(1, within(1e-15));
            }
        }
    }

    @Test
    void theParabolaWithTheSlopeAtTheLowEndIsExactForAFallingOneToo() {
        // 3 − 2 x − x² has its root at 1.
        RootBracket b = of(new Sample(0, 3, -2), new Sample(2, -5, NONE));
        assertThat(b.next()).isCloseTo(1, within(1e-15));
    }

    /** A high end steeper than three chords could turn the cubic back: the next way in turn is taken. */
    @Test
    void aSlopeBeyondTheMonotoneLimitIsLeftAlone() {
        // chord 1 per 1; perHigh = 1 / slope: 3.1 is too flat, 2.9 is not.
        Sample low = new Sample(0, -0.5, NONE);
        assertThat(of(low, new Sample(1, 0.5, 1 / 3.1)).next()).isEqualTo(0.5);
        assertThat(of(low, new Sample(1, 0.5, 1 / 2.9)).next()).isCloseTo(0.5 * (2 - 2.9 + 0.5 * 1.9), within(1e-14));
        // A slope of the wrong sign at the high end is no use either.
        assertThat(of(low, new Sample(1, 0.5, -1)).next()).isEqualTo(0.5);
        // At the low end: the parabola of the high end instead of the cubic.
        RootBracket b = of(new Sample(0, -0.25, 1 / 3.1), new Sample(1, 0.75, 1 / 1.4));
        assertThat(b.next()).isCloseTo(0.25 * (2 - 1.4 + 0.25 * 0.4), within(1e-15));
    }

    @Test
    void whatWouldLeadOutIsReplacedByTheChord() {
        // The inverse parabola of a flat high end begins below the low one: 0.25 (2 − 2.9 + 0.25 · 1.9) < 0.
        assertThat(of(new Sample(0, -0.25, NONE), new Sample(1, 0.75, 1 / 2.9)).next())
                .isEqualTo(0.25);
        // Three points that turn back.
        RootBracket b = of(new Sample(-0.1, -0.9, NONE), new Sample(1, 1, NONE));
        b.add(new Sample(0, -1, NONE), false);
        assertThat(b.next()).isEqualTo(0.5);
    }

    @Test
    void aStepThatBringsThreeTenthsIsEnough() {
        assertThat(third(-3.0)).as("just enough: by the three points").isNotEqualTo(7.5);
        assertThat(third(-3.01)).as("not enough: the middle").isEqualTo(7.5);
    }

    /** The third place to look at, after a place at 5 with a value, in a bracket from 0 to 10 with values of ∓10. */
    private static double third(double value) {
        RootBracket b = of(new Sample(0, -10, NONE), new Sample(10, 10, NONE));
        assertThat(b.next()).isEqualTo(5);
        assertThat(b.next()).isEqualTo(5);
        b.add(new Sample(5, value, NONE), false);
        return b.next();
    }

    @Test
    void theFirstTwoStepsAreNeverHalved() {
        RootBracket b = of(new Sample(0, -1, NONE), new Sample(1, 9, NONE));
        assertThat(b.next()).isCloseTo(0.1, within(1e-15));
        assertThat(b.next()).isCloseTo(0.1, within(1e-15));
        assertThat(b.next()).isEqualTo(0.5);
        assertThat(b.next()).as("after a half any step is good").isCloseTo(0.1, within(1e-15));
        b.begin(new Sample(0, -1, NONE), new Sample(1, 9, NONE));
        assertThat(b.next()).as("begun anew").isCloseTo(0.1, within(1e-15));
        assertThat(b.next()).isCloseTo(0.1, within(1e-15));
    }

    @Test
    void aBracketBegunAnewForgetsTheThirdPoint() {
        RootBracket b = of(new Sample(0, -4, NONE), new Sample(8, 4, NONE));
        b.add(new Sample(2, -1, NONE), false);
        b.begin(new Sample(0, -1, NONE), new Sample(4, 1, NONE));
        assertThat(b.next()).isEqualTo(2);
    }

    @Test
    void aStepStaysInsideByAHair() {
        double low = of(new Sample(0, -1e-30, NONE), new Sample(1, 1, NONE)).next();
        assertThat(low).isEqualTo(1e-15);
        double high = of(new Sample(0, -1, NONE), new Sample(1, 1e-30, NONE)).next();
        assertThat(high).isEqualTo(1 - 1e-15);
        // Where rounding would put it onto an end, the middle is taken.
        assertThat(of(new Sample(1e6, -1e-30, NONE), new Sample(1e6 + 1, 1, NONE))
                        .next())
                .isEqualTo(1e6 + 0.5);
        assertThat(of(new Sample(1e6, -1, NONE), new Sample(1e6 + 1, 1e-30, NONE))
                        .next())
                .isEqualTo(1e6 + 0.5);
    }
}
