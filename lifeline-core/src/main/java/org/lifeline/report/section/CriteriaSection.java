package org.lifeline.report.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.lifeline.base.InertText;
import org.lifeline.design.criteria.CapacityCheck;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.criteria.Jurisdiction;
import org.lifeline.design.criteria.Status;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;

/**
 * What came out for the criteria: demand, capacity, ratio, governing case; sources and how they are known.
 *
 * @since 1.0.0
 */
public final class CriteriaSection {
    private static final double SMALL = 0.1; // m

    private final GoverningArrests governing;
    private final Quantities q;

    /**
     * A section in the units of a report.
     *
     * @param governing the arrests and what governs them
     * @param q the units
     */
    public CriteriaSection(GoverningArrests governing, Quantities q) {
        this.governing = governing;
        this.q = q;
    }

    /**
     * Writes the section.
     *
     * @param results what came out for the criteria
     * @return the section
     */
    public ReportSection section(List<CriterionResult> results) {
        List<ReportBlock> blocks = new ArrayList<>();
        if (results.isEmpty()) {
            blocks.add(new ReportBlock.Paragraph("The design names none."));
            return new ReportSection("Criteria", 1, blocks);
        }
        blocks.add(new ReportBlock.Paragraph(
                "Ratios of demand to capacity, model factors applied, for a qualified person to"
                        + " judge. MET means that the demand does not exceed the capacity in any case that was computed; it says"
                        + " nothing about whether a design satisfies a code as a whole."));
        blocks.add(table("Demand over capacity", results));
        List<String> reasons = new ArrayList<>();
        for (CriterionResult r : results) {
            if (!r.reason().isEmpty()) {
                reasons.add(InertText.name(r.criterion().id()) + " was not evaluated: " + InertText.plain(r.reason())
                        + ".");
            }
        }
        if (!reasons.isEmpty()) {
            blocks.add(new ReportBlock.Items(reasons));
        }
        parts(results, blocks);
        derivations(results, blocks);
        blocks.add(sources(results));
        return new ReportSection("Criteria", 1, blocks);
    }

    ReportBlock table(String caption, List<CriterionResult> results) {
        TableBuilder t = head(caption, "Criterion");
        for (CriterionResult r : results) {
            CapacityCheck c = r.check();
            boolean single = c.parts().isEmpty()
                    && !c.quantityKey().isEmpty()
                    && !c.title().isEmpty();
            String id = InertText.name(r.criterion().id());
            row(t, single ? id + ": " + InertText.plain(c.title()) : id, c);
        }
        return t.build();
    }

    private void parts(List<CriterionResult> results, List<ReportBlock> blocks) {
        TableBuilder t = head("Criteria of several comparisons, each by itself", "Criterion: comparison");
        boolean any = false;
        for (CriterionResult r : results) {
            if (!r.check().parts().isEmpty()) {
                any = true;
                add(t, InertText.name(r.criterion().id()), r.check(), "");
            }
        }
        if (any) {
            blocks.add(t.build());
        }
    }

    private void add(TableBuilder t, String id, CapacityCheck check, String lead) {
        for (int i = 0; i < check.parts().size(); i++) {
            CapacityCheck part = check.parts().get(i);
            String word = i == 0 ? lead : check.isOfAlternatives() ? ", or" : ", and";
            if (part.parts().isEmpty()) {
                String title = part.title().isEmpty() ? part.quantityKey() : part.title();
                row(t, id + word + ": " + InertText.plain(title), part);
            } else {
                add(t, id, part, word);
            }
        }
    }

    /** Where demand and capacity of every comparison come from, with the factors in them. */
    private void derivations(List<CriterionResult> results, List<ReportBlock> blocks) {
        TableBuilder t = new TableBuilder("How demand and capacity come about")
                .text("Criterion")
                .text("Demand")
                .text("Capacity");
        for (CriterionResult r : results) {
            CriterionDerivation d = new CriterionDerivation(governing.design(), q);
            leaves(r.check())
                    .filter(c -> !Double.isNaN(c.ratio()))
                    .forEach(c -> t.row(
                            InertText.name(r.criterion().id())
                                    + (c.component().isEmpty() ? "" : ", " + InertText.name(c.component())),
                            d.demand(c),
                            d.capacity(c)));
        }
        ReportBlock.Table table = t.build();
        if (!table.rows().isEmpty()) {
            blocks.add(table);
        }
    }

    private static Stream<CapacityCheck> leaves(CapacityCheck check) {
        return check.parts().isEmpty()
                ? Stream.of(check)
                : check.parts().stream().flatMap(CriteriaSection::leaves);
    }

    private TableBuilder head(String caption, String first) {
        return new TableBuilder(caption)
                .text(first)
                .number("Demand")
                .number("Capacity")
                .number("Demand over capacity")
                .text("Result")
                .text("Governed by");
    }

    private void row(TableBuilder t, String name, CapacityCheck c) {
        boolean numbers = !Double.isNaN(c.ratio());
        t.row(
                name,
                numbers ? quantity(q, c.unit(), c.demand()) : "–",
                numbers ? quantity(q, c.unit(), c.capacity()) : "–",
                numbers ? q.result(QuantityKind.RATIO, c.ratio()) : "–",
                c.status().words(),
                c.governing()
                        .map(e -> governing.name(e, q))
                        .orElse(c.status() == Status.NOT_EVALUATED ? "–" : "the design"));
    }

    /** A quantity by its SI unit, "rad" in degrees, bare numbers as short as they are. */
    static String quantity(Quantities q, String unit, double value) {
        return switch (unit) {
            case "N" -> q.result(QuantityKind.FORCE, value);
            case "m" -> q.result(value > 0 && value < SMALL ? QuantityKind.SMALL_LENGTH : QuantityKind.LENGTH, value);
            case "kg" -> q.result(QuantityKind.MASS, value);
            case "rad" -> q.result(QuantityKind.ANGLE, value);
            default ->
                value == Math.rint(value) ? q.input(QuantityKind.RATIO, value) : q.result(QuantityKind.RATIO, value);
        };
    }

    private ReportBlock sources(List<CriterionResult> results) {
        TableBuilder t = new TableBuilder("What the criteria demand, and where their values come from")
                .text("Criterion")
                .text("Demand")
                .text("Source")
                .text("Holds in")
                .text("Value is");
        for (CriterionResult r : results) {
            Criterion c = r.criterion();
            t.row(
                    InertText.name(c.id()),
                    demand(c),
                    InertText.plain(c.source().citation()),
                    where(c.source().jurisdiction()),
                    c.source().kind().words());
        }
        return t.build();
    }

    /** A limit of the design's own in the units of the report; a built-in one in its own words. */
    private String demand(Criterion c) {
        if (c.source().jurisdiction() == Jurisdiction.DESIGN && c.limits().size() == 1) {
            var limit = c.limits().get(0);
            return words(limit.quantity()) + " " + limit.type().symbol() + " "
                    + quantity(q, limit.unit(), limit.value());
        }
        return InertText.plain(c.title());
    }

    /** The key of a demand in words: "clearanceMargin" becomes "clearance margin". */
    static String words(String key) {
        return key.replaceAll("([a-z])([A-Z])", "$1 $2").toLowerCase(Locale.ROOT);
    }

    private static String where(Jurisdiction j) {
        return switch (j) {
            case UNITED_STATES -> "United States, federal";
            case QUEBEC -> "Québec";
            case ALBERTA -> "Alberta";
            case ONTARIO -> "Ontario";
            case BRITISH_COLUMBIA -> "British Columbia";
            case MANITOBA -> "Manitoba";
            case EUROPE -> "Europe";
            case SINGAPORE -> "Singapore";
            case JAPAN -> "Japan";
            case NEW_ZEALAND -> "New Zealand";
            case INTERNATIONAL -> "international";
            case PRACTICE -> "the trade";
            case DESIGN -> "this design";
        };
    }
}
