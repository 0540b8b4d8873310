package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.TransientResult;
import org.lifeline.analysis.motion.MotionSummary;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Place;
import org.lifeline.report.Printed;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;

/** An arrest in time as printed: energies add up, ratios are those of their columns, meshes are halved. */
class MotionSectionsTest {
    private static final TransientResult ONE = motion(0);
    private static final TransientResult THREE = motion(2);
    private static final Quantities SI = Quantities.in(UnitChoice.SI);
    private static final ReportSection SECTION =
            new MotionSections(SI).sections(THREE, false).get(0);

    private static TransientResult motion(int refinements) {
        Fall fall = Fall.builder("fall")
                .at(Place.of(1, 5))
                .faller(SampleDesigns.worker("A", 100, Attachment.GRIPPED, SampleDesigns.lanyard()))
                .hanging(SampleDesigns.worker("B", 80, Attachment.GRIPPED, SampleDesigns.lanyard()), Place.of(1, 3))
                .build();
        return TransientArrest.withDefaults()
                .withSegmentLength(1)
                .withRefinements(refinements)
                .withDuration(0.9)
                .solve(SampleDesigns.single(SampleDesigns.steel(), Installed.pretension(2000)), fall);
    }

    private static BigDecimal decimal(String cell) {
        return new BigDecimal(cell.replace(" kN", "").replace('−', '-'));
    }

    private static double n(List<String> cells, int column) {
        return Printed.number(cells.get(column));
    }

    @Test
    void peakAndAllowanceAddUpToTheLastColumn() {
        ReportBlock.Table t = Printed.table(SECTION, "Forces of the first catch");
        assertThat(t.rows())
                .extracting(r -> r.cells().get(0))
                .containsExactly(
                        "Tension in the cable", "Largest arrest force on a worker", "Load on west", "Load on east");
        for (ReportBlock.Row row : t.rows()) {
            List<String> c = row.cells();
            assertThat(decimal(c.get(1)).add(decimal(c.get(2))))
                    .as(row.toString())
                    .isEqualByComparingTo(decimal(c.get(5)));
            assertThat(n(c, 3)).as("a filter takes the sharpest part away").isLessThanOrEqualTo(n(c, 1) * 1.1);
        }
        List<String> tension = Printed.row(t, "Tension");
        assertThat(n(tension, 1)).isCloseTo(THREE.arrest().maximumTension() / 1000, within(0.0051));
        double anchors = Math.max(n(Printed.row(t, "Load on west"), 1), n(Printed.row(t, "Load on east"), 1));
        assertThat(anchors).isLessThanOrEqualTo(n(tension, 1) + 0.05);
    }

    @Test
    void withFewerThanThreeMeshesNoAllowanceIsKnown() {
        ReportSection s = new MotionSections(SI).sections(ONE, false).get(0);
        for (ReportBlock.Row row : Printed.table(s, "Forces of the first catch").rows()) {
            assertThat(row.cells().get(2)).isEqualTo("not known");
            assertThat(row.cells().get(4)).isEqualTo("not known");
            assertThat(row.cells().get(5)).isEqualTo("not known");
            assertThat(row.cells().get(1)).endsWith(" kN");
        }
        assertThat(Printed.words(s))
                .contains("fewer than three meshes were followed, so nothing bounds what finer ones change")
                .contains("NOT within the");
        assertThat(Printed.table(s, "Meshes").rows()).hasSize(1);
    }

    @Test
    void ratiosAreTheFirstCatchOverTheEnergyBalance() {
        ReportBlock.Table t = Printed.table(SECTION, "Peaks beside the energy balance");
        int ratios = 0;
        for (ReportBlock.Row row : t.rows()) {
            List<String> c = row.cells();
            if (!c.get(3).equals("–")) {
                double ratio = n(c, 2) / n(c, 1);
                assertThat(n(c, 3)).as(row.toString()).isCloseTo(ratio, within(0.011 * ratio / n(c, 1) + 0.0006));
                ratios++;
            } else {
                assertThat(c.get(1)).as(row.toString()).isEqualTo("–");
            }
            if (!c.get(4).equals("–") && !c.get(0).startsWith("Lowest")) {
                assertThat(n(c, 5))
                        .as("the whole run has the first catch in it")
                        .isGreaterThanOrEqualTo(n(c, 2));
                assertThat(n(c, 4)).isBetween(0.0, 0.9);
            }
        }
        assertThat(ratios).as("A, tension, two supports, fall distance").isEqualTo(5);
        assertThat(Printed.row(t, "Force on B").get(1))
                .as("who hangs has no balance of his own")
                .isEqualTo("–");
        ArrestResult balance = THREE.energyBalance().orElseThrow();
        assertThat(n(Printed.row(t, "Force on A"), 1)).isCloseTo(balance.arrestForce() / 1000, within(0.0051));
        assertThat(n(Printed.row(t, "Total fall distance"), 2))
                .isCloseTo(THREE.arrest().totalFallDistance(), within(0.00051));
    }

    @Test
    void energiesAddUpAtTheLowestPointAndAtTheEnd() {
        for (UnitChoice units : UnitChoice.values()) {
            ReportSection s = new MotionSections(Quantities.in(units))
                    .sections(THREE, false)
                    .get(0);
            ReportBlock.Table t = Printed.table(s, "Energy account");
            int columns = t.columns().size();
            assertThat(columns).isEqualTo(1 + 2 * units.systems().size());
            for (int k = 1; k < columns; k++) {
                BigDecimal sum = BigDecimal.ZERO;
                for (ReportBlock.Row row : t.rows()) {
                    BigDecimal each = decimal(row.cells().get(k));
                    if (row.total()) {
                        assertThat(each).isEqualByComparingTo(sum);
                    } else {
                        sum = sum.add(each);
                    }
                }
            }
        }
    }

    @Test
    void whatIsSetFreeIsTheWeightTimesTheDescent() {
        ReportBlock.Table t = Printed.table(SECTION, "Energy account");
        List<String> total = Printed.row(t, "Set free");
        double lowest = Double.parseDouble(t.caption().replaceAll(".*lowest point, after ([0-9.]+) s.*", "$1"));
        double[] times = THREE.history().times();
        int at = 0;
        for (int i = 0; i < times.length; i++) {
            at = Math.abs(times[i] - lowest) < Math.abs(times[at] - lowest) ? i : at;
        }
        double[] a = THREE.history().worker("A").z();
        double[] b = THREE.history().worker("B").z();
        double free = 9.80665 * (100 * (a[0] - a[at]) + 80 * (b[0] - b[at]));
        assertThat(n(total, 1)).isCloseTo(free, within(1.0));
        assertThat(n(total, 1)).as("lowest, so most").isGreaterThanOrEqualTo(n(total, 2));
        // At the lowest point of the only one who falls, he is at rest; the motion left is that of who hangs.
        assertThat(n(Printed.row(t, "Motion of the workers"), 1)).isLessThan(0.1 * free);
    }

    @Test
    void everyMeshHasHalfTheSegmentOfTheOneBefore() {
        ReportBlock.Table t = Printed.table(SECTION, "Meshes");
        assertThat(t.rows()).hasSize(3);
        for (int i = 0; i < 3; i++) {
            List<String> c = t.rows().get(i).cells();
            assertThat(n(c, 0)).isCloseTo(THREE.meshes().get(0).mesh().segmentLength() / (1 << i), within(0.0006));
            if (i > 0) {
                List<String> before = t.rows().get(i - 1).cells();
                assertThat(Long.parseLong(c.get(1))).isGreaterThan(Long.parseLong(before.get(1)));
                assertThat(Long.parseLong(c.get(2))).isGreaterThan(Long.parseLong(before.get(2)));
                double change = 0;
                for (int k : new int[] {3, 4}) {
                    change = Math.max(change, Math.abs(n(c, k) - n(before, k)) / n(c, k));
                }
                // A lowest point in metres changes less than forces do.
                assertThat(n(c, 6) / 100).as("mesh %d", i).isGreaterThanOrEqualTo(change - 0.006);
            }
        }
        assertThat(t.rows().get(0).cells().get(6)).isEqualTo("–");
    }

    @Test
    void accuracyAndDriftAreSaidInPercent() {
        String words = Printed.words(SECTION);
        assertThat(words)
                .contains("Energy drift: " + MotionSections.percent(THREE.relativeDrift()))
                .contains(THREE.accurate() ? "(within the" : "(NOT within the")
                .contains(" ms, last step ")
                .contains("above 1 where the motion overshoots the static path");
        assertThat(words.contains("THE RUN ENDED BEFORE THE FIRST CATCH WAS OVER"))
                .isEqualTo(!THREE.firstCatchOver());
        double damping = Double.parseDouble(words.replaceAll("(?s).*Damping time of the cable ([0-9.]+) ms.*", "$1"));
        assertThat(damping).isCloseTo(1000 * THREE.dampingTime(), within(0.0006 * damping));
    }

    @Test
    void aRunThatEndsTooEarlyIsSaidInCapitals() {
        TransientResult cut = TransientArrest.withDefaults()
                .withSegmentLength(1)
                .withRefinements(0)
                .withDuration(0.75)
                .solve(THREE.arrest().line(), THREE.arrest().fall());
        assertThat(cut.firstCatchOver()).isFalse();
        assertThat(Printed.words(new MotionSections(SI).sections(cut, false).get(0)))
                .contains("THE RUN ENDED BEFORE THE FIRST CATCH WAS OVER.");
    }

    @Test
    void aSummaryHasThePeaksOfTheWholeRunAndItsMesh() {
        ArrestResult r = THREE.arrest();
        MotionSummary m = r.motion().orElseThrow();
        ReportSection s = new ReportSection("s", 1, new MotionSections(SI).summary(r, m));
        ReportBlock.Table t = Printed.table(s, "Peaks of the whole run");
        assertThat(t.rows()).hasSize(1 + 2 * 2 + 2);
        assertThat(n(Printed.row(t, "Tension in the cable"), 1))
                .isCloseTo(m.wholeRun().tension().value() / 1000, within(0.0051));
        assertThat(n(Printed.row(t, "Lowest elevation of the harness attachment of A"), 1))
                .isCloseTo(m.wholeRun().worker("A").lowest().value(), within(0.00051));
        assertThat(Printed.words(s))
                .contains("Mesh: segments of " + "0.250 m")
                .contains(m.mesh().mesh().nodes() + " nodes");
        assertThat(Printed.tables(s).get(0).caption()).startsWith("Forces of the first catch");
    }

    @Test
    void thePictureIsDrawnWhereItIsAskedFor() {
        assertThat(SECTION.blocks()).noneMatch(ReportBlock.Figure.class::isInstance);
        assertThat(new MotionSections(SI).sections(ONE, true).get(0).blocks())
                .anyMatch(ReportBlock.Figure.class::isInstance);
        assertThat(SECTION.title()).startsWith("In time: fall, ");
    }

    @ParameterizedTest
    @CsvSource({
        "0.1234, 12 %",
        "0.00123, 0.12 %",
        "1.5, 150 %",
        "0.1, 10 %",
        "0, 0 %",
        "NaN, an unknown share",
        "Infinity, an unknown share"
    })
    void aShareIsWrittenWithTwoDigits(double share, String text) {
        assertThat(MotionSections.percent(share)).isEqualTo(text);
    }
}
