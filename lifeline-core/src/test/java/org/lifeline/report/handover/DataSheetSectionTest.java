package org.lifeline.report.handover;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.Basis;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.field.StringingRow;
import org.lifeline.design.handover.DataSheet;
import org.lifeline.design.handover.Handover;
import org.lifeline.design.handover.HandoverRequest;
import org.lifeline.design.handover.HandoverResult;
import org.lifeline.report.Printed;
import org.lifeline.report.PrintedNumber;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;

/** The one page for those who use the line: complete, and on the safe side of what was computed. */
class DataSheetSectionTest {
    private static final DataSheet FULL = HandedOver.Full.RESULT.dataSheet();
    private static final DataSheet BARE = HandedOver.Bare.RESULT.dataSheet();
    private static final ReportSection SHEET = section(FULL, UnitChoice.SI);
    private static final ReportSection PLAIN = section(BARE, UnitChoice.SI);

    private static ReportSection section(DataSheet sheet, UnitChoice units) {
        return new DataSheetSection(sheet, Quantities.in(units)).section();
    }

    private static String value(ReportSection s, String item) {
        return Printed.table(s, "What the line is made for").rows().stream()
                .filter(r -> r.cells().get(0).equals(item))
                .map(r -> r.cells().get(1))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no item " + item));
    }

    @Test
    void usersAreThoseThatWereFoundInAllAndInEachSpan() {
        int all = HandedOver.Full.RESULT.occupancy().orElseThrow().inAll();
        assertThat(value(SHEET, "Users at once"))
                .startsWith(all + "; in the spans ")
                .contains(" (by energy balance")
                .endsWith(")");
        assertThat(value(PLAIN, "Users at once"))
                .isEqualTo("assessed with the falls of the design; the number was not looked for");
    }

    @Test
    void massesReachFromTheLightestToTheHeaviest() {
        assertThat(value(SHEET, "Mass of a user with tools")).isEqualTo("80 kg to 100 kg");
        assertThat(value(PLAIN, "Mass of a user with tools")).isEqualTo("70 kg to 110 kg");
        // 80 and 100 kg are 176.4 and 220.5 lb.
        assertThat(value(section(FULL, UnitChoice.US_CUSTOMARY), "Mass of a user with tools"))
                .isEqualTo("176.4 lb to 220.5 lb");
    }

    @Test
    void theClearanceIsTheLargestOfAllStretches() {
        double most = HandedOver.Full.RESULT.clearance().orElseThrow().stretches().stream()
                .mapToDouble(s -> s.requiredBelowLine())
                .max()
                .orElseThrow();
        double said = Printed.number(value(SHEET, "Keep free below the line as installed"));
        assertThat(said).isBetween(most - 1e-6, most + 0.05);
        assertThat(Printed.number(value(PLAIN, "Keep free below the line as installed")))
                .as("the whole line where it was not drawn up in stretches")
                .isGreaterThan(3);
    }

    @Test
    void stretchesThatMustNotBeUsedAreSaidAndTheirAbsenceToo() {
        assertThat(FULL.mustNotBeUsed()).isNotEmpty();
        String text = value(SHEET, "Do not use the line");
        assertThat(text.split("; ", -1)).hasSameSizeAs(FULL.mustNotBeUsed());
        List<PrintedNumber> ends = PrintedNumber.of(text);
        assertThat(ends.get(0).si()).isCloseTo(FULL.mustNotBeUsed().get(0).low(), within(0.0006));
        assertThat(ends.get(1).si()).isCloseTo(FULL.mustNotBeUsed().get(0).high(), within(0.0006));
        assertThat(value(PLAIN, "Do not use the line")).isEqualTo("clearance along the line not drawn up");
    }

    @Test
    void thePretensionStandsAtEachTemperatureWithWhatIsAccepted() {
        for (StringingRow row : FULL.pretension()) {
            String item = "Pretension at " + (row.temperature() < 0 ? "−20" : "40") + " °C";
            List<PrintedNumber> printed = PrintedNumber.of(value(SHEET, item));
            assertThat(printed).hasSize(3);
            assertThat(printed.get(0).si()).isCloseTo(row.tension().nominal(), within(5.0));
            assertThat(printed.get(1).si()).isCloseTo(row.tension().low(), within(5.0));
            assertThat(printed.get(2).si()).isCloseTo(row.tension().high(), within(5.0));
        }
        assertThat(FULL.pretension()).hasSize(2);
        assertThat(PrintedNumber.of(value(PLAIN, "Pretension at 15 °C")))
                .as("no range where none was asked for")
                .hasSize(1);
    }

    @Test
    void theBreakingStrengthIsThatOfTheCable() {
        assertThat(value(SHEET, "Cable, required breaking strength")).isEqualTo("90.7 kN");
        assertThat(value(PLAIN, "Cable, required breaking strength")).isEqualTo("not stated");
    }

    @Test
    void everyConnectionIsPermittedByItsNumbers() {
        ReportBlock.Table t = Printed.table(SHEET, "Connecting subsystems");
        assertThat(t.rows()).hasSize(2);
        List<String> wide = t.rows().get(0).cells();
        assertThat(wide.get(0)).isEqualTo("lanyard with energy absorber");
        assertThat(wide.get(1)).isEqualTo("1.8 m");
        assertThat(wide.subList(3, 6)).containsExactly("3.20 kN", "6.00 kN", "1.2 m");
        double most = FULL.connections().get(0).freeFall();
        assertThat(Printed.number(wide.get(2))).isCloseTo(most, within(0.00051));
        assertThat(t.rows().get(1).cells().get(3)).isEqualTo("5.50 kN");
    }

    @Test
    void connectionsOfOtherKindsAreNamedAndHaveNoForceWhereNoneDeploys() {
        ReportBlock.Table t = Printed.table(PLAIN, "Connecting subsystems");
        assertThat(t.rows())
                .extracting(r -> r.cells().get(0))
                .containsExactly("lanyard without absorber", "self-retracting device", "subsystem by its curve");
        assertThat(t.rows().get(0).cells().subList(3, 6)).containsExactly("–", "–", "–");
        assertThat(t.rows().get(1).cells().subList(3, 6)).containsExactly("2.50 kN", "4.50 kN", "1 m");
        assertThat(t.rows().get(2).cells().subList(3, 5)).containsExactly("–", "–");
        assertThat(t.rows()).allSatisfy(r -> assertThat(r.cells().get(2)).matches("not computed|[0-9.]+ m"));
    }

    @Test
    void anchorsHaveTheirLoadAndTheCapacityThatIsStated() {
        ReportBlock.Table t = Printed.table(SHEET, "Loads on the anchors");
        assertThat(t.rows()).extracting(r -> r.cells().get(0)).containsExactly("north", "post <1>", "south");
        assertThat(t.rows()).extracting(r -> r.cells().get(2)).containsExactly("45 kN", "not stated", "not stated");
        for (int i = 0; i < 3; i++) {
            PrintedNumber.check(
                    t.rows().get(i).cells().get(1), 1, FULL.anchors().get(i).load());
        }
        ReportBlock.Table both = Printed.table(section(FULL, UnitChoice.BOTH), "Loads on the anchors");
        PrintedNumber.check(
                both.rows().get(0).cells().get(1), 2, FULL.anchors().get(0).load());
    }

    /** One worker meets the limit by energy balance and not in time: number and verdict stand side by side. */
    @Test
    void aNumberOfUsersStandsBesideWhatTheAssessmentDoesNotMeet() {
        AssessmentResult plain = Assessment.withDefaults().solve(HandedOver.Single.DESIGN);
        double slow = plain.balance().of(Quantity.END_ANCHOR_LOAD).orElseThrow().value();
        double fast = plain.governing("endAnchorLoad").orElseThrow().factored();
        Criterion between = Criterion.stated(
                "anchors", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 0.5 * (slow + fast), "brief 1");
        Criterion above =
                Criterion.stated("anchors", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 2 * fast, "brief 1");
        for (Criterion each : List.of(between, above)) {
            boolean met = each == above;
            HandoverResult result = Handover.of(HandoverRequest.nothing().withNumberOfWorkers())
                    .solve(Assessment.withDefaults().withCriteria(List.of(each)).solve(HandedOver.Single.DESIGN));
            assertThat(result.occupancy().orElseThrow().inAll()).isEqualTo(1);
            assertThat(value(section(result.dataSheet(), UnitChoice.SI), "Users at once"))
                    .isEqualTo("1; in the spans 1 (by energy balance"
                            + (met ? "" : "; the assessment of this design does NOT MEET anchors") + ")");
            String words = Printed.words(new OccupancySection(
                            result.occupancy().orElseThrow(), result.assessment(), Quantities.in(UnitChoice.SI))
                    .section());
            assertThat(words.contains("ATTENTION: the assessment of this design does NOT MEET anchors"))
                    .isEqualTo(!met);
        }
    }

    @Test
    void aSheetWithoutArrestsInTimeSaysSo() {
        String left = "Arrests in time were LEFT OUT";
        assertThat(Printed.words(SHEET)).contains(left).contains("by energy balance alone");
        assertThat(Printed.words(PLAIN)).contains(left);
        AssessmentResult inTime = Assessment.withDefaults().solve(HandedOver.Single.DESIGN);
        DataSheet followed =
                Handover.of(HandoverRequest.nothing()).solve(inTime).dataSheet();
        assertThat(Printed.words(section(followed, UnitChoice.SI))).doesNotContain("LEFT OUT");
        double anchor = inTime.governing("load on east").orElseThrow().factored();
        assertThat(anchor)
                .as("in time the load of this line is more than by energy balance")
                .isGreaterThan(inTime.balance().onSupport("east").orElseThrow().value());
        PrintedNumber.check(
                Printed.table(section(followed, UnitChoice.SI), "Loads on the anchors")
                        .rows()
                        .get(0)
                        .cells()
                        .get(1),
                1,
                anchor);
        AssessmentResult stated =
                Assessment.withDefaults().withBasis(Basis.ENERGY_BALANCE).solve(HandedOver.Single.DESIGN);
        DataSheet balance = Handover.of(HandoverRequest.nothing()).solve(stated).dataSheet();
        assertThat(balance.anchors().get(0).load()).isLessThan(anchor);
        assertThat(Printed.words(section(balance, UnitChoice.SI)))
                .contains("rest on energy balance alone, as the design states")
                .doesNotContain("LEFT OUT");
    }

    @Test
    void forcesThatLieTooCloseAreRemarkedByTheNameOfTheirUser() {
        assertThat(Printed.words(SHEET))
                .contains("Remark: the deployment forces stated for B lie closer together")
                .contains("87.5 %");
        assertThat(Printed.words(PLAIN)).doesNotContain("lie closer together");
    }

    @Test
    void theRulesForUsersAreOnEverySheet() {
        for (ReportSection s : List.of(SHEET, PLAIN)) {
            assertThat(s.title()).isEqualTo("Data sheet for the line");
            assertThat(Printed.words(s))
                    .contains("Only a qualified person may change the line")
                    .contains("taken out of service")
                    .contains("Rescue of a suspended worker is planned")
                    .contains("complies with a regulation or standard");
        }
    }
}
