package org.lifeline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.model.LifelineDesign;

/** The governing values over all arrests, each with the arrest that governs it. */
final class SummarySection {
    private final LifelineDesign design;
    private final List<ArrestResult> arrests;
    private final Quantities q;

    SummarySection(LifelineDesign design, List<ArrestResult> arrests, Quantities q) {
        this.design = design;
        this.arrests = arrests;
        this.q = q;
    }

    ReportSection section() {
        List<ReportBlock> blocks = new ArrayList<>();
        if (arrests.isEmpty()) {
            blocks.add(new ReportBlock.Paragraph("No fall was analysed."));
            return new ReportSection("Summary", 1, blocks);
        }
        boolean scaled =
                design.modelFactors().force() != 1 || design.modelFactors().distance() != 1;
        TableBuilder t = new TableBuilder("Largest values over " + arrests.size()
                        + (arrests.size() == 1 ? " arrest" : " arrests") + " and the arrest that governs each")
                .text("Quantity")
                .number("Computed");
        if (scaled) {
            t.number("Times model factor");
        }
        t.text("Governed by");
        double f = design.modelFactors().force();
        double d = design.modelFactors().distance();
        add(t, "Maximum arrest force on a worker (MAF)", Measure.FORCE, f, ArrestResult::arrestForce);
        add(t, "Maximum arrest load at an end anchor (MAL)", Measure.FORCE, f, ArrestResult::endAnchorLoad);
        add(t, "Largest tension in the cable", Measure.FORCE, f, ArrestResult::maximumTension);
        add(t, "Largest load on any anchor", Measure.FORCE, f, SummarySection::anchorLoad);
        add(t, "Largest sag at the load", Measure.LENGTH, d, ArrestResult::sag);
        add(t, "Largest descent of the attachment", Measure.LENGTH, d, ArrestResult::lineDescent);
        add(t, "Largest deployment (deceleration distance)", Measure.LENGTH, d, ArrestResult::deployment);
        add(t, "Largest free fall", Measure.LENGTH, 1, ArrestResult::freeFall);
        add(t, "Largest total fall distance", Measure.LENGTH, d, ArrestResult::totalFallDistance);
        add(
                t,
                "Largest clearance required below the line",
                Measure.LENGTH,
                d,
                r -> r.clearance().requiredBelowLine());
        List<ArrestResult> above =
                arrests.stream().filter(r -> r.clearance().margin().isPresent()).toList();
        if (!above.isEmpty()) {
            ArrestResult least = above.get(0);
            for (ArrestResult r : above) {
                if (margin(r) < margin(least)) {
                    least = r;
                }
            }
            row(t, "Least clearance left above an obstruction", Measure.LENGTH, new double[] {margin(least), 1}, least);
        }
        blocks.add(t.build());
        blocks.add(new ReportBlock.Paragraph(
                "Loads are governed by the maximum deployment force, distances by the clearance"
                        + " deployment force; this table takes the larger of the arrests that were computed. It judges nothing: "
                        + "whether a value is acceptable is for a qualified person to decide."));
        long bottomed = arrests.stream().filter(ArrestResult::bottomedOut).count();
        if (bottomed > 0) {
            blocks.add(
                    new ReportBlock.Paragraph(
                            "ATTENTION: in " + bottomed + " of " + arrests.size()
                                    + " arrests the connecting subsystem bottoms out: it is used up and the force is set by its stop."));
        }
        return new ReportSection("Summary", 1, blocks);
    }

    private static double margin(ArrestResult r) {
        return r.clearance().margin().orElse(Double.POSITIVE_INFINITY);
    }

    private static double anchorLoad(ArrestResult r) {
        return r.supports().stream().mapToDouble(s -> s.force()).max().orElse(0);
    }

    private void add(TableBuilder t, String name, Measure m, double factor, ToDoubleFunction<ArrestResult> value) {
        ArrestResult most = arrests.get(0);
        for (ArrestResult r : arrests) {
            if (value.applyAsDouble(r) > value.applyAsDouble(most)) {
                most = r;
            }
        }
        row(t, name, m, new double[] {value.applyAsDouble(most), factor}, most);
    }

    private void row(TableBuilder t, String name, Measure m, double[] valueAndFactor, ArrestResult by) {
        double value = valueAndFactor[0];
        double factor = valueAndFactor[1];
        List<String> cells = new ArrayList<>(List.of(name, q.result(m, value)));
        if (design.modelFactors().force() != 1 || design.modelFactors().distance() != 1) {
            cells.add(factor == 1 ? "" : q.result(m, factor * value));
        }
        cells.add((arrests.indexOf(by) + 1) + ": " + ArrestSections.name(by, q));
        t.row(cells);
    }
}
