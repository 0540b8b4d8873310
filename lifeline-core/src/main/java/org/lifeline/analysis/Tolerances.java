package org.lifeline.analysis;

/** Numbers that steer the energy balance and its account. */
final class Tolerances {
    /** Relative rise of force over a piece of a loading curve below which the piece is a plateau [-]. */
    static final double FLAT = 1e-12;

    /** Share of the fall's energy that may be missing from the account [-]. */
    static final double CLOSURE = 1e-8;

    /** Rounding of the energies that the line holds, of which the account takes differences [-]. */
    static final double ROUNDING = 1e-13;

    /** Energy to which that rounding applies at least: a line near elevation 0 has rounding, too [J]. */
    static final double LEAST_ENERGY = 1e4;

    /** Tension below which the direction of a piece of cable says nothing [N]. */
    static final double NO_TENSION = 1;

    private Tolerances() {}
}
