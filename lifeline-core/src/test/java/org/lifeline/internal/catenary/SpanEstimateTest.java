package org.lifeline.internal.catenary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.catenary.SpanFinder.Known;
import org.lifeline.model.cable.LoadElongation;

/**
 * The first estimates of unloaded spans where they are exact: a cable without stretch, a cable without weight, and a taut
 * one, whose parabola is off by the square of λ = w l/2H. What they say is checked by quadrature along the cable.
 */
class SpanEstimateTest {
    private static final double RUN = 10;
    private static final double WEIGHT = 5;

    /** EA at which forces of some kN stretch nothing [N]. */
    private static final LoadElongation STIFF = LoadElongation.linear(1e16);

    private static final double[] RISES = {-6, 0, 3, 12};

    private static SpanEstimate of(LoadElongation law, double weight, double rise) {
        return new SpanEstimate(law, weight, RUN, rise);
    }

    private static double tension(SpanEstimate e) {
        return Math.hypot(e.h, e.v);
    }

    /** Sag below the chord where the cable runs parallel to it [m]. */
    private static double sag(LoadElongation law, SpanEstimate e, double weight, double rise) {
        double at = (e.h * rise / RUN - e.v) / weight;
        CatenaryQuadrature part = new CatenaryQuadrature(law, e.h, e.v, at, weight);
        return part.run() * rise / RUN - part.rise();
    }

    private static void fits(LoadElongation law, SpanEstimate e, double weight, double rise, double allowed) {
        CatenaryQuadrature q = new CatenaryQuadrature(law, e.h, e.v, e.s, weight);
        assertThat(q.run()).as("run at rise %s", rise).isCloseTo(RUN, within(allowed));
        assertThat(q.rise()).as("rise").isCloseTo(rise, within(allowed));
    }

    @Test
    void withoutStretchTheEstimateIsTheCatenary() {
        for (double rise : RISES) {
            for (double lambda : new double[] {2e-5, 0.01, 0.3, 1, 4}) {
                double h = WEIGHT * RUN / (2 * lambda);
                SpanEstimate e = of(STIFF, WEIGHT, rise);
                assertThat(e.of(Known.HORIZONTAL_TENSION, h)).isTrue();
                assertThat(e.h).isEqualTo(h);
                fits(STIFF, e, WEIGHT, rise, 1e-9);
                double sag = sag(STIFF, e, WEIGHT, rise);
                SpanEstimate bySag = of(STIFF, WEIGHT, rise);
                assertThat(bySag.of(Known.SAG, sag)).isTrue();
                // The sag is a difference of two numbers that are larger by 1/λ².
                same(bySag, e, 1e-7 + 1e-15 / (lambda * lambda), "sag, rise " + rise + ", lambda " + lambda);
                SpanEstimate byLength = of(STIFF, WEIGHT, rise);
                if (lambda >= 0.01) {
                    // A flatter one is longer than its chord by less than the rounding of lengths tells.
                    assertThat(byLength.of(Known.UNSTRETCHED_LENGTH, e.s)).isTrue();
                    same(byLength, e, 1e-8, "length, rise " + rise + ", lambda " + lambda);
                    assertThat(byLength.s).isEqualTo(e.s);
                }
                if (lambda < 0.9) {
                    SpanEstimate byTension = of(STIFF, WEIGHT, rise);
                    assertThat(byTension.of(Known.START_TENSION, tension(e))).isTrue();
                    same(byTension, e, 1e-7, "tension, rise " + rise + ", lambda " + lambda);
                }
            }
        }
    }

    private static void same(SpanEstimate have, SpanEstimate want, double share, String what) {
        double scale = tension(want);
        assertThat(have.h).as(what).isCloseTo(want.h, within(share * scale));
        assertThat(have.v).as(what).isCloseTo(want.v, within(share * scale));
        assertThat(have.s).as(what).isCloseTo(want.s, within(share * want.s));
    }

    /** A soft cable that hardly sags: what is left is a straight rope with half its weight at either end. */
    @Test
    void aCableOfHardlyAnyWeightIsStraight() {
        LoadElongation soft = LoadElongation.linear(1e5);
        double light = 1e-7;
        for (double rise : RISES) {
            double chord = Math.hypot(RUN, rise);
            SpanEstimate e = of(soft, light, rise);
            assertThat(e.of(Known.START_TENSION, 1000)).isTrue();
            assertThat(e.h).isCloseTo(1000 * RUN / chord, within(1e-9));
            assertThat(e.s).isCloseTo(chord / 1.01, within(1e-12));
            assertThat(e.v).isCloseTo(e.h * rise / RUN - 0.5 * light * e.s, within(1e-12));
            fits(soft, e, light, rise, 1e-8);
        }
    }

    @Test
    void aTightCableWithoutWeightIsASpring() {
        LoadElongation soft = LoadElongation.linear(1e5);
        for (double rise : RISES) {
            double chord = Math.hypot(RUN, rise);
            SpanEstimate e = of(soft, 0, rise);
            assertThat(e.of(Known.UNSTRETCHED_LENGTH, chord / 1.01)).isTrue();
            assertThat(tension(e)).isCloseTo(1000, within(1e-6));
            fits(soft, e, 0, rise, 1e-9);
            assertThat(e.of(Known.UNSTRETCHED_LENGTH, chord)).as("slack").isFalse();
            assertThat(e.of(Known.SAG, 0.1)).as("nothing makes it sag").isFalse();
            assertThat(e.leastStartTension()).isZero();
        }
    }

    /** A sag far below what λ = 1e-6 gives: the parabola, w l c/8 over it. */
    @Test
    void theSmallestSagsAreThoseOfTheParabola() {
        for (double rise : RISES) {
            double chord = Math.hypot(RUN, rise);
            SpanEstimate e = of(STIFF, WEIGHT, rise);
            double sag = 1e-7 * chord;
            assertThat(e.of(Known.SAG, sag)).isTrue();
            assertThat(e.h).isCloseTo(WEIGHT * RUN * chord / (8 * sag), within(1e-6 * e.h));
            assertThat(e.s * (1 + STIFF.strain(e.h * chord / RUN))).isCloseTo(chord, within(1e-9));
        }
    }

    /** Ends that stand at e^25 to 1 are the limit. */
    @Test
    void spansSteeperThanAnyAreNotEstimated() {
        SpanEstimate e = of(STIFF, WEIGHT, 1);
        double steepest = WEIGHT * RUN / 50;
        assertThat(e.of(Known.HORIZONTAL_TENSION, 1.001 * steepest)).isTrue();
        double sag = sag(STIFF, e, WEIGHT, 1);
        double length = e.s;
        assertThat(e.of(Known.HORIZONTAL_TENSION, 0.999 * steepest)).isFalse();
        assertThat(e.of(Known.SAG, 0.99 * sag)).isTrue();
        assertThat(e.of(Known.SAG, 1.1 * sag)).isFalse();
        assertThat(e.of(Known.UNSTRETCHED_LENGTH, 0.99 * length)).isTrue();
        assertThat(e.of(Known.UNSTRETCHED_LENGTH, 1.1 * length)).isFalse();
    }

    @Test
    void belowTheLeastTensionThereIsNoEstimate() {
        for (double rise : RISES) {
            SpanEstimate e = of(STIFF, WEIGHT, rise);
            double least = e.leastStartTension();
            assertThat(e.of(Known.START_TENSION, 0.9999 * least)).isFalse();
            assertThat(e.of(Known.START_TENSION, 1.0001 * least)).isTrue();
            assertThat(tension(e)).isCloseTo(1.0001 * least, within(1e-7 * least));
        }
    }

    /**
     * A level span hangs at its first support with w l/2 · cosh λ/λ, least where λ tanh λ = 1: λ = 1.19967864, the number of
     * the shortest catenary between two supports.
     */
    @Test
    void theLeastTensionOfALevelSpanIsThatOfTheTextbook() {
        double lambda = 1.1996786402577337;
        double want = WEIGHT * RUN / 2 * Math.cosh(lambda) / lambda;
        assertThat(of(STIFF, WEIGHT, 0).leastStartTension()).isCloseTo(want, within(1e-12 * want));
    }

    /** Each kind of estimate is off by the square of λ = 1 % to 0.1 ‰, at a stretch of 1 % and at none. */
    @Test
    void theParabolaIsOffByTheSquareOfLambda() {
        for (double stiffness : new double[] {1e5, 1e10}) {
            LoadElongation law = LoadElongation.linear(stiffness);
            for (double rise : RISES) {
                double h = 1000 * RUN / Math.hypot(RUN, rise);
                for (double lambda : new double[] {1e-2, 1e-3, 1e-4}) {
                    double weight = 2 * lambda * h / RUN;
                    SpanFinder exact = new SpanFinder(law, weight, RUN, rise);
                    assertThat(exact.find(Known.HORIZONTAL_TENSION, h)).isTrue();
                    SpanEstimate found = of(law, weight, rise);
                    found.h = exact.h;
                    found.v = exact.v;
                    found.s = exact.s;
                    Map<Known, Double> values = Map.of(
                            Known.START_TENSION,
                            tension(found),
                            Known.HORIZONTAL_TENSION,
                            h,
                            Known.SAG,
                            sag(law, found, weight, rise),
                            Known.UNSTRETCHED_LENGTH,
                            exact.s);
                    for (Map.Entry<Known, Double> each : values.entrySet()) {
                        Known known = each.getKey();
                        SpanEstimate e = of(law, weight, rise);
                        assertThat(e.ofTautSpan(known, each.getValue())).isTrue();
                        // The sag of the parabola leaves out that the weight is spread over the stretched length.
                        double reserve = known == Known.SAG ? 1.1 * 1000 / stiffness : 0;
                        same(e, found, reserve + 5 * lambda * lambda + 1e-7, known + ", " + rise + ", " + lambda);
                    }
                }
            }
        }
    }

    /**
     * A stretch of 1 % in a cable that hangs by λ = 0.1 and 0.3: weight and length by its mean tension, which leaves of the
     * stretch a share of the order λ²; a known length says less about the tension, by the order λ.
     */
    @Test
    void stretchIsTakenByTheMeanTension() {
        double strain = 0.01;
        LoadElongation soft = LoadElongation.linear(1000);
        double h = 1000 * strain;
        for (double rise : new double[] {-6, 0, 3}) {
            for (double lambda : new double[] {0.1, 0.3}) {
                double weight = 2 * lambda * h / RUN;
                SpanFinder exact = new SpanFinder(soft, weight, RUN, rise);
                assertThat(exact.find(Known.HORIZONTAL_TENSION, h)).isTrue();
                SpanEstimate found = of(soft, weight, rise);
                found.h = exact.h;
                found.v = exact.v;
                found.s = exact.s;
                Map<Known, Double> values = Map.of(
                        Known.START_TENSION,
                        tension(found),
                        Known.HORIZONTAL_TENSION,
                        h,
                        Known.SAG,
                        sag(soft, found, weight, rise),
                        Known.UNSTRETCHED_LENGTH,
                        exact.s);
                for (Map.Entry<Known, Double> each : values.entrySet()) {
                    Known known = each.getKey();
                    SpanEstimate e = of(soft, weight, rise);
                    assertThat(e.of(known, each.getValue())).isTrue();
                    double share = known == Known.UNSTRETCHED_LENGTH ? 2 * lambda : 0.4 * lambda * lambda + 0.01;
                    same(e, found, share * strain, known + ", rise " + rise + ", lambda " + lambda);
                }
            }
        }
    }

    @Test
    void theParabolaKnowsNoCornersAndNoPush() {
        LoadElongation bent = LoadElongation.curve(List.of(
                new LoadElongation.Corner(0, 0),
                new LoadElongation.Corner(0.001, 100),
                new LoadElongation.Corner(0.002, 1000)));
        assertThat(of(bent, WEIGHT, 0).ofTautSpan(Known.HORIZONTAL_TENSION, 1000))
                .isFalse();
        assertThat(of(STIFF, WEIGHT, 0).ofTautSpan(Known.HORIZONTAL_TENSION, 1000))
                .isTrue();
        assertThat(of(STIFF, WEIGHT, 0).ofTautSpan(Known.HORIZONTAL_TENSION, 0)).isFalse();
        assertThat(of(STIFF, WEIGHT, 0).ofTautSpan(Known.START_TENSION, 10))
                .as("less than half the weight")
                .isFalse();
    }

    /** A cable does not push, and does not sag upwards. */
    @Test
    void whatIsBelowNothingHasNoEstimate() {
        for (Known known : List.of(Known.START_TENSION, Known.SAG)) {
            assertThat(of(STIFF, WEIGHT, 3).of(known, -1e-3)).as("%s", known).isFalse();
        }
        assertThat(of(STIFF, 0, 3).of(Known.START_TENSION, -1)).isFalse();
        assertThat(of(STIFF, 0, 3).of(Known.UNSTRETCHED_LENGTH, 11)).as("slack").isFalse();
    }
}
