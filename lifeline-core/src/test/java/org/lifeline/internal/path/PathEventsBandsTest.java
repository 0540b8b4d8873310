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
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;

/**
 * How near to its limit an event is met and passed. What begins to slip or yield is met from −1e-8 on, aimed at −4e-9 and
 * passed at 1e-10; a length is met at its bound and passed 1e-10 chords beyond it; any other limit is met from 1e-9 on and
 * passed at 1e-8.
 */
class PathEventsBandsTest {
    private static final double FRICTION = 0.2;
    private static final double LIMIT = FRICTION * 0.2;

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
    void aSlipIsPassedJustBeyondItsLimitAndAimedAtJustBefore() {
        LineSystem sys = SmallLines.system(Passage.friction(FRICTION), 2);
        PathEvents e = events(sys);
        LineState low = bent(sys, LIMIT - 0.01);
        assertThat(e.passesOver()).isFalse();
        assertThat(e.share(low, bent(sys, LIMIT + 5e-11))).isEqualTo(1);
        double beyond = 3e-10;
        assertThat(e.share(low, bent(sys, LIMIT + beyond))).isCloseTo((0.01 - 4e-9) / (0.01 + beyond), within(1e-11));
        assertThat(e.beyond(bent(sys, LIMIT), bent(sys, 1))).isCloseTo(4e-9, within(1e-13));
        e.passOver(true);
        assertThat(e.share(low, bent(sys, LIMIT + 0.03)))
                .as("slips are never passed over")
                .isCloseTo(0.25, within(1e-6));
        assertThat(e.steps(bent(sys, LIMIT - 5e-9), bent(sys, LIMIT)))
                .as("at its limit from the start")
                .isInfinite();
    }

    private static LineState gripped(LineSystem sys, int mode, double slip) {
        LineState s = bent(sys, 0);
        s.passage[1] = mode;
        s.active[0] = true;
        s.coordinate[0] = sys.loadSpan[0] == 1 ? 0.2 : 9.8;
        s.slip[1] = slip;
        return s;
    }

    @Test
    void aJamIsPassedAHairBeyondThePost() {
        LineSystem sys = SmallLines.system(Passage.friction(FRICTION), 2, new LoadSlot(1, true, 0.2));
        PathEvents e = events(sys);
        LineState low = gripped(sys, LineState.RUNS_ON, 0.1);
        assertThat(e.share(low, gripped(sys, LineState.RUNS_ON, 0.2 + 5e-10))).isEqualTo(1);
        assertThat(e.share(low, gripped(sys, LineState.RUNS_ON, 0.2 + 2e-9))).isLessThan(1);
        LineState far = gripped(sys, LineState.RUNS_ON, 0.5);
        assertThat(e.share(gripped(sys, LineState.RUNS_ON, 0.2 + 4e-10), far))
                .as("from half the band on, at once")
                .isLessThan(1e-8);
        assertThat(e.share(gripped(sys, LineState.RUNS_ON, 0.2 + 6e-10), far))
                .as("it stood there before")
                .isEqualTo(1);
        assertThat(e.share(gripped(sys, LineState.STUCK, 0.1), gripped(sys, LineState.STUCK, 0.5)))
                .as("cable that sticks does not come up")
                .isEqualTo(1);
    }

    @Test
    void aGripBeforeThePostJamsTheOtherWay() {
        LineSystem sys = SmallLines.system(Passage.free(), 2, new LoadSlot(0, true, 9.8));
        PathEvents e = events(sys);
        double room = sys.length[0] - 9.8;
        LineState low = gripped(sys, LineState.RUNS_ON, 0.1 - room);
        LineState high = gripped(sys, LineState.RUNS_ON, -0.3 - room);
        assertThat(e.share(low, high)).isCloseTo(0.25, within(1e-6));
        assertThat(e.beyond(high, high)).isCloseTo(0.03, within(1e-9));
        assertThat(e.steps(low, gripped(sys, LineState.RUNS_ON, 0.08 - room))).isCloseTo(5, within(1e-6));
    }

    @Test
    void jammedCableComesFreeBeyondTheLimitOfItsFriction() {
        LineSystem sys = SmallLines.system(Passage.friction(FRICTION), 2);
        PathEvents e = events(sys);
        for (int mode : new int[] {LineState.JAMMED_BACK, LineState.JAMMED_ON}) {
            int sign = mode == LineState.JAMMED_BACK ? 1 : -1;
            LineState high = jammed(sys, sign * (LIMIT + 0.03), mode);
            assertThat(e.share(jammed(sys, sign * (LIMIT - 0.01), mode), high)).isCloseTo(0.25, within(1e-5));
            assertThat(e.isMet(jammed(sys, sign * (LIMIT + 5e-10), mode), high)).isFalse();
            assertThat(e.isMet(jammed(sys, sign * (LIMIT + 2e-9), mode), high)).isTrue();
            assertThat(e.share(jammed(sys, 0, mode), jammed(sys, sign * (LIMIT + 8e-9), mode)))
                    .as("not passed yet")
                    .isEqualTo(1);
            assertThat(e.share(jammed(sys, 0, mode), jammed(sys, sign * (LIMIT + 2e-8), mode)))
                    .isLessThan(1);
            assertThat(e.share(jammed(sys, 0, mode), jammed(sys, -sign * 0.2, mode)))
                    .as("pulled on into the jam")
                    .isEqualTo(1);
        }
    }

    private static LineState jammed(LineSystem sys, double logRatio, int mode) {
        LineState s = bent(sys, logRatio);
        s.passage[1] = mode;
        return s;
    }

    private static LineState loaded(LineSystem sys, int mode, double coordinate, double up) {
        LineState s = bent(sys, 0);
        s.active[0] = true;
        s.force[0] = 100;
        s.mode[0] = mode;
        s.coordinate[0] = coordinate;
        s.tension[2] = up;
        return s;
    }

    @Test
    void aLoadOnTheSupportAtTheStartLeavesItToTheEnd() {
        LineSystem sys = SmallLines.system(Passage.clamped(), 2, new LoadSlot(0, false, 5));
        PathEvents e = events(sys);
        // It is carried by the support: pulls of 60 − 50 and 20 − 50 N, over tension before it and weight.
        LineState low = loaded(sys, LineState.AT_START, 0, 60);
        LineState high = loaded(sys, LineState.AT_START, 0, 20);
        assertThat(e.share(low, high)).isCloseTo(10.0 / 160 / (10.0 / 160 + 30.0 / 120), within(1e-6));
        assertThat(e.beyond(high, high)).isCloseTo(0.25, within(1e-7));
        assertThat(e.isMet(loaded(sys, LineState.AT_START, 0, 50 - 0.5e-9 * 150), high))
                .isFalse();
        assertThat(e.isMet(loaded(sys, LineState.AT_START, 0, 50 - 2e-9 * 150), high))
                .isTrue();
    }

    @Test
    void aRunningLoadIsMetAtItsBound() {
        LineSystem sys = SmallLines.system(Passage.clamped(), 2, new LoadSlot(0, false, 5));
        PathEvents e = events(sys);
        double end = sys.length[0];
        LineState high = loaded(sys, LineState.RUNNING, end + 0.3, 0);
        assertThat(e.share(loaded(sys, LineState.RUNNING, end - 0.1, 0), high)).isCloseTo(0.25, within(1e-6));
        assertThat(e.beyond(high, high)).isCloseTo(0.03, within(1e-9));
        assertThat(e.isMet(loaded(sys, LineState.RUNNING, end + 1e-12, 0), high))
                .isTrue();
        assertThat(e.isMet(loaded(sys, LineState.RUNNING, end - 1e-12, 0), high))
                .isFalse();
        LineState near = loaded(sys, LineState.RUNNING, end - 0.1, 0);
        assertThat(e.steps(near, loaded(sys, LineState.RUNNING, end - 0.09, 0))).isCloseTo(10, within(1e-6));
    }

    @Test
    void aGripIsNeverAtABound() {
        LineSystem sys = SmallLines.system(Passage.clamped(), 2, new LoadSlot(0, true, 5));
        LineState low = loaded(sys, LineState.GRIPPED, 5, -60);
        LineState high = loaded(sys, LineState.GRIPPED, 5, 20);
        assertThat(events(sys).share(low, high)).isEqualTo(1);
    }

    private static final LoadingCurve RIGID_STOP = LoadingCurve.through(
            List.of(new LoadingCurve.Corner(0, 6000), new LoadingCurve.Corner(1, 7000)), 8e6, Double.POSITIVE_INFINITY);

    private static LineSystem absorbing(int end, InlineAbsorber absorber) {
        List<Support> ends = new ArrayList<>(SmallLines.supports(Passage.free(), 1));
        ends.set(end, ends.get(end).withInlineAbsorber(absorber));
        return SmallLines.system(ends);
    }

    private static LineState pulled(LineSystem sys, double tension) {
        LineState s = new LineState(sys.spans, sys.loads);
        s.tension[0] = tension;
        return s;
    }

    private static LineState drawn(LineSystem sys, int end, double extension, int piece) {
        LineState s = pulled(sys, 6500);
        s.yielding[end] = true;
        s.extension[end] = extension;
        s.piece[end] = piece;
        return s;
    }

    @Test
    void anAbsorberIsMetJustBeforeItYields() {
        InlineAbsorber absorber = SmallLines.absorber();
        double force = absorber.curve().activationForce();
        for (int end = 0; end < 2; end++) {
            LineSystem sys = absorbing(end, absorber);
            PathEvents e = events(sys);
            LineState high = pulled(sys, 1.3 * force);
            assertThat(e.share(pulled(sys, 0.9 * force), high)).isCloseTo(0.25, within(1e-6));
            assertThat(e.isMet(pulled(sys, force * (1 - 5e-9)), high)).isTrue();
            assertThat(e.isMet(pulled(sys, force * (1 - 2e-8)), high)).isFalse();
            assertThat(e.excessOfYield(high, end)).isCloseTo(0.3, within(1e-12));
            assertThat(e.excessOfYield(high, 1 - end)).as("no absorber there").isEqualTo(Double.NEGATIVE_INFINITY);
            LineState yields = high.copy();
            yields.yielding[end] = true;
            assertThat(e.excessOfYield(yields, end)).isEqualTo(Double.NEGATIVE_INFINITY);
            e.passOver(true);
            assertThat(e.excessOfYield(high, end)).isEqualTo(Double.NEGATIVE_INFINITY);
            assertThat(e.share(pulled(sys, 0.9 * force), high)).isEqualTo(1);
        }
    }

    @Test
    void aYieldingAbsorberIsMetAtItsCorner() {
        for (int end = 0; end < 2; end++) {
            LineSystem sys = absorbing(end, InlineAbsorber.of(RIGID_STOP));
            PathEvents e = events(sys);
            int stop = RIGID_STOP.pieces() - 1;
            double corner = RIGID_STOP.maximumExtension();
            LineState high = drawn(sys, end, corner + 0.3, stop - 1);
            assertThat(e.share(drawn(sys, end, corner - 0.1, stop - 1), high)).isCloseTo(0.25, within(1e-6));
            assertThat(e.beyond(high, high)).as("over the span").isCloseTo(0.03, within(1e-9));
            assertThat(e.isMet(drawn(sys, end, corner + 1e-12, stop - 1), high)).isTrue();
            assertThat(e.isMet(drawn(sys, end, corner - 1e-12, stop - 1), high)).isFalse();
        }
    }

    /** Off a rigid stop by the tension: below that of the last corner; off an elastic one by the extension, over the span. */
    @Test
    void anAbsorberComesOffItsStop() {
        LineSystem rigid = absorbing(0, InlineAbsorber.of(RIGID_STOP));
        PathEvents e = events(rigid);
        int stop = RIGID_STOP.pieces() - 1;
        LineState low = drawn(rigid, 0, RIGID_STOP.maximumExtension(), stop);
        LineState high = low.copy();
        low.tension[0] = 1.1 * RIGID_STOP.lastForce();
        high.tension[0] = 0.7 * RIGID_STOP.lastForce();
        assertThat(e.share(low, high)).isCloseTo(0.25, within(1e-6));
        assertThat(e.beyond(high, high)).isCloseTo(0.3, within(1e-7));
        LoadingCurve curve = SmallLines.absorber().curve();
        LineSystem elastic = absorbing(0, SmallLines.absorber());
        PathEvents f = events(elastic);
        LineState off = drawn(elastic, 0, curve.maximumExtension() - 0.3, curve.pieces() - 1);
        assertThat(f.share(drawn(elastic, 0, curve.maximumExtension() + 0.1, curve.pieces() - 1), off))
                .isCloseTo(0.25, within(1e-6));
        assertThat(f.beyond(off, off)).isCloseTo(0.03, within(1e-9));
    }

    /** What does not run at both ends of a step, by its own friction or its own yield, cannot turn back on it. */
    @Test
    void onlyWhatRunsCanTurn() {
        for (Passage passage : List.of(Passage.free(), Passage.friction(FRICTION))) {
            LineSystem sys = SmallLines.system(passage, 2);
            for (int mode : new int[] {LineState.RUNS_ON, LineState.JAMMED_BACK, LineState.STUCK}) {
                PathPoint now = new PathPoint(sys, true);
                PathPoint next = new PathPoint(sys, true);
                now.state.passage[1] = mode;
                next.state.passage[1] = mode;
                int k = sys.unknowns.slipIndex(1);
                now.tangent[k] = mode == LineState.JAMMED_BACK ? 4 : -4;
                next.tangent[k] = -0.25 * now.tangent[k];
                boolean turns = passage.friction() > 0 && mode == LineState.RUNS_ON;
                assertThat(events(sys).turn(now, next)).as("mode %d", mode).isEqualTo(turns ? -0.25 : 1);
                now.tangent[k] = 0;
                assertThat(events(sys).turn(now, next)).as("at rest before").isEqualTo(1);
            }
        }
        LoadingCurve curve = SmallLines.absorber().curve();
        LineSystem sys = absorbing(1, SmallLines.absorber());
        int at = sys.unknowns.extensionIndex(1);
        for (int kind = 0; kind < 4; kind++) {
            PathPoint now = new PathPoint(sys, true);
            PathPoint next = new PathPoint(sys, true);
            now.state.yielding[1] = kind != 1;
            next.state.yielding[1] = kind != 2;
            now.state.piece[1] = kind == 3 ? curve.pieces() - 1 : curve.pieces() - 2;
            now.tangent[at] = 2;
            next.tangent[at] = -1;
            assertThat(events(sys).turn(now, next)).as("kind %d", kind).isEqualTo(kind == 0 ? -0.5 : 1);
        }
    }
}
