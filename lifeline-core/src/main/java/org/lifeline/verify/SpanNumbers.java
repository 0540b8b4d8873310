package org.lifeline.verify;

import java.util.List;
import org.lifeline.analysis.SpanState;
import org.lifeline.base.Point;

/**
 * A span as plain numbers. Immutable and thread-safe.
 *
 * @param number number of the span, from 1
 * @param first present position of its first support
 * @param second present position of its second support
 * @param pieces the pieces of cable, in order
 */
record SpanNumbers(int number, Point first, Point second, List<PieceNumbers> pieces) {
    SpanNumbers {
        pieces = List.copyOf(pieces);
    }

    static SpanNumbers of(SpanState s) {
        return new SpanNumbers(
                s.number(),
                s.firstSupport(),
                s.secondSupport(),
                s.pieces().stream().map(PieceNumbers::of).toList());
    }

    double length() {
        return pieces.stream().mapToDouble(PieceNumbers::length).sum();
    }

    PieceNumbers firstPiece() {
        return pieces.get(0);
    }

    PieceNumbers lastPiece() {
        return pieces.get(pieces.size() - 1);
    }
}
