package org.lifeline.design.criteria;

/**
 * What came of a check. Not a verdict on a design: that is for a qualified person.
 *
 * @since 1.0.0
 */
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
     * The status of a ratio for a limit that may be reached.
     *
     * @param ratio demand over capacity, see {@link CapacityCheck#ratioOf} [-]; NaN where nothing could be evaluated
     * @return met up to 1, rounding aside
     */
    public static Status of(double ratio) {
        return of(ratio, LimitType.AT_MOST);
    }

    /** The status of a ratio; a limit that must not be reached is not met at 1, rounding aside. */
    static Status of(double ratio, LimitType type) {
        if (Double.isNaN(ratio)) {
            return NOT_EVALUATED;
        }
        boolean met = type == LimitType.BELOW ? ratio < 1 - ROUNDING : ratio <= 1 + ROUNDING;
        return met ? MET : NOT_MET;
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
            case NOT_EVALUATED -> "NOT EVALUATED";
        };
    }
}
