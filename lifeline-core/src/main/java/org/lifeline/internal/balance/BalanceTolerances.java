package org.lifeline.internal.balance;

/** Numbers that steer the search for the lowest point. */
final class BalanceTolerances {
    /** Relative rise of force over a piece of a loading curve below which the piece is a plateau [-]. */
    static final double FLAT = 1e-12;

    /** Change of the force by which an extension may close the balance [-]: the root of a path is found to a tenth of it. */
    static final double CLOSES = 1e-11;

    /** A force that a curve gives to this share belongs to the piece: the root of a path is found to less [-]. */
    static final double ON_PIECE = 1e-9;

    /** Force at which a search for the lowest point gives up: beyond any cable [N]. */
    static final double LARGEST_FORCE = 1e12;

    /** Relative change of the forces of several fallers at which they count as found [-]. */
    static final double FORCES = 1e-10;

    /** Rounds after which the forces of several fallers must have been found. */
    static final int ROUNDS = 200;

    /** Rounds in a row over which forces may wander up and down, and how often at least their sum must fall in these. */
    static final int WANDERING = 12;

    static final int FALLS = 3;

    /** How far forces may wander, over the largest [-]: what paths leave on a line with friction. */
    static final double PATHS = 1e-6;

    /** Equal steps of the others' pull at which a faller is tried; kinks of a line that gives way lie wherever they like. */
    static final int PULLS = 4;

    /** Share by which a pull is less than the largest that tells whether force and extension fall off there [-]. */
    static final double JUST_BELOW = 1e-3;

    /** Steps where force or extension do not grow from step to step. */
    static final int PULLS_CLOSE = 16;

    /** Growth of extension or force below which it counts as the same [-]: ten times what paths leave. */
    static final double SAME = 10 * PATHS;

    /** Steps that close in on the worst pull: each leaves 0.62 of the interval, all of them 7e-5 of it. */
    static final int CLOSING_IN = 20;

    /** Searches for weaker pulls, each of which may raise the bounds of the others. */
    static final int SEARCHES = 20;

    private BalanceTolerances() {}
}
