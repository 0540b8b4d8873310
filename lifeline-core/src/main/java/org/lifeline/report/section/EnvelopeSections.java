package org.lifeline.report.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.base.InertText;
import org.lifeline.base.Interval;
import org.lifeline.design.assessment.AssessedCriterion;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.FollowedArrest;
import org.lifeline.design.criteria.CapacityCheck;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.FailedCase;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.Tolerances;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Support;
import org.lifeline.report.chart.EnvelopePicture;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.PlaceText;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;

/**
 * The envelope along the line: worst values, the cases that govern them, pictures.
 *
 * @since 1.0.0
 */
public final class EnvelopeSections {
    private static final int MOST_FAILURES = 20;

    private final EnvelopeResult envelope;
    private final Quantities q;
    private final Optional<AssessmentResult> said;
    private final boolean full;

    /**
     * A section in the units of a report.
     *
     * @param envelope the envelope
     * @param q the units
     */
    public EnvelopeSections(EnvelopeResult envelope, Quantities q) {
        this(envelope, q, Optional.empty(), false);
    }

    private EnvelopeSections(EnvelopeResult envelope, Quantities q, Optional<AssessmentResult> said, boolean full) {
        this.envelope = envelope;
        this.q = q;
        this.said = said;
        this.full = full;
    }

    /**
     * The same without the rows that an assessment in the same report has.
     *
     * @param assessment the assessment; empty for all rows
     * @return the new section
     */
    public EnvelopeSections beside(Optional<AssessmentResult> assessment) {
        return new EnvelopeSections(envelope, q, assessment, full);
    }

    /**
     * The same with all rows, also those that an assessment beside it has, and with every arrest in time.
     *
     * @return the new section
     */
    public EnvelopeSections inFull() {
        return new EnvelopeSections(envelope, q, said, true);
    }

    /**
     * Writes the section.
     *
     * @param governing the arrests of the report
     * @param criteria criteria to be checked over the whole line
     * @param pictures true to draw the envelope
     * @return the section
     */
    public ReportSection section(GoverningArrests governing, List<CriterionResult> criteria, boolean pictures) {
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(new ReportBlock.Paragraph(scope()));
        blocks.add(worst());
        if (!criteria.isEmpty()) {
            List<CriterionResult> here = criteria.stream()
                    .map(c -> c.criterion().check(envelope.extremes()))
                    .toList();
            blocks.add(new CriteriaSection(governing, q).table("The criteria over the whole line", here));
        }
        if (full) {
            inTimeTable().ifPresent(blocks::add);
        }
        failures(blocks);
        if (pictures && !envelope.extremes().all().isEmpty()) {
            blocks.add(new ReportBlock.Figure(EnvelopePicture.loads(envelope, q.choice(), inTime(), limits(criteria))));
            blocks.add(new ReportBlock.Figure(EnvelopePicture.distances(envelope, q.choice())));
        }
        return new ReportSection("Envelope along the line", 1, blocks);
    }

    /** Every arrest that was followed in time. */
    private Optional<ReportBlock> inTimeTable() {
        List<FollowedArrest> followed =
                said.stream().flatMap(a -> a.followed().stream()).toList();
        if (followed.isEmpty()) {
            return Optional.empty();
        }
        TableBuilder t = new TableBuilder(
                        "Arrests that were followed in time: peaks as computed, without model factors and"
                                + " allowances")
                .text("Case")
                .number("Arrest force")
                .number("Tension")
                .number("End anchor load")
                .number("Total fall distance")
                .number("Required elevation");
        for (FollowedArrest each : followed) {
            ArrestResult r = each.arrest();
            t.row(
                    CaseNames.name(each.fallCase(), q),
                    q.result(QuantityKind.FORCE, r.arrestForce()),
                    q.result(QuantityKind.FORCE, r.maximumTension()),
                    q.result(QuantityKind.FORCE, r.endAnchorLoad()),
                    q.result(QuantityKind.LENGTH, r.totalFallDistance()),
                    q.result(QuantityKind.LENGTH, r.clearance().requiredElevation()));
        }
        return Optional.of(t.build());
    }

    private List<ArrestResult> inTime() {
        return said.stream()
                .flatMap(a -> a.followed().stream())
                .map(FollowedArrest::arrest)
                .toList();
    }

    private List<CapacityCheck> limits(List<CriterionResult> criteria) {
        List<CriterionResult> all = said.isPresent()
                ? said.get().criteria().stream().map(AssessedCriterion::result).toList()
                : criteria.stream()
                        .map(c -> c.criterion().check(envelope.extremes()))
                        .toList();
        return all.stream().flatMap(c -> c.check().leaves().stream()).toList();
    }

    private String scope() {
        Tolerances t = envelope.tolerances();
        List<String> ranges = new ArrayList<>();
        t.pretension().ifPresent(i -> ranges.add("pretension × " + range(i)));
        t.friction().ifPresent(i -> ranges.add("friction " + range(i)));
        t.mass()
                .ifPresent(i -> ranges.add(
                        "mass " + q.input(QuantityKind.MASS, i.low()) + " to " + q.input(QuantityKind.MASS, i.high())));
        return "The falls of the design moved along the whole line, at every temperature in service, with both deployment"
                + " forces" + (ranges.isEmpty() ? "" : ", over the ranges: " + String.join("; ", ranges))
                + ". Worst places are found to " + q.result(QuantityKind.SMALL_LENGTH, 1e-3)
                + " or 0.1 % of the value, by "
                + envelope.evaluations()
                + " arrests by energy balance; a narrow peak that no place beside it shows can be missed. Values carry the model"
                + " factors."
                + (inTime().isEmpty()
                        ? ""
                        : " Arrests in time are not in this table: what governs by either method stands in the summary.")
                + (envelope.isComplete() ? "" : " THE SEARCH WAS ENDED EARLY: worse cases may exist.");
    }

    private String range(Interval i) {
        return q.input(QuantityKind.RATIO, i.low()) + " to " + q.input(QuantityKind.RATIO, i.high());
    }

    private ReportBlock worst() {
        TableBuilder t = new TableBuilder(
                        said.isPresent() && !full
                                ? "Worst values anywhere on the line of what the summary does not list, by energy balance"
                                : "Worst values anywhere on the line by energy balance, and the case that governs each")
                .text("Quantity")
                .number("Worst value")
                .text("Fall")
                .number("Span")
                .number("Station")
                .text("Temperature, deployment force, ranges");
        for (Quantity each : Quantity.values()) {
            boolean listed = !full
                    && said.stream()
                            .flatMap(a -> a.governing().stream())
                            .anyMatch(g -> g.quantity().filter(each::equals).isPresent());
            if (each != Quantity.SUPPORT_LOAD && !listed) {
                row(
                        t,
                        CaseNames.capital(each.words()),
                        each.unit(),
                        envelope.extremes().of(each));
            }
        }
        for (Support s : said.isPresent() && !full
                ? List.<Support>of()
                : envelope.design().line().supports()) {
            row(t, "Load on " + InertText.name(s.id()), "N", envelope.extremes().onSupport(s.id()));
        }
        List<Obstruction> obstructions = envelope.design().clearance().obstructions();
        for (int i = 0; i < obstructions.size() && obstructions.size() > 1; i++) {
            row(
                    t,
                    "Margin above obstruction " + (i + 1),
                    "m",
                    envelope.extremes().overObstruction(i));
        }
        return t.build();
    }

    private void row(TableBuilder t, String name, String unit, Optional<Extreme> extreme) {
        extreme.ifPresent(e -> t.row(
                name,
                switch (unit) {
                    case "N" -> q.result(QuantityKind.FORCE, e.value());
                    case "rad" -> q.result(QuantityKind.ANGLE, e.value());
                    default -> q.result(QuantityKind.LENGTH, e.value());
                },
                InertText.name(e.fallCase().fall().id()),
                PlaceText.span(e.fallCase().fall().place()),
                PlaceText.station(
                        e.fallCase().fall().place(),
                        q.result(
                                QuantityKind.LENGTH,
                                envelope.design()
                                        .line()
                                        .stationOf(e.fallCase().fall().place()))),
                q.input(QuantityKind.TEMPERATURE, e.fallCase().temperature()) + ", "
                        + CaseNames.shortSide(e.fallCase().side())
                        + CaseNames.conditions(
                                e.fallCase().fall(),
                                e.fallCase().side(),
                                e.fallCase().temperature())
                        + CaseNames.deviations(e.fallCase(), q, ", ")));
    }

    private void failures(List<ReportBlock> blocks) {
        List<FailedCase> failed = envelope.failures();
        if (failed.isEmpty()) {
            return;
        }
        List<String> items = new ArrayList<>();
        failed.stream().limit(MOST_FAILURES).forEach(f -> items.add(InertText.plain(f.toString())));
        blocks.add(new ReportBlock.Paragraph(
                failed.size() + " cases could not be computed; worse values may hide there. The first of them:"));
        blocks.add(new ReportBlock.Items(items));
    }
}
