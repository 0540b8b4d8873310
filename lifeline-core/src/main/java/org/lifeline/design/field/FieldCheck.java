package org.lifeline.design.field;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.Statics;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Violation;
import org.lifeline.base.ViolationCode;
import org.lifeline.base.Violations;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.WorstCases;
import org.lifeline.internal.numeric.Roots;
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
    /** Least and largest pretension that is looked for, over that of the design [-]; beyond, the reading is a mistake. */
    private static final double LEAST = 1e-3;

    private static final double MOST = 1e3;

    /** First step of the search in the logarithm of the pretension [-]: a factor of 1.28. */
    private static final double FIRST_STEP = 0.25;

    /** Step in the logarithm of the pretension at which the slackest line that hangs counts as found [-]. */
    private static final double LEAST_STEP = 1e-6;

    /** How near the line comes to the reading, over the reading [-]; far below what any instrument shows. */
    private static final double READING = 1e-9;

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
     * @throws InvalidInputException if no pretension gives what was measured
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
            double p = pretension(line, designed, measurement, value);
            LifelineDesign now = design.withLine(with(line, p));
            pretensions.add(p);
            designs.add(now);
            extremes.add(analysis.extremes(now));
        }
        return new FieldCheckResult(
                measurement, new FieldCheckResult.AsDesigned(designed, reading), pretensions, designs, extremes);
    }

    private static Lifeline with(Lifeline line, double pretension) {
        return line.withInstalled(line.installed().withPretension(pretension));
    }

    /** The pretension at installation that gives a reading. */
    private static double pretension(Lifeline line, double designed, Measurement m, double value) {
        double sign = m.fallsWithTension() ? -1 : 1;
        // Works in the logarithm of the pretension; grows with it.
        double low = 0;
        double high = 0;
        double step = FIRST_STEP;
        while (difference(line, designed * StrictMath.exp(high), m, value) * sign < 0) {
            low = high;
            high += step;
            step *= 2;
            if (high > StrictMath.log(MOST)) {
                throw none(m, value, InputRule.PRETENSION_NOT_FOUND, MOST);
            }
        }
        step = FIRST_STEP;
        while (low >= high || difference(line, designed * StrictMath.exp(low), m, value) * sign > 0) {
            high = Math.min(high, low);
            low -= step;
            if (low < StrictMath.log(LEAST) || !hangs(line, designed * StrictMath.exp(low))) {
                low += step;
                step *= 0.5;
                if (step < LEAST_STEP) {
                    throw none(m, value, InputRule.SLACKER_THAN_IT_HANGS);
                }
            }
        }
        double root = Roots.crossing(
                m.name(),
                x -> sign * difference(line, designed * StrictMath.exp(x), m, value),
                low,
                high,
                READING * value);
        return designed * StrictMath.exp(root);
    }

    private static boolean hangs(Lifeline line, double pretension) {
        try {
            Statics.withDefaults().solve(with(line, pretension), List.of());
            return true;
        } catch (InvalidInputException | NoEquilibriumException e) {
            return false;
        }
    }

    private static double difference(Lifeline line, double pretension, Measurement m, double value) {
        return m.on(with(line, pretension)) - value;
    }

    private static InvalidInputException none(Measurement m, double value, ViolationCode rule, Object... arguments) {
        return new InvalidInputException(
                List.of(Violation.of(m.name(), GivenValue.number(value, m.unit()), rule, arguments)));
    }
}
