package org.lifeline.internal.catenary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * The closed forms from which the span with a load starts, where they are exact or nearly so: Newton's method then ends at
 * once (its first step is below 1e-8), or after the one step that squares the error.
 */
class LoadedSpanStartTest {
    private static final double RUN = 10;

    private static LoadedSpan span(double rise, double weight, double before, double behind, double load) {
        LoadedSpan s = new LoadedSpan();
        s.run = RUN;
        s.rise = rise;
        s.weight = weight;
        s.compliance = 1e-16;
        s.before = before;
        s.behind = behind;
        s.load = load;
        return s;
    }

    private static int steps(LoadedSpan s) {
        assertThat(s.solve()).isTrue();
        return s.iterations;
    }

    /** Two circles about the supports; the load's elevation and H follow from the legs' slopes by hand. */
    @Test
    void withoutWeightAndStretchTheTriangleIsTheShape() {
        for (double rise : new double[] {-4, 0, 2}) {
            for (double x : new double[] {2, 5, 7}) {
                for (double depth : new double[] {1.5, 4}) {
                    double z = rise * x / RUN - depth;
                    LoadedSpan s = span(rise, 0, Math.hypot(x, z), Math.hypot(RUN - x, rise - z), 800);
                    assertThat(steps(s))
                            .as("rise %s, x %s, depth %s", rise, x, depth)
                            .isEqualTo(1);
                    double h = 800 / ((rise - z) / (RUN - x) - z / x);
                    assertThat(s.horizontal).isCloseTo(h, within(1e-8 * h));
                    assertThat(s.vertical).isCloseTo(h * z / x, within(1e-8 * h));
                    assertThat(s.drop()).isCloseTo(-z, within(1e-8));
                }
            }
        }
    }

    /** A load that outweighs the cable a million times: half of each leg's weight hangs at either end, to first order. */
    @Test
    void aLightCableHangsHalfAtTheLoad() {
        for (double rise : new double[] {-4, 0, 2}) {
            double weight = 1e-3;
            LoadedSpan s = span(rise, weight, 5, 8, 1000);
            assertThat(steps(s)).as("rise %s", rise).isLessThanOrEqualTo(2);
        }
    }

    /** Stretched length less chord = ½H⁻² (run/chord)³ ∫V² dx, to the square of the slopes; on a chord that is inclined to the first order. */
    @Test
    void theParabolaOfATautSpanIsOneStepAway() {
        for (double rise : new double[] {-4, 0, 2}) {
            double chord = Math.hypot(RUN, rise);
            for (double share : new double[] {0.2, 0.5, 0.7}) {
                for (double[] loads : new double[][] {{0, 800}, {50, 0}, {50, 800}, {200, 300}}) {
                    for (double slack : new double[] {1e-6, 0, -1e-6}) {
                        double length = chord * (1 + slack);
                        LoadedSpan s = span(rise, loads[0], share * length, (1 - share) * length, loads[1]);
                        // With slack the rope hardly stretches; without, it does by some millionths.
                        s.compliance = slack > 0 ? 1e-16 : slack < 0 ? 5e-12 : 1e-12;
                        assertThat(steps(s))
                                .as("rise %s, share %s, w %s, P %s, slack %s", rise, share, loads[0], loads[1], slack)
                                .isLessThanOrEqualTo(rise == 0 ? 2 : 3);
                    }
                }
            }
        }
    }

    /** Slack of 2 % is where the parabola ends and the triangle begins: both come there in few steps. */
    @Test
    void bothFormsServeWhereTheyMeet() {
        for (double slack : new double[] {0.0199, 0.0201}) {
            double length = RUN * (1 + slack);
            LoadedSpan s = span(0, 5, 0.4 * length, 0.6 * length, 3000);
            assertThat(steps(s)).as("slack %s", slack).isLessThanOrEqualTo(4);
        }
    }

    /** One leg longer than the chord and the other leg: the load hangs below the nearer support, whichever it is. */
    @Test
    void aLoadBelowASupportIsFoundFromBothSides() {
        for (double rise : new double[] {-2, 0, 2}) {
            LoadedSpan one = span(rise, 5, 1, 14, 500);
            LoadedSpan other = span(-rise, 5, 14, 1, 500);
            assertThat(Math.abs(steps(one) - steps(other))).isLessThanOrEqualTo(1);
            assertThat(one.iterations).isLessThan(25);
            assertThat(other.horizontal).isCloseTo(one.horizontal, within(1e-9 * 500));
            assertThat(other.vertical + one.vertical + 5 * 15 + 500).isCloseTo(0, within(1e-7));
            assertThat(one.drop()).as("about the length of the short leg").isBetween(0.9, 1.0);
        }
    }

    @Test
    void aStartThatIsNoTensionFindsNothing() {
        for (double bad : new double[] {0, -5, Double.NaN}) {
            LoadedSpan s = span(0, 5, 5, 6, 100);
            s.horizontal = bad;
            s.vertical = -60;
            assertThat(s.solveFrom()).as("from %s N", bad).isFalse();
        }
    }
}
