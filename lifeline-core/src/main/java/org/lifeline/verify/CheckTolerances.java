package org.lifeline.verify;

/** The numbers that decide what a check looks at, each with its reason and unit; limits are in {@link Check}. */
final class CheckTolerances {
    /** Growth of an in-line absorber that counts, relative to the chord [-]; below it is rounding. */
    static final double GROWTH = 1e-9;

    /** Slip that counts, relative to the chord [-]; below it is rounding. */
    static final double SLIP = 1e-9;

    /** Angle turned at an anchor that counts [rad]; a cable that does not turn slips without friction. */
    static final double TURN = 1e-6;

    /** Share of the energy stored in the cable that is lost in the rounding of 16 digits [-]. */
    static final double STORED = 1e-14;

    /** Share of the fall below which the work on the line is no scale [-]: it is a difference of larger energies. */
    static final double WORK_SHARE = 1e-4;

    /**
     * Height of a fall that errors of energies are relative to at least [m]: at a rigid support a fall of no height sets
     * free no energy, and elevations of 100 m have lost 1e-14 m in 16 digits.
     */
    static final double LEAST_FALL = 1e-3;

    /**
     * Largest share of the fall's energy that may be allowed for rounding [-]: a hundred times the limits of the energy
     * checks. Where rounding leaves more open, a wrong energy could pass, and the check says that it cannot tell.
     */
    static final double LARGEST_ALLOWANCE = 1e-6;

    /** Weight of a cable per length that counts as none [N/m]: no rope weighs a billionth of a newton. */
    static final double NEXT_TO_WEIGHTLESS = 1.0000001e-9;

    /** Points of the rule over the static path [-]: each costs a solution of statics. */
    static final int PATH_POINTS = 6;

    /** Error of the quadrature over the static path, relative [-]: two digits below the limit of its check. */
    static final double PATH = 1e-8;

    private CheckTolerances() {}
}
