package org.lifeline.base;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Collects violations while an input is checked, so that all of them are reported together.
 *
 * <p>Not thread-safe; made, filled and thrown within one call.
 */
public final class Violations {
    private final List<Violation> list = new ArrayList<>(0);

    /** An empty collection. */
    public Violations() {}

    /**
     * Adds a violation.
     *
     * @param path where, for example {@code cable.diameter}
     * @param value the value as given, with its unit
     * @param rule the rule that it breaks
     * @return this
     */
    public Violations add(String path, String value, String rule) {
        list.add(new Violation(path, value, rule));
        return this;
    }

    /**
     * Adds a violation that was found elsewhere.
     *
     * @param violation the violation
     * @return this
     */
    public Violations add(Violation violation) {
        list.add(violation);
        return this;
    }

    /**
     * Requires a finite number above zero.
     *
     * @param path where
     * @param value the value [-], in the unit named beside it
     * @param unit the unit to show, for example {@code "N"}
     * @return this
     */
    public Violations positive(String path, double value, String unit) {
        if (!(value > 0) || Double.isInfinite(value)) {
            add(path, show(value, unit), "must be a finite number above zero");
        }
        return this;
    }

    /**
     * Requires a finite number that is not negative.
     *
     * @param path where
     * @param value the value [-], in the unit named beside it
     * @param unit the unit to show
     * @return this
     */
    public Violations notNegative(String path, double value, String unit) {
        if (!(value >= 0) || Double.isInfinite(value)) {
            add(path, show(value, unit), "must be a finite number that is not negative");
        }
        return this;
    }

    /**
     * Requires a finite number.
     *
     * @param path where
     * @param value the value [-], in the unit named beside it
     * @param unit the unit to show
     * @return this
     */
    public Violations finite(String path, double value, String unit) {
        if (!Double.isFinite(value)) {
            add(path, show(value, unit), "must be a finite number");
        }
        return this;
    }

    /**
     * Adds a violation unless a condition holds.
     *
     * @param condition the condition
     * @param path where
     * @param value the value as given, with its unit
     * @param rule the rule
     * @return this
     */
    public Violations require(boolean condition, String path, String value, String rule) {
        if (!condition) {
            add(path, value, rule);
        }
        return this;
    }

    /**
     * Requires something that must not be null.
     *
     * @param path where
     * @param value what was given
     * @param <T> its type
     * @return the same
     * @throws InvalidInputException if it is null
     */
    public static <T> T required(String path, @Nullable T value) {
        if (value == null) {
            throw new InvalidInputException(List.of(new Violation(path, "null", "must be given")));
        }
        return value;
    }

    /**
     * Tells whether nothing was found.
     *
     * @return true if there is no violation
     */
    public boolean isEmpty() {
        return list.isEmpty();
    }

    /**
     * What was found so far.
     *
     * @return an unmodifiable copy
     */
    public List<Violation> list() {
        return List.copyOf(list);
    }

    /**
     * Ends the check.
     *
     * @throws InvalidInputException with all violations, if there is any
     */
    public void throwIfAny() {
        if (!list.isEmpty()) {
            throw new InvalidInputException(list);
        }
    }

    /**
     * A number with its unit as it appears in a violation.
     *
     * @param value the number [-], in the unit named beside it
     * @param unit the unit; empty for a bare number
     * @return for example {@code "-3.0 kg"}
     */
    public static String show(double value, String unit) {
        return unit.isEmpty() ? Double.toString(value) : value + " " + unit;
    }
}
