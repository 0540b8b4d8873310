package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;

/**
 * A joint within a step of the chain: the damping forces agree with the rates of stretching that they lead to, with what
 * the joint gives way and what it passes; and what the forces do is motion or heat.
 */
class JointStepTest {
    private static final double KICK = 2e-4;
    private static final double RING = 0.02;
    private static final int NODE = 2;
    private static final int CASES = Math.min(12, Integer.getInteger("lifeline.cases", 12));
    private static final double RIGID = Double.POSITIVE_INFINITY;
    private static final List<Stiffness> STIFFNESSES =
            List.of(new Stiffness(RIGID, RIGID, RIGID), new Stiffness(2e5, 3e5, 4e5), new Stiffness(2e5, RIGID, 4e5));

    /** A crooked chain between two points that do not move. */
    private static LumpedMassChain chain(long seed) {
        LumpedMassChain c = Chains.crooked(seed, 5, Chains.G);
        for (int end : new int[] {0, 4}) {
            stop(c, end);
        }
        c.mobility[NODE] = 0;
        return c;
    }

    private static void stop(LumpedMassChain c, int node) {
        c.mobility[node] = 0;
        c.vx[node] = 0;
        c.vy[node] = 0;
        c.vz[node] = 0;
    }

    private static void tension(LumpedMassChain c, double before, double behind) {
        double[] t = {1800, before, behind, 2200};
        for (int j = 0; j < 4; j++) {
            c.setLength(j, c.stretched[j] / (1 + t[j] / Chains.EA));
            c.elastic[j] = t[j];
        }
        for (int i : new int[] {1, 3}) {
            c.mobility[i] = 1 / c.mass(i);
        }
    }

    private static SupportJoint anchor(LumpedMassChain c, int node, Support support, Stiffness stiffness) {
        if (Double.isInfinite(stiffness.x())) {
            c.vx[node] = 0;
        }
        if (Double.isInfinite(stiffness.y())) {
            c.vy[node] = 0;
        }
        if (Double.isInfinite(stiffness.z())) {
            c.vz[node] = 0;
        }
        return new SupportJoint(
                c, node, support.withStiffness(stiffness), new Vector3(10, 20, 30), new Vector3(0, 0, 0));
    }

    private static SupportJoint post(LumpedMassChain c, Passage passage, Stiffness stiffness) {
        Point place = Point.of(c.x[NODE] - 1e-3, c.y[NODE] + 2e-3, c.z[NODE] - 3e-3);
        return anchor(c, NODE, Support.intermediate("p", place, passage), stiffness);
    }

    private static SlidingJoint ring(LumpedMassChain c, double flow) {
        SlidingJoint ring = new SlidingJoint(c, NODE, RING);
        ring.turn();
        ring.load();
        ring.flow = flow;
        return ring;
    }

    /** A step before, in which the cable begins to slip, and speed and tensions that it has come to since. */
    private static void slip(LumpedMassChain c, SupportJoint post, double flow, double before, double behind) {
        tension(c, flow > 0 ? 500 : 100_000, flow > 0 ? 100_000 : 500);
        predict(c, post);
        solve(c, post);
        post.finish(KICK);
        assertThat(Math.signum(post.flow)).isEqualTo(Math.signum(flow));
        post.flow = flow;
        tension(c, before, behind);
    }

    private static void predict(LumpedMassChain c, Joint joint) {
        ChainStep.predict(c, KICK);
        joint.predict(KICK);
    }

    /** The damping forces of a step, solved again as long as the joint asks for it; true if it did. */
    private static boolean solve(LumpedMassChain c, Joint joint) {
        ChainStep.rows(c, KICK);
        joint.addRows(KICK);
        boolean revised = false;
        for (int k = 0; k < 4; k++) {
            ChainStep.solve(c);
            ChainStep.tensions(c);
            System.arraycopy(c.damping, 0, c.excess, 0, c.segments());
            if (!joint.revise(KICK)) {
                return revised;
            }
            revised = true;
        }
        return revised;
    }

    private static double[][] velocities(LumpedMassChain c) {
        double[][] v = new double[c.nodes][];
        for (int i = 0; i < c.nodes; i++) {
            v[i] = Chains.velocity(c, i);
        }
        return v;
    }

    private static double stretching(LumpedMassChain c, int j, double[][] v, double flow) {
        double passed = j == NODE - 1 ? c.ratio(j) * flow : j == NODE ? -c.ratio(j) * flow : 0;
        return Chains.along(Chains.direction(c, j), Chains.sum(v[j + 1], -1, v[j])) + passed;
    }

    /** D = (EA τ/L)(θ r′ + (1 − θ) r) on every segment. */
    private static void assertForces(LumpedMassChain c, double[][] before, double was, double[][] after, double is) {
        for (int j = 0; j < c.segments(); j++) {
            double rate = c.weight * stretching(c, j, after, is) + (1 - c.weight) * stretching(c, j, before, was);
            double force = Chains.EA * c.dampingTime / c.length[j] * rate;
            assertThat(c.damping[j]).as("segment %d", j).isCloseTo(force, within(1e-8 * (1 + Math.abs(force))));
        }
    }

    private static void assertStep(LumpedMassChain c, Joint joint, double[][] before, double flow) {
        ChainStep.finish(c, KICK);
        joint.finish(KICK);
        assertForces(c, before, flow, velocities(c), joint.flow);
    }

    @Test
    void anAnchorGivesWayAsItsSpringsDo() {
        for (long seed = 1; seed <= CASES; seed++) {
            for (Stiffness each : STIFFNESSES) {
                LumpedMassChain c = chain(seed);
                SupportJoint post = post(c, Passage.clamped(), each);
                double[][] before = velocities(c);
                predict(c, post);
                assertThat(solve(c, post)).isFalse();
                assertStep(c, post, before, 0);
            }
        }
    }

    /** Without friction, and slipping against it toward either end; the neighbouring segments feel unlike pulls there. */
    @Test
    void cableThatRunsOverAnAnchorLengthensOneSideAndShortensTheOther() {
        for (long seed = 1; seed <= CASES; seed++) {
            for (Stiffness each : STIFFNESSES) {
                for (int toward : new int[] {-1, 1}) {
                    for (Passage passage : List.of(Passage.free(), Passage.friction(0.4))) {
                        LumpedMassChain c = chain(seed);
                        SupportJoint post = post(c, passage, each);
                        slip(c, post, 4 * toward, 30_500 - 29_500 * toward, 30_500 + 29_500 * toward);
                        double[][] before = velocities(c);
                        predict(c, post);
                        solve(c, post);
                        assertThat(post.status() * toward).as("seed %d", seed).isNotZero();
                        assertStep(c, post, before, 4 * toward);
                        assertThat(post.flow * toward).isPositive();
                    }
                }
            }
        }
    }

    /** The step goes on as the last one: one that slipped and comes to rest within it, and one that begins to slip. */
    @Test
    void aChangeBetweenStickingAndSlippingIsSolvedWithinTheStep() {
        for (long seed = 1; seed <= CASES; seed++) {
            for (Stiffness each : STIFFNESSES) {
                LumpedMassChain c = chain(seed);
                SupportJoint post = post(c, Passage.friction(0.3), each);
                tension(c, 1000, 30_000);
                double[][] before = velocities(c);
                predict(c, post);
                assertThat(solve(c, post)).as("begins to slip, seed %d", seed).isTrue();
                assertThat(post.status()).isEqualTo(1);
                assertStep(c, post, before, 0);

                tension(c, 30_000, 1000);
                post.flow = 1e-3;
                before = velocities(c);
                predict(c, post);
                assertThat(solve(c, post)).as("comes to rest, seed %d", seed).isTrue();
                assertThat(post.status()).isZero();
                assertStep(c, post, before, 1e-3);
                assertThat(post.flow).isZero();
            }
        }
    }

    /** An anchor at either end of the chain has a segment on one side only. */
    @Test
    void anEndAnchorGivesWayToItsOneSegment() {
        for (long seed = 1; seed <= CASES; seed++) {
            for (int node : new int[] {0, 4}) {
                LumpedMassChain c = chain(seed);
                c.mobility[NODE] = 1 / c.mass(NODE);
                Support end = Support.end("e", Point.of(c.x[node], c.y[node], c.z[node]));
                SupportJoint anchor = anchor(c, node, end, STIFFNESSES.get(1));
                double[][] before = velocities(c);
                predict(c, anchor);
                solve(c, anchor);
                assertStep(c, anchor, before, 0);
                assertThat(c.speedSquared(node)).as("it gives way").isPositive();
            }
        }
    }

    /** With the drag between ring and cable in the step, the damping is that of the velocities after both. */
    @Test
    void aRingSlidesAndGivesWay() {
        for (long seed = 1; seed <= CASES; seed++) {
            LumpedMassChain c = chain(seed);
            SlidingJoint ring = ring(c, 3);
            ring.swing = 4000;
            double[][] before = velocities(c);
            predict(c, ring);
            solve(c, ring);
            assertStep(c, ring, before, 3);
            assertThat(ring.flow).isNotZero();
        }
    }

    /** Before anybody is caught, and where no material can pass, ring and cable are one mass. */
    @Test
    void aRingThatHoldsTheCableGivesWayAsOneMass() {
        for (long seed = 1; seed <= CASES; seed++) {
            LumpedMassChain c = chain(seed);
            SlidingJoint waiting = new SlidingJoint(c, NODE, RING);
            waiting.contact(KICK);
            double[][] before = velocities(c);
            predict(c, waiting);
            solve(c, waiting);
            assertStep(c, waiting, before, 0);
            assertThat(waiting.flow).isZero();

            c = chain(seed);
            SlidingJoint stopped = ring(c, 2);
            stopped.leastBefore = 2 * c.length[NODE - 1];
            stopped.leastBehind = 2 * c.length[NODE];
            before = velocities(c);
            predict(c, stopped);
            solve(c, stopped);
            assertStep(c, stopped, before, 2);
            assertThat(stopped.flow).isZero();
        }
    }

    /** The damping forces of a joint take force times way, by the mean of the velocities before and after. */
    @Test
    void dampingTakesForceTimesWay() {
        for (long seed = 1; seed <= CASES; seed++) {
            LumpedMassChain c = chain(seed);
            SlidingJoint ring = ring(c, 3);
            assertDampingHeat(c, ring, 3);
            for (Stiffness each : STIFFNESSES) {
                c = chain(seed);
                SupportJoint post = post(c, Passage.friction(0.2), each);
                slip(c, post, 4, 1000, 60_000);
                assertDampingHeat(c, post, 4);
                assertThat(post.status()).isEqualTo(1);
            }
        }
    }

    private static void assertDampingHeat(LumpedMassChain c, Joint joint, double flow) {
        double[] before = Chains.velocity(c, NODE);
        predict(c, joint);
        solve(c, joint);
        joint.finish(KICK);
        double[] force = Chains.sum(new double[3], c.excess[NODE], Chains.direction(c, NODE));
        force = Chains.sum(force, -c.excess[NODE - 1], Chains.direction(c, NODE - 1));
        double drive = c.ratio(NODE) * c.excess[NODE] - c.ratio(NODE - 1) * c.excess[NODE - 1];
        double power = Chains.along(force, Chains.sum(before, 1, Chains.velocity(c, NODE)));
        double heat = -0.5 * KICK * (power + drive * (flow + joint.flow));
        assertThat(joint.dampingHeat).isCloseTo(heat, within(1e-9 * (1 + Math.abs(heat))));
    }

    /** What the pulls do to the cable that runs over a rigid post is motion, heat of friction or heat of damping. */
    @Test
    void thePullsOnRunningCableBecomeMotionOrHeat() {
        for (long seed = 1; seed <= CASES; seed++) {
            for (double flow : new double[] {4, 1e-3}) {
                LumpedMassChain c = chain(seed);
                SupportJoint post = post(c, Passage.friction(0.3), STIFFNESSES.get(0));
                slip(c, post, flow, flow < 1 ? 40_000 : 2000, 20_000);
                double load = post.flowLoad();
                predict(c, post);
                solve(c, post);
                post.finish(KICK);
                double drive = c.pull(NODE, c.elastic[NODE]) - c.pull(NODE - 1, c.elastic[NODE - 1]) + load;
                double done = KICK * drive * 0.5 * (flow + post.flow);
                double motion = 0.5 * c.mass(NODE) * (post.flow * post.flow - flow * flow);
                assertThat(motion + post.frictionHeat + post.dampingHeat)
                        .as("seed %d", seed)
                        .isCloseTo(done, within(1e-9 * (1 + Math.abs(done))));
                if (flow > 1) {
                    assertThat(post.frictionHeat).as("friction takes").isPositive();
                } else {
                    assertThat(post.flow).as("comes to rest within the step").isZero();
                }
            }
        }
    }

    /** More tension from the start of the step, and the same taken in afterwards, lead to the same velocities. */
    @Test
    void tensionThatChangesWithinTheStepCountsAsFromItsStart() {
        for (int segment = NODE - 1; segment <= NODE; segment++) {
            for (int kind = 0; kind < 6; kind++) {
                LumpedMassChain c = chain(7);
                LumpedMassChain same = chain(7);
                double more = 300;
                Joint late = joint(kind, c);
                Joint early = joint(kind, same);
                predict(c, late);
                late.retension(segment, more, KICK);
                same.elastic[segment] += more;
                predict(same, early);
                late.finish(KICK);
                early.finish(KICK);
                assertThat(Chains.velocity(c, NODE))
                        .as("kind %d, segment %d", kind, segment)
                        .containsExactly(Chains.velocity(same, NODE), within(1e-10));
                assertThat(late.flow).isCloseTo(early.flow, within(1e-10));
            }
        }
    }

    private static Joint joint(int kind, LumpedMassChain c) {
        tension(c, 2000, 3500);
        if (kind == 0) {
            return ring(c, 3);
        }
        if (kind == 1) {
            SlidingJoint waiting = new SlidingJoint(c, NODE, RING);
            waiting.turn();
            return waiting;
        }
        Passage passage = kind == 2 ? Passage.clamped() : kind == 3 ? Passage.free() : Passage.friction(0.2);
        SupportJoint post = post(c, passage, STIFFNESSES.get(kind == 5 ? 0 : 1));
        if (kind >= 4) {
            slip(c, post, 1, 2000, 3500);
        }
        return post;
    }

    /** The capstan turns by the angle between the segments in space, whatever plane it lies in. */
    @Test
    void theCapstansAngleIsThatBetweenTheSegmentsInSpace() {
        for (long seed = 1; seed <= CASES; seed++) {
            double angle = StrictMath.acos(chain(seed).cosine(NODE - 1));
            double limit = Math.exp(0.5 * angle);
            for (double share : new double[] {0.995, 1.005}) {
                LumpedMassChain c = chain(seed);
                stop(c, 1);
                stop(c, 3);
                tension(c, 2000, 2000 * limit * share);
                c.mobility[1] = 0;
                c.mobility[3] = 0;
                SupportJoint post = post(c, Passage.friction(0.5), STIFFNESSES.get(0));
                predict(c, post);
                double load = post.flowLoad() / 2000;
                assertThat(Math.abs(load)).as("weight hardly counts").isLessThan(2e-3);
                assertThat(solve(c, post)).as("seed %d, share %s", seed, share).isEqualTo(share > 1);
            }
        }
    }

    /**
     * Cable that an anchor takes up joins the flow by its speed along the segment that it comes from, seen from the anchor.
     * What the anchor holds of cable moves at v + r q u, r the stretch; with the momentum of what comes that is the momentum
     * afterwards, in every direction in which the anchor yields.
     */
    @Test
    void cableThatIsTakenUpKeepsItsMomentum() {
        Joint.Velocity v = new Joint.Velocity();
        double[] came = {5, -3, 4};
        v.set(came[0], came[1], came[2]);
        for (Stiffness each : STIFFNESSES) {
            for (int segment = NODE - 1; segment <= NODE; segment++) {
                LumpedMassChain c = chain(3);
                SupportJoint post = post(c, Passage.free(), each);
                post.flow = 2;
                double own = c.mass(NODE);
                double[] was = Chains.velocity(c, NODE);
                double[] u = Chains.direction(c, segment);
                double r = c.ratio(segment);
                double along = Chains.along(Chains.sum(came, -1, was), u);
                post.absorb(0.3, v, segment);
                assertThat((own + 0.3) * post.flow).isCloseTo(own * 2 + 0.3 * along / r, within(1e-12));
                double[] stiffness = {each.x(), each.y(), each.z()};
                double[] now = Chains.velocity(c, NODE);
                for (int k = 0; k < 3; k++) {
                    if (Double.isInfinite(stiffness[k])) {
                        assertThat(now[k]).as("rigid along axis %d", k).isEqualTo(was[k]);
                    } else {
                        assertThat((own + 0.3) * (now[k] + r * post.flow * u[k]))
                                .as("momentum along axis %d", k)
                                .isCloseTo(own * (was[k] + r * 2 * u[k]) + 0.3 * came[k], within(1e-12));
                    }
                }
            }
        }
    }

    /** A ring that waits is one with the cable: what it takes up is shared by all of it. */
    @Test
    void aWaitingRingSharesTheMomentumOfWhatItTakesUp() {
        LumpedMassChain c = chain(4);
        SlidingJoint ring = new SlidingJoint(c, NODE, RING);
        Joint.Velocity v = new Joint.Velocity();
        v.set(5, -3, 4);
        double own = c.mass(NODE) + RING;
        double[] was = Chains.velocity(c, NODE);
        ring.absorb(0.3, v, NODE);
        double[] sum = Chains.sum(Chains.sum(new double[3], own, was), 0.3, new double[] {5, -3, 4});
        assertThat(Chains.sum(new double[3], own + 0.3, Chains.velocity(c, NODE)))
                .containsExactly(sum, within(1e-12));
        assertThat(ring.flow).isZero();
        assertThat(new double[] {ring.owed(0), ring.owed(1), ring.owed(2)}).containsOnly(0);
    }
}
