package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.motion.law.HystereticCurve;
import org.lifeline.model.absorber.LoadingCurve;

/** A worker who swings aside: force, work and momentum in space, and a subsystem that comes taut, tears and goes slack. */
class FallingBodyInSpaceTest {
    private static final double MASS = 90;
    private static final double TAUT = 2;
    private static final double STIFFNESS = 6000;
    private static final double KICK = 1e-3;

    private static FallingBody body(Joint joint, LoadingCurve curve, double start) {
        MotionSetup.Person person = new MotionSetup.Person(MASS, curve, TAUT, new MotionSetup.Timing(start, 1, true));
        return new FallingBody(person, joint, new HystereticCurve(curve, 1e7), joint.chain.z[joint.node] - 1);
    }

    private static FallingBody body() {
        return body(new FixedJoint(Chains.crooked(1, 5, Chains.G), 2), LoadingCurve.spring(STIFFNESS), 0);
    }

    private static double[] place(FallingBody b) {
        return new double[] {b.x, b.y, b.z};
    }

    private static double[] speed(FallingBody b) {
        return new double[] {b.vx, b.vy, b.vz};
    }

    /** Puts the worker somewhere, seen from the attachment, and lets the subsystem pull. */
    private static void at(FallingBody b, double[] apart) {
        LumpedMassChain c = b.joint.chain;
        b.x = c.x[b.joint.node] + apart[0];
        b.y = c.y[b.joint.node] + apart[1];
        b.z = c.z[b.joint.node] + apart[2];
        b.joint.release();
        b.pull();
    }

    private static double[] direction(SplittableRandom r) {
        double[] d = {r.nextDouble(-0.7, 0.7), r.nextDouble(-0.7, 0.7), -1};
        return Chains.sum(new double[3], 1 / Math.sqrt(Chains.along(d, d)), d);
    }

    /** Newton's second and third law: what pulls the joint slows the worker, wherever he swings. */
    @Test
    void theWorkerIsPulledBackByWhatPullsTheJoint() {
        for (long seed = 1; seed <= 20; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            FallingBody b = body();
            b.release(0, 0, Chains.G);
            double[] d = direction(r);
            at(b, Chains.sum(new double[3], TAUT, d));
            double longer = r.nextDouble(0.1, 1);
            at(b, Chains.sum(new double[3], TAUT + longer, d));
            double[] pull = {b.joint.pullX, b.joint.pullY, b.joint.pullZ};
            assertThat(b.extension).isCloseTo(longer, within(1e-12));
            assertThat(pull)
                    .as("seed %d", seed)
                    .containsExactly(Chains.sum(new double[3], STIFFNESS * longer, d), within(1e-6));
            b.vx = r.nextDouble(-3, 3);
            b.vy = r.nextDouble(-3, 3);
            b.vz = r.nextDouble(-9, 0);
            double[] before = speed(b);
            b.kick(KICK, Chains.G);
            double[] force = Chains.sum(new double[] {0, 0, -MASS * Chains.G}, -1, pull);
            assertThat(speed(b))
                    .as("seed %d", seed)
                    .containsExactly(Chains.sum(before, KICK / MASS, force), within(1e-12));
            assertThat(b.kineticEnergy()).isCloseTo(0.5 * MASS * Chains.along(before, speed(b)), within(1e-9));
            double[] was = place(b);
            b.drift(0.02);
            assertThat(place(b)).containsExactly(Chains.sum(was, 0.02, speed(b)), within(1e-14));
        }
    }

    /** Two workers at one joint: their pulls and the stiffnesses against being turned add up. */
    @Test
    void thePullsOfTwoAddUp() {
        FallingBody one = body();
        FallingBody two = body(one.joint, LoadingCurve.spring(2 * STIFFNESS), 0);
        double[] down = {0, 0, -1};
        double[] aside = {0.6, 0, -0.8};
        for (FallingBody each : List.of(one, two)) {
            each.release(0, 0, Chains.G);
            at(each, Chains.sum(new double[3], TAUT, each == one ? down : aside));
        }
        at(one, new double[] {0, 0, -2.5});
        LumpedMassChain c = one.joint.chain;
        two.x = c.x[2] + 0.6 * 2.25;
        two.y = c.y[2];
        two.z = c.z[2] - 0.8 * 2.25;
        two.pull();
        double first = 0.5 * STIFFNESS;
        double second = 0.25 * 2 * STIFFNESS;
        assertThat(one.joint.pullX).isCloseTo(0.6 * second, within(1e-6));
        assertThat(one.joint.pullZ).isCloseTo(-first - 0.8 * second, within(1e-6));
        assertThat(one.joint.swing).isCloseTo(first / 2.5 + second / 2.25, within(1e-6));
    }

    /** One who has not begun to fall stands, pulls nothing and has no motion, wherever his attachment goes. */
    @Test
    void oneWhoStandsIsNotMoved() {
        FallingBody b = body(new FixedJoint(Chains.crooked(1, 5, Chains.G), 2), LoadingCurve.spring(STIFFNESS), 0.4);
        at(b, new double[] {0, 0, -TAUT});
        at(b, new double[] {0, 0, -3});
        assertThat(b.force).isZero();
        assertThat(b.joint.pullZ).isZero();
        b.vx = 1;
        b.vy = 2;
        b.vz = 3;
        double[] was = place(b);
        b.kick(KICK, Chains.G);
        b.drift(0.1);
        assertThat(place(b)).containsExactly(was);
        assertThat(speed(b)).containsExactly(1, 2, 3);
        assertThat(b.kineticEnergy()).isZero();
        // At the very time of the start he falls, from where he stands.
        b.release(0.4, 0, Chains.G);
        assertThat(b.falling()).isTrue();
        assertThat(b.z).isEqualTo(b.startZ);
        // And only once.
        b.z = -5;
        b.vz = -7;
        b.release(0.6, 0, Chains.G);
        assertThat(b.z).isEqualTo(-5);
        assertThat(b.vz).isEqualTo(-7);
    }

    /** An absorber torn open does not give back its work: drawn out by 0.3 m on a plateau and slack again. */
    @Test
    void theWorkOfAPlateauStays() {
        double plateau = 4000;
        LoadingCurve curve = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, plateau), new LoadingCurve.Corner(1, plateau)), 1e6, 1e6);
        FallingBody b = body(new FixedJoint(Chains.crooked(1, 5, Chains.G), 2), curve, 0);
        b.release(0, 0, Chains.G);
        int steps = 3000;
        double aside = 0.8;
        double down = -0.6;
        for (int k = -50; k <= steps; k++) {
            double d = TAUT + 0.3 * k / steps;
            at(b, new double[] {0, aside * d, down * d});
        }
        assertThat(b.force).isCloseTo(plateau, within(1e-6));
        assertThat(b.joint.pullY).isCloseTo(aside * plateau, within(1e-6));
        // The start rises to the plateau within 4 mm.
        double triangle = 0.5 * plateau * 0.004;
        assertThat(b.work).isCloseTo(plateau * 0.3 - triangle, within(1e-6));
        for (int k = steps; k >= -steps; k--) {
            double d = TAUT + 0.3 * k / steps;
            at(b, new double[] {0, aside * d, down * d});
        }
        assertThat(b.force).isZero();
        assertThat(b.extension).as("slack").isCloseTo(-0.3, within(1e-9));
        assertThat(b.longest).isCloseTo(0.3, within(1e-12));
        assertThat(b.work).as("it gives back what is elastic").isCloseTo(plateau * 0.3 - 2 * triangle, within(1e-6));
        assertThat(b.joint.swing).isZero();
        // Drawn out again it is slack up to what is left open.
        at(b, new double[] {0, aside * (TAUT + 0.29), down * (TAUT + 0.29)});
        assertThat(b.force).isZero();
    }

    /** Above its attachment a worker engages only when the distance is no longer than the subsystem. */
    @Test
    void fromAboveItEngagesOnceItIsNearEnough() {
        FallingBody b = body();
        b.release(0, 0, Chains.G);
        at(b, new double[] {2.1, 0, 0.5});
        assertThat(b.extension).as("above and far: not engaged").isZero();
        at(b, new double[] {1.9, 0, 0.3});
        assertThat(b.extension).as("near enough").isNegative();
        at(b, new double[] {2.3, 0, 0.3});
        assertThat(b.extension).as("from now on it pulls upward as well").isPositive();
        assertThat(b.joint.pullZ).isCloseTo(b.force * 0.3 / Math.hypot(2.3, 0.3), within(1e-9));
        FallingBody level = body();
        level.release(0, 0, Chains.G);
        at(level, new double[] {2.1, 0, 0});
        at(level, new double[] {2.5, 0, 0});
        assertThat(level.force).as("level with it and far: not engaged").isZero();
        at(level, new double[] {2.5, 0, -1e-3});
        at(level, new double[] {2.6, 0, -1e-3});
        assertThat(level.extension).as("below, from the least distance on").isCloseTo(0.1, within(1e-6));
    }

    /** A ring waits until the first subsystem at it is taut, and not before. */
    @Test
    void aTautSubsystemSetsTheRingFree() {
        LumpedMassChain c = Chains.crooked(2, 5, Chains.G);
        SlidingJoint ring = new SlidingJoint(c, 2, 0.02);
        ring.turn();
        FallingBody b = body(ring, LoadingCurve.spring(STIFFNESS), 0);
        b.release(0, 0, Chains.G);
        for (double slack : new double[] {1e-6, 0}) {
            at(b, new double[] {0, 0, -TAUT + slack});
            c.elastic[2] = c.elastic[1] + 5000;
            ring.predict(KICK);
            ring.finish(KICK);
            assertThat(ring.flow == 0).as("slack %s", slack).isEqualTo(slack > 0);
        }
    }

    /** One who hangs has torn his absorber open as far as it is drawn out. */
    @Test
    void oneWhoHangsHasTornItOpen() {
        double plateau = 4000;
        LoadingCurve curve = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 500), new LoadingCurve.Corner(1, plateau + 500)), 1e6, 1e6);
        FallingBody b = body(new FixedJoint(Chains.crooked(1, 5, 0), 2), curve, Double.NEGATIVE_INFINITY);
        b.hang(0.1);
        assertThat(b.force).isCloseTo(500 + 0.1 * plateau, within(1e-6));
        assertThat(b.longest).isEqualTo(0.1);
        at(b, new double[] {0, 0, -TAUT - 0.1});
        assertThat(b.work).as("counted from there").isCloseTo(0, within(1e-9));
        at(b, new double[] {0, 0, -TAUT - 0.1 + 1e-4});
        assertThat(b.force).as("gives back along the line of unloading").isCloseTo(900 - 100, within(1e-6));
        assertThat(b.work).isCloseTo(-0.5 * (900 + 800) * 1e-4, within(1e-9));
        double z = b.z;
        b.release(5, 0, Chains.G);
        assertThat(b.z).as("falls no more").isEqualTo(z);
    }
}
