package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;

/**
 * How near to a limit a mode is left as it is, and what a change of mode leaves alone. The bands are those of
 * {@link LineTolerances}: 1e-10 of the log of a ratio of tensions, twice that after 20 rounds; 1e-13 chords of a slip, once
 * more each round; 1e-9 of the tension and the force of a load; 1e-12 of the force of an absorber; 1e-13 m of its extension.
 */
class ModeChangesLimitsTest {
    private static final double FRICTION = 0.2;
    private static final double BENT = 0.2;
    private static final double FORCE = 100;

    private static boolean changes(LineSystem sys, LineState s, LineState past, int round) {
        return new ModeChanges(sys).change(s, past, round);
    }

    private static boolean changes(LineSystem sys, LineState s) {
        return changes(sys, s, s.copy(), 0);
    }

    /** Two spans whose cable turns by 0.2 rad at the post, at two tensions. */
    private static LineState bent(LineSystem sys, double before, double behind, LoadSlot... slots) {
        LineState s = Lines.straight(sys, 1, slots);
        s.tension[0] = before * Math.cos(0.5 * BENT);
        s.tension[2] = before * Math.sin(0.5 * BENT);
        s.tension[3] = behind * Math.cos(0.5 * BENT);
        s.tension[5] = -behind * Math.sin(0.5 * BENT);
        return s;
    }

    private static LineSystem row(Passage passage, LoadSlot... slots) {
        return Lines.level(1000, 0, passage, 2, slots);
    }

    @Test
    void cableThatRunsFreelyNeverSticks() {
        LineSystem sys = row(Passage.free());
        LineState past = bent(sys, 1000, 1000);
        for (double slip : new double[] {-0.5, 0.5}) {
            LineState s = past.copy();
            s.slip[1] = slip;
            assertThat(changes(sys, s, past, 0)).isFalse();
            assertThat(s.passage[1]).isEqualTo(LineState.RUNS_ON);
            assertThat(s.slip[1]).isEqualTo(slip);
        }
    }

    @Test
    void clampedCableCannotJam() {
        LoadSlot slot = new LoadSlot(1, true, 0.2);
        LineSystem sys = row(Passage.clamped(), slot);
        LineState s = Lines.loaded(bent(sys, 1000, 1000, slot), 0, FORCE);
        s.slip[1] = 0.3;
        assertThat(changes(sys, s)).isFalse();
        assertThat(s.passage[1]).isEqualTo(LineState.STUCK);
    }

    @Test
    void loadsThatTakeNoPartAreLeftWhereTheyAre() {
        LoadSlot slot = new LoadSlot(0, false, -1);
        LineSystem sys = row(Passage.free(), slot);
        LineState s = bent(sys, 1000, 1000, slot);
        assertThat(changes(sys, s)).isFalse();
        assertThat(s.mode[0]).isEqualTo(LineState.RUNNING);
        assertThat(s.coordinate[0]).isEqualTo(-1);
    }

    @Test
    void jammedCableStaysWithinRoundingOfItsLimit() {
        LoadSlot slot = new LoadSlot(1, true, 0.2);
        for (Passage passage : List.of(Passage.free(), Passage.friction(FRICTION))) {
            LineSystem sys = row(passage, slot);
            double limit = passage.friction() * BENT;
            for (int mode : new int[] {LineState.JAMMED_BACK, LineState.JAMMED_ON}) {
                double away = mode == LineState.JAMMED_BACK ? 1 : -1;
                for (double beyond : new double[] {-5e-11, 5e-11, 2e-10}) {
                    LineState s = bent(sys, 1000, 1000 * Math.exp(away * (limit + beyond)), slot);
                    s.passage[1] = mode;
                    assertThat(changes(sys, s))
                            .as("mode %d, beyond %s", mode, beyond)
                            .isEqualTo(beyond > 1e-10);
                }
            }
        }
    }

    /** What is jammed has no slip of its own that could go the wrong way. */
    @Test
    void jammedCableDoesNotStickByItsSlip() {
        LoadSlot slot = new LoadSlot(1, true, 0.2);
        LineSystem sys = row(Passage.friction(FRICTION), slot);
        for (int mode : new int[] {LineState.JAMMED_BACK, LineState.JAMMED_ON}) {
            LineState past = bent(sys, 1000, 1000, slot);
            past.passage[1] = mode;
            LineState s = past.copy();
            s.slip[1] = 0.1 * Integer.signum(mode);
            assertThat(changes(sys, s, past, 0)).isFalse();
            assertThat(s.passage[1]).isEqualTo(mode);
            assertThat(s.slip[1]).isEqualTo(0.1 * Integer.signum(mode));
        }
    }

    @Test
    void aGripThatJustTouchesThePostDoesNotJam() {
        LoadSlot slot = new LoadSlot(1, true, 0.2);
        LineSystem sys = row(Passage.free(), slot);
        LineState s = Lines.loaded(bent(sys, 1000, 1000, slot), 0, FORCE);
        s.slip[1] = 0.2;
        assertThat(changes(sys, s)).isFalse();
        assertThat(s.passage[1]).isEqualTo(LineState.RUNS_ON);
    }

    @Test
    void theBandOfFrictionDoublesAfterTwentyRounds() {
        LineSystem sys = row(Passage.friction(FRICTION));
        double[][] cases = {{0, 0.5, 0}, {0, 1.5, 1}, {19, 1.5, 1}, {20, 1.5, 0}, {20, 3, 1}, {40, 2.5, 0}, {40, 3.5, 1}
        };
        for (double[] each : cases) {
            LineState s = bent(sys, 1000, 1000 * Math.exp(FRICTION * BENT + each[1] * 1e-10));
            assertThat(changes(sys, s, s.copy(), (int) each[0]))
                    .as("round %s, %s of the band", each[0], each[1])
                    .isEqualTo(each[2] > 0);
        }
    }

    /** Spans of 10 m: 1e-12 m, and ten times as much in the tenth round. */
    @Test
    void theBandOfStillnessGrowsWithTheRounds() {
        LineSystem sys = row(Passage.friction(FRICTION));
        LineState past = bent(sys, 1000, 1050);
        past.passage[1] = LineState.RUNS_ON;
        double[][] cases = {{0, 0.5, 0}, {0, 2, 1}, {9, 9, 0}, {9, 11, 1}};
        for (double[] each : cases) {
            LineState s = past.copy();
            s.slip[1] = each[1] * 1e-12;
            assertThat(changes(sys, s, past, (int) each[0]))
                    .as("round %s, slip %s", each[0], each[1])
                    .isEqualTo(each[2] > 0);
        }
    }

    /**
     * At the pull p the cable comes up to the load with p ∓ F/2, so that the scale of the band is the tension before the load
     * and the force: F/2 at the end of the span and 3F/2 at its start.
     */
    @Test
    void aLoadAtABoundStaysWithinRoundingOfItsPull() {
        LoadSlot slot = new LoadSlot(0, false, 10);
        LineSystem sys = row(Passage.friction(FRICTION), slot);
        double[][] cases = {
            {LineState.AT_END, 0.3, 0}, {LineState.AT_END, 0.8, 1}, {LineState.AT_END, -0.8, 0},
            {LineState.AT_START, -1.2, 0}, {LineState.AT_START, -2, 1}, {LineState.AT_START, 0.3, 0}
        };
        for (double[] each : cases) {
            int mode = (int) each[0];
            LineState s = Lines.loaded(bent(sys, 1000, 1000, slot), 0, FORCE);
            s.mode[0] = mode;
            s.coordinate[0] = mode == LineState.AT_START ? 0 : sys.length[0];
            s.tension[2] = (mode == LineState.AT_START ? 0.5 : -0.5) * FORCE + each[1] * 1e-9 * FORCE;
            assertThat(changes(sys, s)).as("mode %d, pull %s", mode, each[1]).isEqualTo(each[2] > 0);
        }
    }

    @Test
    void aLoadThatHasBeenTriedTooOftenReportsNoChange() {
        LoadSlot slot = new LoadSlot(0, false, 10);
        LineSystem sys = row(Passage.friction(FRICTION), slot);
        for (int round : new int[] {60, 61}) {
            LineState s = Lines.loaded(bent(sys, 1000, 1000, slot), 0, FORCE);
            s.mode[0] = LineState.AT_END;
            s.coordinate[0] = sys.length[0];
            s.tension[2] = 400;
            s.passage[1] = LineState.JAMMED_ON;
            assertThat(changes(sys, s, s.copy(), round)).isEqualTo(round == 60);
        }
    }

    @Test
    void aLoadThatLeavesTheEndOfItsSpanWasNotCarriedByIt() {
        LoadSlot slot = new LoadSlot(0, false, 10);
        for (Passage passage : List.of(Passage.free(), Passage.friction(FRICTION))) {
            LineSystem sys = row(passage, slot);
            LineState s = Lines.loaded(bent(sys, 1000, 1000, slot), 0, FORCE);
            s.mode[0] = LineState.AT_END;
            s.coordinate[0] = sys.length[0];
            s.tension[2] = 400;
            s.passage[1] = LineState.RUNS_ON;
            assertThat(changes(sys, s)).isTrue();
            assertThat(s.mode[0]).isEqualTo(LineState.RUNNING);
            assertThat(s.tension[2]).as("the cable's own at its start").isEqualTo(400);
            assertThat(s.passage[1])
                    .as("a post without friction cannot hold the cable")
                    .isEqualTo(passage.friction() > 0 ? LineState.STUCK : LineState.RUNS_ON);
        }
    }

    /** A grip carries nothing of the ring that leans on it: both hang on the cable. */
    @Test
    void aLoadThatLeavesAGripWasOnTheCableBefore() {
        LoadSlot[] slots = {new LoadSlot(0, true, 4), new LoadSlot(0, false, 4)};
        LineSystem sys = row(Passage.friction(FRICTION), slots);
        LineState s = Lines.loaded(Lines.loaded(bent(sys, 1000, 1000, slots), 0, 50), 1, FORCE);
        s.mode[1] = LineState.AT_START;
        s.tension[2] = -400;
        assertThat(changes(sys, s)).isTrue();
        assertThat(s.mode[1]).isEqualTo(LineState.RUNNING);
        assertThat(s.tension[2]).isEqualTo(-400);
        assertThat(s.passage[1]).isEqualTo(LineState.STUCK);
    }

    private static final double INITIAL = 8e6;
    private static final List<LoadingCurve.Corner> CORNERS = List.of(
            new LoadingCurve.Corner(0, 5000), new LoadingCurve.Corner(0.4, 6000), new LoadingCurve.Corner(1, 7000));
    private static final LoadingCurve ELASTIC_STOP = LoadingCurve.through(CORNERS, INITIAL, 2e5);
    private static final LoadingCurve RIGID_STOP = LoadingCurve.through(CORNERS, INITIAL, Double.POSITIVE_INFINITY);

    private static LineSystem absorbing(LoadingCurve curve) {
        Support a = Support.end("a", Point.of(0, 0, 0)).withInlineAbsorber(InlineAbsorber.of(curve));
        return Lines.of(List.of(a, Support.end("b", Point.of(10, 0, 0))), 1000, 0);
    }

    /** An absorber drawn along its curve, torn as far as it is extended, but not beyond the stop. */
    private static LineState drawn(LineSystem sys, LoadingCurve curve, double tension, double extension) {
        LineState s = Lines.straight(sys, tension);
        s.yielding[0] = true;
        s.extension[0] = extension;
        s.yielded[0] = Math.min(extension, curve.maximumExtension());
        s.piece[0] = curve.piece(extension);
        return s;
    }

    @Test
    void anAbsorberHoldsWithinRoundingOfItsResistance() {
        LineSystem sys = absorbing(ELASTIC_STOP);
        double activation = ELASTIC_STOP.activationForce();
        for (double beyond : new double[] {-4e-13, 4e-13, 3e-12}) {
            LineState s = Lines.straight(sys, activation * (1 + beyond));
            assertThat(changes(sys, s)).as("%s beyond", beyond).isEqualTo(beyond > 1e-12);
        }
    }

    @Test
    void anAbsorberThatStandsStillGoesOnYielding() {
        LineSystem sys = absorbing(ELASTIC_STOP);
        LineState past = drawn(sys, ELASTIC_STOP, 5500, 0.2);
        for (double back : new double[] {0, 0.5e-13, 4e-13}) {
            LineState s = past.copy();
            s.extension[0] -= back;
            assertThat(changes(sys, s, past, 0)).as("back by %s m", back).isEqualTo(back > 1e-13);
            assertThat(s.yielding[0]).isEqualTo(back < 1e-13);
        }
    }

    @Test
    void anAbsorberStaysOnThePieceThatItIsOn() {
        LineSystem sys = absorbing(ELASTIC_STOP);
        LineState past = drawn(sys, ELASTIC_STOP, 6200, 0.5);
        LineState s = past.copy();
        s.extension[0] = 0.6;
        assertThat(changes(sys, s, past, 0)).isFalse();
        assertThat(s.piece[0]).isEqualTo(ELASTIC_STOP.piece(0.6));
        assertThat(s.yielded[0]).isEqualTo(0.6);
    }

    /** An elastic stop takes every extension back as long as it is beyond the last corner. */
    @Test
    void anElasticStopGivesAndTakes() {
        LineSystem sys = absorbing(ELASTIC_STOP);
        double end = ELASTIC_STOP.maximumExtension();
        LineState past = drawn(sys, ELASTIC_STOP, 12_000, end + 0.03);
        for (double extension : new double[] {end, end + 0.01, end + 0.05}) {
            LineState s = past.copy();
            s.extension[0] = extension;
            assertThat(changes(sys, s, past, 0)).isFalse();
            assertThat(s.yielding[0]).isTrue();
            assertThat(s.extension[0]).isEqualTo(extension);
            assertThat(s.yielded[0]).as("no farther than its end is torn").isEqualTo(end);
        }
    }

    @Test
    void anAbsorberThatComesToItsStopHasTheExtensionThatTheStopAllows() {
        for (LoadingCurve curve : List.of(ELASTIC_STOP, RIGID_STOP)) {
            LineSystem sys = absorbing(curve);
            double end = curve.maximumExtension();
            LineState past = drawn(sys, curve, 6900, 0.95);
            LineState s = past.copy();
            s.extension[0] = end + 0.02;
            assertThat(changes(sys, s, past, 0)).isTrue();
            assertThat(s.piece[0]).isEqualTo(curve.pieces() - 1);
            assertThat(s.extension[0]).isEqualTo(curve.equals(RIGID_STOP) ? end : end + 0.02);
            LineState inner = drawn(sys, curve, 5900, 0.3);
            LineState next = inner.copy();
            next.extension[0] = 0.6;
            assertThat(changes(sys, next, inner, 0)).isTrue();
            assertThat(next.extension[0]).as("from piece to piece it stays").isEqualTo(0.6);
        }
    }

    /** A rigid stop pushes nothing: below the force of its last corner the absorber is off it. */
    @Test
    void anAbsorberLeavesARigidStopByItsTension() {
        LineSystem sys = absorbing(RIGID_STOP);
        double end = RIGID_STOP.maximumExtension();
        for (double below : new double[] {-0.5, -4e-13, 4e-13, 3e-12, 0.5}) {
            LineState past = drawn(sys, RIGID_STOP, RIGID_STOP.lastForce() * (1 - below), end);
            LineState s = past.copy();
            assertThat(changes(sys, s, past, 0)).as("below by %s", below).isEqualTo(below > 1e-12);
            assertThat(s.yielding[0]).isEqualTo(below < 1e-12);
            assertThat(s.extension[0]).isEqualTo(end);
        }
    }

    /** Only those who follow go along; the cable of the second span carries at its start what it gave to the post. */
    @Test
    void aLoadThatComesToAPostTakesItsFollowersAlong() {
        LoadSlot[] slots = {
            new LoadSlot(1, false, 1), new LoadSlot(1, false, 1), new LoadSlot(1, false, 4), new LoadSlot(1, false, 5)
        };
        LineSystem sys = row(Passage.friction(FRICTION), slots);
        LineState past = bent(sys, 1000, 1000, slots);
        Lines.loaded(Lines.loaded(Lines.loaded(past, 0, FORCE), 1, 30), 3, 5);
        past.mode[1] = LineState.FOLLOWS;
        past.mode[2] = LineState.FOLLOWS;
        past.coordinate[0] = -0.1;
        LineState s = past.copy();
        assertThat(changes(sys, s, past, 0)).isTrue();
        assertThat(s.coordinate).containsExactly(0, 0, 4, 5);
        assertThat(s.tension[2]).isEqualTo(past.tension[2]);
        assertThat(s.tension[5]).isEqualTo(past.tension[5] + FORCE + 30);
        LineState end = past.copy();
        end.coordinate[0] = 10.1;
        assertThat(changes(sys, end, past, 0)).isTrue();
        assertThat(end.tension).as("what rests at the end was not at the start").containsExactly(past.tension);
    }

    /** A ring that comes up to a grip still hangs on the cable. */
    @Test
    void aLoadThatComesToAGripStaysOnTheCable() {
        LoadSlot[] slots = {new LoadSlot(1, true, 4), new LoadSlot(1, false, 3.9)};
        LineSystem sys = row(Passage.friction(FRICTION), slots);
        LineState past = Lines.loaded(Lines.loaded(bent(sys, 1000, 1000, slots), 0, 50), 1, FORCE);
        LineState s = past.copy();
        assertThat(changes(sys, s, past, 0)).isTrue();
        assertThat(s.mode[1]).isEqualTo(LineState.AT_START);
        assertThat(s.coordinate[1]).isEqualTo(4);
        assertThat(s.tension).containsExactly(past.tension);
    }

    @Test
    void onlyWhatYieldsIsTorn() {
        LineSystem sys = absorbing(ELASTIC_STOP);
        LineState past = Lines.straight(sys, 1000);
        LineState s = past.copy();
        s.extension[0] = 0.3;
        s.extension[1] = 0.3;
        new ModeChanges(sys).keepYield(s, past);
        assertThat(s.yielded).containsExactly(0, 0);
        s.yielding[0] = true;
        past.yielded[0] = 0.35;
        new ModeChanges(sys).keepYield(s, past);
        assertThat(s.yielded).as("no less than before").containsExactly(0.35, 0);
    }

    @Test
    void anAbsorberYieldsFromWhereItWasTorn() {
        for (LoadingCurve curve : List.of(ELASTIC_STOP, RIGID_STOP)) {
            LineSystem sys = absorbing(curve);
            double end = curve.maximumExtension();
            for (double torn : new double[] {0, 0.3, 0.7, end}) {
                for (double extension : new double[] {0.1, end + 0.1}) {
                    LineState s = Lines.straight(sys, 9000);
                    s.yielded[0] = torn;
                    s.extension[0] = extension;
                    new ModeChanges(sys).startYield(s, 0, InlineAbsorber.of(curve));
                    int first = curve.firstYieldPiece();
                    assertThat(s.yielding[0]).isTrue();
                    assertThat(s.piece[0]).isEqualTo(Math.max(first, curve.piece(torn)));
                    double least = Math.max(torn, curve.pieceStart(first));
                    boolean stopped = curve.equals(RIGID_STOP) && torn == end;
                    assertThat(s.extension[0]).isEqualTo(stopped ? end : Math.max(least, extension));
                }
            }
        }
    }
}
