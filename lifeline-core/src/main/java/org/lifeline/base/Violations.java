package org.lifeline.base;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Collects violations while an input is checked, so that all of them are reported together.
 *
 * <p>Not thread-safe; made, filled and thrown within one call.
 *
 * @since 1.0.0
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
     * Adds a violation of a rule.
     *
     * @param path where: the builder's methods, for example {@code cable.diameter}
     * @param given what was given
     * @param code the rule
     * @param arguments what stands in its sentence for <code>{0}</code>, <code>{1}</code> …
     * @return this
     */
    public Violations add(String path, GivenValue given, ViolationCode code, Object... arguments) {
        list.add(Violation.of(path, given, code, arguments));
        return this;
    }

    /**
     * Adds a violation for something that was not given.
     *
     * @param path where
     * @return this
     */
    public Violations missing(String path) {
        return add(path, GivenValue.missing(), InputRule.MISSING);
    }

    /**
     * Adds violations that were found elsewhere, below a parent.
     *
     * @param found the violations
     * @param parent the parent's path
     * @return this
     */
    public Violations addAll(List<Violation> found, String parent) {
        for (Violation each : found) {
            list.add(each.below(parent));
        }
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
     * Requires a whole number that is not below a bound.
     *
     * @param path where
     * @param value the number
     * @param least the smallest number that is allowed
     * @return this
     */
    public Violations atLeast(String path, long value, long least) {
        if (value < least) {
            list.add(Violation.of(path, GivenValue.count(value), InputRule.BELOW_LEAST, least)
                    .allowing(AllowedRange.atLeast((double) least)));
        }
        return this;
    }

    /**
     * Requires the number of something that is there.
     *
     * @param path where
     * @param number the number
     * @param range the first and the last number that there is
     * @param code the rule, whose sentence tells the last number as <code>{0}</code>
     * @return this
     */
    public Violations numbered(String path, long number, Interval range, ViolationCode code) {
        if (!range.contains((double) number)) {
            list.add(Violation.of(path, GivenValue.count(number), code, (long) range.high())
                    .allowing(AllowedRange.within(range)));
        }
        return this;
    }

    /**
     * Requires a name that is not blank.
     *
     * @param path where
     * @param name the name; null where none was given
     * @return this
     */
    public Violations named(String path, @Nullable String name) {
        if (name == null) {
            missing(path);
        } else if (name.isBlank()) {
            add(path, GivenValue.quoted(name), InputRule.BLANK);
        }
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
            list.add(Violation.of(path, GivenValue.number(value, unit), InputRule.NOT_ABOVE_ZERO)
                    .allowing(AllowedRange.above(0)));
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
            list.add(Violation.of(path, GivenValue.number(value, unit), InputRule.NEGATIVE)
                    .allowing(AllowedRange.atLeast(0)));
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
            list.add(Violation.of(path, GivenValue.number(value, unit), InputRule.NOT_FINITE)
                    .allowing(AllowedRange.finite()));
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
     * Adds a violation of a rule unless a condition holds.
     *
     * @param condition the condition
     * @param path where
     * @param given what was given
     * @param code the rule
     * @param arguments what stands in its sentence for <code>{0}</code>, <code>{1}</code> …
     * @return this
     */
    public Violations require(
            boolean condition, String path, GivenValue given, ViolationCode code, Object... arguments) {
        return condition ? this : add(path, given, code, arguments);
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
            throw new InvalidInputException(List.of(Violation.of(path, GivenValue.text("null"), InputRule.MISSING)));
        }
        return value;
    }

    /**
     * Requires a list, or another collection, that must not be null, and of which no element must be.
     *
     * @param path where
     * @param values what was given
     * @param <T> type of the collection
     * @return the same
     * @throws InvalidInputException if it or one of its elements is null; an element by its number
     */
    public static <T extends Iterable<?>> T requiredAll(String path, @Nullable T values) {
        T given = required(path, values);
        int i = 0;
        for (Object each : given) {
            if (each == null) {
                required(path + "[" + i + "]", each);
            }
            i++;
        }
        return given;
    }

    /**
     * Requires the number of an element of a list or array of the library, counted from 0.
     *
     * @param path where
     * @param number the number
     * @param size how many there are
     * @return the same number
     * @throws InvalidInputException if there is no such element
     */
    public static int requiredIndex(String path, int number, int size) {
        if (number < 0 || number >= size) {
            throw noSuchNumber(path, number, size);
        }
        return number;
    }

    /** Apart from its caller, which is asked often and is to stay short. */
    private static InvalidInputException noSuchNumber(String path, int number, int size) {
        Violation found = Violation.of(path, GivenValue.count(number), InputRule.NO_SUCH_NUMBER, size - 1);
        return new InvalidInputException(List.of(
                size > 0 ? found.allowing(AllowedRange.within(Interval.of(0, (double) size - 1))) : found));
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
