package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** What every arrest must keep: impulse and momentum, energy, the capstan rule, the length of the cable. */
class ArrestInMotionTest {
    private static final double G = 9.80665;
    private static final double LENGTH = 20;

    private static LineModel line(Passage passage, Stiffness end) {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.4).axialStiffness(3e6).build())
                .support(Support.end("a", Point.of(0, 0, 10)).withStiffness(end))
                .intermediateAnchor("p", Point.of(8, 0, 10.2), passage)
                .support(Support.end("b", Point.of(LENGTH, 0, 10)).withStiffness(end))
                .pretension(1500)
                .build();
        return new LineModel(line);
    }

    private static MotionSystem system(LineModel model, boolean gripped) {
        MotionSetup setup = new MotionSetup(model, 5e-4);
        setup.attach(
                0,
                model.pointAtStation(0, 3),
                gripped,
                List.of(new MotionSetup.Person(
                        100, LoadingCurve.spring(5e4), 1.5, new MotionSetup.Timing(0, 0.3, true))));
        return new MotionSystem(setup, 0.25, 1);
    }

    private static double momentum(MotionSystem s, int axis) {
        LumpedMassChain c = s.chain;
        double[] v = axis == 0 ? c.vx : c.vz;
        double sum = 0;
        for (int i = 0; i < c.nodes; i++) {
            if (c.mobility[i] > 0) {
                sum += c.mass(i) * v[i];
            }
        }
        for (FallingBody b : s.bodies) {
            sum += b.mass * (axis == 0 ? b.vx : b.vz);
        }
        return sum;
    }

    /**
     * Impulse: what supports and weight push in a kick is the change of momentum of cable and worker (Newton). Clamped at
     * the post, so that no cable passes and all moving mass is at nodes.
     */
    @Test
    void impulseIsTheChangeOfMomentum() {
        MotionSystem s = system(line(Passage.clamped(), Stiffness.rigid()), true);
        double cable = 0;
        for (int i = 0; i < s.chain.nodes; i++) {
            cable += s.chain.mass(i);
        }
        double largest = 0;
        while (s.time < 0.6) {
            double before = s.step();
            double px = momentum(s, 0);
            double pz = momentum(s, 2);
            s.kick();
            double kick = before == 0 ? 0.5 * s.step() : 0.5 * (before + s.step());
            double fx = 0;
            double fz = (cable + s.bodies[0].mass) * G;
            for (SupportJoint a : s.anchors) {
                fx += a.reaction(0);
                fz += a.reaction(2);
            }
            if (s.bodies[0].falling() && before > 0) {
                assertThat(momentum(s, 0) - px).as("along at %s s", s.time).isCloseTo(-kick * fx, within(1e-6));
                assertThat(momentum(s, 2) - pz).as("down at %s s", s.time).isCloseTo(-kick * fz, within(1e-6));
                largest = Math.max(largest, Math.abs(kick * fz));
            }
            s.move();
        }
        assertThat(largest).isGreaterThan(0.1);
    }

    /** While the cable sticks at a post the pulls on its two sides stay within the capstan's e^(μθ) (Euler 1769). */
    @Test
    void stickingKeepsTheCapstanRule() {
        double friction = 0.15;
        MotionSystem s = system(line(Passage.friction(friction), Stiffness.rigid()), true);
        SupportJoint post = s.anchors[1];
        LumpedMassChain c = s.chain;
        int stuck = 0;
        int slipping = 0;
        while (s.time < 1.5) {
            s.kick();
            int j = post.node;
            double before = c.tension[j - 1];
            double behind = c.tension[j];
            double grip = Math.exp(friction * Math.acos(Math.min(1, c.cosine(j - 1))));
            if (post.status() == 0) {
                stuck++;
                // The weight that passing cable would lift, and the momentum of its neighbours, count beside the pulls.
                double slack = 1e-9 * (before + behind) + Math.abs(post.flowLoad()) * grip + 0.01 * grip * 20;
                assertThat(before).as("at %s s", s.time).isLessThanOrEqualTo(grip * behind + slack);
                assertThat(behind).as("at %s s", s.time).isLessThanOrEqualTo(grip * before + slack);
                assertThat(post.flow).isZero();
            } else {
                slipping++;
                assertThat(post.status() * post.flow).isGreaterThanOrEqualTo(0);
            }
            s.move();
        }
        assertThat(stuck).isGreaterThan(100);
        assertThat(slipping).isGreaterThan(100);
    }

    /** Whatever passes a post: the unstretched length of the whole cable stays, and so does its mass. */
    @Test
    void theCableStaysAsLongAsItIs() {
        for (boolean gripped : new boolean[] {true, false}) {
            MotionSystem s = system(line(Passage.free(), Stiffness.rigid()), gripped);
            double before = 0;
            for (int j = 0; j < s.chain.segments(); j++) {
                before += s.chain.length[j];
            }
            while (s.time < 1) {
                s.kick();
                s.move();
            }
            double after = 0;
            for (int j = 0; j < s.chain.segments(); j++) {
                after += s.chain.length[j];
            }
            assertThat(after).isCloseTo(before, within(1e-9));
            assertThat(s.anchors[1].passed).isNotZero();
        }
    }

    /** The account of all energies stays, with supports on springs, cable that passes, friction and a ring. */
    @Test
    void theEnergyAccountCloses() {
        for (Passage passage : new Passage[] {Passage.free(), Passage.friction(0.2), Passage.clamped()}) {
            for (boolean gripped : new boolean[] {true, false}) {
                LineModel model = line(passage, Stiffness.alongX(4e5));
                MotionSetup setup = new MotionSetup(model, 5e-4);
                setup.attach(
                        0,
                        model.pointAtStation(0, 3),
                        gripped,
                        List.of(new MotionSetup.Person(
                                100, LoadingCurve.spring(5e4), 1.5, new MotionSetup.Timing(0, 0.8, true))));
                Motion motion = new Motion(setup, 0.3, 1, new Motion.Sampling(1.5, 0.01));
                motion.run(1.5);
                double fall = 100 * G * motion.fallDistance();
                assertThat(motion.energyDrift() / fall)
                        .as("%s, gripped %s", passage, gripped)
                        .isLessThan(2e-3);
                assertThat(motion.counts().steps()).isGreaterThan(1000);
            }
        }
    }
}
