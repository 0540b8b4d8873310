package org.lifeline.design.field;

import org.lifeline.analysis.CablePiece;
import org.lifeline.analysis.SpanState;
import org.lifeline.base.Point;
import org.lifeline.internal.numeric.Roots;

/** Sag half-way between two supports. */
final class Midspan {
    private Midspan() {}

    /** Vertical distance from the chord down to the cable at half the run of an unloaded span [m]. */
    static double sag(SpanState span) {
        Point first = span.firstSupport();
        double half = 0.5 * first.horizontalDistance(span.secondSupport());
        CablePiece piece = span.pieces().get(0);
        double s = Roots.bracketed(
                "middle of span " + span.number(),
                length -> first.horizontalDistance(piece.pointAt(length)) - half,
                0,
                piece.unstretchedLength());
        return span.sagAt(piece.pointAt(s));
    }
}
