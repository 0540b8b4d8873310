package org.lifeline.verify.state;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Attachment;
import org.lifeline.model.Place;
import org.lifeline.testing.Cases;

/** Points of the cable by their unstretched length and by their station. */
class MaterialPointsTest {
    /** Nearly straight pieces: pulled so hard that they neither sag nor, with this stiffness, stretch much. */
    private static MaterialPoints straight(double temperature) {
        StateNumbers s = HandMade.state(
                temperature,
                List.of(HandMade.span(1, piece(0, 4), piece(4, 10)), HandMade.span(2, piece(10, 16))),
                List.of(HandMade.load(1, 4, 0)));
        return new MaterialPoints(s, CableIntegration.of(HandMade.line().cable()));
    }

    private static PieceNumbers piece(double from, double to) {
        Vector3 pull = new Vector3(10, 0, 0);
        return new PieceNumbers(Point.of(from, 0, 5), Point.of(to, 0, 5), pull, pull, to - from, 1e-9, 0);
    }

    @Test
    void aStationIsReachedAfterSoMuchCable() {
        MaterialPoints m = straight(15);
        // Stretched by 10 N over 1 MN: a hundred-thousandth.
        assertThat(m.lengthTo(Place.of(1, 2))).isCloseTo(2, within(3e-5));
        assertThat(m.lengthTo(Place.of(1, 7))).isCloseTo(7, within(1e-4));
        assertThat(m.lengthTo(Place.of(2, 3))).isCloseTo(13, within(1e-4));
        assertThat(m.pointAt(Place.of(1, 7)).distance(Point.of(7, 0, 5))).isLessThan(1e-6);
        assertThat(m.pointAt(Place.of(2, 3)).distance(Point.of(13, 0, 5))).isLessThan(1e-6);
    }

    @Test
    void lengthsCountAtTheTemperatureOfInstallation() {
        MaterialPoints hot = straight(1015);
        // 1000 K lengthen by a hundredth: what is 13 m now was less at installation.
        assertThat(hot.lengthTo(Place.of(2, 3))).isCloseTo(13 / 1.01, within(1e-3));
        assertThat(hot.lengthBefore(2)).isCloseTo(10 / 1.01, within(1e-9));
        assertThat(straight(15).lengthBefore(1)).isZero();
        assertThat(straight(15).lengthBefore(2)).isEqualTo(10);
    }

    @Test
    void aPointKnowsItsSpan() {
        MaterialPoints m = straight(15);
        assertThat(m.isInSpan(1, 0)).isTrue();
        assertThat(m.isInSpan(1, 10)).isTrue();
        assertThat(m.isInSpan(1, 10.001)).isFalse();
        assertThat(m.isInSpan(1, -0.001)).isFalse();
        assertThat(m.isInSpan(2, 9.999)).isFalse();
        assertThat(m.isInSpan(2, 10)).isTrue();
        assertThat(m.isInSpan(2, 16)).isTrue();
        assertThat(m.isInSpan(2, 16.001)).isFalse();
        MaterialPoints hot = straight(1015);
        assertThat(hot.isInSpan(1, 9.95))
                .as("10 m now are 9.90 m at installation")
                .isFalse();
        assertThat(hot.isInSpan(1, 9.85)).isTrue();
    }

    @Test
    void aLengthBeyondTheSpanHasNoPoint() {
        MaterialPoints m = straight(15);
        assertThat(m.at(1, 7).distance(Point.of(7, 0, 5))).isLessThan(2e-4);
        assertThat(m.at(2, 12).distance(Point.of(12, 0, 5))).isLessThan(2e-4);
        assertThat(m.at(1, 12).x()).isNaN();
        assertThat(m.at(2, 9).x()).isNaN();
    }

    @Test
    void stationAndLengthAreInverseOnALoadedLine() {
        LineEquilibrium e = Statics.withDefaults()
                .withTemperature(35)
                .solve(Cases.friction().line(), List.of(HandMade.applied(2, 4, Attachment.GRIPPED, 3000)));
        StateNumbers s = StateNumbers.of(e);
        MaterialPoints m = new MaterialPoints(s, CableIntegration.of(e.line().cable()));
        for (int span = 1; span <= s.spans().size(); span++) {
            double before = m.lengthBefore(span) - 1e-9;
            for (double station = 0.5; station < e.line().run(span); station += 1.3) {
                Place place = Place.of(span, station);
                double length = m.lengthTo(place);
                assertThat(length).isGreaterThan(before);
                before = length;
                assertThat(m.isInSpan(span, length)).isTrue();
                Point p = m.at(span, length);
                assertThat(p.distance(m.pointAt(place))).isLessThan(1e-9);
                assertThat(MaterialPoints.along(s.span(span), p))
                        .as("span %d, station %s", span, station)
                        .isCloseTo(station, within(1e-9));
            }
        }
    }

    @Test
    void whereTheCableWasDrawnAwayAStationIsAtItsEnd() {
        SpanNumbers drawn = new SpanNumbers(1, Point.of(0, 0, 5), Point.of(10, 0, 5), List.of(piece(0.5, 10)));
        StateNumbers s = HandMade.state(15, List.of(drawn, HandMade.span(2, piece(10, 15))), List.of());
        MaterialPoints m =
                new MaterialPoints(s, CableIntegration.of(HandMade.line().cable()));
        assertThat(m.pointAt(Place.of(1, 0.2))).isEqualTo(Point.of(0.5, 0, 5));
        assertThat(m.lengthTo(Place.of(1, 0.2))).isZero();
        assertThat(m.pointAt(Place.of(2, 5.5))).isEqualTo(Point.of(15, 0, 5));
        assertThat(m.lengthTo(Place.of(2, 5.5))).isEqualTo(14.5);
    }

    @Test
    void distanceAlongASpanIsHorizontalAndInItsDirection() {
        SpanNumbers slanted = new SpanNumbers(1, Point.of(1, 1, 0), Point.of(4, 5, 7), List.of(piece(0, 1)));
        assertThat(MaterialPoints.along(slanted, Point.of(1, 1, 99))).isZero();
        assertThat(MaterialPoints.along(slanted, Point.of(4, 5, -3))).isCloseTo(5, within(1e-12));
        assertThat(MaterialPoints.along(slanted, Point.of(-2, -3, 0))).isCloseTo(-5, within(1e-12));
        assertThat(MaterialPoints.along(slanted, Point.of(5, -2, 0)))
                .as("across")
                .isCloseTo(0, within(1e-12));
    }
}
