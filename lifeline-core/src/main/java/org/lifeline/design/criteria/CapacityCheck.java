package org.lifeline.design.criteria;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.lifeline.design.envelope.Extreme;

/**
 * What came of comparing a demand with a capacity; or of several such checks of which all, or any, have to be met.
 *
 * <p>Demand over capacity: for a limit that must not be exceeded the computed value over the limit, for a strength, a
 * clearance or another thing that must be large enough what is needed over what is there. At most 1 means met.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class CapacityCheck {
    /** One that is met is better than one that is open or not met, and then the one with the smaller ratio. */
    private static final Comparator<CapacityCheck> BETTER_ALTERNATIVE = Comparator.<CapacityCheck>comparingInt(
                    c -> c.status == Status.MET ? 0 : 1)
            .thenComparingDouble(c -> Double.isNaN(c.ratio()) ? Double.POSITIVE_INFINITY : c.ratio());

    private final String title;
    private final String key;
    private final String component;
    private final boolean alternatives;
    private final Status status;
    private final double demand;
    private final double capacity;
    private final String unit;
    private final @Nullable Extreme governing;
    private final String reason;
    private final List<CapacityCheck> parts;

    private CapacityCheck(Builder b) {
        this.title = b.title;
        this.key = b.key;
        this.component = b.component;
        this.alternatives = b.alternatives;
        this.status = b.status;
        this.demand = b.demand;
        this.capacity = b.capacity;
        this.unit = b.unit;
        this.governing = b.governing;
        this.reason = b.reason;
        this.parts = List.copyOf(b.parts);
    }

    private static final class Builder {
        private final String title;
        private String key = "";
        private String component = "";
        private boolean alternatives;
        private Status status = Status.NOT_EVALUATED;
        private double demand = Double.NaN;
        private double capacity = Double.NaN;
        private String unit = "-";
        private @Nullable Extreme governing;
        private String reason = "";
        private List<CapacityCheck> parts = List.of();

        Builder(String title) {
            this.title = title;
        }

        Builder from(CapacityCheck worst) {
            demand = worst.demand;
            capacity = worst.capacity;
            unit = worst.unit;
            governing = worst.governing;
            return this;
        }
    }

    /** A comparison of one value with a limit. */
    static CapacityCheck of(String title, CheckedValue value, Limit limit, boolean everyCase) {
        Builder b = new Builder(value.label().isEmpty() ? title : title + ", " + value.label());
        b.key = limit.quantity();
        b.component = value.label();
        if (value.isMissing()) {
            b.reason = value.label().isEmpty() ? value.reason() : value.label() + ": " + value.reason();
            return new CapacityCheck(b);
        }
        boolean most = limit.type() != LimitType.AT_LEAST;
        b.demand = most ? value.shownValue() : value.shownLimit(limit.value());
        b.capacity = most ? value.shownLimit(limit.value()) : value.shownValue();
        b.unit = value.unit(limit.unit());
        b.governing = value.extreme().orElse(null);
        b.status = Status.of(ratioOf(b.demand, b.capacity), limit.type());
        if (b.status == Status.MET && b.governing != null && !everyCase) {
            b.status = Status.NOT_EVALUATED;
            b.reason = "met in the cases that could be computed, but not every case could be";
        } else if (b.status == Status.MET
                && b.governing != null
                && !b.governing.lacking().isEmpty()) {
            b.status = Status.NOT_EVALUATED;
            b.reason = "met so far, but " + b.governing.lacking();
        }
        return new CapacityCheck(b);
    }

    /** A check that could not be made. */
    static CapacityCheck missing(String title, String reason) {
        Builder b = new Builder(title);
        b.reason = reason;
        return new CapacityCheck(b);
    }

    /** Several checks, all of which have to be met. */
    static CapacityCheck all(String title, List<CapacityCheck> parts) {
        return combine(title, parts, true);
    }

    /** Several checks, one of which has to be met. */
    static CapacityCheck any(String title, List<CapacityCheck> parts) {
        return combine(title, parts, false);
    }

    private static CapacityCheck combine(String title, List<CapacityCheck> parts, boolean all) {
        if (parts.size() == 1) {
            return parts.get(0);
        }
        Builder b = new Builder(title);
        b.parts = parts;
        b.alternatives = !all;
        Stream<CapacityCheck> known = parts.stream().filter(c -> !Double.isNaN(c.ratio()));
        Optional<CapacityCheck> shown =
                all ? known.reduce((x, y) -> x.ratio() < y.ratio() ? y : x) : known.min(BETTER_ALTERNATIVE);
        shown.ifPresent(b::from);
        boolean met = all
                ? !parts.isEmpty() && parts.stream().allMatch(c -> c.status == Status.MET)
                : parts.stream().anyMatch(c -> c.status == Status.MET);
        boolean failed = all
                ? parts.stream().anyMatch(c -> c.status == Status.NOT_MET)
                : parts.stream().allMatch(c -> c.status == Status.NOT_MET) && !parts.isEmpty();
        b.status = met ? Status.MET : failed ? Status.NOT_MET : Status.NOT_EVALUATED;
        if (b.status == Status.NOT_EVALUATED) {
            b.reason = parts.isEmpty()
                    ? "there is nothing to check"
                    : parts.stream()
                            .filter(c -> c.status == Status.NOT_EVALUATED)
                            .map(CapacityCheck::reason)
                            .distinct()
                            .collect(Collectors.joining("; "));
        }
        return new CapacityCheck(b);
    }

    /**
     * A demand over a capacity.
     *
     * @param demand the demand [unit of the limit]
     * @param capacity the capacity [unit of the limit]
     * @return ratio [-]; infinite where there is a demand and no capacity at all; NaN if either is
     */
    public static double ratioOf(double demand, double capacity) {
        if (Double.isNaN(demand) || Double.isNaN(capacity)) {
            return Double.NaN;
        }
        return capacity > 0
                ? demand / capacity
                : demand > 0 ? Double.POSITIVE_INFINITY : capacity < 0 ? demand / capacity : 0;
    }

    /**
     * What was checked.
     *
     * @return the title
     */
    public String title() {
        return title;
    }

    /**
     * The demand of a single comparison.
     *
     * @return its name, see {@link CheckedQuantity#key()}; empty for a check of several parts
     */
    public String quantityKey() {
        return key;
    }

    /**
     * What a single comparison is about.
     *
     * @return for example the id of an anchor, or {@code "span 2"}; empty where it is about the whole
     */
    public String component() {
        return component;
    }

    /**
     * Tells whether one met part is enough.
     *
     * @return true for alternatives, false where all parts count
     */
    public boolean isOfAlternatives() {
        return alternatives;
    }

    /**
     * What came of it.
     *
     * @return the status
     */
    public Status status() {
        return status;
    }

    /**
     * The demand; of several checks, that of the one that governs.
     *
     * @return demand [unit of the check]; NaN where it could not be evaluated
     */
    public double demand() {
        return demand;
    }

    /**
     * The capacity; of several checks, that of the one that governs.
     *
     * @return capacity [unit of the check]; NaN where it could not be evaluated
     */
    public double capacity() {
        return capacity;
    }

    /**
     * Unit of demand and capacity.
     *
     * @return SI unit, {@code "-"} for bare numbers
     */
    public String unit() {
        return unit;
    }

    /**
     * Demand over capacity.
     *
     * @return ratio [-], at most 1 when met; infinite where there is no capacity at all; NaN where nothing could be
     *     evaluated
     */
    public double ratio() {
        return ratioOf(demand, capacity);
    }

    /**
     * The arrest that governs.
     *
     * @return value and case; empty for a fact of the design
     */
    public Optional<Extreme> governing() {
        return Optional.ofNullable(governing);
    }

    /**
     * Why the check was not evaluated.
     *
     * @return the reason; empty when it was
     */
    public String reason() {
        return reason;
    }

    /**
     * The checks that this one is made of.
     *
     * @return the parts; empty for a single comparison; unmodifiable
     */
    public List<CapacityCheck> parts() {
        return parts;
    }

    /**
     * The single comparisons that decide: of alternatives only those of the one that is met best.
     *
     * @return at least one; unmodifiable
     */
    public List<CapacityCheck> deciding() {
        if (parts.isEmpty()) {
            return List.of(this);
        }
        if (alternatives) {
            return parts.stream().min(BETTER_ALTERNATIVE).orElseThrow().deciding();
        }
        List<CapacityCheck> list = new ArrayList<>();
        parts.forEach(p -> list.addAll(p.deciding()));
        return List.copyOf(list);
    }

    /**
     * The single comparisons that this check is made of.
     *
     * @return at least one; unmodifiable
     */
    public List<CapacityCheck> leaves() {
        if (parts.isEmpty()) {
            return List.of(this);
        }
        List<CapacityCheck> list = new ArrayList<>();
        parts.forEach(p -> list.addAll(p.leaves()));
        return List.copyOf(list);
    }
}
