package org.lifeline.design.assessment;

import java.util.List;

/** Every number that steers the search in time, with its reason and its unit. */
final class SearchParameters {
    /**
     * Stations of the survey, as shares of a span [-]. Peaks of tension vary slowly along a span but near its supports, where
     * the attachment comes to hang on the anchor; the outermost stations stand for that.
     */
    static final List<Double> SURVEY = List.of(0.002, 0.25, 0.5, 0.75, 0.998);

    /**
     * The same with the clearance deployment force [-]. Next to a support the load is what the absorber lets through, which is
     * less than with the maximum deployment force, and the distances are small.
     */
    static final List<Double> SURVEY_OF_DISTANCES = List.of(0.25, 0.5, 0.75);

    /**
     * Segments of the span of the fall on the first mesh, the survey's only one [-]: half as many as the analysis in time begins
     * with by itself, for a quarter of the work; the allowances of the result say what that costs.
     */
    static final double SEGMENTS = 32;

    /**
     * Share by which a force of the survey may be below that of the fine meshes [-]. On 168 cases of the demonstration design
     * forces were within 5 % of each other.
     */
    static final double SURVEY_ERROR = 0.05;

    /**
     * Share of a force that three meshes may hide at least [-], 2.4 n^(−2/3) with 128 segments a span: what a force of the survey
     * will be judged with once it is followed finely.
     */
    static final double EXPECTED_ALLOWANCE = 0.0945;

    /** Distance of the stations of the survey as a share of a span [-], which is halved beside the worst. */
    static final double FIRST_STEP = 0.25;

    /** Multiple of what a low-pass filter takes off a peak that its allowance is at least [-]. */
    static final double SPIKE = 1.5;

    /** The survey's error of a distance [m]; on the same cases 2 mm, deployment apart. */
    static final double SURVEY_LENGTH_ERROR = 5e-3;

    /**
     * Distance from a support, as a share of the span, below which an attachment that runs is surveyed in short steps [-]. On 156
     * cases of the demonstration design long steps changed forces by at most 1 % elsewhere, but by up to 8 % (a post:
     * 32 %) at 0.2 % of the span.
     */
    static final double BESIDE_SUPPORT = 0.05;

    /** Most cases of the survey that are followed finely for one quantity [-], each the worst that is left. */
    static final int FOLLOWED_PER_QUANTITY = 3;

    /** Rounds in which the places beside the worst of the survey are looked at [-]; each halves the distance. */
    static final int ROUNDS = 2;

    /**
     * How often the mesh of an arrest may be halved [-]: three meshes are the least that give a bound of what finer ones would
     * change.
     */
    static final int REFINEMENTS = 2;

    /**
     * The same for arrests with other damping times [-]: they are compared with one on the same mesh, whose error they share.
     */
    static final int DAMPING_REFINEMENTS = 0;

    /** Factors on the damping time of the cable [-]: the reference first, then those between which a governing value is given. */
    static final List<Double> DAMPING = List.of(1.0, 0.25, 4.0);

    /** Share of the energy of a fall to which the account of a motion has to close [-]. */
    static final double DRIFT = 1e-3;

    /**
     * Relative accuracy that is asked of an arrest [-]. Three meshes cannot bound a force better than
     * {@link #EXPECTED_ALLOWANCE}; verdicts have the bound in them, and only one that is notably larger is worth a warning.
     */
    static final double ACCURACY = 0.12;

    /** Shortest segment of the first mesh [m]: shorter ones would only take time. */
    static final double SHORTEST = 0.1;

    /** Time that is followed at most [s]: the free fall and the first catch of every line in the tests end within it. */
    static final double DURATION = 3;

    /** Interval of the histories, which nobody looks at [s]. */
    static final double SAMPLING = 0.1;

    /**
     * Stations at which a rescuer may hang, as shares of a span [-]. What a weight at rest does varies smoothly along a span;
     * where it is worst, smaller steps follow.
     */
    static final List<Double> RESCUE =
            List.of(0.002, 0.05, 0.15, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85, 0.95, 0.998);

    /** Distance of the first places that are looked at beside the worst of the rescue, as a share of the span [-]. */
    static final double RESCUE_STEP = 0.05;

    /** How often that distance is halved [-]: to less than 0.1 % of the span. */
    static final int RESCUE_ROUNDS = 7;

    private SearchParameters() {}
}
