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
}
