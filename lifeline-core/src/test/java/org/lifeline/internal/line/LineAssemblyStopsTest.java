package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;

/** In-line absorbers at a rigid stop, states that are none, and the factors of the tangent. */
class LineAssemblyStopsTest {
    private static final double MOST = 0.8;
    private static final LoadingCurve RIGID_STOP = LoadingCurve.through(
            List.of(new LoadingCurve.Corner(0, 5000), new LoadingCurve.Corner(MOST, 7000)),
            8e6,
            Double.POSITIVE_INFINITY);

    private static Support end(String id, double x, boolean absorbs) {
        Support s = Support.end(id, Point.of(x, 0, 0.1 * x));
        return absorbs ? s.withInlineAbsorber(InlineAbsorber.of(RIGID_STOP)) : s;
    }

    private static LineSystem span(int absorberEnd, LoadSlot... slots) {
        return Lines.of(List.of(end("a", 0, absorberEnd == 0), end("b", 10, absorberEnd == 1)), 1000, 4, slots);
    }

    private static LineState yields(LineSystem sys, int e, int piece, double extension, LoadSlot... slots) {
        LineState s = Lines.straight(sys, 7500, slots);
        s.yielding[e] = true;
        s.piece[e] = piece;
        s.extension[e] = extension;
        return s;
    }

    /** A rigid stop says where the absorber is, whatever the tension; before it the curve says it by the tension. */
    @Test
    void aRigidStopHoldsTheExtension() {
        for (int e = 0; e < 2; e++) {
            LineSystem sys = span(e);
            int stop = RIGID_STOP.pieces() - 1;
            int row = sys.unknowns.extensionIndex(e);
            LineAssembly at = new LineAssembly(sys);
            assertThat(at.assemble(yields(sys, e, stop, 0.7), true)).isTrue();
            assertThat(at.equations.residual[row]).isCloseTo(0.7 - MOST, within(1e-15));
            assertThat(at.equations.worst).as("over the chord").isGreaterThan(0.1 / sys.chord[0] * (1 - 1e-9));
            for (int column = 0; column < sys.unknowns.count(); column++) {
                assertThat(at.equations.matrix.get(row, column)).isEqualTo(column == row ? 1 : 0);
            }
            LineAssembly before = new LineAssembly(sys);
            assertThat(before.assemble(yields(sys, e, stop - 1, 0.7), true)).isTrue();
            double tension = sys.forces.endTension(yields(sys, e, stop - 1, 0.7), e);
            double force = RIGID_STOP.force(0.7);
            assertThat(before.equations.residual[row]).isCloseTo((tension - force) / tension, within(1e-12));
            assertThat(before.equations.matrix.get(row, row))
                    .isCloseTo(-RIGID_STOP.slopeOfPiece(stop - 1) / tension, within(1e-12));
        }
    }

    /** A load raises the tension at the end: an absorber there feels it unless it is at a rigid stop. */
    @Test
    void atARigidStopALoadMovesNothing() {
        LoadSlot slot = new LoadSlot(0, true, 4);
        LineSystem sys = span(1, slot);
        int row = sys.unknowns.extensionIndex(1);
        for (int piece = RIGID_STOP.pieces() - 2; piece < RIGID_STOP.pieces(); piece++) {
            LineState s = Lines.loaded(yields(sys, 1, piece, 0.7, slot), 0, 500);
            double[] rates = new double[sys.unknowns.count()];
            new ResidualRates(sys).byForce(s, 0, rates);
            LineState more = s.copy();
            more.force[0] += 1e-3;
            double tension = sys.forces.endTension(s, 1);
            double risen = sys.forces.endTension(more, 1) - tension;
            double want = piece == RIGID_STOP.pieces() - 1 ? 0 : risen / 1e-3 / tension;
            assertThat(rates[row]).as("piece %d", piece).isCloseTo(want, within(1e-6 * 1e-3));
        }
    }

    @Test
    void withoutCableOrTensionThereIsNoState() {
        LineSystem sys = Lines.of(
                List.of(
                        end("a", 0, false),
                        Support.intermediate("p", Point.of(10, 0, 1), Passage.free()),
                        end("b", 20, false)),
                1000,
                4);
        LineState s = Lines.straight(sys, 1000);
        LineAssembly assembly = new LineAssembly(sys);
        assertThat(assembly.assemble(s, false)).isTrue();
        for (int sign = -1; sign <= 1; sign += 2) {
            LineState drawn = s.copy();
            drawn.slip[1] = sign * 1.001 * sys.length[sign < 0 ? 0 : 1];
            assertThat(assembly.assemble(drawn, false))
                    .as("all cable of a span drawn away")
                    .isFalse();
            drawn.slip[1] = sign * 0.999 * sys.length[sign < 0 ? 0 : 1];
            assertThat(assembly.assemble(drawn, false)).as("a little left").isTrue();
        }
        LineState none = s.copy();
        none.tension[0] = Double.NaN;
        assertThat(assembly.assemble(none, false)).isFalse();
        LineState nothing = s.copy();
        Arrays.fill(nothing.tension, 0);
        assertThat(assembly.assemble(nothing, false))
                .as("no tension has no direction")
                .isFalse();
    }

    /** What was factored solves what was assembled: matrix times solution is the right side. */
    @Test
    void theFactorsAreThoseOfTheTangent() {
        for (long seed = 1; seed <= 40; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineAssembly a = new LineAssembly(random.system);
            assertThat(a.assemble(random.state, true)).isTrue();
            int n = random.system.unknowns.count();
            double[][] tangent = new double[n][n];
            double[] size = new double[n];
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    tangent[i][j] = a.equations.matrix.get(i, j);
                    size[i] += Math.abs(tangent[i][j]);
                }
            }
            assertThat(a.factor(random.state)).as("seed %d", seed).isTrue();
            double[] x = new double[n];
            for (int i = 0; i < n; i++) {
                x[i] = size[i] * Math.sin(i + 1.0);
            }
            double[] right = x.clone();
            a.equations.matrix.solve(x);
            double most = 0;
            for (double each : x) {
                most = Math.max(most, Math.abs(each));
            }
            for (int i = 0; i < n; i++) {
                double sum = 0;
                for (int j = 0; j < n; j++) {
                    sum += tangent[i][j] * x[j];
                }
                assertThat(sum).as("seed %d, row %d", seed, i).isCloseTo(right[i], within(1e-9 * size[i] * most));
            }
        }
    }

    @Test
    void aSingularTangentIsNotFactored() {
        LineSystem sys = span(0);
        LineAssembly a = new LineAssembly(sys);
        LineState s = Lines.straight(sys, 1000);
        assertThat(a.assemble(s, true)).isTrue();
        a.equations.matrix.clear();
        s.tension[0] = Double.NaN;
        assertThat(a.factor(s)).isFalse();
    }
}
