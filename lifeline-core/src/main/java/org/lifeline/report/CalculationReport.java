package org.lifeline.report;

import java.util.List;
import java.util.function.Consumer;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.TransientResult;
import org.lifeline.base.Violations;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.handover.HandoverResult;
import org.lifeline.model.LifelineDesign;
import org.lifeline.report.document.Paper;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.ProjectData;
import org.lifeline.report.document.Provenance;
import org.lifeline.report.document.ReportDetail;
import org.lifeline.report.document.ReportDocument;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.report.section.GoverningArrests;
import org.lifeline.report.section.IndependentCheckSection;

/**
 * Draws up the calculation report of a design: what governs, criteria, warnings, inputs, assumptions, installed state,
 * every arrest with its accounts and its calculation line by line, the independent check, what was not considered, what
 * the documents of a plan need, cautions; where they were computed also the envelope along the line and arrests in time.
 *
 * <p>Immutable and thread-safe; each {@code with…} method returns a new one.
 *
 * @since 1.0.0
 */
public final class CalculationReport {
    private final LifelineDesign design;
    private final List<ArrestResult> arrests;
    private final ReportOptions options;

    private CalculationReport(LifelineDesign design, List<ArrestResult> arrests, ReportOptions options) {
        this.design = design;
        this.arrests = arrests;
        this.options = options;
    }

    /**
     * The report of a design and its arrests, in both systems of units, with pictures and calculation of the arrests that
     * govern.
     *
     * @param design the design
     * @param arrests its arrests
     * @return the report
     * @throws IllegalArgumentException if an arrest is one of a line with other supports
     */
    public static CalculationReport of(LifelineDesign design, List<ArrestResult> arrests) {
        for (int i = 0; i < arrests.size(); i++) {
            SameSupports.ofArrest("arrests[" + i + "]", design, arrests.get(i));
        }
        return new CalculationReport(design, List.copyOf(arrests), new ReportOptions());
    }

    private CalculationReport with(Consumer<ReportOptions> change) {
        return new CalculationReport(design, arrests, options.with(change));
    }

    /**
     * The same in other units.
     *
     * @param value the units
     * @return the new report
     */
    public CalculationReport withUnits(UnitChoice value) {
        Violations.required("units", value);
        return with(o -> o.units = value);
    }

    /**
     * The same with a statement of what it was made from.
     *
     * @param value program, hash, date, name
     * @return the new report
     */
    public CalculationReport withProvenance(Provenance value) {
        Violations.required("provenance", value);
        return with(o -> o.provenance = value);
    }

    /**
     * The same with a project block on its first page, document number and revision on every page.
     *
     * @param value the project
     * @return the new report
     */
    public CalculationReport withProject(ProjectData value) {
        Violations.required("project", value);
        return with(o -> o.project = value);
    }

    /**
     * The same on other paper.
     *
     * @param value the paper; {@link Paper#A4} by default
     * @return the new report
     */
    public CalculationReport withPaper(Paper value) {
        Violations.required("paper", value);
        return with(o -> o.paper = value);
    }

    /**
     * The same with more or less of each arrest.
     *
     * @param value how much to show; {@link ReportDetail#GOVERNING} by default
     * @return the new report
     */
    public CalculationReport withDetail(ReportDetail value) {
        Violations.required("detail", value);
        return with(o -> o.detail = value);
    }

    /**
     * The same with further pictures in a section of their own.
     *
     * @param value the pictures
     * @return the new report
     */
    public CalculationReport withPictures(List<Picture> value) {
        Violations.required("pictures", value);
        return with(o -> o.pictures = List.copyOf(value));
    }

    /**
     * The same with sections of the caller's own before the inputs, such as the input as somebody wrote it. The report
     * then leaves out its own tables of supports, workers and falls, unless it is a full one.
     *
     * @param value the sections
     * @return the new report
     */
    public CalculationReport withInputSections(List<ReportSection> value) {
        Violations.required("inputSections", value);
        return with(o -> o.inputs = List.copyOf(value));
    }

    /**
     * The same with further assumptions, such as values that were taken because none was stated.
     *
     * @param value the assumptions, each a sentence
     * @return the new report
     */
    public CalculationReport withAssumptions(List<String> value) {
        Violations.required("assumptions", value);
        return with(o -> o.assumptions = List.copyOf(value));
    }

    /**
     * The same with what came out for criteria.
     *
     * @param value the results; an empty list is reported as such
     * @return the new report
     */
    public CalculationReport withCriteria(List<CriterionResult> value) {
        Violations.required("criteria", value);
        return with(o -> o.criteria = List.copyOf(value));
    }

    /**
     * The same with the envelope along the line.
     *
     * @param value the envelope, of the same design
     * @return the new report
     * @throws IllegalArgumentException if the envelope is one of a line with other supports
     */
    public CalculationReport withEnvelope(EnvelopeResult value) {
        Violations.required("envelope", value);
        SameSupports.require("envelope", "an envelope", design, SameSupports.names(value.design()));
        return with(o -> o.envelope = value);
    }

    /**
     * The same with arrests in time.
     *
     * @param value the results of the transient analysis
     * @return the new report
     * @throws IllegalArgumentException if one is an arrest of a line with other supports
     */
    public CalculationReport withMotions(List<TransientResult> value) {
        Violations.required("motions", value);
        for (int i = 0; i < value.size(); i++) {
            SameSupports.ofArrest("motions[" + i + "]", design, value.get(i).arrest());
        }
        return with(o -> o.motions = List.copyOf(value));
    }

    /**
     * The same with an independent check of its arrests that was made already; otherwise the report makes it.
     *
     * @param value the check, of the arrests of this report in their order
     * @return the new report
     */
    public CalculationReport withCheck(IndependentCheckSection value) {
        Violations.required("check", value);
        return with(o -> o.check = value);
    }

    /**
     * The same with the assessment of the whole line: summary, criteria, warnings and the documents of the plan are then those
     * of the assessment, and the stated falls stand beside it. Its envelope is shown unless another one is given.
     *
     * @param value the assessment, of the same design
     * @return the new report
     * @throws IllegalArgumentException if the assessment is one of a line with other supports
     */
    public CalculationReport withAssessment(AssessmentResult value) {
        Violations.required("assessment", value);
        SameSupports.require("assessment", "an assessment", design, SameSupports.names(value.design()));
        return with(o -> o.assessment = value);
    }

    /**
     * The same with the parts that the design hands over.
     *
     * @param value the parts
     * @return the new report
     * @throws IllegalArgumentException if they are of another line
     */
    public CalculationReport withHandover(HandoverResult value) {
        Violations.required("handover", value);
        SameSupports.require(
                "handover",
                "a handover",
                design,
                SameSupports.names(value.assessment().design()));
        return with(o -> o.handover = value);
    }

    /**
     * The numbers of the arrests that govern, as the report counts them: those with the largest loads and distances and
     * the least clearance.
     *
     * @return numbers from 1, rising; unmodifiable
     */
    public List<Integer> governing() {
        return new GoverningArrests(design, arrests).numbers();
    }

    /**
     * The numbers of the arrests that govern the end anchor load and the clearance: those that are calculated line by line,
     * and worth following in time.
     *
     * @return numbers from 1, rising; unmodifiable
     */
    public List<Integer> calculated() {
        return new GoverningArrests(design, arrests).calculated();
    }

    /**
     * Draws up the report.
     *
     * @return the report, to be written by {@link TextReport} or {@link HtmlReport}
     * @throws java.util.concurrent.CancellationException if the thread is interrupted; its interrupt flag stays set
     */
    public ReportDocument build() {
        return new ReportAssembly(design, arrests, options).report();
    }

    /**
     * The data sheet alone, with the identity of the report.
     *
     * @return the document
     * @throws IllegalStateException if no parts were handed over
     */
    public ReportDocument buildDataSheet() {
        HandoverResult handover = options.handover;
        if (handover == null) {
            throw new IllegalStateException("a data sheet needs withHandover");
        }
        return new ReportAssembly(design, arrests, options).dataSheet(handover);
    }
}
