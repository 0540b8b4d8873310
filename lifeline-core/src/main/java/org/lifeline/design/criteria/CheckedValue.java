package org.lifeline.design.criteria;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lifeline.design.envelope.Extreme;

/**
 * One value that a demand takes in a design: of the whole, of one anchor, one span, one worker.
 *
 * <p>A value may stand for a comparison of two quantities in another unit: comparing the value with a limit is then the
 * same as comparing factor · value + offset with factor · limit + offset, and the latter is what is shown (twice a load
 * against a strength rather than a strength factor against 2).
 */
final class CheckedValue {
    private final String label;
    private final double value;
    private final String reason;
    private final @Nullable Extreme extreme;
    private double factor = 1;
    private double offset;
    private @Nullable String unit;

    private CheckedValue(String label, double value, String reason, @Nullable Extreme extreme) {
        this.label = label;
        this.value = value;
        this.reason = reason;
        this.extreme = extreme;
    }

    static CheckedValue of(String label, double value) {
        return new CheckedValue(label, value, "", null);
    }

    static CheckedValue of(Extreme extreme) {
        return new CheckedValue("", extreme.value(), "", extreme);
    }

    /** A strength against the load on it, compared as forces. */
    static CheckedValue strength(String label, double strength, Extreme load) {
        return strength(label, strength, load, new Load(load.value()));
    }

    /** A force on a part [N]. */
    record Load(double force) {}

    /** A strength against a load that follows from a governing case, compared as forces. */
    static CheckedValue strength(String label, double strength, Extreme governing, Load load) {
        return new CheckedValue(label, strength / load.force(), "", governing).shown(load.force(), 0, "N");
    }

    static CheckedValue missing(String label, String reason) {
        return new CheckedValue(label, Double.NaN, reason, null);
    }

    /** The same shown in another way: factor · value + offset. */
    CheckedValue shown(double times, double plus, String inUnit) {
        CheckedValue item = new CheckedValue(label, value, reason, extreme);
        item.factor = times;
        item.offset = plus;
        item.unit = inUnit;
        return item;
    }

    /** The same with another value. */
    CheckedValue withValue(double other) {
        return new CheckedValue(label, other, reason, extreme);
    }

    double value() {
        return value;
    }

    String label() {
        return label;
    }

    boolean isMissing() {
        return Double.isNaN(value);
    }

    String reason() {
        return reason;
    }

    Optional<Extreme> extreme() {
        return Optional.ofNullable(extreme);
    }

    double shownValue() {
        return factor * value + offset;
    }

    double shownLimit(double limit) {
        return factor * limit + offset;
    }

    String unit(String otherwise) {
        return unit == null ? otherwise : unit;
    }
}
