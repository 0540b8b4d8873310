package org.lifeline.report;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.SupportReaction;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Support;

/**
 * Draws up the calculation report of a design: inputs, assumptions, installed state, every arrest with its accounts and its
 * calculation line by line, what was not considered, what the documents of a plan need, cautions.
 *
 * <p>Immutable and thread-safe; each {@code with…} method returns a new one.
 */
public final class CalculationReport {
    private final LifelineDesign design;
    private final List<ArrestResult> arrests;
    private final UnitChoice units;
    private final Provenance provenance;
    private final List<Picture> pictures;
    private final boolean steps;

    private CalculationReport(
            LifelineDesign design, List<ArrestResult> arrests, UnitChoice units, Provenance provenance, Extras extras) {
        this.design = design;
        this.arrests = arrests;
        this.units = units;
        this.provenance = provenance;
        this.pictures = extras.pictures();
        this.steps = extras.steps();
    }

    /** What can be added or left out. */
    private record Extras(List<Picture> pictures, boolean steps) {}

    /**
     * The report of a design and its arrests, in both systems of units.
     *
     * @param design the design
     * @param arrests its arrests
     * @return the report
     * @throws IllegalArgumentException if an arrest is one of a line with other supports
     */
    public static CalculationReport of(LifelineDesign design, List<ArrestResult> arrests) {
        List<String> ids = design.line().supports().stream().map(Support::id).toList();
        for (int i = 0; i < arrests.size(); i++) {
            List<String> other =
                    arrests.get(i).supports().stream().map(SupportReaction::id).toList();
            if (!other.equals(ids)) {
                throw new IllegalArgumentException("arrests[" + i + "]: " + other.size()
                        + " supports: must be an arrest of the design's line, which has " + ids.size()
                        + " supports with their names in the same order");
            }
        }
        return new CalculationReport(
                design, List.copyOf(arrests), UnitChoice.BOTH, Provenance.of(""), new Extras(List.of(), true));
    }

    /**
     * The same in other units.
     *
     * @param value the units
     * @return the new report
     */
    public CalculationReport withUnits(UnitChoice value) {
        return new CalculationReport(design, arrests, value, provenance, new Extras(pictures, steps));
    }

    /**
     * The same with a statement of what it was made from.
     *
     * @param value program, hash, date, name
     * @return the new report
     */
    public CalculationReport withProvenance(Provenance value) {
        return new CalculationReport(design, arrests, units, value, new Extras(pictures, steps));
    }

    /**
     * The same with further pictures, such as an envelope or histories, in a section of their own.
     *
     * @param value the pictures
     * @return the new report
     */
    public CalculationReport withPictures(List<Picture> value) {
        return new CalculationReport(design, arrests, units, provenance, new Extras(List.copyOf(value), steps));
    }

    /**
     * The same with or without the calculation line by line.
     *
     * @param value true to show it, as is the default
     * @return the new report
     */
    public CalculationReport withSteps(boolean value) {
        return new CalculationReport(design, arrests, units, provenance, new Extras(pictures, value));
    }

    /**
     * Draws up the report.
     *
     * @return the report, to be written by {@link TextReport} or {@link HtmlReport}
     */
    public ReportDocument build() {
        Quantities q = Quantities.in(units);
        LineEquilibrium installed = Statics.withDefaults().solve(design.line(), List.of());
        List<ReportSection> sections = new ArrayList<>();
        sections.add(new SummarySection(design, arrests, q).section());
        sections.addAll(new InputSections(design, q).sections());
        sections.add(RemarkSections.assumptions(design, arrests, q));
        sections.add(RemarkSections.modelFactors(design));
        sections.add(new LineSections(q).installed(installed));
        for (int i = 0; i < arrests.size(); i++) {
            sections.addAll(new ArrestSections(design, q, steps).sections(i + 1, arrests.get(i)));
        }
        if (!pictures.isEmpty()) {
            sections.add(new ReportSection(
                    "Pictures",
                    1,
                    pictures.stream()
                            .map(p -> (ReportBlock) new ReportBlock.Figure(p))
                            .toList()));
        }
        sections.add(RemarkSections.iterations(installed, arrests));
        sections.add(RemarkSections.notConsidered(design, arrests));
        sections.add(new DocumentSection(design, arrests, installed, q).section());
        sections.add(RemarkSections.cautions());
        return new ReportDocument("Calculation report: " + InertText.name(design.title()), identity(), sections);
    }

    private List<String> identity() {
        List<String> lines = new ArrayList<>();
        if (!provenance.program().isBlank()) {
            lines.add("Computed with " + InertText.name(provenance.program()));
        }
        if (!provenance.designHash().isBlank()) {
            lines.add("Design file SHA-256: " + InertText.name(provenance.designHash()));
        }
        if (!provenance.date().isBlank()) {
            lines.add("Date: " + InertText.name(provenance.date()));
        }
        lines.add("Prepared by: "
                + (provenance.preparedBy().isBlank() ? "________________" : InertText.name(provenance.preparedBy()))
                + "    Checked by: ________________");
        lines.add(
                switch (units) {
                    case SI -> "Units: SI";
                    case US_CUSTOMARY -> "Units: US customary";
                    case BOTH -> "Units: SI, US customary in parentheses; the calculation is drawn up in SI";
                });
        return lines;
    }
}
