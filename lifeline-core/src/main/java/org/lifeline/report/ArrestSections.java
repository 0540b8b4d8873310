package org.lifeline.report;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.Clearance;
import org.lifeline.analysis.ClearanceRow;
import org.lifeline.analysis.EnergyAccount;
import org.lifeline.analysis.InlineAbsorberState;
import org.lifeline.analysis.SupportReaction;
import org.lifeline.base.UnitSystem;
import org.lifeline.model.DeploymentForce;
import org.lifeline.model.LifelineDesign;

/** Writes down an arrest: results, pictures, accounts, supports, calculation. */
final class ArrestSections {
    private final LifelineDesign design;
    private final Quantities q;
    private final boolean steps;

    ArrestSections(LifelineDesign design, Quantities q, boolean steps) {
        this.design = design;
        this.q = q;
        this.steps = steps;
    }

    static String side(ArrestResult r) {
        return r.side() == DeploymentForce.CLEARANCE ? "clearance deployment force" : "maximum deployment force";
    }

    static String name(ArrestResult r, Quantities q) {
        return InertText.name(r.fall().id()) + ", " + q.input(Measure.TEMPERATURE, r.temperature()) + ", " + side(r);
    }

    List<ReportSection> sections(int number, ArrestResult r) {
        List<ReportSection> list = new ArrayList<>();
        list.add(new ReportSection("Arrest " + number + ": " + name(r, q), 1, results(r)));
        List<ReportBlock> pictures = new ArrayList<>();
        pictures.add(new ReportBlock.Figure(
                ElevationPicture.draw(r, design.clearance().obstructions(), q.choice())));
        if (PlanPicture.turns(r.line())) {
            pictures.add(new ReportBlock.Figure(PlanPicture.draw(r, q.choice())));
        }
        pictures.add(new ReportBlock.Figure(DescentPicture.draw(r, q.choice())));
        list.add(new ReportSection("Arrest " + number + ": pictures", 2, pictures));
        list.add(new ReportSection("Arrest " + number + ": energy account", 2, energy(r)));
        list.add(new ReportSection("Arrest " + number + ": clearance account", 2, clearance(r)));
        list.add(new ReportSection("Arrest " + number + ": line and supports at the lowest point", 2, line(r)));
        if (steps) {
            list.add(new ReportSection("Arrest " + number + ": calculation", 2, calculation(r)));
        }
        return list;
    }

    private List<ReportBlock> results(ArrestResult r) {
        boolean scaled =
                design.modelFactors().force() != 1 || design.modelFactors().distance() != 1;
        TableBuilder t =
                new TableBuilder("Results").text("Quantity").text("Symbol").number("Computed");
        if (scaled) {
            t.number("Times model factor");
        }
        double f = design.modelFactors().force();
        double d = design.modelFactors().distance();
        add(t, "Free fall", "h", Measure.LENGTH, new double[] {r.freeFall(), 1});
        add(t, "Deployment of the connecting subsystem", "x", Measure.LENGTH, new double[] {r.deployment(), d});
        add(t, "Descent of the attachment", "δ", Measure.LENGTH, new double[] {r.lineDescent(), d});
        add(t, "Total fall distance", "", Measure.LENGTH, new double[] {r.totalFallDistance(), d});
        add(t, "Maximum arrest force on one worker (MAF)", "F", Measure.FORCE, new double[] {r.arrestForce(), f});
        add(t, "Load on the line", "P", Measure.FORCE, new double[] {r.lineLoad(), f});
        add(t, "Sag at the load, below the chord", "f", Measure.LENGTH, new double[] {r.sag(), d});
        add(t, "Distance of the load from the span's first support", "a", Measure.LENGTH, new double[] {r.loadX(), 1});
        add(t, "Largest tension in the cable", "", Measure.FORCE, new double[] {r.maximumTension(), f});
        add(t, "Largest load at an end anchor (MAL)", "", Measure.FORCE, new double[] {r.endAnchorLoad(), f});
        List<ReportBlock> blocks = new ArrayList<>(List.of(t.build()));
        if (r.bottomedOut()) {
            blocks.add(new ReportBlock.Paragraph(
                    "ATTENTION: the connecting subsystem bottoms out: it is used up and the force"
                            + " is set by its stop."));
        }
        return blocks;
    }

    private void add(TableBuilder t, String name, String symbol, Measure m, double[] valueAndFactor) {
        List<String> cells = new ArrayList<>(List.of(name, symbol, q.result(m, valueAndFactor[0])));
        if (design.modelFactors().force() != 1 || design.modelFactors().distance() != 1) {
            cells.add(valueAndFactor[1] == 1 ? "" : q.result(m, valueAndFactor[0] * valueAndFactor[1]));
        }
        t.row(cells);
    }

    private List<ReportBlock> energy(ArrestResult r) {
        EnergyAccount e = r.energy();
        List<String> names = new ArrayList<>();
        List<Double> parts = new ArrayList<>();
        put(names, parts, "Strain of the cable and height of its weight", e.cable());
        if (e.hanging() != 0) {
            put(names, parts, "Lifting those who hang already", e.hanging());
        }
        if (e.friction() != 0) {
            put(names, parts, "Heat of friction at the anchors", e.friction());
        }
        if (!r.inlineAbsorbers().isEmpty()) {
            put(names, parts, "In-line energy absorbers", e.inlineAbsorbers());
        }
        if (e.anchors() != 0) {
            put(names, parts, "Elastic anchors", e.anchors());
        }
        put(names, parts, "Connecting subsystem", e.connection());
        // What is left over by rounding in the iteration is a row of its own, so that the sum is the energy of the
        // fall.
        put(names, parts, "Left over", e.residual());
        TableBuilder t = new TableBuilder("Where the energy of the fall went").text("Item");
        List<Account> accounts = new ArrayList<>();
        for (UnitSystem s : q.choice().systems()) {
            t.number(Measure.ENERGY.unit(s));
            accounts.add(Account.sum(parts, Measure.ENERGY, s));
        }
        for (int i = 0; i < names.size(); i++) {
            List<String> cells = new ArrayList<>(List.of(names.get(i)));
            for (Account a : accounts) {
                cells.add(Measure.show(a.rows().get(i)));
            }
            t.row(cells);
        }
        List<String> cells = new ArrayList<>(List.of("Set free by the fall"));
        accounts.forEach(a -> cells.add(Measure.show(a.totals().get(0))));
        t.total(cells.toArray(new String[0]));
        List<ReportBlock> blocks = new ArrayList<>(List.of(t.build()));
        note(blocks, accounts);
        if (!Double.isNaN(r.pathWork()) && r.energy().friction() != 0) {
            blocks.add(new ReportBlock.Paragraph("A second way: the work of the load along its path, ∫P dδ, is "
                    + q.result(Measure.ENERGY, r.pathWork()) + "; what the line took by the table is "
                    + q.result(Measure.ENERGY, e.lineWork()) + "."));
        }
        return blocks;
    }

    private static void put(List<String> names, List<Double> parts, String name, double value) {
        names.add(name);
        parts.add(value);
    }

    private static void note(List<ReportBlock> blocks, List<Account> accounts) {
        if (accounts.stream().anyMatch(a -> !a.isExact())) {
            blocks.add(new ReportBlock.Paragraph(
                    "Totals are the sums of the printed rows; their last digit may differ from the"
                            + " unrounded result by one or two."));
        }
    }

    private List<ReportBlock> clearance(ArrestResult r) {
        Clearance c = r.clearance();
        List<Double> values = new ArrayList<>();
        List<ClearanceRow> rows = c.rows();
        rows.subList(1, rows.size()).forEach(x -> values.add(x.value()));
        TableBuilder t =
                new TableBuilder("From the line down: each elevation is the one above it less the step").text("Step");
        List<Account> accounts = new ArrayList<>();
        for (UnitSystem s : q.choice().systems()) {
            String unit = Measure.LENGTH.unit(s);
            t.number("Step [" + unit + "]").number("Elevation [" + unit + "]");
            accounts.add(Account.down(c.lineElevation(), values, Measure.LENGTH, s));
        }
        t.text("Source");
        for (int i = 0; i < rows.size(); i++) {
            List<String> cells = new ArrayList<>(List.of(rows.get(i).item()));
            for (Account a : accounts) {
                cells.add(i == 0 ? "" : Measure.show(a.rows().get(i - 1)));
                cells.add(Measure.show(a.totals().get(i)));
            }
            cells.add(rows.get(i).source());
            if (i == rows.size() - 1) {
                t.total(cells.toArray(new String[0]));
            } else {
                t.row(cells);
            }
        }
        List<ReportBlock> blocks = new ArrayList<>(List.of(t.build()));
        note(blocks, accounts);
        TableBuilder s = new TableBuilder("Clearance").text("Quantity").number("Value");
        s.row("Lowest point of the worker, elevation", q.result(Measure.LENGTH, c.lowestPoint()));
        s.row(
                "Required below the line at the station before the fall",
                q.result(Measure.LENGTH, c.requiredBelowLine()));
        s.row("Required below the walking level", q.result(Measure.LENGTH, c.requiredBelowWalkingLevel()));
        if (c.margin().isPresent()) {
            double m = c.margin().getAsDouble();
            s.row(
                    "Top of the highest obstruction below, elevation",
                    q.result(Measure.LENGTH, c.obstruction().orElseThrow()));
            s.total(
                    m >= 0 ? "Left over beyond the margin" : "LACKING, the margin included",
                    q.result(Measure.LENGTH, Math.abs(m)));
        } else {
            s.row("Obstruction below", "none stated");
        }
        blocks.add(s.build());
        return blocks;
    }

    private List<ReportBlock> line(ArrestResult r) {
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(new LineSections(q).spans("Spans at the lowest point", r.peak()));
        TableBuilder t = new TableBuilder("Force of the line on its supports (x, y, z; up positive)")
                .text("Support")
                .number("Force")
                .number("x")
                .number("y")
                .number("z")
                .number("Below the horizontal")
                .number("Displacement")
                .number("Cable passed toward the fall")
                .number("Stated strength over force");
        for (int i = 0; i < r.supports().size(); i++) {
            SupportReaction s = r.supports().get(i);
            OptionalDouble capacity = r.line().supports().get(i).capacity();
            t.row(
                    InertText.name(s.id()),
                    q.result(Measure.FORCE, s.force()),
                    q.result(Measure.FORCE, s.vector().x()),
                    q.result(Measure.FORCE, s.vector().y()),
                    q.result(Measure.FORCE, s.vector().z()),
                    q.result(Measure.ANGLE, s.angleBelowHorizontal()),
                    q.result(Measure.SMALL_LENGTH, s.displacement().magnitude()),
                    q.result(Measure.SMALL_LENGTH, r.slip(i)),
                    capacity.isPresent() ? q.result(Measure.RATIO, capacity.getAsDouble() / s.force()) : "not stated");
        }
        blocks.add(t.build());
        if (!r.inlineAbsorbers().isEmpty()) {
            TableBuilder a = new TableBuilder("In-line energy absorbers at the lowest point")
                    .text("At")
                    .number("Extension")
                    .number("Left");
            for (InlineAbsorberState s : r.inlineAbsorbers()) {
                a.row(
                        InertText.name(s.supportId()),
                        q.result(Measure.LENGTH, s.extension()),
                        s.bottomedOut() ? "nothing: bottomed out" : q.result(Measure.LENGTH, s.remaining()));
            }
            blocks.add(a.build());
        }
        r.line().cable().breakingStrength().ifPresent(b -> {
            double strength = b * r.line().cable().terminationEfficiency();
            BigDecimal ratio = new BigDecimal(strength / r.maximumTension());
            blocks.add(new ReportBlock.Paragraph("Minimum breaking strength of the cable with its terminations over its"
                    + " largest tension: " + q.result(Measure.FORCE, strength) + " / "
                    + q.result(Measure.FORCE, r.maximumTension()) + " = "
                    + Measure.RATIO.number(ratio.doubleValue(), UnitSystem.SI) + "."));
        });
        return blocks;
    }

    private List<ReportBlock> calculation(ArrestResult r) {
        return List.of(
                new ReportBlock.Paragraph(
                        "Every line can be worked out from its printed numbers. Numbers carry as many digits as"
                                + " that takes, more than the result deserves. Indices: the span, then the piece of cable in it; i as"
                                + " installed, b before the fall, none at the lowest point. An end tension or extension without a"
                                + " formula is a solution of the equations; the lines that say \"must be\" check it."),
                new ReportBlock.Calculation(r.explainIn(q.choice().leading())));
    }
}
