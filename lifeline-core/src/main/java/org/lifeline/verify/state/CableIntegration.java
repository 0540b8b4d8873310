package org.lifeline.verify.state;

import org.lifeline.model.cable.Cable;

/**
 * What the checks integrate with.
 *
 * <p>Immutable and thread-safe.
 *
 * @param law the rope's load–elongation law
 * @param quadrature the rule
 * @since 1.0.0
 */
public record CableIntegration(ElongationTable law, Quadrature quadrature) {
    /**
     * What the checks of a line with this cable integrate with.
     *
     * @param cable the cable
     * @return law and rule
     */
    public static CableIntegration of(Cable cable) {
        return new CableIntegration(
                new ElongationTable(cable.elongation()),
                new Quadrature(StateTolerances.SHAPE_POINTS, StateTolerances.SHAPE));
    }

    /**
     * The shape of a piece of this cable.
     *
     * @param piece the piece
     * @return the shape
     */
    public PieceShape shape(PieceNumbers piece) {
        return new PieceShape(piece, law, quadrature);
    }
}
