package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.motion.peak.LowPassFilters;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Passage;
import org.lifeline.model.absorber.LoadingCurve;

/** Peaks, histories, filters and states, each fed with a system whose numbers are set by hand. */
class MotionLogsTest {
    /** Two spans, one who falls first and one later, both on the first span. */
    private final MotionSystem system = system();

    private static MotionSystem system() {
        LineModel model = MotionCases.two(Passage.friction(0.1));
        MotionSetup setup = new MotionSetup(model, 5e-4);
        setup.attach(0, model.pointAtStation(0, 3), true, List.of(MotionCases.person(0, 1, true)));
        setup.attach(0, model.pointAtStation(0, 6), true, List.of(MotionCases.person(0.4, 1, false)));
        MotionSystem s = new MotionSystem(setup, 1, 1);
        s.remember();
        s.kick();
        return s;
    }

    private static MotionSystem absorbers() {
        LoadingCurve curve = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 6000), new LoadingCurve.Corner(1, 6000)), 8e6, 2e5);
        return new MotionSystem(MotionCases.setup(MotionCases.withAbsorber(curve), 4, true), 1, 1);
    }

    private static double size(SupportJoint a) {
        return Math.sqrt(a.reaction(0) * a.reaction(0) + a.reaction(1) * a.reaction(1) + a.reaction(2) * a.reaction(2));
    }

    private void force(int body, double force, double z) {
        system.bodies[body].force = force;
        system.bodies[body].z = z;
    }

    private PeakValues peaks() {
        return new PeakValues(system.bodies.length, system.anchors.length);
    }

    @Test
    void theLargestForceAndTheLowestPlaceKeepTheirTimes() {
        PeakValues p = peaks();
        double[] forces = {100, 900, 900, 300};
        double[] heights = {9, 8, 7, 7};
        for (int k = 0; k < 4; k++) {
            system.time = k;
            force(0, forces[k], heights[k]);
            force(1, 2 * forces[k], 20);
            system.bodies[0].extension = 0.1 * k;
            system.bodies[0].longest = 0.3 - 0.1 * k;
            p.look(system);
        }
        assertThat(p.force).containsExactly(900, 1800);
        assertThat(p.forceTime).as("the first of equals").containsExactly(1, 1);
        assertThat(p.lowest[0]).isEqualTo(7);
        assertThat(p.lowestTime[0]).isEqualTo(2);
        assertThat(p.extensionAtLowest[0]).isCloseTo(0.2, within(1e-15));
        assertThat(p.extension[0]).isCloseTo(0.3, within(1e-15));
        double line = system.chain.z[system.bodies[0].joint.node];
        assertThat(p.lineAtLowest[0]).isEqualTo(line);
        assertThat(p.lineLowest[0]).isEqualTo(line);
        assertThat(p.together).as("of those who fall first only").isEqualTo(900);
    }

    @Test
    void theLineAtItsLowestIsNotTheLineAtTheLowestWorker() {
        PeakValues p = peaks();
        int node = system.bodies[0].joint.node;
        double z = system.chain.z[node];
        force(0, 0, 5);
        p.look(system);
        system.chain.z[node] = z - 1;
        force(0, 0, 6);
        p.look(system);
        assertThat(p.lineAtLowest[0]).isEqualTo(z);
        assertThat(p.lineLowest[0]).isEqualTo(z - 1);
    }

    @Test
    void theLargestTensionKeepsItsPlace() {
        PeakValues p = peaks();
        LumpedMassChain c = system.chain;
        c.tension[4] = 50_000;
        c.largest = 50_000;
        system.time = 0.7;
        p.look(system);
        c.tension[4] = 0;
        c.tension[2] = 40_000;
        c.largest = 40_000;
        system.time = 0.9;
        p.look(system);
        assertThat(p.tension).isEqualTo(50_000);
        assertThat(p.tensionTime).isEqualTo(0.7);
        assertThat(p.tensionPlace)
                .containsExactly(
                        new double[] {0.5 * (c.x[4] + c.x[5]), 0.5 * (c.y[4] + c.y[5]), 0.5 * (c.z[4] + c.z[5])},
                        within(1e-12));
    }

    @Test
    void forcesOnSupportsKeepTheirComponents() {
        PeakValues p = peaks();
        system.time = 0.3;
        p.look(system);
        for (int i = 0; i < 3; i++) {
            SupportJoint a = system.anchors[i];
            assertThat(p.support[i]).isCloseTo(size(a), within(1e-9));
            assertThat(p.supportTime[i]).isEqualTo(0.3);
            for (int axis = 0; axis < 3; axis++) {
                assertThat(p.supportVector[3 * i + axis]).isEqualTo(a.reaction(axis));
                assertThat(p.supportDisplacement[3 * i + axis]).isEqualTo(a.displacement(axis));
            }
        }
        double[] t = system.chain.tension;
        int post = system.anchors[1].node;
        assertThat(p.supportTension).containsExactly(0, t[0], t[post - 1], t[post], t[system.chain.segments() - 1], 0);
        t[post] *= 0.5;
        p.look(system);
        assertThat(p.supportTension[3]).as("the largest stays").isEqualTo(2 * t[post]);
        assertThat(p.supportTime[1]).isEqualTo(0.3);
    }

    @Test
    void extensionsOfAbsorbersAreThoseOfTheirEnd() {
        MotionSystem s = absorbers();
        InlineElement first = s.inline[0];
        assertThat(first).isNotNull();
        assertThat(s.inline[1]).isNull();
        PeakValues p = new PeakValues(1, 2);
        first.extension = 0.25;
        p.look(s);
        first.extension = 0.125;
        p.look(s);
        assertThat(p.inline).containsExactly(0.25, 0);
        TimeHistory h = new TimeHistory(1, 0.1, 1, 2);
        h.sample(s);
        MotionState state = new MotionState(s.chain.x.length, 2, 1);
        state.take(s);
        assertThat(h.inline(0)).containsExactly(0.125);
        assertThat(h.inline(1)).containsExactly(0);
        assertThat(state.inline(0)).isEqualTo(0.125);
        assertThat(state.inline(1)).isZero();
    }

    @Test
    void aWindowGoesOnFromTheOneBeforeIt() {
        PeakValues first = peaks();
        force(0, 5000, 3);
        system.time = 0.5;
        first.look(system);
        PeakValues whole = peaks();
        whole.copy(first);
        assertThat(whole).usingRecursiveComparison().isEqualTo(first);
        force(0, 6000, 4);
        system.time = 0.8;
        whole.look(system);
        assertThat(whole.force[0]).isEqualTo(6000);
        assertThat(whole.lowest[0]).isEqualTo(3);
        assertThat(whole.supportTime[0]).as("no larger than before").isEqualTo(0.5);
        assertThat(first.force[0]).as("the first window keeps its own").isEqualTo(5000);
    }

    /** Each signal goes through a filter of its own; the force on a support is the magnitude of three filtered ones. */
    @Test
    void measuredForcesAreTheFilteredOnes() {
        MeasuredForces m = new MeasuredForces(2, 3);
        LowPassFilters f = new LowPassFilters(LowPassFilters.LABORATORY, 6);
        PeakValues p = peaks();
        double last = 0;
        for (int k = 0; k < 30; k++) {
            system.time = 1e-3 * k;
            force(0, k < 3 ? 0 : 4000, 5);
            force(1, 100 * k, 5);
            system.chain.largest = 2000 + 50 * k;
            system.kick();
            double[] signals = {
                system.chain.largest,
                system.bodies[0].force,
                system.bodies[1].force,
                system.anchors[1].reaction(0),
                system.anchors[1].reaction(1),
                system.anchors[1].reaction(2)
            };
            f.step(system.time - last);
            for (int i = 0; i < signals.length; i++) {
                f.take(i, signals[i]);
            }
            f.start();
            last = system.time;
            m.record(system);
            p.look(m);
            assertThat(m.tension()).isCloseTo(f.value(0), within(1e-9));
            assertThat(m.force(0)).isCloseTo(f.value(1), within(1e-9));
            assertThat(m.force(1)).isCloseTo(f.value(2), within(1e-9));
            double square = f.value(3) * f.value(3) + f.value(4) * f.value(4) + f.value(5) * f.value(5);
            assertThat(m.support(1)).isCloseTo(Math.sqrt(square), within(1e-9));
            assertThat(p.filteredTension).isGreaterThanOrEqualTo(m.tension());
            assertThat(p.filteredForce[1]).isGreaterThanOrEqualTo(m.force(1));
            assertThat(p.filteredSupport[1]).isGreaterThanOrEqualTo(m.support(1));
        }
    }

    @Test
    void samplesAreDueAtEvenTimes() {
        TimeHistory h = new TimeHistory(0.1, 0.02, 2, 3);
        assertThat(h.due(0)).isTrue();
        system.time = 0;
        h.sample(system);
        assertThat(h.due(0.0199)).isFalse();
        assertThat(h.due(0.02)).isTrue();
        system.time = 0.05;
        h.sample(system);
        assertThat(h.due(0.0699)).as("from the last sample on").isFalse();
        assertThat(h.samples()).isEqualTo(2);
        assertThat(h.times()).containsExactly(0, 0.05);
        while (h.samples() < 8) {
            h.sample(system);
        }
        assertThat(h.due(100)).as("no more room than asked for, and three").isFalse();
    }

    @Test
    void aSampleHoldsWhatTheSystemHas() {
        TimeHistory h = new TimeHistory(1, 0.1, 2, 3);
        force(0, 1234, 4);
        force(1, 77, 5);
        system.bodies[0].x = 3.5;
        system.bodies[0].y = 0.25;
        system.bodies[0].extension = -0.5;
        system.bodies[1].extension = 0.5;
        h.sample(system);
        LumpedMassChain c = system.chain;
        int node = system.bodies[0].joint.node;
        double[] want = {1234, 0, 3.5, 0.25, 4, c.x[node], c.y[node], c.z[node]};
        for (int q = 0; q < want.length; q++) {
            assertThat(h.body(0, q)).as("quantity %d", q).containsExactly(want[q]);
        }
        assertThat(h.body(1, 0)).containsExactly(77);
        assertThat(h.body(1, 1)).containsExactly(0.5);
        SupportJoint post = system.anchors[1];
        assertThat(h.support(1, 0)).containsExactly(c.tension[post.node - 1]);
        assertThat(h.support(1, 1)).containsExactly(c.tension[post.node]);
        assertThat(h.support(0, 0)).containsExactly(0);
        assertThat(h.support(2, 1)).containsExactly(0);
        for (int axis = 0; axis < 3; axis++) {
            assertThat(h.support(2, 3 + axis)).containsExactly(system.anchors[2].reaction(axis));
            assertThat(h.support(2, 6 + axis)).containsExactly(system.anchors[2].displacement(axis));
        }
        double[] parts = new double[MotionState.Energy.PARTS];
        system.energies(parts);
        for (int part = 0; part < parts.length; part++) {
            assertThat(h.energy(part)).containsExactly(parts[part]);
        }
    }

    /** Free fall in closed form before the first sample, one sample an interval, for who falls at once and who later. */
    @Test
    void theFreeFallIsPutInFrontOfTheFirstSample() {
        TimeHistory h = new TimeHistory(2, 0.1, 2, 3);
        double until = 0.45;
        system.time = until;
        for (FallingBody each : system.bodies) {
            each.release(until, 0, MotionCases.G);
        }
        h.sample(system);
        h.prepend(system, until);
        assertThat(h.times())
                .containsExactly(new double[] {0, 0.1, 0.2, 0.30000000000000004, 0.4, 0.45}, within(1e-15));
        double[] first = h.body(0, 4);
        double[] later = h.body(1, 4);
        double[] motion = h.energy(MotionState.Energy.WORKER_MOTION);
        double[] weight = h.energy(MotionState.Energy.WORKER_WEIGHT);
        for (int i = 0; i < 5; i++) {
            double t = 0.1 * i;
            double drop = 0.5 * MotionCases.G * t * t;
            assertThat(first[i]).isCloseTo(system.bodies[0].startZ - drop, within(1e-12));
            assertThat(later[i]).as("has not begun").isCloseTo(system.bodies[1].startZ, within(1e-12));
            assertThat(motion[i] + weight[i])
                    .as("the energy of a fall is kept")
                    .isCloseTo(motion[0] + weight[0], within(1e-9));
            assertThat(motion[i]).isCloseTo(100 * MotionCases.G * drop, within(1e-9));
        }
        double[] tension = h.support(0, 1);
        assertThat(tension).as("the line waits").containsOnly(tension[5]);
    }

    @Test
    void nothingIsPutInFrontOfASampleAtTheStart() {
        TimeHistory h = new TimeHistory(2, 0.1, 2, 3);
        h.sample(system);
        h.prepend(system, 0);
        assertThat(h.samples()).isEqualTo(1);
        TimeHistory full = new TimeHistory(0.1, 0.1, 2, 3);
        full.sample(system);
        full.prepend(system, 9);
        assertThat(full.samples()).as("no room for it").isEqualTo(1);
        h.sample(system);
        h.prepend(system, 0.5);
        assertThat(h.samples()).as("only before the first one").isEqualTo(2);
    }

    @Test
    void aStateHoldsTheLineAsItIs() {
        MotionState state = new MotionState(system.chain.x.length, 3, 2);
        assertThat(state.time()).isNaN();
        system.time = 0.6;
        system.anchors[1].passed = 0.01;
        force(1, 0, 3);
        system.bodies[1].x = 4;
        system.bodies[1].y = 5;
        state.take(system);
        LumpedMassChain c = system.chain;
        assertThat(state.time()).isEqualTo(0.6);
        assertThat(state.passed(1)).isEqualTo(0.01);
        assertThat(state.supportNode(1)).isEqualTo(system.anchors[1].node);
        assertThat(state.attachmentNode(1)).isEqualTo(system.bodies[1].joint.node);
        assertThat(new double[] {state.body(1, 0), state.body(1, 1), state.body(1, 2)})
                .containsExactly(4, 5, 3);
        for (int i = 0; i < c.nodes; i++) {
            assertThat(new double[] {state.position(i, 0), state.position(i, 1), state.position(i, 2)})
                    .containsExactly(c.x[i], c.y[i], c.z[i]);
        }
        for (int j = 0; j < c.segments(); j++) {
            assertThat(state.length(j)).isEqualTo(c.length[j]);
            assertThat(state.tension(j)).isEqualTo(c.tension[j]);
        }
        double[] parts = new double[MotionState.Energy.PARTS];
        system.energies(parts);
        for (int part = 0; part < parts.length; part++) {
            assertThat(state.energy(part)).isEqualTo(parts[part]);
        }
        double x = c.x[3];
        c.x[3] += 1;
        assertThat(state.position(3, 0)).as("a state stays").isEqualTo(x);
    }
}
