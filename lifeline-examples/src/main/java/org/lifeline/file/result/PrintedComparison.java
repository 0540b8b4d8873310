package org.lifeline.file.result;

import java.util.Optional;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.design.criteria.CapacityCheck;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.SourceKind;
import org.lifeline.design.criteria.Status;
import org.lifeline.design.envelope.Extreme;

/**
 * One comparison of a criterion as it is printed and written: angles in degrees, bare numbers without a unit, the reason in
 * place of the comparison where nothing could be compared.
 *
 * <p>Immutable and thread-safe.
 *
 * @param criterion the criterion
 * @param check one of its comparisons
 */
public record PrintedComparison(Criterion criterion, CapacityCheck check) {
    private static final String ANGLE = "rad";

    /**
     * Tells whether the comparison was made.
     *
     * @return false if the design lacks what the criterion needs
     */
    public boolean evaluated() {
        return check.status() != Status.NOT_EVALUATED;
    }

    /**
     * What is compared with what.
     *
     * @return demand against capacity, in words; after "not evaluated:" the reason where it could not be compared
     */
    public String text() {
        if (evaluated()) {
            return check.title();
        }
        return "not evaluated: " + (check.quantityKey().isEmpty() ? "" : check.title() + ": ") + check.reason();
    }

    /**
     * Unit of demand and capacity.
     *
     * @return the unit; empty for a bare number, and where nothing was compared
     */
    public String unit() {
        if (!evaluated()) {
            return "";
        }
        return switch (check.unit()) {
            case ANGLE -> "°";
            case "-" -> "";
            default -> check.unit();
        };
    }

    /**
     * The demand.
     *
     * @return demand [unit of the comparison]; NaN if it could not be evaluated
     */
    public double demand() {
        return evaluated() ? printed(check.demand()) : Double.NaN;
    }

    /**
     * The capacity.
     *
     * @return capacity [unit of the comparison]; NaN if it could not be evaluated
     */
    public double capacity() {
        return evaluated() ? printed(check.capacity()) : Double.NaN;
    }

    private double printed(double value) {
        return check.unit().equals(ANGLE) ? Math.toDegrees(value) : value;
    }

    /**
     * Demand over capacity.
     *
     * @return the ratio [-]; infinite if there is a demand and no capacity, NaN if it could not be evaluated
     */
    public double ratio() {
        return CapacityCheck.ratioOf(demand(), capacity());
    }

    /**
     * Tells whether the demand stays within the capacity.
     *
     * @return the answer; empty if it could not be evaluated
     */
    public Optional<Boolean> met() {
        return evaluated() ? Optional.of(check.status() == Status.MET) : Optional.empty();
    }

    /**
     * The arrest that governs the demand.
     *
     * @return the arrest; empty if the demand does not depend on one
     */
    public Optional<ArrestResult> governs() {
        return check.governing().map(Extreme::arrest);
    }

    /**
     * Whether the limit was read in its source, in words.
     *
     * @return the label
     */
    public String mark() {
        SourceKind kind = criterion.source().kind();
        return kind == SourceKind.STATED ? "stated in the design file" : kind.words();
    }
}
