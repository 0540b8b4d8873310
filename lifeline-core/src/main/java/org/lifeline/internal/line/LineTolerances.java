package org.lifeline.internal.line;

/** The numbers that steer how a state is found, each with its unit and the reason for its size. */
final class LineTolerances {
    private LineTolerances() {}

    /** Share of a span by which it may leave the direction of a straight line in plan [-]: rounding of coordinates. */
    static final double STRAIGHT = 4e-15;

    /** Share of an end span that an in-line absorber can draw over the next anchor before the cable's end jams [-]. */
    static final double USED_UP = 0.999;

    // Newton's method; residuals and steps are relative [-]

    static final int NEWTON_STEPS = 60;
    static final int MODE_ROUNDS = 200;

    /** Step after which the next one would be rounding. */
    static final double LAST_STEP = 1e-10;

    /** Residual of rounding. */
    static final double ROUNDING = 4e-15;

    /** Residual from which a last step of less than {@link #LAST_STEP} leads to rounding. */
    static final double NEAR = 1e-13;

    /** Residual that counts as converged when it cannot be lowered any further. */
    static final double CONVERGED = 1e-11;

    /** Error of a state, as foreseen from the square of the last step, at which Newton's method ends. */
    static final double TIGHT = 1e-15;

    /** The same on the way along a path, where what follows does not build on the last digits. */
    static final double LOOSE = 1e-11;

    /** Step so small that the tangent before it serves after it. */
    static final double SAME = 1e-6;

    /** Residual before a step from which its square is trusted to be the next one. */
    static final double CLOSE = 1e-4;

    /** Step from which its growth is foreseen from the one before; otherwise it is taken as this. */
    static final double FORESEEABLE = 0.1;

    static final double MOST_GROWTH = 100;
    static final double GROWTH_RESERVE = 3;

    /** Part of the foreseen decrease of the merit that a step must bring (Armijo's condition). */
    static final double DECREASE = 1e-4;

    /** Share of a step below which it is given up. */
    static final double SHORTEST = 1e-7;

    /** Share of a horizontal tension, or of a span's cable, that one step may take away. */
    static final double MOST_LOSS = 0.9;

    // Geometry

    /** Step of a difference quotient, over the quantity [-]: near the square root of rounding, with reserve. */
    static final double DIFFERENCE = 1e-6;

    /** Angle turned at a support from which friction's limit has a direction [rad]; below, its gradient is rounding. */
    static final double TURNED = 1e-9;

    /** Step toward a station, over the length of the cable, whose square is rounding [-]. */
    static final double STATION_STEP = 1e-8;

    /** Most of these steps: halving the cable alone comes down to rounding in 53. */
    static final int STATION_STEPS = 100;

    // Modes

    /** How far a support that slips may have moved the wrong way before it sticks, in chords [-]: rounding of lengths. */
    static final double STILL = 1e-13;

    /** Excess of the log of a ratio of tensions over friction's limit that is rounding [-]; and rounds after which twice. */
    static final double FRICTION = 1e-10;

    static final int ROUNDS_PER_FRICTION = 20;

    /** Excess of a pull over the tension that is rounding [-]. */
    static final double PULL = 1e-9;

    /** Excess of a tension over the resistance of an in-line absorber that is rounding [-]. */
    static final double RESISTANCE = 1e-12;

    /** Extension that is rounding [m]. */
    static final double EXTENSION = 1e-13;

    /**
     * Rounds after which a load stays on its support: at a support with friction it may fit neither there nor just beside
     * it, since the cable turns by another angle in the two places.
     */
    static final int MOST_TRIES = 60;
}
