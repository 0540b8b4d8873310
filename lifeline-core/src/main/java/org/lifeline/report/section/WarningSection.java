package org.lifeline.report.section;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.TransientResult;
import org.lifeline.analysis.motion.MotionSummary;
import org.lifeline.analysis.motion.WorkerPeaks;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.InertText;
import org.lifeline.base.UnitSystem;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Lifeline;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;

/**
 * What a reader must not overlook.
 *
 * @since 1.0.0
 */
public final class WarningSection {
    /** Tension for each unit of force above which a line is called flat [-]: about 5° (29 CFR 1926 Subpart M App. C). */
    private static final double FLAT = 6;

    /** Slope of a span above which a free attachment may run down it [°]; CEN/TS 16415:2013 draws a line there. */
    private static final double STEEP = 15;

    /** Share by which a later peak must exceed that of the first catch to be worth a warning [-]. */
    private static final double NOTABLE = 1e-3;

    /** Share of the energy of the fall to which the account of a motion should close [-]. */
    private static final double CLOSED = 1e-3;

    /** Share by which a load elsewhere, or in time, must be larger to be worth a warning [-]. */
    private static final double NOTABLE_ELSEWHERE = 0.01;

    /** The same for distances [m]. */
    private static final double NOTABLE_LENGTH = 0.01;

    private static final List<Quantity> COMPARED = List.of(
            Quantity.END_ANCHOR_LOAD,
            Quantity.ARREST_FORCE,
            Quantity.FREE_FALL,
            Quantity.DEPLOYMENT,
            Quantity.REQUIRED_BELOW_LINE,
            Quantity.CLEARANCE_MARGIN);

    private final GoverningArrests governing;
    private final Quantities q;
    private final List<String> list = new ArrayList<>();

    /**
     * A section in the units of a report.
     *
     * @param governing the arrests and what governs them
     * @param q the units
     */
    public WarningSection(GoverningArrests governing, Quantities q) {
        this.governing = governing;
        this.q = q;
    }

    /**
     * Writes the section.
     *
     * @param verification the independent check of the arrests
     * @param motions arrests in time
     * @param envelope the envelope along the line
     * @return the section
     */
    public ReportSection section(
            IndependentCheckSection verification, List<TransientResult> motions, Optional<EnvelopeResult> envelope) {
        if (!verification.failed().isEmpty()) {
            list.add(CaseNames.capital(CaseNames.list(verification.failed()))
                    + ": the independent check FAILED; do not use the results before the cause is known.");
        }
        if (!verification.notCheckable().isEmpty()) {
            list.add(CaseNames.capital(CaseNames.list(verification.notCheckable()))
                    + ": the energies cannot be checked; magnitudes lie so far apart that rounding hides an error.");
        }
        RemarkSections.factorsBelowOne(governing.design()).ifPresent(s -> list.add(CaseNames.capital(s)));
        arrests();
        envelope.ifPresent(this::elsewhere);
        inTime(motions);
        Lifeline line = governing.design().line();
        for (int i = 1; i <= line.spans(); i++) {
            double slope = Math.toDegrees(StrictMath.atan2(Math.abs(line.rise(i)), line.run(i)));
            if (slope > STEEP) {
                list.add("Span " + i + " climbs at " + q.result(QuantityKind.ANGLE, Math.toRadians(slope))
                        + ": an attachment may run down the span before and during a fall; see the clearance there.");
            }
        }
        ReportBlock block = list.isEmpty() ? new ReportBlock.Paragraph("None.") : new ReportBlock.Items(list);
        return new ReportSection("Warnings", 1, List.of(block));
    }

    private void arrests() {
        typed();
        Found flat = where(r -> r.lineLoad() > 0 && tensionRatio(r) > FLAT);
        flat.ifPresentAdd("the sag angle is small, the tension is up to "
                + QuantityKind.RATIO.number(flat.most(WarningSection::tensionRatio), UnitSystem.SI)
                + " times the force on the line; small changes of sag, stiffness or temperature change it much.");
        Found lacking = where(r -> margin(r) < 0);
        lacking.ifPresentAdd("the clearance margin is negative; up to "
                + q.result(QuantityKind.LENGTH, lacking.most(r -> -margin(r))) + " are LACKING.");
    }

    private double margin(ArrestResult r) {
        return Quantity.CLEARANCE_MARGIN.value(r, governing.design().modelFactors());
    }

    private static double tensionRatio(ArrestResult r) {
        return r.maximumTension() / r.lineLoad();
    }

    private void inTime(List<TransientResult> motions) {
        for (int i = 0; i < governing.arrests().size(); i++) {
            ArrestResult r = governing.arrests().get(i);
            String name = "Arrest " + (i + 1);
            r.motion().ifPresent(m -> motion(name, r, m));
        }
        for (TransientResult each : motions) {
            ArrestResult r = each.arrest();
            String name = "In time, " + CaseNames.name(r, q);
            each.tensionRatio().ifPresent(ratio -> {
                if (ratio > 1 + NOTABLE_ELSEWHERE) {
                    list.add(name + ": the tension reaches " + q.result(QuantityKind.FORCE, r.maximumTension()) + ", "
                            + QuantityKind.RATIO.number(ratio, UnitSystem.SI) + " times that of the energy balance.");
                }
            });
            r.motion().ifPresent(m -> motion(name, r, m));
        }
    }

    private void motion(String name, ArrestResult r, MotionSummary m) {
        if (!m.firstCatchOver()) {
            list.add(name + ": the motion was not followed to the end of the first catch.");
        }
        double bound = m.allowances().relative();
        if (!(bound <= r.convergence().tolerance())) {
            list.add(name
                    + (Double.isFinite(bound)
                            ? ": finer meshes may change peaks by " + MotionSections.percent(bound) + "; add "
                                    + q.result(
                                            QuantityKind.FORCE,
                                            m.allowances().tension().force())
                                    + " to the tension and "
                                    + q.result(
                                            QuantityKind.FORCE,
                                            m.allowances().arrestForce().force())
                                    + " to the arrest force."
                            : ": fewer than three meshes were followed, so nothing bounds what finer ones change."));
        }
        drift(m).ifPresent(text -> list.add(name + ": " + text));
        if (m.wholeRun().tension().value() > r.maximumTension() * (1 + NOTABLE)) {
            list.add(name + ": the tension after the first catch is larger, "
                    + q.result(QuantityKind.FORCE, m.wholeRun().tension().value()) + ".");
        }
        for (WorkerPeaks each : m.wholeRun().workers()) {
            if (each.force().value() > r.arrestForce() * (1 + NOTABLE)) {
                list.add(name + ": the force on " + InertText.name(each.id()) + " after the first catch is larger, "
                        + q.result(QuantityKind.FORCE, each.force().value()) + ".");
            }
        }
    }

    /** What is to be said where the energies of a motion do not add up. */
    static Optional<String> drift(MotionSummary m) {
        if (m.relativeDrift() <= CLOSED) {
            return Optional.empty();
        }
        return Optional.of("the energies of the motion do not add up, they drift apart by "
                + MotionSections.percent(m.relativeDrift())
                + " of that of the fall; its peaks are that uncertain at least.");
    }

    /** Where a fall at another place is worse than those of the design. */
    private void elsewhere(EnvelopeResult envelope) {
        for (Quantity each : COMPARED) {
            Extreme e = envelope.extremes().of(each).orElse(null);
            GoverningArrests.Worst here = governing.worst(each).orElse(null);
            if (e == null || here == null) {
                continue;
            }
            double more = (each.largestIsWorst() ? 1 : -1) * (e.value() - here.factored());
            if (more > (each.isForce() ? NOTABLE_ELSEWHERE * here.factored() : NOTABLE_LENGTH)) {
                QuantityKind m = each.isForce() ? QuantityKind.FORCE : QuantityKind.LENGTH;
                list.add("A fall at another place of the line is more severe than the falls of the design: "
                        + each.words() + " "
                        + q.result(m, e.value()) + " against " + q.result(m, here.factored()) + ", "
                        + CaseNames.place(e.fallCase(), q) + "; see the envelope.");
            }
        }
    }

    /** What the results themselves warn of: those alike in one line, with the arrest where the value is largest. */
    private void typed() {
        Map<String, List<Integer>> numbers = new LinkedHashMap<>();
        Map<String, Warning> worst = new LinkedHashMap<>();
        for (int i = 0; i < governing.arrests().size(); i++) {
            for (Warning each : governing.arrests().get(i).warnings()) {
                String key = each.code() + " " + each.subject();
                numbers.computeIfAbsent(key, k -> new ArrayList<>()).add(i + 1);
                worst.merge(key, each, (a, b) -> b.value() > a.value() ? b : a);
            }
        }
        worst.forEach((key, w) -> list.add(CaseNames.capital(CaseNames.list(numbers.getOrDefault(key, List.of())))
                + ": " + InertText.name(w.subject()) + ": " + w.text() + numbers(w) + "."));
    }

    private String numbers(Warning w) {
        if (Double.isNaN(w.value())) {
            return "";
        }
        QuantityKind kind =
                switch (w.unit()) {
                    case "N" -> QuantityKind.FORCE;
                    case "m" -> QuantityKind.LENGTH;
                    case "rad" -> QuantityKind.ANGLE;
                    default -> QuantityKind.RATIO;
                };
        return ", up to " + q.result(kind, w.value())
                + (Double.isNaN(w.limit()) ? "" : " against " + q.result(kind, w.limit()));
    }

    private Found where(Predicate<ArrestResult> condition) {
        List<Integer> numbers = new ArrayList<>();
        for (int i = 0; i < governing.arrests().size(); i++) {
            if (condition.test(governing.arrests().get(i))) {
                numbers.add(i + 1);
            }
        }
        return new Found(numbers);
    }

    /** The arrests for which something holds. */
    private final class Found {
        private final List<Integer> numbers;

        Found(List<Integer> numbers) {
            this.numbers = numbers;
        }

        double most(ToDoubleFunction<ArrestResult> value) {
            return numbers.stream()
                    .map(n -> governing.arrests().get(n - 1))
                    .mapToDouble(value)
                    .max()
                    .orElse(0);
        }

        void ifPresentAdd(String text) {
            if (!numbers.isEmpty()) {
                list.add(CaseNames.capital(CaseNames.list(numbers)) + ": " + text);
            }
        }
    }
}
