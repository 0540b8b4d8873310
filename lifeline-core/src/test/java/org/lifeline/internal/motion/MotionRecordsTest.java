package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.model.Passage;

/** Histories, peaks and states of one motion agree with each other. */
class MotionRecordsTest {
    private static final Motion MOTION = run();

    private static Motion run() {
        Motion motion = new Motion(
                MotionCases.setup(MotionCases.two(Passage.friction(0.1)), 4, true),
                0.4,
                1,
                new Motion.Sampling(1.2, 1e-3));
        motion.run(1.2);
        return motion;
    }

    private static double largest(double[] values) {
        double most = Double.NEGATIVE_INFINITY;
        for (double each : values) {
            most = Math.max(most, each);
        }
        return most;
    }

    @Test
    void samplesStandAtEvenTimesFromTheStartOfTheFall() {
        double[] t = MOTION.history().times();
        assertThat(t).hasSize(MOTION.history().samples());
        assertThat(t[0]).isZero();
        for (int i = 1; i < t.length; i++) {
            assertThat(t[i] - t[i - 1]).isBetween(0.0, 1.6e-3);
        }
        assertThat(t[t.length - 1]).isCloseTo(1.2, within(2e-3));
        assertThat(MOTION.catchTime()).isCloseTo(Math.sqrt(2 / MotionCases.G), within(1e-9));
    }

    /** Peaks are taken at every step, so no sample is beyond them, and the largest one is near. */
    @Test
    void noSampleIsBeyondAPeak() {
        PeakValues peaks = MOTION.whole();
        double force = largest(MOTION.history().body(0, 0));
        assertThat(force).isLessThanOrEqualTo(peaks.force[0]);
        assertThat(force).isGreaterThan(0.995 * peaks.force[0]);
        for (int i = 0; i < 3; i++) {
            assertThat(largest(MOTION.history().support(i, 0))).isLessThanOrEqualTo(peaks.supportTension[2 * i]);
            assertThat(largest(MOTION.history().support(i, 1))).isLessThanOrEqualTo(peaks.supportTension[2 * i + 1]);
            assertThat(peaks.supportTension[2 * i]).isLessThanOrEqualTo(peaks.tension);
        }
        double[] z = MOTION.history().body(0, 4);
        double low = Double.POSITIVE_INFINITY;
        for (double each : z) {
            low = Math.min(low, each);
        }
        assertThat(low).isGreaterThanOrEqualTo(peaks.lowest[0]);
        assertThat(low).isCloseTo(peaks.lowest[0], within(1e-3));
    }

    /** Behind the filter forces are smaller or equal, but for its overshoot of 4.3 %. */
    @Test
    void filteredPeaksAreSmallerButForTheOvershoot() {
        PeakValues peaks = MOTION.firstCatch();
        double over = 1 + Math.exp(-Math.PI);
        assertThat(peaks.filteredTension).isPositive().isLessThanOrEqualTo(over * peaks.tension);
        assertThat(peaks.filteredForce[0]).isPositive().isLessThanOrEqualTo(over * peaks.force[0]);
        for (int i = 0; i < 3; i++) {
            assertThat(peaks.filteredSupport[i]).isPositive().isLessThanOrEqualTo(over * peaks.support[i]);
        }
    }

    /** Force and extension belong together on a plain lanyard: F = k x. */
    @Test
    void forceAndExtensionBelongTogether() {
        double[] force = MOTION.history().body(0, 0);
        double[] extension = MOTION.history().body(0, 1);
        for (int i = 0; i < force.length; i++) {
            assertThat(force[i]).isCloseTo(MotionCases.LANYARD * extension[i], within(1e-6 + 1e-9 * force[i]));
        }
        assertThat(MOTION.whole().force[0]).isCloseTo(MotionCases.LANYARD * MOTION.whole().extension[0], within(1e-3));
    }

    /** The state at the lowest point lies in the first catch, and its parts are in the order of the line. */
    @Test
    void theLowestStateIsThatOfTheLowestPoint() {
        MotionState lowest = MOTION.lowest();
        assertThat(lowest.time()).isCloseTo(MOTION.firstCatch().lowestTime[0], within(2e-3));
        assertThat(lowest.body(0, 2)).isCloseTo(MOTION.firstCatch().lowest[0], within(1e-4));
        assertThat(lowest.supportNode(0)).isZero();
        assertThat(lowest.attachmentNode(0)).isBetween(1, lowest.supportNode(1) - 1);
        assertThat(lowest.supportNode(2)).isGreaterThan(lowest.supportNode(1));
        assertThat(lowest.position(lowest.supportNode(1), 0)).isCloseTo(MotionCases.SPAN, within(1e-12));
        double length = 0;
        for (int j = 0; j < lowest.supportNode(2); j++) {
            length += lowest.length(j);
            assertThat(lowest.tension(j)).isNotNegative();
        }
        assertThat(length)
                .isCloseTo(2 * MotionCases.SPAN / (1 + MotionCases.PRETENSION / MotionCases.EA), within(0.01));
        assertThat(lowest.inline(0)).isZero();
        assertThat(MOTION.present().time()).isCloseTo(MOTION.time(), within(1e-12));
    }

    /** Kinetic energy of the worker, in the account, is that of free fall at the catch: m g h. */
    @Test
    void theAccountStartsWithTheEnergyOfTheFreeFall() {
        assertThat(MOTION.startEnergy(MotionState.Energy.WORKER_MOTION))
                .isCloseTo(100 * MotionCases.G * 1, within(0.02 * 100 * MotionCases.G));
        assertThat(MOTION.energyDrift()).isLessThan(1e-3 * 100 * MotionCases.G * MOTION.fallDistance());
        double[] weight = MOTION.history().energy(MotionState.Energy.WORKER_WEIGHT);
        double[] z = MOTION.history().body(0, 4);
        for (int i = 0; i < z.length; i += 50) {
            assertThat(weight[i]).isCloseTo(100 * MotionCases.G * z[i], within(1e-6 * Math.abs(weight[i])));
        }
    }
}
