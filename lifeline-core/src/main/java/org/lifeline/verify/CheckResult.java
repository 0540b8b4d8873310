package org.lifeline.verify;

/**
 * One thing that was checked.
 *
 * <p>Immutable and thread-safe.
 *
 * @param check the kind of check
 * @param where the place, for example {@code "peak, span 2, piece 1"}
 * @param value what was found [unit of the check], 0 when perfect
 * @param limit what is allowed [unit of the check]
 */
public record CheckResult(Check check, String where, double value, double limit) {

    /**
     * Name of the kind of check.
     *
     * @return the name
     */
    public String name() {
        return check.name();
    }

    /**
     * What was measured.
     *
     * @return the quantity in words
     */
    public String what() {
        return check.what();
    }

    /**
     * Unit of value and limit.
     *
     * @return the unit
     */
    public String unit() {
        return check.unit();
    }

    /**
     * Tells whether the value keeps the limit. What is not a number does not.
     *
     * @return true if the value is not above the limit
     */
    public boolean passed() {
        return value <= limit;
    }

    /**
     * How bad it is.
     *
     * @return value over limit [-]; infinite for any value above a limit of 0, and for what is not a number
     */
    public double severity() {
        if (Double.isNaN(value)) {
            return Double.POSITIVE_INFINITY;
        }
        return value <= 0 ? 0 : value / limit;
    }

    @Override
    public String toString() {
        return (passed() ? "ok      " : "FAILED  ") + check + ", " + where + ": " + value + " (limit " + limit + " "
                + check.unit() + "): " + check.what();
    }
}
