package org.lifeline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.base.InertText;
import org.lifeline.design.assessment.AssessedCriterion;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.handover.HandoverResult;
import org.lifeline.model.LifelineDesign;
import org.lifeline.report.appendix.TheoryAppendix;
import org.lifeline.report.document.PageMarks;
import org.lifeline.report.document.ProjectData;
import org.lifeline.report.document.Provenance;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportDetail;
import org.lifeline.report.document.ReportDocument;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.handover.DataSheetSection;
import org.lifeline.report.handover.HandoverSections;
import org.lifeline.report.picture.SystemPicture;
import org.lifeline.report.section.ArrestSections;
import org.lifeline.report.section.ArrestTables;
import org.lifeline.report.section.AssessmentSection;
import org.lifeline.report.section.CriteriaSection;
import org.lifeline.report.section.EnvelopeSections;
import org.lifeline.report.section.GlossarySection;
import org.lifeline.report.section.GoverningArrests;
import org.lifeline.report.section.IndependentCheckSection;
import org.lifeline.report.section.InputSections;
import org.lifeline.report.section.LineSections;
import org.lifeline.report.section.MotionSections;
import org.lifeline.report.section.PlanDocumentsSection;
import org.lifeline.report.section.ProjectSection;
import org.lifeline.report.section.RemarkSections;
import org.lifeline.report.section.SummarySection;
import org.lifeline.report.section.WarningSection;

/** Orders the sections of a calculation report by what was asked for. */
final class ReportAssembly {
    private final LifelineDesign design;
    private final List<ArrestResult> arrests;
    private final ReportOptions options;

    ReportAssembly(LifelineDesign design, List<ArrestResult> arrests, ReportOptions options) {
        this.design = design;
        this.arrests = arrests;
        this.options = options;
    }

    /** The whole report. */
    ReportDocument report() {
        Quantities q = Quantities.in(options.units);
        LineEquilibrium installed = Statics.withDefaults().solve(design.line(), List.of());
        GoverningArrests governing = new GoverningArrests(design, arrests);
        IndependentCheckSection check = options.check == null ? IndependentCheckSection.of(arrests) : options.check;
        List<ReportSection> sections = new ArrayList<>();
        front(governing, check, installed, sections);
        inputs(q, sections);
        results(governing, installed, sections);
        boolean extended = options.detail != ReportDetail.SHORT;
        calculations(governing, sections);
        sections.add(check.section(options.detail == ReportDetail.FULL, installed, arrests));
        Optional<HandoverResult> handover = Optional.ofNullable(options.handover);
        AssessmentResult assessment = options.assessment;
        sections.add(RemarkSections.notConsidered(
                design,
                arrests,
                !options.motions.isEmpty(),
                HandoverSections.pullsAside(handover),
                Optional.ofNullable(assessment)));
        sections.add(new PlanDocumentsSection(design, arrests, installed, q)
                .section(Optional.ofNullable(assessment).map(a -> new AssessmentSection(a, q))));
        handover.ifPresent(h -> {
            sections.addAll(new HandoverSections(h, q).sections());
            sections.add(new DataSheetSection(h.dataSheet(), q).section());
        });
        if (extended) {
            sections.add(RemarkSections.formulas());
            sections.add(TheoryAppendix.section(!options.motions.isEmpty() || assessment != null));
            sections.add(GlossarySection.section(q));
        }
        sections.add(RemarkSections.cautions());
        return new ReportDocument(
                "Calculation report: " + InertText.name(design.title()), identity(), sections, marks());
    }

    /** The data sheet alone, with the identity of the report. */
    ReportDocument dataSheet(HandoverResult handover) {
        Quantities q = Quantities.in(options.units);
        List<ReportSection> sections = new ArrayList<>();
        if (!options.project.isEmpty()) {
            sections.add(ProjectSection.of(options.project));
        }
        sections.add(new DataSheetSection(handover.dataSheet(), q).section());
        return new ReportDocument("Data sheet: " + InertText.name(design.title()), identity(), sections, marks());
    }

    /** The first page: what it belongs to, the system, what governs, criteria, warnings. */
    private void front(
            GoverningArrests governing,
            IndependentCheckSection check,
            LineEquilibrium installed,
            List<ReportSection> sections) {
        Quantities q = Quantities.in(options.units);
        if (!options.project.isEmpty()) {
            sections.add(ProjectSection.of(options.project));
        }
        sections.add(new ReportSection(
                "System", 1, List.of(new ReportBlock.Figure(SystemPicture.draw(design, installed, options.units)))));
        AssessmentResult assessment = options.assessment;
        List<CriterionResult> criteria = options.criteria;
        if (assessment != null) {
            AssessmentSection worst = new AssessmentSection(assessment, q);
            sections.add(worst.summary());
            sections.add(new CriteriaSection(governing, q)
                    .section(assessment.criteria().stream()
                            .map(AssessedCriterion::result)
                            .toList()));
            sections.add(worst.warnings(check));
            worst.incidents().ifPresent(sections::add);
            sections.add(new SummarySection(governing, q).section(options.detail, "Stated falls"));
            return;
        }
        sections.add(aloneSaid(new SummarySection(governing, q).section(options.detail, "Summary")));
        if (criteria != null) {
            sections.add(new CriteriaSection(governing, q).section(criteria));
        }
        sections.add(new WarningSection(governing, q)
                .section(check, options.motions, Optional.ofNullable(options.envelope)));
    }

    /** A summary without an assessment, with the words that it rests on these arrests alone. */
    private ReportSection aloneSaid(ReportSection summary) {
        if (arrests.isEmpty()) {
            return summary;
        }
        List<ReportBlock> blocks = new ArrayList<>(summary.blocks());
        // The values are a table; words before it are those on a model factor below 1, which are said first.
        int after = blocks.get(0) instanceof ReportBlock.Paragraph ? 1 : 0;
        blocks.add(
                after,
                new ReportBlock.Paragraph("About THESE ARRESTS ALONE, " + arrests.size()
                        + " of them: the whole line was not assessed. Values and criteria are those of these arrests; elsewhere on the"
                        + " line, and in time, there may be worse, and criteria that are met here may not be met."));
        return new ReportSection(summary.title(), summary.level(), blocks);
    }

    private void inputs(Quantities q, List<ReportSection> sections) {
        sections.addAll(options.inputs);
        boolean given = options.detail != ReportDetail.FULL && !options.inputs.isEmpty();
        sections.addAll(new InputSections(design, q).sections(given));
        sections.add(RemarkSections.assumptions(design, arrests, q, options.assumptions));
        sections.add(RemarkSections.modelFactors(design));
    }

    private void results(GoverningArrests governing, LineEquilibrium installed, List<ReportSection> sections) {
        Quantities q = Quantities.in(options.units);
        boolean extended = options.detail != ReportDetail.SHORT;
        EnvelopeResult envelope = options.envelope();
        if (envelope != null) {
            // What the assessment has said at the front is not said again, but in a full report.
            Optional<AssessmentResult> said = Optional.ofNullable(options.assessment);
            EnvelopeSections along = new EnvelopeSections(envelope, q).beside(said);
            boolean full = options.detail == ReportDetail.FULL;
            List<CriterionResult> again =
                    said.isPresent() && !full ? List.of() : Objects.requireNonNullElse(options.criteria, List.of());
            sections.add((full ? along.inFull() : along).section(governing, again, extended));
        }
        sections.add(new ArrestTables(arrests, q).section());
        ArrestSections writer =
                new ArrestSections(design, q).withInstalled(installed).withPictures(true);
        for (int number : governing.shown(options.detail)) {
            sections.addAll(writer.sections(number, arrests.get(number - 1)));
        }
        for (int i = 0; i < options.motions.size(); i++) {
            boolean pictures = options.detail == ReportDetail.FULL || (extended && i == 0);
            sections.addAll(new MotionSections(q).sections(options.motions.get(i), pictures));
        }
        sections.add(new LineSections(q).installed(installed));
        if (!options.pictures.isEmpty()) {
            List<ReportBlock> blocks = new ArrayList<>();
            options.pictures.forEach(p -> blocks.add(new ReportBlock.Figure(p)));
            sections.add(new ReportSection("Pictures", 1, blocks));
        }
    }

    private void calculations(GoverningArrests governing, List<ReportSection> sections) {
        Quantities q = Quantities.in(options.units);
        for (int number : governing.lineByLine(options.detail)) {
            sections.add(new ArrestSections(design, q).calculation(number, arrests.get(number - 1)));
        }
    }

    private PageMarks marks() {
        return new PageMarks(
                options.paper,
                options.project.text(ProjectData.Item.DOCUMENT),
                options.project.text(ProjectData.Item.REVISION),
                options.provenance.program());
    }

    private List<String> identity() {
        Provenance p = options.provenance;
        List<String> lines = new ArrayList<>();
        if (!p.program().isBlank()) {
            lines.add("Computed with " + InertText.name(p.program()));
        }
        if (!p.designHash().isBlank()) {
            lines.add("Design file SHA-256: " + InertText.name(p.designHash()));
        }
        if (!p.date().isBlank()) {
            lines.add("Date: " + InertText.name(p.date()));
        }
        if (options.project.isEmpty()) {
            lines.add("Prepared by: " + (p.preparedBy().isBlank() ? "________________" : InertText.name(p.preparedBy()))
                    + "    Checked by: ________________");
        }
        lines.add(
                switch (options.units) {
                    case SI -> "Units: SI";
                    case US_CUSTOMARY -> "Units: US customary";
                    case BOTH -> "Units: SI, US customary in parentheses; the calculation is drawn up in SI";
                });
        return lines;
    }
}
