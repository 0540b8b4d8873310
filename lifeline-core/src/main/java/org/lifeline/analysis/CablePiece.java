package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.base.Violations;
import org.lifeline.internal.line.Piece;

/**
 * A piece of cable between two places where force enters, in equilibrium.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class CablePiece {
    /** Most intervals of a drawn piece: finer than any drawing, and some megabytes of points. */
    private static final int MOST_INTERVALS = 100_000;

    private final Piece piece;

    CablePiece(Piece piece) {
        this.piece = piece;
    }

    /**
     * Where the piece starts.
     *
     * @return the point
     */
    public Point start() {
        return piece.start();
    }

    /**
     * Where the piece ends.
     *
     * @return the point
     */
    public Point end() {
        return piece.end();
    }

    /**
     * Tension at the start: the force of the piece on what lies before it.
     *
     * @return the vector, pointing along the line, components in [N]
     */
    public Vector3 startTension() {
        return piece.startTension();
    }

    /**
     * Tension at the end: the force of what lies behind on the piece, before any load that enters there.
     *
     * @return the vector, pointing along the line, components in [N]
     */
    public Vector3 endTension() {
        return piece.endTension();
    }

    /**
     * Unstretched length at the temperature of the state.
     *
     * @return length [m]
     */
    public double unstretchedLength() {
        return piece.length();
    }

    /**
     * Weight per unstretched length at the temperature of the state.
     *
     * @return weight [N/m]
     */
    public double weightPerLength() {
        return piece.weight();
    }

    /**
     * Downward force that enters at the end of the piece from a load on the line.
     *
     * @return force [N]; 0 where the piece ends at a support
     */
    public double loadAtEnd() {
        return piece.load();
    }

    /**
     * Largest tension in the piece; a cable's tension is largest at one of its ends.
     *
     * @return tension [N]
     */
    public double maximumTension() {
        return Math.max(startTension().magnitude(), endTension().magnitude());
    }

    /**
     * Points along the piece, for drawing.
     *
     * @param intervals number of intervals, from 1 to 100 000
     * @return intervals + 1 points at equal unstretched distances, the ends included
     * @throws org.lifeline.base.InvalidInputException if the number is out of range
     */
    public List<Point> shape(int intervals) {
        new Violations()
                .numbered("intervals", intervals, Interval.of(1, MOST_INTERVALS), InputRule.COUNT_RANGE)
                .throwIfAny();
        List<Point> list = new ArrayList<>();
        list.add(start());
        for (int i = 1; i < intervals; i++) {
            list.add(piece.at(piece.length() * i / intervals));
        }
        list.add(end());
        return List.copyOf(list);
    }

    /**
     * The point at an unstretched length from the start.
     *
     * @param length unstretched length from the start [m], from 0 to that of the piece
     * @return the point
     * @throws org.lifeline.base.InvalidInputException if the length is not finite
     */
    public Point pointAt(double length) {
        if (!Double.isFinite(length)) {
            new Violations().finite("length", length, "m").throwIfAny();
        }
        return piece.at(length);
    }
}
