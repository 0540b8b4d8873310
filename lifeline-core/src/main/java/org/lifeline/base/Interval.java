package org.lifeline.base;

/**
 * A closed range of a quantity.
 *
 * <p>Immutable and thread-safe.
 *
 * @param low lower end [unit of the quantity]
 * @param high upper end [unit of the quantity], not below the lower one
 * @since 1.0.0
 */
public record Interval(double low, double high) {
    /**
     * Checks the ends.
     *
     * @param low lower end [unit of the quantity]
     * @param high upper end [unit of the quantity], not below the lower one
     * @throws org.lifeline.base.InvalidInputException if an end is not finite or the range is turned round
     */
    public Interval {
        new Violations()
                .finite("low", low, "")
                .finite("high", high, "")
                .require(!(high < low), "high", GivenValue.number(high, ""), InputRule.RANGE_REVERSED, low)
                .throwIfAny();
    }

    /**
     * A range from its ends.
     *
     * @param low lower end [unit of the quantity]
     * @param high upper end [unit of the quantity], not below the lower one
     * @return the range
     */
    public static Interval of(double low, double high) {
        return new Interval(low, high);
    }

    /**
     * A range of one value.
     *
     * @param value the value [unit of the quantity]
     * @return the range
     */
    public static Interval exactly(double value) {
        return new Interval(value, value);
    }

    /**
     * Width of the range.
     *
     * @return high − low [unit of the quantity], not negative
     */
    public double width() {
        return high - low;
    }

    /**
     * Tells whether a value lies in the range, ends included.
     *
     * @param value the value [unit of the quantity]
     * @return true if it does
     */
    public boolean contains(double value) {
        return value >= low && value <= high;
    }
}
