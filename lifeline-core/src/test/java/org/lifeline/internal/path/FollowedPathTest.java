package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.Point;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineForces;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;

/** Lines that remember, followed step by step: limits of the capstan, plateaus of absorbers, work and heat. */
class FollowedPathTest {
    private static List<Support> supports(double friction, double... heights) {
        Passage passage = friction < 0 ? Passage.clamped() : Passage.friction(friction);
        List<Support> list = new ArrayList<>(SmallLines.supports(passage, heights.length + 1));
        for (int i = 1; i <= heights.length; i++) {
            Point at = Point.of(SmallLines.SPAN * i, 0, 10 + heights[i - 1]);
            list.set(i, Support.intermediate("s" + i, at, passage));
        }
        return list;
    }

    private static Lifeline line(double friction, double... heights) {
        return SmallLines.line(supports(friction, heights), 0.4);
    }

    /** Lines of two to four spans of all that makes a path remember. */
    private static Lifeline various(int kind) {
        List<Support> s =
                switch (kind) {
                    case 0 -> supports(0.1, 0);
                    case 1 -> supports(0.3, 1, 0.5);
                    case 2 -> supports(0.2, 0, 0, 0);
                    case 3 -> supports(0.15, -0.3, 0.4);
                    default -> supports(0.25, 0.2);
                };
        int last = s.size() - 1;
        if (kind == 4 || kind == 5) {
            s.set(last, s.get(last).withInlineAbsorber(SmallLines.absorber()));
        }
        if (kind == 5) {
            s.set(0, s.get(0).withInlineAbsorber(SmallLines.absorber()));
        }
        if (kind == 6) {
            s.set(0, s.get(0).withStiffness(Stiffness.alongX(2e5)));
            s.set(1, s.get(1).withStiffness(Stiffness.alongX(3e5)));
        }
        return SmallLines.line(s, 0.4);
    }

    private static double excess(LineModel model, int support, double friction) {
        LineForces forces = model.system().forces;
        LineState s = model.state();
        return Math.abs(Math.log(forces.endSideTension(s, support) / forces.startSideTension(s, support)))
                - friction * forces.turned(s, support);
    }

    /** Until it slips a rough post holds as a clamp does: the force at which the ratio there reaches e^(μθ), by halving. */
    @ParameterizedTest
    @CsvSource({"0.1, 0.3", "0.3, 1", "0.6, 2"})
    void theStepEndsWhereTheCableBeginsToSlip(double friction, double rise) {
        PathOfALoad p = PathOfALoad.gripped(line(friction, rise), 0, 4).to(0.01);
        double low = 0.01;
        double high = 4000;
        for (int k = 0; k < 40; k++) {
            double middle = 0.5 * (low + high);
            PathOfALoad clamp = PathOfALoad.gripped(line(-1, rise), 0, 4).to(middle);
            if (excess(clamp.model, 1, friction) < 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double reached = 0;
        for (int k = 0; k < 40; k++) {
            reached = p.path.step(8000);
            p.path.accept();
            if (reached > 0.999 * low) {
                break;
            }
        }
        assertThat(reached).isCloseTo(low, within(1e-5 * low));
        assertThat(p.now().state.slip[1]).isZero();
        assertThat(p.now().state.passage[1]).isEqualTo(LineState.STUCK);
        p.to(reached * 1.05);
        assertThat(p.now().state.slip[1]).isPositive();
        assertThat(excess(p.model, 1, friction)).isCloseTo(0, within(1e-9));
    }

    /** At every force a support sticks inside its limits or slips on one of them, the nearer one before the farther one. */
    @Test
    void supportsLetGoOneAfterTheOther() {
        double mu = 0.15;
        PathOfALoad p = PathOfALoad.gripped(line(mu, 0.5, 0.5, 0.5), 0, 4);
        double[] began = new double[4];
        for (double force = 20; force <= 12_000; force *= 1.2) {
            p.to(force);
            for (int i = 1; i < 4; i++) {
                double excess = excess(p.model, i, mu);
                boolean slips = p.model.slip(i) != 0;
                assertThat(excess).as("support %d at %s N", i, force).isLessThan(1e-8);
                if (slips) {
                    assertThat(excess).as("support %d at %s N", i, force).isCloseTo(0, within(2e-9));
                    began[i] = began[i] == 0 ? force : began[i];
                }
            }
        }
        assertThat(began[1]).isPositive();
        assertThat(began[2]).isGreaterThanOrEqualTo(began[1]);
        assertThat(began[3] == 0 || began[3] >= began[2]).isTrue();
    }

    /** Short plain steps, each settled by itself, come to the same place with the same work and heat. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6})
    void theWayIsThatOfManyShortSteps(int kind) {
        LineModel a = new LineModel(various(kind));
        LineModel b = new LineModel(various(kind));
        for (int span = 0; span < 2; span++) {
            LoadPath fast = new LoadPath(a, a.hook(span, span == 0 ? 4 : 7, true), 10, 1000);
            PlainLoadPath plain = new PlainLoadPath(b, b.hook(span, span == 0 ? 4 : 7, true), 10);
            for (double force : new double[] {400, 2500, 7000}) {
                fast.advance(force, q -> 1, 0);
                plain.advance(force, 400);
                double size = 1 + plain.work;
                assertThat(fast.descent())
                        .as("descent")
                        .isCloseTo(plain.descent, within(2e-5 * Math.abs(plain.descent)));
                assertThat(fast.work()).as("work").isCloseTo(plain.work, within(5e-5 * size));
                assertThat(fast.frictionHeat()).as("heat").isCloseTo(plain.heat, within(5e-5 * size));
                assertThat(fast.pathWork()).as("∫P dδ").isCloseTo(fast.work(), within(1e-6 * size));
            }
            b.take(plain.state(), new Equilibrium(b.system(), b.work()));
        }
    }

    /** What every step may add to the error of the work adds up to no more than that. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6})
    void theWorkIsTakenUpToTheErrorThatIsAllowed(int kind) {
        PathOfALoad p = PathOfALoad.gripped(various(kind), 0, 4).to(7000);
        double taken = PathEnergy.taken(p.now());
        double rounding = 1e-10 * p.now().energySize;
        assertThat(p.now().loadWork).isCloseTo(taken, within(PathTolerances.WORK * taken + rounding));
        assertThat(p.path.jumped()).isFalse();
    }

    /** An absorber behind a rough post begins to yield at its force, and keeps that while it does. */
    @Test
    void anAbsorberYieldsAtItsForceAndNotBefore() {
        PathOfALoad p = PathOfALoad.gripped(various(4), 1, 6);
        LineSystem system = p.model.system();
        boolean yields = false;
        for (double force = 100; force <= 9000; force *= 1.15) {
            p.to(force);
            double tension = system.forces.endSideTension(p.model.state(), system.spans - 1);
            var pieces = p.model.pieces(1);
            double end = pieces.get(pieces.size() - 1).endTension().magnitude();
            if (p.model.yieldedExtension(1) > 0) {
                yields = true;
                double beyond = Math.max(0, p.model.extension(1) - 1);
                assertThat(end).isCloseTo(6000 + 2e5 * beyond, within(1e-3));
            } else {
                assertThat(end).isLessThanOrEqualTo(6000 * (1 + 1e-8));
                assertThat(p.model.extension(1)).isCloseTo(end / 8e6, within(1e-9));
            }
            assertThat(tension).isPositive();
        }
        assertThat(yields).isTrue();
    }

    /** Warmth and cold on a loaded rough line, in one go and in a great many plain steps. */
    @ParameterizedTest
    @CsvSource({"0, 60", "0, -30", "1, 55", "2, -25", "3, 70", "5, -30"})
    void temperaturesAreFollowedAsInShortSteps(int kind, double to) {
        LineModel a = new LineModel(various(kind));
        a.hang(a.hook(0, 4, true), 3000);
        LineSystem system = a.system();
        Equilibrium e = new Equilibrium(system, a.work());
        LineState state = a.state().copy();
        for (double goal : new double[] {to, 10}) {
            a.bringTo(goal);
            double from = state.thermal;
            double end = a.state().thermal;
            for (int k = 1; k <= 400; k++) {
                LineState next = state.copy();
                next.thermal = from + (end - from) * k / 400;
                assertThat(e.solve(next, state)).isTrue();
                state.set(next);
            }
            for (int i = 0; i < system.spans; i++) {
                double t = system.forces.endSideTension(state, i);
                assertThat(system.forces.endSideTension(a.state(), i)).isCloseTo(t, within(1e-4 * t));
                assertThat(a.slip(i)).isCloseTo(state.slip[i], within(1e-6 + 1e-3 * Math.abs(state.slip[i])));
                assertThat(a.state().passage[i]).isEqualTo(state.passage[i]);
            }
        }
        assertThat(a.state().thermal)
                .isCloseTo(1 + 12e-6 * (10 - a.line().installed().temperature()), within(1e-15));
    }

    /** In halves, the change of temperature ends where it ends in one. */
    @Test
    void temperaturesInPartsAreTheSame() {
        LineModel once = new LineModel(various(1));
        LineModel parts = new LineModel(various(1));
        for (LineModel m : List.of(once, parts)) {
            m.hang(m.hook(0, 4, true), 3000);
        }
        once.bringTo(60);
        for (double t : new double[] {20, 31, 45, 60}) {
            parts.bringTo(t);
        }
        for (int i = 0; i < once.line().spans(); i++) {
            double t = once.system().forces.endSideTension(once.state(), i);
            assertThat(parts.system().forces.endSideTension(parts.state(), i)).isCloseTo(t, within(2e-6 * t));
            assertThat(parts.slip(i)).isCloseTo(once.slip(i), within(1e-5 * SmallLines.SPAN));
        }
    }

    /** A rigid anchor does not move under what hangs on it, on a rough line as on any other: no work, no heat, no jump. */
    @Test
    void aLoadOnARigidAnchorChangesNothing() {
        LineModel m = new LineModel(various(1));
        LineState before = m.state().copy();
        LoadPath path = new LoadPath(m, m.hookAtSupport(1), 11, 1000);
        assertThat(path.isFollowed()).isFalse();
        assertThat(path.advance(5000, q -> 3000 - q.force(), 0)).isTrue();
        assertThat(path.force()).isCloseTo(3000, within(1e-8));
        assertThat(path.advance(5000, q -> 1, 0)).isFalse();
        assertThat(path.force()).isEqualTo(5000);
        assertThat(path.descent()).isCloseTo(0, within(1e-12));
        assertThat(path.work()).isCloseTo(0, within(1e-9));
        assertThat(path.gaveWay()).isFalse();
        for (int k = 0; k < before.tension.length; k++) {
            assertThat(m.state().tension[k]).isCloseTo(before.tension[k], within(1e-8));
        }
        assertThat(m.state().slip).isEqualTo(before.slip);
    }
}
