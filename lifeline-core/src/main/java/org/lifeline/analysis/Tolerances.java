package org.lifeline.analysis;

/** Numbers that steer the energy balance and its account. */
final class Tolerances {
    /** Relative rise of force over a piece of a loading curve below which the piece is a plateau [-]. */
    static final double FLAT = 1e-12;

    /** A force that a curve gives to this share belongs to the piece: the root of a path is found to less [-]. */
    static final double ON_PIECE = 1e-9;

    /** Share of the fall's energy that may be missing from the account [-]. */
    static final double CLOSURE = 1e-8;

    /** Rounding of the energies that the line holds, of which the account takes differences [-]. */
    static final double ROUNDING = 1e-13;

    /** Energy to which that rounding applies at least: a line near elevation 0 has rounding, too [J]. */
    static final double LEAST_ENERGY = 1e4;

    /** Force at which a search for the lowest point gives up: beyond any cable [N]. */
    static final double LARGEST_FORCE = 1e12;

    private Tolerances() {}
}
