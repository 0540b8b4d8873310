package org.lifeline.examples.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.Clearance;
import org.lifeline.analysis.ClearanceRow;
import org.lifeline.analysis.EnergyAccount;
import org.lifeline.analysis.InlineAbsorberState;
import org.lifeline.analysis.SupportReaction;
import org.lifeline.examples.arrests.DesignRun;
import org.lifeline.model.DeploymentForce;
import org.lifeline.model.Fall;
import org.lifeline.model.Worker;

/** One block for each arrest: results, energy account, clearance account, supports. */
final class ArrestSection {
    private final UnitChoice units;

    ArrestSection(UnitChoice units) {
        this.units = units;
    }

    static void formulas(Sheet sheet) {
        sheet.section("Formulas");
        for (String each : List.of(
                "[1] elastic catenary in every piece of cable between two forces (Irvine, Cable Structures, 1981, ch. 1)",
                "[2] free fall h = max(0, L + z_h − z_l): L taut length (self-retracting: what is paid out + lock-up"
                        + " distance), z_h harness attachment, z_l line at the station before the fall",
                "[3] energy balance M g (h + δ + x) = W + E, P = Σ F(x): W = ∫ P dδ on the line, E = Σ ∫ F dx in the"
                        + " connecting subsystems",
                "[4] W = growth of strain energy and weight potential of the cable + lift of those who hang + heat of"
                        + " friction + work of in-line absorbers + energy of elastic anchors",
                "[5] sag f = vertical distance from the chord of the span, between its supports where they now are, to the"
                        + " load",
                "[6] total fall distance = h + x + δ + harness stretch",
                "[7] passage with friction: sticks while e^(−μθ) ≤ T₂/T₁ ≤ e^(μθ), θ angle turned (capstan rule)",
                "[8] clearance: elevations from the line down, each row less its value",
                "[9] transient: lumped masses on tension-only segments, T = EA(ε + τ dε/dt); forces and tensions are peaks"
                        + " of the first catch, positions and energies those at the lowest point")) {
            sheet.paragraph("  " + each.substring(0, 4), each.substring(4));
        }
    }

    void print(Sheet sheet, DesignRun run) {
        sheet.section("Arrests");
        sheet.paragraph(
                "  ",
                "Each fall at each service temperature, with the clearance deployment force (governs distances) and with"
                        + " the maximum deployment force (governs loads).");
        int number = 0;
        for (ArrestResult each : run.arrests()) {
            number++;
            sheet.heading(sheet.sectionNumber() + "." + number + "  " + name(each));
            block(sheet, each);
        }
    }

    /** Names an arrest in one line. */
    static String name(ArrestResult r) {
        return String.format(
                Locale.ROOT,
                "fall \"%s\", %s °C, %s",
                Inert.of(r.fall().id()),
                Measure.TEMPERATURE.si(r.temperature()),
                r.side() == DeploymentForce.CLEARANCE ? "clearance deployment force" : "maximum deployment force");
    }

    private void block(Sheet sheet, ArrestResult r) {
        Fall fall = r.fall();
        String who = fall.fallers().stream().map(w -> Inert.of(w.id())).collect(Collectors.joining(", "));
        String hanging = fall.hanging().stream()
                .map(h -> Inert.of(h.worker().id()) + " in span " + h.place().span() + " at "
                        + Measure.LENGTH.text(h.place().station(), units))
                .collect(Collectors.joining("; "));
        sheet.paragraph(
                "  ",
                "falls: " + who + ", span " + fall.place().span() + ", station "
                        + Measure.LENGTH.text(fall.place().station(), units)
                        + (hanging.isEmpty() ? "" : "; hangs already: " + hanging) + "; method: "
                        + r.method().label());
        results(sheet, r);
        sheet.blank();
        energy(sheet, r);
        sheet.blank();
        clearance(sheet, r);
        sheet.blank();
        if (units.si()) {
            supports(sheet, r, true);
            sheet.blank();
        }
        if (units.us()) {
            supports(sheet, r, false);
            sheet.blank();
        }
        for (InlineAbsorberState each : r.inlineAbsorbers()) {
            sheet.line("  in-line absorber at " + Inert.of(each.supportId()) + ": extension "
                    + Measure.LENGTH.text(each.extension(), units) + ", left "
                    + Measure.LENGTH.text(each.remaining(), units));
        }
        if (r.motion().isPresent()) {
            new MotionLines(units).print(sheet, r, r.motion().get());
            return;
        }
        sheet.line(String.format(
                Locale.ROOT,
                "  iteration: %d Newton steps, residual %.1e, tolerance %.0e",
                r.convergence().iterations(),
                r.convergence().residual(),
                r.convergence().tolerance()));
    }

    private void results(Sheet sheet, ArrestResult r) {
        Fall fall = r.fall();
        boolean stated = fall.freeFall().isPresent();
        boolean moving = r.motion().isPresent();
        String dropped = moving ? "[9]" : "[3]";
        String hung = moving ? "[9]" : "[1] [3]";
        String line = moving ? "[9]" : "[1]";
        ResultTable table = new ResultTable(units)
                .row("mass that falls", "M", Measure.MASS, fall.fallingMass(), "")
                .row(
                        "line at the station before the fall",
                        "z_l",
                        Measure.LENGTH,
                        r.attachmentBefore().z(),
                        "[1]");
        for (Worker each : fall.fallers()) {
            table.row(
                    "harness attachment of " + Inert.of(each.id()), "z_h", Measure.LENGTH, each.harnessElevation(), "");
        }
        table.row("free fall distance", "h", Measure.LENGTH, r.freeFall(), stated ? "stated in the design" : "[2]")
                .row("deployment (deceleration distance)", "x", Measure.LENGTH, r.deployment(), dropped)
                .row("descent of the line", "δ", Measure.LENGTH, r.lineDescent(), hung)
                .row("sag at the load", "f", Measure.LENGTH, r.sag(), "[5]")
                .row("load from the first support of the span", "x_P", Measure.LENGTH, r.loadX(), line)
                .row("total fall distance", "", Measure.LENGTH, r.totalFallDistance(), "[6]")
                .row("maximum arrest force, on one worker", "F", Measure.FORCE, r.arrestForce(), dropped)
                .row("force on the line", "P", Measure.FORCE, r.lineLoad(), moving ? "[9]" : "P = Σ F")
                .row("maximum tension of the cable", "T", Measure.FORCE, r.maximumTension(), line)
                .row(
                        "end anchor load, the larger one",
                        "",
                        Measure.FORCE,
                        r.endAnchorLoad(),
                        moving ? "[9]" : "[1] [7]")
                .bare(
                        "tension for each unit of force on the line",
                        "T/P",
                        r.lineLoad() > 0 ? Measure.fixed(r.maximumTension() / r.lineLoad(), 2) : "-",
                        "");
        table.print(sheet);
        if (r.bottomedOut()) {
            sheet.line("  THE CONNECTING SUBSYSTEM BOTTOMED OUT: it was used up before the fall was arrested.");
        }
    }

    private void energy(Sheet sheet, ArrestResult r) {
        EnergyAccount e = r.energy();
        boolean moving = r.motion().isPresent();
        String[] names = {
            moving ? "cable: strain, weight, motion, damping" : "cable: strain energy and weight",
            moving ? "those who hang already, motion of workers" : "those who hang already",
            "friction at the anchors",
            "in-line absorbers",
            "elastic anchors",
            "connecting subsystems, E",
            "not accounted for"
        };
        double[] rows = {
            e.cable(), e.hanging(), e.friction(), e.inlineAbsorbers(), e.anchors(), e.connection(), e.residual()
        };
        double[] si = converted(rows, Measure.ENERGY, true);
        double[] us = converted(rows, Measure.ENERGY, false);
        List<List<String>> table = new ArrayList<>();
        table.add(cells(
                moving ? "energy account at the lowest point [9]" : "energy account [3] [4]",
                new String[] {"J", "ft·lbf"}));
        double siSum = 0;
        double usSum = 0;
        for (int i = 0; i < rows.length; i++) {
            table.add(cells(names[i], new String[] {Measure.fixed(si[i], 1), Measure.fixed(us[i], 1)}));
            siSum += si[i];
            usSum += us[i];
        }
        table.add(cells(
                moving ? "sum: set free by the fall" : "sum: set free by the fall, M g (h + δ + x)",
                new String[] {Measure.fixed(siSum, 1), Measure.fixed(usSum, 1)}));
        sheet.table("l" + "r".repeat(table.get(0).size() - 1), table);
        sheet.line(String.format(Locale.ROOT, "  not accounted for, unrounded: %.1e J", e.residual()));
    }

    private List<String> cells(String name, String[] values) {
        return Sheet.row(List.of(name, values[0], values[1]), new boolean[] {true, units.si(), units.us()});
    }

    private static double[] converted(double[] rows, Measure measure, boolean si) {
        double[] converted = new double[rows.length];
        for (int i = 0; i < rows.length; i++) {
            converted[i] = si ? measure.inSi(rows[i]) : measure.inUs(rows[i]);
        }
        return RowSums.round(converted, si ? measure.siDecimals() : measure.usDecimals());
    }

    private void clearance(Sheet sheet, ArrestResult r) {
        Clearance c = r.clearance();
        double[] steps = new double[c.rows().size()];
        for (int i = 0; i < steps.length; i++) {
            ClearanceRow row = c.rows().get(i);
            steps[i] = i == 0 ? row.elevation() : -row.value();
        }
        double[] si = converted(steps, Measure.LENGTH, true);
        double[] us = converted(steps, Measure.LENGTH, false);
        List<List<String>> table = new ArrayList<>();
        boolean[] shown = {true, units.si(), units.si(), units.us(), units.us(), true};
        table.add(Sheet.row(
                List.of("clearance account [8]", "down m", "elevation m", "down ft", "elevation ft", "source"), shown));
        double siAt = 0;
        double usAt = 0;
        for (int i = 0; i < steps.length; i++) {
            ClearanceRow row = c.rows().get(i);
            siAt += si[i];
            usAt += us[i];
            table.add(Sheet.row(
                    List.of(
                            row.item(),
                            i == 0 ? "" : Measure.fixed(-si[i], 3),
                            Measure.fixed(siAt, 3),
                            i == 0 ? "" : Measure.fixed(-us[i], 2),
                            Measure.fixed(usAt, 2),
                            row.source()),
                    shown));
        }
        sheet.table("l" + "rr".repeat((units.si() ? 1 : 0) + (units.us() ? 1 : 0)) + "l", table);
        sheet.line("  rows are rounded so that they add up");
        sheet.line("  required below the line: " + Measure.LENGTH.text(c.requiredBelowLine(), units)
                + "; below the walking level: " + Measure.LENGTH.text(c.requiredBelowWalkingLevel(), units));
        if (c.obstruction().isPresent() && c.margin().isPresent()) {
            double margin = c.margin().getAsDouble();
            sheet.line("  highest obstruction below: elevation "
                    + Measure.LENGTH.text(c.obstruction().getAsDouble(), units) + "; "
                    + (margin < 0 ? "MISSING " : "remaining margin ")
                    + Measure.LENGTH.text(Math.abs(margin), units));
        } else {
            sheet.line("  no obstruction was given below this place");
        }
    }

    private static void supports(Sheet sheet, ArrestResult r, boolean si) {
        List<List<String>> table = new ArrayList<>();
        String force = si ? "kN" : "lbf";
        String small = si ? "mm" : "in";
        table.add(List.of(
                "support",
                "force " + force,
                "x " + force,
                "y " + force,
                "z " + force,
                "below horizontal °",
                "moved " + small,
                "slip " + small));
        for (int i = 0; i < r.supports().size(); i++) {
            SupportReaction s = r.supports().get(i);
            table.add(List.of(
                    Inert.of(s.id()),
                    LineSection.number(Measure.FORCE, s.force(), si),
                    LineSection.number(Measure.FORCE, s.vector().x(), si),
                    LineSection.number(Measure.FORCE, s.vector().y(), si),
                    LineSection.number(Measure.FORCE, s.vector().z(), si),
                    Measure.ANGLE.si(s.angleBelowHorizontal()),
                    LineSection.number(Measure.SMALL_LENGTH, s.displacement().magnitude(), si),
                    LineSection.number(Measure.SMALL_LENGTH, r.slip(i), si)));
        }
        sheet.table("lrrrrrrr", table);
    }
}
