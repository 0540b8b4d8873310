package org.lifeline.verify.state;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Attachment;
import org.lifeline.testing.Cases;

/** What the checks read off a state: sums, scales and neighbours, on states small enough to be worked out by hand. */
class StateNumbersTest {
    private static final StateNumbers LOADED = HandMade.state(
            35,
            List.of(
                    HandMade.span(1, HandMade.piece(0, 4, 1000, 700), HandMade.piece(4, 10, 1100, 0)),
                    HandMade.span(2, HandMade.piece(10, 16, 1300, 0))),
            List.of(HandMade.load(1, 4, 700), HandMade.resting(2, 10, 300, "b"), HandMade.resting(2, 10, 50, "b")));

    @Test
    void everyNumberOfAResultIsTaken() {
        LineEquilibrium e = Statics.withDefaults()
                .withTemperature(30)
                .solve(Cases.inlineAbsorber().line(), List.of(HandMade.applied(1, 5, Attachment.GRIPPED, 2000)));
        StateNumbers s = StateNumbers.of(e);
        assertThat(s.line()).isEqualTo(e.line());
        assertThat(s.temperature()).isEqualTo(30);
        assertThat(s.supports()).isEqualTo(e.supports());
        assertThat(s.absorbers()).isEqualTo(e.inlineAbsorbers()).isNotEmpty();
        assertThat(s.loads()).isEqualTo(e.loads()).hasSize(1);
        double length = 0;
        for (SpanState span : e.spans()) {
            SpanNumbers n = s.span(span.number());
            assertThat(n.number()).isEqualTo(span.number());
            assertThat(n.first()).isEqualTo(span.firstSupport());
            assertThat(n.second()).isEqualTo(span.secondSupport());
            assertThat(n.pieces()).hasSameSizeAs(span.pieces());
            for (int i = 0; i < n.pieces().size(); i++) {
                PieceNumbers p = n.pieces().get(i);
                assertThat(p.start()).isEqualTo(span.pieces().get(i).start());
                assertThat(p.end()).isEqualTo(span.pieces().get(i).end());
                assertThat(p.startTension()).isEqualTo(span.pieces().get(i).startTension());
                assertThat(p.endTension()).isEqualTo(span.pieces().get(i).endTension());
                assertThat(p.weight()).isEqualTo(span.pieces().get(i).weightPerLength());
                assertThat(p.load()).isEqualTo(span.pieces().get(i).loadAtEnd());
                length += p.length();
            }
        }
        assertThat(s.length()).isCloseTo(length, within(1e-12));
        assertThat(s.pieces()).hasSize(e.line().spans() + 1);
    }

    @Test
    void listsAreCopies() {
        List<SpanNumbers> spans = new ArrayList<>(LOADED.spans());
        List<LoadPosition> loads = new ArrayList<>(LOADED.loads());
        List<PieceNumbers> pieces = new ArrayList<>(LOADED.span(1).pieces());
        StateNumbers s = HandMade.state(15, spans, loads);
        SpanNumbers span = new SpanNumbers(1, Point.of(0, 0, 0), Point.of(1, 0, 0), pieces);
        spans.clear();
        loads.clear();
        pieces.clear();
        assertThat(s.spans()).hasSize(2);
        assertThat(s.loads()).hasSize(3);
        assertThat(span.pieces()).hasSize(2);
    }

    @Test
    void cableExpandsFromTheTemperatureOfInstallation() {
        // Installed at 15 °C: 20 K of 1e-5.
        assertThat(LOADED.expansion()).isCloseTo(1.0002, within(1e-12));
        assertThat(HandMade.bare().expansion()).isEqualTo(1);
        assertThat(HandMade.state(-5, LOADED.spans(), List.of()).expansion()).isCloseTo(0.9998, within(1e-12));
    }

    @Test
    void lengthsAreSumsOfPieces() {
        assertThat(LOADED.span(1).length()).isEqualTo(10);
        assertThat(LOADED.length()).isEqualTo(16);
        assertThat(LOADED.span(1).firstPiece().end()).isEqualTo(Point.of(4, 0, 5));
        assertThat(LOADED.span(1).lastPiece().start()).isEqualTo(Point.of(4, 0, 5));
    }

    @Test
    void theLargestTensionMayBeAtEitherEndOfAPiece() {
        assertThat(LOADED.largestTension()).isEqualTo(1300);
        PieceNumbers p = new PieceNumbers(
                Point.of(0, 0, 5), Point.of(10, 0, 5), new Vector3(3, 0, 4), new Vector3(3, 0, -40), 10, 5, 0);
        PieceNumbers q = new PieceNumbers(
                Point.of(0, 0, 5), Point.of(10, 0, 5), new Vector3(30, 0, 40), new Vector3(3, 0, 4), 10, 5, 0);
        assertThat(HandMade.beside(HandMade.span(1, p)).largestTension()).isCloseTo(Math.hypot(3, 40), within(1e-12));
        assertThat(HandMade.beside(HandMade.span(1, q)).largestTension()).isEqualTo(50);
    }

    @Test
    void residualsAreRelativeToTheLargestLoadOrElseToTheTension() {
        assertThat(LOADED.forceScale()).isEqualTo(700);
        assertThat(HandMade.bare().forceScale()).isEqualTo(1200);
        StateNumbers tiny = HandMade.state(15, LOADED.spans(), List.of(HandMade.load(1, 4, 1e-6)));
        assertThat(tiny.forceScale())
                .as("not below what rounding of 1300 N leaves")
                .isCloseTo(1300e-5, within(1e-12));
    }

    @Test
    void loadsThatRestOnASupportAreAddedUp() {
        assertThat(LOADED.resting("b")).isEqualTo(350);
        assertThat(LOADED.resting("a")).isZero();
    }

    @Test
    void tensionsStandOnBothSidesOfASupportAndNotBeyondTheEnds() {
        assertThat(LOADED.tensionBefore(0)).isEqualTo(Vector3.ZERO);
        assertThat(LOADED.tensionBehind(0)).isEqualTo(new Vector3(1000, 0, 0));
        assertThat(LOADED.tensionBefore(1)).isEqualTo(new Vector3(1100, 0, 0));
        assertThat(LOADED.tensionBehind(1)).isEqualTo(new Vector3(1300, 0, 0));
        assertThat(LOADED.tensionBefore(2)).isEqualTo(new Vector3(1300, 0, 0));
        assertThat(LOADED.tensionBehind(2)).isEqualTo(Vector3.ZERO);
        assertThat(LOADED.endTension(0)).isEqualTo(1000);
        assertThat(LOADED.endTension(2)).isEqualTo(1300);
    }

    @Test
    void chordsAreThoseOfTheSupportsAsInstalled() {
        assertThat(LOADED.chord(1)).isEqualTo(10);
        assertThat(LOADED.chord(2)).isEqualTo(6);
        assertThat(LOADED.chordAt(0)).isEqualTo(10);
        assertThat(LOADED.chordAt(1)).isEqualTo(6);
        assertThat(LOADED.chordAt(2)).isEqualTo(6);
    }

    @Test
    void roundingIsThatOfTheLargestCoordinate() {
        // 16 has an ulp of 2^-48; eight of them.
        assertThat(LOADED.lastDigits()).isEqualTo(8 * Math.pow(2, -48));
        SpanNumbers far =
                new SpanNumbers(1, Point.of(0, -1024, 5), Point.of(10, 0, 5), List.of(HandMade.piece(0, 10, 1000, 0)));
        assertThat(HandMade.beside(far).lastDigits()).isEqualTo(8 * Math.pow(2, -42));
        SpanNumbers high =
                new SpanNumbers(1, Point.of(0, 0, 5), Point.of(10, 0, 4096), List.of(HandMade.piece(0, 10, 1000, 0)));
        assertThat(HandMade.beside(high).lastDigits()).isEqualTo(8 * Math.pow(2, -40));
    }

    @Test
    void aPieceTouchesBelowATrillionthOfTheChord() {
        for (double length : new double[] {0, 0.9e-11, -0.9e-11, 1.1e-11, -1.1e-11}) {
            PieceNumbers p =
                    new PieceNumbers(Point.of(0, 0, 5), Point.of(0, 0, 5), Vector3.ZERO, Vector3.ZERO, length, 5, 0);
            SpanNumbers span = HandMade.span(1, p, HandMade.piece(0, 10, 1000, 0));
            StateNumbers s = HandMade.beside(span);
            assertThat(s.isTouch(span, 0)).as("%s m", length).isEqualTo(Math.abs(length) <= 1e-11);
            assertThat(s.isTouch(span, 1)).isFalse();
        }
    }

    @Test
    void anAbsorberHasItsExtensionAtItsOwnSupport() {
        assertThat(LOADED.extension(2)).isEqualTo(0.25);
        assertThat(LOADED.extension(0)).isZero();
    }

    @Test
    void loadsAtThePeakAreThoseWhoHangAndThenTheFall() {
        ArrestNumbers a = ArrestNumbers.of(Cases.sequence().solve());
        double g = 9.80665;
        List<AppliedLoad> hanging = a.hanging();
        assertThat(hanging).hasSameSizeAs(a.fall().hanging()).isNotEmpty();
        for (int i = 0; i < hanging.size(); i++) {
            assertThat(hanging.get(i).force())
                    .isCloseTo(a.fall().hanging().get(i).worker().mass() * g, within(1e-9));
            assertThat(hanging.get(i).place())
                    .isEqualTo(a.fall().hanging().get(i).place());
        }
        List<AppliedLoad> all = a.loadsAtPeak();
        assertThat(all.subList(0, all.size() - 1)).isEqualTo(hanging);
        assertThat(all.get(all.size() - 1).force()).isEqualTo(a.lineLoad());
        assertThat(all.get(all.size() - 1).place()).isEqualTo(a.fall().place());
        assertThat(a.fallLoad(123).force()).isEqualTo(123);
        assertThat(a.weight()).isCloseTo(a.fall().fallingMass() * g, within(1e-9));
        assertThat(a.descent())
                .isEqualTo(a.attachmentBefore().z() - a.attachmentAtPeak().z());
        assertThat(a.descent()).isCloseTo(a.distances().lineDescent(), within(1e-12));
        assertThat(a.levelScale())
                .isGreaterThanOrEqualTo(
                        Math.max(a.attachmentBefore().z(), a.attachmentAtPeak().z()))
                .isGreaterThanOrEqualTo(1);
        assertThat(a.distances().slip()).hasSameSizeAs(a.peak().supports());
    }
}
