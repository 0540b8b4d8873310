package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;

/** Where loads rest and what bounds them, read off small lines by hand; and angles, tensions and groups of loads. */
class LineForcesPlacesTest {
    private static final LoadingCurve CURVE =
            LoadingCurve.through(List.of(new LoadingCurve.Corner(0, 5000), new LoadingCurve.Corner(1, 7000)), 8e6, 2e5);

    /** Level spans of 10 m, with in-line absorbers at the ends if wanted. */
    private static LineSystem line(int spans, boolean first, boolean last, LoadSlot... slots) {
        List<Support> supports = new ArrayList<>();
        for (int i = 0; i <= spans; i++) {
            Point at = Point.of(10 * i, 0, 0);
            boolean end = i == 0 || i == spans;
            Support s = end ? Support.end("s" + i, at) : Support.intermediate("s" + i, at, Passage.friction(0.2));
            boolean absorbs = (i == 0 && first) || (i == spans && last);
            supports.add(absorbs ? s.withInlineAbsorber(InlineAbsorber.of(CURVE)) : s);
        }
        return Lines.of(supports, 1000, 0, slots);
    }

    private static LoadSlot grip(int span, double at) {
        return new LoadSlot(span, true, at);
    }

    private static LoadSlot ring(int span, double at) {
        return new LoadSlot(span, false, at);
    }

    private static LineState state(LineSystem sys, LoadSlot... slots) {
        LineState s = Lines.straight(sys, 1000, slots);
        for (int j = 0; j < sys.loads; j++) {
            Lines.loaded(s, j, 100 * (j + 1));
        }
        return s;
    }

    /** A ring between grips in the second of three spans, with another ring beside it, and grips in the spans beside. */
    @Test
    void gripsThatTakePartBoundARing() {
        LoadSlot[] slots = {grip(0, 8), grip(1, 2), grip(1, 3), ring(1, 5), ring(1, 6), grip(1, 8), grip(2, 1)};
        LineSystem sys = line(3, false, false, slots);
        LineState s = state(sys, slots);
        s.slip[1] = 0.1;
        s.slip[2] = -0.2;
        assertThat(sys.forces.bound(s, 3, false)).as("the nearest grip").isEqualTo(3);
        assertThat(sys.forces.bound(s, 3, true)).as("beyond the other ring").isEqualTo(8);
        assertThat(sys.forces.bound(s, 4, false)).isEqualTo(3);
        assertThat(sys.forces.boundIsSupport(s, 3, false)).isFalse();
        assertThat(sys.forces.boundIsSupport(s, 3, true)).isFalse();
        s.active[2] = false;
        s.active[5] = false;
        assertThat(sys.forces.bound(s, 3, false))
                .as("the next one that takes part")
                .isEqualTo(2);
        assertThat(sys.forces.bound(s, 3, true)).as("the end of the span").isEqualTo(sys.length[1] - 0.2);
        assertThat(sys.forces.boundIsSupport(s, 3, false)).isFalse();
        assertThat(sys.forces.boundIsSupport(s, 3, true)).isTrue();
        s.active[1] = false;
        assertThat(sys.forces.bound(s, 3, false)).as("its start").isEqualTo(0.1);
        assertThat(sys.forces.boundIsSupport(s, 3, false)).isTrue();
    }

    @Test
    void aRingRestsOnTheSupportAtWhichItsSpanEnds() {
        LoadSlot[] slots = {ring(1, 5), ring(1, 5), grip(2, 4)};
        LineSystem sys = line(3, false, false, slots);
        LineState s = state(sys, slots);
        s.mode[1] = LineState.FOLLOWS;
        assertThat(rests(sys, s)).as("on the cable").containsExactly(-1, -1, -1);
        assertThat(sys.forces.cableForce(s, 0)).isEqualTo(100);
        s.mode[0] = LineState.AT_START;
        assertThat(rests(sys, s)).containsExactly(1, 1, -1);
        assertThat(sys.forces.cableForce(s, 1)).as("the support carries it").isZero();
        s.mode[0] = LineState.AT_END;
        assertThat(rests(sys, s)).containsExactly(2, 2, -1);
        assertThat(sys.forces.cableForce(s, 2)).isEqualTo(300);
        s.active[1] = false;
        assertThat(rests(sys, s)).containsExactly(2, -1, -1);
        assertThat(sys.forces.cableForce(s, 1)).as("takes no part").isZero();
        s.mode[2] = LineState.AT_END;
        assertThat(rests(sys, s)).as("a grip has no mode but its own").containsExactly(2, -1, -1);
    }

    @Test
    void aRingAgainstAGripOrAtAnAbsorberRestsOnNoSupport() {
        LoadSlot[] slots = {grip(0, 4), ring(0, 4)};
        LineSystem sys = line(1, false, false, slots);
        LineState s = state(sys, slots);
        s.mode[1] = LineState.AT_START;
        assertThat(rests(sys, s)).containsExactly(-1, -1);
        s.mode[1] = LineState.AT_END;
        assertThat(rests(sys, s)).containsExactly(-1, 1);
        LoadSlot[] two = {ring(0, 5), ring(1, 5)};
        for (boolean first : new boolean[] {false, true}) {
            for (boolean last : new boolean[] {false, true}) {
                LineSystem line = line(2, first, last, two);
                LineState at = state(line, two);
                at.mode[0] = LineState.AT_START;
                at.mode[1] = LineState.AT_END;
                assertThat(rests(line, at)).containsExactly(first ? -1 : 0, last ? -1 : 2);
                at.mode[0] = LineState.AT_END;
                at.mode[1] = LineState.AT_START;
                assertThat(rests(line, at)).as("on the post between").containsExactly(1, 1);
            }
        }
    }

    @Test
    void whatPullsOnASupportRestsThere() {
        LoadSlot[] slots = {LoadSlot.atSupport(0, 0), LoadSlot.atSupport(2, 1)};
        LineSystem sys = line(2, false, false, slots);
        LineState s = state(sys, slots);
        assertThat(rests(sys, s)).containsExactly(0, 2);
        assertThat(sys.forces.reaction(s, 0, 2)).isEqualTo(-100);
        assertThat(sys.forces.reaction(s, 1, 2)).isZero();
        assertThat(sys.forces.reaction(s, 2, 2)).isEqualTo(-200);
    }

    private static int[] rests(LineSystem sys, LineState s) {
        int[] list = new int[sys.loads];
        for (int j = 0; j < list.length; j++) {
            list[j] = sys.forces.restSupport(s, j);
        }
        return list;
    }

    /** A grip comes up to the post with all the cable between; without one an absorber's end does, at 99.9 % of the span. */
    @Test
    void cableSlipsUntilAGripOrAnAbsorberComesUp() {
        LoadSlot[] slots = {grip(0, 3), ring(0, 5), grip(0, 7), ring(1, 1), grip(1, 2), grip(1, 6)};
        for (boolean first : new boolean[] {false, true}) {
            for (boolean last : new boolean[] {false, true}) {
                LineSystem sys = line(3, first, last, slots);
                LineState s = state(sys, slots);
                double length = sys.length[0];
                assertThat(sys.forces.mostSlip(s, 1)).isEqualTo(2);
                assertThat(sys.forces.leastSlip(s, 1)).isEqualTo(7 - length);
                assertThat(sys.forces.leastSlip(s, 2)).isEqualTo(6 - length);
                double free = Double.POSITIVE_INFINITY;
                assertThat(sys.forces.mostSlip(s, 2)).isEqualTo(last ? 0.999 * length : free);
                s.active[4] = false;
                assertThat(sys.forces.mostSlip(s, 1)).isEqualTo(6);
                s.active[2] = false;
                assertThat(sys.forces.leastSlip(s, 1)).isEqualTo(3 - length);
                s.active[0] = false;
                s.active[5] = false;
                assertThat(sys.forces.mostSlip(s, 1)).as("rings do not jam").isEqualTo(free);
                assertThat(sys.forces.leastSlip(s, 1)).isEqualTo(first ? -0.999 * length : -free);
                assertThat(sys.forces.leastSlip(s, 2)).isEqualTo(-free);
            }
        }
    }

    @Test
    void thoseWhoFollowStandWithTheirLeader() {
        LoadSlot[] slots = {ring(0, 5), ring(0, 5), ring(0, 5), ring(0, 5), grip(0, 8), ring(0, 9), ring(1, 5)};
        LineSystem sys = line(2, false, false, slots);
        LineState s = state(sys, slots);
        s.mode[1] = LineState.FOLLOWS;
        s.mode[2] = LineState.FOLLOWS;
        s.mode[3] = LineState.FOLLOWS;
        assertThat(sys.forces.leader(s, 3)).isZero();
        assertThat(sys.forces.groupForce(s, 0)).isEqualTo(100 + 200 + 300 + 400);
        s.active[2] = false;
        assertThat(sys.forces.leader(s, 3)).isZero();
        assertThat(sys.forces.groupForce(s, 0))
                .as("without the one that takes no part")
                .isEqualTo(700);
        s.mode[1] = LineState.RUNNING;
        assertThat(sys.forces.leader(s, 3)).as("the nearest one").isEqualTo(1);
        assertThat(sys.forces.groupForce(s, 0)).isEqualTo(100);
        assertThat(sys.forces.groupForce(s, 1)).isEqualTo(600);
        assertThat(sys.forces.groupForce(s, 5))
                .as("not the one in the next span")
                .isEqualTo(600);
    }

    /** By the law of cosines, and by hand for right and straight angles. */
    @Test
    void anglesBetweenVectors() {
        assertThat(LineForces.angle(3, 0, 0, 0, 0, 5)).isCloseTo(Math.PI / 2, within(1e-15));
        assertThat(LineForces.angle(1, 2, 3, -2, -4, -6)).isCloseTo(Math.PI, within(1e-7));
        assertThat(LineForces.angle(1, 2, 3, 2, 4, 6)).isZero();
        SplittableRandom r = new SplittableRandom(5);
        for (int i = 0; i < 50; i++) {
            double[] a = {r.nextDouble(-1, 1), r.nextDouble(-1, 1), r.nextDouble(-1, 1)};
            double[] b = {r.nextDouble(-1, 1), r.nextDouble(-1, 1), r.nextDouble(-1, 1)};
            double third = 0;
            double aa = 0;
            double bb = 0;
            for (int c = 0; c < 3; c++) {
                third += (a[c] - b[c]) * (a[c] - b[c]);
                aa += a[c] * a[c];
                bb += b[c] * b[c];
            }
            double cosine = (aa + bb - third) / (2 * Math.sqrt(aa * bb));
            assertThat(LineForces.angle(a[0], a[1], a[2], b[0], b[1], b[2])).isCloseTo(Math.acos(cosine), within(1e-9));
        }
    }

    /** 1-2-2 and 2-3-6: tensions of 300 and 700 N, ends of 300 and 300 N where the third span is 2-1-2. */
    @Test
    void tensionsOnBothSidesOfAPost() {
        LineSystem sys = line(3, false, false);
        LineState s = Lines.straight(sys, 1);
        double[] t = {100, 200, 200, 200, 300, 600, 200, -100, 200};
        System.arraycopy(t, 0, s.tension, 0, t.length);
        assertThat(sys.forces.startSideTension(s, 1)).isEqualTo(300);
        assertThat(sys.forces.endSideTension(s, 1)).isEqualTo(700);
        assertThat(sys.forces.startSideTension(s, 2)).isEqualTo(700);
        assertThat(sys.forces.endSideTension(s, 2)).isEqualTo(300);
        assertThat(sys.forces.endTension(s, 0)).isEqualTo(300);
        assertThat(sys.forces.endTension(s, 1)).isEqualTo(300);
        s.tension[8] = 210;
        assertThat(sys.forces.endTension(s, 1)).isCloseTo(Math.sqrt(200 * 200 + 100 * 100 + 210 * 210), within(1e-12));
        assertThat(sys.forces.logRatio(s, 1)).isCloseTo(Math.log(7.0 / 3), within(1e-15));
        // (1, 2, 2)·(2, 3, 6) = 20 of 21; (2, 3, 6)·(2, −1, 2) = 13 of 21.
        s.tension[8] = 200;
        assertThat(sys.forces.turned(s, 1)).isCloseTo(Math.acos(20.0 / 21), within(1e-9));
        assertThat(sys.forces.turned(s, 2)).isCloseTo(Math.acos(13.0 / 21), within(1e-12));
    }

    /** On unloading an absorber gives back the force over its initial stiffness. */
    @Test
    void whatStaysOfAnAbsorberThatHasYielded() {
        LineSystem sys = line(1, true, false);
        InlineAbsorber a = InlineAbsorber.of(CURVE);
        LineState s = Lines.straight(sys, 1000);
        s.extension[0] = 0.3;
        assertThat(sys.forces.permanent(s, 0, a)).as("nothing torn yet").isZero();
        s.yielded[0] = 0.5;
        assertThat(sys.forces.permanent(s, 0, a)).isCloseTo(0.5 - CURVE.force(0.5) / 8e6, within(1e-15));
        s.yielded[0] = 1e-6;
        assertThat(sys.forces.permanent(s, 0, a)).as("on the elastic rise").isCloseTo(0, within(1e-20));
        s.piece[0] = CURVE.pieces() - 1;
        assertThat(LineForces.isAtStop(s, 0, a)).as("it holds").isFalse();
        s.yielding[0] = true;
        assertThat(LineForces.isAtStop(s, 0, a)).isTrue();
        s.piece[0] = CURVE.pieces() - 2;
        assertThat(LineForces.isAtStop(s, 0, a)).isFalse();
    }
}
