package org.lifeline.examples.criteria;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.design.criteria.Check;
import org.lifeline.design.criteria.Mark;
import org.lifeline.design.criteria.Source;
import org.lifeline.design.criteria.Status;

/**
 * One comparison of a criterion as it is printed and written.
 *
 * <p>Immutable and thread-safe.
 *
 * @param limit what is compared with what, and where that comes from
 * @param demand the demand [unit of the limit]; NaN if it could not be evaluated
 * @param capacity the capacity [unit of the limit]; NaN if it could not be evaluated
 * @param governs the arrest that governs the demand; null if it does not depend on an arrest
 */
public record CriterionResult(
        LimitText limit,
        double demand,
        double capacity,
        @Nullable ArrestResult governs) {

    /**
     * What a criterion compares, in words.
     *
     * @param id the criterion
     * @param comparison demand against capacity, in words; why nothing could be compared where that is so
     * @param unit unit of demand and capacity; empty for a bare number
     * @param source where the limit comes from
     */
    public record LimitText(String id, String comparison, String unit, Source source) {
        /**
         * Whether the value was read in its source, in words.
         *
         * @return the label
         */
        public String mark() {
            return source.mark() == Mark.STATED
                    ? "stated in the design file"
                    : source.mark().words();
        }
    }

    /**
     * Tells whether there were numbers to compare.
     *
     * @return false if the design lacks what the criterion needs
     */
    public boolean evaluated() {
        return !Double.isNaN(demand) && !Double.isNaN(capacity);
    }

    /**
     * Demand over capacity.
     *
     * @return the ratio [-]; infinite if there is a demand and no capacity, NaN if it could not be evaluated
     */
    public double ratio() {
        return Check.ratioOf(demand, capacity);
    }

    /**
     * Tells whether the demand stays within the capacity.
     *
     * @return the answer; empty if it could not be evaluated
     */
    public Optional<Boolean> met() {
        return evaluated() ? Optional.of(Status.of(ratio()) == Status.MET) : Optional.empty();
    }
}
