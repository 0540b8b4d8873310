package org.lifeline.examples.handover;

import java.io.IOException;
import java.util.List;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.handover.Handover;
import org.lifeline.design.handover.HandoverResult;
import org.lifeline.examples.shared.DesignArgument;
import org.lifeline.file.DesignFile;
import org.lifeline.report.CalculationReport;
import org.lifeline.report.TextReport;
import org.lifeline.report.document.UnitChoice;

/** The data sheet for a line: one page for users and inspectors, as {@code report --datasheet} writes it. */
public final class LineDataSheet {
    private LineDataSheet() {}

    /**
     * Prints the data sheet, from an assessment by energy balance.
     *
     * @param args a design file, or nothing for the demonstration design
     * @throws IOException if the file cannot be read
     */
    public static void main(String[] args) throws IOException {
        DesignFile file = DesignArgument.read(args);
        Assessment assessment =
                Assessment.withDefaults().withCriteria(file.criteria()).withoutMotion();
        HandoverResult handover = Handover.of(file.handover()).solve(assessment.solve(file.design()));
        System.out.print(TextReport.write(CalculationReport.of(file.design(), List.of())
                .withUnits(UnitChoice.SI)
                .withHandover(handover)
                .buildDataSheet()));
    }
}
