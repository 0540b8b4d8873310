package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.internal.line.Piece;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/**
 * A sloping line in space, on which two workers hang while a third falls: its chain has the places and tensions of the
 * catenaries at rest, and stays at rest until somebody is caught.
 */
class ChainOnCatenariesTest {
    private static final double MASS = 80;
    private static final double RIGID = Double.POSITIVE_INFINITY;

    private final LineModel model;
    private final MotionSetup setup;

    ChainOnCatenariesTest() {
        LoadingCurve absorber = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 1800), new LoadingCurve.Corner(1, 9000)), 8e5, 1e6);
        model = new LineModel(Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.6).axialStiffness(2e6).build())
                .support(Support.end("a", Point.of(0, 0, 10))
                        .withStiffness(new Stiffness(4e5, 5e5, 6e5))
                        .withInlineAbsorber(InlineAbsorber.of(absorber)))
                .support(Support.intermediate("p", Point.of(8, 2, 11), Passage.friction(0.2))
                        .withStiffness(new Stiffness(3e5, RIGID, 7e5)))
                .support(Support.end("b", Point.of(18, 1, 10.5)).withInlineAbsorber(InlineAbsorber.of(absorber)))
                .pretension(1500)
                .build());
        LineModel.Load early = model.hook(0, 6, true);
        model.hang(early, MASS * model.line().gravity());
        LineModel.Load late = model.hook(1, 3, true);
        model.hang(late, MASS * model.line().gravity());
        setup = new MotionSetup(model, 5e-4);
        MotionSetup.Person hanging =
                new MotionSetup.Person(MASS, LoadingCurve.spring(5e4), 1.5, MotionSetup.Timing.hanging());
        setup.attach(0, model.position(early), true, List.of(hanging));
        setup.attach(1, model.position(late), true, List.of(hanging));
        setup.attach(0, model.pointAtStation(0, 2), false, List.of(MotionCases.person(0.5, 1, true)));
    }

    /** Number of the piece of a span in which a point lies, by its horizontal distance from the start. */
    private static int pieceAt(List<Piece> pieces, Point place) {
        Piece first = pieces.get(0);
        double run = first.start().horizontalDistance(place);
        return pieces.size() == 1 || run <= first.start().horizontalDistance(first.end()) + 1e-9 ? 0 : 1;
    }

    /** Unstretched length of the cable at rest from the start of the span to a place [m]. */
    private static double lengthTo(List<Piece> pieces, Point place) {
        int number = pieceAt(pieces, place);
        Piece p = pieces.get(number);
        double gone = number == 0 ? 0 : pieces.get(0).length();
        return gone + p.lengthAtRun(p.start().horizontalDistance(place));
    }

    @Test
    void nodesLieOnTheCatenariesAtEvenLengthsBetweenJoints() {
        ChainBuilder.Result r = new ChainBuilder(setup, 0.3).build(0.01);
        LumpedMassChain c = r.chain();
        assertThat(r.joints()).hasSize(6);
        int checked = 0;
        for (int k = 0; k + 1 < r.joints().size(); k++) {
            int span = k < 3 ? 0 : 1;
            List<Piece> pieces = model.pieces(span);
            int from = r.joints().get(k).node;
            int to = r.joints().get(k + 1).node;
            double whole = pieces.stream().mapToDouble(Piece::length).sum();
            double start = k == 0 || k == 3 ? 0 : lengthTo(pieces, at(c, from));
            double end = k == 2 || k == 4 ? whole : lengthTo(pieces, at(c, to));
            double unit = (end - start) / (to - from);
            assertThat(r.reference().get(k)).as("reference length %d", k).isCloseTo(unit, within(1e-9));
            // The later span is one in which nobody falls: segments may be twice as long.
            assertThat(unit).isBetween(span == 0 ? 0.25 : 0.5, span == 0 ? 0.35 : 0.7);
            for (int i = from + 1; i < to; i++) {
                double s = start + unit * (i - from);
                int number = pieceAt(pieces, at(c, i));
                Point want = pieces.get(number)
                        .at(number == 0 ? s : s - pieces.get(0).length());
                assertThat(at(c, i).distance(want)).as("node %d", i).isLessThan(1e-8);
                checked++;
            }
        }
        assertThat(checked).isGreaterThan(25);
    }

    private static Point at(LumpedMassChain c, int node) {
        return Point.of(c.x[node], c.y[node], c.z[node]);
    }

    /** Tension by the strain of each segment is that of the catenary at its middle, less the links of the absorbers. */
    @Test
    void segmentsPullAsTheCatenariesDo() {
        MotionSystem s = new MotionSystem(setup, 0.3, 1);
        LumpedMassChain c = s.chain;
        InlineElement start = s.inline[0];
        InlineElement end = s.inline[1];
        assertThat(start).isNotNull();
        assertThat(end).isNotNull();
        assertThat(start.link()).isGreaterThan(1e-4);
        assertThat(c.firstLink).isEqualTo(start.link());
        assertThat(c.lastLink).isEqualTo(end.link());
        int post = s.anchors[1].node;
        for (int span = 0; span < 2; span++) {
            List<Piece> pieces = model.pieces(span);
            double gone = 0;
            int last = span == 0 ? post : c.segments();
            for (int j = span == 0 ? 0 : post; j < last; j++) {
                double middle = gone + 0.5 * c.length[j];
                boolean first = middle < pieces.get(0).length();
                Piece p = pieces.get(first ? 0 : 1);
                double along = first ? middle : middle - pieces.get(0).length();
                Vector3 t = p.startTension().plus(new Vector3(0, 0, p.weight() * along));
                assertThat(c.elastic[j]).as("segment %d", j).isCloseTo(t.magnitude(), within(0.05));
                gone += c.length[j];
            }
            assertThat(gone)
                    .isCloseTo(pieces.stream().mapToDouble(Piece::length).sum(), within(1e-4));
        }
        assertThat(start.force).isCloseTo(c.elastic[0], within(2.0));
        assertThat(end.force).isCloseTo(c.elastic[c.segments() - 1], within(2.0));
    }

    /** Until the catch nothing moves but for what segments are longer than arcs; the anchors carry what they did at rest. */
    @Test
    void itStaysAtRestUntilTheCatch() {
        MotionSystem s = new MotionSystem(setup, 0.3, 1);
        double[] x = s.chain.x.clone();
        double[] y = s.chain.y.clone();
        double[] z = s.chain.z.clone();
        double hangs = s.bodies[0].z;
        assertThat(s.bodies[0].force).isCloseTo(MASS * MotionCases.G, within(1e-6));
        assertThat(s.chain.plane).isFalse();
        double[] before = new double[MotionState.Energy.PARTS];
        s.remember();
        s.energies(before);
        Strings.run(s, 0.1);
        for (int i = 0; i < s.chain.nodes; i++) {
            double moved =
                    Math.abs(s.chain.x[i] - x[i]) + Math.abs(s.chain.y[i] - y[i]) + Math.abs(s.chain.z[i] - z[i]);
            assertThat(moved).as("node %d", i).isLessThan(2e-3);
        }
        assertThat(s.bodies[0].z).isCloseTo(hangs, within(2e-3));
        for (int i = 0; i < 3; i++) {
            Vector3 rest = model.reaction(i);
            double[] want = {rest.x(), rest.y(), rest.z()};
            for (int axis = 0; axis < 3; axis++) {
                assertThat(s.anchors[i].reaction(axis))
                        .as("anchor %d, axis %d", i, axis)
                        .isCloseTo(want[axis], within(0.03 * rest.magnitude()));
            }
        }
    }

    /** Joints keep a remainder of 0.15 of the reference length on either side; nothing is kept beyond the ends. */
    @Test
    void jointsKeepAPartOfTheReferenceLength() {
        ChainBuilder.Result r = new ChainBuilder(setup, 0.3).build(0.01);
        List<Joint> joints = r.joints();
        for (int k = 0; k < joints.size(); k++) {
            double before = k == 0 ? 0 : 0.15 * r.reference().get(k - 1);
            double behind = k == joints.size() - 1 ? 0 : 0.15 * r.reference().get(k);
            assertThat(joints.get(k).leastBefore).as("joint %d", k).isCloseTo(before, within(1e-12));
            assertThat(joints.get(k).leastBehind).as("joint %d", k).isCloseTo(behind, within(1e-12));
        }
    }
}
