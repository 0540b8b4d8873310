package org.lifeline.file.result;

import java.util.List;
import org.lifeline.design.criteria.Criterion;

/** Evaluates criteria on a computed design and lays out their comparisons, one after the other. */
public final class CriteriaCheck {
    private CriteriaCheck() {}

    /**
     * Evaluates criteria. Of alternatives only the one that is met best is laid out.
     *
     * @param run the computed design
     * @param criteria the criteria asked for
     * @return the comparisons, at least one for each criterion, in the order of the criteria; unmodifiable
     */
    public static List<PrintedComparison> evaluate(DesignRun run, List<Criterion> criteria) {
        return criteria.stream()
                .flatMap(each -> each.check(run.extremes()).check().deciding().stream()
                        .map(check -> new PrintedComparison(each, check)))
                .toList();
    }
}
