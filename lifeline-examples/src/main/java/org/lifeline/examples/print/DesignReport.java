package org.lifeline.examples.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.file.DesignFile;
import org.lifeline.file.result.DesignRun;
import org.lifeline.report.CalculationReport;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.UnitChoice;

/** The calculation report of a design file: the core's report, with what stands in the file as it was written. */
public final class DesignReport {
    private static final Map<String, UnitChoice> UNITS =
            Map.of("both", UnitChoice.BOTH, "si", UnitChoice.SI, "us", UnitChoice.US_CUSTOMARY);

    private DesignReport() {}

    /**
     * The units of a name on the command line.
     *
     * @param name both, si or us
     * @return the choice, or null if there is no such name
     */
    public static @Nullable UnitChoice units(String name) {
        return UNITS.get(name);
    }

    /**
     * The report of a computed design, with criteria.
     *
     * @param file the design as it was read
     * @param run what was computed
     * @param units the units
     * @param remarks what else the reader has to know, each a sentence; they stand among the assumptions
     * @return the report, to be given a provenance and more
     */
    public static CalculationReport of(DesignFile file, DesignRun run, UnitChoice units, List<String> remarks) {
        List<String> assumptions = new ArrayList<>();
        if (run.searched()) {
            assumptions.add(
                    "The design names no falls. The worst place of a single fall was looked for in each span for each"
                            + " worker, to " + Quantities.in(units).result(QuantityKind.SMALL_LENGTH, 1e-3)
                            + " or 0.1 % of the value, by energy balance; several who fall together, or in"
                            + " sequence, were not.");
        }
        assumptions.addAll(NotStated.of(file, run.design(), Quantities.in(units)));
        assumptions.addAll(remarks);
        return CalculationReport.of(run.design(), run.arrests())
                .withUnits(units)
                .withInputSections(List.of(GivenSection.of(file)))
                .withAssumptions(assumptions)
                .withCriteria(Criteria.check(file.criteria(), run.extremes()));
    }
}
