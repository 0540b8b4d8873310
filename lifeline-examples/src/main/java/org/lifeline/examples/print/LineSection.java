package org.lifeline.examples.print;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.examples.arrests.DesignRun;
import org.lifeline.model.Cable;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LoadElongation;
import org.lifeline.model.Support;

/** What follows from the input before any fall: properties of the cable, geometry and the installed state. */
final class LineSection {
    private final UnitChoice units;

    LineSection(UnitChoice units) {
        this.units = units;
    }

    void print(Sheet sheet, DesignRun run) {
        Lifeline line = run.design().line();
        sheet.section("The line as installed");
        ResultTable table = new ResultTable(units);
        Cable cable = line.cable();
        table.row("weight per unstretched length", "w", Measure.WEIGHT_PER_LENGTH, line.weightPerLength(), "w = m g");
        LoadElongation law = cable.elongation();
        if (law.isLinear()) {
            table.row("axial stiffness", "EA", Measure.FORCE, law.initialStiffness(), "given, or E · A");
        } else {
            table.bare("load–elongation curve", "T(ε)", law.pieces() + " pieces", "given");
        }
        if (cable.breakingStrength().isPresent()) {
            double strength = cable.breakingStrength().getAsDouble();
            table.row("minimum breaking strength", "F_min", Measure.FORCE, strength, "given, or K d² R");
            table.row(
                    "strength with terminations",
                    "η F_min",
                    Measure.FORCE,
                    strength * cable.terminationEfficiency(),
                    "η = " + cable.terminationEfficiency());
        }
        LineEquilibrium installed = run.installed();
        table.row("temperature of installation", "t₀", Measure.TEMPERATURE, installed.temperature(), "");
        table.row("tension at the first support", "T₀", Measure.FORCE, installed.firstTension(), "[1]");
        table.row("tension at the last support", "Tₙ", Measure.FORCE, installed.lastTension(), "[1]");
        table.print(sheet);
        sheet.blank();
        if (units.si()) {
            spans(sheet, run, true);
        }
        if (units.us()) {
            spans(sheet, run, false);
        }
    }

    private static void spans(Sheet sheet, DesignRun run, boolean si) {
        Lifeline line = run.design().line();
        List<List<String>> rows = new ArrayList<>();
        String length = si ? "m" : "ft";
        String force = si ? "kN" : "lbf";
        rows.add(List.of(
                "span",
                "from",
                "to",
                "run " + length,
                "rise " + length,
                "sag f " + length,
                "H " + force,
                "unstretched S " + length));
        for (int i = 1; i <= line.spans(); i++) {
            SpanState s = run.installed().span(i);
            Support from = line.supports().get(i - 1);
            Support to = line.supports().get(i);
            rows.add(List.of(
                    Integer.toString(i),
                    Inert.of(from.id()),
                    Inert.of(to.id()),
                    number(Measure.LENGTH, line.run(i), si),
                    number(Measure.LENGTH, line.rise(i), si),
                    number(Measure.LENGTH, s.sag(), si),
                    number(Measure.FORCE, s.horizontalTension(), si),
                    number(Measure.LENGTH, s.unstretchedLength(), si)));
        }
        sheet.table("rllrrrrr", rows);
        sheet.blank();
    }

    static String number(Measure measure, double value, boolean si) {
        return si ? measure.si(value) : measure.us(value);
    }
}
