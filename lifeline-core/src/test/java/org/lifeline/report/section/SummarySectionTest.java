package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.report.PrintedNumber;
import org.lifeline.report.ReportSamples;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportDetail;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;

/** The worst values of a report, read back, are the largest of its arrests, with the number of an arrest that has them. */
class SummarySectionTest {
    private static final LifelineDesign DESIGN = SampleDesigns.design("d");
    private static final List<ArrestResult> ARRESTS = ReportSamples.arrests(DESIGN);

    private static Map<String, ToDoubleFunction<ArrestResult>> rows() {
        Map<String, ToDoubleFunction<ArrestResult>> map = new LinkedHashMap<>();
        map.put("Maximum arrest force on a worker (MAF)", ArrestResult::arrestForce);
        map.put("Maximum arrest load at an end anchor (MAL)", r -> {
            int last = r.supports().size() - 1;
            return Math.max(r.supports().get(0).force(), r.supports().get(last).force());
        });
        map.put("Largest tension in the cable", ArrestResult::maximumTension);
        for (int i = 0; i < DESIGN.line().supports().size(); i++) {
            int support = i;
            map.put(
                    "Largest load on " + DESIGN.line().supports().get(i).id(),
                    r -> r.supports().get(support).vector().magnitude());
        }
        map.put("Largest sag at the load", ArrestResult::sag);
        map.put("Largest descent of the attachment", ArrestResult::lineDescent);
        map.put("Largest free fall distance", ArrestResult::freeFall);
        map.put("Largest deployment (deceleration distance)", ArrestResult::deployment);
        map.put("Largest total fall distance", ArrestResult::totalFallDistance);
        return map;
    }

    private static ReportBlock.Table table(LifelineDesign design, UnitChoice units) {
        GoverningArrests governing = new GoverningArrests(design, ARRESTS);
        return new SummarySection(governing, Quantities.in(units))
                .section(ReportDetail.SHORT, "Summary").blocks().stream()
                        .filter(ReportBlock.Table.class::isInstance)
                        .map(ReportBlock.Table.class::cast)
                        .findFirst()
                        .orElseThrow();
    }

    private static Map<String, List<String>> cells(ReportBlock.Table table) {
        Map<String, List<String>> map = new LinkedHashMap<>();
        table.rows().forEach(row -> map.put(row.cells().get(0), row.cells()));
        return map;
    }

    @ParameterizedTest
    @EnumSource(UnitChoice.class)
    void everyWorstValueIsTheLargest(UnitChoice units) {
        Map<String, List<String>> printed = cells(table(DESIGN, units));
        rows().forEach((name, value) -> {
            List<String> row = printed.getOrDefault(name, List.of());
            assertThat(row).as(name).hasSize(3);
            double worst = ARRESTS.stream().mapToDouble(value).max().orElseThrow();
            PrintedNumber.check(row.get(1), units.systems().size(), worst);
            double named = value.applyAsDouble(ARRESTS.get(Integer.parseInt(row.get(2)) - 1));
            assertThat(Math.abs(named - worst)).as(name).isLessThanOrEqualTo(1e-9 * worst);
        });
    }

    /** The margin is what is left between the highest obstruction below and the elevation that must be free. */
    @Test
    void theLeastMarginIsTheWorst() {
        double least = ARRESTS.stream()
                .filter(r -> r.clearance().margin().isPresent())
                .mapToDouble(r -> r.clearance().margin().getAsDouble())
                .min()
                .orElseThrow();
        List<List<String>> rows = new ArrayList<>();
        cells(table(DESIGN, UnitChoice.SI)).forEach((name, row) -> {
            if (name.startsWith("Least clearance margin")) {
                rows.add(row);
            }
        });
        assertThat(rows).hasSize(1);
        assertThat(rows.get(0).get(0).contains("LACKING")).isEqualTo(least < 0);
        PrintedNumber.check(rows.get(0).get(1), 1, least);
    }

    @Test
    void modelFactorsStandBesideWhatWasComputed() {
        double factor = 1.25;
        LifelineDesign scaled =
                DESIGN.toBuilder().modelFactors(new ModelFactors(factor, 1.1)).build();
        Map<String, List<String>> printed = cells(table(scaled, UnitChoice.SI));
        for (String name : List.of("Largest tension in the cable", "Maximum arrest force on a worker (MAF)")) {
            List<String> row = printed.getOrDefault(name, List.of());
            double worst = ARRESTS.stream()
                    .mapToDouble(rows().getOrDefault(name, r -> Double.NaN))
                    .max()
                    .orElseThrow();
            PrintedNumber.check(row.get(1), 1, worst);
            PrintedNumber.check(row.get(2), 1, factor * worst);
        }
        // Free fall is a length that the design states: it carries no factor.
        List<String> fall = printed.getOrDefault("Largest free fall distance", List.of());
        assertThat(fall.get(2)).isEqualTo(fall.get(1));
    }

    @Test
    void withoutArrestsNothingIsSaidToBeWorst() {
        List<ReportBlock> blocks = new SummarySection(
                        new GoverningArrests(DESIGN, List.of()), Quantities.in(UnitChoice.SI))
                .section(ReportDetail.SHORT, "Summary")
                .blocks();
        assertThat(blocks).containsExactly(new ReportBlock.Paragraph("No fall was analysed."));
    }
}
