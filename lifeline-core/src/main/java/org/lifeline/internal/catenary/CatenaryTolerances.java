package org.lifeline.internal.catenary;

/** The numbers that steer how an unloaded span is found, each with its unit and the reason for its size. */
final class CatenaryTolerances {
    private CatenaryTolerances() {}

    // The parameter λ of a span: half its weight over its horizontal tension [-]

    /** Steepest span looked for: its ends stand at e^25 to 1, far beyond any cable that hangs. */
    static final double STEEPEST = 25;

    /** λ of a span so flat that its parabola serves. */
    static final double FLATTEST = 1e-6;

    /** λ over that of the least tension at the start from which Newton's method goes to the tauter of two near spans [-]. */
    static final double TAUTER = 0.98;

    /** λ above that of the least tension at the start, for every slope. */
    static final double BEYOND_LEAST = 6;

    /** λ below every bracket of a tension's root. */
    static final double LOWEST = 1e-8;

    /** λ of a taut span, at most; least tension lies above 1. */
    static final double TAUT = 0.4;

    /** λ that a span started as taut may reach while it is found. */
    static final double STILL_TAUT = 0.44;

    /** Weight over tension below which the span is taken as straight for its estimate [-]. */
    static final double WEIGHTLESS = 1e-7;

    /** Argument below which sinh(x)/x and asinh(x) are given by two terms of their series [-]; the third is 1e-18. */
    static final double SERIES = 1e-4;

    /** Factor by which a bracket of the horizontal tension grows upwards [-]. */
    static final double WIDEN_UP = 4;

    // Newton's method; residuals and steps are relative [-]

    static final int TAUT_STEPS = 8;
    static final int STEPS = 60;

    /** Step after which the next one would be rounding. */
    static final double SMALL_STEP = 1e-9;

    /** Residual of rounding. */
    static final double ROUNDING = 1e-14;

    /** Residual that counts as converged when it cannot be lowered any further. */
    static final double CONVERGED = 1e-10;

    /** Share of a step below which it is given up. */
    static final double SHORTEST = 1e-3;

    /**
     * Least scale of a sag's error, in chords [-]: a sag must weigh as much as its own size, or the line search puts the
     * fit of the ends before it and creeps; below this it drowns in the rounding of the ends.
     */
    static final double LEAST_SAG_SCALE = 1e-5;

    // Span with one load

    /** Step of Newton's method, relative, below which a residual that does not fall is rounding [-]. */
    static final double CLOSE = 1e-5;

    /** Least square of the depth of a load's triangle, in squares of its chord [-], and least distance from an end, in runs. */
    static final double FLAT_TRIANGLE = 1e-4;

    static final double NEAR_END = 1e-3;

    /** Step of a taut span's tension after which its estimate serves [-]. */
    static final double ESTIMATE = 1e-3;

    // Growth of the weight from almost nothing, where the first estimate is too far off

    /** First share of the weight, and the step of the share [-]. */
    static final double WEIGHT_STEP = 0.05;

    /** Step of the share at which it is given up [-]. */
    static final double LEAST_WEIGHT_STEP = 1e-6;
}
