package org.lifeline.verify.state;

import java.util.List;
import org.lifeline.analysis.SpanState;
import org.lifeline.base.Point;
import org.lifeline.base.Violations;

/**
 * A span as plain numbers. Immutable and thread-safe.
 *
 * @param number number of the span, from 1
 * @param first present position of its first support
 * @param second present position of its second support
 * @param pieces the pieces of cable, in order
 * @since 1.0.0
 */
public record SpanNumbers(int number, Point first, Point second, List<PieceNumbers> pieces) {
    /**
     * Copies the lists.
     *
     * @param number number of the span, from 1
     * @param first present position of its first support
     * @param second present position of its second support
     * @param pieces the pieces of cable, in order; at least one
     * @throws org.lifeline.base.InvalidInputException if a support is missing, or the cable
     */
    public SpanNumbers {
        Violations.required("first", first);
        Violations.required("second", second);
        pieces = List.copyOf(Violations.requiredAll("pieces", pieces));
        new Violations().atLeast("pieces", pieces.size(), 1).throwIfAny();
    }

    /**
     * Reads a span.
     *
     * @param s the span
     * @return its numbers
     * @throws org.lifeline.base.InvalidInputException if there is no span
     */
    public static SpanNumbers of(SpanState s) {
        Violations.required("span", s);
        return new SpanNumbers(
                s.number(),
                s.firstSupport(),
                s.secondSupport(),
                s.pieces().stream().map(PieceNumbers::of).toList());
    }

    /**
     * Unstretched length of the cable in the span.
     *
     * @return length at the temperature of the state [m]
     */
    public double length() {
        return pieces.stream().mapToDouble(PieceNumbers::length).sum();
    }

    /**
     * The piece at the first support.
     *
     * @return the piece
     */
    public PieceNumbers firstPiece() {
        return pieces.get(0);
    }

    /**
     * The piece at the second support.
     *
     * @return the piece
     */
    public PieceNumbers lastPiece() {
        return pieces.get(pieces.size() - 1);
    }
}
