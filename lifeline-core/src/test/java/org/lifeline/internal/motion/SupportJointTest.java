package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;

/** An anchor alone: a mass on springs, the capstan's limits, the flow of the cable over it. */
class SupportJointTest {
    private static final double KICK = 1e-4;
    private static final double RIGID = Double.POSITIVE_INFINITY;
    private static final Vector3 NONE = new Vector3(0, 0, 0);

    /** A cable over a post in the middle, 4 m to each side, turned by an angle down on both sides. */
    private static LumpedMassChain over(double gravity, double angle, double stretch) {
        double run = 4 * Math.cos(0.5 * angle);
        double drop = 4 * Math.sin(0.5 * angle);
        return Chains.through(
                gravity, stretch, new double[] {-run, 0, -drop}, new double[] {0, 0, 0}, new double[] {run, 0, -drop});
    }

    private static SupportJoint post(LumpedMassChain c, Passage passage, Stiffness stiffness) {
        c.mobility[1] = 0;
        Support support = Support.intermediate("p", Point.of(0, 0, 0), passage).withStiffness(stiffness);
        return new SupportJoint(c, 1, support, NONE, NONE);
    }

    private static SupportJoint rigid(LumpedMassChain c, Passage passage) {
        return post(c, passage, new Stiffness(RIGID, RIGID, RIGID));
    }

    private static void tension(LumpedMassChain c, double before, double behind) {
        double[] t = {before, behind};
        for (int j = 0; j < 2; j++) {
            c.setLength(j, c.stretched[j] / (1 + t[j] / Chains.EA));
            c.elastic[j] = t[j];
            c.tension[j] = t[j];
            c.excess[j] = 0;
        }
    }

    /** The strain energy per length takes part of the pull of a stretched cable: G = T + T²/2EA. */
    private static double pull(double tension) {
        return tension + tension * tension / (2 * Chains.EA);
    }

    @Test
    void aRigidAnchorStandsStill() {
        LumpedMassChain c = over(Chains.G, 0.6, 1.001);
        SupportJoint post = rigid(c, Passage.clamped());
        c.vx[1] = 1;
        c.wx[1] = 1;
        post.pullX = 1e4;
        post.predict(KICK);
        post.addRows(KICK);
        post.finish(KICK);
        assertThat(Chains.velocity(c, 1)).containsOnly(0);
        assertThat(Chains.predicted(c, 1)).containsOnly(0);
        assertThat(post.passes()).isFalse();
        assertThat(post.mobility()).isZero();
        assertThat(post.attachmentMobility()).isZero();
        assertThat(post.flow).isZero();
        assertThat(post.springEnergy()).isZero();
        assertThat(post.isStraight()).isTrue();
    }

    /** Both tensions, the weight of the cable lumped at the anchor, and what a worker pulls. */
    @Test
    void theForceOnAnAnchorIsThatOfAllThatPulls() {
        double angle = 0.6;
        LumpedMassChain c = over(Chains.G, angle, 1);
        SupportJoint post = rigid(c, Passage.clamped());
        tension(c, 3000, 5000);
        post.pullX = 70;
        post.pullY = 80;
        post.pullZ = -90;
        post.predict(KICK);
        post.finish(KICK);
        assertThat(post.reaction(0)).isCloseTo(2000 * Math.cos(0.5 * angle) + 70, within(1e-9));
        assertThat(post.reaction(1)).isCloseTo(80, within(1e-12));
        double weight = c.mass(1) * Chains.G;
        assertThat(post.reaction(2)).isCloseTo(-8000 * Math.sin(0.5 * angle) - weight - 90, within(1e-9));
    }

    @Test
    void endsArePulledFromOneSide() {
        LumpedMassChain c = over(0, 0.6, 1);
        tension(c, 3000, 5000);
        for (int node : new int[] {0, 2}) {
            Support end = Support.end("e", Point.of(c.x[node], 0, c.z[node]));
            SupportJoint anchor = new SupportJoint(c, node, end, NONE, NONE);
            anchor.predict(KICK);
            anchor.addRows(KICK);
            anchor.finish(KICK);
            double t = node == 0 ? 3000 : -5000;
            assertThat(anchor.reaction(0)).isCloseTo(t * Math.cos(0.3), within(1e-9));
            assertThat(anchor.reaction(2))
                    .isCloseTo(
                            3000 * (node == 0 ? 1 : 0) * Math.sin(0.3) + 5000 * (node == 0 ? 0 : 1) * Math.sin(0.3),
                            within(1e-9));
            assertThat(anchor.passes()).isFalse();
        }
    }

    /**
     * A mass on a spring by steps of Newmark's mean acceleration: tan(ω′h/2) = ω h/2, whatever the stiffness, and no
     * energy is lost.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1e3, 1e6, 1e9})
    void anElasticAnchorSwingsWithTheFrequencyOfItsSpring(double stiffness) {
        LumpedMassChain c = over(0, 0, 0.5);
        SupportJoint post = post(c, Passage.clamped(), new Stiffness(stiffness, RIGID, RIGID));
        double mass = c.mass(1);
        double h = 1e-3;
        double phase = 2 * Math.atan(0.5 * h * Math.sqrt(stiffness / mass));
        c.x[1] = 0.01;
        // Half a step before the start the anchor stood as the same cosine has it.
        c.vx[1] = 0.01 * (1 - Math.cos(phase)) / h;
        for (int k = 1; k <= 40; k++) {
            post.predict(h);
            post.addRows(h);
            post.finish(h);
            c.x[1] += h * c.vx[1];
            assertThat(c.x[1]).as("step %d", k).isCloseTo(0.01 * Math.cos(k * phase), within(1e-9));
            assertThat(c.vy[1]).isZero();
            assertThat(c.vz[1]).isZero();
            assertThat(post.dampingHeat).isCloseTo(0, within(1e-12));
        }
    }

    /** In all three directions, from what a spring holds as installed, against Newton's law with k h²/4 more of mass. */
    @Test
    void everySpringPushesBackByItsOwnStiffness() {
        LumpedMassChain c = over(Chains.G, 0, 0.5);
        Support support = Support.intermediate("p", Point.of(0, 0, 0), Passage.clamped())
                .withStiffness(new Stiffness(2e5, 3e5, 4e5));
        SupportJoint post = new SupportJoint(c, 1, support, new Vector3(10, 20, 30), NONE);
        c.mobility[1] = 0;
        c.x[1] = 0.01;
        c.y[1] = 0.02;
        c.z[1] = -0.03;
        double mass = c.mass(1);
        double[] force = {-10 - 2e5 * 0.01 + 5, -20 - 3e5 * 0.02 + 6, -30 + 4e5 * 0.03 + 7 - mass * Chains.G};
        post.pullX = 5;
        post.pullY = 6;
        post.pullZ = 7;
        post.predict(KICK);
        double[] stiffness = {2e5, 3e5, 4e5};
        double[] want = new double[3];
        for (int k = 0; k < 3; k++) {
            want[k] = KICK * force[k] / (mass + 0.25 * stiffness[k] * KICK * KICK);
        }
        assertThat(Chains.predicted(c, 1)).containsExactly(want, within(1e-12));
        double energy =
                0.01 * (10 + 0.5 * 2e5 * 0.01) + 0.02 * (20 + 0.5 * 3e5 * 0.02) - 0.03 * (30 - 0.5 * 4e5 * 0.03);
        assertThat(post.springEnergy()).isCloseTo(energy, within(1e-9));
        assertThat(post.displacement(0)).isEqualTo(0.01);
        assertThat(post.displacement(2)).isEqualTo(-0.03);
        assertThat(post.isStraight()).isFalse();
        assertThat(post.mobility()).isCloseTo(1 / mass, within(1e-12));
        assertThat(post.attachmentMobility()).isCloseTo(1 / mass, within(1e-12));
        c.vx[1] = 2;
        assertThat(post.cableEnergy()).isCloseTo(0.5 * mass * 4, within(1e-12));
    }

    @Test
    void aSpringAcrossTheLineIsStraightWhereItHoldsNothing() {
        LumpedMassChain c = over(Chains.G, 0.2, 1.001);
        Support s = Support.intermediate("p", Point.of(0, 0, 0), Passage.clamped())
                .withStiffness(new Stiffness(RIGID, 1e5, RIGID));
        assertThat(new SupportJoint(c, 1, s, NONE, NONE).isStraight()).isTrue();
        assertThat(new SupportJoint(c, 1, s, new Vector3(0, 5, 0), NONE).isStraight())
                .isFalse();
        // Yielded by 0.1 mm under 10 N as the spring has it: at 0 m it holds nothing.
        assertThat(new SupportJoint(c, 1, s, new Vector3(0, 10, 0), new Vector3(0, 1e-4, 0)).isStraight())
                .isTrue();
        SupportJoint moved = new SupportJoint(c, 1, s, NONE, NONE);
        c.y[1] = 1e-3;
        assertThat(moved.isStraight()).isFalse();
    }

    /** Without friction the lumped cable is accelerated by the difference of the pulls, and nothing is lost. */
    @Test
    void withoutFrictionTheCableRunsToTheLargerTension() {
        for (int sign : new int[] {-1, 1}) {
            LumpedMassChain c = over(0, 0.6, 1);
            SupportJoint post = rigid(c, Passage.free());
            tension(c, 4000 - 300 * sign, 4000 + 300 * sign);
            post.predict(KICK);
            post.addRows(KICK);
            assertThat(post.revise(KICK)).isFalse();
            post.finish(KICK);
            double drive = pull(c.elastic[1]) - pull(c.elastic[0]);
            assertThat(post.flow).isCloseTo(KICK * drive / c.mass(1), within(1e-9));
            assertThat(Math.signum(post.flow)).isEqualTo(sign);
            assertThat(post.frictionHeat).isCloseTo(0, within(1e-12));
            assertThat(post.passes()).isTrue();
            assertThat(post.mobility()).isCloseTo(1 / c.mass(1), within(1e-12));
            assertThat(post.status()).isEqualTo(1);
        }
    }

    @Test
    void aFlowWithoutFrictionStopsBeforeItUsesUpASegment() {
        LumpedMassChain c = over(0, 0.6, 1);
        SupportJoint post = rigid(c, Passage.free());
        tension(c, 3000, 5000);
        post.leastBefore = 2 * c.length[0];
        post.predict(KICK);
        post.addRows(KICK);
        post.finish(KICK);
        assertThat(post.flow).isZero();
        assertThat(post.status()).isZero();
        post.leastBefore = 0;
        post.leastBehind = 2 * c.length[1];
        post.predict(KICK);
        post.finish(KICK);
        assertThat(post.flow).as("away from the short segment it runs").isPositive();
    }

    /** Euler's and Eytelwein's rule from both sides of its limit, T₂ = T₁ e^(μθ), and toward both ends. */
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.3})
    void cableSticksUpToTheCapstansRatioAndSlipsBeyond(double friction) {
        double angle = 0.6;
        double limit = Math.exp(friction * angle);
        for (double share : new double[] {0.999, 1.001}) {
            for (boolean toEnd : new boolean[] {true, false}) {
                LumpedMassChain c = over(0, angle, 1);
                SupportJoint post = rigid(c, Passage.friction(friction));
                double large = 2000 * limit * share;
                tension(c, toEnd ? 2000 : large, toEnd ? large : 2000);
                post.predict(KICK);
                post.addRows(KICK);
                boolean slips = share > 1;
                assertThat(post.revise(KICK)).as("share %s", share).isEqualTo(slips);
                assertThat(post.status()).isEqualTo(slips ? (toEnd ? 1 : -1) : 0);
                post.finish(KICK);
                assertThat(Math.signum(post.flow)).isEqualTo(post.status());
            }
        }
    }

    /** What slips is driven by T₂ − e^(μθ) T₁; the heat is the rest of the difference times the way. */
    @Test
    void slippingTakesTheCapstansForceTimesTheWay() {
        double friction = 0.2;
        double angle = 0.6;
        double grip = Math.exp(friction * angle);
        for (boolean toEnd : new boolean[] {true, false}) {
            LumpedMassChain c = over(0, angle, 1);
            SupportJoint post = rigid(c, Passage.friction(friction));
            tension(c, toEnd ? 2000 : 3000, toEnd ? 3000 : 2000);
            post.predict(KICK);
            post.addRows(KICK);
            assertThat(post.revise(KICK)).isTrue();
            post.finish(KICK);
            double drive = (toEnd ? 1 : -1) * (pull(3000) - grip * pull(2000));
            assertThat(post.flow).isCloseTo(KICK * drive / c.mass(1), within(1e-9));
            double way = 0.5 * KICK * Math.abs(post.flow);
            assertThat(post.frictionHeat).isCloseTo((grip - 1) * pull(2000) * way, within(1e-9));
        }
    }

    @Test
    void whatSlipsAndWouldTurnBackSticks() {
        LumpedMassChain c = over(0, 0.6, 1);
        SupportJoint post = rigid(c, Passage.friction(0.2));
        tension(c, 2000, 3000);
        post.predict(KICK);
        post.addRows(KICK);
        assertThat(post.revise(KICK)).isTrue();
        post.finish(KICK);
        double flow = post.flow;
        assertThat(flow).isPositive();
        // Equal tensions slow it down by friction alone: it goes on while it is fast.
        tension(c, 2000, 2000);
        post.flow = 1e3 * flow;
        post.predict(KICK);
        post.addRows(KICK);
        assertThat(post.revise(KICK)).as("still fast").isFalse();
        assertThat(post.status()).isEqualTo(1);
        post.flow = 1e-3 * flow;
        post.predict(KICK);
        post.addRows(KICK);
        assertThat(post.revise(KICK)).as("it would turn back").isTrue();
        assertThat(post.status()).isZero();
        post.finish(KICK);
        assertThat(post.flow).isZero();
        assertThat(post.frictionHeat)
                .as("its motion is turned to heat, and what the pulls did")
                .isCloseTo(0.5 * c.mass(1) * 1e-6 * flow * flow, within(1e-12));
    }

    @Test
    void aSlipThatWouldUseUpASegmentIsNotBegun() {
        LumpedMassChain c = over(0, 0.6, 1);
        SupportJoint post = rigid(c, Passage.friction(0.1));
        post.leastBefore = 2 * c.length[0];
        tension(c, 2000, 4000);
        post.predict(KICK);
        post.addRows(KICK);
        assertThat(post.revise(KICK)).isFalse();
        assertThat(post.status()).isZero();
    }

    /** Momentum along the cable is kept when a node is taken up, and that across it by an elastic anchor. */
    @Test
    void takingUpCableKeepsMomentum() {
        LumpedMassChain c = over(0, 0, 1);
        SupportJoint post = post(c, Passage.free(), new Stiffness(RIGID, 1e5, 1e5));
        post.flow = 2;
        c.vy[1] = 1;
        c.vz[1] = -1;
        Joint.Velocity v = new Joint.Velocity();
        v.set(5, -3, 4);
        double own = c.mass(1);
        double added = 0.3;
        post.absorb(added, v, 1);
        double sum = own + added;
        assertThat(sum * post.flow).as("along").isCloseTo(own * 2 + added * 5 / Math.max(1, c.ratio(1)), within(1e-12));
        assertThat(sum * c.vy[1]).isCloseTo(own * 1 - added * 3, within(1e-12));
        assertThat(sum * c.vz[1]).isCloseTo(-own * 1 + added * 4, within(1e-12));
        assertThat(c.vx[1]).as("rigid along x").isZero();
    }

    /** All momentum that comes to an end anchor is its own, along the line too, since no cable passes it. */
    @Test
    void nothingPassesAnEndThatTakesUpCable() {
        LumpedMassChain c = over(0, 0, 1);
        SupportJoint post = post(c, Passage.clamped(), new Stiffness(1e5, RIGID, 1e5));
        Joint.Velocity v = new Joint.Velocity();
        v.set(5, -3, 4);
        double own = c.mass(1);
        post.absorb(0.3, v, 1);
        assertThat(post.flow).isZero();
        assertThat((own + 0.3) * c.vz[1]).isCloseTo(0.3 * 4, within(1e-12));
        assertThat((own + 0.3) * c.vx[1]).isCloseTo(0.3 * 5, within(1e-12));
        assertThat(c.vy[1]).isZero();
    }
}
