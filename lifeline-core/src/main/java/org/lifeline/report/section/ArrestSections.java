package org.lifeline.report.section;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.clearance.Clearance;
import org.lifeline.analysis.clearance.ClearanceRow;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.InertText;
import org.lifeline.base.UnitSystem;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.SwingFall;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Worker;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.PlaceText;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.RoundedAccount;
import org.lifeline.report.document.TableBuilder;

/**
 * Writes down an arrest: results, pictures, accounts, supports, calculation.
 *
 * @since 1.0.0
 */
public final class ArrestSections {
    /** Displacement below which no swing is stated [m]. */
    static final double NOTABLE_SWING = 1e-3;

    private final LifelineDesign design;
    private final Quantities q;
    private final boolean pictures;
    private final @Nullable LineEquilibrium installed;

    /**
     * Sections without pictures and calculation, in the units of a report.
     *
     * @param design the design
     * @param q the units
     */
    public ArrestSections(LifelineDesign design, Quantities q) {
        this(design, q, false, null);
    }

    private ArrestSections(LifelineDesign design, Quantities q, boolean pictures, @Nullable LineEquilibrium installed) {
        this.design = design;
        this.q = q;
        this.pictures = pictures;
        this.installed = installed;
    }

    /**
     * The same with or without pictures.
     *
     * @param value true to draw the arrest
     * @return the new writer
     */
    public ArrestSections withPictures(boolean value) {
        return new ArrestSections(design, q, value, installed);
    }

    /**
     * The same with where numbers come from that are more than one formula away.
     *
     * @param value the line as installed
     * @return the new writer
     */
    public ArrestSections withInstalled(LineEquilibrium value) {
        return new ArrestSections(design, q, pictures, value);
    }

    /**
     * Writes the sections of an arrest.
     *
     * @param number its number, from 1
     * @param r the arrest
     * @return the sections
     */
    public List<ReportSection> sections(int number, ArrestResult r) {
        String arrest = "Arrest " + number;
        List<ReportSection> list = new ArrayList<>();
        // Tables first, remarks after them: on paper narrow tables stand side by side.
        List<ReportBlock> blocks = new ArrayList<>(List.of(new ReportBlock.Paragraph(who(r))));
        Stream.of(results(r), energy(r), clearance(r)).flatMap(List::stream).forEach(blocks::add);
        List<ReportBlock> remarks = blocks.stream()
                .filter(b -> b instanceof ReportBlock.Paragraph)
                .distinct()
                .toList();
        blocks.removeAll(remarks.subList(1, remarks.size()));
        blocks.addAll(remarks.subList(1, remarks.size()));
        list.add(new ReportSection(arrest + ": " + CaseNames.name(r, q), 1, blocks));
        if (pictures) {
            list.add(new ReportSection(arrest + ": pictures", 2, figures(r)));
        }
        list.add(new ReportSection(arrest + ": line and supports at the lowest point", 2, line(r)));
        r.motion()
                .ifPresent(
                        m -> list.add(new ReportSection(arrest + ": in time", 2, new MotionSections(q).summary(r, m))));
        if (installed != null && r.motion().isEmpty()) {
            list.add(new ReportSection(
                    arrest + ": where numbers come from", 2, new DerivationSection(installed, q).blocks(r)));
        }
        return list;
    }

    private List<ReportBlock> figures(ArrestResult r) {
        List<ReportBlock> blocks = new ArrayList<>();
        ArrestPictures.of(design, r, q.choice()).values().forEach(p -> blocks.add(new ReportBlock.Figure(p)));
        return blocks;
    }

    private String who(ArrestResult r) {
        Fall fall = r.fall();
        String falls = fall.fallers().stream().map(w -> InertText.name(w.id())).collect(Collectors.joining(", "));
        String hangs = fall.hanging().stream()
                .map(h -> InertText.name(h.worker().id()) + " " + PlaceText.asInput(h.place(), q))
                .collect(Collectors.joining("; "));
        return "Falls: " + falls + ", "
                + fall.place()
                        .support()
                        .map(id -> "at " + InertText.name(id) + ", on which the connection pulls")
                        .orElseGet(() -> "in span " + fall.place().span() + " at station "
                                + q.input(QuantityKind.LENGTH, fall.place().station()))
                + (hangs.isEmpty() ? "" : "; hangs already: " + hangs) + ". Method: "
                + r.method().label() + ".";
    }

    private List<ReportBlock> results(ArrestResult r) {
        TableBuilder t =
                new TableBuilder("Results").text("Quantity").text("Symbol").number("Computed");
        if (scaled()) {
            t.number("With model factors");
        }
        t.text("Formula");
        Fall fall = r.fall();
        double f = design.modelFactors().force();
        double d = design.modelFactors().distance();
        double total = Quantity.TOTAL_FALL_DISTANCE.value(r, design.modelFactors()) / r.totalFallDistance();
        boolean moving = r.motion().isPresent();
        String dropped = moving ? "[9]" : "[3]";
        String hung = moving ? "[9]" : "[1] [3]";
        String line = moving ? "[9]" : "[1]";
        put(t, "Mass that falls", "M", new Cell(QuantityKind.MASS, fall.fallingMass(), 1, ""));
        put(
                t,
                "Line at the station before the fall, elevation",
                "zₗ",
                length(r.attachmentBefore().z(), 1, "[1]"));
        for (Worker w : fall.fallers()) {
            String name = "Harness attachment of " + InertText.name(w.id()) + ", elevation";
            put(t, name, "zₕ", length(w.harnessElevation(), 1, ""));
        }
        put(
                t,
                "Free fall distance",
                "h",
                length(r.freeFall(), 1, fall.freeFall().isPresent() ? "stated" : "[2]"));
        put(t, "Deployment (deceleration distance)", "x", length(r.deployment(), d, dropped));
        put(t, "Descent of the line at the attachment", "δ", length(r.lineDescent(), d, hung));
        put(t, "Total fall distance", "", length(r.totalFallDistance(), total, moving ? "[9]" : "[6]"));
        put(t, "Maximum arrest force on one worker (MAF)", "F", force(r.arrestForce(), f, dropped));
        put(t, "Force on the line", "P", force(r.lineLoad(), f, moving ? "[9]" : "P = Σ F"));
        put(t, "Sag at the load, below the chord", "f", length(r.sag(), d, "[5]"));
        put(t, "Distance of the load from the span's first support", "a", length(r.loadX(), 1, line));
        put(t, "Largest tension in the cable", "T", force(r.maximumTension(), f, line));
        put(t, "Largest load at an end anchor (MAL)", "", force(r.endAnchorLoad(), f, moving ? "[9]" : "[1] [7]"));
        if (r.lineLoad() > 0) {
            double ratio = r.maximumTension() / r.lineLoad();
            put(t, "Tension for each unit of force on the line", "T/P", new Cell(QuantityKind.RATIO, ratio, 1, ""));
        }
        SwingFall swing = SwingFall.of(r);
        if (swing.displacement() > NOTABLE_SWING) {
            put(t, "Horizontal displacement in the swing", "D", length(swing.displacement(), 1, "[10]"));
            put(t, "Angle of the swing", "", new Cell(QuantityKind.ANGLE, swing.angle(), 1, "[10]"));
            put(t, "Drop in the swing", "", length(swing.drop(), 1, "[10]"));
        }
        List<ReportBlock> blocks = new ArrayList<>(List.of(t.build()));
        if (r.bottomedOut()) {
            blocks.add(new ReportBlock.Paragraph(
                    "ATTENTION: the connecting subsystem bottoms out: it is used up and the force"
                            + " is set by its stop."));
        }
        return blocks;
    }

    /** A value, the model factor that it takes (1 for none), and the formula that it comes from. */
    private record Cell(QuantityKind measure, double value, double factor, String formula) {}

    private static Cell length(double value, double factor, String formula) {
        return new Cell(QuantityKind.LENGTH, value, factor, formula);
    }

    private static Cell force(double value, double factor, String formula) {
        return new Cell(QuantityKind.FORCE, value, factor, formula);
    }

    private boolean scaled() {
        return !design.modelFactors().equals(ModelFactors.none());
    }

    private void put(TableBuilder t, String name, String symbol, Cell c) {
        List<String> cells = new ArrayList<>(List.of(name, symbol, q.result(c.measure(), c.value())));
        if (scaled()) {
            cells.add(c.factor() == 1 ? "" : q.result(c.measure(), c.value() * c.factor()));
        }
        cells.add(c.formula());
        t.row(cells);
    }

    private List<ReportBlock> energy(ArrestResult r) {
        EnergyAccount e = r.energy();
        List<String> names = new ArrayList<>();
        List<Double> parts = new ArrayList<>();
        boolean moving = r.motion().isPresent();
        put(
                names,
                parts,
                moving
                        ? "Cable: strain, height of its weight, motion, damping"
                        : "Strain of the cable and height of its weight",
                e.cable());
        if (e.hanging() != 0) {
            put(
                    names,
                    parts,
                    moving ? "Those who hang already, motion of workers" : "Lifting those who hang already",
                    e.hanging());
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
        put(names, parts, "Not accounted for", e.residual());
        TableBuilder t = new TableBuilder(
                        moving
                                ? "Where the energy of the fall went, at the lowest point [9]"
                                : "Where the energy of the fall went [3] [4]")
                .text("Item");
        List<RoundedAccount> accounts = new ArrayList<>();
        for (UnitSystem s : q.choice().systems()) {
            t.number(QuantityKind.ENERGY.unit(s));
            accounts.add(RoundedAccount.sum(parts, QuantityKind.ENERGY, s));
        }
        for (int i = 0; i < names.size(); i++) {
            List<String> cells = new ArrayList<>(List.of(names.get(i)));
            for (RoundedAccount a : accounts) {
                cells.add(QuantityKind.show(a.rows().get(i)));
            }
            t.row(cells);
        }
        List<String> cells =
                new ArrayList<>(List.of(moving ? "Set free by the fall" : "Set free by the fall, M g (h + δ + x)"));
        accounts.forEach(a -> cells.add(QuantityKind.show(a.totals().get(0))));
        t.total(cells.toArray(new String[0]));
        List<ReportBlock> blocks = new ArrayList<>(List.of(t.build()));
        note(blocks, accounts);
        if (r.isBound()) {
            blocks.add(new ReportBlock.Paragraph(ArrestTables.BOUND));
        }
        blocks.add(new ReportBlock.Paragraph("Not accounted for, unrounded: "
                + IndependentCheckSection.power(
                        QuantityKind.ENERGY.in(e.residual(), q.choice().leading())) + " "
                + QuantityKind.ENERGY.unit(q.choice().leading()) + "."));
        if (!Double.isNaN(r.pathWork()) && r.energy().friction() != 0) {
            blocks.add(new ReportBlock.Paragraph("A second way: the work of the load along its path, ∫P dδ, is "
                    + q.result(QuantityKind.ENERGY, r.pathWork()) + "; what the line took by the table is "
                    + q.result(QuantityKind.ENERGY, e.lineWork()) + "."));
        }
        return blocks;
    }

    private static void put(List<String> names, List<Double> parts, String name, double value) {
        names.add(name);
        parts.add(value);
    }

    /** What a step is rounded by itself, as it stands elsewhere, where the account rounds it the other way to add up. */
    private String byItself(List<RoundedAccount> accounts, int row, double value) {
        StringBuilder b = new StringBuilder();
        for (int k = 0; k < accounts.size(); k++) {
            UnitSystem s = q.choice().systems().get(k);
            BigDecimal printed = accounts.get(k).rows().get(row);
            BigDecimal own = QuantityKind.LENGTH.rounded(value, s, printed.scale());
            if (own.compareTo(printed) != 0) {
                b.append("; by itself ")
                        .append(QuantityKind.show(own))
                        .append(' ')
                        .append(QuantityKind.LENGTH.unit(s));
            }
        }
        return b.toString();
    }

    private static void note(List<ReportBlock> blocks, List<RoundedAccount> accounts) {
        if (accounts.stream().anyMatch(a -> !a.isExact())) {
            blocks.add(new ReportBlock.Paragraph(
                    "Rows are rounded so that they add up as printed; a row may differ from its"
                            + " unrounded value by less than one in the last digit."));
        }
    }

    private List<ReportBlock> clearance(ArrestResult r) {
        Clearance c = r.clearance();
        List<Double> values = new ArrayList<>();
        List<ClearanceRow> rows = c.rows();
        rows.subList(1, rows.size()).forEach(x -> values.add(x.value()));
        TableBuilder t = new TableBuilder("From the line down: each elevation is the one above it less the step [8]")
                .text("Step");
        List<RoundedAccount> accounts = new ArrayList<>();
        for (UnitSystem s : q.choice().systems()) {
            String unit = QuantityKind.LENGTH.unit(s);
            t.number("Step [" + unit + "]").number("Elevation [" + unit + "]");
            accounts.add(RoundedAccount.down(c.lineElevation(), values, QuantityKind.LENGTH, s));
        }
        t.text("Source");
        for (int i = 0; i < rows.size(); i++) {
            List<String> cells = new ArrayList<>(List.of(rows.get(i).item()));
            for (RoundedAccount a : accounts) {
                cells.add(i == 0 ? "" : QuantityKind.show(a.rows().get(i - 1)));
                cells.add(QuantityKind.show(a.totals().get(i)));
            }
            cells.add(rows.get(i).source() + (i == 0 ? "" : byItself(accounts, i - 1, values.get(i - 1))));
            if (i == rows.size() - 1) {
                t.total(cells.toArray(new String[0]));
            } else {
                t.row(cells);
            }
        }
        List<ReportBlock> blocks = new ArrayList<>(List.of(t.build()));
        note(blocks, accounts);
        TableBuilder s = new TableBuilder("Clearance").text("Quantity").number("Value");
        s.row("Lowest point of the worker, elevation", q.result(QuantityKind.LENGTH, c.lowestPoint()));
        s.row(
                "Required below the line at the station before the fall",
                q.result(QuantityKind.LENGTH, c.requiredBelowLine()));
        s.row("Required below the walking level", q.result(QuantityKind.LENGTH, c.requiredBelowWalkingLevel()));
        if (c.margin().isPresent()) {
            double m = c.margin().getAsDouble();
            s.row(
                    "Top of the highest obstruction below, elevation",
                    q.result(QuantityKind.LENGTH, c.obstruction().orElseThrow()));
            s.total(
                    m >= 0 ? "Clearance margin" : "LACKING: clearance margin below zero by",
                    q.result(QuantityKind.LENGTH, Math.abs(m)));
        } else {
            s.row("Obstruction below", "none stated");
        }
        blocks.add(s.build());
        return blocks;
    }

    private List<ReportBlock> line(ArrestResult r) {
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(new LineSections(q).spans("Spans at the lowest point", "Sag", r.peak()));
        TableBuilder t = new TableBuilder("Force of the line on its supports (x, y, z; up positive)")
                .text("Support")
                .number("Force")
                .number("x")
                .number("y")
                .number("z")
                .number("Below the horizontal")
                .number("Moved by")
                .number("Cable passed toward the fall")
                .number("Safety factor: capacity over force");
        for (int i = 0; i < r.supports().size(); i++) {
            SupportReaction s = r.supports().get(i);
            OptionalDouble capacity = r.line().supports().get(i).capacity();
            t.row(
                    InertText.name(s.id()),
                    q.result(QuantityKind.FORCE, s.force()),
                    q.result(QuantityKind.FORCE, s.vector().x()),
                    q.result(QuantityKind.FORCE, s.vector().y()),
                    q.result(QuantityKind.FORCE, s.vector().z()),
                    q.result(QuantityKind.ANGLE, s.angleBelowHorizontal()),
                    q.result(QuantityKind.SMALL_LENGTH, s.displacement().magnitude()),
                    q.result(QuantityKind.SMALL_LENGTH, r.slip(i)),
                    capacity.isPresent() ? q.result(QuantityKind.RATIO, capacity.getAsDouble() / s.force()) : "–");
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
                        q.result(QuantityKind.LENGTH, s.extension()),
                        s.bottomedOut() ? "nothing: bottomed out" : q.result(QuantityKind.LENGTH, s.remaining()));
            }
            blocks.add(a.build());
        }
        r.line().cable().breakingStrength().ifPresent(b -> {
            double strength = b * r.line().cable().terminationEfficiency();
            BigDecimal ratio = new BigDecimal(strength / r.maximumTension());
            blocks.add(new ReportBlock.Paragraph(
                    "Safety factor of the cable: minimum breaking strength with its terminations"
                            + " over its largest tension = " + q.result(QuantityKind.FORCE, strength) + " / "
                            + q.result(QuantityKind.FORCE, r.maximumTension()) + " = "
                            + QuantityKind.RATIO.number(ratio.doubleValue(), UnitSystem.SI) + "."));
        });
        return blocks;
    }

    /**
     * Writes the calculation of an arrest line by line.
     *
     * @param number its number, from 1
     * @param r the arrest
     * @return the section
     */
    public ReportSection calculation(int number, ArrestResult r) {
        return new ReportSection(
                "Calculation line by line: arrest " + number + ", " + CaseNames.name(r, q), 1, calculation(r));
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
