package org.lifeline.internal.path;

/** The numbers that steer how a path is followed, each with its unit and the reason for its size. */
final class PathTolerances {
    private PathTolerances() {}

    // Steps, in u of PathCoordinate [-]

    /** First and longest step: over more, interpolation by w loses what it gains. */
    static final double LONGEST_STEP = 1.5;

    /** Step so short that its error may be rounding. */
    static final double SHORT_STEP = 0.2;

    /** A step that an event has ended is followed by one of this share of the reach before it, no less than the other. */
    static final double AFTER_EVENT = 0.2;

    static final double LEAST_AFTER_EVENT = 0.1;

    /** Shortest step as a share of the value to go to [-], unless an event ends it. */
    static final double SHORTEST_STEP = 1e-7;

    /** Distance to the value to go to, as a share of it [-], that is not worth a step of its own. */
    static final double SAME_VALUE = 1e-9;

    /** Growth of a step, and least and usual share of what its error allows [-]. */
    static final double MOST_GROWTH = 3;

    static final double LEAST_SHRINK = 0.2;
    static final double SHRINK = 0.9;

    /** Step after one at whose end no equilibrium was found, over that one [-]. */
    static final double AFTER_LOSS = 0.25;

    /** Steps of one path, failures of one step, and steps after which the tolerance grows fourfold and again. */
    static final int MOST_STEPS = 20_000;

    static final int MOST_FAILURES = 400;
    static final int STEPS_PER_TOLERANCE = 300;

    // Error of a step

    /**
     * Of its work [-]: the parts add up to that of the whole path. With twice as much, states seen from the two ends of a
     * line, or of paths followed in other parts, differ by more than 1e-6 on one rough line in a hundred: which steps are
     * chosen turns on the last digits.
     */
    static final double WORK = 5e-8;

    /** Of the energy of the fall [-]: below it a step's own work is too little to judge by. */
    static final double SMALLEST_WORK = 1e-11;

    /**
     * Of what the line will have taken up where an arrest goes to [-]: some fifty steps leave a quarter of a millionth of it at
     * most.
     */
    static final double OF_WHAT_COMES = 5e-9;

    /** The power of the force with which a line takes up energy, at least [-]: that of a weightless cable without pretension. */
    static final double LEAST_POWER_OF_WORK = 4.0 / 3;

    /** Rounding of an energy that is a difference of larger ones [-]. */
    static final double ENERGY_ROUNDING = 2e-14;

    /** Of tensions relative to themselves and of slips relative to chords [-], where there is no work to judge by. */
    static final double STATE = 1e-6;

    // Events

    /** Excess of a tension's limit up to which an event that is not a beginning slip counts as met [-]. */
    static final double EVENT = 1e-8;

    /** The same of a length's bound, over a chord [-]: what a support that then sticks keeps as an error of its slip. */
    static final double BOUND = 1e-10;

    /** Coefficient of friction below which the limits of a support may be one for rounding at any angle turned [-]. */
    static final double HARDLY_ROUGH = 1e-6;

    /**
     * Excess, as the log of a ratio of tensions [-], from which a support that sticks counts as standing on its limit. A
     * step ends there, before it slips, and the next one lets it go; so no jump is left to be made at the event.
     */
    static final double AT_LIMIT = -1e-8;

    /** Excess that is aimed at, between {@link #AT_LIMIT} and 0 [-]. */
    static final double AIM = -4e-9;

    /** Excess above which a support would be let go in the middle of a step [-]; that of rounding. */
    static final double BEYOND_LIMIT = 1e-10;

    /** Excess from which an event that is not a beginning slip is met [-]: that from which modes are changed. */
    static final double SEEN = 1e-9;

    /**
     * A step of less than this share of the value to go to [-] is crowded; after so many of them one is taken that steps
     * over loads and absorbers: a load that can neither rest on a support with friction nor hang beside it, or two absorbers
     * of the same force that yield in turn, would go on in ever smaller steps.
     */
    static final double CROWDED = 1e-6;

    static final int CROWD = 20;

    /** Share of the value within which an event is not sought any closer [-], and the value's own share of the target. */
    static final double NARROW = 1e-9;

    static final double LEAST_VALUE = 1e-3;

    /** Share of its rate at the start up to which a rate backward counts as rest [-]: what runs back is its square. */
    static final double REST = 1e-3;

    /** Factor on the foreseen distance of an event [-], so that a step ends beyond it rather than before. */
    static final double OVERSHOOT = 1.05;

    /** Share of a step below which an event is not aimed at [-]: what stays at its limit would stop the path. */
    static final double LEAST_TO_EVENT = 1e-4;

    /** Rate, in chords for a step of one in u [-], below which a support is not seen to slip the wrong way. */
    static final double STILL = 1e-12;

    /** Rounds of Newton's method and an event's or a root's bracket before it is given up. */
    static final int EVENT_STEPS = 60;

    static final int REST_STEPS = 30;

    // Foresight

    /** How far ahead along a tangent differences are taken, over the value [-], and the least over the scale [-]. */
    static final double AHEAD = 1e-4;

    static final double AHEAD_LEAST = 1e-4;

    /** How far beyond two points the next is foreseen from their parabola, or their cubic, in distances between them [-]. */
    static final double FARTHEST_PARABOLA = 3;

    static final double FARTHEST_CUBIC = 2.1;

    /** Shares of a horizontal tension squared, and of a span's cable, in which a foreseen state is believed [-]. */
    static final double LEAST_TENSION = 0.1;

    static final double MOST_TENSION = 30;
    static final double LEAST_CABLE = 0.5;

    // Forecast of the end

    /** Spans from which on two unknowns are solved some twenty times to spare equilibria of the whole line. */
    static final int MANY_SPANS = 40;

    /** Steps in w up to the value to go to, and rounds within the one that holds the end. */
    static final int FORECAST_STEPS = 16;

    static final int FORECAST_ROUNDS = 3;

    /** How far beyond the root by Newton's step the other side of a bracket is looked for, over that step [-]. */
    static final double OTHER_SIDE = 1.1;

    /** Newton's step from above the root, as a share of the value [-], up to which it is taken before a bracket is known. */
    static final double NEAR_END = 0.05;

    // The end of a path

    /** What may be left of the energy of the fall where a path ends [-]. */
    static final double END = 1e-14;

    /** Rounding of the energies of a state, of which that is a difference [-]. */
    static final double END_ROUNDING = 4e-16;

    /**
     * Change of the value, as a share of it [-], by which the end of a path is not sought any closer: states are solved to a
     * residual of rounding, which moves the energies of a line of many spans by as much.
     */
    static final double END_VALUE = 1e-12;

    /** Width of a bracket, over the value [-], in which only a jump can still hide; and that of rounding. */
    static final double JUMP_WIDTH = 1e-13;

    static final double ROUNDING = 1e-15;

    /** Share of the energy of the fall that is left over where the path jumps over its end [-]. */
    static final double JUMP = 1e-10;

    // A descent held while the force changes

    /** Descent off its value that is rounding, in chords [-]. */
    static final double DESCENT = 1e-13;

    /** Share of the force, and of a Newton step, for difference quotients [-]. */
    static final double FORCE_DIFFERENCE = 1e-5;

    static final double STEP_DIFFERENCE = 1e-3;

    // Snap-through, lengths in chords [-]

    static final double FIRST_DROP = 1e-4;
    static final double LONGEST_DROP = 0.02;
    static final double DROP_GROWTH = 1.5;
    static final double SHORTEST_DROP = 1e-13;

    /** Descent at which a load is taken as lost. */
    static final double BOTTOMLESS = 1e3;

    /** Force over that at which the line gave way, from which it carries again [-]. */
    static final double CARRIES_AGAIN = 1 + 1e-9;
}
