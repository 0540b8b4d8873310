package org.lifeline.internal.catenary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.model.cable.LoadElongation;

/** A span under one load against the V of a weightless cable, the catenary without load, and its two pieces. */
class LoadedSpanTest {
    private static final double EA = 2e6;

    private static LoadedSpan span(double rise, double weight, double before, double behind, double load) {
        LoadedSpan s = new LoadedSpan();
        s.run = 10;
        s.rise = rise;
        s.weight = weight;
        s.compliance = 1 / EA;
        s.before = before;
        s.behind = behind;
        s.load = load;
        return s;
    }

    /** Both pieces, by the elastic catenary, end at the second support; the first one ends at the load. */
    private static void fits(LoadedSpan s) {
        ElasticCatenary c = new ElasticCatenary(LoadElongation.linear(1 / s.compliance));
        c.evaluate(s.horizontal, 0, s.vertical, s.before, s.weight);
        double x = c.dx;
        double z = c.dz;
        assertThat(s.drop()).isCloseTo(-z, within(1e-11));
        c.evaluate(s.horizontal, 0, s.vertical + s.weight * s.before + s.load, s.behind, s.weight);
        assertThat(x + c.dx).isCloseTo(s.run, within(1e-10));
        assertThat(z + c.dz).isCloseTo(s.rise, within(1e-10));
    }

    /** P = 2 T sin φ with T = EA (l/l₀ − 1). */
    @Test
    void aWeightlessSpanIsAV() {
        for (double load : new double[] {0.01, 10, 3000, 1e5}) {
            LoadedSpan s = span(0, 0, 4.99, 4.99, load);
            assertThat(s.solve()).isTrue();
            double leg = Math.hypot(5, s.drop());
            double tension = EA * (leg / 4.99 - 1);
            assertThat(2 * tension * s.drop() / leg).isCloseTo(load, within(1e-8 * load + 1e-8));
            assertThat(s.horizontal).isCloseTo(tension * 5 / leg, within(1e-8 * tension));
            assertThat(s.vertical).isCloseTo(-0.5 * load, within(1e-8 * load + 1e-9));
            fits(s);
        }
    }

    /** Two circles about the supports: a long cable that hardly stretches, 3-4-5 and 8-6-10. */
    @Test
    void aSlackSpanIsATriangle() {
        LoadedSpan s = span(0, 0, 6, 8, 1000);
        s.compliance = 1e-14;
        assertThat(s.solve()).isTrue();
        assertThat(s.drop()).isCloseTo(4.8, within(1e-7));
        // Level balance at the load, 3.6 m from the start: H (4.8/3.6 + 4.8/6.4) = P.
        assertThat(s.horizontal).isCloseTo(1000 / (4.8 / 3.6 + 4.8 / 6.4), within(1e-4));
        fits(s);
    }

    /** Taut ones, and slack ones whose legs reach the load from both supports. */
    @Test
    void everyTautAndSlackSpanFitsBetweenItsSupports() {
        for (double rise : new double[] {-4, 0, 1, 8}) {
            double chord = Math.hypot(10, rise);
            for (double slack : new double[] {-0.01, -0.001, 0.001, 0.019, 0.021, 0.3}) {
                for (double share : new double[] {0.2, 0.3, 0.5, 0.8}) {
                    for (double load : new double[] {0, 1, 800, 3e4}) {
                        double length = chord * (1 + slack);
                        LoadedSpan s = span(rise, 6, share * length, (1 - share) * length, load);
                        assertThat(s.solve())
                                .as("rise %s, slack %s, share %s, load %s", rise, slack, share, load)
                                .isTrue();
                        assertThat(s.iterations).isLessThan(40);
                        fits(s);
                    }
                }
            }
        }
    }

    @Test
    void withoutLoadItIsThePlainSpan() {
        for (double length : new double[] {9.97, 10.05, 12}) {
            LoadedSpan s = span(1, 6, 0.3 * length, 0.7 * length, 0);
            assertThat(s.solve()).isTrue();
            SpanFinder plain = new SpanFinder(LoadElongation.linear(EA), 6, 10, 1);
            assertThat(plain.find(SpanFinder.Known.UNSTRETCHED_LENGTH, length)).isTrue();
            assertThat(s.horizontal).isCloseTo(plain.h, within(1e-7 * plain.h));
            assertThat(s.vertical).isCloseTo(plain.v, within(1e-7 * plain.h));
        }
    }

    @Test
    void aLoadAtASupportLeavesTheCableAlone() {
        LoadedSpan plain = span(0, 6, 4, 6.05, 0);
        assertThat(plain.solve()).isTrue();
        LoadedSpan at = span(0, 6, 0, 10.05, 500);
        assertThat(at.solve()).isTrue();
        assertThat(at.horizontal).isCloseTo(plain.horizontal, within(1e-6 * plain.horizontal));
        assertThat(at.vertical + 500).isCloseTo(plain.vertical, within(1e-6 * plain.horizontal));
        assertThat(at.drop()).isZero();
    }

    @Test
    void fromTheOtherSideItIsTheMirrorImage() {
        LoadedSpan one = span(2, 6, 4, 6.3, 900);
        LoadedSpan other = span(-2, 6, 6.3, 4, 900);
        assertThat(one.solve()).isTrue();
        assertThat(other.solve()).isTrue();
        assertThat(other.horizontal).isCloseTo(one.horizontal, within(1e-8 * one.horizontal));
        assertThat(other.drop()).isCloseTo(one.drop() + 2, within(1e-8));
        double end = one.vertical + 6 * 10.3 + 900;
        assertThat(other.vertical).isCloseTo(-end, within(1e-8 * one.horizontal));
    }

    @Test
    void aNeighbouringCaseIsAGoodStart() {
        LoadedSpan cold = span(1, 6, 4, 6.1, 2000);
        assertThat(cold.solve()).isTrue();
        int steps = cold.iterations;
        cold.load = 2010;
        assertThat(cold.solveFrom()).isTrue();
        assertThat(cold.iterations).isLessThanOrEqualTo(steps).isBetween(2, 4);
        LoadedSpan anew = span(1, 6, 4, 6.1, 2010);
        assertThat(anew.solve()).isTrue();
        assertThat(cold.horizontal).isCloseTo(anew.horizontal, within(1e-8 * anew.horizontal));
    }

    @Test
    void fromNowhereNothingIsFound() {
        LoadedSpan s = span(1, 6, 4, 6.1, 2000);
        s.horizontal = Double.NaN;
        assertThat(s.solveFrom()).isFalse();
    }

    @Test
    void moreLoadHangsLowerAndPullsMore() {
        double drop = 0;
        double horizontal = 0;
        for (double load = 1; load < 1e5; load *= 3) {
            LoadedSpan s = span(0, 6, 4, 6.05, load);
            assertThat(s.solve()).isTrue();
            assertThat(s.drop()).isGreaterThan(drop);
            assertThat(s.horizontal).isGreaterThan(horizontal);
            drop = s.drop();
            horizontal = s.horizontal;
        }
    }
}
