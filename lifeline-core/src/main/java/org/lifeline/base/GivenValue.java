package org.lifeline.base;

import java.io.Serializable;
import java.util.OptionalDouble;

/**
 * What was given where a rule is broken: a number with its unit, or a text.
 *
 * <p>Immutable and thread-safe.
 *
 * @param text the value as it is shown, with its unit
 * @param value the value as a number [unit of the value]; NaN where it is no number
 * @param unit the unit; empty for a bare number or a text
 * @since 1.0.0
 * @serial exclude
 */
@SuppressWarnings("InvalidBlockTag") // components have no comment of their own to be serialized with
public record GivenValue(String text, double value, String unit) implements Serializable {
    private static final GivenValue MISSING = text("missing");

    /**
     * Nothing was given.
     *
     * @return the value of what is missing
     */
    public static GivenValue missing() {
        return MISSING;
    }

    /**
     * A number.
     *
     * @param value the number [unit of the value]
     * @param unit its unit; empty for a bare number
     * @return the value, shown as {@code "-3.0 kg"}
     */
    public static GivenValue number(double value, String unit) {
        return new GivenValue(Violations.show(value, unit), value, unit);
    }

    /**
     * A whole number, shown without decimals.
     *
     * @param count the number
     * @return the value
     */
    public static GivenValue count(long count) {
        return new GivenValue(Long.toString(count), count, "");
    }

    /**
     * How many of something there are.
     *
     * @param count the number
     * @param what what is counted, in the plural
     * @return the value, shown as {@code "3 corners"}
     */
    public static GivenValue countOf(long count, String what) {
        return new GivenValue(count + " " + what, count, "");
    }

    /**
     * A text.
     *
     * @param text what was given
     * @return the value
     */
    public static GivenValue text(String text) {
        return new GivenValue(text, Double.NaN, "");
    }

    /**
     * A name, shown in quotes so that blanks are seen.
     *
     * @param name what was given
     * @return the value
     */
    public static GivenValue quoted(String name) {
        return text('"' + name + '"');
    }

    /**
     * The value as a number.
     *
     * @return the number [unit of the value]; empty where a text or nothing was given, or no number
     */
    public OptionalDouble number() {
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
