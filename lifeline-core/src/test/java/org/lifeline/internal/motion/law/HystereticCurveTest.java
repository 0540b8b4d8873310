package org.lifeline.internal.motion.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.absorber.LoadingCurve.Corner;

/** What an absorber remembers. */
class HystereticCurveTest {
    private static final double RIGID = 1e8;

    private static HystereticCurve absorber() {
        return new HystereticCurve(
                LoadingCurve.through(List.of(new Corner(0, 6000), new Corner(1.2, 6000)), 1e5, 2e5), RIGID);
    }

    @Test
    void firstLoadingFollowsTheCurve() {
        HystereticCurve c = absorber();
        assertThat(c.force(0.03)).isCloseTo(3000, within(1e-9));
        assertThat(c.force(0.06)).isCloseTo(6000, within(1e-9));
        assertThat(c.force(0.5)).isCloseTo(6000, within(1e-9));
        assertThat(c.force(1.21)).isCloseTo(8000, within(1e-6));
    }

    @Test
    void whatIsTornStaysOpen() {
        HystereticCurve c = absorber();
        c.force(0.5);
        assertThat(c.permanent()).isCloseTo(0.44, within(1e-12));
        assertThat(c.force(0.47)).isCloseTo(3000, within(1e-6));
        assertThat(c.force(0.44)).isCloseTo(0, within(1e-6));
        assertThat(c.force(0.2)).isZero();
        assertThat(c.force(0.47)).isCloseTo(3000, within(1e-6));
        assertThat(c.force(0.6)).isCloseTo(6000, within(1e-9));
        assertThat(c.permanent()).isCloseTo(0.54, within(1e-12));
    }

    @Test
    void theStopIsElastic() {
        HystereticCurve c = absorber();
        c.force(1.25);
        assertThat(c.force(1.22)).isCloseTo(10000, within(1e-6));
        assertThat(c.force(1.2)).isCloseTo(6000, within(1e-6));
        assertThat(c.force(1.17)).isCloseTo(3000, within(1e-6));
        assertThat(c.permanent()).isCloseTo(1.14, within(1e-12));
    }

    @Test
    void aSpringForgetsEverything() {
        HystereticCurve c = new HystereticCurve(LoadingCurve.spring(5e4), RIGID);
        c.force(0.3);
        assertThat(c.force(0.1)).isCloseTo(5000, within(1e-9));
        assertThat(c.force(-0.1)).isZero();
        assertThat(c.permanent()).isZero();
    }

    /** Rigid starts and stops become steep, and nothing becomes infinite. */
    @Test
    void rigidPartsAreSteep() {
        HystereticCurve c = new HystereticCurve(
                LoadingCurve.through(
                        List.of(new Corner(0, 4000), new Corner(0.5, 4000)),
                        Double.POSITIVE_INFINITY,
                        Double.POSITIVE_INFINITY),
                RIGID);
        assertThat(c.force(2e-5)).isCloseTo(2000, within(1e-6));
        assertThat(c.force(0.3)).isCloseTo(4000, within(1e-9));
        assertThat(c.force(0.5 + 1e-5)).isCloseTo(5000, within(1e-3));
        assertThat(c.steepest()).isEqualTo(RIGID);
    }

    /**
     * Pieces that are steeper than the step can follow are as steep as that, loading as unloading: else a link would give
     * back more than it took.
     */
    @Test
    void piecesTooSteepAreLimitedOnBothWays() {
        HystereticCurve c = new HystereticCurve(
                LoadingCurve.through(
                        List.of(new Corner(0, 0), new Corner(0.02, 10000), new Corner(0.7, 10000)), 5e5, 5e5),
                1e5);
        assertThat(c.steepest()).isEqualTo(1e5);
        assertThat(c.force(0.05)).isCloseTo(5000, within(1e-6));
        assertThat(c.force(0.04)).isCloseTo(4000, within(1e-6));
        assertThat(c.force(0.1)).isCloseTo(10000, within(1e-6));
        assertThat(c.force(0.7)).isCloseTo(10000, within(1e-6));
        assertThat(c.force(0.65)).isCloseTo(5000, within(1e-6));
        assertThat(c.end()).isCloseTo(0.78, within(1e-12));
        assertThat(HystereticCurve.stiffest(LoadingCurve.spring(3e4))).isEqualTo(3e4);
    }

    /** No cycle gives back more than it took: property over random histories. */
    @Test
    void noHistoryGivesWorkBack() {
        long seed = 20261125;
        Random random = new Random(seed);
        for (int k = 0; k < 200; k++) {
            double f1 = 1000 + 4000 * random.nextDouble();
            double f2 = f1 * (1 + 2 * random.nextDouble());
            HystereticCurve c = new HystereticCurve(
                    LoadingCurve.through(
                            List.of(
                                    new Corner(0, 0),
                                    new Corner(0.05 + 0.3 * random.nextDouble(), f1),
                                    new Corner(0.5, f2)),
                            Double.POSITIVE_INFINITY,
                            1e4 + 1e6 * random.nextDouble()),
                    RIGID);
            double x = 0;
            double work = 0;
            double force = 0;
            for (int i = 0; i < 400; i++) {
                double to = i == 399 ? 0 : 0.7 * random.nextDouble();
                int parts = 200;
                for (int p = 1; p <= parts; p++) {
                    double y = x + (to - x) * p / parts;
                    double f = c.force(y);
                    work += 0.5 * (f + force) * (to - x) / parts;
                    force = f;
                }
                x = to;
            }
            assertThat(work).as("seed %d, case %d", seed, k).isGreaterThan(-1);
        }
    }

    /** The lines that the in-line element walks along are those of the curve. */
    @Test
    void linesAgreeWithForces() {
        HystereticCurve c = absorber();
        c.force(0.3);
        for (double y : new double[] {0.25, 0.3, 0.31, 0.9, 1.2, 1.3}) {
            int line = c.lineAt(y);
            double onLine = c.forceOn(line, y);
            HystereticCurve same = absorber();
            same.force(0.3);
            assertThat(onLine).as("at %s", y).isCloseTo(same.force(y), within(1e-6));
        }
        assertThat(absorber().extensionFor(3000)).isCloseTo(0.03, within(1e-12));
        assertThat(absorber().extensionFor(9000)).isCloseTo(1.215, within(1e-12));
    }
}
