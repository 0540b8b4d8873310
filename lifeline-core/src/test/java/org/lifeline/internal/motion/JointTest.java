package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** What all joints have in common, and the joint that holds a point of the cable. */
class JointTest {
    private static final double KICK = 1e-4;

    private static FixedJoint fixed(LumpedMassChain c, int node) {
        return new FixedJoint(c, node);
    }

    @Test
    void pressingIsAPullOfContactAndReleasingForgetsIt() {
        FixedJoint joint = fixed(Chains.crooked(1, 5, Chains.G), 2);
        joint.pullX = 10;
        joint.press(1, 2, 3);
        joint.press(4, 5, 6);
        joint.swing = 7;
        assertThat(new double[] {joint.pullX, joint.pullY, joint.pullZ}).containsExactly(15, 7, 9);
        assertThat(new double[] {joint.contactX, joint.contactY, joint.contactZ})
                .containsExactly(5, 7, 9);
        joint.release();
        assertThat(new double[] {joint.pullX, joint.pullY, joint.pullZ, joint.swing})
                .containsOnly(0);
        assertThat(new double[] {joint.contactX, joint.contactY, joint.contactZ})
                .containsOnly(0);
    }

    @Test
    void endsHaveASegmentOnOneSideOnly() {
        LumpedMassChain c = Chains.crooked(1, 4, Chains.G);
        assertThat(fixed(c, 0).hasBefore()).isFalse();
        assertThat(fixed(c, 0).hasBehind()).isTrue();
        assertThat(fixed(c, 1).hasBefore()).isTrue();
        assertThat(fixed(c, 2).hasBehind()).isTrue();
        assertThat(fixed(c, 3).hasBehind()).isFalse();
    }

    /** Newton's second law: the kick of a pull on the mass of the node, nothing on its neighbours. */
    @Test
    void aFixedJointIsKickedByItsWorker() {
        LumpedMassChain c = Chains.crooked(3, 5, Chains.G);
        ChainStep.predict(c, KICK);
        double[] before = Chains.predicted(c, 2);
        double[] beside = Chains.predicted(c, 1);
        FixedJoint joint = fixed(c, 2);
        joint.pullX = 300;
        joint.pullY = -200;
        joint.pullZ = -900;
        joint.predict(KICK);
        double[] gain = Chains.sum(Chains.predicted(c, 2), -1, before);
        double share = KICK / c.mass(2);
        assertThat(gain).containsExactly(new double[] {300 * share, -200 * share, -900 * share}, within(1e-12));
        assertThat(Chains.predicted(c, 1)).containsExactly(beside);
        assertThat(joint.passes()).isFalse();
        assertThat(joint.revise(KICK)).isFalse();
        assertThat(joint.mobility()).isEqualTo(c.mobility[2]);
        assertThat(joint.attachmentMobility()).isCloseTo(1 / c.mass(2), within(1e-12));
    }

    @Test
    void moreTensionInASegmentPullsTheNodeIntoIt() {
        LumpedMassChain c = Chains.crooked(4, 5, Chains.G);
        FixedJoint joint = fixed(c, 2);
        for (int segment : new int[] {1, 2}) {
            double[] before = Chains.predicted(c, 2);
            joint.retension(segment, 50, KICK);
            double[] gain = Chains.sum(Chains.predicted(c, 2), -1, before);
            double speed = (segment == 2 ? 50 : -50) * KICK / c.mass(2);
            double[] want = Chains.sum(new double[3], speed, Chains.direction(c, segment));
            assertThat(gain).as("segment %d", segment).containsExactly(want, within(1e-14));
        }
    }

    /** Contact takes its force times the way of the node, by the mean of both velocities. */
    @Test
    void contactTakesForceTimesWay() {
        LumpedMassChain c = Chains.crooked(5, 4, Chains.G);
        FixedJoint joint = fixed(c, 1);
        joint.press(2, -3, 5);
        double[] before = Chains.velocity(c, 1);
        joint.predict(KICK);
        c.vx[1] += 1;
        c.vy[1] -= 2;
        c.vz[1] += 0.5;
        joint.finish(KICK);
        double[] way = Chains.sum(new double[3], 0.5 * KICK, Chains.sum(before, 1, Chains.velocity(c, 1)));
        assertThat(joint.frictionHeat).isCloseTo(-Chains.along(new double[] {2, -3, 5}, way), within(1e-15));
    }

    @Test
    void materialPassesFromTheSegmentBeforeToTheOneBehind() {
        LumpedMassChain c = Chains.crooked(6, 5, Chains.G);
        double before = c.length[1];
        double behind = c.length[2];
        double momentum = c.mass(1) * c.vx[1];
        FixedJoint joint = fixed(c, 2);
        c.mobility[2] = 0;
        joint.flow = 4;
        joint.drift(0.01);
        joint.drift(0.02);
        assertThat(joint.passed).isCloseTo(0.12, within(1e-15));
        assertThat(c.length[1]).isCloseTo(before - 0.12, within(1e-15));
        assertThat(c.length[2]).isCloseTo(behind + 0.12, within(1e-15));
        assertThat(c.mobility[1]).as("neighbours are weighed anew").isCloseTo(1 / c.mass(1), within(1e-12));
        assertThat(c.mobility[3]).isCloseTo(1 / c.mass(3), within(1e-12));
        assertThat(c.mass(1) * c.vx[1]).as("and keep their momentum").isCloseTo(momentum, within(1e-13));
        joint.flow = -4;
        joint.drift(0.03);
        assertThat(c.length[1]).isCloseTo(before, within(1e-15));
        assertThat(joint.passed).isCloseTo(0, within(1e-15));
    }

    @Test
    void nodesThatJointsMoveAreNotWeighed() {
        LumpedMassChain c = Chains.crooked(6, 5, Chains.G);
        c.mobility[1] = 0;
        c.mobility[3] = 0;
        double vx = c.vx[3];
        FixedJoint joint = fixed(c, 2);
        joint.flow = 1;
        joint.drift(0.1);
        assertThat(c.mobility[1]).isZero();
        assertThat(c.mobility[3]).isZero();
        assertThat(c.vx[3]).isEqualTo(vx);
    }

    @Test
    void aFlowIsBlockedByTheSegmentThatItUsesUp() {
        LumpedMassChain c = Chains.crooked(7, 5, Chains.G);
        FixedJoint joint = fixed(c, 2);
        c.setLength(1, 0.5);
        c.setLength(2, 0.8);
        joint.leastBefore = 0.5;
        joint.leastBehind = 0.8;
        assertThat(joint.blocked(1)).as("just as long as must remain").isFalse();
        assertThat(joint.blocked(-1)).isFalse();
        joint.leastBefore = 0.51;
        assertThat(joint.blocked(1)).isTrue();
        assertThat(joint.blocked(-1)).isFalse();
        assertThat(joint.blocked(0)).isFalse();
        joint.leastBehind = 0.81;
        assertThat(joint.blocked(-1)).isTrue();
    }

    /** At rest only weight drives the flow: half of the drop over both segments, downhill. */
    @Test
    void weightDrivesTheFlowDownhill() {
        LumpedMassChain c =
                Chains.through(Chains.G, 1, new double[] {0, 0, 3}, new double[] {2, 0, 2.5}, new double[] {4, 0, 1.2});
        double load = fixed(c, 1).flowLoad();
        assertThat(load).isCloseTo(-0.5 * Chains.MASS * Chains.G * (1.2 - 3), within(1e-12));
    }

    /** Nodes that grow take momentum with them: a quarter of μ times the difference of the squares of the speeds. */
    @Test
    void movingNeighboursDriveTheFlowByTheirMomentum() {
        LumpedMassChain c =
                Chains.through(0, 1, new double[] {0, 0, 0}, new double[] {2, 0, 0}, new double[] {4, 0, 0});
        c.vx[0] = 3;
        c.vz[2] = 4;
        FixedJoint joint = fixed(c, 1);
        assertThat(joint.flowLoad()).isCloseTo(0.25 * Chains.MASS * (16 - 9), within(1e-12));
        c.mobility[2] = 0;
        assertThat(joint.flowLoad()).isCloseTo(-0.25 * Chains.MASS * 9, within(1e-12));
        c.mobility[0] = 0;
        assertThat(joint.flowLoad()).isZero();
    }

    @Test
    void theCableAtAJointMovesWithItAndWithTheFlow() {
        LumpedMassChain c = Chains.crooked(8, 4, Chains.G);
        Joint.Velocity v = new Joint.Velocity();
        FixedJoint joint = fixed(c, 1);
        joint.flow = 2;
        for (int segment = 0; segment < 2; segment++) {
            joint.cableVelocity(segment, v);
            double[] want = Chains.sum(Chains.velocity(c, 1), 2 * c.ratio(segment), Chains.direction(c, segment));
            assertThat(new double[] {v.x, v.y, v.z}).containsExactly(want, within(1e-14));
        }
        assertThat(joint.cableEnergy()).isCloseTo(0.5 * c.mass(1) * 4, within(1e-14));
        // What is slack is not stretched.
        c.setLength(0, 2 * c.length[0]);
        assertThat(joint.taut(0)).isEqualTo(1);
        joint.cableVelocity(0, v);
        assertThat(v.x).isCloseTo(c.vx[1] + 2 * c.ux[0], within(1e-14));
        // Nothing but a ring owes anything.
        joint.shed(1, 0);
        joint.remeshed();
        joint.absorb(1, v, 0);
        assertThat(joint.flow).isEqualTo(2);
    }
}
