package org.lifeline.design.field;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.Statics;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Violations;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.WorstCases;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;

/**
 * From what was measured in the field, the pretension that a line has now, and its analysis again.
 *
 * <p>The line is taken as designed but for its pretension: the one is looked for that gives the reading at the temperature of
 * the measurement, the line having come there from its installation by the passage rules of its anchors. Immutable and
 * thread-safe.
 *
 * @since 1.0.0
 */
public final class FieldCheck {
    private final WorstCases analysis;

    private FieldCheck(WorstCases analysis) {
        this.analysis = analysis;
    }

    /**
     * With the analysis of the falls of the design; of its worst places where it states none.
     *
     * @return the check
     */
    public static FieldCheck withDefaults() {
        return new FieldCheck(DesignAnalysis.withDefaults());
    }

    /**
     * The same with another analysis, for example an envelope.
     *
     * @param value the analysis that gives the worst cases
     * @return the new check
     */
    public FieldCheck withAnalysis(WorstCases value) {
        Violations.required("analysis", value);
        return new FieldCheck(value);
    }

    /**
     * Finds the pretension and analyses the line again.
     *
     * @param design the design
     * @param measurement what was measured
     * @return pretension now and worst values now; with an uncertainty also at both ends of it
     * @throws InvalidInputException if no pretension that the line can have gives what was measured; the violation names the
     *     reading
     * @throws NoEquilibriumException if no equilibrium was found
     */
    public FieldCheckResult solve(LifelineDesign design, Measurement measurement) {
        Violations.required("design", design);
        Violations.required("measurement", measurement);
        Lifeline line = design.line();
        double designed = Statics.withDefaults().solve(line, List.of()).firstTension();
        double reading = measurement.on(line);
        List<Double> values = new ArrayList<>(List.of(measurement.value()));
        if (measurement.uncertainty() > 0) {
            double sign = measurement.fallsWithTension() ? -1 : 1;
            values.add(measurement.value() - sign * measurement.uncertainty());
            values.add(measurement.value() + sign * measurement.uncertainty());
        }
        List<Double> pretensions = new ArrayList<>();
        List<LifelineDesign> designs = new ArrayList<>();
        List<Extremes> extremes = new ArrayList<>();
        for (double value : values) {
            double p = new PretensionSearch(line, designed, measurement, value).solve();
            LifelineDesign now = design.withLine(PretensionSearch.with(line, p));
            pretensions.add(p);
            designs.add(now);
            extremes.add(analysis.extremes(now));
        }
        return new FieldCheckResult(
                measurement, new FieldCheckResult.AsDesigned(designed, reading), pretensions, designs, extremes);
    }
}
