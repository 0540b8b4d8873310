package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.report.Printed;
import org.lifeline.report.PrintedNumber;
import org.lifeline.report.ReportSamples;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;

/** Criteria as printed: a ratio is demand over capacity, the word follows from it, and products multiply out. */
class CriteriaSectionTest {
    private static final LifelineDesign DESIGN = SampleDesigns.design("d").toBuilder()
            .modelFactors(new ModelFactors(1.25, 1.1))
            .build();
    private static final List<ArrestResult> ARRESTS = ReportSamples.arrests(DESIGN);
    private static final GoverningArrests GOVERNING = new GoverningArrests(DESIGN, ARRESTS);
    private static final List<CriterionResult> RESULTS = Criteria.check(criteria(), Extremes.of(DESIGN, ARRESTS));
    private static final ReportSection SECTION = section(RESULTS);

    private static List<Criterion> criteria() {
        List<Criterion> list = new ArrayList<>(Criteria.builtIn());
        list.add(Criterion.stated("low", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 1000, "brief <1>"));
        list.add(Criterion.stated("high", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 90_000, "brief 2"));
        list.add(Criterion.stated("sag", CheckedQuantity.of(Quantity.SAG), 0.05, "brief 3"));
        list.add(Criterion.stated("post", CheckedQuantity.loadOnSupport("post 1"), 17_000, "brief 4"));
        list.add(Criterion.stated("margin", CheckedQuantity.of(Quantity.CLEARANCE_MARGIN), 0.5, "brief 5"));
        return list;
    }

    private static ReportSection section(List<CriterionResult> results) {
        return new CriteriaSection(GOVERNING, Quantities.in(UnitChoice.SI)).section(results);
    }

    /** A force in newtons, a length in metres, another number as it is. */
    private static double si(String cell) {
        if (cell.endsWith(" mm")) {
            return Printed.number(cell) / 1000;
        }
        List<PrintedNumber> numbers = PrintedNumber.of(cell);
        return numbers.isEmpty() ? Printed.number(cell) : numbers.get(0).si();
    }

    private static double half(String cell) {
        if (cell.endsWith("°")) {
            return 0.0501;
        }
        List<PrintedNumber> numbers = PrintedNumber.of(cell);
        return numbers.isEmpty()
                ? 0.0051 * Math.abs(Printed.number(cell))
                : numbers.get(0).half();
    }

    @Test
    void ratiosAreDemandOverCapacityAndTheWordFollowsFromThem() {
        int met = 0;
        int not = 0;
        for (String caption : List.of("Demand over capacity", "Criteria of several comparisons")) {
            for (ReportBlock.Row row : Printed.table(SECTION, caption).rows()) {
                List<String> c = row.cells();
                if (c.get(1).equals("–")) {
                    assertThat(c.subList(1, 5)).containsExactly("–", "–", "–", "NOT EVALUATED");
                    continue;
                }
                if (!c.get(3).matches("[0-9.]+")) {
                    assertThat(c.get(4)).as(row.toString()).isEqualTo("NOT MET");
                    continue;
                }
                double demand = si(c.get(1));
                double capacity = si(c.get(2));
                double ratio = Double.parseDouble(c.get(3));
                // What is known of a comparison of which something is missing decides only against it.
                if (!c.get(4).equals("NOT EVALUATED")) {
                    assertThat(c.get(4).equals("MET")).as(row.toString()).isEqualTo(ratio <= 1.0);
                }
                if (demand > 0 && capacity > 0 && !c.get(1).endsWith("kg")) {
                    double blur = ratio * (half(c.get(1)) / demand + half(c.get(2)) / capacity) + 0.0006 * ratio;
                    assertThat(ratio).as(row.toString()).isCloseTo(demand / capacity, within(blur + 1e-9));
                }
                met += c.get(4).equals("MET") ? 1 : 0;
                not += c.get(4).equals("NOT MET") ? 1 : 0;
            }
        }
        assertThat(met).isGreaterThan(5);
        assertThat(not).isGreaterThan(1);
    }

    @Test
    void aStatedLimitIsComparedWithTheLargestLoadTimesTheModelFactor() {
        ReportBlock.Table t = Printed.table(SECTION, "Demand over capacity");
        double worst =
                ARRESTS.stream().mapToDouble(ArrestResult::endAnchorLoad).max().orElseThrow();
        for (String id : List.of("low", "high")) {
            List<String> c = Printed.row(t, id);
            PrintedNumber.check(c.get(1), 1, 1.25 * worst);
            assertThat(c.get(5)).matches("arrest [0-9]+");
            int number = Integer.parseInt(c.get(5).replace("arrest ", ""));
            assertThat(ARRESTS.get(number - 1).endAnchorLoad()).isCloseTo(worst, within(1e-9 * worst));
        }
        assertThat(Printed.row(t, "low").get(4)).isEqualTo("NOT MET");
        assertThat(Printed.row(t, "high").get(4)).isEqualTo("MET");
        assertThat(Printed.row(t, "sag").get(2)).as("a small length").isEqualTo("50.0 mm");
        double post = ARRESTS.stream()
                .mapToDouble(r -> r.supports().get(1).force())
                .max()
                .orElseThrow();
        PrintedNumber.check(Printed.row(t, "post").get(1), 1, 1.25 * post);
    }

    @Test
    void productsInTheDerivationsMultiplyOut() {
        Pattern product = Pattern.compile("([0-9.]+)( kN)? × ([0-9.]+)( kN)? = ([0-9.]+) kN");
        int found = 0;
        for (ReportBlock.Row row :
                Printed.table(SECTION, "How demand and capacity come about").rows()) {
            for (String cell : row.cells().subList(1, 3)) {
                Matcher m = product.matcher(cell);
                while (m.find()) {
                    double a = Double.parseDouble(m.group(1));
                    double b = Double.parseDouble(m.group(3));
                    double blur = 0.0051 * (1 + Math.max(m.group(2) == null ? a : 0, m.group(4) == null ? b : 0));
                    assertThat(Double.parseDouble(m.group(5))).as(cell).isCloseTo(a * b, within(blur));
                    found++;
                }
            }
        }
        assertThat(found).isGreaterThan(1);
    }

    @Test
    void derivationsSayFromWhichStrengthAndLimitTheCapacityComes() {
        ReportBlock.Table t = Printed.table(SECTION, "How demand and capacity come about");
        assertThat(Printed.row(t, "low").get(2)).isEqualTo("limit of the criterion: 1.00 kN");
        assertThat(Printed.row(t, "low").get(1))
                .contains("model factor 1.25 in it")
                .contains("span ");
        assertThat(Printed.row(t, "post").get(2)).isEqualTo("limit of the criterion: 17.00 kN");
        assertThat(t.rows())
                .extracting(r -> r.cells().get(2))
                .contains("stated capacity of north: 45.00 kN", "stated capacity of post 1: 16.00 kN");
        assertThat(Printed.row(t, "margin").get(2)).startsWith("from the line to the obstruction below");
        assertThat(t.rows())
                .extracting(r -> r.cells().get(2))
                .anyMatch(c -> c.startsWith("minimum breaking strength × termination efficiency = "));
        assertThat(Printed.row(t, "sag").get(1)).contains("model factor 1.1 in it");
    }

    @Test
    void everyCriterionHasItsSourceAndWhereItHolds() {
        ReportBlock.Table t = Printed.table(SECTION, "What the criteria demand");
        assertThat(t.rows()).hasSameSizeAs(RESULTS);
        assertThat(t.rows())
                .extracting(r -> r.cells().get(3))
                .contains("United States, federal", "Québec", "Europe", "the trade", "this design")
                .doesNotContain("");
        List<String> low = Printed.row(t, "low");
        assertThat(low.subList(1, 5))
                .containsExactly("end anchor load ≤ 1.00 kN", "brief <1>", "this design", "stated in the design");
        assertThat(Printed.row(t, "margin").get(1)).isEqualTo("clearance margin ≥ 0.500 m");
    }

    @Test
    void whatWasNotEvaluatedHasItsReason() {
        long without = RESULTS.stream().filter(r -> !r.reason().isEmpty()).count();
        String words = Printed.words(SECTION);
        assertThat(words.lines().filter(l -> l.contains(" was not evaluated: ")))
                .hasSize((int) without);
        assertThat(without).isPositive();
        assertThat(words).contains("says nothing about whether a design satisfies a code as a whole");
    }

    @Test
    void comparisonsOfOneCriterionAreJoinedByAndOrOr() {
        ReportBlock.Table t = Printed.table(SECTION, "Criteria of several comparisons");
        assertThat(t.rows()).hasSizeGreaterThan(3);
        assertThat(t.rows()).extracting(r -> r.cells().get(0)).anyMatch(c -> c.contains(", and: "));
        assertThat(t.rows()).allSatisfy(r -> assertThat(r.cells().get(0)).contains(": "));
    }

    @Test
    void aDesignWithoutCriteriaSaysSo() {
        assertThat(section(List.of()).blocks()).containsExactly(new ReportBlock.Paragraph("The design names none."));
    }

    @ParameterizedTest
    @CsvSource({
        "N, 12340, 12.34 kN",
        "m, 0.0999, 99.9 mm",
        "m, 0.1, 0.100 m",
        "m, 0, 0.000 m",
        "m, -0.05, −0.050 m",
        "kg, 100, 100.0 kg",
        "rad, 0.5235987755982988, 30.0°",
        "-, 3, 3",
        "-, 2.5, 2.500"
    })
    void aQuantityIsWrittenByItsUnit(String unit, double value, String text) {
        assertThat(CriteriaSection.quantity(Quantities.in(UnitChoice.SI), unit, value))
                .isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({"clearanceMargin, clearance margin", "sag, sag", "endAnchorLoad, end anchor load"})
    void keysBecomeWords(String key, String words) {
        assertThat(CriteriaSection.words(key)).isEqualTo(words);
    }
}
