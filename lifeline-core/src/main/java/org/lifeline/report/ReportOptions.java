package org.lifeline.report;

import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.TransientResult;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.handover.HandoverResult;
import org.lifeline.report.document.Paper;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.ProjectData;
import org.lifeline.report.document.Provenance;
import org.lifeline.report.document.ReportDetail;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.report.section.IndependentCheckSection;

/** What can be chosen, added or left out of a calculation report. Never changed once a report holds it. */
final class ReportOptions {
    UnitChoice units = UnitChoice.BOTH;
    Provenance provenance = Provenance.of("");
    ProjectData project = ProjectData.none();
    Paper paper = Paper.A4;
    ReportDetail detail = ReportDetail.GOVERNING;
    List<Picture> pictures = List.of();
    List<ReportSection> inputs = List.of();
    List<String> assumptions = List.of();

    @Nullable
    List<CriterionResult> criteria;

    @Nullable
    EnvelopeResult envelope;

    List<TransientResult> motions = List.of();

    @Nullable
    AssessmentResult assessment;

    @Nullable
    HandoverResult handover;

    @Nullable
    IndependentCheckSection check;

    /** A copy with a change. */
    ReportOptions with(Consumer<ReportOptions> change) {
        ReportOptions o = new ReportOptions();
        o.units = units;
        o.provenance = provenance;
        o.project = project;
        o.paper = paper;
        o.detail = detail;
        o.pictures = pictures;
        o.inputs = inputs;
        o.assumptions = assumptions;
        o.criteria = criteria;
        o.envelope = envelope;
        o.motions = motions;
        o.assessment = assessment;
        o.handover = handover;
        o.check = check;
        change.accept(o);
        return o;
    }

    /** The envelope that was given, else that of the assessment. */
    @Nullable
    EnvelopeResult envelope() {
        return envelope != null || assessment == null ? envelope : assessment.envelope();
    }
}
