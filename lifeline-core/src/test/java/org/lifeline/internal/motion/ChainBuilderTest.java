package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Passage;

/** How a line at rest is cut: lengths, masses, joints in their order, damping that a coarse mesh needs. */
class ChainBuilderTest {
    private static ChainBuilder.Result build(MotionSetup setup, double target) {
        return new ChainBuilder(setup, target).build(0.01);
    }

    @Test
    void theChainIsAsLongAndHeavyAsTheCable() {
        LineModel model = MotionCases.two(Passage.free());
        double cable = model.pieces(0).stream().mapToDouble(p -> p.length()).sum()
                + model.pieces(1).stream().mapToDouble(p -> p.length()).sum();
        for (double target : new double[] {0.5, 0.25, 0.1}) {
            LumpedMassChain c = build(MotionCases.setup(model, 4, true), target).chain();
            assertThat(MotionCases.unstretched(c))
                    .as("segments of %s m", target)
                    .isCloseTo(cable, within(2e-5));
            double mass = 0;
            for (int i = 0; i < c.nodes; i++) {
                mass += c.mass(i);
            }
            assertThat(mass).isCloseTo(MotionCases.MASS_PER_LENGTH * cable, within(1e-4));
        }
    }

    @Test
    void jointsStandInTheOrderOfTheLine() {
        ChainBuilder.Result r = build(MotionCases.setup(MotionCases.two(Passage.free()), 4, false), 0.25);
        List<Joint> joints = r.joints();
        assertThat(joints).hasSize(4);
        assertThat(joints.get(0)).isInstanceOf(SupportJoint.class);
        assertThat(joints.get(1)).isInstanceOf(SlidingJoint.class);
        assertThat(joints.get(2)).isInstanceOf(SupportJoint.class);
        assertThat(joints.get(3)).isInstanceOf(SupportJoint.class);
        for (int k = 1; k < joints.size(); k++) {
            assertThat(joints.get(k).node).isGreaterThan(joints.get(k - 1).node);
        }
        assertThat(r.chain().x[joints.get(1).node]).isCloseTo(4, within(1e-6));
        assertThat(r.chain().x[joints.get(2).node]).isCloseTo(MotionCases.SPAN, within(1e-12));
        assertThat(r.anchors()).hasSize(3);
        assertThat(r.attachments()).hasSize(1);
        assertThat(r.attachments().get(0).joint()).isSameAs(joints.get(1));
    }

    /** Where nobody falls segments are twice as long. */
    @Test
    void segmentsAreLongerWhereNobodyFalls() {
        ChainBuilder.Result r = build(MotionCases.setup(MotionCases.two(Passage.free()), 4, true), 0.1);
        int post = r.anchors().get(1).node;
        LumpedMassChain c = r.chain();
        for (int j = 0; j < c.segments(); j++) {
            assertThat(c.length[j]).isCloseTo(j < post ? 0.1 : 0.2, within(0.01));
        }
    }

    /** One who is attached right beside a support gets room for a segment all the same. */
    @Test
    void thereIsRoomBesideASupport() {
        ChainBuilder.Result r = build(MotionCases.setup(MotionCases.single(), 1e-4, false), 0.25);
        assertThat(r.chain().x[r.joints().get(1).node]).isBetween(0.02, 0.06);
    }

    /** The mesh's own waves are damped: τ is at least half of the time of an axial wave through a segment. */
    @Test
    void aCoarseMeshIsDampedMore() {
        MotionSetup setup = new MotionSetup(MotionCases.single(), 0);
        setup.attach(0, setup.model.pointAtStation(0, 4), true, List.of(MotionCases.person(0, 1, true)));
        double speed = Math.sqrt(MotionCases.EA / MotionCases.MASS_PER_LENGTH);
        for (double target : new double[] {0.5, 0.25}) {
            assertThat(build(setup, target).chain().dampingTime)
                    .isCloseTo(0.5 * target / speed, within(1e-3 * target / speed));
        }
        MotionSetup damped = MotionCases.setup(MotionCases.single(), 4, true);
        assertThat(build(damped, 0.25).chain().dampingTime).isEqualTo(5e-4);
    }

    /** Somebody at a support is attached to that support's joint, and both spans beside it are cut finely. */
    @Test
    void aFallAtASupportHasTheSupportForItsJoint() {
        LineModel model = MotionCases.two(Passage.free());
        MotionSetup setup = new MotionSetup(model, 5e-4);
        setup.attachToSupport(1, List.of(MotionCases.person(0, 1, true)));
        ChainBuilder.Result r = build(setup, 0.1);
        assertThat(r.joints()).hasSize(3);
        assertThat(r.attachments().get(0).joint()).isSameAs(r.anchors().get(1));
        for (int j = 0; j < r.chain().segments(); j++) {
            assertThat(r.chain().length[j]).isCloseTo(0.1, within(0.01));
        }
        assertThat(setup.shortestSpan()).isCloseTo(MotionCases.SPAN, within(1e-9));
    }
}
