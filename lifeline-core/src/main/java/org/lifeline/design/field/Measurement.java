package org.lifeline.design.field;

import java.util.List;
import java.util.OptionalDouble;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;
import org.lifeline.model.Lifeline;

/**
 * Something that was measured on a line in the field, without anybody on it: what, the value, the temperature of the cable
 * and the uncertainty.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Measurement {
    private enum Kind {
        MIDSPAN_SAG,
        FIRST_TENSION,
        LAST_TENSION,
        HORIZONTAL_TENSION
    }

    private final Kind kind;
    private final int span;
    private final double value;
    private final double uncertainty;
    private final OptionalDouble temperature;

    /** Half the range in which the true value lies [N] or [m]. */
    private record Uncertainty(double plusOrMinus) {
        private static final Uncertainty NONE = new Uncertainty(0);
    }

    private Measurement(Kind kind, int span, double value, Uncertainty uncertainty, OptionalDouble temperature) {
        this.kind = kind;
        this.span = span;
        this.value = value;
        this.uncertainty = uncertainty.plusOrMinus();
        this.temperature = temperature;
        Violations v = new Violations();
        v.positive(name(), value, unit()).notNegative("uncertainty", this.uncertainty, unit());
        v.require(
                !(this.uncertainty >= value),
                "uncertainty",
                GivenValue.number(this.uncertainty, unit()),
                InputRule.UNCERTAINTY_TOO_LARGE,
                Violations.show(value, unit()));
        v.require(span >= 1, "span", GivenValue.count(span), InputRule.COUNT_FROM_ONE);
        v.throwIfAny();
    }

    private static Measurement of(Kind kind, int span, double value) {
        return new Measurement(kind, span, value, Uncertainty.NONE, OptionalDouble.empty());
    }

    /**
     * Midspan sag of a span.
     *
     * @param span number of the span, from 1
     * @param sag vertical distance from the chord to the cable half-way between the supports [m], above zero
     * @return the measurement, at the temperature of installation
     * @throws org.lifeline.base.InvalidInputException if the sag is not above zero
     */
    public static Measurement midspanSag(int span, double sag) {
        return of(Kind.MIDSPAN_SAG, span, sag);
    }

    /**
     * Tension at the first end anchor.
     *
     * @param tension magnitude [N], above zero
     * @return the measurement, at the temperature of installation
     * @throws org.lifeline.base.InvalidInputException if the tension is not above zero
     */
    public static Measurement firstTension(double tension) {
        return of(Kind.FIRST_TENSION, 1, tension);
    }

    /**
     * Tension at the last end anchor.
     *
     * @param tension magnitude [N], above zero
     * @return the measurement, at the temperature of installation
     * @throws org.lifeline.base.InvalidInputException if the tension is not above zero
     */
    public static Measurement lastTension(double tension) {
        return of(Kind.LAST_TENSION, 1, tension);
    }

    /**
     * Horizontal component of the tension in a span.
     *
     * @param span number of the span, from 1
     * @param tension horizontal component [N], above zero
     * @return the measurement, at the temperature of installation
     * @throws org.lifeline.base.InvalidInputException if the tension is not above zero
     */
    public static Measurement horizontalTension(int span, double tension) {
        return of(Kind.HORIZONTAL_TENSION, span, tension);
    }

    /**
     * The same measured at another temperature of the cable.
     *
     * @param degrees temperature [°C]
     * @return the new measurement
     * @throws org.lifeline.base.InvalidInputException if it is not finite
     */
    public Measurement atTemperature(double degrees) {
        new Violations().finite("temperature", degrees, "°C").throwIfAny();
        return new Measurement(kind, span, value, new Uncertainty(uncertainty), OptionalDouble.of(degrees));
    }

    /**
     * The same with an uncertainty.
     *
     * @param plusOrMinus half the range in which the true value lies [N] or [m], not negative, smaller than the value
     * @return the new measurement
     * @throws org.lifeline.base.InvalidInputException if it is negative or not smaller than the value
     */
    public Measurement withUncertainty(double plusOrMinus) {
        return new Measurement(kind, span, value, new Uncertainty(plusOrMinus), temperature);
    }

    /**
     * The value.
     *
     * @return value as measured [N] or [m]
     */
    public double value() {
        return value;
    }

    /**
     * The uncertainty.
     *
     * @return half the range in which the true value lies [N] or [m]
     */
    public double uncertainty() {
        return uncertainty;
    }

    /**
     * What was measured, in words.
     *
     * @return for example {@code "midspan sag of span 2"}
     */
    public String name() {
        return switch (kind) {
            case MIDSPAN_SAG -> "midspan sag of span " + span;
            case FIRST_TENSION -> "tension at the first end anchor";
            case LAST_TENSION -> "tension at the last end anchor";
            case HORIZONTAL_TENSION -> "horizontal tension in span " + span;
        };
    }

    /**
     * Unit of the value.
     *
     * @return {@code "m"} or {@code "N"}
     */
    public String unit() {
        return kind == Kind.MIDSPAN_SAG ? "m" : "N";
    }

    /** Tells whether the reading falls when the line is tensioned more. */
    boolean fallsWithTension() {
        return kind == Kind.MIDSPAN_SAG;
    }

    /** What would be read on a line [N] or [m]. */
    double on(Lifeline line) {
        new Violations()
                .require(span <= line.spans(), "span", GivenValue.count(span), InputRule.NO_SUCH_SPAN, line.spans())
                .throwIfAny();
        Statics statics = Statics.withDefaults();
        LineEquilibrium e = (temperature.isPresent() ? statics.withTemperature(temperature.getAsDouble()) : statics)
                .solve(line, List.of());
        return switch (kind) {
            case MIDSPAN_SAG -> Midspan.sag(e.span(span));
            case FIRST_TENSION -> e.firstTension();
            case LAST_TENSION -> e.lastTension();
            case HORIZONTAL_TENSION -> e.span(span).horizontalTension();
        };
    }
}
