package org.lifeline.analysis.explain;

/** Numbers below which two figures of a calculation sheet count as the same. */
final class Tolerances {
    /** Lengths that differ by less are the same row, and shorter ones get no row: rounding of elevations [m]. */
    static final double LENGTH = 1e-9;

    /** An absorber whose curve gives the tension to this share is on its first loading [-]. */
    static final double ON_ITS_CURVE = 1e-6;

    /**
     * Cosine of the turn in plan, less than 1 by this, below which a line runs straight: arccos loses half of the digits
     * there, the difference of two slopes none [-].
     */
    static final double STRAIGHT = 1e-12;

    /** Halvings after which a place on a piece is found to rounding, 2⁻⁸⁰ of its length [-]. */
    static final int HALVINGS = 80;

    private Tolerances() {}
}
