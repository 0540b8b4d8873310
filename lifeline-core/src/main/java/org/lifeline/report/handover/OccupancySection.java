package org.lifeline.report.handover;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.lifeline.base.InertText;
import org.lifeline.design.assessment.AssessedCriterion;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.criteria.Status;
import org.lifeline.design.occupancy.OccupancyResult;
import org.lifeline.design.occupancy.TriedNumber;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;

/** How many workers may be hooked on. */
final class OccupancySection {
    private final OccupancyResult result;
    private final AssessmentResult assessment;
    private final Quantities q;

    OccupancySection(OccupancyResult result, AssessmentResult assessment, Quantities q) {
        this.result = result;
        this.assessment = assessment;
        this.q = q;
    }

    ReportSection section() {
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(new ReportBlock.Paragraph("All criteria of the design are met with at most " + result.inAll()
                + " of the " + result.design().workers().size()
                + " workers on the line at once, and no more in each span than the table says. Every number was tried"
                + " together at one place, one after the other in one span, and with the others in neighbouring spans,"
                + " each who differs falling last"
                + (result.isConfirmed()
                        ? ", with arrests in time."
                        : ", BY ENERGY BALANCE ALONE, which is low for loads.")
                + (result.selectionsLeftOut() == 0
                        ? ""
                        : " " + result.selectionsLeftOut() + " lighter selections of the crew were not tried.")));
        if (!result.isConfirmed()) {
            notMet(assessment)
                    .ifPresent(ids -> blocks.add(
                            new ReportBlock.Paragraph("ATTENTION: the assessment of this design does NOT MEET " + ids
                                    + "; the numbers of this table do not say that it does with fewer workers.")));
        }
        TableBuilder t = new TableBuilder("Numbers tried")
                .text("Where")
                .number("Workers")
                .number("Arrangements")
                .text("Criteria");
        for (TriedNumber each : result.tried()) {
            t.row(
                    each.span() == 0
                            ? "whole line"
                            : "span " + each.span() + ", "
                                    + q.input(
                                            QuantityKind.LENGTH,
                                            result.design().line().run(each.span())),
                    Integer.toString(each.number()),
                    Integer.toString(each.arrangements()),
                    each.isMet()
                            ? "all met"
                            : "NOT MET: "
                                    + each.notMet().stream()
                                            .map(r ->
                                                    InertText.name(r.criterion().id()))
                                            .collect(Collectors.joining(", ")));
        }
        blocks.add(t.build());
        return new ReportSection("Number of workers", 1, blocks);
    }

    /** Names of the criteria that an assessment does not meet; empty if there are none. */
    static Optional<String> notMet(AssessmentResult assessment) {
        return assessment.criteria().stream()
                .map(AssessedCriterion::result)
                .filter(r -> r.status() == Status.NOT_MET)
                .map(r -> InertText.name(r.criterion().id()))
                .reduce((a, b) -> a + ", " + b);
    }
}
