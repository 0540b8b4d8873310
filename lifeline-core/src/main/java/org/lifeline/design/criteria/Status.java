package org.lifeline.design.criteria;

/** What came of a check. Not a verdict on a design: that is for a qualified person. */
public enum Status {
    /** Demand does not exceed capacity, in every case that was asked for. */
    MET,
    /** Demand exceeds capacity. */
    NOT_MET,
    /** Data are missing, or a case could not be computed. */
    NOT_EVALUATED;

    /** Rounding that is not held against a demand [-]. */
    private static final double ROUNDING = 1e-12;

    /**
     * The status of a ratio.
     *
     * @param ratio demand over capacity, see {@link CapacityCheck#ratioOf} [-]; NaN where nothing could be evaluated
     * @return met up to 1, rounding aside
     */
    public static Status of(double ratio) {
        return Double.isNaN(ratio) ? NOT_EVALUATED : ratio <= 1 + ROUNDING ? MET : NOT_MET;
    }

    /**
     * The status as it is printed.
     *
     * @return the words
     */
    public String words() {
        return switch (this) {
            case MET -> "MET";
            case NOT_MET -> "NOT MET";
            case NOT_EVALUATED -> "not evaluated";
        };
    }
}
