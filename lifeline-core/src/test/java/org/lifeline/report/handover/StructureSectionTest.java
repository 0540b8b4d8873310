package org.lifeline.report.handover;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.structure.LoadEffect;
import org.lifeline.design.structure.StatedFactor;
import org.lifeline.design.structure.SupportLoads;
import org.lifeline.design.structure.SupportLoadsResult;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.report.Printed;
import org.lifeline.report.PrintedNumber;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.UnitChoice;

/** Loads for the steel as printed: they balance as a structural engineer would add them up from the paper. */
class StructureSectionTest {
    private static final double FACTOR = 1.5;
    private static final LifelineDesign DESIGN = design();
    private static final List<ReportBlock.Table> TABLES = tables();

    private static LifelineDesign design() {
        Worker worker = Designs.worker("A", Attachment.GRIPPED);
        return LifelineDesign.builder("walkway")
                .line(Designs.line(2, Passage.free()))
                .worker(worker)
                .fall(Fall.builder("f").at(Place.of(1, 4)).faller(worker).build())
                .build();
    }

    private static List<ReportBlock.Table> tables() {
        SupportLoadsResult loads = SupportLoads.withDefaults()
                .withFactors(List.of(new StatedFactor("ultimate", FACTOR, "structural brief, 3.1")))
                .solve(Assessment.withDefaults().withoutMotion().solve(DESIGN));
        return new StructureSection(loads, Quantities.in(UnitChoice.SI))
                .section().blocks().stream()
                        .filter(ReportBlock.Table.class::isInstance)
                        .map(ReportBlock.Table.class::cast)
                        .toList();
    }

    private static ReportBlock.Table table(String caption) {
        return TABLES.stream()
                .filter(t -> t.caption().startsWith(caption))
                .findFirst()
                .orElseThrow();
    }

    private static double newtons(String cell) {
        return PrintedNumber.of(cell).get(0).si();
    }

    /** Loads without arrests in time may be too small for the steel: the section says which methods they are by. */
    @Test
    void theMethodsOfTheLoadsAreThoseThatWereComputed() {
        AssessmentResult still = Assessment.withDefaults().withoutMotion().solve(HandedOver.Single.DESIGN);
        AssessmentResult moving = Assessment.withDefaults().solve(HandedOver.Single.DESIGN);
        SupportLoadsResult alone = SupportLoads.withDefaults().solve(still);
        SupportLoadsResult both = SupportLoads.withDefaults().solve(moving);
        assertThat(both.governing("east", LoadEffect.RESULTANT).orElseThrow().value())
                .isGreaterThan(alone.governing("east", LoadEffect.RESULTANT)
                        .orElseThrow()
                        .value());
        assertThat(words(alone))
                .contains("by ENERGY BALANCE ALONE")
                .contains("in time, which is not in these loads, they may be larger")
                .doesNotContain("by both methods");
        assertThat(words(both)).contains("by both methods").doesNotContain("ALONE");
    }

    private static String words(SupportLoadsResult loads) {
        return Printed.words(new StructureSection(loads, Quantities.in(UnitChoice.SI)).section());
    }

    @Test
    void thePermanentLoadsCarryTheCable() {
        double[] sum = new double[3];
        for (ReportBlock.Row row : table("Permanent loads").rows()) {
            for (int axis = 0; axis < 3; axis++) {
                sum[axis] += newtons(row.cells().get(1 + axis));
            }
        }
        double length = 0;
        for (int i = 1; i <= DESIGN.line().spans(); i++) {
            length += DESIGN.line().run(i);
        }
        // Each number is rounded to ten newtons; the cable is longer than its spans by less than a hundredth.
        double rounding = 5.0 * DESIGN.line().supports().size();
        double weight = DESIGN.line().weightPerLength() * length;
        assertThat(sum[0]).isCloseTo(0, within(rounding));
        assertThat(sum[1]).isCloseTo(0, within(rounding));
        assertThat(sum[2]).isCloseTo(-weight, within(rounding + 0.01 * weight));
    }

    @Test
    void simultaneousPartnersBalanceAlongTheLine() {
        List<ReportBlock.Row> rows = table("Load cases").rows();
        assertThat(rows).hasSameSizeAs(DESIGN.line().supports());
        for (ReportBlock.Row row : rows) {
            double[] sum = new double[3];
            List<String> cells = row.cells().subList(1, row.cells().size());
            for (String cell : cells) {
                List<PrintedNumber> vector = PrintedNumber.of(cell);
                assertThat(vector).as(cell).hasSize(3);
                for (int axis = 0; axis < 3; axis++) {
                    sum[axis] += vector.get(axis).si();
                }
            }
            assertThat(sum[0]).as(row.cells().get(0)).isCloseTo(0, within(5.0 * cells.size()));
            assertThat(sum[2]).as("down, more than the worker weighs").isLessThan(-100 * 9.80665);
        }
    }

    @Test
    void aStatedFactorStandsOnTheServiceLoad() {
        ReportBlock.Table t = table("Largest effects");
        List<String> headings = new ArrayList<>();
        t.columns().forEach(c -> headings.add(c.heading()));
        assertThat(headings).contains("ultimate × 1.50");
        int factored = 0;
        int resultants = 0;
        for (ReportBlock.Row row : t.rows()) {
            List<PrintedNumber> service = PrintedNumber.of(row.cells().get(2));
            if (service.isEmpty()) {
                continue;
            }
            double value = service.get(0).si();
            assertThat(newtons(row.cells().get(3))).isCloseTo(FACTOR * value, within(5 + FACTOR * 5));
            factored++;
            if (row.cells().get(1).equals("resultant force")) {
                double x = newtons(row.cells().get(4));
                double y = newtons(row.cells().get(5));
                double z = newtons(row.cells().get(6));
                assertThat(Math.sqrt(x * x + y * y + z * z)).isCloseTo(value, within(15.0));
                resultants++;
            }
        }
        assertThat(resultants).isEqualTo(DESIGN.line().supports().size());
        assertThat(factored).isGreaterThan(2 * resultants);
    }
}
