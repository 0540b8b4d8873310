package org.lifeline.design.assessment;

/** Every number that steers the search in time, with its reason and its unit. */
final class SearchParameters {
    /**
     * Stations of the survey, as shares of a span [-]. Peaks of tension vary slowly along a span but near its supports, where
     * the attachment comes to hang on the anchor; the outermost stations stand for that.
     */
    static final double[] SURVEY = {0.002, 0.25, 0.5, 0.75, 0.998};

    /** Length of the segments of the survey's only mesh over those of the automatic first mesh [-]: a quarter of the work. */
    static final double SURVEY_SEGMENT = 2;

    /**
     * Share by which a force of the survey may be below that of the fine meshes [-]. On 168 cases of the demonstration design
     * forces were within 5 % of each other.
     */
    static final double SURVEY_ERROR = 0.05;

    /** The survey's error of a distance [m]; on the same cases 2 mm, deployment apart. */
    static final double SURVEY_LENGTH_ERROR = 5e-3;

    /** Most cases of the survey that are followed finely for one quantity [-]; they come in the order of their values. */
    static final int FOLLOWED_PER_QUANTITY = 2;

    /** Rounds in which the places beside the worst of the survey are looked at [-]; each halves the distance. */
    static final int ROUNDS = 2;

    /** Factors on the damping time of the cable between which the range of a governing value is given [-]. */
    static final double[] DAMPING = {0.25, 4};

    /** Share of the energy of a fall to which the account of a motion has to close [-]. */
    static final double DRIFT = 1e-3;

    /** Segments of a span on the automatic first mesh, about [-]. */
    static final double SEGMENTS = 64;

    /** Shortest segment of the survey before its factor [m]: shorter ones would only take time. */
    static final double SHORTEST = 0.1;

    /** Time that is followed at most [s]: the free fall and the first catch of every line in the tests end within it. */
    static final double DURATION = 3;

    /** Interval of the histories, which nobody looks at [s]. */
    static final double SAMPLING = 0.1;

    private SearchParameters() {}
}
