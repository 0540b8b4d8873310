package org.lifeline.report.section;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.lifeline.base.InertText;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.DeploymentRange;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;
import org.lifeline.report.document.PlaceText;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;

/**
 * Writes down what was put in.
 *
 * @since 1.0.0
 */
public final class InputSections {
    private final LifelineDesign design;
    private final Quantities q;

    /**
     * Sections in the units of a report.
     *
     * @param design the design
     * @param q the units
     */
    public InputSections(LifelineDesign design, Quantities q) {
        this.design = design;
        this.q = q;
    }

    /**
     * Writes the sections.
     *
     * @param cableOnly true to leave out supports, workers and falls
     * @return the sections
     */
    public List<ReportSection> sections(boolean cableOnly) {
        if (cableOnly) {
            return List.of(new ReportSection("Cable and installation", 1, cable()));
        }
        return List.of(
                new ReportSection(
                        "Inputs",
                        1,
                        List.of(new ReportBlock.Paragraph(
                                "As they were given, without rounding beyond the seventh digit."))),
                new ReportSection("Cable and installation", 2, cable()),
                new ReportSection("Supports", 2, supports()),
                new ReportSection("Workers and connecting subsystems", 2, workers()),
                new ReportSection("Falls and clearance", 2, falls()));
    }

    private List<ReportBlock> cable() {
        Cable c = design.line().cable();
        double g = design.line().gravity();
        TableBuilder t =
                new TableBuilder("Cable and installed state").text("Property").number("Value");
        if (!c.name().isBlank()) {
            t.row("Name", InertText.name(c.name()));
        }
        c.diameter().ifPresent(d -> t.row("Nominal diameter", q.input(QuantityKind.SMALL_LENGTH, d)));
        t.row("Mass per length", q.input(QuantityKind.MASS_PER_LENGTH, c.massPerLength(g)));
        t.row("Weight per length w", q.input(QuantityKind.WEIGHT_PER_LENGTH, c.weightPerLength(g)));
        LoadElongation law = c.elongation();
        if (law.isLinear()) {
            t.row("Axial stiffness EA", q.input(QuantityKind.FORCE, law.initialStiffness()));
        } else {
            t.row("Axial stiffness at the start of its curve", q.input(QuantityKind.FORCE, law.initialStiffness()));
        }
        c.breakingStrength().ifPresent(b -> {
            t.row("Minimum breaking strength", q.input(QuantityKind.FORCE, b));
            t.row(
                    "Minimum breaking strength times termination efficiency",
                    q.input(QuantityKind.FORCE, b * c.terminationEfficiency()));
        });
        t.row("Termination efficiency", q.input(QuantityKind.RATIO, c.terminationEfficiency()));
        t.row("Thermal expansion", q.input(QuantityKind.EXPANSION, c.thermalExpansion()));
        Installed in = design.line().installed();
        t.row(installedName(in), installedValue(in));
        t.row("Temperature of installation", q.input(QuantityKind.TEMPERATURE, in.temperature()));
        t.row(
                "Temperatures in service",
                design.temperatures().stream()
                        .map(x -> q.input(QuantityKind.TEMPERATURE, x)
                                + (isLimit(x) ? ", where a stated condition of an absorber ends or begins" : ""))
                        .collect(Collectors.joining("; ")));
        t.row("Acceleration of gravity", q.input(QuantityKind.RATIO, g) + " m/s²");
        List<ReportBlock> blocks = new ArrayList<>(List.of(t.build()));
        if (!law.isLinear()) {
            TableBuilder curve = new TableBuilder("Load–elongation curve of the cable")
                    .number("Strain")
                    .number("Tension");
            for (LoadElongation.Corner corner : law.corners()) {
                curve.row(
                        q.input(QuantityKind.RATIO, 100 * corner.strain()) + " %",
                        q.input(QuantityKind.FORCE, corner.tension()));
            }
            blocks.add(curve.build());
        }
        return blocks;
    }

    private static String installedName(Installed in) {
        return switch (in.form()) {
            case PRETENSION -> "Installed: tension at the first end anchor";
            case HORIZONTAL_TENSION -> "Installed: horizontal tension in span " + in.span();
            case INITIAL_SAG -> "Installed: initial sag of span " + in.span();
            case UNSTRETCHED_LENGTH -> "Installed: unstretched length of the cable";
        };
    }

    private String installedValue(Installed in) {
        return switch (in.form()) {
            case PRETENSION, HORIZONTAL_TENSION -> q.input(QuantityKind.FORCE, in.value());
            case INITIAL_SAG, UNSTRETCHED_LENGTH -> q.input(QuantityKind.LENGTH, in.value());
        };
    }

    private List<ReportBlock> supports() {
        TableBuilder t = new TableBuilder("Supports in the order of the line, positions as installed")
                .text("Support")
                .text("Kind")
                .number("x")
                .number("y")
                .number("z (up)")
                .text("Passage of the cable")
                .text("Stiffness")
                .number("Stated capacity");
        List<ReportBlock> blocks = new ArrayList<>();
        for (Support s : design.line().supports()) {
            Point p = s.position();
            t.row(
                    InertText.name(s.id()),
                    s.isEnd() ? "end anchor" : "intermediate anchor",
                    q.input(QuantityKind.LENGTH, p.x()),
                    q.input(QuantityKind.LENGTH, p.y()),
                    q.input(QuantityKind.LENGTH, p.z()),
                    s.isEnd() ? "held" : s.passage().toString(),
                    stiffness(s.stiffness()),
                    s.capacity().isPresent()
                            ? q.input(QuantityKind.FORCE, s.capacity().getAsDouble())
                            : "not stated");
        }
        blocks.add(t.build());
        for (Support s : design.line().supports()) {
            s.inlineAbsorber()
                    .ifPresent(
                            a -> blocks.add(curve("In-line energy absorber at " + InertText.name(s.id()), a.curve())));
        }
        return blocks;
    }

    private String stiffness(Stiffness k) {
        if (k.isRigid()) {
            return "rigid";
        }
        List<String> parts = new ArrayList<>();
        double[] values = {k.x(), k.y(), k.z()};
        for (int i = 0; i < 3; i++) {
            if (Double.isFinite(values[i])) {
                parts.add("xyz".charAt(i) + ": " + q.input(QuantityKind.STIFFNESS, values[i]));
            }
        }
        return String.join("; ", parts);
    }

    private ReportBlock.Table curve(String caption, LoadingCurve curve) {
        TableBuilder t = new TableBuilder(caption + ": force against extension")
                .number("Extension")
                .number("Force");
        for (LoadingCurve.Corner c : curve.corners()) {
            t.row(q.input(QuantityKind.LENGTH, c.extension()), q.input(QuantityKind.FORCE, c.force()));
        }
        double stop = curve.stopStiffness();
        t.row("beyond", Double.isInfinite(stop) ? "rigid stop" : "stop of " + q.input(QuantityKind.STIFFNESS, stop));
        return t.build();
    }

    private List<ReportBlock> workers() {
        TableBuilder t = new TableBuilder("Workers")
                .text("Worker")
                .number("Mass")
                .number("Walking level")
                .number("Harness attachment above the feet")
                .text("Attachment to the line")
                .text("Connecting subsystem")
                .number("Taut length");
        List<ReportBlock> blocks = new ArrayList<>();
        for (Worker w : design.workers()) {
            Connection c = w.connection();
            t.row(
                    InertText.name(w.id()),
                    q.input(QuantityKind.MASS, w.mass()),
                    q.input(QuantityKind.LENGTH, w.walkingLevel()),
                    q.input(QuantityKind.LENGTH, w.attachmentHeight()),
                    w.attachment() == Attachment.GRIPPED ? "gripped" : "free-running",
                    kind(c.kind()),
                    c.kind() == Connection.Kind.SELF_RETRACTING
                            ? "locks after " + q.input(QuantityKind.LENGTH, c.tautLength(0))
                            : q.input(QuantityKind.LENGTH, c.tautLength(0)));
        }
        blocks.add(t.build());
        for (Worker w : design.workers()) {
            Connection c = w.connection();
            String name = "Connecting subsystem of " + InertText.name(w.id());
            boolean two =
                    c.kind() == Connection.Kind.LANYARD_WITH_ABSORBER || c.kind() == Connection.Kind.SELF_RETRACTING;
            DeploymentRange range = c.deployment();
            String dry = range.conditions().isEmpty() ? "" : ", dry";
            if (two) {
                blocks.add(curve(name + dry + ", clearance deployment force", range.dry(DeploymentForce.CLEARANCE)));
            }
            blocks.add(
                    curve(two ? name + dry + ", maximum deployment force" : name, range.dry(DeploymentForce.MAXIMUM)));
            if (!range.conditions().isEmpty()) {
                blocks.add(conditions(name, range));
            }
        }
        return blocks;
    }

    /** The forces under other conditions than dry; each arrest takes the lowest or the highest of those that apply. */
    private ReportBlock conditions(String name, DeploymentRange range) {
        TableBuilder t = new TableBuilder(
                        name + ": deployment forces as stated by condition. Distances are computed with the"
                                + " lowest, loads with the highest of those that apply, the dry among them")
                .text("Condition")
                .text("Applies")
                .number("Lowest")
                .number("Highest")
                .text("Source");
        for (AbsorberCondition each : range.conditions()) {
            t.row(
                    each.kind().label(),
                    applies(each),
                    q.input(QuantityKind.FORCE, each.clearanceForce()),
                    q.input(QuantityKind.FORCE, each.maximumForce()),
                    InertText.plain(each.source()));
        }
        return t.build();
    }

    /** Tells whether an absorber counts as cold up to a temperature, or as hot from it on; such ones are computed besides. */
    private boolean isLimit(double temperature) {
        return design.workers().stream()
                .flatMap(w -> w.connection().deployment().conditions().stream())
                .anyMatch(c -> c.temperature().equals(OptionalDouble.of(temperature)));
    }

    private String applies(AbsorberCondition c) {
        if (c.temperature().isEmpty()) {
            return "at every temperature";
        }
        String limit = (c.kind() == AbsorberCondition.Kind.COLD ? "at or below " : "at or above ")
                + q.input(QuantityKind.TEMPERATURE, c.temperature().getAsDouble());
        return design.temperatures().stream().anyMatch(c::appliesAt)
                ? limit
                : limit + ": at none of the temperatures in service";
    }

    private ReportBlock incidents() {
        TableBuilder t = new TableBuilder("Second fall and rescue").text("Item").text("Value");
        design.secondFall().ifPresent(f -> {
            t.row("A further worker may fall within the first second", InertText.name(f.worker()));
            t.row(
                    "Start after the first fall",
                    f.delays().stream().map(d -> d + " s").collect(Collectors.joining(", ")));
        });
        design.rescuerMass()
                .ifPresent(m -> t.row("Rescuer on the line with those who have fallen", q.input(QuantityKind.MASS, m)));
        return t.build();
    }

    static String kind(Connection.Kind kind) {
        return switch (kind) {
            case LANYARD_WITH_ABSORBER -> "lanyard with energy absorber";
            case PLAIN_LANYARD -> "lanyard without absorber";
            case GIVEN_CURVE -> "lanyard with a given loading curve";
            case SELF_RETRACTING -> "self-retracting device";
        };
    }

    private List<ReportBlock> falls() {
        TableBuilder t = new TableBuilder("Falls")
                .text("Fall")
                .number("Span")
                .number("Station in the span")
                .text("Who falls")
                .text("Who hangs already")
                .number("Free fall");
        for (Fall f : design.falls()) {
            t.row(
                    InertText.name(f.id()),
                    PlaceText.span(f.place()),
                    PlaceText.station(
                            f.place(),
                            q.input(QuantityKind.LENGTH, design.line().stationOf(f.place()))),
                    f.fallers().stream().map(w -> InertText.name(w.id())).collect(Collectors.joining(", ")),
                    f.hanging().isEmpty()
                            ? "nobody"
                            : f.hanging().stream()
                                    .map(h -> InertText.name(h.worker().id()) + " " + PlaceText.asInput(h.place(), q))
                                    .collect(Collectors.joining("; ")),
                    f.freeFall().isPresent()
                            ? q.input(QuantityKind.LENGTH, f.freeFall().getAsDouble())
                            : "from geometry");
        }
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(
                design.falls().isEmpty()
                        ? new ReportBlock.Paragraph("No falls are named; the analysis chose the places.")
                        : t.build());
        if (design.secondFall().isPresent() || design.rescuerMass().isPresent()) {
            blocks.add(incidents());
        }
        TableBuilder c = new TableBuilder("Clearance").text("Item").number("Value");
        c.row("Harness stretch", q.input(QuantityKind.LENGTH, design.clearance().harnessStretch()));
        c.row(
                "Wanted margin below the feet",
                q.input(QuantityKind.LENGTH, design.clearance().margin()));
        for (Obstruction o : design.clearance().obstructions()) {
            c.row(
                    "Obstruction from " + q.input(QuantityKind.LENGTH, o.from()) + " to "
                            + q.input(QuantityKind.LENGTH, o.to()) + " along the line"
                            + (o.distance() == 0
                                    ? ""
                                    : ", " + q.input(QuantityKind.LENGTH, o.distance()) + " beside it"),
                    "top at " + q.input(QuantityKind.LENGTH, o.elevation()));
        }
        blocks.add(c.build());
        return blocks;
    }
}
