package org.lifeline.report;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.cable.Cable;
import org.lifeline.report.document.Provenance;
import org.lifeline.report.document.ReportDetail;
import org.lifeline.report.document.ReportDocument;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;

/** Reports for the tests. */
public final class ReportSamples {
    private ReportSamples() {}

    public static List<ArrestResult> arrests(LifelineDesign design) {
        List<ArrestResult> list = new ArrayList<>();
        for (Fall fall : design.falls()) {
            for (DeploymentForce side : DeploymentForce.values()) {
                list.add(EnergyBalance.withDefaults()
                        .withClearance(design.clearance())
                        .withSide(side)
                        .withTemperature(-30)
                        .solve(design.line(), fall));
            }
        }
        return list;
    }

    public static ReportDocument document(String title, UnitChoice units) {
        LifelineDesign design = SampleDesigns.design(title);
        return CalculationReport.of(design, arrests(design))
                .withUnits(units)
                .withDetail(ReportDetail.FULL)
                .withProvenance(new Provenance("Lifeline test", "ab".repeat(32), "25 November 2026", title))
                .build();
    }

    /** One arrest, without the calculation, the text in every name that there is. */
    public static ReportDocument named(String text) {
        LifelineDesign base = SampleDesigns.design(text);
        Worker worker = SampleDesigns.worker(text, 100, Attachment.GRIPPED, SampleDesigns.lanyard());
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder()
                        .name(text)
                        .weightPerLength(5)
                        .axialStiffness(5e6)
                        .build())
                .endAnchor(text, Point.of(0, 0, 12.4))
                .endAnchor(text + "2", Point.of(9, 4, 12.4))
                .pretension(1000)
                .build();
        Fall fall = Fall.builder(text).at(Place.of(1, 3)).faller(worker).build();
        LifelineDesign design = LifelineDesign.builder(text)
                .line(line)
                .worker(worker)
                .fall(fall)
                .clearance(base.clearance())
                .build();
        return CalculationReport.of(design, List.of(EnergyBalance.withDefaults().solve(line, fall)))
                .withProvenance(new Provenance(text, text, text, text))
                .build();
    }
}
