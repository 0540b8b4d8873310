package org.lifeline.verify.state;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Attachment;

/** Loads find their nodes by place and by force, and a support is jammed by what touches it. */
class LoadArrangementTest {
    private static final AppliedLoad GRIPPED = HandMade.applied(1, 0, Attachment.GRIPPED, 500);
    private static final AppliedLoad FREE = HandMade.applied(1, 0, Attachment.FREE_RUNNING, 500);

    /** A piece of no length at a point, with a load at its end. */
    private static PieceNumbers touch(double x, double load) {
        Vector3 pull = new Vector3(1000, 0, 0);
        return new PieceNumbers(Point.of(x, 0, 5), Point.of(x, 0, 5), pull, pull, 0, 5, load);
    }

    private static StateNumbers first(SpanNumbers span, LoadPosition... loads) {
        return HandMade.state(15, List.of(span, HandMade.span(2, HandMade.piece(10, 16, 1200, 0))), List.of(loads));
    }

    private static LoadArrangement arrangement(StateNumbers s, AppliedLoad... loads) {
        return LoadArrangement.of(s, HandMade.bare(), List.of(loads));
    }

    @Test
    void loadsFindTheirNodesInAnyOrder() {
        for (long seed = 1; seed <= 40; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double[] x = {1.5, 4, 6, 9};
            double[] force = {300, 800, 100, 500};
            SpanNumbers span = HandMade.span(
                    1,
                    HandMade.piece(0, x[0], 1000, force[0]),
                    HandMade.piece(x[0], x[1], 1000, force[1]),
                    HandMade.piece(x[1], x[2], 1000, force[2]),
                    HandMade.piece(x[2], x[3], 1000, force[3]),
                    HandMade.piece(x[3], 10, 1000, 0));
            int[] order = {0, 1, 2, 3};
            for (int i = 3; i > 0; i--) {
                int k = r.nextInt(i + 1);
                int t = order[i];
                order[i] = order[k];
                order[k] = t;
            }
            LoadPosition[] loads = new LoadPosition[4];
            for (int i = 0; i < 4; i++) {
                loads[i] = HandMade.load(1, x[order[i]] + r.nextDouble(-0.01, 0.01), force[order[i]]);
            }
            assertThat(LoadNodes.of(span, List.of(loads))).as("seed %d", seed).isEqualTo(order);
        }
    }

    @Test
    void loadsThatTouchAreToldApartByTheirForce() {
        SpanNumbers span =
                HandMade.span(1, HandMade.piece(0, 4, 1000, 300), touch(4, 800), HandMade.piece(4, 10, 1000, 0));
        assertThat(LoadNodes.of(span, List.of(HandMade.load(1, 4, 800), HandMade.load(1, 4, 300))))
                .containsExactly(1, 0);
        assertThat(LoadNodes.of(span, List.of(HandMade.load(1, 4, 300), HandMade.load(1, 4, 800))))
                .containsExactly(0, 1);
    }

    @Test
    void aLoadThatRestsOnASupportPullsNothingOnTheCable() {
        SpanNumbers span = HandMade.span(1, touch(0, 0), touch(0, 600), HandMade.piece(0, 10, 1000, 0));
        LoadPosition rests = HandMade.resting(1, 0, 600, "a");
        LoadPosition hangs = HandMade.load(1, 0, 600);
        assertThat(LoadNodes.of(span, List.of(hangs, rests))).containsExactly(1, 0);
        assertThat(LoadNodes.of(span, List.of(rests, hangs))).containsExactly(0, 1);
        assertThat(LoadNodes.of(span, List.of())).isEmpty();
    }

    @Test
    void theLoadsOfASpanStandInTheOrderOfItsNodes() {
        SpanNumbers span = HandMade.span(
                1, HandMade.piece(0, 3, 1000, 500), HandMade.piece(3, 7, 1000, 900), HandMade.piece(7, 10, 1000, 0));
        AppliedLoad right = HandMade.applied(1, 7, Attachment.GRIPPED, 900);
        AppliedLoad left = HandMade.applied(1, 3, Attachment.GRIPPED, 500);
        StateNumbers s = first(span, HandMade.load(1, 7, 900), HandMade.load(1, 3, 500));
        LoadArrangement a = arrangement(s, right, left);
        assertThat(a.in(span)).containsExactly(left, right);
        assertThat(a.in(s.span(2))).isEmpty();
        assertThat(a.before(right)).isEmpty();
        assertThat(a.before(left)).containsExactly(right);
    }

    @Test
    void aSpanWhoseLoadsDoNotFitItsPiecesIsLeftOut() {
        SpanNumbers span = HandMade.span(1, HandMade.piece(0, 3, 1000, 500), HandMade.piece(3, 10, 1000, 0));
        StateNumbers s = first(span, HandMade.load(1, 3, 500), HandMade.load(1, 5, 500));
        assertThat(arrangement(s, GRIPPED, FREE).in(span)).isEmpty();
        StateNumbers fewer = first(span, HandMade.load(1, 3, 500));
        assertThat(arrangement(fewer, GRIPPED).in(span)).containsExactly(GRIPPED);
        assertThat(arrangement(fewer).in(span)).as("no load was put on").isEmpty();
    }

    @Test
    void aGrippedLoadAtASupportJamsItAndAFreeOneDoesNot() {
        SpanNumbers atFirst = HandMade.span(1, touch(0, 500), HandMade.piece(0, 10, 1000, 0));
        StateNumbers s = first(atFirst, HandMade.load(1, 0, 500));
        assertThat(arrangement(s, GRIPPED).isJammed(0, true)).isTrue();
        assertThat(arrangement(s, FREE).isJammed(0, true)).isFalse();
        assertThat(arrangement(s, GRIPPED).isJammed(1, false))
                .as("the other end of the span")
                .isFalse();
        SpanNumbers atSecond = HandMade.span(1, HandMade.piece(0, 10, 1000, 500), touch(10, 0));
        StateNumbers t = first(atSecond, HandMade.load(1, 10, 500));
        assertThat(arrangement(t, GRIPPED).isJammed(1, false)).isTrue();
        assertThat(arrangement(t, FREE).isJammed(1, false)).isFalse();
        assertThat(arrangement(t, GRIPPED).isJammed(0, true)).isFalse();
        assertThat(arrangement(t, GRIPPED).isJammed(1, true))
                .as("the span behind")
                .isFalse();
    }

    @Test
    void aGrippedLoadBehindAFreeOneJamsWhereTheyTouch() {
        SpanNumbers span = HandMade.span(1, touch(0, 300), touch(0, 500), HandMade.piece(0, 10, 1000, 0));
        StateNumbers s = first(span, HandMade.load(1, 0, 300), HandMade.load(1, 0, 500));
        AppliedLoad light = HandMade.applied(1, 0, Attachment.FREE_RUNNING, 300);
        assertThat(arrangement(s, light, GRIPPED).isJammed(0, true)).isTrue();
        SpanNumbers apart =
                HandMade.span(1, touch(0, 300), HandMade.piece(0, 2, 1000, 500), HandMade.piece(2, 10, 1000, 0));
        StateNumbers u = first(apart, HandMade.load(1, 0, 300), HandMade.load(1, 2, 500));
        assertThat(arrangement(u, light, GRIPPED).isJammed(0, true)).isFalse();
    }

    @Test
    void anOuterSpanThatIsDrawnOutToItsFittingIsJammed() {
        // A thousandth of the 6 m that were installed is left behind support b.
        for (double left : new double[] {0.006, 0.0061}) {
            PieceNumbers rest = new PieceNumbers(
                    Point.of(10, 0, 5), Point.of(16, 0, 5), new Vector3(900, 0, 0), new Vector3(900, 0, 0), left, 5, 0);
            StateNumbers s = HandMade.state(
                    15, List.of(HandMade.span(1, HandMade.piece(0, 10, 1000, 0)), HandMade.span(2, rest)), List.of());
            assertThat(arrangement(s).isJammed(1, true)).as("%s m", left).isEqualTo(left == 0.006);
            assertThat(arrangement(s).isJammed(1, false))
                    .as("the other side has its cable")
                    .isFalse();
        }
        for (double left : new double[] {0.01, 0.0102}) {
            PieceNumbers rest = new PieceNumbers(
                    Point.of(0, 0, 5), Point.of(10, 0, 5), new Vector3(900, 0, 0), new Vector3(900, 0, 0), left, 5, 0);
            StateNumbers s = HandMade.state(
                    15, List.of(HandMade.span(1, rest), HandMade.span(2, HandMade.piece(10, 16, 1000, 0))), List.of());
            assertThat(arrangement(s).isJammed(1, false)).as("%s m", left).isEqualTo(left == 0.01);
        }
    }
}
