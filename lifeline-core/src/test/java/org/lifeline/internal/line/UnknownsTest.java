package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.BitSet;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.internal.numeric.WatchedWork;
import org.lifeline.model.InlineAbsorber;
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
        assertThat(onEdge).as("derivatives on its edges").isGreaterThan(CASES / 2);
    }

    /**
     * Over the ways in which supports, loads and absorbers can hold there is a derivative on each edge of the band and none
     * beyond; on the lower one if the cable weighs something and can run at all intermediate supports.
     */
    @Test
    void theBandIsNoWiderThanItMustBe() {
        int tried = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            int lower = 0;
            int upper = 0;
            SplittableRandom r = new SplittableRandom(seed);
            for (int k = 0; k < 30; k++) {
                LineState s = held(random, r);
                double[] at = residual(sys, s);
                for (int column = 0; column < at.length; column++) {
                    double[] unit = new double[at.length];
                    unit[column] = 1;
                    LineState moved = s.copy();
                    new Equilibrium(sys, WatchedWork.alone()).apply(moved, s, 0.01, unit);
                    double[] beside = residual(sys, moved);
                    for (int row = 0; row < at.length; row++) {
                        if (beside[row] != at[row]) {
                            lower = Math.max(lower, row - column);
                            upper = Math.max(upper, column - row);
                        }
                    }
                }
            }
            boolean runs = sys.spans > 1 && sys.weight > 0 && !isClamped(sys);
            assertThat(lower)
                    .as("to the left, seed %d", seed)
                    .isBetween(runs ? sys.unknowns.lower : 0, sys.unknowns.lower);
            assertThat(upper).as("to the right, seed %d", seed).isEqualTo(sys.unknowns.upper);
            tried += runs ? 1 : 0;
        }
        assertThat(tried).isGreaterThan(CASES / 5);
    }

    private static boolean isClamped(LineSystem sys) {
        for (int i = 1; i < sys.spans; i++) {
            if (sys.clamped[i]) {
                return true;
            }
        }
        return false;
    }

    /** The state of a random system with its supports, loads and absorbers held otherwise. */
    private static LineState held(RandomSystem random, SplittableRandom r) {
        LineSystem sys = random.system;
        LineState s = random.state.copy();
        for (int i = 1; i < sys.spans; i++) {
            s.passage[i] = r.nextBoolean() ? LineState.RUNS_ON : LineState.RUNS_BACK;
        }
        boolean follows = false;
        for (int j = 0; j < sys.loads; j++) {
            follows = follows && j > sys.firstLoad[sys.loadSpan[j]];
            s.active[j] = r.nextInt(4) > 0;
            if (!sys.gripped[j] && s.active[j]) {
                s.mode[j] = follows
                        ? LineState.FOLLOWS
                        : r.nextBoolean() ? LineState.RUNNING : LineState.AT_START + r.nextInt(2);
            }
            follows = s.active[j] ? !sys.gripped[j] : follows;
        }
        for (int e = 0; e < 2; e++) {
            InlineAbsorber a = sys.absorbers[e];
            s.yielding[e] = a != null && r.nextBoolean();
            s.piece[e] = a == null ? 0 : a.curve().piece(s.extension[e]);
        }
        return s;
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

    /** What decides is the line's own direction, wherever it stands: here from (1, 2) on. */
    @Test
    void aLineIsPlanarInWhateverDirectionItRuns() {
        Stiffness rigid = Stiffness.rigid();
        Stiffness unequal = new Stiffness(1e5, 2e5, 3e5);
        for (double heading = 0; heading < 6.3; heading += 0.7) {
            double x = Math.cos(heading);
            double y = Math.sin(heading);
            for (double aside : new double[] {0, 1e-12, -1e-12, 0.01, -0.01}) {
                Support middle = post(1 + 7 * x - aside * y, 2 + 7 * y + aside * x, rigid);
                assertThat(system(end("a", 1, 2), middle, end("b", 1 + 9 * x, 2 + 9 * y)).unknowns.planar)
                        .as("heading %s rad, %s m aside", heading, aside)
                        .isEqualTo(aside == 0);
            }
            assertThat(system(end("a", 1, 2), post(1 + 7 * x, 2 + 7 * y, unequal), end("b", 1 + 9 * x, 2 + 9 * y))
                            .unknowns
                            .planar)
                    .as("unequal springs, heading %s rad", heading)
                    .isEqualTo(heading == 0);
        }
        LineSystem alongY = system(end("a", 1, 2), post(1, 7, unequal), end("b", 1, 11));
        assertThat(alongY.unknowns.planar).isTrue();
        assertThat(alongY.unknowns.compliance(1, 0)).isCloseTo(1 / 2e5, within(1e-20));
        assertThat(alongY.unknowns.compliance(1, 1)).isCloseTo(1 / 3e5, within(1e-20));
        assertThat(system(end("a", 1, 2), post(7, 2, rigid), end("b", 4, 2)).unknowns.planar)
                .as("back on itself")
                .isFalse();
        assertThat(system(end("a", 1, 2), post(7, 2, rigid), end("b", 1, 2)).unknowns.planar)
                .as("back to its start")
                .isFalse();
    }

    /** Out of a plane the unknown components are those along x, y and up. */
    @Test
    void aLineWithACornerHasThreeComponents() {
        LineSystem sys = system(
                end("a", 1, 2),
                post(7, 2, new Stiffness(1e5, 2e5, 4e5)),
                end("b", 7, 10).withStiffness(new Stiffness(1e6, 2e6, 4e6)));
        Unknowns u = sys.unknowns;
        assertThat(u.planar).isFalse();
        assertThat(u.up).isEqualTo(2);
        assertThat(new double[] {u.compliance(1, 0), u.compliance(1, 1), u.compliance(1, 2)})
                .containsExactly(new double[] {1e-5, 5e-6, 2.5e-6}, within(1e-20));
        assertThat(new double[] {u.compliance(2, 0), u.compliance(2, 1), u.compliance(2, 2)})
                .containsExactly(new double[] {1e-6, 5e-7, 2.5e-7}, within(1e-21));
        LineState s = new LineState(2, 0);
        s.tension[3] = 600;
        s.tension[4] = 800;
        assertThat(u.along(s, 1)).isEqualTo(600);
        assertThat(u.across(s, 1)).isEqualTo(800);
        double[] list = {1, 2, 3, 4, 5, 6, 7};
        assertThat(u.count()).isEqualTo(7);
        assertThat(u.across(list, 0)).isEqualTo(2);
        assertThat(u.across(list, 1)).isEqualTo(6);
        Unknowns straight = system(end("a", 1, 2), end("b", 7, 10)).unknowns;
        assertThat(straight.across(list, 0)).isZero();
        assertThat(straight.ux).isCloseTo(0.6, within(1e-15));
        assertThat(straight.uy).isCloseTo(0.8, within(1e-15));
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
