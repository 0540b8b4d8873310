package org.lifeline.examples.criteria;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.examples.arrests.DesignRun;
import org.lifeline.examples.criteria.CriterionResult.Mark;
import org.lifeline.examples.criteria.CriterionResult.Origin;

/** Evaluates criteria on a computed design. */
public final class CriteriaCheck {
    private CriteriaCheck() {}

    /**
     * Evaluates criteria.
     *
     * @param run the computed design
     * @param criteria the criteria asked for
     * @return the comparisons, at least one for each criterion, in the order of the criteria; unmodifiable
     */
    public static List<CriterionResult> evaluate(DesignRun run, List<Criterion> criteria) {
        List<CriterionResult> list = new ArrayList<>();
        for (Criterion each : criteria) {
            CriterionSheet sheet;
            if (each instanceof Criterion.Own own) {
                sheet = new CriterionSheet(run, own.id(), new Origin(own.source(), Mark.STATED));
                sheet.own(own);
            } else {
                BuiltInCriteria.Entry entry = BuiltInCriteria.entry(each.id());
                sheet = new CriterionSheet(run, entry.id(), entry.origin());
                entry.rule().accept(sheet);
            }
            list.addAll(sheet.results());
        }
        return List.copyOf(list);
    }
}
