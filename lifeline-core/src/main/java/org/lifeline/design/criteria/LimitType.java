package org.lifeline.design.criteria;

/**
 * Which side of a limit is allowed.
 *
 * @since 1.0.0
 */
public enum LimitType {
    /** The value must not exceed the limit: the value is the demand, the limit the capacity. */
    AT_MOST("≤"),
    /** The value must stay below the limit; a value that equals it is too much. */
    BELOW("<"),
    /** The value must reach the limit: the limit is the demand, the value the capacity. */
    AT_LEAST("≥");

    private final String symbol;

    LimitType(String symbol) {
        this.symbol = symbol;
    }

    /**
     * The type of limit in a table.
     *
     * @return {@code "≤"}, {@code "<"} or {@code "≥"}
     */
    public String symbol() {
        return symbol;
    }
}
