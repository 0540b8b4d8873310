package org.lifeline.examples.programs;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.lifeline.base.unit.Dimension;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.field.FieldCheck;
import org.lifeline.design.field.FieldCheckResult;
import org.lifeline.design.field.Measurement;
import org.lifeline.examples.shared.DesignArgument;
import org.lifeline.examples.shared.LineScope;
import org.lifeline.examples.shared.Lines;
import org.lifeline.file.DesignFile;

/** A sag was measured on a line years after it was built: which pretension does it have now, and does it still do? */
public final class FieldReading {
    private FieldReading() {}

    /**
     * Prints the pretension now and the analysis again.
     *
     * @param args nothing; or a design file, the number of a span, its midspan sag, how exactly it was measured, and the
     *     temperature of the cable, such as {@code 2 "130 mm" "5 mm" "24 °C"}
     * @throws IOException if the file cannot be read
     */
    public static void main(String[] args) throws IOException {
        DesignFile file = DesignArgument.read(args);
        boolean given = args.length >= 5;
        Measurement measured = Measurement.midspanSag(
                        given ? Integer.parseInt(args[1]) : 2,
                        given ? DesignArgument.quantity(args[2], Dimension.LENGTH) : 0.130)
                .withUncertainty(given ? DesignArgument.quantity(args[3], Dimension.LENGTH) : 0.005)
                .atTemperature(given ? DesignArgument.quantity(args[4], Dimension.TEMPERATURE) : 24);
        FieldCheckResult r = FieldCheck.withDefaults().solve(file.design(), measured);
        print(
                "measured: %s %.1f mm ± %.1f mm",
                measured.name(), 1000 * measured.value(), 1000 * measured.uncertainty());
        print("as designed it would be %.1f mm", 1000 * r.readingOfDesign());
        print("pretension of the design %7.0f N", r.pretensionOfDesign());
        print(
                "pretension now           %7.0f N, from %.0f to %.0f N",
                r.pretensionNow(),
                r.pretensionRange().low(),
                r.pretensionRange().high());
        Extremes designed = DesignAnalysis.withDefaults().extremes(file.design());
        print("");
        print("%s", LineScope.words(true));
        print("%-36s %12s %15s", "", "as designed", "now, at worst");
        for (Quantity q : List.of(
                Quantity.END_ANCHOR_LOAD, Quantity.SAG, Quantity.TOTAL_FALL_DISTANCE, Quantity.CLEARANCE_MARGIN)) {
            // A design without obstructions has no margin.
            double before = designed.of(q).map(Extreme::value).orElse(Double.NaN);
            double now = r.worst(q).map(Extreme::value).orElse(Double.NaN);
            print("%-36s %12s %15s", q.words(), Lines.value(q.unit(), before), Lines.value(q.unit(), now));
        }
        print("");
        for (CriterionResult each : Criteria.check(file.criteria(), r.extremes())) {
            print("%s", Lines.criterion(each));
        }
    }

    private static void print(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }
}
