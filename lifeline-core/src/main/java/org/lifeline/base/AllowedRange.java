package org.lifeline.base;

import java.io.Serializable;

/**
 * The numbers that a rule allows, in the unit of the value that was given.
 *
 * <p>Immutable and thread-safe.
 *
 * @param lowest the lower end; minus infinity where there is none
 * @param highest the upper end; infinity where there is none
 * @since 1.0.0
 * @serial exclude
 */
@SuppressWarnings("InvalidBlockTag") // components have no comment of their own to be serialized with
public record AllowedRange(Bound lowest, Bound highest) implements Serializable {
    private static final Bound NO_LOWEST = new Bound(Double.NEGATIVE_INFINITY, false);
    private static final Bound NO_HIGHEST = new Bound(Double.POSITIVE_INFINITY, false);

    /**
     * One end of a range.
     *
     * @param value where the range ends [unit of the value]; may be infinite
     * @param included true if the end itself is allowed
     * @serial exclude
     * @since 1.0.0
     */
    @SuppressWarnings("InvalidBlockTag") // components have no comment of their own to be serialized with
    public record Bound(double value, boolean included) implements Serializable {}

    /**
     * Every finite number.
     *
     * @return the range
     */
    public static AllowedRange finite() {
        return new AllowedRange(NO_LOWEST, NO_HIGHEST);
    }

    /**
     * Finite numbers above a bound.
     *
     * @param bound the bound, not allowed itself [unit of the value]
     * @return the range
     */
    public static AllowedRange above(double bound) {
        return new AllowedRange(new Bound(bound, false), NO_HIGHEST);
    }

    /**
     * Finite numbers from a bound on.
     *
     * @param bound the least number that is allowed [unit of the value]
     * @return the range
     */
    public static AllowedRange atLeast(double bound) {
        return new AllowedRange(new Bound(bound, true), NO_HIGHEST);
    }

    /**
     * Finite numbers up to a bound.
     *
     * @param bound the largest number that is allowed [unit of the value]
     * @return the range
     */
    public static AllowedRange atMost(double bound) {
        return new AllowedRange(NO_LOWEST, new Bound(bound, true));
    }

    /**
     * The numbers of an interval, its ends with them.
     *
     * @param interval the interval
     * @return the range
     */
    public static AllowedRange within(Interval interval) {
        return new AllowedRange(new Bound(interval.low(), true), new Bound(interval.high(), true));
    }

    /**
     * The numbers inside an interval, its ends left out.
     *
     * @param interval the interval
     * @return the range
     */
    public static AllowedRange inside(Interval interval) {
        return new AllowedRange(new Bound(interval.low(), false), new Bound(interval.high(), false));
    }

    /**
     * The same up to a bound.
     *
     * @param bound the largest number that is allowed [unit of the value]
     * @return the range
     */
    public AllowedRange upTo(double bound) {
        return new AllowedRange(lowest, new Bound(bound, true));
    }

    /**
     * Tells whether a number is allowed.
     *
     * @param value the number [unit of the value]
     * @return true if it lies in the range; false for NaN
     */
    public boolean contains(double value) {
        return (value > lowest.value || (lowest.included && value == lowest.value))
                && (value < highest.value || (highest.included && value == highest.value));
    }

    @Override
    public String toString() {
        return (lowest.included ? "[" : "(") + lowest.value + ", " + highest.value + (highest.included ? "]" : ")");
    }
}
