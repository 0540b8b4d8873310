package org.lifeline.design.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.base.Violations;

/**
 * A table of a sweep, and whether it is all that was asked for.
 *
 * <p>Immutable and thread-safe.
 *
 * @param rows the rows that were computed, the last variable varying fastest
 * @param asked number of rows that were asked for
 * @since 1.0.0
 */
public record SweepResult(List<StudyRow> rows, long asked) {
    /**
     * Copies the rows.
     *
     * @param rows the rows that were computed
     * @param asked number of rows that were asked for
     */
    public SweepResult {
        Violations.requiredAll("rows", rows);
        rows = List.copyOf(rows);
    }

    /**
     * Tells whether every row was computed.
     *
     * @return false if the listener ended the sweep or its thread was interrupted
     */
    public boolean isComplete() {
        return rows.size() == asked;
    }

    /**
     * Number of rows without a result.
     *
     * @return the number
     */
    public long failed() {
        return rows.stream().filter(StudyRow::failed).count();
    }

    /**
     * Why the table is not all that was asked for.
     *
     * @return the reason; empty if every row was computed and has a result
     */
    public Optional<String> incompleteBecause() {
        List<String> reasons = new ArrayList<>();
        if (!isComplete()) {
            reasons.add("the sweep was ended after " + rows.size() + " of " + asked + " rows");
        }
        rows.stream()
                .filter(StudyRow::failed)
                .findFirst()
                .ifPresent(first -> reasons.add(failed() + " of " + rows.size()
                        + " rows have no result, the first because: " + first.reason()));
        return reasons.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", reasons));
    }
}
