package org.lifeline.verify;

import org.lifeline.model.Cable;

/**
 * What the checks integrate with.
 *
 * <p>Immutable and thread-safe.
 *
 * @param law the rope's load–elongation law
 * @param quadrature the rule
 */
record Tools(RopeLaw law, Quadrature quadrature) {
    private static final int POINTS = 12;
    private static final double TOLERANCE = 1e-13;

    static Tools of(Cable cable) {
        return new Tools(new RopeLaw(cable.elongation()), new Quadrature(POINTS, TOLERANCE));
    }

    PieceShape shape(PieceNumbers piece) {
        return new PieceShape(piece, law, quadrature);
    }
}
