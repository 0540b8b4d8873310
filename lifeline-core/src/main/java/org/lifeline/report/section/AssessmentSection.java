package org.lifeline.report.section;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.motion.ForceFilter;
import org.lifeline.analysis.motion.MotionSummary;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.InertText;
import org.lifeline.base.unit.SignificantDigits;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.FollowedArrest;
import org.lifeline.design.assessment.GoverningValue;
import org.lifeline.design.assessment.MotionScope;
import org.lifeline.design.assessment.NotComputed;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.incident.SecondFall;
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
        blocks.addAll(allowances());
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
                    CaseNames.method(g.method()),
                    cell(g, g.balanceExtreme()),
                    cell(g, g.inTimeExtreme()),
                    cell(g, stated(g)));
        }
        return t.build();
    }

    /** The forces in time that stand in the table: as computed, what the meshes may hide, behind the filter, what is judged. */
    private List<ReportBlock> allowances() {
        Map<String, Double> judged = new LinkedHashMap<>();
        List<MotionSections.ForceInTime> forces = new ArrayList<>();
        for (GoverningValue g : result.governing()) {
            g.inTimeExtreme().flatMap(e -> inTime(g, e)).ifPresent(f -> {
                forces.add(f);
                judged.put(f.name(), g.inTimeExtreme().orElseThrow().value());
            });
        }
        if (forces.isEmpty()) {
            return List.of();
        }
        boolean filtered = result.forceFilter() != ForceFilter.NONE;
        double factor = result.design().modelFactors().force();
        String sum = (filtered ? "force behind 100 Hz" : "peak") + " and allowance";
        return List.of(
                new MotionSections(q)
                        .forceTable(
                                "Forces in time: as computed, with what finer meshes may add, and behind a filter",
                                factor == 1
                                        ? "Judged: " + sum
                                        : "Judged: " + q.input(QuantityKind.RATIO, factor) + " × (" + sum + ")",
                                forces,
                                f -> judged.getOrDefault(f.name(), Double.NaN)),
                new ReportBlock.Paragraph("The allowance is a bound of what ever finer meshes would add (appendix A.6)."
                        + " Behind 100 Hz: the same force through a low-pass filter, as laboratories record forces (recalled,"
                        + " not seen). Forces are judged as the assessment reads them: "
                        + result.forceFilter().words() + ". The model factor is in the last column alone."));
    }

    /** A governing force in time, as it is and behind the filter; of the end anchors the one that governs. */
    private Optional<MotionSections.ForceInTime> inTime(GoverningValue g, Extreme e) {
        ArrestResult r = e.arrest();
        MotionSummary m = r.motion().orElse(null);
        if (m == null || !e.unit().equals("N")) {
            return Optional.empty();
        }
        if (g.support().isPresent()) {
            return Optional.of(onSupport(name(g), r, m, g.support().get()));
        }
        return g.quantity().flatMap(quantity -> switch (quantity) {
            case MAXIMUM_TENSION ->
                Optional.of(new MotionSections.ForceInTime(
                        name(g),
                        r.maximumTension(),
                        m.wholeRun().filteredTension(),
                        m.allowances().tension()));
            case ARREST_FORCE ->
                Optional.of(new MotionSections.ForceInTime(
                        name(g),
                        r.arrestForce(),
                        MotionSections.filteredArrestForce(r, m.wholeRun()),
                        m.allowances().arrestForce()));
            case END_ANCHOR_LOAD -> {
                int last = r.supports().size() - 1;
                yield Stream.of(0, last)
                        .map(i -> onSupport(name(g), r, m, r.supports().get(i).id()))
                        .max(Comparator.comparingDouble(this::read));
            }
            default -> Optional.empty();
        });
    }

    private double read(MotionSections.ForceInTime f) {
        return result.forceFilter() == ForceFilter.NONE
                ? f.peak() + f.allowance().force()
                : f.filtered() + f.allowance().filteredForce();
    }

    private static MotionSections.ForceInTime onSupport(String name, ArrestResult r, MotionSummary m, String id) {
        double force = r.supports().stream()
                .filter(s -> s.id().equals(id))
                .mapToDouble(SupportReaction::force)
                .findFirst()
                .orElseThrow();
        return new MotionSections.ForceInTime(
                name,
                force,
                m.wholeRun().support(id).filteredForce(),
                m.allowances().support(id));
    }

    private ReportBlock places() {
        TableBuilder t = new TableBuilder("Where it governs").text("Quantity").text("Case");
        for (GoverningValue g : result.governing()) {
            t.row(name(g), CaseNames.name(g.fallCase(), q));
        }
        return t.build();
    }

    /**
     * A second fall within the first second, and the line at rest with a rescuer.
     *
     * @return the section; empty where the design states neither
     */
    public Optional<ReportSection> incidents() {
        LifelineDesign design = result.design();
        List<ReportBlock> blocks = new ArrayList<>();
        design.secondFall().ifPresent(f -> secondFall(f, blocks));
        design.rescuerMass().ifPresent(m -> rescue(m, blocks));
        return blocks.isEmpty()
                ? Optional.empty()
                : Optional.of(new ReportSection("Second fall and rescue", 1, blocks));
    }

    private void secondFall(SecondFall second, List<ReportBlock> blocks) {
        blocks.add(new ReportBlock.Paragraph(
                "Second fall: " + InertText.name(second.worker()) + " falls at the place of the first fall, begun "
                        + second.delays().stream().map(d -> d + " s").collect(Collectors.joining(", "))
                        + " after it, beside the arrests that are worst without; half-way between two delays, and beside those"
                        + " places, where it is worst. The values are those of arrests in time with what their meshes may hide;"
                        + " a worse delay between two that were followed is not excluded."));
        blocks.add(
                result.secondFall().isEmpty()
                        ? new ReportBlock.Paragraph("It was NOT COMPUTED; see the warnings.")
                        : incident(
                                "Worst with a second fall", result.secondFall().get()));
    }

    private void rescue(double mass, List<ReportBlock> blocks) {
        blocks.add(
                new ReportBlock.Paragraph("Rescue: the line at rest under the weights of those who have fallen and of a"
                        + " rescuer of " + q.input(QuantityKind.MASS, mass)
                        + " at the place of the fall, at every station, temperature"
                        + " and deployment of the absorber. Nothing moves: raising, lowering and swing are not in it. In-line absorbers"
                        + " and anchors with friction are taken as before the arrest."));
        blocks.add(
                result.rescue().isEmpty()
                        ? new ReportBlock.Paragraph("It was NOT COMPUTED; see the warnings.")
                        : incident(
                                "Worst of the line at rest with a rescuer",
                                result.rescue().get()));
    }

    private ReportBlock incident(String title, Extremes extremes) {
        TableBuilder t = new TableBuilder(title + ", model factors applied")
                .text("Quantity")
                .number("Worst")
                .text("Governs")
                .text("Case");
        for (Extreme e : extremes.governing()) {
            boolean governs = result.governing(e.name())
                    .map(g -> g.arrest().equals(e.arrest()) && g.factored() == e.value())
                    .orElse(false);
            t.row(
                    name(e.name(), e.quantity(), e.support().isPresent()),
                    number(e.unit(), e.value()),
                    governs ? "yes" : "no",
                    CaseNames.name(e.fallCase(), q));
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
        return name(g.name(), g.quantity(), g.support().isPresent());
    }

    private static String name(String name, Optional<Quantity> quantity, boolean ofSupport) {
        return ofSupport
                ? CaseNames.capital(InertText.name(name))
                : CaseNames.capital(quantity.map(Quantity::words).orElse(name));
    }

    private String cell(GoverningValue g, Optional<Extreme> extreme) {
        return extreme.map(e -> number(g, e.value())).orElse("–");
    }

    private String number(GoverningValue g, double value) {
        return number(g.unit(), value);
    }

    private String number(String unit, double value) {
        return q.result(
                switch (unit) {
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
                + (w.place().isEmpty() ? "" : " (" + place(w.place()) + ")") + ".";
    }

    /** The case of a warning as the report names cases, in its units; as the warning has it where the report does not know it. */
    private String place(String described) {
        Stream<FallCase> known = Stream.of(
                        result.stated().cases().stream().map(ComputedCase::fallCase),
                        result.followed().stream().map(FollowedArrest::fallCase),
                        result.governing().stream().map(GoverningValue::fallCase),
                        result.rescueStates().stream().map(ComputedCase::fallCase),
                        result.envelope().extremes().all().stream().map(Extreme::fallCase))
                .flatMap(s -> s);
        return known.filter(c -> c.describe().equals(described))
                .findFirst()
                .map(c -> CaseNames.name(c, q))
                .orElse(InertText.plain(described));
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
                        + CaseNames.method(g.method()) + "; "
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
