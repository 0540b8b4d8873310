package org.lifeline.report.section;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportDetail;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;

/**
 * What governs, and all arrests in one table.
 *
 * @since 1.0.0
 */
public final class SummarySection {
    private final GoverningArrests governing;
    private final Quantities q;

    /**
     * A section in the units of a report.
     *
     * @param governing the arrests and what governs them
     * @param q the units
     */
    public SummarySection(GoverningArrests governing, Quantities q) {
        this.governing = governing;
        this.q = q;
    }

    /**
     * Writes the section.
     *
     * @param detail how much the report shows of each arrest
     * @param title title of the section
     * @return the section
     */
    public ReportSection section(ReportDetail detail, String title) {
        List<ReportBlock> blocks = new ArrayList<>();
        List<ArrestResult> arrests = governing.arrests();
        if (arrests.isEmpty()) {
            blocks.add(new ReportBlock.Paragraph("No fall was analysed."));
            return new ReportSection(title, 1, blocks);
        }
        RemarkSections.factorsBelowOne(governing.design())
                .ifPresent(s -> blocks.add(new ReportBlock.Paragraph("ATTENTION: " + s)));
        blocks.add(worst());
        blocks.add(new ReportBlock.Paragraph(
                "Loads come from the maximum deployment force as a rule, distances from the clearance deployment force; this"
                        + " table takes the worst of these arrests. It judges nothing: whether a value is"
                        + " acceptable is for a qualified person to decide."));
        long bottomed = arrests.stream().filter(ArrestResult::bottomedOut).count();
        if (bottomed > 0) {
            blocks.add(
                    new ReportBlock.Paragraph(
                            "ATTENTION: in " + bottomed + " of " + arrests.size()
                                    + " arrests the connecting subsystem bottoms out: it is used up and the force is set by its stop."));
        }
        if (detail == ReportDetail.GOVERNING && governing.calculated().size() < arrests.size()) {
            blocks.add(new ReportBlock.Paragraph("Shown in full is what governs the end anchor load and the clearance, "
                    + CaseNames.list(governing.calculated()) + "; calculated line by line is "
                    + CaseNames.list(governing.lineByLine(detail)) + "; all arrests stand in tables."));
        }
        return new ReportSection(title, 1, blocks);
    }

    private ReportBlock worst() {
        int n = governing.arrests().size();
        TableBuilder t = new TableBuilder("Worst values over " + n + (n == 1 ? " arrest" : " arrests")
                        + " and the arrest that governs each")
                .text("Quantity")
                .number("Computed");
        if (governing.isScaled()) {
            t.number("With model factors");
        }
        t.number("Arrest");
        add(t, "Maximum arrest force on a worker (MAF)", Quantity.ARREST_FORCE);
        add(t, "Maximum arrest load at an end anchor (MAL)", Quantity.END_ANCHOR_LOAD);
        add(t, "Largest tension in the cable", Quantity.MAXIMUM_TENSION);
        List<String> supports = governing.supports();
        for (int i = 0; i < supports.size(); i++) {
            String name = "Largest load on " + supports.get(i);
            governing.onSupport(i).ifPresent(w -> row(t, name, QuantityKind.FORCE, w));
        }
        add(t, "Largest sag at the load", Quantity.SAG);
        add(t, "Largest descent of the attachment", Quantity.LINE_DESCENT);
        add(t, "Largest free fall distance", Quantity.FREE_FALL);
        add(t, "Largest deployment (deceleration distance)", Quantity.DEPLOYMENT);
        add(t, "Largest extension of an in-line absorber", Quantity.INLINE_EXTENSION);
        add(t, "Largest total fall distance", Quantity.TOTAL_FALL_DISTANCE);
        add(t, "Largest clearance required below the line", Quantity.REQUIRED_BELOW_LINE);
        add(t, "Largest clearance required below the walking level", Quantity.REQUIRED_BELOW_WALKING_LEVEL);
        governing
                .worst(Quantity.SWING_DISPLACEMENT)
                .filter(w -> w.computed() > ArrestSections.NOTABLE_SWING)
                .ifPresent(w -> {
                    row(t, "Largest horizontal displacement in a swing", QuantityKind.LENGTH, w);
                    add(t, "Largest drop in a swing", Quantity.SWING_DROP);
                });
        governing
                .worst(Quantity.CLEARANCE_MARGIN)
                .ifPresent(w -> row(
                        t,
                        w.factored() < 0
                                ? "Least clearance margin (negative: LACKING)"
                                : "Least clearance margin, above an obstruction",
                        QuantityKind.LENGTH,
                        w));
        return t.build();
    }

    private void add(TableBuilder t, String name, Quantity quantity) {
        QuantityKind m = quantity.isForce() ? QuantityKind.FORCE : QuantityKind.LENGTH;
        governing.worst(quantity).ifPresent(w -> row(t, name, m, w));
    }

    private void row(TableBuilder t, String name, QuantityKind m, GoverningArrests.Worst w) {
        List<String> cells = new ArrayList<>(List.of(name, q.result(m, w.computed())));
        if (governing.isScaled()) {
            cells.add(q.result(m, w.factored()));
        }
        cells.add(Integer.toString(w.number()));
        t.row(cells);
    }
}
