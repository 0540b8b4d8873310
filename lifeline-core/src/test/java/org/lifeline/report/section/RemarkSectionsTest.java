package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.warning.ModelLimits;
import org.lifeline.model.Attachment;
import org.lifeline.model.Installed;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.report.Printed;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;

/** Assumptions and limits are said where they apply to the design, and not where they do not. */
class RemarkSectionsTest {
    private static final Quantities SI = Quantities.in(UnitChoice.SI);
    private static final LifelineDesign GALLERY = SampleDesigns.design("d");
    private static final LifelineDesign PLAIN = LifelineDesign.builder("p")
            .line(SampleDesigns.single(SampleDesigns.steel(), Installed.pretension(1500)))
            .worker(SampleDesigns.worker("A", 100, Attachment.GRIPPED, SampleDesigns.lanyard()))
            .build();
    private static final Map<String, ArrestResult> ARRESTS = SampleDesigns.arrests();
    private static final List<ArrestResult> ONE =
            List.of(ARRESTS.values().iterator().next());

    private static String assumptions(LifelineDesign d, List<ArrestResult> arrests) {
        return Printed.words(RemarkSections.assumptions(d, arrests, SI, List.of("Not stated:\ncalm \u202Eair.")));
    }

    @Test
    void frictionAndRunningAttachmentsAreExplainedWhereTheDesignHasThem() {
        assertThat(assumptions(GALLERY, ONE))
                .contains("At anchors with friction the cable sticks")
                .contains("A free-running attachment runs along its span without friction")
                .contains("Energy balance: at the lowest point")
                .doesNotContain("Arrests in time:");
        assertThat(assumptions(PLAIN, List.of()))
                .doesNotContain(
                        "anchors with friction", "free-running attachment", "Energy balance:", "Arrests in time:");
    }

    @Test
    void whatTheUserAddsStandsLastAndInert() {
        String text = assumptions(PLAIN, List.of());
        assertThat(text).contains("Not stated:").doesNotContain("\u202E");
        assertThat(text.strip().lines().reduce((a, b) -> b).orElse("")).contains("air.");
        assertThat(text).contains("since installation at 15 °C; cable properties");
    }

    @Test
    void modelFactorsOfOneAndOthersAreToldApart() {
        ReportSection one = RemarkSections.modelFactors(PLAIN);
        assertThat(Printed.words(one)).startsWith("Both are 1: computed values are not scaled.");
        assertThat(Printed.table(one, "Model factors").rows())
                .extracting(r -> r.cells().get(1))
                .containsExactly("1", "1");
        for (ModelFactors f : List.of(new ModelFactors(1.25, 1, "a test"), new ModelFactors(1, 1.1, "a test"))) {
            ReportSection s = RemarkSections.modelFactors(
                    PLAIN.toBuilder().modelFactors(f).build());
            assertThat(Printed.words(s)).startsWith("Set by the engineer").endsWith("Stated reason: a test\n");
            assertThat(Double.parseDouble(Printed.row(Printed.table(s, "Model factors"), "computed forces")
                            .get(1)))
                    .isEqualTo(f.force());
            assertThat(Double.parseDouble(Printed.row(Printed.table(s, "Model factors"), "computed distances")
                            .get(1)))
                    .isEqualTo(f.distance());
        }
        assertThat(Printed.words(RemarkSections.modelFactors(PLAIN.toBuilder()
                        .modelFactors(new ModelFactors(1.25, 1))
                        .build())))
                .doesNotContain("Stated reason");
    }

    @Test
    void limitsOfTheModelAreListedWithTheirExceptions() {
        String balance = Printed.words(RemarkSections.notConsidered(PLAIN, ONE, false, false));
        String both = Printed.words(RemarkSections.notConsidered(PLAIN, ONE, true, true));
        String none = Printed.words(RemarkSections.notConsidered(PLAIN, List.of(), false, false));
        assertThat(balance).contains("rebound (energy balance only).");
        assertThat(both)
                .contains("rebound, except in the arrests that were followed in time.")
                .contains(", except in the loads for the supporting structure.");
        assertThat(none).doesNotContain("Motion: overshoot");
        assertThat(balance).doesNotContain("except in the loads");
        ModelLimits.list().forEach(l -> assertThat(balance).contains(l.substring(1)));
        assertThat(balance.lines()).hasSize(ModelLimits.list().size() + 1);
        LifelineDesign fibre = PLAIN.toBuilder()
                .line(SampleDesigns.single(SampleDesigns.fibre(), Installed.pretension(900)))
                .build();
        assertThat(Printed.words(RemarkSections.notConsidered(fibre, ONE, false, false)))
                .contains("load–elongation curve of the rope is not taken out again");
        assertThat(balance).doesNotContain("is not taken out again");
    }

    @Test
    void formulasAreNumberedFromOneToTen() {
        ReportBlock.Items items =
                (ReportBlock.Items) RemarkSections.formulas().blocks().get(0);
        assertThat(items.items()).hasSize(10);
        for (int i = 0; i < 10; i++) {
            assertThat(items.items().get(i)).startsWith("[" + (i + 1) + "] ");
        }
    }

    @Test
    void cautionsLeaveTheDesignToTheEngineer() {
        assertThat(Printed.words(RemarkSections.cautions()))
                .contains("licensed engineer, who answers for the design")
                .contains("Nothing in this report states that a design complies");
    }

    @Test
    void allArrestsStandInOneTableAndNoneMakesASentence() {
        List<ArrestResult> list = List.copyOf(ARRESTS.values());
        List<ArrestResult> sameLine = list.stream()
                .filter(r -> r.line().equals(SampleDesigns.gallery()))
                .toList();
        ReportSection s = new ArrestTables(sameLine, SI).section();
        ReportBlock.Table t = Printed.table(s, "All arrests, as computed");
        assertThat(t.rows()).hasSameSizeAs(sameLine).hasSizeGreaterThan(2);
        for (int i = 0; i < sameLine.size(); i++) {
            List<String> c = t.rows().get(i).cells();
            ArrestResult r = sameLine.get(i);
            assertThat(c.get(0)).isEqualTo(Integer.toString(i + 1));
            assertThat(c.get(1)).isEqualTo(r.fall().id());
            assertThat(c.get(2))
                    .isEqualTo(
                            r.side() == org.lifeline.model.absorber.DeploymentForce.MAXIMUM ? "maximum" : "clearance");
            assertThat(Printed.number(c.get(3))).isEqualTo(r.temperature());
            org.lifeline.report.PrintedNumber.check(c.get(4), 1, r.freeFall());
            org.lifeline.report.PrintedNumber.check(c.get(6), 1, r.arrestForce());
            org.lifeline.report.PrintedNumber.check(c.get(7), 1, r.endAnchorLoad());
            org.lifeline.report.PrintedNumber.check(
                    c.get(9), 1, r.clearance().margin().orElseThrow());
        }
        assertThat(Printed.words(s)).isEmpty();
        ReportSection bound =
                new ArrestTables(List.of(java.util.Objects.requireNonNull(ARRESTS.get("two together"))), SI).section();
        assertThat(Printed.words(bound)).startsWith("Arrest 1: ").contains(ArrestTables.BOUND);
        assertThat(Printed.words(new ArrestTables(List.of(), SI).section())).isEqualTo("No fall was analysed.\n");
    }
}
