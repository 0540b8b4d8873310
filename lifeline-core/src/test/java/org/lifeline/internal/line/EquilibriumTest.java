package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.Point;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.cable.LoadElongation;

/** Equilibria of small lines against closed forms and laws that every elastic system obeys. */
class EquilibriumTest {
    private static final int CASES = Integer.getInteger("lifeline.cases", 200);
    private static final LoadSlot MIDDLE = new LoadSlot(0, true, 5 / (1 + 1000 / Lines.EA));

    @AfterEach
    void clear() {
        Thread.interrupted();
    }

    private static LineState solved(LineSystem sys, LineState s) {
        LineState past = s.copy();
        assertThat(Lines.equilibrium(sys).solve(s, past)).isTrue();
        return s;
    }

    private static double depth(LineSystem sys, LineState s, int load) {
        return -new LineEnergies(sys).height(s, load);
    }

    /** A cable without weight under a load in its middle is a V: P = 2 T sin φ, both legs stretched alike. */
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 100, 6000, 40_000})
    void aLoadInTheMiddleDrawsAV(double load) {
        LineSystem sys = Lines.level(1000, 0, Passage.clamped(), 1, MIDDLE);
        LineState s = solved(sys, Lines.loaded(Lines.straight(sys, 1000, MIDDLE), 0, load));
        double depth = depth(sys, s, 0);
        double leg = Math.hypot(5, depth);
        double tension = Lines.EA * (leg / (0.5 * sys.length[0]) - 1);
        assertThat(2 * tension * depth / leg).isCloseTo(load, within(1e-8 * load + 1e-9));
        assertThat(sys.forces.endSideTension(s, 0)).isCloseTo(tension, within(1e-7 * tension));
        assertThat(sys.forces.startSideTension(s, 1)).as("mirror symmetry").isCloseTo(tension, within(1e-7 * tension));
    }

    /** A cable that hardly stretches hangs in the catenary: S = (2H/w) sinh(w l/2H). */
    @ParameterizedTest
    @ValueSource(doubles = {30, 100, 3000})
    void anInextensibleCableHangsInACatenary(double horizontal) {
        double weight = 20;
        LineSystem line = new LineSystem(
                List.of(Support.end("a", Point.of(0, 0, 0)), Support.end("b", Point.of(Lines.SPAN, 0, 0))),
                weight,
                LoadElongation.linear(1e14));
        double a = horizontal / weight;
        line.length[0] = 2 * a * Math.sinh(0.5 * Lines.SPAN / a);
        LineState s = Lines.straight(line, 1.4 * horizontal);
        s.tension[2] = -0.5 * weight * line.length[0];
        solved(line, s);
        assertThat(s.tension[0]).isCloseTo(horizontal, within(1e-5 * horizontal));
        assertThat(s.tension[2]).isCloseTo(-0.5 * weight * line.length[0], within(1e-7 * weight));
    }

    /** Over posts without friction the tension is the same on both sides of each. */
    @Test
    void cableThatRunsFreelyHasOneTension() {
        LoadSlot at = new LoadSlot(1, true, 4);
        LineSystem sys = Lines.level(1500, 0, Passage.free(), 3, at);
        LineState s = solved(sys, Lines.loaded(Lines.straight(sys, 1500, at), 0, 3000));
        for (int i = 1; i < 3; i++) {
            assertThat(sys.forces.logRatio(s, i)).isCloseTo(0, within(1e-12));
        }
        assertThat(s.slip[1]).as("cable is drawn from both sides into the span").isNegative();
        assertThat(s.slip[2]).isPositive();
        assertThat(s.slip[0]).isZero();
        assertThat(s.slip[3]).isZero();
    }

    /** Where it slips the cable stands on the capstan's limit; rougher posts let less pass, a clamp nothing. */
    @Test
    void frictionHoldsUpToTheCapstansLimit() {
        LoadSlot at = new LoadSlot(0, true, 5);
        double last = Double.POSITIVE_INFINITY;
        for (double friction : new double[] {0.05, 0.2, 0.6}) {
            LineSystem sys = Lines.level(1500, 0, Passage.friction(friction), 2, at);
            LineState s = solved(sys, Lines.loaded(Lines.straight(sys, 1500, at), 0, 6000));
            assertThat(s.passage[1]).isEqualTo(LineState.RUNS_BACK);
            double limit = Math.exp(friction * sys.forces.turned(s, 1));
            assertThat(sys.forces.startSideTension(s, 1) / sys.forces.endSideTension(s, 1))
                    .isCloseTo(limit, within(1e-10));
            assertThat(s.slip[1]).isPositive().isLessThan(last);
            last = s.slip[1];
        }
        LineSystem held = Lines.level(1500, 0, Passage.clamped(), 2, at);
        LineState s = solved(held, Lines.loaded(Lines.straight(held, 1500, at), 0, 6000));
        assertThat(s.slip[1]).isZero();
        assertThat(held.forces.endSideTension(s, 1))
                .as("the other span feels nothing")
                .isCloseTo(1500, within(1e-6));
    }

    /** Betti and Maxwell: a little more at B lowers A as much as a little more at A lowers B. */
    @Test
    void smallLoadsLowerEachOtherAlike() {
        LoadSlot[] slots = {new LoadSlot(0, true, 3), new LoadSlot(1, true, 6)};
        LineSystem sys = Lines.level(1500, 4, Passage.free(), 2, slots);
        LineState base = Lines.straight(sys, 1500, slots);
        solved(sys, Lines.loaded(Lines.loaded(base, 0, 800), 1, 300));
        double[] lowered = new double[2];
        for (int k = 0; k < 2; k++) {
            LineState more = base.copy();
            LineState less = base.copy();
            more.force[k] += 0.5;
            less.force[k] -= 0.5;
            lowered[k] = depth(sys, solved(sys, more), 1 - k) - depth(sys, solved(sys, less), 1 - k);
        }
        assertThat(lowered[0]).isNotZero().isCloseTo(lowered[1], within(1e-6 * Math.abs(lowered[1])));
    }

    /** What the line takes up is what the load gives: dE = P dδ, elastic posts and sliding without friction included. */
    @Test
    void theEnergyOfTheLineRisesByTheWorkOfTheLoad() {
        LoadSlot at = new LoadSlot(0, true, 4);
        Support post = Support.intermediate("p", Point.of(Lines.SPAN, 0, 0.5), Passage.free())
                .withStiffness(new Stiffness(3e5, 3e5, 1e6));
        List<Support> supports =
                List.of(Support.end("a", Point.of(0, 0, 0)), post, Support.end("b", Point.of(20, 0, 0)));
        LineSystem sys = Lines.of(supports, 1500, 4, at);
        LineState s = Lines.straight(sys, 1500, at);
        for (double force : new double[] {100, 1000, 9000}) {
            double[] depth = new double[3];
            double[] energy = new double[3];
            for (int k = 0; k < 3; k++) {
                s.active[0] = true;
                s.force[0] = force * (1 + 1e-3 * (k - 1));
                solved(sys, s);
                depth[k] = depth(sys, s, 0);
                energy[k] = LineEnergies.of(sys, s).line();
            }
            double work = force * (depth[2] - depth[0]);
            assertThat(energy[2] - energy[0]).as("at %s N", force).isCloseTo(work, within(2e-5 * work));
        }
    }

    @Test
    void aLineSeenFromItsOtherEndIsTheMirrorImage() {
        LoadSlot[] one = {new LoadSlot(0, true, 3), new LoadSlot(2, true, 8)};
        LineSystem sys = Lines.level(1500, 4, Passage.free(), 3, one);
        double length = sys.length[0];
        LoadSlot[] other = {new LoadSlot(0, true, length - 8), new LoadSlot(2, true, length - 3)};
        LineSystem mirrored = Lines.level(1500, 4, Passage.free(), 3, other);
        LineState s = Lines.loaded(Lines.loaded(Lines.straight(sys, 1500, one), 0, 2000), 1, 500);
        LineState m = Lines.loaded(Lines.loaded(Lines.straight(mirrored, 1500, other), 0, 500), 1, 2000);
        solved(sys, s);
        solved(mirrored, m);
        assertThat(depth(mirrored, m, 1)).isCloseTo(depth(sys, s, 0), within(1e-10));
        assertThat(depth(mirrored, m, 0)).isCloseTo(depth(sys, s, 1), within(1e-10));
        assertThat(m.slip[1]).isCloseTo(-s.slip[2], within(1e-10));
        assertThat(mirrored.forces.endSideTension(m, 0)).isCloseTo(sys.forces.startSideTension(s, 3), within(1e-6));
    }

    @Test
    void aFreeRunningLoadStandsWhereBothTensionsAreEqual() {
        LoadSlot at = new LoadSlot(0, false, 3);
        List<Support> slope = List.of(Support.end("a", Point.of(0, 0, 0)), Support.end("b", Point.of(10, 0, 2)));
        LineSystem sys = Lines.of(slope, 1500, 0, at);
        sys.length[0] *= 1.08;
        LineState s = Lines.straight(sys, 1500, at);
        s.tension[2] -= 800;
        Lines.loaded(s, 0, 1500);
        solved(sys, s);
        assertThat(sys.forces.endSideTension(s, 0)).isCloseTo(sys.forces.startSideTension(s, 1), within(1e-6));
        assertThat(s.coordinate[0]).as("nearer to the lower support").isLessThan(0.5 * sys.length[0]);
    }

    /** With the modes held Newton's method converges quadratically: a few steps from near, more from far. */
    @Test
    void stepsAreCountedAndFewFromNearby() {
        LineSystem sys = Lines.level(1000, 0, Passage.clamped(), 1, MIDDLE);
        Equilibrium e = Lines.equilibrium(sys);
        LineState s = Lines.loaded(Lines.straight(sys, 1000, MIDDLE), 0, 5000);
        assertThat(e.newton(s)).isTrue();
        int far = e.iterations;
        assertThat(e.residual).isLessThan(Equilibrium.CONVERGED);
        s.force[0] *= 1.0001;
        assertThat(e.newton(s)).isTrue();
        assertThat(e.iterations - far).isBetween(1, 4).isLessThanOrEqualTo(far);
        LineState again = s.copy();
        assertThat(e.newton(s)).isTrue();
        assertThat(s.tension).as("an equilibrium stays").containsExactly(again.tension, within(1e-9));
    }

    @Test
    void aLooseSolveIsNearATightOne() {
        LoadSlot at = new LoadSlot(0, true, 4);
        LineSystem sys = Lines.level(1500, 4, Passage.free(), 3, at);
        LineState loose = Lines.loaded(Lines.straight(sys, 1500, at), 0, 4000);
        LineState tight = loose.copy();
        Equilibrium e = Lines.equilibrium(sys);
        e.loosen();
        assertThat(e.newton(loose)).isTrue();
        int cheap = e.iterations;
        e.tighten();
        assertThat(e.newton(tight)).isTrue();
        assertThat(e.iterations - cheap).isGreaterThanOrEqualTo(cheap);
        assertThat(loose.tension).containsExactly(tight.tension, within(1e-7));
        assertThat(loose.slip).containsExactly(tight.slip, within(1e-10));
    }

    @Test
    void whatIsNoStateHasNoEquilibrium() {
        LineSystem sys = Lines.level(1000, 0, Passage.clamped(), 1, MIDDLE);
        LineState s = Lines.loaded(Lines.straight(sys, 1000, MIDDLE), 0, Double.NaN);
        assertThat(Lines.equilibrium(sys).newton(s)).isFalse();
        assertThat(Lines.equilibrium(sys).solve(s, s.copy())).isFalse();
    }

    @Test
    void anInterruptEndsTheSearch() {
        LineSystem sys = Lines.level(1000, 0, Passage.clamped(), 1, MIDDLE);
        LineState s = Lines.loaded(Lines.straight(sys, 1000, MIDDLE), 0, 5000);
        Thread.currentThread().interrupt();
        assertThatThrownBy(() -> Lines.equilibrium(sys).newton(s)).isInstanceOf(CancellationException.class);
    }

    /** The tangent that a solve leaves is that of its state: it solves for what a factored anew one does. */
    @Test
    void theTangentIsKeptForTheStateThatWasFound() {
        LineSystem sys = Lines.level(1000, 4, Passage.clamped(), 1, MIDDLE);
        LineState s = Lines.loaded(Lines.straight(sys, 1000, MIDDLE), 0, 2000);
        Equilibrium kept = Lines.equilibrium(sys);
        assertThat(kept.newton(s)).isTrue();
        assertThat(kept.factorAt(s)).isTrue();
        Equilibrium anew = Lines.equilibrium(sys);
        assertThat(anew.factorAt(s)).isTrue();
        double[] a = {1, -2};
        double[] b = {1, -2};
        kept.assembly.equations.matrix.solve(a);
        anew.assembly.equations.matrix.solve(b);
        assertThat(a).containsExactly(b, within(1e-6 * Math.abs(b[0])));
        s.tension[0] = Double.NaN;
        anew.forget();
        assertThat(anew.factorAt(s)).as("no state").isFalse();
    }

    @Test
    void directionsAreAddedToEveryUnknown() {
        LoadSlot at = new LoadSlot(1, false, 4);
        LineSystem sys = Lines.level(1500, 4, Passage.free(), 2, at);
        LineState from = Lines.straight(sys, 1500, at);
        double[] direction = new double[sys.unknowns.count()];
        for (int k = 0; k < direction.length; k++) {
            direction[k] = k + 1;
        }
        LineState to = from.copy();
        Lines.equilibrium(sys).apply(to, from, 0.5, direction);
        for (int i = 0; i < 2; i++) {
            int k = sys.unknowns.tensionIndex(i);
            assertThat(to.tension[3 * i]).isCloseTo(from.tension[3 * i] + 0.5 * (k + 1), within(1e-12));
            assertThat(to.tension[3 * i + 1]).isZero();
            assertThat(to.tension[3 * i + 2]).isCloseTo(0.5 * (k + 2), within(1e-12));
        }
        assertThat(to.slip[1]).isEqualTo(0.5 * (sys.unknowns.slipIndex(1) + 1));
        assertThat(to.coordinate[0]).isEqualTo(4 + 0.5 * (sys.unknowns.loadIndex(0) + 1));
    }

    private static double[] direction(LineSystem sys, long seed) {
        return new SplittableRandom(seed)
                .doubles(sys.unknowns.count(), -1e-3, 1e-3)
                .toArray();
    }

    /** In any line: tensions along, across and up, slips, places of loads and extensions, each by its own share. */
    @Test
    void aDirectionMovesEveryUnknownByItsShare() {
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            Unknowns u = sys.unknowns;
            LineState from = random.state;
            LineState to = from.copy();
            double[] d = direction(sys, seed);
            Lines.equilibrium(sys).apply(to, from, 0.5, d);
            for (int i = 0; i < sys.spans; i++) {
                int k = u.tensionIndex(i);
                double rounding = 1e-14 * sys.forces.endSideTension(from, i);
                assertThat(u.along(to, i) - u.along(from, i)).isCloseTo(0.5 * d[k], within(rounding));
                assertThat(u.across(to, i) - u.across(from, i)).isCloseTo(0.5 * u.across(d, i), within(rounding));
                double up = to.tension[3 * i + 2] - from.tension[3 * i + 2];
                assertThat(up).isCloseTo(0.5 * d[k + u.up], within(rounding));
                if (u.planar) {
                    double x = to.tension[3 * i] - from.tension[3 * i];
                    double y = to.tension[3 * i + 1] - from.tension[3 * i + 1];
                    assertThat(u.ux * y - u.uy * x).as("out of the plane").isCloseTo(0, within(rounding));
                }
                if (i > 0) {
                    assertThat(to.slip[i] - from.slip[i]).isCloseTo(0.5 * d[u.slipIndex(i)], within(1e-14));
                }
            }
            for (int j = 0; j < sys.loads; j++) {
                double moved = sys.gripped[j] ? 0 : 0.5 * d[u.loadIndex(j)];
                assertThat(to.coordinate[j] - from.coordinate[j]).isCloseTo(moved, within(1e-14));
            }
            for (int e = 0; e < 2; e++) {
                double drawn = sys.absorbers[e] == null ? 0 : 0.5 * d[u.extensionIndex(e)];
                assertThat(to.extension[e] - from.extension[e]).isCloseTo(drawn, within(1e-15));
            }
        }
    }

    /** Half the way back from the second of two states is half the way there, but for what is held. */
    @Test
    void differencesOfAnyLineAreAddedToWhatIsFree() {
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            LineState a = random.state;
            LineState b = a.copy();
            Equilibrium e = Lines.equilibrium(sys);
            double[] d = direction(sys, seed);
            e.apply(b, a, 1, d);
            LineState half = a.copy();
            e.apply(half, a, 0.5, d);
            LineState to = b.copy();
            e.addDifference(to, -0.5, a, b);
            double size = 0;
            for (double t : a.tension) {
                size = Math.max(size, Math.abs(t));
            }
            assertThat(to.tension).as("seed %d", seed).containsExactly(half.tension, within(1e-14 * size));
            assertThat(to.extension).containsExactly(half.extension, within(1e-15));
            for (int i = 1; i < sys.spans; i++) {
                boolean runs = Math.abs(a.passage[i]) == 1;
                assertThat(to.slip[i]).isCloseTo((runs ? half : b).slip[i], within(1e-14));
            }
            for (int j = 0; j < sys.loads; j++) {
                assertThat(to.coordinate[j]).isCloseTo((a.active[j] ? half : b).coordinate[j], within(1e-14));
            }
        }
    }

    /** Twice the difference of two states beyond the first one; what is held stays where it is. */
    @Test
    void differencesAreAddedToWhatIsFreeOnly() {
        LoadSlot[] at = {new LoadSlot(0, true, 4), new LoadSlot(1, false, 5)};
        LineSystem sys = Lines.level(1500, 4, Passage.friction(0.1), 2, at);
        LineState a = Lines.straight(sys, 1500, at);
        LineState b = a.copy();
        b.tension[0] += 10;
        b.tension[1] += 1e-9;
        b.tension[5] -= 4;
        b.slip[1] = 0.1;
        b.coordinate[0] += 0.2;
        b.coordinate[1] += 0.3;
        b.extension[1] = 0.4;
        for (boolean free : new boolean[] {true, false}) {
            LineState to = a.copy();
            to.passage[1] = free ? LineState.RUNS_BACK : LineState.STUCK;
            to.active[0] = true;
            to.active[1] = free;
            Lines.equilibrium(sys).addDifference(to, 2, a, b);
            assertThat(to.tension[0]).isCloseTo(1520, within(1e-9));
            assertThat(to.tension[1])
                    .as("rounding across the plane does not grow")
                    .isZero();
            assertThat(to.tension[5]).isCloseTo(-8, within(1e-9));
            assertThat(to.slip[1]).isEqualTo(free ? 0.2 : 0);
            assertThat(to.coordinate[0]).as("gripped").isEqualTo(4);
            assertThat(to.coordinate[1]).isCloseTo(free ? 5.6 : 5, within(1e-12));
            assertThat(to.extension[1]).isEqualTo(0.8);
        }
    }
}
