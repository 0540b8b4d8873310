package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The ring on the cable against momentum and energy of ring and cable. */
class SlidingJointTest {
    private static final double KICK = 1e-4;
    private static final double RING = 0.02;
    private static final int NODE = 2;
    private static final int CASES = Integer.getInteger("lifeline.cases", 50);

    private static LumpedMassChain chain(long seed) {
        return Chains.crooked(seed, 5, Chains.G);
    }

    private static SlidingJoint ring(LumpedMassChain c) {
        c.mobility[NODE] = 0;
        SlidingJoint ring = new SlidingJoint(c, NODE, RING);
        ring.turn();
        return ring;
    }

    private static SlidingJoint caught(LumpedMassChain c, double flow) {
        SlidingJoint ring = ring(c);
        ring.load();
        ring.flow = flow;
        return ring;
    }

    private static double[] unit(SlidingJoint ring) {
        return new double[] {ring.unitX(), ring.unitY(), ring.unitZ()};
    }

    private static double[] momentum(LumpedMassChain c, SlidingJoint ring, double[] v) {
        double[] cable = Chains.sum(v, ring.flow, unit(ring));
        return Chains.sum(Chains.sum(new double[3], RING, v), c.mass(NODE), cable);
    }

    private static double energy(LumpedMassChain c, SlidingJoint ring) {
        double[] v = Chains.velocity(c, NODE);
        double[] cable = Chains.sum(v, ring.flow, unit(ring));
        return 0.5 * RING * Chains.along(v, v) + 0.5 * c.mass(NODE) * Chains.along(cable, cable);
    }

    /** Force of both tensions, of the worker, and of the weight of the cable at the ring. */
    private static double[] force(LumpedMassChain c, SlidingJoint ring) {
        double[] f = Chains.sum(new double[3], c.elastic[NODE], Chains.direction(c, NODE));
        f = Chains.sum(f, -c.elastic[NODE - 1], Chains.direction(c, NODE - 1));
        return Chains.sum(f, 1, new double[] {ring.pullX, ring.pullY, ring.pullZ - c.mass(NODE) * Chains.G});
    }

    @Test
    void itsDirectionIsTheMeanOfBothSegments() {
        LumpedMassChain c = chain(1);
        SlidingJoint ring = ring(c);
        double[] sum = Chains.sum(Chains.direction(c, NODE - 1), 1, Chains.direction(c, NODE));
        double size = Math.sqrt(Chains.along(sum, sum));
        assertThat(unit(ring)).containsExactly(Chains.sum(new double[3], 1 / size, sum), within(1e-14));
        assertThat(ring.passes()).isTrue();
        assertThat(ring.ringMass()).isEqualTo(RING);
        assertThat(ring.attachmentMobility()).isCloseTo(50, within(1e-12));
        assertThat(ring.resting()).isFalse();
    }

    @Test
    void whereTheCableFoldsBackTheSegmentBehindGivesTheDirection() {
        LumpedMassChain c = Chains.through(
                0, 1, new double[] {0, 0, 0}, new double[] {1, 0, 0}, new double[] {2, 0, 0}, new double[] {1, 0, 0});
        assertThat(unit(ring(c))).containsExactly(new double[] {-1, 0, 0}, within(1e-15));
    }

    /** Before anybody is caught ring and cable are one mass, which the worker does not pull yet. */
    @Test
    void aWaitingRingMovesWithTheCable() {
        for (long seed = 1; seed <= CASES; seed++) {
            LumpedMassChain c = chain(seed);
            SlidingJoint ring = ring(c);
            double[] before = Chains.velocity(c, NODE);
            double[] force = force(c, ring);
            ring.predict(KICK);
            double[] gain = Chains.sum(Chains.predicted(c, NODE), -1, before);
            double[] want = Chains.sum(new double[3], KICK / (c.mass(NODE) + RING), force);
            assertThat(gain).as("seed %d", seed).containsExactly(want, within(1e-11));
            ring.finish(KICK);
            assertThat(ring.flow).isZero();
            assertThat(Chains.velocity(c, NODE)).containsExactly(Chains.predicted(c, NODE), within(1e-14));
        }
    }

    /** The two laws of the class: (m + m′) v̇ = Q across; m′ v̇ + m (q̇ + v̇) = Q and m (q̇ + v̇) = B along. */
    @Test
    void aKickChangesTheMomentumOfRingAndCable() {
        for (long seed = 1; seed <= CASES; seed++) {
            LumpedMassChain c = chain(seed);
            SlidingJoint ring = caught(c, 0.7);
            ring.pullX = 100;
            ring.pullY = -150;
            ring.pullZ = -800;
            double[] u = unit(ring);
            double mass = c.mass(NODE);
            double[] before = Chains.velocity(c, NODE);
            double[] force = force(c, ring);
            double drive = c.pull(NODE, c.elastic[NODE]) - c.pull(NODE - 1, c.elastic[NODE - 1]) + ring.flowLoad();
            ring.predict(KICK);
            ring.finish(KICK);
            double[] gain = Chains.sum(Chains.velocity(c, NODE), -1, before);
            double along = Chains.along(gain, u);
            double flowGain = ring.flow - 0.7;
            double[] across = Chains.sum(gain, -along, u);
            double[] forceAcross = Chains.sum(force, -Chains.along(force, u), u);
            assertThat(Chains.sum(new double[3], mass + RING, across))
                    .as("across, seed %d", seed)
                    .containsExactly(Chains.sum(new double[3], KICK, forceAcross), within(1e-10));
            assertThat(RING * along + mass * (along + flowGain))
                    .as("along, seed %d", seed)
                    .isCloseTo(KICK * Chains.along(force, u), within(1e-10));
            // The drag between ring and cable of a ring at rest, m′/5 ms, slows the flow and keeps momentum.
            double drag = RING / 5e-3;
            double onCable = mass * (along + flowGain) - KICK * drive;
            assertThat(onCable).as("drag, seed %d", seed).isCloseTo(-KICK * drag * ring.flow, within(1e-10));
        }
    }

    /** With a worker hanging on it the ring is damped critically against swinging: 2 √(m′ F/l). */
    @Test
    void theSwingOfAWorkerAddsToTheDrag() {
        LumpedMassChain c = chain(3);
        SlidingJoint ring = caught(c, 0.7);
        ring.swing = 9000;
        double drive = c.pull(NODE, c.elastic[NODE]) - c.pull(NODE - 1, c.elastic[NODE - 1]) + ring.flowLoad();
        double[] before = Chains.velocity(c, NODE);
        ring.predict(KICK);
        ring.finish(KICK);
        double along = Chains.along(Chains.sum(Chains.velocity(c, NODE), -1, before), unit(ring));
        double onCable = c.mass(NODE) * (along + ring.flow - 0.7) - KICK * drive;
        assertThat(onCable).isCloseTo(-KICK * 2 * Math.sqrt(RING * 9000) * ring.flow, within(1e-10));
        double impulse = KICK * 2 * Math.sqrt(RING * 9000) * ring.flow;
        assertThat(ring.frictionHeat).isCloseTo(0.5 * impulse * (ring.flow + 0.7), within(1e-12));
    }

    /** No material passes: ring and cable share their momentum along it, and what that costs is heat. */
    @Test
    void aRingThatIsStoppedSharesItsMomentum() {
        for (double flow : new double[] {0.7, -0.7}) {
            LumpedMassChain c = chain(4);
            SlidingJoint ring = caught(c, flow);
            ring.leastBefore = 2 * c.length[NODE - 1];
            ring.leastBehind = 2 * c.length[NODE];
            double mass = c.mass(NODE);
            double[] momentum = momentum(c, ring, Chains.velocity(c, NODE));
            double[] force = force(c, ring);
            ring.predict(KICK);
            ring.finish(KICK);
            assertThat(ring.flow).isZero();
            double[] after = Chains.sum(new double[3], mass + RING, Chains.velocity(c, NODE));
            assertThat(after).containsExactly(Chains.sum(momentum, KICK, force), within(1e-10));
            double lost = 0.5 * mass * RING / (mass + RING) * flow * flow;
            assertThat(ring.frictionHeat).isCloseTo(lost, within(1e-12));
        }
    }

    @Test
    void turningTheCableKeepsMomentumAndCreatesNoEnergy() {
        for (long seed = 1; seed <= CASES; seed++) {
            LumpedMassChain c = chain(seed);
            SlidingJoint ring = caught(c, 3);
            double[] momentum = momentum(c, ring, Chains.velocity(c, NODE));
            double energy = energy(c, ring);
            c.z[NODE] -= 0.2;
            c.y[NODE] += 0.1;
            ChainStep.geometry(c);
            ring.turn();
            assertThat(momentum(c, ring, Chains.velocity(c, NODE)))
                    .as("seed %d", seed)
                    .containsExactly(momentum, within(1e-12));
            assertThat(energy(c, ring)).as("seed %d", seed).isLessThanOrEqualTo(energy + 1e-12);
        }
    }

    /** Momentum of ring and cable, and what is owed to them. */
    private static double[] withOwed(LumpedMassChain c, SlidingJoint ring) {
        double[] owed = {ring.owed(0), ring.owed(1), ring.owed(2)};
        return Chains.sum(momentum(c, ring, Chains.velocity(c, NODE)), 1, owed);
    }

    /** The ring goes on as it did, the flow takes what comes along the cable, and the rest is owed. */
    @Test
    void takingUpCableKeepsMomentumAndThrowsTheRingNowhere() {
        Joint.Velocity v = new Joint.Velocity();
        for (long seed = 1; seed <= CASES; seed++) {
            LumpedMassChain c = chain(seed);
            SlidingJoint ring = caught(c, 2);
            double[] momentum = withOwed(c, ring);
            double[] before = Chains.velocity(c, NODE);
            double own = c.mass(NODE);
            double[] came = {3, -1, 2};
            v.set(came[0], came[1], came[2]);
            double added = 0.1;
            ring.absorb(added, v, NODE);
            double along = Chains.along(Chains.sum(came, -1, before), Chains.direction(c, NODE)) / c.ratio(NODE);
            assertThat(ring.flow)
                    .as("seed %d", seed)
                    .isCloseTo((own * 2 + added * along) / (own + added), within(1e-12));
            assertThat(Chains.velocity(c, NODE)).as("seed %d", seed).containsExactly(before);
            // The mass comes to the node with the next weighing: here both neighbouring segments grow by it.
            c.setLength(NODE, c.length[NODE] + 2 * added / Chains.MASS);
            assertThat(withOwed(c, ring))
                    .as("seed %d", seed)
                    .containsExactly(Chains.sum(momentum, added, came), within(1e-12));
        }
    }

    /** Cable that runs to the ring just as fast as the ring takes it in changes nothing, however sharp the kink. */
    @Test
    void cableThatComesAsFastAsItPassesChangesNothing() {
        Joint.Velocity v = new Joint.Velocity();
        for (long seed = 1; seed <= CASES; seed++) {
            LumpedMassChain c = chain(seed);
            SlidingJoint ring = caught(c, 7);
            double[] before = Chains.velocity(c, NODE);
            for (int segment = NODE - 1; segment <= NODE; segment++) {
                ring.cableVelocity(segment, v);
                double[] want = Chains.sum(before, 7 * c.ratio(segment), Chains.direction(c, segment));
                assertThat(new double[] {v.x, v.y, v.z}).containsExactly(want, within(1e-14));
                ring.absorb(0.1, v, segment);
                assertThat(ring.flow).as("seed %d", seed).isCloseTo(7, within(1e-13));
                assertThat(Chains.velocity(c, NODE)).as("seed %d", seed).containsExactly(before);
            }
        }
    }

    /** Cable that is split off moves along its segment, and the ring's along the mean: the difference is owed. */
    @Test
    void splittingCableOffKeepsMomentum() {
        Joint.Velocity v = new Joint.Velocity();
        for (long seed = 1; seed <= CASES; seed++) {
            LumpedMassChain c = chain(seed);
            SlidingJoint ring = caught(c, -4);
            double[] momentum = withOwed(c, ring);
            double given = 0.05;
            ring.cableVelocity(NODE, v);
            ring.shed(given, NODE);
            c.setLength(NODE, c.length[NODE] - 2 * given / Chains.MASS);
            double[] left = Chains.sum(momentum, -given, new double[] {v.x, v.y, v.z});
            assertThat(withOwed(c, ring)).as("seed %d", seed).containsExactly(left, within(1e-12));
        }
    }

    /** Where the direction leaps with the mesh, ring and flow go on, and momentum is kept. */
    @Test
    void aDirectionThatLeapsWithTheMeshIsOwed() {
        for (long seed = 1; seed <= CASES; seed++) {
            LumpedMassChain c = chain(seed);
            SlidingJoint ring = caught(c, 3);
            double[] momentum = withOwed(c, ring);
            double[] before = Chains.velocity(c, NODE);
            c.z[NODE + 1] -= 0.2;
            c.y[NODE + 1] += 0.1;
            ChainStep.geometry(c);
            ring.remeshed();
            assertThat(Chains.velocity(c, NODE)).containsExactly(before);
            assertThat(ring.flow).isEqualTo(3);
            assertThat(withOwed(c, ring)).as("seed %d", seed).containsExactly(momentum, within(1e-12));
            ring.turn();
            assertThat(Chains.velocity(c, NODE)).as("it has turned already").containsExactly(before, within(1e-12));
        }
    }

    /** What is owed acts as a force, step by step, until nothing is left. */
    @Test
    void whatIsOwedActsLittleByLittle() {
        LumpedMassChain c = chain(3);
        SlidingJoint ring = caught(c, 2);
        Joint.Velocity v = new Joint.Velocity();
        v.set(3, -1, 2);
        ring.absorb(0.1, v, NODE);
        double owed = ring.owed(2);
        assertThat(Math.abs(owed)).isGreaterThan(1e-3);
        double acted = 0;
        for (int k = 0; k < 1000; k++) {
            ring.release();
            ring.contact(KICK);
            assertThat(ring.pullZ).isEqualTo(ring.contactZ);
            assertThat(KICK * Math.abs(ring.pullZ)).isLessThanOrEqualTo(0.021 * Math.abs(owed));
            acted += KICK * ring.pullZ;
            assertThat(acted + ring.owed(2)).isCloseTo(owed, within(1e-12));
        }
        assertThat(Math.abs(ring.owed(2))).isLessThan(1e-6 * Math.abs(owed));
        ring.release();
        ring.contact(1);
        assertThat(ring.owed(2)).as("in a long step all of it").isZero();
    }

    @Test
    void energiesAndVelocitiesOfTheCableAreThoseOfItsParts() {
        LumpedMassChain c = chain(5);
        SlidingJoint ring = caught(c, 2);
        assertThat(ring.cableEnergy()).isCloseTo(energy(c, ring), within(1e-12));
        // With no force at all the products of velocities before and behind a kick are the squares.
        c.elastic[NODE] = 0;
        c.elastic[NODE - 1] = 0;
        ring.predict(1e-15);
        ring.finish(1e-15);
        assertThat(ring.kineticEnergy()).isCloseTo(energy(c, ring), within(1e-9));
    }

    /** Momentum across and along the cable, and that of the cable that passes, with the drag on what it gains. */
    @Test
    void moreTensionWithinAStepIsAKickLikeAnyOther() {
        LumpedMassChain c = chain(6);
        SlidingJoint ring = caught(c, 0.5);
        ring.swing = 9000;
        double mass = c.mass(NODE);
        double[] start = Chains.velocity(c, NODE);
        double[] force = Chains.sum(force(c, ring), 40, Chains.direction(c, NODE));
        double drive = c.pull(NODE, c.elastic[NODE]) - c.pull(NODE - 1, c.elastic[NODE - 1]) + ring.flowLoad();
        drive += 40 * c.ratio(NODE);
        ring.predict(KICK);
        ring.retension(NODE, 40, KICK);
        double[] once = Chains.predicted(c, NODE);
        ring.retension(NODE - 1, 0, KICK);
        assertThat(Chains.predicted(c, NODE)).containsExactly(once);
        ring.finish(KICK);
        double[] u = unit(ring);
        double[] gain = Chains.sum(Chains.velocity(c, NODE), -1, start);
        double along = Chains.along(gain, u);
        double passing = along + ring.flow - 0.5;
        assertThat(RING * along + mass * passing).isCloseTo(KICK * Chains.along(force, u), within(1e-12));
        double drag = 2 * Math.sqrt(RING * 9000);
        assertThat(mass * passing).isCloseTo(KICK * (drive - drag * ring.flow), within(1e-12));
        double[] across = Chains.sum(gain, -along, u);
        double[] forceAcross = Chains.sum(force, -Chains.along(force, u), u);
        assertThat(Chains.sum(new double[3], mass + RING, across))
                .containsExactly(Chains.sum(new double[3], KICK, forceAcross), within(1e-12));
    }

    @Test
    void aSharpBendMakesTheLightRingMobile() {
        LumpedMassChain straight = Chains.through(
                0, 1, new double[] {0, 0, 0}, new double[] {1, 0, 0}, new double[] {2, 0, 0}, new double[] {3, 0, 0});
        SlidingJoint on = caught(straight, 0);
        on.predict(KICK);
        double mass = straight.mass(NODE);
        assertThat(on.mobility()).isCloseTo(1 / mass + 1 / (mass + RING), within(1e-12));
        LumpedMassChain bent = Chains.through(
                0, 1, new double[] {0, 0, 0}, new double[] {1, 0, 0}, new double[] {2, 0, 0}, new double[] {2, 0, 1});
        SlidingJoint at = caught(bent, 0);
        at.predict(KICK);
        // Half of a right angle to either side: 1 − cos 45°.
        double sharp = 1 - Math.sqrt(0.5);
        assertThat(at.mobility()).isCloseTo(1 / mass + 1 / (mass + RING) + sharp * sharp / RING, within(1e-9));
    }
}
