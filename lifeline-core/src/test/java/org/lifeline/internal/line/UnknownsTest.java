package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.BitSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.internal.numeric.WatchedWork;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.cable.LoadElongation;

/** Every unknown has a place of its own, and the band holds every derivative that is not zero. */
class UnknownsTest {
    private static final int CASES = Integer.getInteger("lifeline.cases", 300);

    @Test
    void placesAreCountedOutWithoutGapOrClash() {
        for (long seed = 1; seed <= CASES; seed++) {
            LineSystem sys = new RandomSystem(seed).system;
            Unknowns u = sys.unknowns;
            BitSet taken = new BitSet();
            for (int i = 0; i < sys.spans; i++) {
                for (int k = 0; k <= u.up; k++) {
                    take(taken, u.tensionIndex(i) + k, seed);
                }
                if (i > 0) {
                    take(taken, u.slipIndex(i), seed);
                    assertThat(u.slipColumn(i)).isEqualTo(u.slipIndex(i));
                }
            }
            for (int j = 0; j < sys.loads; j++) {
                if (sys.gripped[j]) {
                    assertThat(u.loadIndex(j)).as("seed %d", seed).isEqualTo(-1);
                } else {
                    take(taken, u.loadIndex(j), seed);
                }
            }
            for (int e = 0; e < 2; e++) {
                if (sys.absorbers[e] != null) {
                    take(taken, u.extensionIndex(e), seed);
                }
            }
            assertThat(taken.cardinality()).as("seed %d", seed).isEqualTo(u.count());
            assertThat(taken.length()).as("seed %d", seed).isEqualTo(u.count());
            assertThat(u.slipColumn(0)).isEqualTo(-1);
            assertThat(u.slipColumn(sys.spans)).isEqualTo(-1);
        }
    }

    private static void take(BitSet taken, int index, long seed) {
        assertThat(taken.get(index))
                .as("place %d taken twice, seed %d", index, seed)
                .isFalse();
        taken.set(index);
    }

    /** Derivatives by differences, over the whole square: none outside the band. */
    @Test
    void noDerivativeLiesOutsideTheBand() {
        int onEdge = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            Unknowns u = sys.unknowns;
            double[] at = residual(sys, random.state);
            for (int column = 0; column < u.count(); column++) {
                double[] unit = new double[u.count()];
                unit[column] = 1;
                LineState moved = random.state.copy();
                new Equilibrium(sys, WatchedWork.alone()).apply(moved, random.state, 1e-4, unit);
                double[] beside = residual(sys, moved);
                for (int row = 0; row < u.count(); row++) {
                    boolean inside = column - row <= u.upper && row - column <= u.lower;
                    if (!inside) {
                        assertThat(beside[row])
                                .as("row %d by %d, seed %d", row, column, seed)
                                .isEqualTo(at[row]);
                    } else if (beside[row] != at[row] && (column - row == u.upper || row - column == u.lower)) {
                        onEdge++;
                    }
                }
            }
        }
        assertThat(onEdge).as("the band is no wider than it must be").isGreaterThan(CASES / 2);
    }

    private static double[] residual(LineSystem sys, LineState s) {
        LineAssembly assembly = new LineAssembly(sys);
        assertThat(assembly.assemble(s, false)).isTrue();
        return assembly.equations.residual.clone();
    }

    private static LineSystem system(Support... supports) {
        return new LineSystem(List.of(supports), 4, LoadElongation.linear(4e6));
    }

    private static Support post(double x, double y, Stiffness stiffness) {
        return Support.intermediate("p", Point.of(x, y, 5), Passage.free()).withStiffness(stiffness);
    }

    private static Support end(String id, double x, double y) {
        return Support.end(id, Point.of(x, y, 5));
    }

    @Test
    void aStraightLineIsPlanarWhereItCannotLeaveItsPlane() {
        Stiffness rigid = Stiffness.rigid();
        assertThat(system(end("a", 0, 0), post(10, 0, rigid), end("b", 20, 0)).unknowns.planar)
                .isTrue();
        assertThat(system(end("a", 0, 0), post(10, 10, rigid), end("b", 20, 20)).unknowns.planar)
                .isTrue();
        assertThat(system(end("a", 0, 0), post(10, 0.5, rigid), end("b", 20, 0)).unknowns.planar)
                .as("a corner")
                .isFalse();
        assertThat(system(end("a", 0, 0), post(10, 0, new Stiffness(1e5, 2e5, 3e5)), end("b", 20, 0)).unknowns.planar)
                .as("along an axis unequal springs do no harm")
                .isTrue();
        assertThat(system(end("a", 0, 0), post(10, 10, new Stiffness(1e5, 2e5, 3e5)), end("b", 20, 20)).unknowns.planar)
                .as("oblique to unequal springs the post leaves the plane")
                .isFalse();
        assertThat(system(end("a", 0, 0), post(10, 10, new Stiffness(1e5, 1e5, 3e5)), end("b", 20, 20)).unknowns.planar)
                .isTrue();
    }

    @Test
    void directionAndComplianceOfAnObliqueLine() {
        LineSystem sys = system(end("a", 0, 0), post(3, 4, new Stiffness(1e5, 1e5, 2e5)), end("b", 6, 8));
        Unknowns u = sys.unknowns;
        assertThat(u.ux).isCloseTo(0.6, within(1e-15));
        assertThat(u.uy).isCloseTo(0.8, within(1e-15));
        assertThat(u.up).isEqualTo(1);
        assertThat(u.compliance(1, 0)).isCloseTo(1e-5, within(1e-20));
        assertThat(u.compliance(1, 1)).isCloseTo(5e-6, within(1e-20));
        LineState s = new LineState(2, 0);
        s.tension[3] = 600;
        s.tension[4] = 800;
        assertThat(u.along(s, 1)).isCloseTo(1000, within(1e-12));
        assertThat(u.across(s, 1)).isZero();
    }

    @Test
    void numbersOfALine() {
        LineSystem sys = system(
                end("a", 0, 0),
                Support.intermediate("p", Point.of(3, 4, 5), Passage.friction(0.2))
                        .withStiffness(new Stiffness(1e5, Double.POSITIVE_INFINITY, 4e5)),
                Support.intermediate("q", Point.of(3, 4, 17), Passage.clamped()),
                end("b", 8, 16));
        assertThat(sys.spans).isEqualTo(3);
        assertThat(sys.chord[0]).isCloseTo(5, within(1e-14));
        assertThat(sys.chord[1]).isCloseTo(12, within(1e-14));
        assertThat(sys.compliance[3]).isCloseTo(1e-5, within(1e-20));
        assertThat(sys.compliance[4]).isZero();
        assertThat(sys.compliance[5]).isCloseTo(2.5e-6, within(1e-20));
        assertThat(sys.friction).containsExactly(new double[] {0, 0.2, 0, 0}, within(0.0));
        assertThat(sys.clamped[1]).isFalse();
        assertThat(sys.clamped[2]).isTrue();
        assertThat(sys.elastic).isTrue();
        assertThat(sys.yields(1)).isTrue();
        assertThat(sys.yields(2)).isFalse();
        assertThat(sys.coordinate(2, 0)).isEqualTo(3);
        assertThat(sys.coordinate(2, 1)).isEqualTo(4);
        assertThat(sys.coordinate(2, 2)).isEqualTo(17);
        assertThat(sys.pullsOnSupports()).isFalse();
        LineSystem loaded = new LineSystem(
                sys, List.of(new LoadSlot(0, true, 1), new LoadSlot(2, false, 2), LoadSlot.atSupport(3, 2)));
        assertThat(loaded.loads).isEqualTo(3);
        assertThat(loaded.firstLoad).containsExactly(0, 1, 1, 3);
        assertThat(loaded.gripped).containsExactly(true, false, true);
        assertThat(loaded.pulledSupport).containsExactly(-1, -1, 3);
        assertThat(loaded.pullsOnSupports()).isTrue();
    }
}
