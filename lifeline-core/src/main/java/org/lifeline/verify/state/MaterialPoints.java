package org.lifeline.verify.state;

import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.base.Violations;
import org.lifeline.model.Place;

/**
 * Points of the cable by the unstretched length between them and the start of the line, at the temperature of
 * installation, and by their station.
 *
 * <p>Immutable and thread-safe.
 *
 * @param state the state in which the points are looked for
 * @param integration what to integrate with
 * @since 1.0.0
 */
public record MaterialPoints(StateNumbers state, CableIntegration integration) {
    /**
     * Takes the state and what to integrate with.
     *
     * @param state the state in which the points are looked for
     * @param integration what to integrate with
     * @throws org.lifeline.base.InvalidInputException if one is missing
     */
    public MaterialPoints {
        Violations.required("state", state);
        Violations.required("integration", integration);
    }

    /**
     * The point at a station; where the link of an in-line absorber has drawn the cable away, its end.
     *
     * @param place the place
     * @return the point
     * @throws org.lifeline.base.InvalidInputException if the state has no such span
     */
    public Point pointAt(Place place) {
        return find(place).point();
    }

    /**
     * Unstretched length from the start of the line to the point at a station.
     *
     * @param place the place
     * @return length at the temperature of installation [m]
     * @throws org.lifeline.base.InvalidInputException if the state has no such span
     */
    public double lengthTo(Place place) {
        return find(place).length();
    }

    /**
     * Tells whether a point of the cable is in a span.
     *
     * @param span number of the span, from 1
     * @param length unstretched length from the start of the line at installation [m]
     * @return true if it is
     * @throws org.lifeline.base.InvalidInputException if the state has no such span
     */
    public boolean isInSpan(int span, double length) {
        double start = lengthBefore(span);
        double end = start + state.span(span).length() / state.expansion();
        return length >= start && length <= end;
    }

    /**
     * The point of a span at an unstretched length from the start of the line.
     *
     * @param span number of the span, from 1
     * @param length unstretched length from the start of the line at installation [m]
     * @return the point; not a number outside the span
     * @throws org.lifeline.base.InvalidInputException if the state has no such span
     */
    public Point at(int span, double length) {
        double s = (length - lengthBefore(span)) * state.expansion();
        for (PieceNumbers p : state.span(span).pieces()) {
            if (s >= 0 && s <= p.length()) {
                return integration.shape(p).at(s);
            }
            s -= p.length();
        }
        return new Point(Double.NaN, Double.NaN, Double.NaN);
    }

    /**
     * Unstretched length of all spans before one.
     *
     * @param span number of the span, from 1
     * @return length at the temperature of installation [m]
     * @throws org.lifeline.base.InvalidInputException if the state has no such span
     */
    public double lengthBefore(int span) {
        state.span(span);
        double sum = 0;
        for (int i = 1; i < span; i++) {
            sum += state.span(i).length();
        }
        return sum / state.expansion();
    }

    private record Found(Point point, double length) {}

    /** A station counts from where the first support of the span was installed, in the direction the span has now. */
    private Found find(Place place) {
        SpanNumbers span = state.span(Violations.required("place", place).span());
        Point zero = state.line().supports().get(place.span() - 1).position();
        double station = place.station() + along(span, zero);
        double passed = 0;
        Point end = span.firstPiece().start();
        for (PieceNumbers p : span.pieces()) {
            double from = along(span, p.start());
            double to = along(span, p.end());
            if (station >= from && station <= to) {
                PieceShape shape = integration.shape(p);
                double s = shape.lengthAtRun(station - from);
                return found(place, shape.at(s), passed + s);
            }
            if (station > to) {
                passed += p.length();
                end = p.end();
            }
        }
        return found(place, end, passed);
    }

    private Found found(Place place, Point point, double inSpan) {
        return new Found(point, lengthBefore(place.span()) + inSpan / state.expansion());
    }

    /**
     * Horizontal distance of a point from the first support of a span, along the span.
     *
     * @param span the span
     * @param point the point
     * @return distance [m]
     * @throws org.lifeline.base.InvalidInputException if one is missing
     */
    public static double along(SpanNumbers span, Point point) {
        Violations.required("span", span);
        Violations.required("point", point);
        Vector3 chord = span.second().minus(span.first());
        Vector3 way = point.minus(span.first());
        return (chord.x() * way.x() + chord.y() * way.y()) / chord.horizontal();
    }
}
