package org.lifeline.verify.state;

import org.lifeline.base.Violations;
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
     * Takes law and rule.
     *
     * @param law the rope's load–elongation law
     * @param quadrature the rule
     * @throws org.lifeline.base.InvalidInputException if one is missing
     */
    public CableIntegration {
        Violations.required("law", law);
        Violations.required("quadrature", quadrature);
    }

    /**
     * What the checks of a line with this cable integrate with.
     *
     * @param cable the cable
     * @return law and rule
     * @throws org.lifeline.base.InvalidInputException if there is no cable
     */
    public static CableIntegration of(Cable cable) {
        Violations.required("cable", cable);
        return new CableIntegration(
                new ElongationTable(cable.elongation()),
                new Quadrature(StateTolerances.SHAPE_POINTS, StateTolerances.SHAPE));
    }

    /**
     * The shape of a piece of this cable.
     *
     * @param piece the piece
     * @return the shape
     * @throws org.lifeline.base.InvalidInputException if there is no piece
     */
    public PieceShape shape(PieceNumbers piece) {
        return new PieceShape(piece, law, quadrature);
    }
}
