package org.lifeline.examples.print;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.InlineAbsorberState;
import org.lifeline.analysis.motion.MotionSummary;
import org.lifeline.analysis.motion.WorkerPeaks;
import org.lifeline.examples.arrests.DesignRun;
import org.lifeline.examples.arrests.Governing;
import org.lifeline.examples.json.DesignFile;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;

/** Warnings, assumptions, cautions. */
final class NotesSection {
    /** Tension for each unit of force above which a line is called flat [-]: about 5° (29 CFR 1926 Subpart M App. C). */
    private static final double FLAT = 6;

    /** Slope of a span above which a free attachment may run down it [°]; CEN/TS 16415:2013 draws a line there. */
    private static final double STEEP = 15;

    /** Way of the attachment along the span above which the worker is said to swing [m]; our own choice. */
    private static final double FAR = 0.5;

    /** Share by which a later peak must exceed that of the first catch to be worth a warning [-]. */
    private static final double NOTABLE = 1e-3;

    private final UnitChoice units;

    NotesSection(UnitChoice units) {
        this.units = units;
    }

    void warnings(Sheet sheet, DesignRun run) {
        sheet.section("Warnings");
        Set<String> list = new LinkedHashSet<>();
        Lifeline line = run.design().line();
        for (ArrestResult each : run.arrests()) {
            ofArrest(list, each);
        }
        for (Governing each : Governing.all(run)) {
            strength(list, run, each);
        }
        for (int i = 1; i <= line.spans(); i++) {
            double slope = Math.toDegrees(Math.atan2(Math.abs(line.rise(i)), line.run(i)));
            if (slope > STEEP) {
                list.add("span " + i + " climbs at " + Measure.fixed(slope, 1)
                        + "°: an attachment may run down the span before and during a fall; see the clearance there");
            }
        }
        if (list.isEmpty()) {
            sheet.line("  None.");
        }
        list.forEach(w -> sheet.paragraph("  ! ", w));
    }

    private void ofArrest(Set<String> list, ArrestResult r) {
        String name = ArrestSection.name(r);
        if (r.bottomedOut()) {
            list.add(
                    name + ": the connecting subsystem bottomed out; force and distance go beyond what it is made for");
        }
        for (InlineAbsorberState each : r.inlineAbsorbers()) {
            if (each.bottomedOut()) {
                list.add(name + ": the in-line absorber at " + Inert.of(each.supportId()) + " is used up");
            }
        }
        if (r.lineLoad() > 0 && r.maximumTension() > FLAT * r.lineLoad()) {
            list.add(name + ": the sag angle is small, the tension is "
                    + Measure.fixed(r.maximumTension() / r.lineLoad(), 1)
                    + " times the force on the line; small changes of sag, stiffness or temperature change it much");
        }
        double along = r.attachmentAtPeak().horizontalDistance(r.attachmentBefore());
        if (along > FAR) {
            list.add(name + ": the attachment runs " + Measure.fixed(along, 2)
                    + " m along the span before it comes to rest; the worker swings");
        }
        r.motion().ifPresent(m -> ofMotion(list, r, m));
        r.clearance().margin().ifPresent(margin -> {
            if (margin < 0) {
                list.add(name + ": the clearance does not suffice; missing " + Measure.LENGTH.text(-margin, units));
            }
        });
    }

    private void ofMotion(Set<String> list, ArrestResult r, MotionSummary m) {
        String name = ArrestSection.name(r);
        if (!m.firstCatchOver()) {
            list.add(name + ": the motion was not followed to the end of the first catch");
        }
        if (!(m.mesh().spread() <= r.convergence().tolerance())) {
            list.add(name + ": peaks still change by "
                    + Measure.fixed(100 * m.mesh().spread(), 1) + " % when mesh and step are halved");
        }
        if (m.wholeRun().tension().value() > r.maximumTension() * (1 + NOTABLE)) {
            list.add(name + ": the tension after the first catch is larger, "
                    + Measure.FORCE.text(m.wholeRun().tension().value(), units));
        }
        for (WorkerPeaks each : m.wholeRun().workers()) {
            if (each.force().value() > r.arrestForce() * (1 + NOTABLE)) {
                list.add(name + ": the force on " + Inert.of(each.id()) + " after the first catch is larger, "
                        + Measure.FORCE.text(each.force().value(), units));
            }
        }
    }

    private void strength(Set<String> list, DesignRun run, Governing g) {
        double value = g.factored();
        switch (g.quantity()) {
            case MAXIMUM_TENSION ->
                run.design().line().cable().breakingStrength().ifPresent(strength -> {
                    double holds = strength * run.design().line().cable().terminationEfficiency();
                    if (value > holds) {
                        list.add("the maximum tension of " + Measure.FORCE.text(value, units)
                                + " exceeds what cable and terminations hold, " + Measure.FORCE.text(holds, units));
                    }
                });
            case SUPPORT_LOAD ->
                run.design().line().supports().stream()
                        .filter(s -> s.id().equals(g.support()) && s.capacity().isPresent())
                        .filter(s -> value > s.capacity().getAsDouble())
                        .forEach(s -> list.add("the load on " + Inert.of(s.id()) + " of "
                                + Measure.FORCE.text(value, units) + " exceeds its stated capacity, "
                                + Measure.FORCE.text(s.capacity().getAsDouble(), units)));
            default -> {}
        }
    }

    void assumptions(Sheet sheet, DesignFile file, DesignRun run) {
        sheet.section("Assumptions");
        List<String> list = new ArrayList<>(List.of(
                "The force on the line is vertical; those who fall are rigid masses; the cable is elastic and bends freely.",
                run.arrests().stream().anyMatch(r -> r.motion().isPresent())
                        ? "Transient: cable of lumped masses without bending stiffness, internal damping, no drag of the"
                                + " air; connecting subsystems without mass. Worst places are looked for by energy balance."
                        : "Energy balance: the line follows its static path. A force applied within a few milliseconds can"
                                + " overshoot it; a model factor on force covers that if the engineer sets one.",
                "Supports stand where they are drawn in the installed state, their springs already holding the installed"
                        + " reaction. The whole line has one temperature.",
                "Acceleration of gravity: " + run.design().line().gravity() + " m/s²."));
        if (run.searched()) {
            list.add("The design names no falls. The worst place of a single fall was looked for in each span for each"
                    + " worker, to 1 mm or 0.1 % of the value; several who fall together, or in sequence, were not.");
        }
        defaults(list, file, run);
        list.forEach(a -> sheet.paragraph("  - ", a));
    }

    private void defaults(List<String> list, DesignFile file, DesignRun run) {
        Lifeline line = run.design().line();
        missing(
                list,
                file,
                "installed.temperature",
                "temperature of installation "
                        + Measure.TEMPERATURE.text(line.installed().temperature(), units));
        if (file.written("service.temperatures[0]").isEmpty()) {
            list.add("Not stated, taken: the temperature of installation in service.");
        }
        missing(
                list,
                file,
                "cable.thermalExpansion",
                "thermal expansion of the cable " + line.cable().thermalExpansion()
                        + " /K (recalled value for steel rope)");
        missing(list, file, "cable.terminationEfficiency", "termination efficiency 1");
        missing(
                list,
                file,
                "clearance.harnessStretch",
                "harness stretch "
                        + Measure.LENGTH.text(run.design().clearance().harnessStretch(), units)
                        + " (common practice, no source)");
        missing(
                list,
                file,
                "clearance.margin",
                "margin below the feet "
                        + Measure.LENGTH.text(run.design().clearance().margin(), units)
                        + " (common practice, no source)");
        for (int i = 0; i < line.supports().size(); i++) {
            Support s = line.supports().get(i);
            boolean stated = file.written("supports[" + i + "].passage").isPresent()
                    || file.written("supports[" + i + "].passage.friction").isPresent();
            if (!s.isEnd() && !stated && s.passage().kind() == Passage.Kind.FREE) {
                list.add("Not stated, taken: the cable passes " + Inert.of(s.id()) + " freely.");
            }
        }
        for (int i = 0; i < run.design().workers().size(); i++) {
            Worker w = run.design().workers().get(i);
            String at = "workers[" + i + "].";
            missing(
                    list,
                    file,
                    at + "attachmentHeight",
                    "harness attachment of " + Inert.of(w.id()) + " " + Measure.LENGTH.text(w.attachmentHeight(), units)
                            + " above the feet (common practice, no source)");
            missing(list, file, at + "attachment", "free-running attachment of " + Inert.of(w.id()));
        }
    }

    private static void missing(List<String> list, DesignFile file, String path, String taken) {
        if (file.written(path).isEmpty()) {
            list.add("Not stated, taken: " + taken + ".");
        }
    }

    static void cautions(Sheet sheet) {
        sheet.section("Cautions");
        for (String each : List.of(
                "These results are an aid for a qualified person or licensed engineer, who must review them.",
                "They do not replace the applicable local code, the manufacturers' instructions, or tests; where these"
                        + " differ, these come first.",
                "A line that has arrested a fall, or a component that fails inspection, is taken out of service.",
                "Rescue of the suspended worker must be planned before anyone works on the line.")) {
            sheet.paragraph("  * ", each);
        }
    }
}
