package org.lifeline.internal.catenary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.model.cable.LoadElongation;

/** The parabola of a taut span and the estimates of any span against closed forms and the exact span. */
class TautSpanTest {
    private static final double EA = 2e6;

    /** k/H² = slack + b H, for slack below, at and above zero, and for all ratios of stretch to slack. */
    @Test
    void theBalanceHoldsItsEquation() {
        for (double k : new double[] {1e-3, 10, 1e6}) {
            for (double b : new double[] {1e-9, 1e-5, 1e-2}) {
                for (double slack : new double[] {-1, -1e-4, 0, 1e-8, 1e-4, 1}) {
                    double h = TautSpan.balance(k, slack, b);
                    double size = Math.max(Math.abs(slack), b * h);
                    assertThat(k / (h * h) - slack - b * h)
                            .as("k %s, b %s, slack %s", k, b, slack)
                            .isCloseTo(0, within(1e-3 * size));
                }
            }
        }
    }

    @Test
    void withoutStretchItIsTheParabolaAndWithoutSagTheBar() {
        assertThat(TautSpan.balance(8, 2, 1e-20)).as("k/H² = slack").isCloseTo(2, within(1e-6));
        assertThat(TautSpan.balance(1e-20, -3, 0.5)).as("−slack = b H").isCloseTo(6, within(1e-6));
        assertThat(TautSpan.balance(27, 0, 1)).as("H³ = k/b").isCloseTo(3, within(1e-3));
    }

    @Test
    void lengthAndTensionAreInverse() {
        for (double rise : new double[] {-3, 0, 5}) {
            TautSpan t = new TautSpan(1 / EA, 6, 10, rise);
            for (double h : new double[] {300, 2000, 30_000}) {
                assertThat(t.fromLength(t.length(h))).isCloseTo(h, within(1e-3 * h));
            }
        }
    }

    /** Stretched length of a flat parabola, c (1 + 8 f²/3 l²) with f = w l²/8H, over the stretch. */
    @Test
    void theLengthIsThatOfTheFlatParabola() {
        TautSpan t = new TautSpan(1 / EA, 6, 10, 0);
        double sag = 6 * 100 / (8 * 2000.0);
        double arc = 10 * (1 + 8 * sag * sag / 300);
        assertThat(t.length(2000)).isCloseTo(arc / (1 + 2000 / EA), within(1e-12));
    }

    /** At a level support T² = H² + (w s/2)². */
    @Test
    void theHorizontalPartIsWhatTheWeightLeaves() {
        TautSpan level = new TautSpan(1e-12, 6, 10, 0);
        assertThat(level.fromTension(50)).isCloseTo(40, within(1e-8));
        assertThat(level.fromTension(29)).as("less than half of the weight").isNaN();
        TautSpan up = new TautSpan(1e-12, 6, 10, 4);
        TautSpan down = new TautSpan(1e-12, 6, 10, -4);
        assertThat(up.fromTension(500)).as("the lower support has less").isGreaterThan(down.fromTension(500));
        double h = up.fromTension(500);
        double v = 0.4 * h - 0.5 * 6 * Math.hypot(10, 4);
        assertThat(Math.hypot(h, v)).isCloseTo(500, within(1e-6));
    }

    private static SpanFinder exact(SpanFinder.Known known, double value, double rise) {
        SpanFinder f = new SpanFinder(LoadElongation.linear(EA), 6, 10, rise);
        assertThat(f.find(known, value)).isTrue();
        return f;
    }

    /** All four ways to a taut span come to the same estimate, near the exact span. */
    @Test
    void fourWaysToATautSpan() {
        for (double rise : new double[] {-3, 0, 5}) {
            SpanFinder f = exact(SpanFinder.Known.HORIZONTAL_TENSION, 2000, rise);
            double chord = Math.hypot(10, rise);
            double[] values = {Math.hypot(f.h, f.v), 2000, 6 * 10 * chord / (8 * 2000), f.s};
            SpanFinder.Known[] ways = {
                SpanFinder.Known.START_TENSION,
                SpanFinder.Known.HORIZONTAL_TENSION,
                SpanFinder.Known.SAG,
                SpanFinder.Known.UNSTRETCHED_LENGTH
            };
            for (int k = 0; k < 4; k++) {
                for (boolean taut : new boolean[] {true, false}) {
                    SpanEstimate e = new SpanEstimate(LoadElongation.linear(EA), 6, 10, rise);
                    assertThat(taut ? e.ofTautSpan(ways[k], values[k]) : e.of(ways[k], values[k]))
                            .as("%s", ways[k])
                            .isTrue();
                    assertThat(e.h).as("%s", ways[k]).isCloseTo(2000, within(20.0));
                    assertThat(e.v).isCloseTo(f.v, within(0.01 * 2000));
                    assertThat(e.s).isCloseTo(f.s, within(1e-4 * chord));
                }
            }
        }
    }

    /** Level and inextensible: S = (2H/w) sinh(w l/2H), v = −w S/2, however slack. */
    @Test
    void aStiffSlackSpanIsTheCatenary() {
        LoadElongation stiff = LoadElongation.linear(1e14);
        for (double h : new double[] {8, 30, 500}) {
            double length = 2 * h / 6 * Math.sinh(30 / h);
            SpanEstimate e = new SpanEstimate(stiff, 6, 10, 0);
            assertThat(e.of(SpanFinder.Known.HORIZONTAL_TENSION, h)).isTrue();
            assertThat(e.s).isCloseTo(length, within(1e-9 * length));
            assertThat(e.v).isCloseTo(-3 * length, within(1e-9 * length));
            SpanEstimate back = new SpanEstimate(stiff, 6, 10, 0);
            assertThat(back.of(SpanFinder.Known.UNSTRETCHED_LENGTH, length)).isTrue();
            assertThat(back.h).isCloseTo(h, within(1e-6 * h));
            double sag = h / 6 * (Math.cosh(30 / h) - 1);
            SpanEstimate bySag = new SpanEstimate(stiff, 6, 10, 0);
            assertThat(bySag.of(SpanFinder.Known.SAG, sag)).isTrue();
            assertThat(bySag.h).isCloseTo(h, within(1e-6 * h));
        }
    }

    /** The least tension of a level inextensible span, min cosh λ/2λ at λ = 1.19968: 0.75444 w l. */
    @Test
    void belowItsLeastTensionNoSpanHangs() {
        SpanEstimate e = new SpanEstimate(LoadElongation.linear(1e14), 6, 10, 0);
        assertThat(e.leastStartTension()).isCloseTo(0.75444 * 60, within(1e-3));
        assertThat(e.of(SpanFinder.Known.START_TENSION, 45)).isFalse();
        assertThat(e.of(SpanFinder.Known.START_TENSION, 46)).isTrue();
        assertThat(Math.hypot(e.h, e.v)).isCloseTo(46, within(1e-6));
        assertThat(new SpanEstimate(LoadElongation.linear(EA), 0, 10, 0).leastStartTension())
                .isZero();
    }

    @Test
    void weightlessCableHasNoSagAndNoSlack() {
        SpanEstimate e = new SpanEstimate(LoadElongation.linear(EA), 0, 10, 0);
        assertThat(e.of(SpanFinder.Known.SAG, 0.1)).isFalse();
        assertThat(e.of(SpanFinder.Known.UNSTRETCHED_LENGTH, 10)).isFalse();
        assertThat(e.of(SpanFinder.Known.UNSTRETCHED_LENGTH, 9.99)).isTrue();
        assertThat(e.h).isCloseTo(EA * (10 / 9.99 - 1), within(1.0));
        assertThat(e.of(SpanFinder.Known.START_TENSION, 2000)).isTrue();
        assertThat(e.h).isCloseTo(2000, within(1e-9));
        assertThat(e.s).isCloseTo(10 / (1 + 2000 / EA), within(1e-12));
    }

    @Test
    void lawsWithCornersHaveNoParabola() {
        LoadElongation bent = LoadElongation.curve(List.of(
                new LoadElongation.Corner(0, 0),
                new LoadElongation.Corner(0.01, 1000),
                new LoadElongation.Corner(0.3, 60_000)));
        assertThat(new SpanEstimate(bent, 6, 10, 0).ofTautSpan(SpanFinder.Known.HORIZONTAL_TENSION, 2000))
                .isFalse();
    }
}
