package org.lifeline.verify.state;

/** The numbers that the reading of a result is steered by, each with its reason and unit. */
final class StateTolerances {
    /** Share of its installed cable that the span beside an end anchor keeps when the fitting jams [-]; a rule of the model. */
    static final double FITTING = 1e-3;

    /** Excess over {@link #FITTING} that still counts as drawn out [-]: the rounding of a sum of lengths, with a margin. */
    static final double DRAWN_OUT = 1e-9;

    /** Share of the force by which a point counts as on a loading curve [-]: a tenth of the limit of the absorber checks. */
    static final double ON_CURVE = 1e-9;

    /**
     * Share of the largest tension below which a force is lost in the rounding of the tensions [-]: 1e-9 of it has to be
     * above 1e-16 of the tension, with two digits to spare.
     */
    static final double ROUNDING_SHARE = 1e-5;

    /** Units in the last place that a few operations on a coordinate lose [-]. */
    static final double ULPS = 8;

    /** Share of the chord below which a piece has no length but rounding [-]. */
    static final double TOUCH = 1e-12;

    /** Points of the rule over a piece of cable [-]: exact to degree 23, so that few intervals have to be halved. */
    static final int SHAPE_POINTS = 12;

    /** Most points of a rule [-]: exact to degree 199 already; a larger rule is a slip of the pen. */
    static final int MOST_POINTS = 100;

    /** Error of the quadrature over a piece relative to ∫|f| [-]: four digits below the limits of the checks. */
    static final double SHAPE = 1e-13;

    /** Most halvings of an interval [-]: beyond 53 an interval is shorter than one unit in the last place. */
    static final int MOST_HALVINGS = 60;

    /** Steps of Newton's method for a node of the rule [-]: from two right digits they double at every step. */
    static final int NEWTON_STEPS = 8;

    /** Most steps toward the length at a run [-]: three bisections for each binary digit; Newton's method takes about five. */
    static final int MOST_RUN_STEPS = 200;

    /** Share of the length of a piece below which a step changes nothing [-]: half a unit in the last place. */
    static final double RUN = 1e-16;

    private StateTolerances() {}
}
