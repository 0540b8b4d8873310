package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.cable.LoadElongation;

/**
 * The first guess of a line that runs freely: exact where parabolas are, near where they nearly are. What its state held
 * before does not matter.
 */
class FreeLineStartTest {
    private static final int CASES = Integer.getInteger("lifeline.cases", 200);
    private static final double EA = 1e6;
    private static final double TENSION = 2000;

    /** A line that turns in plan and, by a share of its runs, in height; its load in a random place. */
    private static final class Case {
        final LineSystem sys;
        final LineState guess;
        final LineState equilibrium;

        Case(long seed, double climb, double weight, double force) {
            SplittableRandom r = new SplittableRandom(seed);
            int spans = r.nextInt(2, 6);
            List<Support> supports = new ArrayList<>();
            Point at = Point.of(1, 2, 3);
            double heading = r.nextDouble(6);
            for (int i = 0; i <= spans; i++) {
                boolean end = i == 0 || i == spans;
                supports.add(end ? Support.end("s" + i, at) : Support.intermediate("s" + i, at, Passage.free()));
                double run = r.nextDouble(4, 15);
                heading += r.nextDouble(-0.3, 0.3);
                double rise = climb * run * r.nextDouble(-1, 1);
                at = Point.of(at.x() + run * Math.cos(heading), at.y() + run * Math.sin(heading), at.z() + rise);
            }
            LineSystem line = new LineSystem(supports, weight, LoadElongation.linear(EA));
            for (int i = 0; i < spans; i++) {
                double sag = weight * line.chord[i] / TENSION;
                line.length[i] = line.chord[i] * (1 + sag * sag / 24) / (1 + TENSION / EA);
            }
            int span = r.nextInt(spans);
            LoadSlot slot = new LoadSlot(span, true, line.length[span] * r.nextDouble(0.2, 0.8));
            sys = new LineSystem(line, List.of(slot));
            guess = Lines.loaded(Lines.straight(sys, TENSION, slot), 0, force);
            guess.thermal = 1 + r.nextDouble(-1e-3, 1e-3);
            Arrays.fill(guess.tension, Double.NaN);
            assertThat(new FreeLineStart(sys).fits(guess)).isTrue();
            assertThat(new FreeLineStart(sys).apply(guess, 0))
                    .as("seed %d", seed)
                    .isTrue();
            equilibrium = guess.copy();
            assertThat(Lines.equilibrium(sys).newton(equilibrium))
                    .as("seed %d", seed)
                    .isTrue();
        }

        /** Largest difference of a component of tension, over the tension [-]. */
        double tensionError() {
            double worst = 0;
            for (int i = 0; i < guess.tension.length; i++) {
                double size = sys.forces.endSideTension(equilibrium, i / 3);
                worst = Math.max(worst, Math.abs(guess.tension[i] - equilibrium.tension[i]) / size);
            }
            return worst;
        }

        /** Largest difference of a slip [m]. */
        double slipError() {
            double worst = 0;
            for (int i = 0; i < guess.slip.length; i++) {
                worst = Math.max(worst, Math.abs(guess.slip[i] - equilibrium.slip[i]));
            }
            return worst;
        }
    }

    /** Without weight every span is straight and the guess is the equilibrium. */
    @Test
    void aLineWithoutWeightIsGuessedExactly() {
        for (double force : new double[] {300, 3000, 20_000}) {
            for (long seed = 1; seed <= CASES; seed++) {
                Case c = new Case(seed, 0.3, 0, force);
                assertThat(c.tensionError()).as("seed %d, %s N", seed, force).isLessThan(1e-10);
                assertThat(c.slipError()).as("seed %d, %s N", seed, force).isLessThan(1e-11);
            }
        }
    }

    /**
     * A heavy cable, whose spans weigh up to a third of their tension: what its sags take up is as much as its stretch, so
     * that without them the tension would be wrong by a half.
     */
    @Test
    void aHeavyLevelLineIsGuessedToOneInAHundred() {
        for (double force : new double[] {300, 3000, 20_000}) {
            for (long seed = 1; seed <= CASES; seed++) {
                Case c = new Case(seed, 0, 40, force);
                assertThat(c.tensionError()).as("seed %d, %s N", seed, force).isLessThan(0.01);
                assertThat(c.slipError()).as("seed %d, %s N", seed, force).isLessThan(0.005);
            }
        }
    }

    /** The tension is taken as the same on the whole of a side, which it is but for the weight of the climb. */
    @Test
    void onAClimbItIsOutByTheWeightOfTheClimb() {
        for (long seed = 1; seed <= CASES; seed++) {
            Case c = new Case(seed, 0.2, 20, 3000);
            double climb = 0;
            for (double z : c.sys.pz) {
                climb = Math.max(climb, Math.abs(z - c.sys.pz[0]));
            }
            double share = 20 * climb / c.sys.forces.endSideTension(c.equilibrium, 0);
            assertThat(c.tensionError()).as("seed %d", seed).isLessThan(0.01 + share);
        }
    }

    /** Where a support holds the cable, or is jammed, the sides are not of one tension. */
    @Test
    void itFitsWhereTheCableRunsOverEverySupportWithoutFriction() {
        LoadSlot slot = new LoadSlot(1, true, 4);
        for (Passage holds : List.of(Passage.clamped(), Passage.friction(0.1))) {
            LineSystem sys = Lines.level(1500, 5, holds, 3, slot);
            LineState s = Lines.straight(sys, 1500, slot);
            for (int mode : new int[] {LineState.STUCK, LineState.RUNS_ON, LineState.RUNS_BACK}) {
                Arrays.fill(s.passage, mode);
                assertThat(new FreeLineStart(sys).fits(s))
                        .as("%s, mode %d", holds, mode)
                        .isFalse();
            }
        }
        LineSystem free = Lines.level(1500, 5, Passage.free(), 3, slot);
        LineState s = Lines.straight(free, 1500, slot);
        assertThat(new FreeLineStart(free).fits(s)).isTrue();
        s.passage[2] = LineState.JAMMED_ON;
        assertThat(new FreeLineStart(free).fits(s)).isFalse();
    }

    /** With neither weight nor load there is no tension to guess. */
    @Test
    void aLineThatNothingPullsHasNoGuess() {
        LoadSlot slot = new LoadSlot(1, true, 4);
        LineSystem sys = Lines.level(1500, 0, Passage.free(), 3, slot);
        assertThat(new FreeLineStart(sys).apply(Lines.straight(sys, 1500, slot), 0))
                .isFalse();
    }

    /** The cable to spare in one span runs out of it and takes a light load along, which grips near its end. */
    @Test
    void aLoadThatTheCableCarriesOntoItsSupportHasNoGuess() {
        LoadSlot slot = new LoadSlot(1, true, 0.05);
        LineSystem sys = Lines.level(200, 25, Passage.free(), 3, slot);
        sys.length[1] += 0.9;
        LineState s = Lines.loaded(Lines.straight(sys, 200, slot), 0, 20);
        assertThat(new FreeLineStart(sys).apply(s, 0)).isFalse();
    }
}
