package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.internal.line.LoadSlot;
import org.lifeline.internal.numeric.WatchedWork;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;

/** Where a step ends: each kind of event with its excess set by hand, before its limit and beyond it. */
class PathEventsTest {
    private static final double FRICTION = 0.2;
    private static final double TURNED = 0.2;
    private static final double LIMIT = FRICTION * TURNED;

    private static PathEvents events(LineSystem sys) {
        return new PathEvents(sys, new Equilibrium(sys, WatchedWork.alone()));
    }

    /** Two spans that turn by 0.2 rad at the post, the log of the ratio of tensions as wished. */
    private static LineState bent(LineSystem sys, double logRatio) {
        LineState s = new LineState(sys.spans, sys.loads);
        double behind = 1000 * Math.exp(logRatio);
        s.tension[0] = 1000 * Math.cos(0.1);
        s.tension[2] = 1000 * Math.sin(0.1);
        s.tension[3] = behind * Math.cos(0.1);
        s.tension[5] = -behind * Math.sin(0.1);
        return s;
    }

    @Test
    void aSlipComesWhereTheExcessComesToItsLimit() {
        LineSystem sys = SmallLines.system(Passage.friction(FRICTION), 2);
        PathEvents e = events(sys);
        for (int sign : new int[] {-1, 1}) {
            LineState low = bent(sys, sign * (LIMIT - 0.01));
            LineState high = bent(sys, sign * (LIMIT + 0.03));
            assertThat(e.share(low, high)).isCloseTo(0.25, within(1e-6));
            assertThat(e.watched()).isEqualTo(1);
            assertThat(e.beyond(low, high)).isCloseTo(-0.01, within(1e-8));
            assertThat(e.beyond(high, high)).isCloseTo(0.03, within(1e-8));
            assertThat(e.sticks(low, 1)).isTrue();
            // The excess of a ratio that leans the other way counts from the side that slips.
            LineState other = bent(sys, -sign * LIMIT);
            assertThat(e.beyond(other, high)).isCloseTo(-2 * LIMIT, within(1e-8));
        }
    }

    @Test
    void aStepThatStaysBelowTheLimitHasNoEvent() {
        LineSystem sys = SmallLines.system(Passage.friction(FRICTION), 2);
        PathEvents e = events(sys);
        assertThat(e.share(bent(sys, 0), bent(sys, LIMIT - 1e-3))).isEqualTo(1);
        assertThat(e.isMet(bent(sys, 0), bent(sys, LIMIT - 1e-3))).isFalse();
    }

    /** Met from 1e-8 before the limit on, since what slips is let go by the next step. */
    @Test
    void aSlipIsMetJustBeforeItsLimit() {
        LineSystem sys = SmallLines.system(Passage.friction(FRICTION), 2);
        PathEvents e = events(sys);
        LineState later = bent(sys, LIMIT + 0.01);
        assertThat(e.isMet(bent(sys, LIMIT - 5e-9), later)).isTrue();
        assertThat(e.isMet(bent(sys, LIMIT - 2e-8), later)).isFalse();
        assertThat(e.share(bent(sys, LIMIT - 5e-9), later))
                .as("it stands there from the start")
                .isEqualTo(1);
    }

    @Test
    void whatSlipsOrIsClampedDoesNotBeginToSlip() {
        LineSystem sys = SmallLines.system(Passage.friction(FRICTION), 2);
        LineState low = bent(sys, 0);
        LineState high = bent(sys, 1);
        low.passage[1] = LineState.RUNS_ON;
        high.passage[1] = LineState.RUNS_ON;
        assertThat(events(sys).share(low, high)).isEqualTo(1);
        assertThat(events(sys).sticks(low, 1)).isFalse();
        LineSystem clamped = SmallLines.system(Passage.clamped(), 2);
        assertThat(events(clamped).share(bent(clamped, 0), bent(clamped, 1))).isEqualTo(1);
        assertThat(events(clamped).sticks(bent(clamped, 0), 1)).isFalse();
        LineSystem free = SmallLines.system(Passage.free(), 2);
        assertThat(events(free).sticks(bent(free, 0), 1)).isFalse();
    }

    @Test
    void smallStepsAreCountedUpToTheNearestEvent() {
        LineSystem sys = SmallLines.system(Passage.friction(FRICTION), 2);
        PathEvents e = events(sys);
        assertThat(e.steps(bent(sys, LIMIT - 0.01), bent(sys, LIMIT - 0.009))).isCloseTo(10, within(1e-6));
        assertThat(e.steps(bent(sys, LIMIT - 0.01), bent(sys, LIMIT - 0.011)))
                .as("going away")
                .isInfinite();
    }

    /** A gripped load 0.2 m behind the post is drawn up to it: the length that is left, over the chord. */
    @Test
    void aJamComesWhereTheGripComesToThePost() {
        LineSystem sys = SmallLines.system(Passage.free(), 2, new LoadSlot(1, true, 0.2));
        PathEvents e = events(sys);
        LineState low = bent(sys, 0);
        low.passage[1] = LineState.RUNS_ON;
        low.active[0] = true;
        low.coordinate[0] = 0.2;
        LineState high = low.copy();
        low.slip[1] = 0.1;
        high.slip[1] = 0.5;
        assertThat(e.share(low, high)).isCloseTo(0.25, within(1e-6));
        assertThat(e.beyond(high, high)).isCloseTo(0.03, within(1e-8));
        LineState met = low.copy();
        met.slip[1] = 0.2 + 1e-12;
        assertThat(e.isMet(met, high)).isTrue();
        met.slip[1] = 0.2 - 1e-12;
        assertThat(e.isMet(met, high)).isFalse();
    }

    @Test
    void jammedCableComesFreeByItsTensions() {
        LineSystem sys = SmallLines.system(Passage.free(), 2);
        for (int mode : new int[] {LineState.JAMMED_BACK, LineState.JAMMED_ON}) {
            int sign = mode == LineState.JAMMED_BACK ? 1 : -1;
            LineState low = bent(sys, -sign * 0.01);
            LineState high = bent(sys, sign * 0.03);
            low.passage[1] = mode;
            high.passage[1] = mode;
            assertThat(events(sys).share(low, high)).as("mode %d", mode).isCloseTo(0.25, within(1e-5));
        }
    }

    private static LineState running(LineSystem sys, double coordinate, int mode) {
        LineState s = bent(sys, 0);
        s.passage[1] = LineState.STUCK;
        s.active[0] = true;
        s.force[0] = 100;
        s.mode[0] = mode;
        s.coordinate[0] = coordinate;
        return s;
    }

    @Test
    void aRunningLoadComesToTheEndOfItsSpan() {
        LineSystem sys = SmallLines.system(Passage.clamped(), 2, new LoadSlot(0, false, 5));
        PathEvents e = events(sys);
        double end = sys.length[0];
        LineState low = running(sys, end - 0.1, LineState.RUNNING);
        assertThat(e.share(low, running(sys, end + 0.3, LineState.RUNNING))).isCloseTo(0.25, within(1e-6));
        LineState first = running(sys, 0.1, LineState.RUNNING);
        assertThat(e.share(first, running(sys, -0.3, LineState.RUNNING))).isCloseTo(0.25, within(1e-6));
        e.passOver(true);
        assertThat(e.passesOver()).isTrue();
        assertThat(e.share(low, running(sys, end + 0.3, LineState.RUNNING)))
                .as("passed over")
                .isEqualTo(1);
    }

    @Test
    void aLoadAtItsBoundLeavesItByItsPull() {
        LineSystem sys = SmallLines.system(Passage.clamped(), 2, new LoadSlot(0, false, 5));
        PathEvents e = events(sys);
        LineState low = running(sys, sys.length[0], LineState.AT_END);
        LineState high = low.copy();
        low.tension[2] = -60;
        high.tension[2] = -20;
        // Pulls of −10 N and of 30 N, over tension before it and weight: 10/160 and 30/120.
        double from = -10.0 / 160;
        double to = 30.0 / 120;
        assertThat(e.share(low, high)).isCloseTo(-from / (to - from), within(1e-6));
        LineState follows = low.copy();
        LineState later = high.copy();
        follows.mode[0] = LineState.FOLLOWS;
        later.mode[0] = LineState.FOLLOWS;
        assertThat(e.share(follows, later)).as("whoever follows is not asked").isEqualTo(1);
        low.active[0] = false;
        high.active[0] = false;
        assertThat(e.share(low, high)).isEqualTo(1);
    }

    private static LineSystem absorbing() {
        List<Support> ends = new ArrayList<>(SmallLines.supports(Passage.free(), 1));
        ends.set(0, ends.get(0).withInlineAbsorber(SmallLines.absorber()));
        return SmallLines.system(ends);
    }

    private static LineState pulled(LineSystem sys, double tension, double extension, boolean yielding) {
        LineState s = new LineState(sys.spans, sys.loads);
        s.tension[0] = tension;
        s.extension[0] = extension;
        s.yielding[0] = yielding;
        if (yielding) {
            s.piece[0] = SmallLines.absorber().curve().piece(extension);
        }
        return s;
    }

    @Test
    void anAbsorberBeginsToYieldAtItsActivationForce() {
        LineSystem sys = absorbing();
        double activation = SmallLines.absorber().curve().activationForce();
        LineState low = pulled(sys, 0.9 * activation, 0, false);
        LineState high = pulled(sys, 1.3 * activation, 0, false);
        assertThat(events(sys).share(low, high)).isCloseTo(0.25, within(1e-6));
    }

    @Test
    void aYieldingAbsorberComesToTheNextCornerOfItsCurve() {
        LineSystem sys = absorbing();
        LineState low = pulled(sys, 6000, 0.5, true);
        double corner = SmallLines.absorber().curve().pieceStart(low.piece[0] + 1);
        assertThat(corner).isGreaterThan(0.5);
        low.extension[0] = corner - 0.1;
        LineState high = low.copy();
        high.extension[0] = corner + 0.1;
        assertThat(events(sys).share(low, high)).isCloseTo(0.5, within(1e-6));
        // At the stop: off it again where the extension falls below its end.
        LineState stop = high.copy();
        stop.piece[0] = low.piece[0] + 1;
        LineState off = stop.copy();
        off.extension[0] = corner - 0.3;
        assertThat(events(sys).share(stop, off)).isCloseTo(0.25, within(1e-6));
    }

    /** A post that slips at a rate of 4 and in the end backward at 1: a quarter of the rate, below zero. */
    @Test
    void whatTurnsBackOnAStepIsSeenByItsRates() {
        LineSystem sys = SmallLines.system(Passage.friction(FRICTION), 2);
        PathEvents e = events(sys);
        int k = sys.unknowns.slipIndex(1);
        for (int mode : new int[] {LineState.RUNS_ON, LineState.RUNS_BACK}) {
            PathPoint now = new PathPoint(sys, true);
            PathPoint next = new PathPoint(sys, true);
            now.state.passage[1] = mode;
            next.state.passage[1] = mode;
            now.tangent[k] = -mode * 4;
            next.tangent[k] = mode;
            assertThat(e.turn(now, next)).isEqualTo(-0.25);
            next.tangent[k] = -mode * 8;
            assertThat(e.turn(now, next)).as("faster").isEqualTo(1);
            now.state.passage[1] = LineState.STUCK;
            next.tangent[k] = mode;
            assertThat(e.turn(now, next)).as("it did not run at the start").isEqualTo(1);
        }
        LineSystem absorber = absorbing();
        PathPoint now = new PathPoint(absorber, true);
        PathPoint next = new PathPoint(absorber, true);
        now.state.yielding[0] = true;
        next.state.yielding[0] = true;
        int at = absorber.unknowns.extensionIndex(0);
        now.tangent[at] = 2;
        next.tangent[at] = -1;
        assertThat(events(absorber).turn(now, next)).isEqualTo(-0.5);
    }
}
