package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.base.Violations;

/**
 * One span in equilibrium.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class SpanState {
    private final int number;
    private final Point first;
    private final Point second;
    private final List<CablePiece> pieces;

    SpanState(int number, Point first, Point second, List<CablePiece> pieces) {
        this.number = number;
        this.first = first;
        this.second = second;
        this.pieces = List.copyOf(pieces);
    }

    /**
     * Number of the span.
     *
     * @return the number, from 1
     */
    public int number() {
        return number;
    }

    /**
     * Present position of the span's first support.
     *
     * @return the point
     */
    public Point firstSupport() {
        return first;
    }

    /**
     * Present position of the span's second support.
     *
     * @return the point
     */
    public Point secondSupport() {
        return second;
    }

    /**
     * The pieces of cable from the first support to the second.
     *
     * @return one piece more than there are loads in the span; unmodifiable
     */
    public List<CablePiece> pieces() {
        return pieces;
    }

    /**
     * Unstretched length of cable in the span, at the temperature of the state.
     *
     * @return length [m]
     */
    public double unstretchedLength() {
        double sum = 0;
        for (CablePiece each : pieces) {
            sum += each.unstretchedLength();
        }
        return sum;
    }

    /**
     * Horizontal component of the tension, the same all along the span.
     *
     * @return tension [N]
     */
    public double horizontalTension() {
        return pieces.get(0).startTension().horizontal();
    }

    /**
     * Largest tension in the span.
     *
     * @return tension [N]
     */
    public double maximumTension() {
        double most = 0;
        for (CablePiece each : pieces) {
            most = Math.max(most, each.maximumTension());
        }
        return most;
    }

    /**
     * Vertical distance from the chord between the supports down to a point of the span.
     *
     * @param point a point in the vertical plane of the span
     * @return sag [m], positive below the chord
     */
    public double sagAt(Point point) {
        Violations.required("point", point);
        double dx = second.x() - first.x();
        double dy = second.y() - first.y();
        double along = ((point.x() - first.x()) * dx + (point.y() - first.y()) * dy) / (dx * dx + dy * dy);
        return first.z() + along * (second.z() - first.z()) - point.z();
    }

    /**
     * Greatest sag of the span: where the cable runs parallel to the chord, or at a load.
     *
     * @return sag [m], positive below the chord
     */
    public double sag() {
        double most = 0;
        for (CablePiece p : pieces) {
            most = Math.max(most, Math.max(sagAt(p.start()), sagAt(p.end())));
            double slope = (second.z() - first.z()) / first.horizontalDistance(second);
            Vector3 t = p.startTension();
            double s = (t.horizontal() * slope - t.z()) / p.weightPerLength();
            if (s > 0 && s < p.unstretchedLength()) {
                most = Math.max(most, sagAt(p.pointAt(s)));
            }
        }
        return most;
    }

    /**
     * Points along the span, for drawing.
     *
     * @param intervalsPerPiece number of intervals in each piece, from 1 to 100 000
     * @return the points from the first support to the second
     * @throws org.lifeline.base.InvalidInputException if the number is out of range
     */
    public List<Point> shape(int intervalsPerPiece) {
        List<Point> list = new ArrayList<>();
        for (CablePiece p : pieces) {
            List<Point> part = p.shape(intervalsPerPiece);
            list.addAll(list.isEmpty() ? part : part.subList(1, part.size()));
        }
        return List.copyOf(list);
    }
}
