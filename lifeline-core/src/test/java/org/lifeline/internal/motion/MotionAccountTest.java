package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/**
 * A fall on a line in space that has everything: absorbers in both ends, elastic anchors, friction at a post, a ring and
 * somebody who hangs. The account of energy closes at every step, each of its parts is that of what it stands for, and
 * the steps keep within the bound of stability.
 */
class MotionAccountTest {
    private static final double MASS = 100;
    private static final double RIGID = Double.POSITIVE_INFINITY;
    private static final LoadingCurve ABSORBER =
            LoadingCurve.through(List.of(new LoadingCurve.Corner(0, 2500), new LoadingCurve.Corner(1, 4000)), 4e5, 1e6);

    private static MotionSystem system(double target, double scale) {
        LineModel model = new LineModel(Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.6).axialStiffness(2e6).build())
                .support(Support.end("a", Point.of(0, 0, 10))
                        .withStiffness(new Stiffness(4e5, 5e5, 6e5))
                        .withInlineAbsorber(InlineAbsorber.of(ABSORBER)))
                .support(Support.intermediate("p", Point.of(8, 1, 10.5), Passage.friction(0.1))
                        .withStiffness(new Stiffness(RIGID, 5e5, 7e5)))
                .support(Support.end("b", Point.of(16, 0, 10)).withInlineAbsorber(InlineAbsorber.of(ABSORBER)))
                .pretension(1500)
                .build());
        LineModel.Load hangs = model.hook(1, 3, true);
        model.hang(hangs, 80 * model.line().gravity());
        MotionSetup setup = new MotionSetup(model, 5e-4);
        MotionSetup.Person hanging =
                new MotionSetup.Person(80, LoadingCurve.spring(2e4), 1.5, MotionSetup.Timing.hanging());
        setup.attach(1, model.position(hangs), true, List.of(hanging));
        MotionSetup.Person falls = new MotionSetup.Person(
                MASS, LoadingCurve.spring(2e4), MotionCases.TAUT, new MotionSetup.Timing(0, 1, true));
        setup.attach(0, model.pointAtStation(0, 3), false, List.of(falls));
        return new MotionSystem(setup, target, scale);
    }

    private static double sum(double[] parts) {
        double sum = 0;
        for (double each : parts) {
            sum += each;
        }
        return sum;
    }

    /** Energy of fall is m g h; what friction, damping, absorbers and the mesh take is counted once and with its sign. */
    @Test
    void theAccountClosesAtEveryStep() {
        MotionSystem s = system(0.5, 1);
        s.time = Math.sqrt(2 / MotionCases.G) - 0.01;
        double[] parts = new double[MotionState.Energy.PARTS];
        double[] last = new double[MotionState.Energy.PARTS];
        double start = Double.NaN;
        double scale = MASS * MotionCases.G;
        while (s.time < 0.95) {
            s.remember();
            s.kick();
            s.energies(parts);
            if (s.steps == 1) {
                // The first kick is half of one, and its velocities stand a quarter of a step behind.
                assertThat(sum(parts)).isCloseTo(start, within(5e-4 * scale));
            }
            if (s.steps <= 1) {
                start = sum(parts);
            }
            assertThat(sum(parts)).as("at %s s", s.time).isCloseTo(start, within(2e-5 * scale));
            assertThat(parts[MotionState.Energy.DAMPING] - last[MotionState.Energy.DAMPING])
                    .as("heat of damping at %s s", s.time)
                    .isGreaterThan(-1e-3 * scale);
            System.arraycopy(parts, 0, last, 0, parts.length);
            s.move();
        }
        assertThat(parts[MotionState.Energy.FRICTION]).isGreaterThan(2e-4 * scale);
        assertThat(parts[MotionState.Energy.DAMPING]).isGreaterThan(2e-4 * scale);
        assertThat(parts[MotionState.Energy.INLINE]).isGreaterThan(0.1 * scale);
        assertThat(parts[MotionState.Energy.CONNECTIONS]).isGreaterThan(0.1 * scale);
        InlineElement a = s.inline[0];
        InlineElement b = s.inline[1];
        assertThat(a).isNotNull();
        assertThat(b).isNotNull();
        assertThat(parts[MotionState.Energy.INLINE]).isCloseTo(a.work + b.work, within(1e-9));
        double connections = s.bodies[0].work + s.bodies[1].work;
        assertThat(parts[MotionState.Energy.CONNECTIONS]).isCloseTo(connections, within(1e-9));
        double anchors = s.anchors[0].springEnergy() + s.anchors[1].springEnergy();
        assertThat(parts[MotionState.Energy.ANCHORS]).isCloseTo(last[MotionState.Energy.ANCHORS], within(1e-12));
        assertThat(anchors).isNotZero();
        assertThat(parts[MotionState.Energy.MESH]).isEqualTo(s.remeshing.lost);
        double motion = s.bodies[0].kineticEnergy() + s.bodies[1].kineticEnergy();
        assertThat(parts[MotionState.Energy.WORKER_MOTION]).isCloseTo(motion, within(1e-9));
    }

    /**
     * The square of the highest frequency is no larger than the largest sum over a row of stiffness times mobility, a
     * segment with its two neighbours (Gershgorin 1931); a step is 0.9 of 2/ω.
     */
    @Test
    void stepsKeepWithinTheBoundOfTheRows() {
        for (double target : new double[] {0.05, 0.07}) {
            MotionSystem s = system(target, 1);
            LumpedMassChain c = s.chain;
            double[] mobility = new double[c.nodes];
            for (int i = 0; i < c.nodes; i++) {
                mobility[i] = c.mobility[i];
            }
            for (Joint each : s.joints) {
                mobility[each.node] = each.mobility();
            }
            double most = 0;
            for (int j = 0; j < c.segments(); j++) {
                double row = 2e6 / c.length[j] * (mobility[j] + mobility[j + 1]);
                for (int side = -1; side <= 1; side += 2) {
                    if (j + side >= 0 && j + side < c.segments()) {
                        double mean = 0.5 * (2e6 / c.length[j] + 2e6 / c.length[j + side]);
                        row += mean * mobility[side < 0 ? j : j + 1];
                    }
                }
                most = Math.max(most, row);
            }
            s.kick();
            assertThat(s.step()).as("segments of %s m", target).isCloseTo(0.9 * 2 / Math.sqrt(most), within(1e-12));
        }
    }

    /** Somewhere between the joints a node lies outside the plane of the others, or an anchor across it is drawn aside. */
    @Test
    void onlyALineWithoutAnythingAcrossItIsPlane() {
        assertThat(plane(0)).isTrue();
        assertThat(plane(0.01)).isFalse();
        assertThat(system(0.5, 1).chain.plane).isFalse();
    }

    /** A level line with an elastic post that is a little out of line. */
    private static boolean plane(double aside) {
        LineModel model = new LineModel(Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.6).axialStiffness(2e6).build())
                .endAnchor("a", Point.of(0, 3, 10))
                .support(Support.intermediate("p", Point.of(8, 3 + aside, 10), Passage.free())
                        .withStiffness(new Stiffness(RIGID, 1e5, RIGID)))
                .endAnchor("b", Point.of(16, 3, 10))
                .pretension(1500)
                .build());
        return new MotionSystem(new MotionSetup(model, 0), 0.5, 1).chain.plane;
    }

    /** A level line with one absorber, seen from its other end, is a line with one absorber at its other end. */
    @Test
    void anAbsorberAtTheOtherEndIsTheMirrorImage() {
        MotionSystem[] both = new MotionSystem[2];
        for (int e = 0; e < 2; e++) {
            Support a = Support.end("a", Point.of(0, 0, 10));
            Support b = Support.end("b", Point.of(10, 0, 10));
            LineModel model = new LineModel(Lifeline.builder()
                    .cable(Cable.builder()
                            .massPerLength(0.6)
                            .axialStiffness(2e6)
                            .build())
                    .support(e == 0 ? a.withInlineAbsorber(InlineAbsorber.of(ABSORBER)) : a)
                    .support(e == 1 ? b.withInlineAbsorber(InlineAbsorber.of(ABSORBER)) : b)
                    .pretension(1500)
                    .build());
            both[e] = new MotionSystem(MotionCases.setup(model, e == 0 ? 3 : 7, true), 1, 1);
            both[e].time = Math.sqrt(2 / MotionCases.G);
            Strings.run(both[e], 0.65);
        }
        InlineElement first = both[0].inline[0];
        InlineElement last = both[1].inline[1];
        assertThat(both[0].inline[1]).isNull();
        assertThat(both[1].inline[0]).isNull();
        assertThat(first).isNotNull();
        assertThat(last).isNotNull();
        assertThat(first.extension).isGreaterThan(0.01);
        assertThat(last.extension).isCloseTo(first.extension, within(1e-6));
        assertThat(both[1].bodies[0].z).isCloseTo(both[0].bodies[0].z, within(1e-6));
        assertThat(both[1].anchors[1].reaction(2)).isCloseTo(both[0].anchors[0].reaction(2), within(0.1));
    }

    /** The ring's mass is a ten-thousandth of the lightest worker's, and whoever hangs on a ring has set it free. */
    @Test
    void aRingOnWhichSomebodyHangsIsFreeToSlide() {
        LineModel model = MotionCases.two(Passage.free());
        LineModel.Load hangs = model.hook(0, 4, false);
        model.hang(hangs, 80 * model.line().gravity());
        MotionSetup setup = new MotionSetup(model, 5e-4);
        setup.attach(
                0,
                model.position(hangs),
                false,
                List.of(
                        new MotionSetup.Person(50, LoadingCurve.spring(2e4), 1.5, MotionSetup.Timing.hanging()),
                        new MotionSetup.Person(30, LoadingCurve.spring(2e4), 1.5, MotionSetup.Timing.hanging())));
        MotionSystem s = new MotionSystem(setup, 0.5, 1);
        SlidingJoint ring = (SlidingJoint) s.bodies[0].joint;
        assertThat(ring.ringMass()).isCloseTo(1e-4 * 30, within(1e-12));
        s.bodies[0].vx = 2;
        s.bodies[1].vx = 2;
        Strings.run(s, 0.05);
        assertThat(ring.passed)
                .as("the ring goes with them, the cable passes back")
                .isLessThan(-1e-3);
    }
}
