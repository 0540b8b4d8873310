package org.lifeline.report.section;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.base.InertText;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;

/**
 * What the engineer's documents of a plan state, after CSA Z259.16-15 cl. 4.3 as summarised publicly, filled in from the
 * analysis where it can.
 *
 * @since 1.0.0
 */
public final class PlanDocumentsSection {
    private static final String ENGINEER = "to be stated by the engineer";

    private final LifelineDesign design;
    private final List<ArrestResult> arrests;
    private final LineEquilibrium installed;
    private final Quantities q;

    /**
     * A section in the units of a report.
     *
     * @param design the design
     * @param arrests its arrests
     * @param installed the line as installed
     * @param q the units
     */
    public PlanDocumentsSection(
            LifelineDesign design, List<ArrestResult> arrests, LineEquilibrium installed, Quantities q) {
        this.design = design;
        this.arrests = arrests;
        this.installed = installed;
        this.q = q;
    }

    /**
     * Writes the section.
     *
     * @param assessment the worst of the whole line with model factors; without it the arrests as computed are stated
     * @return the section
     */
    public ReportSection section(Optional<AssessmentSection> assessment) {
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
        t.row(
                "Maximum arrest load at the end anchors (MAL)",
                worst(assessment, "endAnchorLoad", most(QuantityKind.FORCE, ArrestResult::endAnchorLoad)));
        t.row(
                "Maximum load on every component",
                assessment
                        .map(a -> a.loadsInDocuments() + "; cable "
                                + worst(assessment, "maximumTension", "no fall was analysed"))
                        .orElseGet(this::loads));
        t.row("Sags", sags(assessment));
        t.row("Deployment of absorbers", worst(assessment, "deployment", deployment()));
        t.row(
                "Maximum arrest force on a worker (MAF)",
                worst(assessment, "arrestForce", most(QuantityKind.FORCE, ArrestResult::arrestForce)));
        t.row("Worst case over temperature", assessment.isPresent() ? "named with each value" : worst());
        t.row(
                "Clearance",
                assessment
                        .map(a -> "required below the line " + worst(assessment, "requiredBelowLine", "–")
                                + a.inDocuments("clearanceMargin")
                                        .map(m -> "; margin " + m)
                                        .orElse(""))
                        .orElseGet(this::clearance));
        return new ReportSection(
                "Documents of the plan",
                1,
                List.of(
                        t.build(),
                        new ReportBlock.Paragraph((assessment.isPresent()
                                        ? "Loads and distances are the worst of the whole line with the model factors. "
                                        : "Loads and distances are those of the arrests as computed. ")
                                + "Items after CSA Z259.16-15 cl. 4.3, as summarised publicly. The list is an aid; the"
                                + " document that applies decides what is to be stated.")));
    }

    private static String worst(Optional<AssessmentSection> assessment, String quantity, String otherwise) {
        return assessment.flatMap(a -> a.inDocuments(quantity)).orElse(otherwise);
    }

    private String layout() {
        List<String> runs = new ArrayList<>();
        for (int i = 1; i <= design.line().spans(); i++) {
            runs.add(q.stated(QuantityKind.LENGTH, design.line().run(i)));
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
        return design.workers().size() + " described, " + q.stated(QuantityKind.MASS, least) + " to "
                + q.stated(QuantityKind.MASS, most) + "; at most " + together + " on the line in an analysed fall";
    }

    private String components() {
        Cable c = design.line().cable();
        String strength = c.breakingStrength().isPresent()
                ? "minimum breaking strength "
                        + q.stated(QuantityKind.FORCE, c.breakingStrength().getAsDouble()) + ", termination efficiency "
                        + q.input(QuantityKind.RATIO, c.terminationEfficiency())
                : "minimum breaking strength not stated";
        List<String> anchors = new ArrayList<>();
        for (Support s : design.line().supports()) {
            s.capacity().ifPresent(k -> anchors.add(InertText.name(s.id()) + " " + q.stated(QuantityKind.FORCE, k)));
        }
        return "cable " + InertText.name(c.name()) + ": " + strength + "; stated capacity of anchors: "
                + (anchors.isEmpty() ? "none" : String.join(", ", anchors)) + "; connectors and fittings: " + ENGINEER;
    }

    private String environment() {
        return "analysed at "
                + design.temperatures().stream()
                        .map(x -> q.input(QuantityKind.TEMPERATURE, x))
                        .collect(Collectors.joining(", "))
                + "; corrosion, wetness and frost: " + ENGINEER;
    }

    private String most(QuantityKind m, ToDoubleFunction<ArrestResult> value) {
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
            list.add(InertText.name(design.line().supports().get(i).id()) + " " + q.result(QuantityKind.FORCE, most));
        }
        list.add("cable " + most(QuantityKind.FORCE, ArrestResult::maximumTension));
        return String.join("; ", list);
    }

    private String sags(Optional<AssessmentSection> assessment) {
        String initial = installed.spans().stream()
                .map(SpanState::sag)
                .map(s -> q.result(QuantityKind.LENGTH, s))
                .collect(Collectors.joining(", "));
        return "initial " + initial
                + (arrests.isEmpty()
                        ? ""
                        : "; at the load " + worst(assessment, "sag", most(QuantityKind.LENGTH, ArrestResult::sag)));
    }

    private String deployment() {
        String text = most(QuantityKind.LENGTH, ArrestResult::deployment);
        double inline = arrests.stream()
                .flatMap(r -> r.inlineAbsorbers().stream())
                .mapToDouble(a -> a.extension())
                .max()
                .orElse(-1);
        return inline < 0 ? text : text + "; in-line absorber " + q.result(QuantityKind.LENGTH, inline);
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
        return "loads: " + CaseNames.name(load, q) + "; distances: " + CaseNames.name(distance, q);
    }

    private String clearance() {
        if (arrests.isEmpty()) {
            return "no fall was analysed";
        }
        return "required below the line "
                + most(QuantityKind.LENGTH, r -> r.clearance().requiredBelowLine());
    }
}
