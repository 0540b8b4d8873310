package org.lifeline.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.report.Xml;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.report.picture.PictureChecks;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** A map of classes: each class has the area of its cells, and the table has the classes again. */
class MapReadBackTest {
    private static final ChartAxis ACROSS = new ChartAxis("span", QuantityKind.LENGTH);
    private static final ChartAxis UP = new ChartAxis("pretension", QuantityKind.FORCE);
    private static final List<String> NAMES = List.of("feasible", "anchor", "clearance");

    private static double[] even(int n, double from, double step) {
        double[] v = new double[n];
        Arrays.setAll(v, i -> from + i * step);
        return v;
    }

    private static Picture draw(int[][] classes) {
        return MapPicture.in(UnitChoice.SI)
                .draw(
                        "Map",
                        "Classes.",
                        ACROSS,
                        UP,
                        MapGrid.of(even(classes[0].length, 5, 1), even(classes.length, 1000, 500), classes, NAMES));
    }

    private static double area(Document d, int of) {
        double sum = 0;
        for (Element e : Xml.all(d, "rect")) {
            // The box of the key has a stroke, the cells of the map have none.
            if (e.getAttribute("fill").endsWith("-" + of + ")") && !e.hasAttribute("stroke")) {
                sum += Double.parseDouble(e.getAttribute("width")) * Double.parseDouble(e.getAttribute("height"));
            }
        }
        return sum;
    }

    @Test
    void areasAreThoseOfTheCells() {
        for (long seed = 1; seed <= 40; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            int[][] classes = new int[r.nextInt(2, 9)][r.nextInt(2, 9)];
            int[] count = new int[3];
            int cells = 0;
            for (int[] row : classes) {
                for (int j = 0; j < row.length; j++) {
                    row[j] = r.nextInt(-1, 3);
                    cells++;
                    if (row[j] >= 0) {
                        count[row[j]]++;
                    }
                }
            }
            Document d = PictureChecks.check(draw(classes));
            double whole = 520.0 * 380;
            for (int k = 0; k < 3; k++) {
                assertThat(area(d, k))
                        .as("seed %d, class %d", seed, k)
                        .isCloseTo(whole * count[k] / cells, within(1e-3 * whole));
            }
        }
    }

    /** Rows of the table run from the top of the map down. */
    @Test
    void theTableIsTheMap() {
        ReportBlock.Table table = draw(new int[][] {{0, 1}, {2, -1}}).data();
        assertThat(table.columns()).extracting(ReportBlock.Column::heading).endsWith("5.000", "6.000");
        assertThat(table.rows().get(0).cells()).containsExactly("1.50", "clearance", "–");
        assertThat(table.rows().get(1).cells()).containsExactly("1.00", "feasible", "anchor");
    }

    @Test
    void aGridThatDoesNotFitIsRefused() {
        double[] two = {1, 2};
        int[][] square = {{0, 0}, {0, 0}};
        MapGrid.of(two, two, square, NAMES);
        for (int[][] bad : new int[][][] {{{0, 0}}, {{0, 0}, {0}}, {{0, 0}, {0, 3}}, {{0, 0, 0}, {0, 0, 0}}}) {
            assertThatThrownBy(() -> MapGrid.of(two, two, bad, NAMES))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("grid of 2 by 2 cells");
        }
        assertThatThrownBy(() -> MapGrid.of(new double[] {1}, two, new int[][] {{0}, {0}}, NAMES))
                .isInstanceOf(IllegalArgumentException.class);
        List<String> eight = List.of("1", "2", "3", "4", "5", "6", "7", "8");
        assertThatThrownBy(() -> MapGrid.of(two, two, square, eight))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("8 classes");
    }

    @Test
    void theGridHoldsCopies() {
        double[] x = {1, 2};
        int[][] classes = {{0, 1}, {1, 0}};
        MapGrid grid = MapGrid.of(x, x, classes, NAMES);
        Picture before = MapPicture.in(UnitChoice.SI).draw("Map", "d", ACROSS, UP, grid);
        classes[0][0] = 2;
        x[0] = 7;
        assertThat(MapPicture.in(UnitChoice.SI).draw("Map", "d", ACROSS, UP, grid))
                .isEqualTo(before);
    }
}
