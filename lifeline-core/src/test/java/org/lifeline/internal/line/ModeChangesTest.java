package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;

/** Which modes a state shows to be wrong, from both sides of every limit. */
class ModeChangesTest {
    private static final double FRICTION = 0.2;

    private static ModeChanges changes(LineSystem sys) {
        return new ModeChanges(sys);
    }

    /** A line of two spans whose cable turns by 0.1 rad on either side of the post, at two tensions. */
    private static LineState bent(LineSystem sys, double before, double behind, LoadSlot... slots) {
        LineState s = Lines.straight(sys, 1, slots);
        s.tension[0] = before * Math.cos(0.1);
        s.tension[2] = before * Math.sin(0.1);
        s.tension[3] = behind * Math.cos(0.1);
        s.tension[5] = -behind * Math.sin(0.1);
        return s;
    }

    private static LineSystem rough(LoadSlot... slots) {
        return Lines.level(1000, 0, Passage.friction(FRICTION), 2, slots);
    }

    @Test
    void theExcessIsTheLogOfTheRatioLessTheCapstansLimit() {
        LineSystem sys = rough();
        LineState s = bent(sys, 1000, 1100);
        assertThat(sys.forces.turned(s, 1)).isCloseTo(0.2, within(1e-12));
        assertThat(changes(sys).excess(s, 1)).isCloseTo(Math.log(1.1) - FRICTION * 0.2, within(1e-12));
        assertThat(changes(sys).excess(bent(sys, 1100, 1000), 1))
                .isCloseTo(Math.log(1.1) - FRICTION * 0.2, within(1e-12));
    }

    @Test
    void cableThatSticksIsLetGoBeyondItsLimitTowardTheLargerTension() {
        LineSystem sys = rough();
        double limit = Math.exp(FRICTION * 0.2);
        for (double share : new double[] {1 - 1e-9, 1 + 1e-9}) {
            LineState on = bent(sys, 1000, 1000 * limit * share);
            LineState back = bent(sys, 1000 * limit * share, 1000);
            boolean beyond = share > 1;
            assertThat(changes(sys).change(on, on.copy(), 0)).isEqualTo(beyond);
            assertThat(changes(sys).change(back, back.copy(), 0)).isEqualTo(beyond);
            assertThat(on.passage[1]).isEqualTo(beyond ? LineState.RUNS_ON : LineState.STUCK);
            assertThat(back.passage[1]).isEqualTo(beyond ? LineState.RUNS_BACK : LineState.STUCK);
        }
    }

    @Test
    void laterRoundsAreMorePatientWithFriction() {
        LineSystem sys = rough();
        LineState s = bent(sys, 1000, 1000 * Math.exp(FRICTION * 0.2 + 5e-10));
        assertThat(changes(sys).change(s, s.copy(), 100))
                .as("six times as much is rounding")
                .isFalse();
        assertThat(changes(sys).change(s, s.copy(), 0)).isTrue();
    }

    @Test
    void cableThatSlipsTheWrongWaySticks() {
        LineSystem sys = rough();
        for (int mode : new int[] {LineState.RUNS_ON, LineState.RUNS_BACK}) {
            LineState past = bent(sys, 1000, 1050);
            past.passage[1] = mode;
            past.slip[1] = 0.01;
            // Running on the slip falls.
            LineState right = past.copy();
            right.slip[1] -= mode * 1e-3;
            assertThat(changes(sys).change(right, past, 0)).isFalse();
            assertThat(right.passage[1]).isEqualTo(mode);
            LineState wrong = past.copy();
            wrong.slip[1] += mode * 1e-3;
            assertThat(changes(sys).change(wrong, past, 0)).isTrue();
            assertThat(wrong.passage[1]).isEqualTo(LineState.STUCK);
            assertThat(wrong.slip[1]).as("where it was").isEqualTo(0.01);
        }
    }

    @Test
    void howStillIsStillGoesWithTheAccuracyOfTheStates() {
        LineSystem sys = rough();
        LineState past = bent(sys, 1000, 1050);
        past.passage[1] = LineState.RUNS_ON;
        LineState s = past.copy();
        s.slip[1] = 5e-11;
        ModeChanges loose = changes(sys);
        loose.settleFor(1e-11);
        assertThat(loose.change(s, past, 0))
                .as("a ten-thousand-millionth of 10 m is not seen")
                .isFalse();
        loose.settleFor(1e-15);
        assertThat(loose.change(s, past, 0)).isTrue();
    }

    @Test
    void clampedSupportsAreLeftAlone() {
        LineSystem sys = Lines.level(1000, 0, Passage.clamped(), 2);
        LineState s = bent(sys, 1000, 9000);
        assertThat(changes(sys).change(s, s.copy(), 0)).isFalse();
        assertThat(s.passage[1]).isEqualTo(LineState.STUCK);
    }

    /** A gripped load is drawn up to the post, and no farther. */
    @Test
    void aGrippedLoadJamsTheCableAtASupport() {
        LoadSlot[] slots = {new LoadSlot(0, true, 9.9), new LoadSlot(1, true, 0.2)};
        LineSystem sys = Lines.level(1000, 0, Passage.free(), 2, slots);
        LineState s = bent(sys, 1000, 1000, slots);
        s.active[0] = true;
        s.active[1] = true;
        double room = sys.length[0] - 9.9;
        s.slip[1] = 0.19;
        assertThat(changes(sys).change(s, s.copy(), 0)).isFalse();
        s.slip[1] = 0.21;
        assertThat(changes(sys).change(s, s.copy(), 0)).isTrue();
        assertThat(s.passage[1]).isEqualTo(LineState.JAMMED_BACK);
        assertThat(s.slip[1]).isEqualTo(0.2);
        s.passage[1] = LineState.RUNS_ON;
        s.slip[1] = -room - 0.01;
        assertThat(changes(sys).change(s, s.copy(), 0)).isTrue();
        assertThat(s.passage[1]).isEqualTo(LineState.JAMMED_ON);
        assertThat(s.slip[1]).isCloseTo(-room, within(1e-12));
    }

    @Test
    void jammedCableComesFreeWhenItIsPulledTheOtherWay() {
        for (Passage passage : List.of(Passage.free(), Passage.friction(FRICTION))) {
            LoadSlot slot = new LoadSlot(1, true, 0.2);
            LineSystem sys = Lines.level(1000, 0, passage, 2, slot);
            double limit = passage.friction() * 0.2;
            for (int mode : new int[] {LineState.JAMMED_BACK, LineState.JAMMED_ON}) {
                double away = mode == LineState.JAMMED_BACK ? 1 : -1;
                for (double beyond : new double[] {-1e-6, 1e-6}) {
                    LineState s = bent(sys, 1000, 1000 * Math.exp(away * (limit + beyond)), slot);
                    s.passage[1] = mode;
                    assertThat(changes(sys).change(s, s.copy(), 0)).isEqualTo(beyond > 0);
                    int free = away > 0 || limit == 0 ? LineState.RUNS_ON : LineState.RUNS_BACK;
                    assertThat(s.passage[1]).isEqualTo(beyond > 0 ? free : mode);
                }
            }
        }
    }

    /** Beyond the end of its span a load rests on the support; at the start the cable then carries it no more. */
    @Test
    void aLoadThatRunsOutOfItsSpanRestsOnTheSupport() {
        LoadSlot[] slots = {new LoadSlot(1, false, 5), new LoadSlot(1, false, 5)};
        LineSystem sys = rough(slots);
        LineState s = bent(sys, 1000, 1000, slots);
        Lines.loaded(Lines.loaded(s, 0, 300), 1, 200);
        s.mode[1] = LineState.FOLLOWS;
        assertThat(changes(sys).change(s.copy(), s, 0)).isFalse();
        LineState start = s.copy();
        start.coordinate[0] = -0.1;
        double up = start.tension[5];
        assertThat(changes(sys).change(start, s, 0)).isTrue();
        assertThat(start.mode[0]).isEqualTo(LineState.AT_START);
        assertThat(start.coordinate).as("the follower goes along").containsExactly(0, 0);
        assertThat(start.tension[5]).isCloseTo(up + 500, within(1e-9));
        LineState end = s.copy();
        end.coordinate[0] = 10.1;
        assertThat(changes(sys).change(end, s, 0)).isTrue();
        assertThat(end.mode[0]).isEqualTo(LineState.AT_END);
        assertThat(end.coordinate[1]).isEqualTo(sys.length[1]);
        assertThat(end.tension[5]).isEqualTo(up);
    }

    @Test
    void aLoadAtABoundLeavesItWhenItIsPulledAway() {
        LoadSlot slot = new LoadSlot(0, false, 10);
        LineSystem sys = rough(slot);
        for (int mode : new int[] {LineState.AT_START, LineState.AT_END}) {
            for (boolean away : new boolean[] {false, true}) {
                LineState s = bent(sys, 1000, 1000, slot);
                Lines.loaded(s, 0, 100);
                s.mode[0] = mode;
                s.passage[1] = LineState.RUNS_ON;
                boolean atStart = mode == LineState.AT_START;
                s.coordinate[0] = atStart ? 0 : sys.length[0];
                // The pull is the vertical tension before it and half its weight: above zero it runs to the start.
                s.tension[2] = (atStart == away ? -1 : 1) * 400;
                assertThat(changes(sys).change(s, s.copy(), 0))
                        .as("mode %d, away %s", mode, away)
                        .isEqualTo(away);
                assertThat(s.mode[0]).isEqualTo(away ? LineState.RUNNING : mode);
                assertThat(s.passage[1])
                        .as("the cable holds at the post that it leaves until the new limit")
                        .isEqualTo(away && !atStart ? LineState.STUCK : LineState.RUNS_ON);
                if (away && atStart) {
                    assertThat(s.tension[2]).as("the cable carries it again").isCloseTo(-500, within(1e-9));
                }
                LineState late = bent(sys, 1000, 1000, slot);
                Lines.loaded(late, 0, 100);
                late.mode[0] = mode;
                late.tension[2] = s.tension[2];
                late.passage[1] = LineState.RUNS_ON;
                changes(sys).change(late, late.copy(), 61);
                assertThat(late.mode[0]).as("after many tries it stays").isEqualTo(mode);
            }
        }
    }

    private static final LoadingCurve STEPS = LoadingCurve.through(
            List.of(
                    new LoadingCurve.Corner(0, 5000),
                    new LoadingCurve.Corner(0.4, 6000),
                    new LoadingCurve.Corner(1, 7000)),
            8e6,
            2e5);

    private static LineSystem absorbing() {
        Support a = Support.end("a", Point.of(0, 0, 0)).withInlineAbsorber(InlineAbsorber.of(STEPS));
        return Lines.of(List.of(a, Support.end("b", Point.of(10, 0, 0))), 1000, 0);
    }

    private static LineState yields(LineSystem sys, double tension, double extension) {
        LineState s = Lines.straight(sys, tension);
        s.yielding[0] = true;
        s.extension[0] = extension;
        s.piece[0] = STEPS.piece(extension);
        return s;
    }

    @Test
    void anAbsorberYieldsFromItsActivationForceOn() {
        LineSystem sys = absorbing();
        double activation = STEPS.activationForce();
        for (double share : new double[] {1 - 1e-9, 1 + 1e-9}) {
            LineState s = Lines.straight(sys, activation * share);
            assertThat(changes(sys).change(s, s.copy(), 0)).isEqualTo(share > 1);
            assertThat(s.yielding[0]).isEqualTo(share > 1);
        }
    }

    /** Once torn to 0.4 m it holds until the force of its curve there. */
    @Test
    void anAbsorberThatHasYieldedHoldsUpToWhereItWas() {
        LineSystem sys = absorbing();
        InlineAbsorber a = sys.absorbers[0];
        assertThat(a).isNotNull();
        LineState s = Lines.straight(sys, 5900);
        s.yielded[0] = 0.4;
        assertThat(changes(sys).resistance(a, s, 0)).isCloseTo(STEPS.force(0.4), within(1e-9));
        assertThat(changes(sys).change(s, s.copy(), 0)).isFalse();
        LineState beyond = Lines.straight(sys, 1.01 * STEPS.force(0.4));
        beyond.yielded[0] = 0.4;
        assertThat(changes(sys).change(beyond, beyond.copy(), 0)).isTrue();
        assertThat(beyond.yielding[0]).isTrue();
        assertThat(beyond.extension[0]).isGreaterThanOrEqualTo(0.4);
    }

    @Test
    void aYieldingAbsorberGoesFromPieceToPiece() {
        LineSystem sys = absorbing();
        LineState s = yields(sys, 5500, 0.2);
        LineState past = s.copy();
        int piece = s.piece[0];
        s.extension[0] = 0.3;
        assertThat(changes(sys).change(s, past, 0)).isFalse();
        assertThat(s.yielded[0]).as("what it has torn is kept").isEqualTo(0.3);
        double next = STEPS.pieceStart(piece + 1);
        s.extension[0] = next + 0.01;
        assertThat(changes(sys).change(s, past, 0)).isTrue();
        assertThat(s.piece[0]).isEqualTo(piece + 1);
        s.extension[0] = next - 0.01;
        assertThat(changes(sys).change(s, past, 0)).isTrue();
        assertThat(s.piece[0]).as("and back within one step").isEqualTo(piece);
    }

    @Test
    void anAbsorberThatWouldDrawBackHolds() {
        LineSystem sys = absorbing();
        LineState past = yields(sys, 5500, 0.2);
        past.yielded[0] = 0.2;
        LineState s = past.copy();
        s.extension[0] = 0.19;
        assertThat(changes(sys).change(s, past, 0)).isTrue();
        assertThat(s.yielding[0]).isFalse();
        assertThat(s.extension[0]).isEqualTo(0.2);
        assertThat(s.yielded[0]).isEqualTo(0.2);
    }

    @Test
    void whatIsDrawnOutBeyondTheStopIsNotTorn() {
        LineSystem sys = absorbing();
        double end = STEPS.maximumExtension();
        LineState past = yields(sys, 9000, end);
        past.piece[0] = STEPS.pieces() - 1;
        LineState s = past.copy();
        s.extension[0] = end + 0.02;
        assertThat(changes(sys).change(s, past, 0)).isFalse();
        assertThat(s.yielded[0]).isEqualTo(end);
        // Off the stop again after it was torn: it holds on its unloading line.
        past.yielded[0] = end;
        s.extension[0] = end - 0.01;
        assertThat(changes(sys).change(s, past, 0)).isTrue();
        assertThat(s.yielding[0]).isFalse();
        // Not torn before this step: it goes back to the piece before.
        past.yielded[0] = 0.5;
        s.yielding[0] = true;
        assertThat(changes(sys).change(s, past, 0)).isTrue();
        assertThat(s.yielding[0]).isTrue();
        assertThat(s.piece[0]).isEqualTo(STEPS.pieces() - 2);
    }
}
