package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Passage;

/** The course of a motion: when it begins, when the first catch is over, who counts in it, and what is kept of it. */
class MotionCourseTest {
    private static final Motion.Sampling SAMPLING = new Motion.Sampling(4, 0.01);

    /** Two who fall at given times by given free falls, at 3 m and 7 m of a span of 10 m. */
    private static Motion motion(double[] starts, double[] falls, boolean secondFirst) {
        LineModel model = MotionCases.single();
        MotionSetup setup = new MotionSetup(model, 5e-4);
        setup.attach(0, model.pointAtStation(0, 3), true, List.of(MotionCases.person(starts[0], falls[0], true)));
        setup.attach(
                0, model.pointAtStation(0, 7), true, List.of(MotionCases.person(starts[1], falls[1], secondFirst)));
        return new Motion(setup, 1, 1, SAMPLING);
    }

    private static double catchTime(double start, double fall) {
        return start + Math.sqrt(2 * fall / MotionCases.G);
    }

    @Test
    void itBeginsWhenTheFirstSubsystemComesTaut() {
        assertThat(motion(new double[] {0, 0.5}, new double[] {2, 0.1}, false).catchTime())
                .isCloseTo(Math.min(catchTime(0, 2), catchTime(0.5, 0.1)), within(1e-12));
        Motion early = motion(new double[] {0, 0.5}, new double[] {4, 0.1}, false);
        assertThat(early.catchTime()).isCloseTo(catchTime(0.5, 0.1), within(1e-12));
        assertThat(early.time()).isEqualTo(early.catchTime());
        assertThat(early.startElevation(0))
                .isCloseTo(10 - MotionCases.TAUT + 4, within(0.2))
                .isEqualTo(early.system().bodies[0].startZ);
        LineModel model = MotionCases.single();
        LineModel.Load load = model.hook(0, 4, true);
        model.hang(load, 100 * MotionCases.G);
        MotionSetup hanging = new MotionSetup(model, 5e-4);
        hanging.attach(
                0,
                model.position(load),
                true,
                List.of(new MotionSetup.Person(
                        100, MotionCases.person(0, 0, true).curve(), MotionCases.TAUT, MotionSetup.Timing.hanging())));
        assertThat(new Motion(hanging, 1, 1, SAMPLING).catchTime())
                .as("nobody falls")
                .isZero();
    }

    /** The catch is over when who fell has come to rest, risen, and is slack or falls again; a limit ends it before. */
    @Test
    void theFirstCatchEndsWithTheRebound() {
        Motion m = motion(new double[] {0, 9}, new double[] {1, 1}, false);
        assertThat(m.runFirstCatch(m.catchTime() + 0.01)).isFalse();
        assertThat(m.firstCatchOver()).isFalse();
        assertThat(m.time()).isBetween(m.catchTime() + 0.01, m.catchTime() + 0.011);
        assertThat(m.whole()).isSameAs(m.firstCatch());
        assertThat(m.runFirstCatch(4)).isTrue();
        assertThat(m.firstCatchOver()).isTrue();
        FallingBody b = m.system().bodies[0];
        assertThat(b.force == 0 || b.vz < 0).isTrue();
        PeakValues peaks = m.firstCatch();
        assertThat(peaks.forceTime[0]).isBetween(m.catchTime(), m.time());
        assertThat(b.z).as("it has risen").isGreaterThan(peaks.lowest[0]);
        assertThat(m.lowest().time()).isCloseTo(peaks.lowestTime[0], within(1e-3));
        double lowest = peaks.lowest[0];
        double end = m.time();
        assertThat(m.fallDistance()).isCloseTo(m.startElevation(0) - lowest, within(1e-12));
        m.run(end + 1);
        assertThat(m.firstCatch().lowest[0])
                .as("what comes later is not of the first catch")
                .isEqualTo(lowest);
        assertThat(m.whole()).isNotSameAs(m.firstCatch());
        assertThat(m.whole().force[0]).isGreaterThanOrEqualTo(peaks.force[0]);
        assertThat(m.runFirstCatch(4)).isTrue();
        assertThat(m.time()).as("it is over already").isLessThan(end + 1.001);
    }

    /** One who falls later changes the peaks of the whole motion and none of the first catch. */
    @Test
    void onlyThoseWhoFallFirstCount() {
        Motion m = motion(new double[] {0, 1.2}, new double[] {0.5, 3}, false);
        m.runFirstCatch(1.2);
        assertThat(m.firstCatchOver()).isTrue();
        m.run(3);
        PeakValues whole = m.whole();
        PeakValues first = m.firstCatch();
        assertThat(whole.force[1]).as("the later fall is longer").isGreaterThan(1.2 * first.force[0]);
        assertThat(first.force[1]).isZero();
        assertThat(m.forceOf(whole)).isEqualTo(whole.force[0]);
        assertThat(m.filteredForceOf(whole)).isEqualTo(whole.filteredForce[0]).isPositive();
        assertThat(m.lowestOf(whole)).isEqualTo(whole.lowest[0]);
        assertThat(whole.lowest[1]).isLessThan(whole.lowest[0]);
        assertThat(whole.tension).isGreaterThan(first.tension);
        assertThat(whole.filteredTension).isGreaterThan(first.filteredTension);
        assertThat(m.fallDistance()).isCloseTo(m.startElevation(0) - first.lowest[0], within(1e-12));
        assertThat(m.firstFallers().toArray()).containsExactly(0);
        Motion both = motion(new double[] {0, 0}, new double[] {0.5, 3}, true);
        both.runFirstCatch(4);
        assertThat(both.firstFallers().toArray()).containsExactly(0, 1);
        PeakValues peaks = both.firstCatch();
        assertThat(both.forceOf(peaks)).isEqualTo(Math.max(peaks.force[0], peaks.force[1]));
        assertThat(both.lowestOf(peaks)).isEqualTo(Math.min(peaks.lowest[0], peaks.lowest[1]));
        double longest = IntStream.range(0, 2)
                .mapToDouble(k -> both.startElevation(k) - peaks.lowest[k])
                .max()
                .orElseThrow();
        assertThat(both.fallDistance()).isEqualTo(longest);
    }

    /** Of two who fall first, one after the other, the line counts as lowest at the turn at which it hangs lower. */
    @Test
    void ofStaggeredFallsTheLowerLineCounts() {
        for (boolean harderFirst : new boolean[] {true, false}) {
            double[] falls = harderFirst ? new double[] {2.5, 0.05} : new double[] {0.05, 2.5};
            Motion m = motion(new double[] {0, 1.5}, falls, true);
            m.runFirstCatch(4);
            assertThat(m.firstCatchOver()).isTrue();
            PeakValues p = m.firstCatch();
            boolean laterHangsLower = p.lineLowest[1] < p.lineLowest[0];
            assertThat(laterHangsLower).isEqualTo(!harderFirst);
            assertThat(m.lowest().time() > 1.5).as("turn of the later one").isEqualTo(laterHangsLower);
        }
    }

    /** Nobody has come to rest when the run ends: its end stands for the lowest point. */
    @Test
    void aRunThatEndsBeforeTheTurnKeepsItsEnd() {
        Motion m = motion(new double[] {0, 9}, new double[] {1, 1}, false);
        m.run(m.catchTime() + 0.02);
        assertThat(m.lowest().time()).isEqualTo(m.time());
        assertThat(m.lowest().body(0, 2)).isEqualTo(m.system().bodies[0].z);
        assertThat(m.present().body(0, 2)).isEqualTo(m.system().bodies[0].z);
        double[] energies = new double[MotionState.Energy.PARTS];
        m.system().remember();
        m.system().energies(energies);
        for (int part = 0; part < energies.length; part++) {
            assertThat(m.present().energy(part)).isEqualTo(energies[part]);
            assertThat(m.lowest().energy(part)).isEqualTo(energies[part]);
        }
    }

    /** What a run did, and what it would do: steps times nodes to the end of a duration. */
    @Test
    void stepsAndNodesAreCounted() {
        Motion m = motion(new double[] {0, 9}, new double[] {1, 1}, false);
        m.step();
        assertThat(m.counts().steps()).isEqualTo(1);
        double step = m.stepLength();
        assertThat(step).isCloseTo(m.time() - m.catchTime(), within(1e-15)).isPositive();
        double nodes = m.counts().nodes();
        assertThat(m.estimatedWork(3)).isCloseTo((3 - m.catchTime()) / step * nodes, within(1e-6));
        m.run(m.catchTime() + 0.05);
        assertThat(m.counts().nodeSteps())
                .isEqualTo(m.counts().steps() * m.counts().nodes());
        assertThat(m.counts().remeshings()).isZero();
        assertThat(m.dampingTime()).isEqualTo(m.system().chain.dampingTime).isGreaterThanOrEqualTo(5e-4);
    }

    /** The largest deviation of the account is that of its samples. */
    @Test
    void theDriftIsThatOfTheSamples() {
        LineModel model = MotionCases.two(Passage.friction(0.1));
        Motion m = new Motion(MotionCases.setup(model, 4, true), 1, 1, SAMPLING);
        m.run(1.5);
        int samples = m.history().samples();
        double start = 0;
        for (int part = 0; part < MotionState.Energy.PARTS; part++) {
            start += m.startEnergy(part);
        }
        double most = 0;
        double[] t = m.history().times();
        for (int i = 0; i < samples; i++) {
            if (t[i] >= m.catchTime()) {
                double sum = 0;
                for (int part = 0; part < MotionState.Energy.PARTS; part++) {
                    sum += m.history().energy(part)[i];
                }
                most = Math.max(most, Math.abs(sum - start));
            }
        }
        assertThat(m.energyDrift()).isPositive().isCloseTo(most, within(1e-9));
        assertThat(samples).as("one sample every 10 ms").isBetween(140, 155);
        assertThat(t[samples - 1]).isGreaterThan(1.48);
    }
}
