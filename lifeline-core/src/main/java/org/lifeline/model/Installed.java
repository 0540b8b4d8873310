package org.lifeline.model;

import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;

/**
 * How the line was tensioned: exactly one of four forms, and the temperature at which it was done.
 *
 * <p>While the line is tensioned the cable runs over every intermediate anchor, freely unless {@linkplain #tensionedFrom an
 * end is named} from which it was pulled against friction; clamps are closed afterwards.
 * Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Installed implements Canonical {
    /** Temperature of installation where none is stated [°C]. */
    public static final double DEFAULT_TEMPERATURE = 15;

    /**
     * The four forms.
     *
     * @since 1.0.0
     */
    public enum Form {
        /** Magnitude of the cable tension at the first end anchor [N]. */
        PRETENSION,
        /** Horizontal component of the cable tension in a named span [N]. */
        HORIZONTAL_TENSION,
        /** Greatest vertical distance from the chord down to the cable in a named span [m]. */
        INITIAL_SAG,
        /** Unstretched length of the whole cable between its ends [m]. */
        UNSTRETCHED_LENGTH
    }

    /**
     * The end from which a line was tensioned.
     *
     * @since 1.0.0
     */
    public enum TensioningEnd {
        /** The first end anchor. */
        FIRST,
        /** The last end anchor. */
        LAST
    }

    private final Form form;
    private final double value;
    private final int span;
    private final double temperature;
    private final @Nullable TensioningEnd tensionedFrom;

    private Installed(Form form, double value, int span, double temperature) {
        this(form, value, span, temperature, null);
    }

    private Installed(Form form, double value, int span, double temperature, @Nullable TensioningEnd tensionedFrom) {
        this.tensionedFrom = tensionedFrom;
        this.form = form;
        this.value = value;
        this.span = span;
        this.temperature = temperature;
        Violations v = new Violations();
        switch (form) {
            case PRETENSION -> PlausibleRange.TENSION.check(v, "pretension", value);
            case HORIZONTAL_TENSION -> PlausibleRange.TENSION.check(v, "horizontalTension", value);
            case INITIAL_SAG -> v.positive("initialSag", value, "m");
            case UNSTRETCHED_LENGTH -> v.positive("unstretchedLength", value, "m");
        }
        if (span < 1) {
            v.add(Violation.of("span", GivenValue.count(span), InputRule.COUNT_FROM_ONE)
                    .allowing(AllowedRange.atLeast(1)));
        }
        PlausibleRange.TEMPERATURE.check(v, "temperature", temperature);
        v.throwIfAny();
    }

    /**
     * Tensioned to a force at the first end anchor.
     *
     * @param tension magnitude of the cable tension at end anchor 0 [N], above zero
     * @return the installed state
     */
    public static Installed pretension(double tension) {
        return new Installed(Form.PRETENSION, tension, 1, DEFAULT_TEMPERATURE);
    }

    /**
     * Tensioned to a horizontal component in the first span.
     *
     * @param tension horizontal component of the cable tension in span 1 [N], above zero
     * @return the installed state
     */
    public static Installed horizontalTension(double tension) {
        return new Installed(Form.HORIZONTAL_TENSION, tension, 1, DEFAULT_TEMPERATURE);
    }

    /**
     * Tensioned to a sag in one span.
     *
     * @param span number of the span, from 1
     * @param sag greatest vertical distance from chord to cable [m], above zero
     * @return the installed state
     */
    public static Installed initialSag(int span, double sag) {
        return new Installed(Form.INITIAL_SAG, sag, span, DEFAULT_TEMPERATURE);
    }

    /**
     * Installed with a known length of cable.
     *
     * @param length unstretched length between the ends of the cable [m], above zero
     * @return the installed state
     */
    public static Installed unstretchedLength(double length) {
        return new Installed(Form.UNSTRETCHED_LENGTH, length, 1, DEFAULT_TEMPERATURE);
    }

    /**
     * The same at another temperature of installation; 15 °C unless set.
     *
     * @param value temperature [°C]
     * @return the new installed state
     */
    public Installed atTemperature(double value) {
        return new Installed(form, this.value, span, value, tensionedFrom);
    }

    /**
     * The same form, stated for another span: of use for the horizontal tension.
     *
     * @param number number of the span, from 1
     * @return the new installed state
     */
    public Installed inSpan(int number) {
        return new Installed(form, value, number, temperature, tensionedFrom);
    }

    /**
     * The same, tensioned from one end against the friction of the intermediate anchors: the tension falls by e^(−μθ) at
     * each, away from that end. Unless it is said, the cable is taken as having been run back and forth, or vibrated, until
     * the tension was the same on both sides of every anchor.
     *
     * @param end the end from which the line was pulled tight last
     * @return the new installed state
     */
    public Installed tensionedFrom(TensioningEnd end) {
        return new Installed(form, value, span, temperature, Violations.required("tensionedFrom", end));
    }

    /**
     * The end from which the line was tensioned against friction.
     *
     * @return the end; empty where the tension was made even over every anchor
     */
    public Optional<TensioningEnd> tensionedFrom() {
        return Optional.ofNullable(tensionedFrom);
    }

    /**
     * The same way of tensioning, to a tension at the first end anchor.
     *
     * @param tension magnitude of the cable tension at end anchor 0 [N], above zero
     * @return the new installed state, with temperature and tensioned end of this one
     */
    public Installed withPretension(double tension) {
        return new Installed(Form.PRETENSION, tension, 1, temperature, tensionedFrom);
    }

    /**
     * The same value, tensioned at the temperature and from the end of another state.
     *
     * @param other the state whose way of tensioning is taken
     * @return the new installed state
     */
    public Installed tensionedLike(Installed other) {
        Violations.required("other", other);
        return new Installed(form, value, span, other.temperature, other.tensionedFrom);
    }

    /**
     * Which of the four forms is used.
     *
     * @return the form
     */
    public Form form() {
        return form;
    }

    /**
     * The number that fixes the state.
     *
     * @return tension [N], sag [m] or length [m], by the form
     */
    public double value() {
        return value;
    }

    /**
     * The span that the number belongs to.
     *
     * @return number of the span, from 1
     */
    public int span() {
        return span;
    }

    /**
     * Temperature of installation; unstretched lengths refer to it.
     *
     * @return temperature [°C]
     */
    public double temperature() {
        return temperature;
    }

    @Override
    public CanonicalForm canonicalForm() {
        return ModelForms.of(this);
    }

    /**
     * Compares values.
     *
     * @param other another object
     * @return true for the same form, number, span and temperature
     */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Installed i
                && form == i.form
                && Double.compare(value, i.value) == 0
                && span == i.span
                && Double.compare(temperature, i.temperature) == 0
                && tensionedFrom == i.tensionedFrom;
    }

    @Override
    public int hashCode() {
        return Objects.hash(form, value, span, temperature, tensionedFrom);
    }

    @Override
    public String toString() {
        return switch (form) {
                    case PRETENSION -> "pretension " + value + " N";
                    case HORIZONTAL_TENSION -> "horizontal tension " + value + " N in span " + span;
                    case INITIAL_SAG -> "sag " + value + " m in span " + span;
                    case UNSTRETCHED_LENGTH -> "unstretched length " + value + " m";
                }
                + " at " + temperature + " °C" + (tensionedFrom == null ? "" : ", tensioned from end " + tensionedFrom);
    }
}
