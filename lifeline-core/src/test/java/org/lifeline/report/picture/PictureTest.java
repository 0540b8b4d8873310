package org.lifeline.report.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.base.Point;
import org.lifeline.base.UnitSystem;
import org.lifeline.model.Obstruction;
import org.lifeline.report.Hostile;
import org.lifeline.report.Xml;
import org.lifeline.report.chart.ChartAxis;
import org.lifeline.report.chart.ChartPanel;
import org.lifeline.report.chart.ChartPicture;
import org.lifeline.report.chart.ChartSeries;
import org.lifeline.report.chart.DescentPicture;
import org.lifeline.report.chart.MapGrid;
import org.lifeline.report.chart.MapPicture;
import org.lifeline.report.chart.ReferenceLine;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** Pictures are complete, stay within their frame, and are to scale. */
class PictureTest {
    private static final Map<String, ArrestResult> ARRESTS = SampleDesigns.arrests();
    private static final List<Obstruction> BELOW = List.of(new Obstruction(0, 18, 4.0), new Obstruction(18, 30, 5.5));

    @TestFactory
    Stream<DynamicTest> everyPictureIsSound() {
        List<DynamicTest> tests = new ArrayList<>();
        ARRESTS.forEach((name, r) -> {
            for (UnitChoice u : UnitChoice.values()) {
                tests.add(dynamicTest(
                        "elevation " + name + " " + u, () -> PictureChecks.check(ElevationPicture.draw(r, BELOW, u))));
            }
            tests.add(dynamicTest("descent " + name, () -> PictureChecks.check(DescentPicture.draw(r, UnitChoice.SI))));
            for (UnitChoice u : UnitChoice.values()) {
                tests.add(dynamicTest("plan " + name + " " + u, () -> PictureChecks.check(PlanPicture.draw(r, u))));
            }
        });
        tests.add(dynamicTest("chart", () -> PictureChecks.check(chart(200_000))));
        tests.add(dynamicTest("map", () -> PictureChecks.check(map())));
        return tests.stream();
    }

    private static Picture chart(int n) {
        double[] t = new double[n];
        double[] f = new double[n];
        double[] g = new double[n];
        for (int i = 0; i < n; i++) {
            t[i] = 3.0 * i / n;
            f[i] = 6000 * Math.exp(-t[i]) * Math.abs(Math.sin(9 * t[i]));
            g[i] = t[i] < 1 ? Double.NaN : 2000 + 1500 * Math.sin(400 * t[i]) * Math.exp(-t[i]);
        }
        ChartPanel force = ChartPanel.of(
                        new ChartAxis("force", QuantityKind.FORCE),
                        ChartSeries.of("arrest force", t, f),
                        ChartSeries.of("tension", t, g))
                .with(ReferenceLine.level("limit", 6000))
                .with(ReferenceLine.at("absorber stops", 0.42));
        return ChartPicture.in(UnitChoice.SI)
                .draw(
                        "Histories",
                        "Force and tension",
                        new ChartAxis("time", QuantityKind.TIME),
                        List.of(force, force));
    }

    private static Picture map() {
        double[] x = {4, 6, 8, 10, 12};
        double[] y = {1000, 2000, 3000};
        int[][] k = {{0, 0, 0, 1, 1}, {0, 0, 2, 2, 2}, {2, 2, 2, 2, -1}};
        return MapPicture.in(UnitChoice.SI)
                .draw(
                        "Feasible spans",
                        "Map of spans and pretensions",
                        new ChartAxis("span", QuantityKind.LENGTH),
                        new ChartAxis("pretension", QuantityKind.FORCE),
                        MapGrid.of(x, y, k, List.of("feasible", "clearance", "anchor load")));
    }

    @Test
    void aLongHistoryIsDrawnWithFewPointsAndKeepsItsPeaks() {
        Document d = Xml.parse(chart(200_000).svg());
        int points = 0;
        double top = Double.POSITIVE_INFINITY;
        Matcher m = Pattern.compile("([0-9.-]+),([0-9.-]+)").matcher(PictureChecks.points(d));
        while (m.find()) {
            points++;
            top = Math.min(top, Double.parseDouble(m.group(2)));
        }
        assertThat(points).isLessThan(20_000);
        // The first peak of 6000·e^(−t)·|sin 9t|, at tan 9t = 9, is 5.04 kN; the axis ends at 6 kN.
        double peak = 6000 * Math.exp(-Math.atan(9) / 9) * Math.sin(Math.atan(9));
        assertThat(top).isBetween(44 + 150 * (1 - peak / 6000) - 0.5, 44 + 150 * (1 - peak / 6000) + 0.5);
    }

    @Test
    void elevationIsToScale() {
        ArrestResult r =
                ARRESTS.getOrDefault("bottoms out", ARRESTS.values().iterator().next());
        Document d = PictureChecks.check(ElevationPicture.draw(r, BELOW, UnitChoice.SI));
        assertThat(d.getDocumentElement().getTextContent()).contains("Drawn to true scale, heights and lengths alike");
        Element peak = Xml.all(d, "polyline").stream()
                .filter(e -> e.getAttribute("class").equals("ll-s1"))
                .findFirst()
                .orElseThrow();
        List<double[]> points = new ArrayList<>();
        Matcher m = Pattern.compile("([0-9.-]+),([0-9.-]+)").matcher(peak.getAttribute("points"));
        while (m.find()) {
            points.add(new double[] {Double.parseDouble(m.group(1)), Double.parseDouble(m.group(2))});
        }
        double scale =
                (points.get(points.size() - 1)[0] - points.get(0)[0]) / r.line().run(1);
        double lowest = points.stream().mapToDouble(p -> p[1]).max().orElseThrow();
        double drop = (lowest - points.get(0)[1]) / scale;
        Point first = r.line().supports().get(0).position();
        assertThat(drop)
                .isBetween(
                        first.z() - r.attachmentAtPeak().z() - 0.01,
                        first.z() - r.attachmentAtPeak().z() + 0.01);
    }

    @Test
    void exaggerationIsStatedAndHolds() {
        ArrestResult r =
                ARRESTS.getOrDefault("gallery", ARRESTS.values().iterator().next());
        Document d = PictureChecks.check(ElevationPicture.draw(r, BELOW, UnitChoice.SI));
        assertThat(d.getDocumentElement().getTextContent()).contains("heights drawn 2 times as large");
    }

    @Test
    void onlyALineThatTurnsNeedsAPlan() {
        assertThat(PlanPicture.turns(SampleDesigns.corner())).isTrue();
        assertThat(PlanPicture.turns(SampleDesigns.gallery())).isFalse();
    }

    @Test
    void hostileNamesStayText() {
        for (String text : Hostile.texts()) {
            Picture p = ChartPicture.in(UnitChoice.SI)
                    .draw(
                            text,
                            text,
                            new ChartAxis("time", QuantityKind.TIME),
                            List.of(ChartPanel.of(
                                            new ChartAxis("force", QuantityKind.FORCE),
                                            ChartSeries.of(text, new double[] {0, 1}, new double[] {0, 1}))
                                    .with(ReferenceLine.level(text, 1))
                                    .with(ReferenceLine.at(text, 0.5))));
            Document d = PictureChecks.check(p);
            assertThat(Xml.all(d, "script")).isEmpty();
            assertThat(Xml.all(d, "svg")).hasSize(1);
            assertThat(p.svg().length()).isLessThan(60_000);
        }
    }

    @Test
    void wrongSizesAreRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ChartSeries.of("a", new double[] {1, 2}, new double[] {1}))
                .withMessageContaining("2 abscissas, 1 ordinates");
        ChartSeries s = ChartSeries.of("a", new double[] {1}, new double[] {1});
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ChartPanel.of(new ChartAxis("f", QuantityKind.FORCE), s, s, s, s, s, s, s))
                .withMessageContaining("7 lines");
        assertThatIllegalArgumentException()
                .isThrownBy(() ->
                        MapGrid.of(new double[] {1, 2}, new double[] {1, 2}, new int[][] {{0, 0}}, List.of("a")))
                .withMessageContaining("2 by 2");
    }

    @Test
    void aMapMarksTheDesignAndItsLinesOfDemandOverCapacity() {
        double[] x = {4, 6, 8, 10};
        double[] y = {1000, 2000, 3000};
        double[][] ratio = new double[3][4];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 4; j++) {
                // Linear in x, so that the line of 1 stands upright half way between the second and the third column.
                ratio[i][j] = 0.25 * j + 0.625;
            }
        }
        int[][] k = {{0, 0, 1, 1}, {0, 0, 1, 1}, {0, 0, 1, 2}};
        MapGrid grid = MapGrid.of(x, y, k, List.of("feasible", "clearance", "anchor"))
                .withRatios(ratio)
                .withDesignX(5)
                .withDesignY(1500);
        Picture p = MapPicture.in(UnitChoice.SI)
                .draw(
                        "Map",
                        "Spans and pretensions",
                        new ChartAxis("span", QuantityKind.LENGTH),
                        new ChartAxis("pretension", QuantityKind.FORCE),
                        grid);
        Document d = PictureChecks.check(p);
        List<String> texts =
                Xml.all(d, "text").stream().map(Element::getTextContent).toList();
        // Both large regions by name, the small one by its number in the key; the line of 1; the design.
        assertThat(texts).contains("feasible", "clearance", "3", "1", "design", "1 feasible", "3 anchor");
        List<Element> limit = Xml.all(d, "line").stream()
                .filter(e -> e.getAttribute("class").equals("ll-limit"))
                .filter(e -> Double.parseDouble(e.getAttribute("x1")) < 604)
                .toList();
        assertThat(limit).hasSizeGreaterThanOrEqualTo(4);
        // Cells reach from 3 m to 11 m over 520 units: 7 m lies at 84 + 520 (7 − 3)/8.
        assertThat(limit)
                .allSatisfy(e ->
                        assertThat(Double.parseDouble(e.getAttribute("x1"))).isBetween(343.9, 344.1));
        assertThat(p.data().rows()).hasSize(3);
        assertThat(p.data().rows().get(0).cells()).hasSize(5).contains("anchor 1.375");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> grid.withRatios(new double[][] {{1}}))
                .withMessageContaining("1 rows of ratios");
    }

    @Test
    void anAreaIsHatchedDownToZero() {
        Picture p = ChartPicture.in(UnitChoice.SI)
                .draw(
                        "Work",
                        "Force over descent",
                        new ChartAxis("descent", QuantityKind.LENGTH),
                        List.of(ChartPanel.of(
                                new ChartAxis("force", QuantityKind.FORCE),
                                ChartSeries.of("load", new double[] {0, 1}, new double[] {0, 4000})
                                        .shaded(),
                                ChartSeries.of("in time", new double[] {0.5}, new double[] {3000})
                                        .dots())));
        Document d = PictureChecks.check(p);
        assertThat(Xml.all(d, "pattern")).hasSize(1);
        Element area = Xml.all(d, "polygon").get(0);
        assertThat(area.getAttribute("fill")).startsWith("url(#");
        // Two points of the line and two on the level of zero: the lower edge of the field.
        assertThat(area.getAttribute("points").split(" ", -1)).hasSize(4);
        assertThat(area.getAttribute("points")).endsWith(",194 76,194");
        assertThat(Xml.all(d, "polyline")).hasSize(1);
    }

    @Test
    void axesAreInTheUnitsAskedFor() {
        ArrestResult r = ARRESTS.values().iterator().next();
        assertThat(DescentPicture.draw(r, UnitChoice.US_CUSTOMARY).svg())
                .contains("force [lbf]")
                .contains("[" + QuantityKind.LENGTH.unit(UnitSystem.US_CUSTOMARY) + "]");
    }
}
