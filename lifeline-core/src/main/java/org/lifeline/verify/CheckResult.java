package org.lifeline.verify;

/**
 * One thing that was checked.
 *
 * <p>Immutable and thread-safe.
 *
 * @param check the kind of check
 * @param where the place, for example {@code "peak, span 2, piece 1"}
 * @param value what was found [unit of the check], 0 when perfect; where it is not checkable, what rounding leaves open
 * @param limit what is allowed [unit of the check]
 * @param checkable false where rounding leaves more open than a check may allow, so that it could not fail
 * @since 1.0.0
 */
public record CheckResult(Check check, String where, double value, double limit, boolean checkable) {

    /**
     * A result that could have failed.
     *
     * @param check the kind of check
     * @param where the place, for example {@code "peak, span 2, piece 1"}
     * @param value what was found [unit of the check], 0 when perfect
     * @param limit what is allowed [unit of the check]
     */
    public CheckResult(Check check, String where, double value, double limit) {
        this(check, where, value, limit, true);
    }

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
     * Tells whether the value keeps the limit. What is not a number does not, nor what is not checkable.
     *
     * @return true if the value is not above the limit
     */
    public boolean passed() {
        return checkable && value <= limit;
    }

    /**
     * How bad it is.
     *
     * @return value over limit [-]; infinite for any value above a limit of 0, for what is not a number, and for what is
     *     not checkable
     */
    public double severity() {
        if (Double.isNaN(value) || !checkable) {
            return Double.POSITIVE_INFINITY;
        }
        return value <= 0 ? 0 : value / limit;
    }

    @Override
    public String toString() {
        if (!checkable) {
            return "NOT CHECKABLE  " + check + ", " + where + ": rounding leaves " + value + " open (at most " + limit
                    + " " + check.unit() + "): " + check.what();
        }
        return (passed() ? "ok      " : "FAILED  ") + check + ", " + where + ": " + value + " (limit " + limit + " "
                + check.unit() + "): " + check.what();
    }
}
