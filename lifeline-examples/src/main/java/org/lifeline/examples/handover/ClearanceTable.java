package org.lifeline.examples.handover;

import java.io.IOException;
import java.util.Locale;
import java.util.OptionalDouble;
import org.lifeline.base.Interval;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.clearance.ClearanceAlongLine;
import org.lifeline.design.clearance.ClearanceAlongLineResult;
import org.lifeline.design.clearance.ClearanceStretch;
import org.lifeline.design.clearance.StationSteps;
import org.lifeline.examples.shared.DesignArgument;
import org.lifeline.examples.shared.LineScope;
import org.lifeline.file.DesignFile;

/** The clearance table for those who install and use a line: every 3 m what is needed below it, and where to keep off. */
public final class ClearanceTable {
    private ClearanceTable() {}

    /**
     * Prints the table, by energy balance.
     *
     * @param args a design file, or nothing for the demonstration design
     * @throws IOException if the file cannot be read
     */
    public static void main(String[] args) throws IOException {
        DesignFile file = DesignArgument.read(args);
        AssessmentResult assessment = Assessment.withDefaults().withoutMotion().solve(file.design());
        ClearanceAlongLineResult r = file.handover()
                .clearance()
                .orElse(ClearanceAlongLine.withDefaults().withSteps(new StationSteps(3, 0.05)))
                .solve(assessment);
        System.out.println(LineScope.words(false));
        System.out.println("Required distances are rounded up, available ones down, to "
                + String.format(Locale.ROOT, "%.2f", r.steps().rounding()) + " m.");
        System.out.println("span  from [m]   to [m]   below the line   available   below the feet   swing angle   use");
        for (ClearanceStretch s : r.stretches()) {
            OptionalDouble free = s.availableBelowLine();
            System.out.println(String.format(
                    Locale.ROOT,
                    "%4d  %8.2f %8.2f   %14.2f   %9s   %14.2f   %10.1f°   %s",
                    s.span(),
                    s.stations().low(),
                    s.stations().high(),
                    r.steps().up(s.requiredBelowLine()),
                    free.isPresent()
                            ? String.format(Locale.ROOT, "%.2f", r.steps().down(free.getAsDouble()))
                            : "-",
                    r.steps().up(s.requiredBelowWalkingLevel()),
                    Math.toDegrees(s.swing().angle()),
                    s.mustNotBeUsed() ? "NO" : ""));
        }
        for (Interval each : r.mustNotBeUsed()) {
            System.out.println(String.format(
                    Locale.ROOT, "DO NOT USE from %.2f to %.2f m along the line.", each.low(), each.high()));
        }
    }
}
