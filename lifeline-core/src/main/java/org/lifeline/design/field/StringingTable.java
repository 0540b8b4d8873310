package org.lifeline.design.field;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.warning.Measured;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.Violations;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;

/**
 * The stringing table of a line: tension and midspan sag of every span against temperature. A line that is tensioned to the
 * row of its temperature has the pretension of the design at the temperature of installation of the design.
 *
 * <p>While the line is tensioned the cable runs freely over every intermediate anchor, also over those that are clamped
 * afterwards; the table is computed so. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class StringingTable {
    private final Interval tolerance;

    private StringingTable(Interval tolerance) {
        this.tolerance = tolerance;
    }

    /**
     * Without a tolerance.
     *
     * @return the table
     */
    public static StringingTable withDefaults() {
        return new StringingTable(Interval.exactly(1));
    }

    /**
     * The same with a tolerance on the pretension.
     *
     * @param factors lowest and highest factor on the pretension at the temperature of installation [-], above zero, with 1
     *     in between
     * @return the new table
     * @throws org.lifeline.base.InvalidInputException if 1 does not lie in the range, or it reaches down to zero
     */
    public StringingTable withTolerance(Interval factors) {
        Violations.required("tolerance", factors);
        new Violations()
                .require(
                        factors.low() > 0 && factors.contains(1),
                        "tolerance",
                        GivenValue.text(factors.toString()),
                        InputRule.FACTORS_CONTAIN_ONE)
                .throwIfAny();
        return new StringingTable(factors);
    }

    /**
     * Computes the table.
     *
     * @param line the line
     * @param temperatures temperatures of the cable, each [°C]
     * @return rows by temperature, then by span
     * @throws org.lifeline.base.InvalidInputException if the line cannot hang as stated
     * @throws org.lifeline.base.NoEquilibriumException if no equilibrium was found at a temperature
     */
    public List<StringingRow> solve(Lifeline line, List<Double> temperatures) {
        Violations.required("line", line);
        Violations.requiredAll("temperatures", temperatures);
        Lifeline free = line.withSupports(s -> s.isEnd() ? s : s.withPassage(Passage.free()));
        double tension = Statics.withDefaults().solve(free, List.of()).firstTension();
        Lifeline[] lines = new Lifeline[3];
        double[] factors = {tolerance.low(), 1, tolerance.high()};
        for (int i = 0; i < 3; i++) {
            lines[i] =
                    factors[i] == 1 ? free : free.withInstalled(line.installed().withPretension(tension * factors[i]));
        }
        List<StringingRow> rows = new ArrayList<>();
        for (double t : temperatures) {
            LineEquilibrium[] states = new LineEquilibrium[3];
            for (int i = 0; i < 3; i++) {
                states[i] = Statics.withDefaults().withTemperature(t).solve(lines[i], List.of());
            }
            for (int span = 1; span <= line.spans(); span++) {
                rows.add(row(t, span, states));
            }
        }
        return List.copyOf(rows);
    }

    private static StringingRow row(double temperature, int span, LineEquilibrium[] states) {
        double[] tension = new double[3];
        double[] sag = new double[3];
        for (int i = 0; i < 3; i++) {
            SpanState s = states[i].span(span);
            tension[i] = s.pieces().get(0).startTension().magnitude();
            sag[i] = Midspan.sag(s);
        }
        return new StringingRow(
                temperature,
                span,
                new Reading(tension[0], tension[1], tension[2]),
                new Reading(sag[2], sag[1], sag[0]));
    }

    /**
     * Where a line that is strung by a table is pulled beyond what cable and terminations hold.
     *
     * @param line the line
     * @param rows rows of its table
     * @return a warning for each row whose highest tension does; unmodifiable
     */
    public static List<Warning> warnings(Lifeline line, List<StringingRow> rows) {
        Violations.required("line", line);
        Violations.requiredAll("rows", rows);
        List<Warning> list = new ArrayList<>();
        line.cable()
                .terminationStrength()
                .ifPresent(holds -> rows.stream()
                        .filter(r -> r.tension().high() > holds)
                        .forEach(r -> list.add(Warning.of(Warning.Code.CABLE_STRENGTH, "span " + r.span())
                                .in(r.temperature() + " °C")
                                .with(new Measured(r.tension().high(), "N", holds)))));
        return List.copyOf(list);
    }
}
