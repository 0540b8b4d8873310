package org.lifeline.report.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.warning.ModelLimits;
import org.lifeline.base.InertText;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.model.Attachment;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Passage;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;
import org.lifeline.report.document.UnitChoice;

/**
 * Assumptions, model factors, iterations, what was not considered, cautions.
 *
 * @since 1.0.0
 */
public final class RemarkSections {
    private RemarkSections() {}

    /**
     * Assumptions of the analysis.
     *
     * @param design the design
     * @param arrests its arrests
     * @param q the units
     * @param more further assumptions, each a sentence
     * @return the section
     */
    public static ReportSection assumptions(
            LifelineDesign design, List<ArrestResult> arrests, Quantities q, List<String> more) {
        List<String> items = new ArrayList<>();
        items.add(
                "The cable is perfectly flexible, elastic (unloading follows the loading curve), and hangs in the vertical"
                        + " plane of each span; its weight acts along its unstretched length.");
        items.add(
                "Support coordinates are as installed: elastic anchors have already yielded to the installed reaction.");
        items.add("While the line was tensioned the cable ran freely over every intermediate anchor; clamps were closed"
                + " afterwards.");
        if (design.line().supports().stream().anyMatch(s -> s.passage().kind() == Passage.Kind.FRICTION)) {
            items.add(
                    "At anchors with friction the cable sticks while the ratio of its tensions lies within e^(±μθ), θ the angle"
                            + " turned there in space; beyond that it slips (capstan rule). The load is followed step by step.");
        }
        items.add(
                "The force of a worker on the line is vertical; workers are masses that fall straight down and take no energy"
                        + " themselves.");
        if (design.workers().stream().anyMatch(w -> w.attachment() == Attachment.FREE_RUNNING)) {
            items.add(
                    "A free-running attachment runs along its span without friction to where the tension is the same on both"
                            + " sides; free fall and descent count from the cable at the worker's station before the fall.");
        }
        if (arrests.stream().anyMatch(r -> r.method() == Method.ENERGY_BALANCE)) {
            items.add(
                    "Energy balance: at the lowest point the energy set free by the fall equals the work of the line along its"
                            + " static load path and the work of the connecting subsystem. Inertia of the cable is left out: a"
                            + " force applied within a few milliseconds can overshoot; a model factor on force covers that if the"
                            + " engineer sets one.");
        }
        if (arrests.stream().anyMatch(r -> r.method() == Method.TRANSIENT)) {
            items.add(
                    "Arrests in time: cable of lumped masses without bending stiffness, internal damping, no drag of the"
                            + " air; connecting subsystems without mass.");
        }
        items.add(
                "Deceleration distance is the deployment of the connecting subsystem alone; elongation and sag of the line are"
                        + " not part of it (OSHA letter, 9 February 1995).");
        items.add("Unstretched lengths change with temperature by the factor 1 + α ΔT since installation at "
                + q.input(QuantityKind.TEMPERATURE, design.line().installed().temperature())
                + "; cable properties are the same at all temperatures.");
        items.add("A worker who is attached to the line and stands puts no load on it.");
        more.forEach(m -> items.add(InertText.plain(m)));
        return new ReportSection("Assumptions", 1, List.of(new ReportBlock.Items(items)));
    }

    /**
     * The model factors of the design.
     *
     * @param design the design
     * @return the section
     */
    public static ReportSection modelFactors(LifelineDesign design) {
        double f = design.modelFactors().force();
        double d = design.modelFactors().distance();
        TableBuilder t = new TableBuilder("Model factors").text("On").number("Factor");
        t.row("computed forces", Quantities.in(UnitChoice.SI).input(QuantityKind.RATIO, f));
        t.row("computed distances", Quantities.in(UnitChoice.SI).input(QuantityKind.RATIO, d));
        return new ReportSection(
                "Model factors",
                1,
                List.of(
                        t.build(),
                        new ReportBlock.Paragraph(
                                f == 1 && d == 1
                                        ? "Both are 1: computed values are not scaled. In published drop tests static methods"
                                                + " were off by up to a fifth (Galy & Lan, Int. J. Occup. Saf. Ergon. 24(1),"
                                                + " 2018; Goh et al., 2020); whether a factor is needed is the engineer's"
                                                + " decision."
                                        : "Set by the engineer to cover the difference between method and test. Tables show"
                                                + " computed values and, beside them, these times the factor."
                                                + reason(design))));
    }

    /**
     * What a reader must know first where a model factor makes results look better than they were computed.
     *
     * @param design the design
     * @return the sentence; empty where no factor is below 1
     */
    static Optional<String> factorsBelowOne(LifelineDesign design) {
        ModelFactors m = design.modelFactors();
        if (!m.isBelowOne()) {
            return Optional.empty();
        }
        Quantities q = Quantities.in(UnitChoice.SI);
        return Optional.of("a model factor is below 1 (forces " + q.input(QuantityKind.RATIO, m.force())
                + ", distances " + q.input(QuantityKind.RATIO, m.distance())
                + "): criteria are judged by less than was computed. Stated reason: " + InertText.plain(m.reason()));
    }

    private static String reason(LifelineDesign design) {
        String reason = design.modelFactors().reason();
        return reason.isEmpty() ? "" : " Stated reason: " + InertText.plain(reason);
    }

    /**
     * The formulas that the tables of results name.
     *
     * @return the section
     */
    public static ReportSection formulas() {
        return new ReportSection(
                "Formulas",
                1,
                List.of(new ReportBlock.Items(List.of(
                        "[1] Elastic catenary in every piece of cable between two forces (Irvine, Cable Structures, 1981,"
                                + " ch. 1).",
                        "[2] Free fall h = max(0, L + zₕ − zₗ): L taut length of the connecting subsystem (self-retracting:"
                                + " what is paid out + lock-up distance), zₕ harness attachment, zₗ line at the station before"
                                + " the fall.",
                        "[3] Energy balance M g (h + δ + x) = W + E, P = Σ F(x): W = ∫ P dδ on the line, E = Σ ∫ F dx in the"
                                + " connecting subsystems.",
                        "[4] W = growth of strain energy and weight potential of the cable + lift of those who hang + heat of"
                                + " friction + work of in-line absorbers + energy of elastic anchors.",
                        "[5] Sag f = vertical distance from the chord of the span, between its supports where they now are, to"
                                + " the load.",
                        "[6] Total fall distance = h + x + δ + harness stretch.",
                        "[7] Passage with friction: the cable sticks while e^(−μθ) ≤ T₂/T₁ ≤ e^(μθ), θ the angle turned"
                                + " (capstan rule).",
                        "[8] Clearance: elevations from the line down, each row less its value.",
                        "[9] In time: lumped masses on tension-only segments, T = EA(ε + τ dε/dt); forces and tensions are"
                                + " peaks of the first catch, positions and energies those at the lowest point.",
                        "[10] Swing: D = √(d² + t²), d distance of the worker from the line, t how far the attachment runs"
                                + " along it. Pendulum of length ℓ, the taut length, about where the attachment is held or comes"
                                + " to rest: drop ℓ − √(ℓ² − d²), or ℓ where d ≥ ℓ, and the height that the attachment loses as"
                                + " it runs; ℓ (1 − cos θ) = drop gives the angle θ, at most 90°."))));
    }

    /**
     * What the analysis leaves out.
     *
     * @param design the design
     * @param arrests its arrests
     * @param inTime true if arrests were followed in time
     * @param sidePull true if loads for the supporting structure have a pull across the line in them
     * @return the section
     */
    public static ReportSection notConsidered(
            LifelineDesign design, List<ArrestResult> arrests, boolean inTime, boolean sidePull) {
        return notConsidered(design, arrests, inTime, sidePull, Optional.empty());
    }

    /**
     * What the analysis leaves out, where an assessment may go further.
     *
     * @param design the design
     * @param arrests its arrests
     * @param inTime true if arrests were followed in time
     * @param sidePull true if loads for the supporting structure have a pull across the line in them
     * @param assessment the assessment, if there is one: it may have followed a second fall or computed a rescue
     * @return the section
     */
    public static ReportSection notConsidered(
            LifelineDesign design,
            List<ArrestResult> arrests,
            boolean inTime,
            boolean sidePull,
            Optional<AssessmentResult> assessment) {
        List<String> items = new ArrayList<>();
        if (arrests.stream().anyMatch(r -> r.method() == Method.ENERGY_BALANCE)) {
            items.add("Motion: overshoot beyond the static path, waves in the cable, rebound"
                    + (inTime ? ", except in the arrests that were followed in time." : " (energy balance only)."));
        }
        ModelLimits.list().stream()
                .map(each -> left(each, design, assessment))
                .forEach(each -> items.add(CaseNames.capital(each)
                        + (each.equals(ModelLimits.SIDE_PULL) && sidePull
                                ? ", except in the loads for the supporting structure."
                                : ".")));
        if (!design.line().cable().elongation().isLinear()) {
            items.add("What is put into a load–elongation curve of the rope is not taken out again when it unloads.");
        }
        return new ReportSection("Not considered", 1, List.of(new ReportBlock.Items(items)));
    }

    /** What is left of a limit where the design states, or the assessment has computed, what it names. */
    private static String left(String limit, LifelineDesign design, Optional<AssessmentResult> assessment) {
        boolean conditions = design.workers().stream()
                .anyMatch(w -> !w.connection().deployment().conditions().isEmpty());
        if (limit.equals(ModelLimits.WET_OR_COLD) && conditions) {
            return ModelLimits.WET_OR_COLD_ELSEWHERE;
        }
        if (limit.equals(ModelLimits.NEAR_FALLS)
                && assessment.flatMap(AssessmentResult::secondFall).isPresent()) {
            return ModelLimits.NEAR_FALLS_ELSEWHERE;
        }
        if (limit.equals(ModelLimits.RESCUE)
                && assessment.flatMap(AssessmentResult::rescue).isPresent()) {
            return ModelLimits.RESCUE_IN_MOTION;
        }
        return limit;
    }

    /**
     * How the results are to be used.
     *
     * @return the section
     */
    public static ReportSection cautions() {
        return new ReportSection(
                "Cautions",
                1,
                List.of(new ReportBlock.Items(List.of(
                        "These results are an aid for a qualified person or licensed engineer, who answers for the design.",
                        "They do not replace the applicable code, the manufacturer's instructions, or tests. Local codes and"
                                + " licensed practice take precedence.",
                        "A line that has arrested a fall, or a component that fails inspection, is taken out of service.",
                        "Rescue of the suspended worker must be planned before work begins.",
                        "Nothing in this report states that a design complies with a regulation or standard."))));
    }
}
