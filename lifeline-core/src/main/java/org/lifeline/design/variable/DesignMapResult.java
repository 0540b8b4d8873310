package org.lifeline.design.variable;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.base.Violations;

/**
 * A map over two variables, and whether it is all that was asked for.
 *
 * <p>Immutable and thread-safe.
 *
 * @param columns the columns that are whole, in the order of the values of the first variable
 * @param asked number of columns that were asked for
 * @since 1.0.0
 */
public record DesignMapResult(List<DesignMap.Column> columns, int asked) {
    /**
     * Copies the columns.
     *
     * @param columns the columns that are whole
     * @param asked number of columns that were asked for
     */
    public DesignMapResult {
        Violations.requiredAll("columns", columns);
        columns = List.copyOf(columns);
    }

    /**
     * Tells whether the map was carried through.
     *
     * @return false if the listener ended the work or its thread was interrupted
     */
    public boolean isComplete() {
        return columns.size() == asked
                && columns.stream().allMatch(c -> c.range().isComplete());
    }

    /**
     * Number of cells whose design could not be analysed.
     *
     * @return the number
     */
    public long failed() {
        return columns.stream()
                .flatMap(c -> c.cells().stream())
                .filter(t -> !t.reason().isEmpty())
                .count();
    }

    /**
     * Why the map is not all that was asked for.
     *
     * @return the reason; empty if every column was worked out and every cell could be analysed
     */
    public Optional<String> incompleteBecause() {
        List<String> reasons = new ArrayList<>();
        if (!isComplete()) {
            reasons.add("the map was ended after " + columns.size() + " of " + asked + " columns");
        }
        columns.stream()
                .flatMap(c -> c.cells().stream())
                .filter(t -> !t.reason().isEmpty())
                .findFirst()
                .ifPresent(
                        t -> reasons.add(failed() + " cells could not be analysed, the first because: " + t.reason()));
        return reasons.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", reasons));
    }
}
