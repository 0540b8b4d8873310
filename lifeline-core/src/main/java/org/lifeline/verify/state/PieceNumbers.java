package org.lifeline.verify.state;

import org.lifeline.analysis.CablePiece;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.base.Violations;

/**
 * A piece of cable as plain numbers. Immutable and thread-safe.
 *
 * @param start where it starts
 * @param end where it ends
 * @param startTension tension vector at the start, along the line [N]
 * @param endTension tension vector at the end, along the line [N]
 * @param length unstretched length at the temperature of the state [m]
 * @param weight weight per unstretched length [N/m]
 * @param load downward force of a load at the end [N]
 * @since 1.0.0
 */
public record PieceNumbers(
        Point start, Point end, Vector3 startTension, Vector3 endTension, double length, double weight, double load) {
    /**
     * Takes the numbers as they are.
     *
     * @param start where it starts
     * @param end where it ends
     * @param startTension tension vector at the start, along the line [N]
     * @param endTension tension vector at the end, along the line [N]
     * @param length unstretched length at the temperature of the state [m]
     * @param weight weight per unstretched length [N/m]
     * @param load downward force of a load at the end [N]
     * @throws org.lifeline.base.InvalidInputException if a point or a tension is missing
     */
    public PieceNumbers {
        Violations.required("start", start);
        Violations.required("end", end);
        Violations.required("startTension", startTension);
        Violations.required("endTension", endTension);
    }

    /**
     * Reads a piece.
     *
     * @param p the piece
     * @return its numbers
     * @throws org.lifeline.base.InvalidInputException if there is no piece
     */
    public static PieceNumbers of(CablePiece p) {
        Violations.required("piece", p);
        return new PieceNumbers(
                p.start(),
                p.end(),
                p.startTension(),
                p.endTension(),
                p.unstretchedLength(),
                p.weightPerLength(),
                p.loadAtEnd());
    }
}
