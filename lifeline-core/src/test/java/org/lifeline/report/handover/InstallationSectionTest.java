package org.lifeline.report.handover;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.design.installation.InstallationResult;
import org.lifeline.report.Printed;
import org.lifeline.report.PrintedNumber;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;

/** What those need who install the line, added up and compared from the printed numbers. */
class InstallationSectionTest {
    private static final InstallationResult RESULT =
            HandedOver.Full.RESULT.installation().orElseThrow();
    private static final ReportSection SECTION =
            new InstallationSection(RESULT, Quantities.in(UnitChoice.SI)).section();
    private static final double EA = 4.9e6;
    private static final double WEIGHT = 0.576 * 9.80665;

    private static double n(List<String> cells, int column) {
        return Printed.number(cells.get(column));
    }

    @Test
    void theStressFreeCableAddsUpAndIsThatOfAParabola() {
        ReportBlock.Table t = Printed.table(SECTION, "Stress-free cable");
        assertThat(t.rows()).hasSize(3);
        double sum = 0;
        for (int i = 0; i < 2; i++) {
            List<String> cells = t.rows().get(i).cells();
            assertThat(cells.get(0)).isEqualTo(Integer.toString(i + 1));
            assertThat(n(cells, 1)).isEqualTo(12);
            // L + w²L³/24H² − HL/EA: the parabola's length less its elastic stretch.
            assertThat(n(cells, 2)).isCloseTo(stressFree(1500), within(0.0015));
            sum += n(cells, 2);
        }
        assertThat(t.rows().get(2).total()).isTrue();
        assertThat(t.rows().get(2).cells().get(0)).isEqualTo("In all");
        assertThat(n(t.rows().get(2).cells(), 2)).isCloseTo(sum, within(0.0011));
    }

    @Test
    void theTravelIsCableAndStructureAndReachesTheLargestOfAll() {
        ReportBlock.Table t = Printed.table(SECTION, "Take-up");
        assertThat(t.rows()).hasSameSizeAs(RESULT.takeUps());
        double most = 0;
        for (ReportBlock.Row row : t.rows()) {
            List<String> c = row.cells();
            assertThat(n(c, 3) + n(c, 4)).as("drawn out and given way").isCloseTo(n(c, 5), within(0.11));
            assertThat(c.get(3)).endsWith(" mm");
            assertThat(n(c, 1)).as("drawn by hand").isCloseTo(0.10, within(0.006));
            assertThat(n(c, 2)).isGreaterThan(1);
            // From slack to tight: more than the elastic stretch of the cable alone.
            double stretch = (n(c, 2) - n(c, 1)) * 1000 * 24 / EA * 1000;
            assertThat(n(c, 3)).isGreaterThan(stretch - 0.5);
            most = Math.max(most, n(c, 5));
        }
        String travel = Printed.words(SECTION).replaceAll("(?s).*needs a travel of at least ([0-9.]+) m.*", "$1");
        assertThat(Double.parseDouble(travel) * 1000).isGreaterThanOrEqualTo(most - 0.6);
        assertThat(Printed.words(SECTION)).contains("re-tensioning after the constructional stretch included");
    }

    /** Tension at a temperature of a cable that has so much of 1500 N at 15 °C, by the length of a parabola [N]. */
    private static double tension(double factor, double temperature) {
        double warm = RESULT.design().line().cable().thermalExpansion() * (temperature - 15);
        double length = stressFree(1500 * factor) * (1 + warm);
        double low = 1;
        double high = 1e5;
        for (int i = 0; i < 100; i++) {
            double middle = 0.5 * (low + high);
            if (stressFree(middle) > length) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static double stressFree(double h) {
        return 12 + WEIGHT * WEIGHT * 12 * 12 * 12 / (24 * h * h) - h * 12 / EA;
    }

    @Test
    void theStringingTableAcceptsNineToElevenTenths() {
        ReportBlock.Table t = Printed.table(SECTION, "Stringing table");
        assertThat(t.caption()).contains("accepted from 90.00 % to 110.0 % of the pretension");
        assertThat(t.rows()).hasSameSizeAs(RESULT.stringing());
        for (ReportBlock.Row row : t.rows()) {
            List<String> c = row.cells();
            double tension = n(c, 2);
            double[] factors = {1, 0.9, 1.1};
            for (int k = 0; k < 3; k++) {
                double expected = tension(factors[k], n(c, 0)) / 1000;
                assertThat(n(c, 2 + k))
                        .as("%s × %s", c.get(0), factors[k])
                        .isCloseTo(expected, within(0.02 * expected));
            }
            double sag = WEIGHT * 12 * 12 / (8 * 1000 * tension) * 1000;
            assertThat(n(c, 5)).as("w L²/8H at %s", c.get(0)).isCloseTo(sag, within(0.02 * sag + 0.1));
            // A tighter cable hangs less, and sag times tension is the same for all three.
            double least = Math.min(n(c, 6), n(c, 7));
            double most = Math.max(n(c, 6), n(c, 7));
            assertThat(least * n(c, 4)).isCloseTo(n(c, 5) * tension, within(0.03 * sag * tension));
            assertThat(most * n(c, 3)).isCloseTo(n(c, 5) * tension, within(0.03 * sag * tension));
        }
    }

    @Test
    void colderIsTighter() {
        ReportBlock.Table t = Printed.table(SECTION, "Stringing table");
        double before = Double.POSITIVE_INFINITY;
        double temperature = Double.NEGATIVE_INFINITY;
        for (ReportBlock.Row row : t.rows()) {
            List<String> c = row.cells();
            if (c.get(1).equals("1")) {
                assertThat(n(c, 0)).isGreaterThan(temperature);
                assertThat(n(c, 2)).isLessThanOrEqualTo(before);
                temperature = n(c, 0);
                before = n(c, 2);
            }
        }
        assertThat(temperature).isEqualTo(30);
    }

    @Test
    void constructionalStretchCostsPretensionAndAsksForMore() {
        ReportBlock.Table t = Printed.table(SECTION, "Constructional stretch (");
        assertThat(t.rows()).hasSameSizeAs(RESULT.stretch());
        double left = Double.POSITIVE_INFINITY;
        double again = 0;
        for (ReportBlock.Row row : t.rows()) {
            List<String> c = row.cells();
            assertThat(c.get(0)).endsWith(" %");
            assertThat(n(c, 1)).isLessThanOrEqualTo(left);
            assertThat(n(c, 3)).isGreaterThanOrEqualTo(again);
            // Share of the whole length: 24 m.
            assertThat(n(c, 3)).isCloseTo(n(c, 0) / 100 * 24 * 1000, within(0.02 * n(c, 3) + 1));
            left = n(c, 1);
            again = n(c, 3);
        }
    }

    @Test
    void anotherReadingHasItsWorstValues() {
        ReportBlock.Table t = Printed.table(SECTION, "What another pretension means");
        assertThat(t.rows()).hasSameSizeAs(RESULT.readings());
        assertThat(t.rows()).isNotEmpty();
        for (int i = 0; i < t.rows().size(); i++) {
            List<String> c = t.rows().get(i).cells();
            assertThat(c.get(0)).isEqualTo(RESULT.readings().get(i).name());
            PrintedNumber.check(c.get(1), 1, RESULT.readings().get(i).pretension());
            for (int k = 2; k < 6; k++) {
                assertThat(c.get(k)).matches("−?[0-9.]+ (kN|m)|–");
            }
        }
        // The end anchors hold no more than the cable at its most; a tighter line needs less clearance.
        assertThat(t.rows()).allSatisfy(r -> assertThat(n(r.cells(), 2)).isLessThanOrEqualTo(n(r.cells(), 3) + 0.02));
    }

    @Test
    void theWordsSayWithinWhichTemperaturesAndFromWhatPull() {
        assertThat(Printed.words(SECTION))
                .contains("between 0 °C and 30 °C")
                .contains("starts from a cable drawn to 0.1 kN.");
        assertThat(SECTION.title()).isEqualTo("Installation");
        assertThat(SECTION.blocks()).hasSize(7);
    }

    @Test
    void inCustomaryUnitsTheNumbersAreTheSame() {
        ReportSection us = new InstallationSection(RESULT, Quantities.in(UnitChoice.US_CUSTOMARY)).section();
        List<ReportBlock.Row> a = Printed.table(SECTION, "Stringing table").rows();
        List<ReportBlock.Row> b = Printed.table(us, "Stringing table").rows();
        assertThat(b).hasSameSizeAs(a);
        for (int i = 0; i < a.size(); i++) {
            assertThat(n(b.get(i).cells(), 0)).isCloseTo(32 + 1.8 * n(a.get(i).cells(), 0), within(0.01));
            assertThat(n(b.get(i).cells(), 2) * 4.448_221_615_260_5)
                    .isCloseTo(1000 * n(a.get(i).cells(), 2), within(7.3));
            assertThat(n(b.get(i).cells(), 5) * 25.4).isCloseTo(n(a.get(i).cells(), 5), within(0.18));
        }
    }
}
