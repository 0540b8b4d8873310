package org.lifeline.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.model.Cable;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;

/**
 * What the engineer's documents of a plan state, after CSA Z259.16-15 cl. 4.3 as summarised publicly, filled in from the
 * analysis where it can.
 */
final class DocumentSection {
    private static final String ENGINEER = "to be stated by the engineer";

    private final LifelineDesign design;
    private final List<ArrestResult> arrests;
    private final LineEquilibrium installed;
    private final Quantities q;

    DocumentSection(LifelineDesign design, List<ArrestResult> arrests, LineEquilibrium installed, Quantities q) {
        this.design = design;
        this.arrests = arrests;
        this.installed = installed;
        this.q = q;
    }

    ReportSection section() {
        TableBuilder t = new TableBuilder("What the documents of a plan state")
                .text("Item")
                .text("From this analysis");
        int n = design.line().spans();
        t.row(
                "System type",
                "horizontal lifeline of " + n + (n == 1 ? " span" : " spans") + "; class of system: " + ENGINEER);
        t.row("Exceptions to the standard", ENGINEER);
        t.row("Layout", layout());
        t.row("Number and mass range of workers", workers());
        t.row("Component data", components());
        t.row("Proof test", ENGINEER);
        t.row("Environmental limits", environment());
        t.row("Maximum arrest load at the end anchors (MAL)", most(Measure.FORCE, ArrestResult::endAnchorLoad));
        t.row("Maximum load on every component", loads());
        t.row("Sags", sags());
        t.row("Deployment of absorbers", deployment());
        t.row("Maximum arrest force on a worker (MAF)", most(Measure.FORCE, ArrestResult::arrestForce));
        t.row("Worst case over temperature", worst());
        t.row("Clearance", clearance());
        return new ReportSection(
                "Documents of the plan",
                1,
                List.of(
                        t.build(),
                        new ReportBlock.Paragraph(
                                "Items after CSA Z259.16-15 cl. 4.3, as summarised publicly. The list is an aid; the"
                                        + " document that applies decides what is to be stated.")));
    }

    private String layout() {
        List<String> runs = new ArrayList<>();
        for (int i = 1; i <= design.line().spans(); i++) {
            runs.add(q.input(Measure.LENGTH, design.line().run(i)));
        }
        return "spans of " + String.join(", ", runs) + "; coordinates under \"Supports\"";
    }

    private String workers() {
        double least = design.workers().stream().mapToDouble(Worker::mass).min().orElse(0);
        double most = design.workers().stream().mapToDouble(Worker::mass).max().orElse(0);
        int together = arrests.stream()
                .mapToInt(r -> r.fall().fallers().size() + r.fall().hanging().size())
                .max()
                .orElse(0);
        return design.workers().size() + " described, " + q.input(Measure.MASS, least) + " to "
                + q.input(Measure.MASS, most) + "; at most " + together + " on the line in an analysed fall";
    }

    private String components() {
        Cable c = design.line().cable();
        String strength = c.breakingStrength().isPresent()
                ? "minimum breaking strength "
                        + q.input(Measure.FORCE, c.breakingStrength().getAsDouble()) + ", termination efficiency "
                        + q.input(Measure.RATIO, c.terminationEfficiency())
                : "minimum breaking strength not stated";
        List<String> anchors = new ArrayList<>();
        for (Support s : design.line().supports()) {
            s.capacity().ifPresent(k -> anchors.add(InertText.name(s.id()) + " " + q.input(Measure.FORCE, k)));
        }
        return "cable " + InertText.name(c.name()) + ": " + strength + "; stated strength of anchors: "
                + (anchors.isEmpty() ? "none" : String.join(", ", anchors)) + "; connectors and fittings: " + ENGINEER;
    }

    private String environment() {
        return "analysed at "
                + design.temperatures().stream()
                        .map(x -> q.input(Measure.TEMPERATURE, x))
                        .collect(Collectors.joining(", "))
                + "; corrosion, wetness and frost: " + ENGINEER;
    }

    private String most(Measure m, ToDoubleFunction<ArrestResult> value) {
        if (arrests.isEmpty()) {
            return "no fall was analysed";
        }
        ArrestResult r = arrests.stream().max(Comparator.comparingDouble(value)).orElseThrow();
        return q.result(m, value.applyAsDouble(r)) + " in arrest " + (arrests.indexOf(r) + 1);
    }

    private String loads() {
        if (arrests.isEmpty()) {
            return "no fall was analysed";
        }
        List<String> list = new ArrayList<>();
        for (int i = 0; i <= design.line().spans(); i++) {
            int k = i;
            double most = arrests.stream()
                    .mapToDouble(r -> r.supports().get(k).force())
                    .max()
                    .orElse(0);
            list.add(InertText.name(design.line().supports().get(i).id()) + " " + q.result(Measure.FORCE, most));
        }
        list.add("cable " + most(Measure.FORCE, ArrestResult::maximumTension));
        return String.join("; ", list);
    }

    private String sags() {
        String initial = installed.spans().stream()
                .map(SpanState::sag)
                .map(s -> q.result(Measure.LENGTH, s))
                .collect(Collectors.joining(", "));
        return "initial " + initial
                + (arrests.isEmpty() ? "" : "; at the load " + most(Measure.LENGTH, ArrestResult::sag));
    }

    private String deployment() {
        String text = most(Measure.LENGTH, ArrestResult::deployment);
        double inline = arrests.stream()
                .flatMap(r -> r.inlineAbsorbers().stream())
                .mapToDouble(a -> a.extension())
                .max()
                .orElse(-1);
        return inline < 0 ? text : text + "; in-line absorber " + q.result(Measure.LENGTH, inline);
    }

    private String worst() {
        if (arrests.isEmpty()) {
            return "no fall was analysed";
        }
        ArrestResult load = arrests.stream()
                .max(Comparator.comparingDouble(ArrestResult::endAnchorLoad))
                .orElseThrow();
        ArrestResult distance = arrests.stream()
                .max(Comparator.comparingDouble(r -> r.clearance().requiredBelowLine()))
                .orElseThrow();
        return "loads: " + Governing.name(load, q) + "; distances: " + Governing.name(distance, q);
    }

    private String clearance() {
        if (arrests.isEmpty()) {
            return "no fall was analysed";
        }
        return "required below the line "
                + most(Measure.LENGTH, r -> r.clearance().requiredBelowLine());
    }
}
