package org.lifeline.report.handover;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Interval;
import org.lifeline.design.clearance.ClearanceAlongLineResult;
import org.lifeline.design.clearance.ClearanceStretch;
import org.lifeline.report.Printed;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.report.picture.PictureChecks;

/** Clearance by stretches as printed: rounded to the safe side, and forbidden exactly where it does not suffice. */
class ClearanceSectionTest {
    private static final ClearanceAlongLineResult RESULT =
            HandedOver.Full.RESULT.clearance().orElseThrow();
    private static final ReportSection SECTION = new ClearanceSection(RESULT, Quantities.in(UnitChoice.SI)).section();
    private static final List<ReportBlock.Row> ROWS =
            Printed.table(SECTION, "Clearance by stretches").rows();

    private static double n(List<String> cells, int column) {
        return Printed.number(cells.get(column));
    }

    private static Picture picture() {
        return SECTION.blocks().stream()
                .filter(ReportBlock.Figure.class::isInstance)
                .map(b -> ((ReportBlock.Figure) b).picture())
                .findFirst()
                .orElseThrow();
    }

    @Test
    void stretchesFollowEachOtherWithoutAGapThroughBothSpans() {
        assertThat(ROWS).hasSize(8);
        for (int i = 0; i < 8; i++) {
            List<String> c = ROWS.get(i).cells();
            assertThat(c.get(0)).isEqualTo(i < 4 ? "1" : "2");
            assertThat(n(c, 1)).isCloseTo(3.0 * (i % 4), within(0.001));
            assertThat(n(c, 2)).isCloseTo(3.0 * (i % 4) + 3, within(0.001));
        }
    }

    @Test
    void requiredDistancesAreRoundedUpAndAvailableOnesDown() {
        for (int i = 0; i < ROWS.size(); i++) {
            List<String> c = ROWS.get(i).cells();
            ClearanceStretch s = RESULT.stretches().get(i);
            assertThat(n(c, 3)).isBetween(s.requiredBelowLine() - 1e-6, s.requiredBelowLine() + 0.05);
            assertThat(n(c, 5)).isBetween(s.requiredBelowWalkingLevel() - 1e-6, s.requiredBelowWalkingLevel() + 0.05);
            assertThat(n(c, 6))
                    .isBetween(s.swing().displacement() - 1e-6, s.swing().displacement() + 0.05);
            assertThat(n(c, 7))
                    .isBetween(s.swing().amplitude() - 1e-6, s.swing().amplitude() + 0.05);
            assertThat(n(c, 8)).isCloseTo(Math.toDegrees(s.swing().angle()), within(0.051));
            for (int column : new int[] {3, 5, 6, 7}) {
                assertThat(Math.IEEEremainder(n(c, column), 0.05)).isCloseTo(0, within(1e-9));
            }
            if (s.availableBelowLine().isPresent()) {
                double room = s.availableBelowLine().getAsDouble();
                assertThat(n(c, 4)).isBetween(room - 0.05, room + 1e-6);
            } else {
                assertThat(c.get(4)).isEqualTo("not stated");
            }
        }
    }

    @Test
    void theLineIsForbiddenJustWhereTheRoomDoesNotSuffice() {
        int forbidden = 0;
        for (int i = 0; i < ROWS.size(); i++) {
            List<String> c = ROWS.get(i).cells();
            boolean obstruction = !c.get(4).equals("not stated");
            boolean lacking = obstruction && n(c, 4) < n(c, 3) - 0.1;
            if (lacking) {
                assertThat(c.get(9)).as("stretch %d", i).startsWith("NO: ");
                forbidden++;
            }
            if (!obstruction && RESULT.stretches().get(i).reasons().isEmpty()) {
                assertThat(c.get(9)).isEqualTo("no obstruction stated");
            }
            if (obstruction && n(c, 4) > n(c, 3)) {
                assertThat(c.get(9)).isEmpty();
            }
        }
        assertThat(forbidden).as("a ceiling 3.9 m below the line").isGreaterThanOrEqualTo(2);
        assertThat(ROWS).extracting(r -> r.cells().get(9)).contains("", "no obstruction stated");
    }

    @Test
    void whatMustNotBeUsedIsSaidInCapitals() {
        String words = Printed.words(SECTION);
        for (Interval each : RESULT.mustNotBeUsed()) {
            assertThat(words)
                    .contains(String.format(
                            java.util.Locale.ROOT,
                            "DO NOT USE the line from %.3f m to %.3f m along it.",
                            each.low(),
                            each.high()));
        }
        assertThat(words)
                .contains("stretches of at most 3 m", "down, to 0.05 m", "no arrest was followed in time")
                .doesNotContain("No stretch was found");
    }

    @Test
    void thePictureShowsTheLineTheNeedAndWhereItIsForbidden() {
        Picture p = picture();
        PictureChecks.check(p);
        assertThat(p.title()).isEqualTo("Clearance along the line: walkway");
        List<ReportBlock.Column> columns = p.data().columns();
        assertThat(columns)
                .extracting(ReportBlock.Column::heading)
                .containsExactly(
                        "distance along the line [m]",
                        "line as installed [m]",
                        "keep free below [m]",
                        "top of obstruction [m]",
                        "DO NOT USE [m]");
        int marked = 0;
        for (ReportBlock.Row row : p.data().rows()) {
            List<String> c = row.cells();
            double x = n(c, 0);
            assertThat(n(c, 1)).as("sag of some centimetres below 12.4 m").isBetween(12.2, 12.4);
            assertThat(n(c, 2)).isLessThan(n(c, 1) - 3);
            if (!c.get(3).equals("–")) {
                assertThat(n(c, 3)).isEqualTo(x < 12 ? 2.0 : 8.5);
            }
            if (!c.get(4).equals("–")) {
                assertThat(n(c, 4)).isBetween(n(c, 1) - 0.001, 12.4);
                assertThat(x).isGreaterThanOrEqualTo(15 - 3);
                marked++;
            }
        }
        assertThat(marked).isGreaterThan(3);
    }
}
