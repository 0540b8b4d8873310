package org.lifeline.examples.criteria;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;

/**
 * What came out for one criterion, or for one part of it.
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
     * @param unit SI unit of demand and capacity; empty for a bare number
     * @param origin where the limit comes from
     */
    public record LimitText(String id, String comparison, String unit, Origin origin) {}

    /**
     * Where a limit comes from.
     *
     * @param source the document with its clause
     * @param mark whether the value was read there
     */
    public record Origin(String source, Mark mark) {}

    /** Whether a value was read in its source. */
    public enum Mark {
        /** Value and clause were seen in the source or an official copy. */
        PUBLISHED("published"),
        /** From memory; to be checked in the document before anyone relies on it. */
        RECALLED("recalled"),
        /** A habit of the trade, no source. */
        COMMON_PRACTICE("common practice"),
        /** Stated by whoever wrote the design file. */
        STATED("stated in the design file");

        private final String label;

        Mark(String label) {
            this.label = label;
        }

        /**
         * The mark in words.
         *
         * @return the label
         */
        public String label() {
            return label;
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
        return demand <= 0 && evaluated() ? 0 : capacity <= 0 ? Double.POSITIVE_INFINITY : demand / capacity;
    }

    /**
     * Tells whether the demand stays within the capacity.
     *
     * @return the answer; empty if it could not be evaluated
     */
    public Optional<Boolean> met() {
        return evaluated() ? Optional.of(demand <= capacity) : Optional.empty();
    }
}
