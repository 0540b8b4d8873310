package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;

/**
 * What an equilibrium is found from, and what is kept of it: the tangent that is kept is that of the state it is asked for,
 * whatever was tried, changed or failed in between; and a state is an equilibrium to rounding.
 */
class TangentKeptTest {
    private static final LoadSlot AT = new LoadSlot(0, true, 5);

    private static LineSystem system(Passage passage) {
        return Lines.level(1500, 4, passage, 3, AT);
    }

    private static LineState loaded(LineSystem sys, double force) {
        return Lines.loaded(Lines.straight(sys, 1500, AT), 0, force);
    }

    /** How the unknowns answer to the same disturbance of all equations, by the tangent at a state. */
    private static double[] answer(Equilibrium e, LineState s) {
        assertThat(e.factorAt(s)).isTrue();
        double[] b = new double[e.system.unknowns.count()];
        for (int i = 0; i < b.length; i++) {
            b[i] = 1 + i;
        }
        e.assembly.equations.matrix.solve(b);
        return b;
    }

    private static void sameAsAnew(String what, Equilibrium kept, LineState s) {
        double[] anew = answer(Lines.equilibrium(kept.system), s.copy());
        double size = 0;
        for (double each : anew) {
            size = Math.max(size, Math.abs(each));
        }
        assertThat(answer(kept, s)).as(what).containsExactly(anew, within(1e-6 * size));
    }

    @Test
    void theTangentIsThatOfTheStateItIsAskedFor() {
        LineSystem sys = system(Passage.free());
        Equilibrium e = Lines.equilibrium(sys);
        LineState heavy = loaded(sys, 5000);
        LineState light = loaded(sys, 300);
        assertThat(e.newton(heavy)).isTrue();
        assertThat(e.newton(light)).isTrue();
        sameAsAnew("the first of two", e, heavy);
        sameAsAnew("the second", e, light);
        sameAsAnew("the second once more", e, light);
        sameAsAnew("the first again", e, heavy);
        assertThat(e.newton(heavy)).isTrue();
        sameAsAnew("another than the one found", e, light);
        sameAsAnew("the one found, after another", e, heavy);
    }

    @Test
    void aSearchThatFailsLeavesNoTangent() {
        LineSystem sys = system(Passage.free());
        Equilibrium e = Lines.equilibrium(sys);
        LineState found = loaded(sys, 5000);
        assertThat(e.newton(found)).isTrue();
        assertThat(e.newton(loaded(sys, Double.NaN))).isFalse();
        sameAsAnew("after one that failed", e, found);
    }

    /** The equilibrium of a line whose cable is held at its post, whatever pulls. */
    private static LineState heldBeyondItsLimit(Equilibrium e, LineState start) {
        LineState s = start.copy();
        assertThat(e.newton(s)).isTrue();
        assertThat(s.passage[1]).isEqualTo(LineState.STUCK);
        return s;
    }

    /** Cable that stuck on a post begins to run: from then on the tangent is that of a line that runs there. */
    @Test
    void aChangeOfModeChangesTheTangent() {
        LineSystem sys = system(Passage.friction(0.1));
        Equilibrium e = Lines.equilibrium(sys);
        LineState past = loaded(sys, 6000);
        LineState s = heldBeyondItsLimit(e, past);
        assertThat(e.changeModes(s, past, 0)).isTrue();
        assertThat(s.passage[1]).isEqualTo(LineState.RUNS_BACK);
        sameAsAnew("after the change", e, s);
        assertThat(e.solve(s, past)).isTrue();
        LineState still = s.copy();
        assertThat(e.changeModes(s, past, 0))
                .as("in equilibrium nothing changes")
                .isFalse();
        assertThat(s.tension).containsExactly(still.tension);
        sameAsAnew("without a change", e, s);
    }

    /** The tangent after a rough solve is near that of its state, too: what follows a path builds on it. */
    @Test
    void theTangentOfARoughSolveIsThatOfItsState() {
        for (double force : new double[] {20, 300, 2000, 9000, 40_000}) {
            LineSystem sys = system(Passage.free());
            Equilibrium e = Lines.equilibrium(sys);
            e.loosen();
            LineState s = loaded(sys, force);
            assertThat(e.newton(s)).isTrue();
            s.force[0] *= 1.0001;
            assertThat(e.newton(s)).isTrue();
            double[] kept = answer(e, s);
            double[] anew = answer(Lines.equilibrium(sys), s.copy());
            for (int i = 0; i < kept.length; i++) {
                assertThat(kept[i]).isCloseTo(anew[i], within(1e-4 * Math.abs(anew[i]) + 1e-9));
            }
        }
    }

    /** Forces at every place, runs and rises of every span, and passages hold to rounding, from near and from afar. */
    @Test
    void anEquilibriumHoldsToRounding() {
        for (long seed = 1; seed <= 40; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            Passage passage = seed % 2 == 0 ? Passage.free() : Passage.friction(r.nextDouble(0.02, 0.4));
            LoadSlot[] slots = {
                new LoadSlot(r.nextInt(2), true, r.nextDouble(1, 9)), new LoadSlot(2, false, r.nextDouble(2, 8))
            };
            double tension = r.nextDouble(300, 5000);
            LineSystem sys = Lines.level(tension, r.nextDouble(0, 10), passage, 3, slots);
            LineState s = Lines.straight(sys, tension, slots);
            Lines.loaded(s, 0, r.nextDouble(10, 20_000));
            Lines.loaded(s, 1, r.nextDouble(10, 2000));
            Equilibrium e = Lines.equilibrium(sys);
            assertThat(e.solve(s, s.copy())).as("seed %d", seed).isTrue();
            assertThat(e.residual).as("seed %d", seed).isLessThan(1e-13);
            for (double each : Lines.residual(sys, s)) {
                assertThat(each).as("seed %d", seed).isCloseTo(0, within(1e-13));
            }
            for (int i = 1; i < 3; i++) {
                double limit = sys.friction[i] * sys.forces.turned(s, i);
                assertThat(Math.abs(sys.forces.logRatio(s, i)))
                        .as("the capstan's limit, seed %d", seed)
                        .isLessThanOrEqualTo(limit + 2e-10);
            }
        }
    }

    /** A first guess that needs no state: for one gripped load between rigid ends, and for no other line. */
    @Test
    void aStartFromNothingIsThereForOneGrippedLoad() {
        for (Passage passage : new Passage[] {Passage.free(), Passage.friction(0.2)}) {
            LineSystem sys = system(passage);
            Equilibrium e = Lines.equilibrium(sys);
            LineState s = loaded(sys, 4000);
            boolean free = passage.kind() == Passage.Kind.FREE;
            assertThat(e.freeLine(s) != null).isEqualTo(free);
            assertThat(e.startCold(s)).isEqualTo(free);
            if (free) {
                LineState guess = s.copy();
                assertThat(e.newton(s)).isTrue();
                assertThat(guess.tension[0]).isCloseTo(s.tension[0], within(0.02 * s.tension[0]));
            }
        }
        LineSystem single = Lines.level(1500, 5, Passage.clamped(), 1, AT);
        Equilibrium e = Lines.equilibrium(single);
        LineState s = loaded(single, 4000);
        assertThat(e.startCold(s)).isTrue();
        int first = e.iterations;
        assertThat(first).isPositive();
        assertThat(e.startCold(s)).isTrue();
        assertThat(e.iterations).as("each start counts its own steps").isEqualTo(2 * first);
        assertThat(e.freeLine(s)).isNull();
    }

    /** An absorber that is driven up its curve and beyond: the line finds its equilibrium through every change of mode. */
    @Test
    void anAbsorberAtTheEndYieldsByItsCurve() {
        LoadingCurve curve = LoadingCurve.through(
                List.of(
                        new LoadingCurve.Corner(0, 4000),
                        new LoadingCurve.Corner(0.3, 5000),
                        new LoadingCurve.Corner(0.5, 9000)),
                8e5,
                3e6);
        Support end = Support.end("b", Point.of(Lines.SPAN, 0, 0)).withInlineAbsorber(InlineAbsorber.of(curve));
        LineSystem sys = Lines.of(List.of(Support.end("a", Point.of(0, 0, 0)), end), 1500, 4, AT);
        double last = 0;
        for (double force : new double[] {200, 2000, 5000, 9000, 30_000}) {
            LineState s = loaded(sys, force);
            assertThat(Lines.equilibrium(sys).solve(s, loaded(sys, 0))).isTrue();
            double tension = sys.forces.startSideTension(s, 1);
            double x = s.extension[1];
            assertThat(x).isGreaterThan(last);
            last = x;
            double law = curve.force(x);
            assertThat(tension).as("at %s N", force).isCloseTo(law, within(1e-6 * law));
        }
        assertThat(last).as("used up").isGreaterThan(0.5);
    }

    /** An equilibrium to rounding is confirmed as it is, without a Newton step, and its tangent is there for the factoring. */
    @Test
    void anEquilibriumIsConfirmedAsItIs() {
        LineSystem sys = system(Passage.free());
        LineState s = loaded(sys, 4000);
        assertThat(Lines.equilibrium(sys).solve(s, s.copy())).isTrue();
        Equilibrium e = Lines.equilibrium(sys);
        LineState other = loaded(sys, 300);
        assertThat(e.newton(other)).isTrue();
        assertThat(e.factorAt(other)).isTrue();
        int steps = e.iterations;
        int assembled = e.assembly.assembled;
        LineState still = s.copy();
        assertThat(e.confirm(s, s.copy())).isTrue();
        assertThat(e.iterations).isEqualTo(steps);
        assertThat(s.tension).containsExactly(still.tension);
        int factored = e.assembly.factored;
        assertThat(e.factorAt(s)).isTrue();
        assertThat(e.factorAt(s)).isTrue();
        assertThat(e.assembly.assembled).as("assembled once").isEqualTo(assembled + 1);
        assertThat(e.assembly.factored).as("factored once").isEqualTo(factored + 1);
        sameAsAnew("the one confirmed", e, s);
        sameAsAnew("the one before it", e, other);
    }

    /** What is no equilibrium is not confirmed but solved; what has none, or none of a line, is refused. */
    @Test
    void whatIsNoEquilibriumIsSolved() {
        LineSystem sys = system(Passage.free());
        LineState s = loaded(sys, 4000);
        LineState exact = s.copy();
        assertThat(Lines.equilibrium(sys).solve(exact, s.copy())).isTrue();
        Equilibrium e = Lines.equilibrium(sys);
        assertThat(e.confirm(s, s.copy())).isTrue();
        assertThat(e.iterations).isPositive();
        assertThat(s.tension).containsExactly(exact.tension, within(1e-8));
        s.slip[1] = 11;
        assertThat(e.confirm(s, exact)).as("no cable left").isFalse();
        assertThat(e.confirm(loaded(sys, Double.NaN), exact)).isFalse();
    }

    /** An equilibrium with the modes held that shows one to be wrong: cable that sticks beyond its limit is let go. */
    @Test
    void whatIsHeldBeyondItsLimitIsNotConfirmed() {
        LineSystem sys = system(Passage.friction(0.1));
        Equilibrium e = Lines.equilibrium(sys);
        LineState past = loaded(sys, 6000);
        LineState s = heldBeyondItsLimit(e, past);
        assertThat(e.confirm(s, past)).isTrue();
        assertThat(s.passage[1]).isEqualTo(LineState.RUNS_BACK);
        double limit = 0.1 * sys.forces.turned(s, 1);
        assertThat(Math.abs(sys.forces.logRatio(s, 1))).isCloseTo(limit, within(1e-10));
        assertThat(e.residual).isLessThan(1e-13);
    }

    /** A tangent in which nothing holds the line is none: what is asked for it is told so, once and again. */
    @Test
    void aStateOfNoLineHasNoTangent() {
        LineSystem sys = system(Passage.free());
        Equilibrium e = Lines.equilibrium(sys);
        LineState s = loaded(sys, 4000);
        assertThat(e.newton(s)).isTrue();
        assertThat(e.factorAt(s)).isTrue();
        LineState none = s.copy();
        none.slip[1] = 11;
        assertThat(e.factorAt(none)).isFalse();
        assertThat(e.factorAt(none)).isFalse();
        sameAsAnew("after it", e, s);
    }

    /** A rough solve after a tight one, and a tight one after that, end where each is told to. */
    @Test
    void eachSolveEndsWhereItIsToldTo() {
        LineSystem sys = system(Passage.free());
        Equilibrium e = Lines.equilibrium(sys);
        int[] assembled = new int[3];
        for (int k = 0; k < 3; k++) {
            if (k == 1) {
                e.loosen();
            } else {
                e.tighten();
            }
            e.assembly.assembled = 0;
            assertThat(e.newton(loaded(sys, 4000))).isTrue();
            assembled[k] = e.assembly.assembled;
        }
        assertThat(assembled[1]).as("the last state is not looked at").isLessThan(assembled[0]);
        assertThat(assembled[2]).isEqualTo(assembled[0]);
    }
}
