package org.lifeline.examples.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.examples.arrests.DesignRun;
import org.lifeline.examples.arrests.Governing;
import org.lifeline.examples.criteria.CriterionResult;
import org.lifeline.model.ModelFactors;

/** What governs, and what came out for the criteria. */
final class SummarySection {
    private final UnitChoice units;

    SummarySection(UnitChoice units) {
        this.units = units;
    }

    void governing(Sheet sheet, DesignRun run) {
        ModelFactors factors = run.design().modelFactors();
        sheet.section("What governs");
        sheet.paragraph(
                "  ",
                "Model factors: force " + factors.force() + ", distance " + factors.distance()
                        + (factors.equals(ModelFactors.none())
                                ? " (none applied)."
                                : " (columns \"factored\"; criteria compare factored values).")
                        + " The arrests above are as computed.");
        boolean factored = !factors.equals(ModelFactors.none());
        boolean[] shown = {true, units.si(), units.si() && factored, units.us(), units.us() && factored, true};
        List<List<String>> table = new ArrayList<>();
        table.add(Sheet.row(List.of("quantity", "SI", "factored", "US", "factored", "governed by"), shown));
        for (Governing each : Governing.all(run)) {
            Measure m = each.quantity().unit().equals("N") ? Measure.FORCE : Measure.LENGTH;
            double with = each.factored();
            String what = each.support().isEmpty() ? each.quantity().words() : "load on " + Inert.of(each.support());
            table.add(Sheet.row(
                    List.of(
                            what,
                            m.si(each.value()) + " " + m.siUnit(),
                            m.si(with) + " " + m.siUnit(),
                            m.us(each.value()) + " " + m.usUnit(),
                            m.us(with) + " " + m.usUnit(),
                            ArrestSection.name(each.arrest())),
                    shown));
        }
        sheet.table("l" + "r".repeat(table.get(0).size() - 2) + "l", table);
    }

    void criteria(Sheet sheet, List<CriterionResult> results) {
        sheet.section("Criteria");
        if (results.isEmpty()) {
            sheet.line("  The design names none.");
            return;
        }
        sheet.paragraph(
                "  ",
                "Ratios of demand to capacity for a qualified person to judge. A ratio says nothing about whether a"
                        + " design satisfies a code as a whole.");
        for (CriterionResult each : results) {
            sheet.blank();
            sheet.paragraph(
                    "  ",
                    Inert.of(each.limit().id()) + ": " + Inert.of(each.limit().comparison()));
            if (each.evaluated()) {
                Optional<Boolean> met = each.met();
                sheet.paragraph(
                        "      ",
                        quantity(each.limit().unit(), each.demand()) + " against "
                                + quantity(each.limit().unit(), each.capacity()) + ": ratio "
                                + Measure.fixed(each.ratio(), 3)
                                + (met.orElse(false) ? ", within the limit" : ", BEYOND THE LIMIT")
                                + (each.governs() == null ? "" : "; " + ArrestSection.name(each.governs())));
            }
            sheet.paragraph(
                    "      ",
                    "source: " + Inert.of(each.limit().source().citation()) + " ("
                            + each.limit().mark() + ")");
        }
    }

    private String quantity(String unit, double value) {
        return switch (unit) {
            case "N" -> Measure.FORCE.text(value, units);
            case "m" ->
                value < 0.1 && value > 0 ? Measure.SMALL_LENGTH.text(value, units) : Measure.LENGTH.text(value, units);
            case "kg" -> Measure.MASS.text(value, units);
            case "" -> Measure.fixed(value, 0);
            default -> Measure.fixed(value, 2) + unit;
        };
    }
}
