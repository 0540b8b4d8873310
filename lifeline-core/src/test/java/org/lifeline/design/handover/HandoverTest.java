package org.lifeline.design.handover;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Interval;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.clearance.ClearanceAlongLine;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.installation.ConstructionalStretch;
import org.lifeline.design.installation.InstallationPlan;
import org.lifeline.design.installation.InstallationRequest;
import org.lifeline.design.structure.StatedFactor;
import org.lifeline.design.structure.SupportLoads;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.PublishedScatter;
import org.lifeline.report.CalculationReport;
import org.lifeline.report.TextReport;

class HandoverTest {
    private static final Worker WIDE = Designs.worker("A", Attachment.GRIPPED);
    private static final Worker NARROW = Designs.narrow("B");

    private static AssessmentResult assessed(List<Criterion> criteria) {
        LifelineDesign design = LifelineDesign.builder("walkway")
                .line(Designs.line(1, Passage.free()))
                .worker(WIDE)
                .worker(NARROW)
                .fall(Fall.builder("second")
                        .at(Place.of(1, 4))
                        .faller(WIDE)
                        .hanging(NARROW, Place.of(1, 6))
                        .build())
                .build();
        return Assessment.withDefaults().withCriteria(criteria).withoutMotion().solve(design);
    }

    private static HandoverRequest everything() {
        return HandoverRequest.nothing()
                .withStructure(SupportLoads.withDefaults()
                        .withFactors(List.of(new StatedFactor("ultimate", 1.5, "structural brief, 3.1"))))
                .withClearance(ClearanceAlongLine.withDefaults())
                .withInstallation(InstallationPlan.of(new InstallationRequest(
                                Interval.of(0, 30),
                                100,
                                Interval.of(0.9, 1.1),
                                Optional.of(ConstructionalStretch.STEEL_CORE)))
                        .withAnalysis(DesignAnalysis.withDefaults()))
                .withNumberOfWorkers();
    }

    @Test
    void everyPartIsDrawnUpAndReported() {
        AssessmentResult assessment = assessed(
                List.of(Criterion.stated("anchors", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 45e3, "brief 1")));
        HandoverResult r = Handover.of(everything()).solve(assessment);
        assertThat(r.structure()).isPresent();
        assertThat(r.clearance()).isPresent();
        assertThat(r.installation()).isPresent();
        assertThat(r.occupancy()).isPresent();
        assertThat(r.notComputed()).isEmpty();
        DataSheet sheet = r.dataSheet();
        assertThat(sheet.users()).hasValue(r.occupancy().orElseThrow().inAll());
        assertThat(sheet.usersInSpans()).hasSize(1);
        assertThat(sheet.masses()).isEqualTo(Interval.of(100, 100));
        assertThat(sheet.connections()).hasSize(2);
        assertThat(sheet.anchors()).hasSize(2).allMatch(a -> a.stated() == 45e3);
        assertThat(sheet.pretension().get(0).tension().low())
                .isEqualTo(0.9 * sheet.pretension().get(0).tension().nominal(), within(1e-3));
        String text = TextReport.write(
                CalculationReport.of(assessment.design(), assessment.stated().arrests())
                        .withAssessment(assessment)
                        .withHandover(r)
                        .build());
        assertThat(text.replaceAll("\\s+", " "))
                .contains("Assumption: the connection pulls up to ± 15° from the vertical")
                .contains("The design states no angle; this one is taken without a source.")
                .contains("Factors as stated: ultimate 1.50 (structural brief, 3.1).")
                .contains(
                        "Pull across the line, out of its vertical plane, except in the loads for the supporting structure.");
        assertThat(r.structure().orElseThrow().isAngleAssumed()).isTrue();
        assertThat(SupportLoads.withDefaults()
                        .withAngle(Math.toRadians(20))
                        .withFactors(List.of())
                        .solve(assessment)
                        .isAngleAssumed())
                .isFalse();
        assertThat(text)
                .contains("Loads for the supporting structure")
                .contains("ultimate")
                .contains("Number of workers")
                .contains("Clearance along the line")
                .contains("Installation")
                .contains("Data sheet for the line");
        String page = TextReport.write(CalculationReport.of(assessment.design(), List.of())
                .withHandover(r)
                .buildDataSheet());
        // One page of A4 has some 65 lines.
        assertThat(page.lines().count()).isLessThan(66);
        assertThat(page.replaceAll("\\s+", " ")).contains("closer together").contains("Carrión");
    }

    @Test
    void aPartThatCannotBeDrawnUpIsNamed() {
        HandoverResult r =
                Handover.of(HandoverRequest.nothing().withNumberOfWorkers()).solve(assessed(List.of()));
        assertThat(r.occupancy()).isEmpty();
        assertThat(r.notComputed())
                .singleElement()
                .satisfies(n -> assertThat(n.why()).contains("criteria"));
        assertThat(HandoverRequest.nothing().isEmpty()).isTrue();
    }

    /** Those who hang lower the line: the sheet counts from the straight line, so it asks for no less than the stretches do. */
    @Test
    void theSheetCountsFromTheLineAsInstalled() {
        AssessmentResult assessment = assessed(List.of());
        DataSheet rough =
                Handover.of(HandoverRequest.nothing()).solve(assessment).dataSheet();
        DataSheet fine = Handover.of(HandoverRequest.nothing().withClearance(ClearanceAlongLine.withDefaults()))
                .solve(assessment)
                .dataSheet();
        double counted = assessment.governing("requiredBelowLine").orElseThrow().factored();
        assertThat(rough.clearanceBelowLine().orElseThrow()).isGreaterThan(counted);
        // Both round up to 0.05 m.
        assertThat(rough.clearanceBelowLine().orElseThrow())
                .isGreaterThanOrEqualTo(fine.clearanceBelowLine().orElseThrow() - 0.05001);
    }

    /** Carrión et al. 2020 (published): average about 87.5 % of the maximum force of the same drop. */
    @Test
    void pairsOfForcesBesideThePublishedScatter() {
        assertThat(PublishedScatter.AVERAGE_OVER_MAXIMUM).isEqualTo(0.875);
        assertThat(PublishedScatter.isNarrower(
                        NARROW.connection().curve(DeploymentForce.CLEARANCE),
                        NARROW.connection().curve(DeploymentForce.MAXIMUM)))
                .isTrue();
        assertThat(PublishedScatter.isNarrower(
                        WIDE.connection().curve(DeploymentForce.CLEARANCE),
                        WIDE.connection().curve(DeploymentForce.MAXIMUM)))
                .isFalse();
    }
}
