package org.lifeline.report.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.InertText;
import org.lifeline.base.unit.SignificantDigits;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.GoverningValue;
import org.lifeline.design.assessment.MotionScope;
import org.lifeline.design.assessment.NotComputed;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;

/**
 * The assessment of the whole line: what governs, by both methods; warnings; what was not computed.
 *
 * @since 1.0.0
 */
public final class AssessmentSection {
    /** So many warnings of one kind are said in one sentence. */
    private static final int SEVERAL = 2;

    private final AssessmentResult result;
    private final Quantities q;

    /**
     * Sections in the units of a report.
     *
     * @param result the assessment
     * @param q the units
     */
    public AssessmentSection(AssessmentResult result, Quantities q) {
        this.result = result;
        this.q = q;
    }

    /**
     * What governs.
     *
     * @return the section
     */
    public ReportSection summary() {
        List<ReportBlock> blocks = new ArrayList<>();
        RemarkSections.factorsBelowOne(result.design())
                .ifPresent(s -> blocks.add(new ReportBlock.Paragraph("ATTENTION: " + s)));
        blocks.add(
                new ReportBlock.Paragraph("The falls of the design moved along the whole line, at every temperature in"
                        + " service and with both deployment forces. "
                        + (result.motion() == MotionScope.LEFT_OUT
                                ? "Arrests in time were LEFT OUT: the values are by energy balance alone; appendix A.6 says how far"
                                        + " arrests in time were from it. "
                                : result.followed().size() + " arrests were followed in time to look for the worst. ")
                        + result.restsOn() + " Model factors are applied; the stated falls stand in a column beside it."
                        + (result.isComplete() ? "" : " THE SEARCH WAS ENDED EARLY: worse cases may exist.")));
        blocks.add(table());
        allowances().ifPresent(blocks::add);
        blocks.add(places());
        blocks.add(damping());
        blocks.add(new ReportBlock.Paragraph(
                "It judges nothing: whether a value is acceptable is for a qualified person to" + " decide."));
        return new ReportSection("Summary", 1, blocks);
    }

    private ReportBlock table() {
        TableBuilder t = new TableBuilder("What governs, model factors applied")
                .text("Quantity")
                .number("Worst")
                .text("Method")
                .number("By energy balance")
                .number("In time")
                .number("Stated falls");
        for (GoverningValue g : result.governing()) {
            t.row(
                    name(g),
                    number(g, g.factored()),
                    g.method() == Method.ENERGY_BALANCE ? "energy balance" : "in time",
                    cell(g, g.balanceExtreme()),
                    cell(g, g.inTimeExtreme()),
                    cell(g, stated(g)));
        }
        return t.build();
    }

    /** What the meshes of the arrests in time may hide of the forces that stand in the table. */
    private Optional<ReportBlock> allowances() {
        List<String> items = new ArrayList<>();
        for (GoverningValue g : result.governing()) {
            g.inTimeExtreme()
                    .filter(e -> e.allowance() > 0
                            && Double.isFinite(e.allowance())
                            && e.unit().equals("N"))
                    .ifPresent(e ->
                            items.add(name(g) + ": " + number(g, e.computed()) + " and " + number(g, e.allowance())));
        }
        if (items.isEmpty()) {
            return Optional.empty();
        }
        items.add(
                0,
                "Values in time are the peak that was computed and what ever finer meshes might add to it (a bound: appendix"
                        + " A.6), both scaled by the model factors, read as "
                        + result.forceFilter().words() + ". Without model factors:");
        return Optional.of(new ReportBlock.Items(items));
    }

    private ReportBlock places() {
        TableBuilder t = new TableBuilder("Where it governs").text("Quantity").text("Case");
        for (GoverningValue g : result.governing()) {
            t.row(name(g), CaseNames.name(g.fallCase(), q));
        }
        return t.build();
    }

    private Optional<Extreme> stated(GoverningValue g) {
        return result.stated().extremes().governing().stream()
                .filter(e -> e.name().equals(g.name()))
                .findFirst();
    }

    private ReportBlock damping() {
        List<String> items = new ArrayList<>();
        for (GoverningValue g : result.governing()) {
            g.dampingRange()
                    .filter(i -> i.high() > i.low())
                    .ifPresent(i -> items.add(name(g) + ": " + number(g, i.low()) + " to " + number(g, i.high())));
        }
        return items.isEmpty()
                ? new ReportBlock.Paragraph("No governing value comes from an arrest in time whose damping matters.")
                : new ReportBlock.Items(prefixed(items));
    }

    private static List<String> prefixed(List<String> items) {
        List<String> list = new ArrayList<>();
        list.add(
                "Peaks in time depend on the damping of the cable, for which no source is known. With a quarter and with four"
                        + " times the damping time, without model factors:");
        list.addAll(items);
        return list;
    }

    private static String name(GoverningValue g) {
        return g.support().isPresent()
                ? CaseNames.capital(InertText.name(g.name()))
                : CaseNames.capital(g.quantity().map(Quantity::words).orElse(g.name()));
    }

    private String cell(GoverningValue g, Optional<Extreme> extreme) {
        return extreme.map(e -> number(g, e.value())).orElse("–");
    }

    private String number(GoverningValue g, double value) {
        return q.result(
                switch (g.unit()) {
                    case "N" -> QuantityKind.FORCE;
                    case "rad" -> QuantityKind.ANGLE;
                    default -> QuantityKind.LENGTH;
                },
                value);
    }

    /**
     * What must not be overlooked.
     *
     * @param check the independent check of the stated falls
     * @return the section
     */
    public ReportSection warnings(IndependentCheckSection check) {
        List<String> items = new ArrayList<>();
        if (!check.failed().isEmpty()) {
            items.add(CaseNames.capital(CaseNames.list(check.failed()))
                    + ": the independent check FAILED; do not use the results before the cause is known.");
        }
        for (List<Warning> alike : result.warningsByKind()) {
            items.add(alike.size() < SEVERAL ? one(alike.get(0)) : several(alike));
        }
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(items.isEmpty() ? new ReportBlock.Paragraph("None.") : new ReportBlock.Items(items));
        List<String> missing = new ArrayList<>();
        for (NotComputed each : result.notComputed()) {
            missing.add(InertText.plain(each.what()) + ": " + InertText.plain(each.why()));
        }
        if (!missing.isEmpty()) {
            blocks.add(new ReportBlock.Paragraph("What could not be computed, or was left out:"));
            blocks.add(new ReportBlock.Items(missing));
        }
        return new ReportSection("Warnings", 1, blocks);
    }

    private String one(Warning w) {
        return CaseNames.capital(InertText.plain(w.subject() + ": " + w.text())) + numbers(w)
                + (w.place().isEmpty() ? "" : " (" + InertText.plain(w.place()) + ")") + ".";
    }

    private String numbers(Warning w) {
        return Double.isNaN(w.value())
                ? ""
                : ": " + value(w, w.value()) + (Double.isNaN(w.limit()) ? "" : " against " + value(w, w.limit()));
    }

    /** Warnings of one kind and in the same words: said once, with all that they are about. */
    private String several(List<Warning> alike) {
        return CaseNames.capital(InertText.plain(alike.get(0).text())) + ": "
                + String.join(
                        "; ",
                        alike.stream()
                                .map(w -> InertText.plain(w.subject())
                                        + numbers(w).replaceFirst("^:", ""))
                                .toList())
                + ".";
    }

    private String value(Warning w, double value) {
        return switch (w.unit()) {
            case "N" -> q.result(QuantityKind.FORCE, value);
            case "m" -> q.result(QuantityKind.LENGTH, value);
            case "rad" -> q.result(QuantityKind.ANGLE, value);
            default -> SignificantDigits.of(value, 4);
        };
    }

    /**
     * A worst value of the whole line with its place, for the documents of a plan.
     *
     * @param name name of the quantity
     * @return value, method and place, if there is such a value
     */
    Optional<String> inDocuments(String name) {
        return result.governing(name)
                .map(g -> number(g, g.factored()) + " ("
                        + (g.method() == Method.ENERGY_BALANCE ? "energy balance" : "in time") + "; "
                        + CaseNames.name(g.fallCase(), q) + ")");
    }

    /**
     * The worst load on every support.
     *
     * @return value and place of each
     */
    String loadsInDocuments() {
        List<String> list = new ArrayList<>();
        for (GoverningValue g : result.governing()) {
            if (g.support().isPresent()) {
                list.add(InertText.name(g.support().get()) + " " + number(g, g.factored()));
            }
        }
        return String.join(", ", list);
    }
}
