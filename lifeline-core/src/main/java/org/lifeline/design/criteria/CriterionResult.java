package org.lifeline.design.criteria;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.lifeline.base.unit.SignificantDigits;
import org.lifeline.design.envelope.Extreme;

/**
 * What a criterion says of a design: a ratio of demand to capacity for a qualified person to judge.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class CriterionResult {
    private final Criterion criterion;
    private final CapacityCheck check;

    CriterionResult(Criterion criterion, CapacityCheck check) {
        this.criterion = criterion;
        this.check = check;
    }

    /**
     * The criterion.
     *
     * @return the criterion, with its source
     */
    public Criterion criterion() {
        return criterion;
    }

    /**
     * The whole check, with its parts.
     *
     * @return the check
     */
    public CapacityCheck check() {
        return check;
    }

    /**
     * What came of it.
     *
     * @return met, not met or not evaluated
     */
    public Status status() {
        return check.status();
    }

    /**
     * Tells whether demand exceeds capacity nowhere.
     *
     * @return true only if everything the criterion asks for was evaluated and met
     */
    public boolean isMet() {
        return status() == Status.MET;
    }

    /**
     * The demand that governs.
     *
     * @return demand [unit of the result]; NaN where nothing could be evaluated
     */
    public double demand() {
        return check.demand();
    }

    /**
     * The capacity that governs.
     *
     * @return capacity [unit of the result]; NaN where nothing could be evaluated
     */
    public double capacity() {
        return check.capacity();
    }

    /**
     * Unit of demand and capacity.
     *
     * @return SI unit, {@code "-"} for bare numbers
     */
    public String unit() {
        return check.unit();
    }

    /**
     * Demand over capacity where it governs.
     *
     * @return ratio [-], at most 1 when met; NaN where nothing could be evaluated
     */
    public double ratio() {
        return check.ratio();
    }

    /**
     * The arrest that governs.
     *
     * @return value and case; empty where a fact of the design governs
     */
    public Optional<Extreme> governing() {
        return check.governing();
    }

    /**
     * Why it was not evaluated.
     *
     * @return the reason; empty when it was
     */
    public String reason() {
        return check.reason();
    }

    /**
     * The single comparisons, alternatives included.
     *
     * @return at least one; unmodifiable
     */
    public List<CapacityCheck> comparisons() {
        return check.leaves();
    }

    @Override
    public String toString() {
        String numbers = Double.isNaN(ratio())
                ? ""
                : " " + SignificantDigits.of(demand(), 6) + " / " + SignificantDigits.of(capacity(), 6) + " " + unit()
                        + " = " + String.format(Locale.ROOT, "%.3f", ratio());
        return criterion.id() + ": " + status().words() + numbers + (reason().isEmpty() ? "" : " (" + reason() + ")")
                + " [" + criterion.source().kind().words() + "]";
    }
}
