package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** The step that a system takes and its energy account, against closed forms. */
class MotionSystemTest {
    private static final double EA = 4e6;
    private static final double MASS = 0.5;
    private static final double TENSION = 2000;

    private static MotionSystem string(double span, int segments) {
        return Strings.string(new double[] {TENSION, EA}, new double[] {span, MASS}, Strings.NONE, segments);
    }

    private static MotionSystem with(LoadingCurve curve, double mass, double scale) {
        LineModel model = MotionCases.single();
        MotionSetup setup = new MotionSetup(model, 0);
        setup.attach(
                0,
                model.pointAtStation(0, 4),
                true,
                List.of(new MotionSetup.Person(mass, curve, 1.5, new MotionSetup.Timing(0, 1, true))));
        return new MotionSystem(setup, 0.5, scale);
    }

    private static double stepOf(MotionSystem s) {
        s.kick();
        return s.step();
    }

    /** Gershgorin's bound of a uniform chain is 4 EA/(L m): nine tenths of the time of a wave through a segment. */
    @Test
    void theStepIsNineTenthsOfAWaveThroughASegment() {
        MotionSystem s = string(10, 50);
        double length = s.chain.length[3];
        double unstretched = MASS * (1 + TENSION / EA);
        assertThat(stepOf(s)).isCloseTo(0.9 * length * Math.sqrt(unstretched / EA), within(1e-9));
        // The highest frequency of n equal segments between fixed ends: 2 √(k/m) cos(π/2n).
        double highest = 2 * Math.sqrt(EA / unstretched) / length * Math.cos(Math.PI / 100);
        assertThat(s.step()).as("stable").isLessThan(2 / highest);
    }

    @Test
    void noStepIsLongerThanTheLongest() {
        assertThat(stepOf(string(40, 20))).isEqualTo(2.5e-4);
    }

    /** ω² h² ≤ ½ for worker and attachment on their subsystem, but no more than eight steps for one of the cable. */
    @Test
    void aStiffSubsystemShortensTheStep() {
        double plain = stepOf(with(LoadingCurve.spring(100), 100, 1));
        MotionSystem stiff = with(LoadingCurve.spring(2e7), 100, 1);
        double mobility = stiff.bodies[0].joint.attachmentMobility() + 1.0 / 100;
        assertThat(stepOf(stiff))
                .isCloseTo(Math.sqrt(0.5 / (2e7 * mobility)), within(1e-12))
                .isLessThan(plain);
        assertThat(stepOf(with(LoadingCurve.spring(1e12), 100, 1))).isCloseTo(plain / 8, within(1e-3 * plain));
    }

    @Test
    void longStepsAreTwiceAsLong() {
        MotionSystem plain = string(10, 50);
        LoadingCurve soft = LoadingCurve.spring(100);
        assertThat(stepOf(with(soft, 100, 2))).isLessThanOrEqualTo(2.5e-4);
        double one = stepOf(with(soft, 100, 0.5));
        assertThat(stepOf(with(soft, 100, 0.25))).isCloseTo(0.5 * one, within(1e-12));
        MotionSystem longer = with(soft, 100, 2);
        longer.kick();
        double h = 0.5 * longer.step();
        assertThat(longer.chain.weight)
                .as("axial elasticity is implicit: θ = 0.6 + h/4τ")
                .isCloseTo(0.6 + 0.25 * h / longer.chain.dampingTime, within(1e-12));
        plain.kick();
        assertThat(plain.chain.weight).isEqualTo(0.6);
    }

    /** Velocities stand half a step before the positions: the first kick is half as long. */
    @Test
    void theFirstKickIsHalfAStep() {
        MotionSystem s = with(LoadingCurve.spring(5e4), 100, 1);
        s.kick();
        double h = s.step();
        assertThat(s.bodies[0].vz).isCloseTo(-0.5 * MotionCases.G * h, within(1e-15));
        s.move();
        assertThat(s.time).isEqualTo(h);
        assertThat(s.steps).isEqualTo(1);
        assertThat(s.work).isEqualTo(s.chain.nodes);
        s.kick();
        assertThat(s.bodies[0].vz).isCloseTo(-1.5 * MotionCases.G * h, within(1e-14));
        s.move();
        assertThat(s.bodies[0].z - s.bodies[0].startZ).isCloseTo(-0.5 * MotionCases.G * 4 * h * h, within(1e-14));
    }

    @Test
    void theAccountAtRestIsStrainAndWeight() {
        MotionSystem s = string(10, 20);
        double[] e = new double[MotionState.Energy.PARTS];
        Arrays.fill(e, 7);
        s.remember();
        s.energies(e);
        double length = 10 / (1 + TENSION / EA);
        assertThat(e[MotionState.Energy.STRAIN]).isCloseTo(length * TENSION * TENSION / (2 * EA), within(1e-4));
        double weight = 0;
        for (int i = 0; i < s.chain.nodes; i++) {
            weight += s.chain.mass(i) * Strings.NONE * s.chain.z[i];
        }
        assertThat(e[MotionState.Energy.WEIGHT]).isCloseTo(weight, within(1e-12));
        assertThat(e[MotionState.Energy.WORKER_WEIGHT]).isCloseTo(Strings.NONE * s.bodies[0].z, within(1e-12));
        for (int part : new int[] {
            MotionState.Energy.CABLE_MOTION,
            MotionState.Energy.WORKER_MOTION,
            MotionState.Energy.ANCHORS,
            MotionState.Energy.CONNECTIONS,
            MotionState.Energy.INLINE,
            MotionState.Energy.FRICTION,
            MotionState.Energy.DAMPING,
            MotionState.Energy.MESH
        }) {
            assertThat(e[part]).as("part %d", part).isZero();
        }
    }

    /** Kinetic energy at the time of the positions: the product of the velocities half a step before and behind. */
    @Test
    void theAccountOfMotionIsThatOfTheNodes() {
        MotionSystem s = string(10, 8);
        LumpedMassChain c = s.chain;
        for (int i = 1; i < c.nodes - 1; i++) {
            c.vx[i] = 0.1 * i;
            c.vy[i] = 2;
            c.vz[i] = -i;
        }
        s.remember();
        double want = 0;
        for (int i = 1; i < c.nodes - 1; i++) {
            want += 0.5 * c.mass(i) * (0.01 * i * i * 2 + 4 * 3 + i * i * 0.5);
            c.vx[i] *= 2;
            c.vy[i] *= 3;
            c.vz[i] *= 0.5;
        }
        double[] e = new double[MotionState.Energy.PARTS];
        s.energies(e);
        assertThat(e[MotionState.Energy.CABLE_MOTION]).isCloseTo(want, within(1e-10));
    }

    /** An elastic post that was pulled 10 mm along the line: ½ k d² and what the spring held, times d. */
    @Test
    void theAccountHoldsTheSpringsOfAnchorsAndTheCableThatPasses() {
        MotionSystem s = posts(Passage.free(), 0);
        SupportJoint post = s.anchors[1];
        double before = post.springEnergy();
        s.chain.x[post.node] += 0.01;
        double[] e = new double[MotionState.Energy.PARTS];
        post.flow = 2;
        post.flowBefore = 3;
        s.remember();
        s.energies(e);
        assertThat(before).isCloseTo(0, within(1e-6));
        assertThat(e[MotionState.Energy.ANCHORS]).isCloseTo(0.5 * 1e5 * 1e-4, within(1e-3));
        assertThat(e[MotionState.Energy.CABLE_MOTION]).isCloseTo(0.5 * post.passingMass() * 6, within(1e-9));
    }

    private static MotionSystem posts(Passage passage, double aside) {
        double rigid = Double.POSITIVE_INFINITY;
        return new MotionSystem(
                new MotionSetup(
                        new LineModel(Lifeline.builder()
                                .cable(Cable.builder()
                                        .massPerLength(MASS)
                                        .axialStiffness(EA)
                                        .build())
                                .endAnchor("a", Point.of(0, 0, 10))
                                .support(Support.intermediate("p", Point.of(8, aside, 10), passage)
                                        .withStiffness(new Stiffness(1e5, rigid, rigid)))
                                .endAnchor("b", Point.of(16, 0, 10))
                                .pretension(TENSION)
                                .build()),
                        0),
                0.5,
                1);
    }

    @Test
    void aLineWithACornerLiesInNoPlane() {
        assertThat(posts(Passage.clamped(), 0).chain.plane).isTrue();
        assertThat(posts(Passage.clamped(), 0.5).chain.plane).isFalse();
    }

    /** A level line seen from its other end moves as the mirror image. */
    @Test
    void aMirroredFallMovesAsTheMirrorImage() {
        MotionSystem left = mirrored(3);
        MotionSystem right = mirrored(MotionCases.SPAN - 3);
        for (MotionSystem s : List.of(left, right)) {
            s.time = 0.45;
            Strings.run(s, 0.5);
        }
        int n = left.chain.nodes;
        assertThat(right.chain.nodes).isEqualTo(n);
        assertThat(left.bodies[0].force).isPositive();
        assertThat(right.bodies[0].force).isCloseTo(left.bodies[0].force, within(1e-3));
        for (int i = 0; i < n; i++) {
            assertThat(right.chain.z[n - 1 - i]).isCloseTo(left.chain.z[i], within(1e-7));
            assertThat(right.chain.x[n - 1 - i]).isCloseTo(MotionCases.SPAN - left.chain.x[i], within(1e-7));
        }
    }

    private static MotionSystem mirrored(double station) {
        return new MotionSystem(MotionCases.setup(MotionCases.single(), station, true), 1, 1);
    }

    /** Until the first wave arrives the tension at a far end stays what it was. */
    @Test
    void nothingOutrunsTheAxialWave() {
        MotionSystem s = mirrored(2);
        s.time = Math.sqrt(2 / MotionCases.G);
        double far = s.chain.elastic[s.chain.segments() - 1];
        double speed = Math.sqrt(MotionCases.EA / MotionCases.MASS_PER_LENGTH);
        double until = s.time + 0.5 * 8 / speed;
        Strings.run(s, until);
        assertThat(s.bodies[0].force).isPositive();
        assertThat(s.chain.tension[s.chain.segments() - 1]).isCloseTo(far, within(0.02 * far));
    }

    /** A motion that has run away ends: it would go on for ever in ever shorter steps. */
    @Test
    void aMotionThatHasRunAwayEnds() {
        for (double speed : new double[] {9e3, 2e4, Double.NaN}) {
            Motion motion =
                    new Motion(MotionCases.setup(MotionCases.single(), 4, true), 0.5, 1, new Motion.Sampling(1, 0.5));
            MotionSystem s = motion.system();
            assertThat(s.hasRunAway()).isFalse();
            for (double[] along : new double[][] {s.chain.vy, s.chain.vz}) {
                along[2] = -speed;
                assertThat(s.hasRunAway()).as("in any direction").isEqualTo(!(speed < 1e4));
                along[2] = 0;
            }
            s.chain.vx[3] = speed;
            assertThat(s.hasRunAway()).isEqualTo(!(speed < 1e4));
            if (!(speed < 1e4)) {
                assertThatThrownBy(() -> motion.run(1))
                        .isInstanceOf(NoEquilibriumException.class)
                        .hasMessageContaining("motion of the line");
            }
        }
    }
}
