package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Interval;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.GoverningValue;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.Tolerances;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.report.Printed;
import org.lifeline.report.PrintedNumber;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;

/** The worst of the whole line as printed: each value with its case, beside what the stated falls give. */
class WholeLineSectionsTest {
    private static final Quantities SI = Quantities.in(UnitChoice.SI);
    private static final LifelineDesign DESIGN = design();
    private static final AssessmentResult ASSESSED =
            Assessment.withDefaults().withoutMotion().solve(DESIGN);
    private static final EnvelopeResult ENVELOPE = Envelope.withDefaults()
            .withIntervals(4)
            .withTolerances(
                    Tolerances.none().withPretension(Interval.of(0.8, 1.2)).withMass(Interval.of(80, 120)))
            .solve(DESIGN);
    private static final GoverningArrests GOVERNING =
            new GoverningArrests(DESIGN, ASSESSED.stated().arrests());

    private static LifelineDesign design() {
        return Designs.design(2, Passage.free(), Attachment.GRIPPED).toBuilder()
                .modelFactors(new ModelFactors(1.2, 1.1, "test"))
                .clearance(ClearanceRules.commonPractice()
                        .withObstructions(List.of(new Obstruction(0, 12, 4), new Obstruction(12, 24, 5))))
                .fall(Fall.builder("f")
                        .at(Place.of(1, 2))
                        .faller(Designs.worker("A", Attachment.GRIPPED))
                        .build())
                .build();
    }

    private static ReportSection envelope(EnvelopeSections sections, List<CriterionResult> criteria) {
        return sections.section(GOVERNING, criteria, false);
    }

    @Test
    void everyGoverningValueHasItsColumns() {
        ReportBlock.Table t = Printed.table(new AssessmentSection(ASSESSED, SI).summary(), "What governs");
        assertThat(t.rows()).hasSameSizeAs(ASSESSED.governing());
        for (int i = 0; i < t.rows().size(); i++) {
            List<String> c = t.rows().get(i).cells();
            GoverningValue g = ASSESSED.governing().get(i);
            assertThat(c.get(2)).isEqualTo("energy balance");
            assertThat(c.get(3)).as("nothing else was computed").isEqualTo(c.get(1));
            assertThat(c.get(4)).isEqualTo("–");
            if (!g.unit().equals("rad")) {
                PrintedNumber.check(c.get(1), 1, g.factored());
            }
            if (!c.get(5).equals("–") && g.unit().equals("N")) {
                assertThat(Printed.number(c.get(5)))
                        .as("%s: the stated fall is one of those that were moved", c.get(0))
                        .isLessThanOrEqualTo(Printed.number(c.get(1)) + 0.011);
            }
        }
    }

    @Test
    void theModelFactorIsInTheWorstForce() {
        Extreme e = ASSESSED.extremes().of(Quantity.END_ANCHOR_LOAD).orElseThrow();
        List<String> c = Printed.row(
                Printed.table(new AssessmentSection(ASSESSED, SI).summary(), "What governs"), "End anchor load");
        PrintedNumber.check(c.get(1), 1, 1.2 * e.arrest().endAnchorLoad());
    }

    @Test
    void theSummarySaysWhatWasLeftOutAndThatItJudgesNothing() {
        String words = Printed.words(new AssessmentSection(ASSESSED, SI).summary());
        assertThat(words)
                .contains("Arrests in time were LEFT OUT")
                .contains(ASSESSED.restsOn())
                .contains("It judges nothing")
                .contains("No governing value comes from an arrest in time whose damping matters.")
                .doesNotContain("ENDED EARLY")
                .doesNotContain("ATTENTION: a model factor");
        ReportBlock.Table where = Printed.table(new AssessmentSection(ASSESSED, SI).summary(), "Where it governs");
        assertThat(where.rows()).hasSameSizeAs(ASSESSED.governing());
        assertThat(where.rows())
                .allSatisfy(r -> assertThat(r.cells().get(1)).contains("°C").contains("deployment force"));
    }

    @Test
    void documentsTakeTheirValuesFromTheAssessment() {
        AssessmentSection s = new AssessmentSection(ASSESSED, SI);
        assertThat(s.inDocuments("endAnchorLoad").orElseThrow()).contains(" kN (energy balance; ");
        assertThat(s.inDocuments("no such quantity")).isEmpty();
        assertThat(s.loadsInDocuments().split(", ", -1)).hasSize(3).allMatch(l -> l.endsWith(" kN"));
    }

    @Test
    void warningsOfAnAssessmentAreSaidOncePerKind() {
        ReportSection s = new AssessmentSection(ASSESSED, SI).warnings(IndependentCheckSection.ofReports(List.of()));
        String words = Printed.words(s);
        assertThat(s.title()).isEqualTo("Warnings");
        assertThat(words).isNotBlank();
        ASSESSED.warnings()
                .forEach(w -> assertThat(words.toLowerCase(java.util.Locale.ROOT))
                        .contains(w.text().toLowerCase(java.util.Locale.ROOT)));
        assertThat(words.lines().count())
                .isLessThanOrEqualTo(
                        2 + ASSESSED.warnings().size() + ASSESSED.notComputed().size());
    }

    @Test
    void worstValuesOfTheEnvelopeHaveTheirCase() {
        ReportBlock.Table t = Printed.table(envelope(new EnvelopeSections(ENVELOPE, SI), List.of()), "Worst values");
        assertThat(t.caption()).contains("and the case that governs each");
        Extreme e = ENVELOPE.extremes().of(Quantity.END_ANCHOR_LOAD).orElseThrow();
        List<String> c = Printed.row(t, "End anchor load");
        PrintedNumber.check(c.get(1), 1, e.value());
        assertThat(c.get(3))
                .isEqualTo(Integer.toString(e.fallCase().fall().place().span()));
        assertThat(Printed.number(c.get(4)))
                .isCloseTo(e.fallCase().fall().place().station(), within(0.00051));
        assertThat(c.get(5)).contains("pretension × 1.2", "mass 120 kg", "−30 °C");
        for (String id : List.of("north", "post 1", "south")) {
            PrintedNumber.check(
                    Printed.row(t, "Load on " + id).get(1),
                    1,
                    ENVELOPE.extremes().onSupport(id).orElseThrow().value());
        }
        double worst = Double.POSITIVE_INFINITY;
        for (int i = 0; i < 2; i++) {
            double margin = ENVELOPE.extremes().overObstruction(i).orElseThrow().value();
            PrintedNumber.check(
                    Printed.row(t, "Margin above obstruction " + (i + 1)).get(1), 1, margin);
            worst = Math.min(worst, margin);
        }
        PrintedNumber.check(Printed.row(t, "Clearance margin").get(1), 1, worst);
    }

    @Test
    void theScopeNamesTheRangesAndTheNumberOfArrests() {
        String words = Printed.words(envelope(new EnvelopeSections(ENVELOPE, SI), List.of()));
        assertThat(words)
                .contains("over the ranges: pretension × 0.8 to 1.2; mass 80 kg to 120 kg")
                .contains("found to 1.0 mm or 0.1 % of the value, by " + ENVELOPE.evaluations() + " arrests")
                .doesNotContain("friction", "ENDED EARLY", "could not be computed");
        EnvelopeResult plain = ASSESSED.envelope();
        assertThat(Printed.words(envelope(new EnvelopeSections(plain, SI), List.of())))
                .doesNotContain("over the ranges");
    }

    @Test
    void criteriaAreCheckedAgainOverTheWholeLine() {
        double limit = 1.01
                * ASSESSED.stated()
                        .extremes()
                        .of(Quantity.END_ANCHOR_LOAD)
                        .orElseThrow()
                        .value();
        Criterion c = Criterion.stated("end", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), limit, "brief");
        CriterionResult stated = c.check(ASSESSED.stated().extremes());
        ReportSection s = envelope(new EnvelopeSections(ENVELOPE, SI), List.of(stated));
        List<String> row = Printed.row(Printed.table(s, "The criteria over the whole line"), "end");
        double worst =
                ENVELOPE.extremes().of(Quantity.END_ANCHOR_LOAD).orElseThrow().value();
        PrintedNumber.check(row.get(1), 1, worst);
        assertThat(stated.isMet()).isTrue();
        assertThat(row.get(4))
                .as("elsewhere, with a tighter cable and a heavier man")
                .isEqualTo("NOT MET");
    }

    @Test
    void besideAnAssessmentOnlyWhatItsSummaryLacksIsListed() {
        EnvelopeSections beside = new EnvelopeSections(ASSESSED.envelope(), SI).beside(Optional.of(ASSESSED));
        ReportBlock.Table some = Printed.table(envelope(beside, List.of()), "Worst values");
        ReportBlock.Table all = Printed.table(envelope(beside.inFull(), List.of()), "Worst values");
        assertThat(some.caption()).contains("of what the summary does not list");
        assertThat(all.rows()).hasSizeGreaterThan(some.rows().size());
        assertThat(Printed.hasRow(all, "End anchor load")).isTrue();
        assertThat(some.rows()).extracting(r -> r.cells().get(0)).doesNotContain("End anchor load");
        assertThat(some.rows()).noneMatch(r -> r.cells().get(0).startsWith("Load on north"));
    }

    @Test
    void picturesStandAtTheEndWhereTheyAreAskedFor() {
        List<ReportBlock> blocks = new EnvelopeSections(ENVELOPE, SI)
                .section(GOVERNING, List.of(), true)
                .blocks();
        assertThat(blocks.subList(blocks.size() - 2, blocks.size())).allMatch(ReportBlock.Figure.class::isInstance);
        assertThat(envelope(new EnvelopeSections(ENVELOPE, SI), List.of()).blocks())
                .noneMatch(ReportBlock.Figure.class::isInstance);
    }
}
