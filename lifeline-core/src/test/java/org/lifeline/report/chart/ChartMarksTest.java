package org.lifeline.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.svg.TextWidth;
import org.lifeline.report.Xml;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.UnitChoice;
import org.w3c.dom.Element;

/** Marks, names and axes of a chart stand where they belong, and nothing covers anything else. */
class ChartMarksTest {
    private static final ChartAxis TIME = new ChartAxis("time", QuantityKind.TIME);
    private static final ChartAxis FORCE = new ChartAxis("force", QuantityKind.FORCE);
    private static final double LEFT = 76;
    private static final double RIGHT = 660;
    private static final double TOP = 44;
    private static final double FOOT = 194;

    private static ChartSeries ramp(String name, double from, double to) {
        return ChartSeries.of(name, new double[] {0, 1, 2}, new double[] {from, 0.5 * (from + to), to});
    }

    private static Shapes draw(ChartPanel... panels) {
        return Shapes.of(picture(panels));
    }

    private static Picture picture(ChartPanel... panels) {
        return ChartPicture.in(UnitChoice.SI).draw("Chart", "Lines.", TIME, List.of(panels));
    }

    @Test
    void aLevelRunsAcrossTheFieldAtItsHeightAndCarriesItsName() {
        Shapes s = draw(ChartPanel.of(FORCE, ramp("load", 0, 10_000)).with(ReferenceLine.level("limit", 4000)));
        List<double[]> limit = s.lines("ll-limit");
        double height = FOOT - 150 * 0.4;
        assertThat(limit.get(0)).containsExactly(new double[] {LEFT, height, RIGHT, height}, within(0.01));
        Element label = s.text("limit");
        assertThat(Shapes.n(label, "x")).isGreaterThan(RIGHT);
        assertThat(Shapes.n(label, "y") - 4).as("beside its height").isCloseTo(height, within(0.01));
        assertThat(limit.get(1)[1]).as("a sample of its dashes beside the name").isCloseTo(height, within(0.01));
    }

    @Test
    void aLevelAboveTheLinesWidensTheAxis() {
        Shapes s = draw(ChartPanel.of(FORCE, ramp("load", 0, 3000)).with(ReferenceLine.level("limit", 9000)));
        double level = s.lines("ll-limit").get(0)[1];
        assertThat(level).isBetween(TOP, FOOT);
        assertThat(s.polylines("ll-s1").get(0)[2][1])
                .as("the line ends at a third of the level")
                .isCloseTo(FOOT - (FOOT - level) / 3, within(0.03));
        Shapes below = draw(ChartPanel.of(FORCE, ramp("load", 1000, 3000)).with(ReferenceLine.level("least", -2000)));
        assertThat(below.lines("ll-limit").get(0)[1]).isBetween(TOP, FOOT);
    }

    @Test
    void aPlaceIsMarkedUprightWhereItLiesAndNotBeyondTheAxis() {
        Shapes s = draw(ChartPanel.of(FORCE, ramp("load", 0, 3000))
                .with(ReferenceLine.at("post", 0.5))
                .with(ReferenceLine.at("before", -0.1))
                .with(ReferenceLine.at("after", 2.1))
                .with(ReferenceLine.at("end", 2)));
        double at = LEFT + (RIGHT - LEFT) * 0.25;
        List<double[]> ghosts = s.lines("ll-ghost");
        assertThat(ghosts).hasSize(2);
        assertThat(ghosts.get(0)).containsExactly(new double[] {at, TOP, at, FOOT}, within(0.01));
        assertThat(ghosts.get(1)[0]).isCloseTo(RIGHT, within(0.01));
        Element label = s.text("post");
        assertThat(Shapes.n(label, "x") + TextWidth.of("post") / 2)
                .as("centred above its line")
                .isCloseTo(at, within(0.01));
        assertThat(Shapes.n(label, "y")).isCloseTo(TOP - 6, within(0.01));
        assertThat(Shapes.n(s.text("end"), "x") + TextWidth.of("end"))
                .as("not beyond the field")
                .isCloseTo(RIGHT, within(0.01));
        assertThat(s.words()).doesNotContain("before", "after");
    }

    @Test
    void placesThatCrowdAreNamedWithinTheField() {
        ChartPanel panel = ChartPanel.of(FORCE, ramp("load", 0, 3000));
        for (int i = 0; i < 7; i++) {
            panel = panel.with(ReferenceLine.at("long name of a post " + i, 1 + 0.02 * i));
        }
        panel = panel.with(ReferenceLine.at("far to the right", 1.95));
        Shapes s = draw(panel);
        List<double[]> boxes = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            Element e = s.text("long name of a post " + i);
            double x = Shapes.n(e, "x");
            double width = TextWidth.of(e.getTextContent());
            double left = e.getAttribute("text-anchor").equals("end") ? x - width : x;
            assertThat(left).isGreaterThanOrEqualTo(LEFT);
            assertThat(left + width).isLessThanOrEqualTo(RIGHT + 4);
            boxes.add(new double[] {left, left + width, Shapes.n(e, "y")});
            if (i > 0) {
                double line = LEFT + (RIGHT - LEFT) * (1 + 0.02 * i) / 2;
                assertThat(Math.abs(x - line)).as("beside its line").isCloseTo(4, within(0.01));
                assertThat(Shapes.n(e, "y")).isBetween(TOP + 10, FOOT);
            }
        }
        for (int i = 0; i < 5; i++) {
            double[] a = boxes.get(i);
            double[] b = boxes.get(i + 1);
            assertThat(a[1] <= b[0] || b[1] <= a[0] || Math.abs(a[2] - b[2]) >= 14)
                    .as("names %d and %d", i, i + 1)
                    .isTrue();
        }
    }

    @Test
    void namesOfLinesThatEndTogetherAreMovedApart() {
        Shapes s = draw(ChartPanel.of(
                FORCE, ramp("one", 0, 3000), ramp("two", 100, 3000), ramp("three", 200, 3000), ramp("four", 0, 2990)));
        List<Double> heights = new ArrayList<>();
        for (String name : List.of("one", "two", "three", "four")) {
            heights.add(Shapes.n(s.text(name), "y"));
        }
        List<Double> sorted = heights.stream().sorted().toList();
        for (int i = 1; i < sorted.size(); i++) {
            assertThat(sorted.get(i) - sorted.get(i - 1)).isGreaterThanOrEqualTo(15.99);
        }
        for (int i = 0; i < 4; i++) {
            List<double[]> sample = s.lines("ll-s" + (i + 1));
            assertThat(sample).as("the dashes of line %d beside its name", i).hasSize(1);
            assertThat(sample.get(0)[1]).isCloseTo(heights.get(i) - 4, within(0.01));
            double[] dot = s.circles("ll-f-s" + (i + 1)).get(0);
            assertThat(dot[0]).as("a dot at the end of the line").isCloseTo(RIGHT, within(0.01));
        }
    }

    @Test
    void sixLinesDifferInColourOrDashes() {
        ChartSeries[] six = new ChartSeries[6];
        Arrays.setAll(six, i -> ramp("s" + i, i, 1000 + i));
        Shapes s = draw(ChartPanel.of(FORCE, six));
        Set<String> dashes = new HashSet<>();
        Set<String> looks = new HashSet<>();
        for (Element e : Xml.all(s.document(), "polyline")) {
            dashes.add(e.getAttribute("stroke-dasharray"));
            looks.add(e.getAttribute("stroke") + e.getAttribute("stroke-dasharray"));
        }
        assertThat(looks).hasSize(6);
        assertThat(dashes).as("told apart without colour").hasSize(6);
    }

    @Test
    void anAxisOfAmountsStartsAtNothingUnlessThatSqueezesTheLine() {
        // 40 % of the largest: from zero. 70 %: from below the least.
        double[][] far = draw(ChartPanel.of(FORCE, ramp("load", 4000, 10_000)))
                .polylines("ll-s1")
                .get(0);
        assertThat(far[0][1]).isCloseTo(FOOT - 150 * 0.4, within(0.01));
        double[][] near = draw(ChartPanel.of(FORCE, ramp("load", 7000, 10_000)))
                .polylines("ll-s1")
                .get(0);
        assertThat(near[0][1]).isCloseTo(FOOT, within(0.01));
        ChartAxis warm = new ChartAxis("temperature", QuantityKind.TEMPERATURE);
        double[][] degrees =
                draw(ChartPanel.of(warm, ramp("t", 10, 40))).polylines("ll-s1").get(0);
        assertThat(degrees[0][1]).as("a temperature has no nothing").isCloseTo(FOOT, within(0.01));
    }

    @Test
    void temperaturesAreConvertedWithTheirOrigin() {
        ChartAxis warm = new ChartAxis("temperature", QuantityKind.TEMPERATURE);
        Shapes s = Shapes.of(ChartPicture.in(UnitChoice.US_CUSTOMARY)
                .draw(
                        "Chart",
                        "d",
                        warm,
                        List.of(ChartPanel.of(
                                warm, ChartSeries.of("t", new double[] {0, 100}, new double[] {0, 100})))));
        // 32 °F to 212 °F: 0 °C does not stand at the tick 0.
        double[][] p = s.polylines("ll-s1").get(0);
        for (Element e : Xml.all(s.document(), "text")) {
            if (e.getTextContent().equals("100")
                    && e.getAttribute("text-anchor").equals("middle")) {
                double x = p[0][0] + (p[1][0] - p[0][0]) * (100 - 32) / 180.0;
                assertThat(Shapes.n(e, "x")).isCloseTo(x, within(0.02));
            }
        }
        assertThat(s.words()).contains("100", "temperature [°F]");
    }

    @Test
    void dotsAreRingsAtTheirPointsWithoutALine() {
        Shapes s = draw(ChartPanel.of(
                FORCE, ramp("line", 0, 10_000), ramp("points", 0, 5000).dots()));
        List<double[]> rings = s.circles("ll-s2");
        assertThat(rings).hasSize(3);
        for (int i = 0; i < 3; i++) {
            assertThat(rings.get(i)[0]).isCloseTo(LEFT + (RIGHT - LEFT) * i / 2.0, within(0.01));
            assertThat(rings.get(i)[1]).isCloseTo(FOOT - 150 * 0.25 * i, within(0.01));
        }
        assertThat(s.polylines("ll-s2")).isEmpty();
        assertThat(s.polylines("ll-s1")).hasSize(1);
        assertThat(ramp("p", 0, 1).dots().isShaded()).isFalse();
        assertThat(ramp("p", 0, 1).shaded().isDots()).isFalse();
    }

    @Test
    void theShadedAreaReachesFromTheLineToNothing() {
        Shapes s = draw(ChartPanel.of(FORCE, ramp("work", -5000, 5000).shaded()));
        List<Element> areas = Xml.all(s.document(), "polygon").stream()
                .filter(e -> e.getAttribute("fill").startsWith("url(#"))
                .toList();
        assertThat(areas).hasSize(1);
        double[][] p = Shapes.points(areas.get(0));
        double zero = 0.5 * (TOP + FOOT);
        assertThat(p).hasDimensions(5, 2);
        assertThat(p[3]).containsExactly(new double[] {RIGHT, zero}, within(0.01));
        assertThat(p[4]).containsExactly(new double[] {LEFT, zero}, within(0.01));
        String id = areas.get(0).getAttribute("fill").replaceAll("url\\(#|\\)", "");
        assertThat(Xml.all(s.document(), "pattern"))
                .extracting(e -> e.getAttribute("id"))
                .containsExactly(id);
        Shapes high = draw(ChartPanel.of(FORCE, ramp("work", 9000, 10_000).shaded()));
        double[][] q = Shapes.points(Xml.all(high.document(), "polygon").get(0));
        assertThat(q[3][1])
                .as("the foot of the field where nothing lies below it")
                .isCloseTo(FOOT, within(0.01));
    }

    @Test
    void ticksHaveStrokesAndOnlyTheLowestFieldHasNumbers() {
        ChartPanel panel = ChartPanel.of(FORCE, ramp("load", 0, 10_000));
        Shapes one = draw(panel);
        Shapes two = draw(panel, panel);
        List<double[]> below = one.lines("ll-thin").stream()
                .filter(l -> Math.abs(l[1] - FOOT) < 0.01 && Math.abs(l[3] - FOOT - 4) < 0.01)
                .toList();
        long numbers = across(one);
        assertThat(below).hasSize((int) numbers);
        assertThat(across(two)).isEqualTo(numbers);
        long strokes = two.lines("ll-thin").stream()
                .filter(l -> l[0] == l[2] && Math.abs(l[3] - l[1] - 4) < 0.01)
                .count();
        assertThat(strokes).isEqualTo(2 * numbers);
        List<double[]> grid = one.lines("ll-grid");
        assertThat(grid).allSatisfy(l -> assertThat(new double[] {l[0], l[2]}).containsExactly(LEFT, RIGHT));
        assertThat(one.words()).contains("0", "2", "10", "time [s]", "force [kN]");
        assertThat(two.texts("time [s]")).hasSize(1);
        assertThat(two.texts("force [kN]")).hasSize(2);
        assertThat(one.text("force [kN]").getAttribute("transform")).isEqualTo("translate(18 119) rotate(-90)");
        assertThat(Shapes.n(two.document().getDocumentElement(), "height")
                        - Shapes.n(one.document().getDocumentElement(), "height"))
                .isEqualTo(184);
        List<double[]> frame = one.lines("ll-ink");
        assertThat(frame.get(0)).containsExactly(LEFT, TOP, LEFT, FOOT);
        assertThat(frame.get(1)).containsExactly(LEFT, FOOT, RIGHT, FOOT);
    }

    private static long across(Shapes s) {
        return Xml.all(s.document(), "text").stream()
                .filter(e -> e.getAttribute("text-anchor").equals("middle")
                        && e.getTextContent().matches("[0-9.]+"))
                .count();
    }

    @Test
    void manyPointsInOneColumnKeepTheirExtremesInTheirOrder() {
        int n = 20_000;
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = 2.0 * i / (n - 1);
            y[i] = 5000 + 3000 * Math.sin(40 * x[i]);
        }
        y[7001] = 9999;
        y[12_503] = 1;
        Shapes s = draw(ChartPanel.of(FORCE, ChartSeries.of("dense", x, y)));
        double[][] p = s.polylines("ll-s1").get(0);
        assertThat(p.length).as("thinned, at most four for half a unit").isBetween(1000, 4 * 1170);
        double highest = Arrays.stream(p).mapToDouble(q -> q[1]).min().orElseThrow();
        double lowest = Arrays.stream(p).mapToDouble(q -> q[1]).max().orElseThrow();
        assertThat(highest).isCloseTo(TOP + 150 * 1e-4, within(0.02));
        assertThat(lowest).isCloseTo(FOOT - 150 * 1e-4, within(0.02));
        for (int i = 1; i < p.length; i++) {
            assertThat(p[i][0]).isGreaterThanOrEqualTo(p[i - 1][0]);
        }
        assertThat(p[p.length - 1][0]).isCloseTo(RIGHT, within(0.01));
        assertThat(p[0][0]).isCloseTo(LEFT, within(0.01));
    }

    @Test
    void aLineThatEndsInAGapIsNamedAtItsLastPoint() {
        ChartSeries s = ChartSeries.of("cut", new double[] {0, 1, 2}, new double[] {0, 10_000, Double.NaN});
        ChartSeries none = ChartSeries.of("nothing", new double[] {0, 2}, new double[] {Double.NaN, Double.NaN});
        Shapes d = draw(ChartPanel.of(FORCE, s, none));
        double[] dot = d.circles("ll-f-s1").get(0);
        assertThat(dot[0]).isCloseTo(0.5 * (LEFT + RIGHT), within(0.01));
        assertThat(dot[1]).isCloseTo(TOP, within(0.01));
        assertThat(d.words()).contains("cut").doesNotContain("nothing");
    }

    @Test
    void aFieldWithoutAPointHasAnAxisFromNothingToOne() {
        Picture p = picture(ChartPanel.of(FORCE, ChartSeries.of("empty", new double[0], new double[0])));
        Shapes s = Shapes.of(p);
        assertThat(s.words()).contains("0.0", "1.0").doesNotContain("empty");
        assertThat(p.data().rows()).isEmpty();
        Shapes flat = draw(ChartPanel.of(FORCE, ChartSeries.of("one", new double[] {1}, new double[] {2000})));
        assertThat(flat.polylines("ll-s1").get(0)).hasDimensions(1, 2);
    }

    @Test
    void hostileNamesStayTextWithinTheFrame() {
        String bad = "</text><script>alert(1)</script>\u202E" + "w".repeat(5000);
        Picture p = ChartPicture.in(UnitChoice.SI)
                .draw(
                        bad,
                        bad,
                        TIME,
                        List.of(ChartPanel.of(new ChartAxis("f".repeat(400), QuantityKind.RATIO), ramp(bad, 1, 2))
                                .with(ReferenceLine.level(bad, 1))
                                .with(ReferenceLine.at(bad, 1))));
        Shapes s = Shapes.of(p);
        assertThat(Xml.all(s.document(), "script")).isEmpty();
        assertThat(p.svg()).doesNotContain("\u202E");
        for (Element e : Xml.all(s.document(), "text")) {
            double width = TextWidth.of(e.getTextContent());
            assertThat(width).isLessThan(e.hasAttribute("transform") ? 180 : 700);
        }
    }
}
