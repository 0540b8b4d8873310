package org.lifeline.examples.criteria;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.design.criteria.Check;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.Status;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.examples.arrests.DesignRun;
import org.lifeline.examples.criteria.CriterionResult.LimitText;

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
    public static List<CriterionResult> evaluate(DesignRun run, List<Criterion> criteria) {
        List<CriterionResult> list = new ArrayList<>();
        for (Criterion each : criteria) {
            for (Check check : each.check(run.extremes()).check().deciding()) {
                list.add(result(each, check));
            }
        }
        return List.copyOf(list);
    }

    private static CriterionResult result(Criterion criterion, Check check) {
        @Nullable ArrestResult governs = check.governing().map(Extreme::arrest).orElse(null);
        if (check.status() == Status.NOT_EVALUATED) {
            String why = "not evaluated: " + (check.demandKey().isEmpty() ? "" : check.title() + ": ") + check.reason();
            return new CriterionResult(
                    new LimitText(criterion.id(), why, "", criterion.source()), Double.NaN, Double.NaN, governs);
        }
        // Angles are read in degrees, bare numbers without a unit.
        double scale = check.unit().equals("rad") ? Math.toDegrees(1) : 1;
        String unit =
                switch (check.unit()) {
                    case "rad" -> "°";
                    case "-" -> "";
                    default -> check.unit();
                };
        return new CriterionResult(
                new LimitText(criterion.id(), check.title(), unit, criterion.source()),
                check.demand() * scale,
                check.capacity() * scale,
                governs);
    }
}
