package org.lifeline.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
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

/** A reader with a ruler: values of a chart are read off its axes, and are those that were drawn. */
class ChartReadBackTest {
    private static final ChartAxis TIME = new ChartAxis("time", QuantityKind.TIME);
    private static final ChartAxis FORCE = new ChartAxis("force", QuantityKind.FORCE);
    private static final ChartAxis LENGTH = new ChartAxis("distance", QuantityKind.LENGTH);

    /** A straight scale through two labelled ticks. */
    private record Ruler(double place, double value, double perPlace) {
        double read(double at) {
            return value + (at - place) * perPlace;
        }

        static Ruler of(List<double[]> ticks) {
            double[] a = ticks.get(0);
            double[] b = ticks.get(ticks.size() - 1);
            return new Ruler(a[0], a[1], (b[1] - a[1]) / (b[0] - a[0]));
        }
    }

    private static List<double[]> ticks(Document d, String anchor, String place, double shift) {
        List<double[]> list = new ArrayList<>();
        for (Element e : Xml.all(d, "text")) {
            if (e.getAttribute("text-anchor").equals(anchor)
                    && e.getTextContent().matches("−?[0-9.]+")) {
                list.add(new double[] {
                    Double.parseDouble(e.getAttribute(place)) - shift,
                    Double.parseDouble(e.getTextContent().replace('−', '-'))
                });
            }
        }
        return list;
    }

    private static double[][] points(Element polyline) {
        return Arrays.stream(polyline.getAttribute("points").split(" ", -1))
                .map(p -> Arrays.stream(p.split(",", -1))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toArray(double[][]::new);
    }

    private static double[] wave(double[] x, double mean, double size) {
        return Arrays.stream(x).map(v -> mean + size * Math.sin(7 * v)).toArray();
    }

    private static double[] even(int n, double to) {
        double[] x = new double[n];
        Arrays.setAll(x, i -> to * i / (n - 1));
        return x;
    }

    @Test
    void pointsStandWhereTheAxesSay() {
        for (long seed = 1; seed <= 60; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double[] x = even(r.nextInt(5, 80), r.nextDouble(0.5, 4));
            double mean = r.nextDouble(-5000, 20_000);
            double size = r.nextDouble(500, 5000);
            double[] y = wave(x, mean, size);
            UnitChoice choice = r.nextBoolean() ? UnitChoice.SI : UnitChoice.US_CUSTOMARY;
            Picture p = ChartPicture.in(choice)
                    .draw("Chart", "A wave.", TIME, List.of(ChartPanel.of(FORCE, ChartSeries.of("wave", x, y))));
            Document d = PictureChecks.check(p);
            Ruler across = Ruler.of(ticks(d, "middle", "x", 0));
            Ruler up = Ruler.of(ticks(d, "end", "y", 4));
            double[][] points = points(Xml.all(d, "polyline").get(0));
            assertThat(points).as("seed %d", seed).hasDimensions(x.length, 2);
            // Places are written with two decimals, and ticks are: one pixel is far more than that.
            double pixel = Math.abs(up.perPlace()) * 0.03;
            for (int i = 0; i < x.length; i++) {
                assertThat(across.read(points[i][0]))
                        .as("seed %d", seed)
                        .isCloseTo(x[i], within(0.03 * Math.abs(across.perPlace())));
                assertThat(up.read(points[i][1]))
                        .as("seed %d", seed)
                        .isCloseTo(QuantityKind.FORCE.in(y[i], choice.leading()), within(pixel));
            }
        }
    }

    @Test
    void aGapInTheValuesIsAGapInTheLine() {
        double[] x = even(11, 1);
        double[] y = wave(x, 1000, 100);
        y[4] = Double.NaN;
        Document d = PictureChecks.check(ChartPicture.in(UnitChoice.SI)
                .draw("Chart", "A gap.", TIME, List.of(ChartPanel.of(FORCE, ChartSeries.of("wave", x, y)))));
        assertThat(Xml.all(d, "polyline").stream().mapToInt(e -> points(e).length))
                .containsExactly(4, 6);
    }

    @Test
    void twoFieldsStandOneBelowTheOther() {
        double[] x = even(9, 1);
        Document d = PictureChecks.check(ChartPicture.in(UnitChoice.SI)
                .draw(
                        "Chart",
                        "Two fields.",
                        TIME,
                        List.of(
                                ChartPanel.of(FORCE, ChartSeries.of("upper", x, wave(x, 2000, 100))),
                                ChartPanel.of(LENGTH, ChartSeries.of("lower", x, wave(x, 3, 1))))));
        double[][] upper = points(Xml.all(d, "polyline").get(0));
        double[][] lower = points(Xml.all(d, "polyline").get(1));
        double lowestOfUpper = Arrays.stream(upper).mapToDouble(p -> p[1]).max().orElseThrow();
        double highestOfLower =
                Arrays.stream(lower).mapToDouble(p -> p[1]).min().orElseThrow();
        assertThat(lowestOfUpper).isLessThan(highestOfLower);
        assertThat(upper[3][0]).as("one time is one place").isEqualTo(lower[3][0]);
    }

    @Test
    void theTableHoldsTheValuesAtEvenPlaces() {
        double[] x = {0, 1, 2, 4};
        double[] y = {0, 1000, 3000, 3000};
        Picture p = ChartPicture.in(UnitChoice.SI)
                .draw("Chart", "d", TIME, List.of(ChartPanel.of(FORCE, ChartSeries.of("ramp", x, y))));
        ReportBlock.Table table = p.data();
        assertThat(table.rows()).hasSize(ChartTable.INTERVALS + 1);
        assertThat(table.columns()).extracting(ReportBlock.Column::heading).containsExactly("time [s]", "ramp [kN]");
        assertThat(table.rows().get(0).cells()).containsExactly("0.000", "0.00");
        assertThat(table.rows().get(5).cells()).containsExactly("1.000", "1.00");
        // 1.4 s lies at 40 % of the way from 1 kN to 3 kN.
        assertThat(table.rows().get(7).cells()).containsExactly("1.400", "1.80");
        assertThat(table.rows().get(20).cells()).containsExactly("4.000", "3.00");
    }

    @Test
    void betweenItsPointsASeriesIsStraightAndBeyondThemNothing() {
        ChartSeries s = ChartSeries.of("s", new double[] {1, 2, 4}, new double[] {10, 20, 0});
        assertThat(ChartTable.at(s, 1)).isEqualTo(10);
        assertThat(ChartTable.at(s, 1.25)).isEqualTo(12.5);
        assertThat(ChartTable.at(s, 3)).isEqualTo(10);
        assertThat(ChartTable.at(s, 4)).isZero();
        assertThat(ChartTable.at(s, 0.999)).isNaN();
        assertThat(ChartTable.at(s, 4.001)).isNaN();
        assertThat(ChartTable.at(ChartSeries.of("none", new double[0], new double[0]), 1))
                .isNaN();
    }

    @Test
    void seriesHoldCopiesAndFit() {
        double[] x = {1, 2};
        double[] y = {3, 4};
        ChartSeries s = ChartSeries.of("s", x, y);
        x[0] = 9;
        y[1] = 9;
        assertThat(s.x(0)).isEqualTo(1);
        assertThat(s.y(1)).isEqualTo(4);
        assertThat(s.size()).isEqualTo(2);
        assertThatThrownBy(() -> ChartSeries.of("s", new double[2], new double[3]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("2 abscissas, 3 ordinates");
    }

    @Test
    void moreLinesThanCanBeToldApartAreRefused() {
        ChartSeries[] seven = new ChartSeries[7];
        Arrays.setAll(seven, i -> ChartSeries.of("s" + i, new double[] {0, 1}, new double[] {i, i}));
        assertThatThrownBy(() -> ChartPanel.of(FORCE, seven))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("7 lines in one field");
        ChartPanel six = ChartPanel.of(FORCE, Arrays.copyOf(seven, 6));
        assertThat(six.with(ReferenceLine.level("limit", 5)).marks()).hasSize(1);
        assertThat(six.marks()).as("the panel itself stays").isEmpty();
        assertThat(ReferenceLine.at("t", 1).vertical()).isTrue();
        assertThat(ReferenceLine.level("t", 1).vertical()).isFalse();
    }
}
