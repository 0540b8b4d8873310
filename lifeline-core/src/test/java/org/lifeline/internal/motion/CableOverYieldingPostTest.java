package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/**
 * Cable runs over a post that yields, and nodes beside it are merged away. The post had the momentum of the merged cable along
 * the line once more, although the flow had it already: it was thrown along the line at some metres a second, and for one step
 * the tensions beside it were in a ratio that no friction allows. The force on the post of the line below was 3.26, 3.40 and 4.22 kN
 * on segments of 250, 125 and 62 mm, and 2.2 kN behind the filter on each.
 */
class CableOverYieldingPostTest {
    private static final double FRICTION = 0.1;
    private static final Vector3 NONE = new Vector3(0, 0, 0);
    private static final Stiffness YIELDING = new Stiffness(2e5, 3e5, 4e5);

    private static InlineAbsorber absorber(double force) {
        return InlineAbsorber.of(LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, force), new LoadingCurve.Corner(0.8, force)), 6e6, 2e5));
    }

    /** Two spans with a turn at the post between; absorbers at both ends let metres of cable run. */
    private static LineModel line(Passage passage) {
        return new LineModel(Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(3e6).build())
                .support(Support.end("a", Point.of(0, 0, 10)).withInlineAbsorber(absorber(5000)))
                .support(
                        Support.intermediate("q", Point.of(9, 3, 10.4), passage).withStiffness(YIELDING))
                .support(Support.end("b", Point.of(17, 3, 10)).withInlineAbsorber(absorber(4000)))
                .pretension(1500)
                .build());
    }

    private static MotionSetup setup(Passage passage) {
        LineModel model = line(passage);
        // Rigid up to 6 kN as a connection with an absorber is, then its plateau.
        LoadingCurve curve = LoadingCurve.through(
                List.of(
                        new LoadingCurve.Corner(0, 0),
                        new LoadingCurve.Corner(0.06, 6000),
                        new LoadingCurve.Corner(1.75, 6000)),
                1e6,
                1e5);
        MotionSetup setup = new MotionSetup(model, 0.01);
        setup.attach(
                0,
                model.pointAtStation(0, 4),
                true,
                List.of(new MotionSetup.Person(80, curve, 1.8, new MotionSetup.Timing(0, 1.6, true))));
        return setup;
    }

    /** Cable that comes as fast as the cable that passes changes nothing: neither the flow nor what the anchor does. */
    @Test
    void cableThatGoesAsThatWhichPassesThrowsNoAnchor() {
        for (Passage passage : List.of(Passage.free(), Passage.friction(FRICTION))) {
            for (long seed = 1; seed <= 5; seed++) {
                for (int segment = 2; segment <= 3; segment++) {
                    LumpedMassChain c = Chains.crooked(seed, 7, Chains.G);
                    SupportJoint post = new SupportJoint(
                            c,
                            3,
                            Support.intermediate("p", Point.of(c.x[3], c.y[3], c.z[3]), passage)
                                    .withStiffness(YIELDING),
                            NONE,
                            NONE);
                    c.mobility[3] = 0;
                    post.flow = -2.7;
                    double[] was = Chains.velocity(c, 3);
                    Joint.Velocity v = new Joint.Velocity();
                    post.cableVelocity(segment, v);
                    post.absorb(0.3, v, segment);
                    assertThat(post.flow).as("seed %d", seed).isCloseTo(-2.7, within(1e-12));
                    assertThat(Chains.velocity(c, 3)).as("seed %d", seed).containsExactly(was, within(1e-12));
                }
            }
        }
    }

    /** The same by the mesh: all cable behind the post runs along it, and a node there is merged away. */
    @Test
    void aNodeMergedAwayFromCableThatRunsThrowsNoPost() {
        MotionSystem s = new MotionSystem(setup(Passage.friction(FRICTION)), 0.25, 1);
        LumpedMassChain c = s.chain;
        SupportJoint post = s.anchors[1];
        int node = post.node;
        c.setLength(node, 0.2 * c.length[node]);
        for (int i = node + 1; i < c.nodes - 1; i++) {
            c.x[i] = c.x[i - 1] + 1.001 * c.length[i - 1];
            c.y[i] = c.y[node];
            c.z[i] = c.z[node];
            c.vx[i] = -2.7;
        }
        ChainStep.geometry(c);
        post.flow = -2.7;
        int nodes = c.nodes;
        assertThat(s.remeshing.adapt()).isTrue();
        assertThat(c.nodes).isEqualTo(nodes - 1);
        assertThat(post.node).isEqualTo(node);
        assertThat(post.flow * c.ratio(node)).isCloseTo(-2.7, within(0.005));
        assertThat(Chains.velocity(c, node)).containsExactly(new double[3], within(0.005));
    }

    /**
     * What a run on one mesh shows.
     *
     * @param peaks peaks of the first catch
     * @param grip largest ratio of the tensions beside the post at any step, over e^(μθ) [-]
     * @param flow fastest flow over the post [m/s]
     * @param changes how often a node was merged away or split off
     * @param meshEnergy what that cost [J]
     */
    private record Run(PeakValues peaks, double grip, double flow, int changes, double meshEnergy) {}

    private static Run run(double segment) {
        Motion motion = new Motion(setup(Passage.friction(FRICTION)), segment, 1, new Motion.Sampling(1.5, 0.01));
        MotionSystem s = motion.system();
        LumpedMassChain c = s.chain;
        SupportJoint post = s.anchors[1];
        double grip = 0;
        double flow = 0;
        while (!motion.firstCatchOver()) {
            int changes = s.remeshing.changes;
            motion.step();
            flow = Math.max(flow, Math.abs(post.flow));
            if (s.remeshing.changes > changes) {
                // The tensions are those of the segments before the change.
                continue;
            }
            double before = c.tension[post.node - 1];
            double behind = c.tension[post.node];
            // Once the worker rises the line goes slack, and what is left of tension is damping.
            if (Math.max(before, behind) > 500) {
                double ratio = Math.max(before, behind) / Math.min(before, behind);
                grip = Math.max(grip, ratio / Math.exp(FRICTION * Math.acos(c.cosine(post.node - 1))));
            }
        }
        return new Run(motion.firstCatch(), grip, flow, s.remeshing.changes, s.remeshing.lost);
    }

    /**
     * At every step the tensions beside the post are those of the capstan, but for what accelerates the half segments lumped
     * there, which is less on a finer mesh. The tension is nowhere above that at which the absorber of the first end yields,
     * and the force on the post is what is behind the filter but for a front.
     */
    @Test
    void theCapstansRuleHoldsAtEveryStepOnEveryMesh() {
        double[] grip = new double[3];
        for (int k = 0; k < 3; k++) {
            Run run = run(0.25 / (1 << k));
            assertThat(run.changes).as("mesh %d", k).isGreaterThanOrEqualTo(3);
            assertThat(run.flow).as("the cable runs").isGreaterThan(2);
            grip[k] = run.grip - 1;
            assertThat(grip[k]).as("beyond the capstan's ratio, mesh %d", k).isBetween(0.0, 0.03);
            assertThat(run.peaks.tension).as("tension, mesh %d", k).isBetween(5000.0, 1.01 * 5000);
            double filtered = run.peaks.filteredSupport[1];
            assertThat(filtered).as("filtered, mesh %d", k).isBetween(2100.0, 2300.0);
            assertThat(run.peaks.support[1]).as("mesh %d", k).isBetween(filtered, 1.05 * filtered);
            assertThat(run.meshEnergy).as("mesh %d", k).isCloseTo(0, within(0.05));
        }
        assertThat(grip[2]).isLessThan(0.7 * grip[0]);
    }
}
