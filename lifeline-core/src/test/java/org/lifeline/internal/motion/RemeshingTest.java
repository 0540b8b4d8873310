package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.model.Passage;

/** Merging and splitting beside a joint keeps length, momentum, mass and the order of the joints. */
class RemeshingTest {
    private static MotionSystem system() {
        MotionSystem s = new MotionSystem(MotionCases.setup(MotionCases.two(Passage.free()), 4, true), 0.25, 1);
        ChainStep.geometry(s.chain);
        ChainStep.tensions(s.chain);
        return s;
    }

    /** Momentum of the free nodes and of the cable lumped at the post, along the line. */
    private static double momentum(MotionSystem s) {
        LumpedMassChain c = s.chain;
        double sum = 0;
        for (int i = 0; i < c.nodes; i++) {
            if (c.mobility[i] > 0) {
                sum += c.mass(i) * c.vx[i];
            }
        }
        SupportJoint post = s.anchors[1];
        return sum + post.passingMass() * post.flow * c.ux[post.node];
    }

    private static void runWithoutRemeshing(MotionSystem s, double flow) {
        for (int i = 1; i < s.chain.nodes - 1; i++) {
            if (s.chain.mobility[i] > 0) {
                s.chain.vx[i] = flow;
            }
        }
        s.anchors[1].flow = flow;
    }

    @Test
    void aSegmentThatHasGrownTooShortIsMerged() {
        MotionSystem s = system();
        LumpedMassChain c = s.chain;
        SupportJoint post = s.anchors[1];
        runWithoutRemeshing(s, 2);
        double length = MotionCases.unstretched(c);
        // Most of the segment before the post has passed.
        post.flow = 2;
        post.drift(0.4 * c.length[post.node - 1]);
        double moved = post.passed;
        assertThat(moved).isGreaterThan(0.15);
        // The node before the post has come along.
        c.x[post.node - 1] += moved * c.ux[post.node - 1];
        ChainStep.geometry(c);
        int nodes = c.nodes;
        int at = post.node;
        double before = momentum(s);
        assertThat(s.remeshing.adapt()).isTrue();
        assertThat(c.nodes).isEqualTo(nodes - 1);
        assertThat(post.node).isEqualTo(at - 1);
        assertThat(s.anchors[2].node).isEqualTo(c.nodes - 1);
        assertThat(MotionCases.unstretched(c)).isCloseTo(length, within(1e-12));
        assertThat(momentum(s)).isCloseTo(before, within(1e-3 * Math.abs(before)));
        assertThat(s.remeshing.changes).isEqualTo(1);
    }

    @Test
    void aSegmentThatHasGrownTooLongIsSplit() {
        MotionSystem s = system();
        LumpedMassChain c = s.chain;
        SupportJoint post = s.anchors[1];
        double length = MotionCases.unstretched(c);
        double grown = 1.1 * c.length[post.node];
        c.setLength(post.node, c.length[post.node] + grown);
        c.x[post.node] -= 0;
        int nodes = c.nodes;
        assertThat(s.remeshing.adapt()).isTrue();
        assertThat(c.nodes).isEqualTo(nodes + 1);
        assertThat(MotionCases.unstretched(c)).isCloseTo(length + grown, within(1e-12));
        assertThat(s.anchors[2].node).isEqualTo(c.nodes - 1);
        for (int i = 0; i < c.nodes; i++) {
            if (c.mobility[i] > 0) {
                assertThat(c.mobility[i]).isCloseTo(1 / c.mass(i), within(1e-9 / c.mass(i)));
            }
        }
    }

    @Test
    void whatIsNeitherTooShortNorTooLongStays() {
        MotionSystem s = system();
        assertThat(s.remeshing.adapt()).isFalse();
        assertThat(s.remeshing.changes).isZero();
        assertThat(s.remeshing.lost).isZero();
    }

    /**
     * A ring runs away from a post along a cable that rests, and the segment between them is split: the node that comes
     * in is cable, and rests. It had half of the ring's speed once, which strained the cable beside the post by
     * kilonewtons.
     */
    @Test
    void aNodeBetweenAPostAndARingMovesWithTheCable() {
        double speed = 10;
        MotionSystem s = new MotionSystem(
                MotionCases.setup(MotionCases.two(Passage.free()), MotionCases.SPAN - 0.05, false), 0.25, 1);
        LumpedMassChain c = s.chain;
        SlidingJoint ring = (SlidingJoint) s.bodies[0].joint;
        SupportJoint post = s.anchors[1];
        assertThat(post.node).isEqualTo(ring.node + 1);
        ring.load();
        double step = 0.06;
        int at = ring.node;
        c.x[at] -= step * c.ux[at];
        c.z[at] -= step * c.uz[at];
        double stretch = c.ratio(at);
        c.setLength(at, c.length[at] + step / stretch);
        c.setLength(at - 1, c.length[at - 1] - step / stretch);
        ChainStep.geometry(c);
        ring.turn();
        ring.flow = speed / stretch;
        c.vx[at] = -speed * c.ux[at];
        c.vz[at] = -speed * c.uz[at];
        int nodes = c.nodes;
        assertThat(s.remeshing.adapt()).isTrue();
        assertThat(c.nodes).isEqualTo(nodes + 1);
        assertThat(post.node).isEqualTo(ring.node + 2);
        int fresh = ring.node + 1;
        assertThat(Math.sqrt(c.speedSquared(fresh))).isLessThan(1e-9 * speed);
        assertThat(Math.abs(s.remeshing.lost)).isLessThan(1e-3);
    }

    /**
     * A node that comes in leaves both parts strained at the rate of the whole, whatever passes at the ends and turns.
     */
    @Test
    void bothPartsAreStrainedAtTheRateOfTheWhole() {
        MotionSystem s = new MotionSystem(
                MotionCases.setup(MotionCases.two(Passage.free()), MotionCases.SPAN - 0.05, false), 0.25, 1);
        LumpedMassChain c = s.chain;
        SlidingJoint ring = (SlidingJoint) s.bodies[0].joint;
        SupportJoint post = s.anchors[1];
        ring.load();
        int at = ring.node;
        c.x[at] -= 0.05;
        c.z[at] -= 0.03;
        c.setLength(at, Math.hypot(c.x[at + 1] - c.x[at], c.z[at + 1] - c.z[at]) / 1.002);
        ChainStep.geometry(c);
        ring.turn();
        ring.flow = 8;
        post.flow = 0.7;
        c.vx[at] = -8;
        c.vz[at] = -3;
        double whole = rate(c, at, 8, 0.7);
        double turns = turning(c, at);
        assertThat(s.remeshing.adapt()).isTrue();
        int first = ring.node;
        assertThat(post.node).isEqualTo(first + 2);
        ChainStep.geometry(c);
        assertThat(rate(c, first, ring.flow, 0)).isCloseTo(whole, within(1e-9 * Math.abs(whole)));
        assertThat(rate(c, first + 1, 0, 0.7)).isCloseTo(whole, within(1e-9 * Math.abs(whole)));
        assertThat(turning(c, first)).as("it stays straight").isCloseTo(turns, within(1e-9 * Math.abs(turns)));
    }

    /** Rate of stretching of a segment with what passes at its ends: (ℓ̇ − r L̇)/L [1/s]. */
    private static double rate(LumpedMassChain c, int j, double before, double behind) {
        double longer = (c.vx[j + 1] - c.vx[j]) * c.ux[j] + (c.vz[j + 1] - c.vz[j]) * c.uz[j];
        return (longer - c.ratio(j) * (before - behind)) / c.length[j];
    }

    /** Speed of turning of a segment [1/s]. */
    private static double turning(LumpedMassChain c, int j) {
        double across = (c.vx[j + 1] - c.vx[j]) * c.uz[j] - (c.vz[j + 1] - c.vz[j]) * c.ux[j];
        return across / c.stretched[j];
    }

    /**
     * A node next to two joints is merged away: the cable that it was goes to both, and none of its momentum is lost.
     */
    @Test
    void aNodeBetweenTwoJointsGoesToBoth() {
        MotionSystem s = new MotionSystem(
                MotionCases.setup(MotionCases.two(Passage.free()), MotionCases.SPAN - 0.5, false), 0.25, 1);
        LumpedMassChain c = s.chain;
        SlidingJoint ring = (SlidingJoint) s.bodies[0].joint;
        SupportJoint post = s.anchors[1];
        assertThat(post.node).isEqualTo(ring.node + 2);
        ring.load();
        ring.turn();
        int node = ring.node + 1;
        double unit = c.length[ring.node];
        c.setLength(ring.node, 0.2 * unit);
        ChainStep.geometry(c);
        c.vx[node] = 3 * c.ux[node];
        c.vz[node] = 3 * c.uz[node];
        double moved = 0.5 * c.massPerLength * c.length[ring.node] * 3;
        double own = post.passingMass();
        assertThat(s.remeshing.adapt()).isTrue();
        assertThat(post.node).isEqualTo(ring.node + 1);
        double sum = own + 0.5 * c.massPerLength * 0.2 * unit;
        assertThat(sum * post.flow).isCloseTo(moved, within(1e-3 * moved));
        assertThat(ring.flow).isGreaterThan(0);
    }
}
