package org.lifeline.internal.catenary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.model.cable.LoadElongation;

/**
 * Unloaded spans of every kind: what was asked for is met, and the span fits between its supports, by quadrature that
 * shares nothing with the finder.
 */
class SpanFinderTest {
    private static final int CASES =
            Integer.getInteger("lifeline.cases", Boolean.getBoolean("lifeline.long") ? 50_000 : 3000);

    /** A random span: run 0.5 to 500 m, slope to 60°, EA 1e4 to 1e9 N, slack from −2 % to +30 %, weight down to none. */
    private static final class Case {
        final LoadElongation law;
        final double w;
        final double run;
        final double rise;
        final double chord;
        final double slack;
        final String name;

        Case(long seed) {
            SplittableRandom r = new SplittableRandom(seed);
            run = log(r, 0.5, 500);
            rise = run * Math.tan(Math.toRadians(r.nextDouble(-60, 60)));
            chord = Math.hypot(run, rise);
            double stiffness = log(r, 1e4, 1e9);
            law = r.nextInt(4) == 0 ? bent(r, stiffness) : LoadElongation.linear(stiffness);
            slack = r.nextInt(3) == 0 ? r.nextDouble(-0.02, 0) : log(r, 1e-5, 0.3);
            boolean weightless = slack < 0 && r.nextInt(5) == 0;
            w = weightless ? 0 : stiffness * log(r, 1e-9, 1e-6);
            name = "seed " + seed + ": run " + run + ", rise " + rise + ", slack " + slack + ", w " + w + ", EA "
                    + stiffness + (law.isLinear() ? "" : ", bent law");
        }

        SpanFinder finder() {
            return new SpanFinder(law, w, run, rise);
        }

        CatenaryQuadrature check(SpanFinder f) {
            return new CatenaryQuadrature(law, f.h, f.v, f.s, w);
        }

        /** The span of its length: the start of every round trip. */
        SpanFinder byLength() {
            SpanFinder f = finder();
            boolean found = f.find(SpanFinder.Known.UNSTRETCHED_LENGTH, chord * (1 + slack));
            assertThat(found).as(name).isTrue();
            return f;
        }
    }

    private static double log(SplittableRandom r, double low, double high) {
        return Math.exp(r.nextDouble(Math.log(low), Math.log(high)));
    }

    private static LoadElongation bent(SplittableRandom r, double stiffness) {
        double strain = log(r, 1e-4, 1e-2);
        double soft = r.nextDouble(0.2, 1.5);
        return LoadElongation.curve(List.of(
                new LoadElongation.Corner(0, 0),
                new LoadElongation.Corner(strain, soft * stiffness * strain),
                new LoadElongation.Corner(3 * strain, (soft + 2) * stiffness * strain)));
    }

    private static void fits(Case each, SpanFinder f) {
        CatenaryQuadrature q = each.check(f);
        assertThat(q.run()).as(each.name).isCloseTo(each.run, within(1e-12 * each.chord));
        assertThat(q.rise()).as(each.name).isCloseTo(each.rise, within(1e-12 * each.chord));
    }

    @Test
    void ofKnownLength() {
        for (long seed = 1; seed <= CASES; seed++) {
            Case each = new Case(seed);
            SpanFinder f = each.byLength();
            assertThat(f.s).as(each.name).isCloseTo(each.chord * (1 + each.slack), within(1e-14 * each.chord));
            fits(each, f);
        }
    }

    @Test
    void ofKnownHorizontalTension() {
        for (long seed = 1; seed <= CASES; seed++) {
            Case each = new Case(seed);
            SpanFinder from = each.byLength();
            SpanFinder f = each.finder();
            assertThat(f.find(SpanFinder.Known.HORIZONTAL_TENSION, from.h))
                    .as(each.name)
                    .isTrue();
            assertThat(f.h).as(each.name).isCloseTo(from.h, within(1e-14 * from.h));
            fits(each, f);
            // One horizontal tension, one span: this is the same one.
            assertThat(f.s).as(each.name).isCloseTo(from.s, within(1e-11 * from.s));
        }
    }

    @Test
    void ofKnownTensionAtTheFirstSupport() {
        for (long seed = 1; seed <= CASES; seed++) {
            Case each = new Case(seed);
            SpanFinder from = each.byLength();
            double tension = Math.hypot(from.h, from.v);
            SpanFinder f = each.finder();
            assertThat(f.find(SpanFinder.Known.START_TENSION, tension))
                    .as(each.name)
                    .isTrue();
            assertThat(Math.hypot(f.h, f.v)).as(each.name).isCloseTo(tension, within(1e-13 * tension));
            fits(each, f);
            // Of the two spans that hang with this tension the finder takes the tauter one.
            assertThat(f.h).as(each.name).isGreaterThan(from.h * (1 - 1e-6));
        }
    }

    @Test
    void ofKnownSag() {
        int tried = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            Case each = new Case(seed);
            if (each.w == 0) {
                continue;
            }
            tried++;
            SpanFinder from = each.byLength();
            double at = (from.h * each.rise / each.run - from.v) / each.w;
            CatenaryQuadrature part = new CatenaryQuadrature(each.law, from.h, from.v, at, each.w);
            double sag = part.run() * each.rise / each.run - part.rise();
            SpanFinder f = each.finder();
            assertThat(f.find(SpanFinder.Known.SAG, sag)).as(each.name).isTrue();
            fits(each, f);
            // Where the cable runs parallel to the chord its sag is largest; there and nowhere else it is the one asked
            // for.
            double middle = (f.h * each.rise / each.run - f.v) / each.w;
            assertThat(sagAt(each, f, middle)).as(each.name).isCloseTo(sag, within(2e-13 * each.chord));
            assertThat(sagAt(each, f, 0.9 * middle)).as(each.name).isLessThan(sag);
            assertThat(sagAt(each, f, middle + 0.1 * (f.s - middle)))
                    .as(each.name)
                    .isLessThan(sag);
        }
        assertThat(tried).isGreaterThan(CASES / 2);
    }

    private static double sagAt(Case each, SpanFinder f, double s) {
        CatenaryQuadrature q = new CatenaryQuadrature(each.law, f.h, f.v, s, each.w);
        return q.run() * each.rise / each.run - q.rise();
    }

    @Test
    void theLeastTensionIsTheLeastOverAllLengths() {
        for (long seed = 1; seed <= Math.min(CASES, 100); seed++) {
            Case each = new Case(seed);
            if (each.w == 0) {
                assertThat(each.finder().leastStartTension()).isZero();
                continue;
            }
            double least = each.finder().leastStartTension();
            double found = Double.POSITIVE_INFINITY;
            for (double slack = 1e-4; slack < 3; slack *= 1.02) {
                SpanFinder f = each.finder();
                if (f.find(SpanFinder.Known.UNSTRETCHED_LENGTH, each.chord * (1 + slack))) {
                    found = Math.min(found, Math.hypot(f.h, f.v));
                }
            }
            // The least is that of a cable that does not stretch; strain makes it smaller by its own share.
            double strain = each.law.strain(3 * least);
            assertThat(found).as(each.name).isBetween(least * (1 - strain - 1e-3), least * (1 + 1e-3));
        }
    }

    @Test
    void aTensionBelowTheLeastIsRefused() {
        for (long seed = 1; seed <= Math.min(CASES, 300); seed++) {
            Case each = new Case(seed);
            double least = each.finder().leastStartTension();
            if (least > 0) {
                double strain = each.law.strain(3 * least);
                assertThat(each.finder().find(SpanFinder.Known.START_TENSION, least * (1 - 2 * strain - 1e-9)))
                        .as(each.name)
                        .isFalse();
            }
        }
    }

    @Test
    void aTensionJustAboveTheLeastIsFound() {
        for (long seed = 1; seed <= Math.min(CASES, 300); seed++) {
            Case each = new Case(seed);
            double least = each.finder().leastStartTension();
            for (double above : new double[] {1e-2, 1e-4, 1e-6}) {
                if (least > 0) {
                    SpanFinder f = each.finder();
                    assertThat(f.find(SpanFinder.Known.START_TENSION, least * (1 + above)))
                            .as(each.name + " above " + above)
                            .isTrue();
                    fits(each, f);
                }
            }
        }
    }

    @Test
    void whatCannotHangIsRefused() {
        LoadElongation law = LoadElongation.linear(1e6);
        SpanFinder weightless = new SpanFinder(law, 0, 10, 0);
        assertThat(weightless.find(SpanFinder.Known.SAG, 0.1)).isFalse();
        assertThat(weightless.find(SpanFinder.Known.UNSTRETCHED_LENGTH, 10)).isFalse();
        assertThat(weightless.find(SpanFinder.Known.UNSTRETCHED_LENGTH, 10.5)).isFalse();
        assertThat(weightless.find(SpanFinder.Known.UNSTRETCHED_LENGTH, 9.9)).isTrue();
        SpanFinder heavy = new SpanFinder(law, 100, 10, 0);
        assertThat(heavy.find(SpanFinder.Known.SAG, 1e12)).isFalse();
        assertThat(heavy.find(SpanFinder.Known.UNSTRETCHED_LENGTH, 1e13)).isFalse();
        assertThat(heavy.find(SpanFinder.Known.HORIZONTAL_TENSION, 1)).isFalse();
        assertThat(heavy.find(SpanFinder.Known.HORIZONTAL_TENSION, 1000)).isTrue();
    }

    @Test
    void aWeightlessSpanOfKnownTensionIsAStretchedBar() {
        SpanFinder f = new SpanFinder(LoadElongation.linear(2e6), 0, 12, -5);
        assertThat(f.find(SpanFinder.Known.START_TENSION, 1300)).isTrue();
        assertThat(f.h).isCloseTo(1200, within(1e-10));
        assertThat(f.v).isCloseTo(-500, within(1e-10));
        assertThat(f.s).isCloseTo(13 / (1 + 1300 / 2e6), within(1e-13));
        SpanFinder g = new SpanFinder(LoadElongation.linear(2e6), 0, 12, -5);
        assertThat(g.find(SpanFinder.Known.HORIZONTAL_TENSION, 1200)).isTrue();
        assertThat(g.s).isCloseTo(f.s, within(1e-13));
    }

    @Test
    void mirrorImages() {
        for (long seed = 1; seed <= Math.min(CASES, 500); seed++) {
            Case each = new Case(seed);
            SpanFinder f = each.byLength();
            SpanFinder m = new SpanFinder(each.law, each.w, each.run, -each.rise);
            assertThat(m.find(SpanFinder.Known.UNSTRETCHED_LENGTH, f.s)).isTrue();
            double scale = Math.hypot(f.h, f.v) + each.w * f.s;
            // A taut stiff span knows its force from its length no better than EA times the rounding of the length.
            double allowed = 1e-11 * scale + 4e-15 / each.law.compliance(0);
            assertThat(m.h).as(each.name).isCloseTo(f.h, within(allowed));
            assertThat(m.v).as(each.name).isCloseTo(-(f.v + each.w * f.s), within(allowed * 2));
        }
    }
}
