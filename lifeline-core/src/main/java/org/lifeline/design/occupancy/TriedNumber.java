package org.lifeline.design.occupancy;

import java.util.List;
import org.lifeline.base.Violations;
import org.lifeline.design.criteria.CriterionResult;

/**
 * A number of workers that was tried, with the criteria that it breaks.
 *
 * <p>Immutable and thread-safe.
 *
 * @param number how many workers
 * @param span the span that they were tried in; 0 for the whole line
 * @param arrangements how many arrangements were tried
 * @param notMet the criteria that are not met, or could not be evaluated; empty if all are met
 * @since 1.0.0
 */
public record TriedNumber(int number, int span, int arrangements, List<CriterionResult> notMet) {
    /**
     * Copies the list.
     *
     * @param number how many workers
     * @param span the span
     * @param arrangements how many arrangements
     * @param notMet the criteria that are not met
     */
    public TriedNumber {
        Violations.requiredAll("notMet", notMet);
        notMet = List.copyOf(notMet);
    }

    /**
     * Tells whether all criteria are met.
     *
     * @return true if they are
     */
    public boolean isMet() {
        return notMet.isEmpty();
    }
}
