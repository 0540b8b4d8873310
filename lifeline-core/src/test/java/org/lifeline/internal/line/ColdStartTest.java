package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.Point;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.LoadElongation;

/** First guesses that build on nothing: near the equilibrium, for the lines that they are made for and no others. */
class ColdStartTest {
    private static final LoadSlot GRIPPED = new LoadSlot(0, true, 4);

    private static boolean cold(LineSystem sys, LineState s) {
        return new ColdStart(sys).apply(s);
    }

    /** The equilibrium, and how many steps Newton's method needs to it from a state. */
    private static int steps(LineSystem sys, LineState s) {
        Equilibrium e = Lines.equilibrium(sys);
        assertThat(e.newton(s)).isTrue();
        return e.iterations;
    }

    private static LineState far(LineSystem sys, LoadSlot slot, double force) {
        return Lines.loaded(Lines.straight(sys, 1500, slot), 0, force);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 300, 6000, 50_000})
    void theGuessOfASingleSpanIsItsEquilibrium(double force) {
        for (double warm : new double[] {1, 1.0005}) {
            LineSystem sys = Lines.level(1500, 5, Passage.clamped(), 1, GRIPPED);
            LineState s = far(sys, GRIPPED, force);
            s.thermal = warm;
            LineState guess = s.copy();
            guess.tension[0] = Double.NaN;
            assertThat(cold(sys, guess)).isTrue();
            LineState exact = guess.copy();
            steps(sys, exact);
            assertThat(guess.tension).containsExactly(exact.tension, within(1e-6 * exact.tension[0]));
            steps(sys, s);
            assertThat(exact.tension).as("the same from afar").containsExactly(s.tension, within(1e-7 * s.tension[0]));
        }
    }

    /** Turned about the vertical the guess turns with the line. */
    @Test
    void theGuessStandsInThePlaneOfTheSpan() {
        List<Support> supports = List.of(Support.end("a", Point.of(1, 2, 3)), Support.end("b", Point.of(7, 10, 4)));
        LineSystem sys = Lines.of(supports, 1500, 5, GRIPPED);
        LineState s = far(sys, GRIPPED, 3000);
        assertThat(cold(sys, s)).isTrue();
        assertThat(s.tension[1] / s.tension[0]).isCloseTo(8.0 / 6, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(doubles = {300, 6000, 50_000})
    void theGuessOfALineThatRunsFreelyIsNearItsEquilibrium(double force) {
        for (int span = 0; span < 3; span++) {
            LoadSlot at = new LoadSlot(span, true, 4);
            LineSystem sys = Lines.level(1500, 5, Passage.free(), 3, at);
            LineState s = far(sys, at, force);
            LineState guess = s.copy();
            assertThat(cold(sys, guess)).isTrue();
            LineState exact = guess.copy();
            int near = steps(sys, exact);
            assertThat(near).isLessThanOrEqualTo(6);
            for (int k = 0; k < 3; k++) {
                double size = sys.forces.endSideTension(exact, k);
                assertThat(sys.forces.endSideTension(guess, k)).isCloseTo(size, within(0.02 * size));
            }
            assertThat(guess.slip).containsExactly(exact.slip, within(0.02));
            steps(sys, s);
            assertThat(exact.tension).containsExactly(s.tension, within(1e-6 * force + 1e-3));
        }
    }

    /** Climbing spans: the same cable, the same guess from both ends. */
    @Test
    void theGuessIsMirroredWithTheLine() {
        LoadSlot at = new LoadSlot(1, true, 4);
        List<Support> up = List.of(
                Support.end("a", Point.of(0, 0, 0)),
                Support.intermediate("p", Point.of(8, 0, 1), Passage.free()),
                Support.intermediate("q", Point.of(20, 0, 0.5), Passage.free()),
                Support.end("b", Point.of(30, 0, 2)));
        List<Support> mirrored = List.of(
                Support.end("b", Point.of(0, 0, 2)),
                Support.intermediate("q", Point.of(10, 0, 0.5), Passage.free()),
                Support.intermediate("p", Point.of(22, 0, 1), Passage.free()),
                Support.end("a", Point.of(30, 0, 0)));
        LineSystem sys = Lines.of(up, 1500, 5, at);
        LoadSlot back = new LoadSlot(1, true, sys.length[1] - 4);
        LineSystem other = Lines.of(mirrored, 1500, 5, back);
        LineState s = far(sys, at, 6000);
        LineState m = far(other, back, 6000);
        assertThat(cold(sys, s)).isTrue();
        assertThat(cold(other, m)).isTrue();
        assertThat(m.slip[1]).isCloseTo(-s.slip[2], within(1e-6));
        assertThat(m.slip[2]).isCloseTo(-s.slip[1], within(1e-6));
        assertThat(m.tension[0]).isCloseTo(s.tension[6], within(1e-3));
        assertThat(m.tension[3]).isCloseTo(s.tension[3], within(1e-3));
    }

    @Test
    void linesThatHoldTheCableHaveNoGuess() {
        LoadSlot at = new LoadSlot(1, true, 4);
        for (Passage passage : List.of(Passage.clamped(), Passage.friction(0.1))) {
            LineSystem sys = Lines.level(1500, 5, passage, 2, at);
            assertThat(cold(sys, far(sys, at, 1000))).isFalse();
        }
        LineSystem free = Lines.level(1500, 5, Passage.free(), 2, at);
        LineState jammed = far(free, at, 1000);
        jammed.passage[1] = LineState.JAMMED_BACK;
        assertThat(cold(free, jammed)).isFalse();
        assertThat(new FreeLineStart(free).fits(jammed)).isFalse();
        assertThat(new FreeLineStart(free).fits(far(free, at, 1000))).isTrue();
    }

    @Test
    void oneGrippedLoadHasAGuessAndNothingElse() {
        LoadSlot running = new LoadSlot(0, false, 4);
        LineSystem runs = Lines.level(1500, 5, Passage.clamped(), 1, running);
        assertThat(cold(runs, far(runs, running, 1000))).isFalse();
        LineSystem two = Lines.level(1500, 5, Passage.clamped(), 1, GRIPPED, new LoadSlot(0, true, 6));
        LineState s = Lines.straight(two, 1500, GRIPPED, new LoadSlot(0, true, 6));
        assertThat(cold(two, s)).as("none takes part").isFalse();
        assertThat(cold(two, Lines.loaded(s, 1, 1000))).as("one does").isTrue();
        assertThat(cold(two, Lines.loaded(s, 0, 1000))).as("both do").isFalse();
    }

    @Test
    void elasticAnchorsAbsorbersAndBentLawsHaveNoGuess() {
        Support a = Support.end("a", Point.of(0, 0, 0));
        Support b = Support.end("b", Point.of(10, 0, 0));
        LineSystem elastic = Lines.of(List.of(a, b.withStiffness(new Stiffness(1e5, 1e5, 1e5))), 1500, 5, GRIPPED);
        assertThat(cold(elastic, far(elastic, GRIPPED, 1000))).isFalse();
        InlineAbsorber absorber = InlineAbsorber.of(LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 6000), new LoadingCurve.Corner(1, 6000)), 8e6, 2e5));
        for (List<Support> ends :
                List.of(List.of(a.withInlineAbsorber(absorber), b), List.of(a, b.withInlineAbsorber(absorber)))) {
            LineSystem sys = Lines.of(ends, 1500, 5, GRIPPED);
            assertThat(cold(sys, far(sys, GRIPPED, 1000))).isFalse();
        }
        LineSystem line = new LineSystem(
                List.of(a, b),
                5,
                LoadElongation.curve(List.of(
                        new LoadElongation.Corner(0, 0),
                        new LoadElongation.Corner(0.01, 1000),
                        new LoadElongation.Corner(0.3, 60_000))));
        line.length[0] = 9.9;
        LineSystem bent = new LineSystem(line, List.of(GRIPPED));
        assertThat(cold(bent, far(bent, GRIPPED, 1000))).isFalse();
    }
}
