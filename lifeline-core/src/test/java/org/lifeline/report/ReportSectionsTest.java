package org.lifeline.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.TransientResult;
import org.lifeline.base.Interval;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.criteria.Status;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.DesignResult;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.Tolerances;
import org.lifeline.model.LifelineDesign;
import org.lifeline.report.chart.EnvelopePicture;
import org.lifeline.report.chart.HistoryPicture;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportDetail;
import org.lifeline.report.document.ReportDocument;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.report.picture.PictureChecks;
import org.lifeline.samples.SampleDesigns;
import org.lifeline.verify.Verifier;

/** What the report says of criteria, of the envelope, of arrests in time, and of the independent check. */
class ReportSectionsTest {
    private static final DesignResult RESULT =
            DesignAnalysis.withDefaults().solve(SampleDesigns.design("Gallery <b>4</b>"));
    private static final LifelineDesign DESIGN = RESULT.design();
    private static final List<CriterionResult> CRITERIA = Criteria.check(criteria(), RESULT.extremes());
    private static final EnvelopeResult ENVELOPE = Envelope.withDefaults()
            .withIntervals(6)
            .withTolerances(Tolerances.none().withPretension(Interval.of(0.8, 1.2)))
            .solve(DESIGN);
    private static final TransientResult MOTION = motion();
    private static final ReportDocument REPORT = CalculationReport.of(DESIGN, RESULT.arrests())
            .withUnits(UnitChoice.SI)
            .withDetail(ReportDetail.FULL)
            .withCriteria(CRITERIA)
            .withEnvelope(ENVELOPE)
            .withMotions(List.of(MOTION))
            .withAssumptions(List.of("Not stated, taken: a fine day."))
            .withInputSections(List.of(
                    new ReportSection("As it was written", 1, List.of(new ReportBlock.Paragraph("line: <i>long</i>")))))
            .build();

    private static List<Criterion> criteria() {
        List<Criterion> list = new java.util.ArrayList<>(Criteria.builtIn());
        list.add(Criterion.stated(
                "client limit", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 5_000, "specification 7.2"));
        return list;
    }

    private static TransientResult motion() {
        ArrestResult r = RESULT.arrests().get(1);
        return TransientArrest.withDefaults()
                .withTemperature(r.temperature())
                .withSide(r.side())
                .withClearance(DESIGN.clearance())
                .withSegmentLength(0.5)
                .withRefinements(1)
                .withDuration(1.2)
                .solve(r.line(), r.fall());
    }

    private static ReportBlock.Table table(String caption) {
        return REPORT.sections().stream()
                .flatMap(s -> s.blocks().stream())
                .filter(ReportBlock.Table.class::isInstance)
                .map(ReportBlock.Table.class::cast)
                .filter(t -> t.caption().startsWith(caption))
                .findFirst()
                .orElseThrow();
    }

    private static double number(String cell, String unit) {
        assertThat(cell).endsWith(unit);
        return Double.parseDouble(
                cell.substring(0, cell.length() - unit.length()).strip().replace('−', '-'));
    }

    @Test
    void everyCriterionHasItsRowWithRatioAndWord() {
        ReportBlock.Table t = table("Demand over capacity");
        assertThat(t.rows()).hasSameSizeAs(CRITERIA);
        for (int i = 0; i < CRITERIA.size(); i++) {
            CriterionResult c = CRITERIA.get(i);
            List<String> cells = t.rows().get(i).cells();
            assertThat(cells.get(0)).startsWith(c.criterion().id());
            assertThat(cells.get(4))
                    .isEqualTo(
                            c.status() == Status.MET
                                    ? "MET"
                                    : c.status() == Status.NOT_MET ? "NOT MET" : "NOT EVALUATED");
            if (!Double.isNaN(c.ratio()) && Double.isFinite(c.ratio())) {
                assertThat(number(cells.get(3), "")).isCloseTo(c.ratio(), within(1e-3 * Math.abs(c.ratio()) + 1e-9));
            }
        }
        assertThat(t.rows()).extracting(r -> r.cells().get(4)).contains("MET", "NOT MET", "NOT EVALUATED");
        ReportBlock.Table sources = table("What the criteria demand");
        assertThat(sources.rows()).hasSameSizeAs(CRITERIA);
        assertThat(sources.rows())
                .extracting(r -> r.cells().get(4))
                .contains("published", "common practice", "stated in the design");
        String text = TextReport.write(REPORT);
        assertThat(text)
                .contains("29 CFR 1926.502,")
                .contains("(d)(8)")
                .contains("was not evaluated: ")
                .contains("specification 7.2")
                .doesNotContainIgnoringCase("compliant")
                .doesNotContainIgnoringCase("compliance");
        assertThat(table("The criteria over the whole line").rows()).hasSameSizeAs(CRITERIA);
    }

    @Test
    void criteriaOfSeveralComparisonsAreLaidOut() {
        ReportBlock.Table t = table("Criteria of several comparisons");
        List<String> names = t.rows().stream().map(r -> r.cells().get(0)).toList();
        assertThat(names)
                .anySatisfy(n -> assertThat(n).startsWith("us-osha-anchorage").contains(", or: "));
        assertThat(names)
                .anySatisfy(n -> assertThat(n).startsWith("us-osha-free-fall").contains(", and: "));
    }

    @Test
    void noCriteriaIsSaidToo() {
        String text = TextReport.write(
                CalculationReport.of(DESIGN, List.of(RESULT.arrests().get(0)))
                        .withCriteria(List.of())
                        .withDetail(ReportDetail.SHORT)
                        .build());
        assertThat(text).contains("Criteria\n--------\nThe design names none.");
    }

    @Test
    void governingValuesAreThoseOfTheExtremes() {
        ReportBlock.Table t = table("Worst values over");
        RESULT.extremes().of(Quantity.END_ANCHOR_LOAD).ifPresent(e -> {
            List<String> cells = t.rows().stream()
                    .map(ReportBlock.Row::cells)
                    .filter(c -> c.get(0).contains("(MAL)"))
                    .findFirst()
                    .orElseThrow();
            assertThat(1000 * number(cells.get(1), " kN")).isCloseTo(e.value(), within(6.0));
            int number = Integer.parseInt(cells.get(2));
            assertThat(RESULT.arrests().get(number - 1).endAnchorLoad()).isEqualTo(e.value());
        });
        for (int i = 0; i < DESIGN.line().supports().size(); i++) {
            String id = DESIGN.line().supports().get(i).id();
            double most = RESULT.extremes().onSupport(id).orElseThrow().value();
            List<String> cells = t.rows().stream()
                    .map(ReportBlock.Row::cells)
                    .filter(c -> c.get(0).equals("Largest load on " + id))
                    .findFirst()
                    .orElseThrow();
            assertThat(1000 * number(cells.get(1), " kN")).isCloseTo(most, within(6.0));
        }
        assertThat(table("All arrests").rows()).hasSameSizeAs(RESULT.arrests());
    }

    @Test
    void theEnvelopeNamesValueAndCase() {
        ReportBlock.Table t = table("Worst values anywhere");
        double load =
                ENVELOPE.extremes().of(Quantity.END_ANCHOR_LOAD).orElseThrow().value();
        List<String> cells = t.rows().get(0).cells();
        assertThat(cells.get(0)).isEqualTo("End anchor load");
        assertThat(1000 * number(cells.get(1), " kN")).isCloseTo(load, within(6.0));
        assertThat(cells.get(5)).contains("pretension × ");
        assertThat(TextReport.write(REPORT)).contains("over the ranges: pretension × 0.8 to 1.2");
        for (UnitChoice units : UnitChoice.values()) {
            PictureChecks.check(EnvelopePicture.loads(ENVELOPE, units, List.of(), List.of()));
            PictureChecks.check(EnvelopePicture.distances(ENVELOPE, units));
        }
        Picture loads = EnvelopePicture.loads(ENVELOPE, UnitChoice.SI, List.of(), List.of());
        Picture distances = EnvelopePicture.distances(ENVELOPE, UnitChoice.US_CUSTOMARY);
        assertThat(Xml.all(Xml.parse(loads.svg()), "polyline").size()
                        + Xml.all(Xml.parse(loads.svg()), "path").size())
                .isGreaterThan(5);
        assertThat(loads.svg()).contains("post 1").contains("Gallery &lt;b&gt;4");
        assertThat(distances.svg()).contains("[ft]").contains("top of obstruction");
    }

    @Test
    void worsePlacesThanThoseOfTheDesignAreWarnedOf() {
        String warnings = TextReport.write(REPORT).replaceAll("\\s+", " ");
        assertThat(warnings)
                .contains("A fall at another place of the line is more severe than the falls of the design: ");
    }

    @Test
    void anArrestInTimeStandsBesideTheEnergyBalance() {
        ReportBlock.Table t = table("Peaks beside the energy balance");
        List<String> tension = t.rows().stream()
                .map(ReportBlock.Row::cells)
                .filter(c -> c.get(0).equals("Tension in the cable"))
                .findFirst()
                .orElseThrow();
        double balance = number(tension.get(1), " kN");
        double inTime = number(tension.get(2), " kN");
        assertThat(number(tension.get(3), "")).isCloseTo(inTime / balance, within(1e-3));
        assertThat(1000 * inTime).isCloseTo(MOTION.arrest().maximumTension(), within(6.0));
        ReportBlock.Table energy = table("Energy account: at the lowest point");
        for (int column = 1; column <= 2; column++) {
            BigDecimal sum = BigDecimal.ZERO;
            for (ReportBlock.Row row : energy.rows()) {
                BigDecimal value = new BigDecimal(row.cells().get(column).replace('−', '-'));
                if (row.total()) {
                    assertThat(value).isEqualByComparingTo(sum);
                }
                sum = sum.add(value);
            }
        }
        assertThat(table("Meshes").rows()).hasSameSizeAs(MOTION.meshes());
        assertThat(TextReport.write(REPORT).replaceAll("\\s+", " ")).contains("Energy drift: ");
        Picture picture = HistoryPicture.draw(MOTION, UnitChoice.BOTH);
        PictureChecks.check(picture);
        PictureChecks.check(HistoryPicture.draw(MOTION, UnitChoice.US_CUSTOMARY));
        assertThat(picture.svg())
                .contains("time since the start of the fall [s]")
                .contains("load on north");
    }

    @Test
    void anArrestOfWhichOnlyTheSummaryIsKeptSaysSo() {
        String text = TextReport.write(
                CalculationReport.of(DESIGN, List.of(MOTION.arrest())).build());
        assertThat(text.replaceAll("\\s+", " "))
                .contains("Peaks of the whole run, rebounds included")
                .contains("There is no arrest by energy balance.")
                .contains("[9]");
    }

    @Test
    void theIndependentCheckIsThatOfTheVerifier() {
        ReportBlock.Table t = table("Largest residuals");
        assertThat(t.rows()).hasSameSizeAs(RESULT.arrests());
        for (int i = 0; i < RESULT.arrests().size(); i++) {
            int checks = Verifier.withDefaults()
                    .arrest(RESULT.arrests().get(i))
                    .results()
                    .size();
            assertThat(t.rows().get(i).cells().get(1)).isEqualTo(Integer.toString(checks));
            assertThat(t.rows().get(i).cells().get(2)).isEqualTo("0");
        }
        assertThat(table("Every kind of check").rows()).hasSizeGreaterThan(20);
    }

    @Test
    void whatTheCallerAddsIsInPlaceAndInert() {
        List<String> titles =
                REPORT.sections().stream().map(ReportSection::title).toList();
        assertThat(titles).containsSubsequence("Summary", "Criteria", "Warnings", "As it was written", "Inputs");
        assertThat(TextReport.write(REPORT)).contains("a fine day");
        assertThat(HtmlReport.write(REPORT))
                .contains("line: &lt;i&gt;long&lt;/i&gt;")
                .doesNotContain("<b>4</b>");
    }

    @Test
    void picturesAndStepsAreThoseOfTheArrestsThatGovern() {
        CalculationReport report = CalculationReport.of(DESIGN, RESULT.arrests());
        assertThat(report.governing())
                .isNotEmpty()
                .hasSizeLessThan(RESULT.arrests().size());
        List<String> titles =
                report.build().sections().stream().map(ReportSection::title).toList();
        for (int i = 1; i <= RESULT.arrests().size(); i++) {
            String name = String.format(Locale.ROOT, "Arrest %d: pictures", i);
            assertThat(titles.contains(name))
                    .as(name)
                    .isEqualTo(report.calculated().contains(i));
        }
        int load = RESULT.arrests()
                        .indexOf(RESULT.extremes()
                                .of(Quantity.END_ANCHOR_LOAD)
                                .orElseThrow()
                                .arrest())
                + 1;
        assertThat(titles).anyMatch(s -> s.startsWith("Calculation line by line: arrest " + load + ","));
        assertThat(titles)
                .filteredOn(s -> s.startsWith("Calculation line by line"))
                .hasSize(1);
        List<String> all = report.withDetail(ReportDetail.FULL).build().sections().stream()
                .map(ReportSection::title)
                .toList();
        assertThat(all)
                .filteredOn(s -> s.startsWith("Calculation line by line"))
                .hasSameSizeAs(RESULT.arrests());
    }

    @Test
    void partsOfAnotherLineAreRefused() {
        ArrestResult other = SampleDesigns.arrests().values().stream()
                .filter(a -> a.supports().size() == 2)
                .findFirst()
                .orElseThrow();
        LifelineDesign design = LifelineDesign.builder("other")
                .line(other.line())
                .worker(other.firstFaller())
                .fall(other.fall())
                .build();
        CalculationReport report = CalculationReport.of(design, List.of(other));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> report.withEnvelope(ENVELOPE))
                .withMessageContaining("envelope");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> report.withMotions(List.of(MOTION)))
                .withMessageContaining("motions[0]");
    }

    /** Without an assessment a criterion may be met that the whole line, or an arrest in time, does not meet. */
    @Test
    void aReportWithoutAnAssessmentSaysWhatItRestsOn() {
        String alone = "About THESE ARRESTS ALONE, " + RESULT.arrests().size() + " of them";
        assertThat(Printed.words(summary(REPORT)))
                .startsWith(alone)
                .contains("criteria that are met here may not be met");
        ReportDocument assessed = CalculationReport.of(DESIGN, RESULT.arrests())
                .withAssessment(Assessment.withDefaults().withoutMotion().solve(DESIGN))
                .build();
        assertThat(Printed.words(summary(assessed))).doesNotContain("THESE ARRESTS ALONE");
    }

    private static ReportSection summary(ReportDocument report) {
        return report.sections().stream()
                .filter(s -> s.title().equals("Summary"))
                .findFirst()
                .orElseThrow();
    }
}
