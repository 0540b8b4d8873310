package org.lifeline.design.study.partial;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.lifeline.base.Violations;

/**
 * A case that is kept as it was drawn.
 *
 * <p>Immutable and thread-safe.
 *
 * @param number number of the case, from 1
 * @param values values of the variables [unit of each], and after them the value of the response where the case has one
 * @param reason why the case has no result; empty if it has one
 * @since 1.0.0
 */
public record KeptCase(long number, List<Double> values, String reason) {
    /**
     * Copies the values.
     *
     * @param number number of the case
     * @param values the values
     * @param reason why there is no result
     */
    public KeptCase {
        Violations.requiredAll("values", values);
        Violations.required("reason", reason);
        values = List.copyOf(values);
    }

    /** The cases of two parts with the least numbers: so many as a study keeps. */
    static List<KeptCase> first(List<KeptCase> a, List<KeptCase> b, int most) {
        return Stream.concat(a.stream(), b.stream())
                .sorted(Comparator.comparingLong(KeptCase::number))
                .limit(most)
                .toList();
    }
}
