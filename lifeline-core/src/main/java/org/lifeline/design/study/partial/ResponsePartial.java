package org.lifeline.design.study.partial;

import java.util.List;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;

/**
 * What is kept of one response.
 *
 * <p>Immutable and thread-safe.
 *
 * @param counts how many values lie where
 * @param sums sums of values and products
 * @param first the first {@value #FIRST_CASES} cases with a value, for rank correlations
 * @since 1.0.0
 */
public record ResponsePartial(ValueCounts counts, ExactSums sums, List<KeptCase> first) {
    /** Number of cases that are kept as they were drawn. */
    public static final int FIRST_CASES = 4096;

    /**
     * Copies the list.
     *
     * @param counts how many values lie where
     * @param sums sums of values and products
     * @param first the first cases with a value
     * @throws org.lifeline.base.InvalidInputException if the parts do not speak of the same number of cases
     */
    public ResponsePartial {
        Violations.required("counts", counts);
        Violations.required("sums", sums);
        Violations.requiredAll("first", first);
        first = List.copyOf(first);
        int quantities = sums.sums().size();
        new Violations()
                .require(
                        counts.count() == sums.count(),
                        "count",
                        GivenValue.count(sums.count()),
                        InputRule.NOT_THAT_OF_BINS,
                        counts.count())
                .require(
                        first.size() == Math.min(FIRST_CASES, sums.count()),
                        "first",
                        GivenValue.countOf(first.size(), "cases"),
                        InputRule.FIRST_CASES_LACKING,
                        FIRST_CASES)
                .require(
                        first.stream().allMatch(c -> c.values().size() == quantities),
                        "first",
                        GivenValue.text("values"),
                        InputRule.QUANTITIES_DIFFER,
                        quantities)
                .throwIfAny();
    }

    ResponsePartial merged(ResponsePartial other) {
        return new ResponsePartial(
                counts.merged(other.counts), sums.merged(other.sums), KeptCase.first(first, other.first, FIRST_CASES));
    }
}
