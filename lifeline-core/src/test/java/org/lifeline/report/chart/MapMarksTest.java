package org.lifeline.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.svg.TextWidth;
import org.lifeline.report.Xml;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.UnitChoice;
import org.w3c.dom.Element;

/** Marks of a map, read with a ruler: design, borders, lines of equal demand over capacity, names and key. */
class MapMarksTest {
    private static final ChartAxis SPAN = new ChartAxis("span", QuantityKind.LENGTH);
    private static final ChartAxis SAG = new ChartAxis("sag", QuantityKind.RATIO);
    /** Middles of cells: edges at 4, 6, 8, 10 and 0, 1, 2, 3 and 4. */
    private static final double[] X = {5, 7, 9};

    private static final double[] Y = {0.5, 1.5, 2.5, 3.5};
    private static final double LEFT = 84;
    private static final double TOP = 44;
    private static final double WIDE = 520;
    private static final double HIGH = 380;

    private static MapGrid grid(int[]... classes) {
        return MapGrid.of(X, Y, classes, List.of("feasible", "anchor load", "clearance"));
    }

    private static MapGrid halves() {
        return grid(new int[] {0, 0, 1}, new int[] {0, 0, 1}, new int[] {0, 0, 1}, new int[] {0, 0, 1});
    }

    private static Picture draw(MapGrid grid) {
        return MapPicture.in(UnitChoice.SI).draw("Map", "Classes.", SPAN, SAG, grid);
    }

    private static double across(double x) {
        return LEFT + WIDE * (x - 4) / 6;
    }

    private static double up(double y) {
        return TOP + HIGH * (4 - y) / 4;
    }

    /** One ratio for each row of the grid, x + k·row. */
    private static double[][] ratios(double perColumn, double perRow) {
        double[][] v = new double[Y.length][X.length];
        for (int i = 0; i < Y.length; i++) {
            for (int j = 0; j < X.length; j++) {
                v[i][j] = 0.85 + perColumn * j + perRow * i;
            }
        }
        return v;
    }

    @Test
    void theDesignStandsWhereTheScaleSays() {
        Shapes s = Shapes.of(draw(halves().withDesignX(6.5).withDesignY(1.25)));
        double[] at = {across(6.5), up(1.25)};
        List<double[]> rings = s.circles("ll-ink");
        assertThat(rings).as("on the map and in the key").hasSize(2);
        assertThat(rings.get(0)[0]).isCloseTo(at[0], within(0.01));
        assertThat(rings.get(0)[1]).isCloseTo(at[1], within(0.01));
        double[] dot = s.circles("ll-f-ink").get(0);
        assertThat(dot[0]).isCloseTo(at[0], within(0.01));
        assertThat(dot[1]).isCloseTo(at[1], within(0.01));
        assertThat(dot[2]).as("dot within ring").isLessThan(rings.get(0)[2]);
        Element word = s.text("design");
        assertThat(word.getAttribute("text-anchor")).isEqualTo("start");
        assertThat(Shapes.n(word, "x")).isCloseTo(at[0] + 10, within(0.01));
        assertThat(Shapes.n(word, "y")).isCloseTo(at[1] + 4, within(0.01));
        assertThat(s.texts("design as stated")).hasSize(1);
    }

    @Test
    void atTheEdgesTheWordOfTheDesignStaysOnTheMap() {
        Element right = Shapes.of(draw(halves().withDesignX(10).withDesignY(0))).text("design");
        assertThat(right.getAttribute("text-anchor")).isEqualTo("end");
        assertThat(Shapes.n(right, "x")).isCloseTo(LEFT + WIDE - 10, within(0.01));
        assertThat(Shapes.n(right, "y")).isCloseTo(TOP + HIGH - 4, within(0.01));
        Element top = Shapes.of(draw(halves().withDesignX(4).withDesignY(4))).text("design");
        assertThat(top.getAttribute("text-anchor")).isEqualTo("start");
        assertThat(Shapes.n(top, "y")).isCloseTo(TOP + 12, within(0.01));
    }

    @Test
    void aDesignBeyondTheMapIsNotDrawnOnIt() {
        for (double[] xy : new double[][] {{3.9, 1}, {10.1, 1}, {5, -0.1}, {5, 4.1}}) {
            Shapes s = Shapes.of(draw(halves().withDesignX(xy[0]).withDesignY(xy[1])));
            assertThat(s.texts("design")).isEmpty();
            assertThat(s.circles("ll-ink")).as("only that of the key").hasSize(1);
        }
        Shapes none = Shapes.of(draw(halves()));
        assertThat(none.words()).doesNotContain("design", "design as stated");
        assertThat(none.circles("ll-ink")).isEmpty();
    }

    @Test
    void bordersRunBetweenCellsOfDifferentClass() {
        Shapes s = Shapes.of(
                draw(grid(new int[] {0, 0, 1}, new int[] {0, 0, 1}, new int[] {0, 0, 1}, new int[] {2, 2, 1})));
        double level = 0;
        double upright = 0;
        for (double[] l : s.lines("ll-ink")) {
            boolean frame = (l[0] == LEFT && l[2] == LEFT) || (l[1] == TOP + HIGH && l[3] == TOP + HIGH);
            if (frame) {
                continue;
            }
            if (Math.abs(l[0] - l[2]) < 0.01) {
                assertThat(l[0]).isCloseTo(across(8), within(0.01));
                upright += Math.abs(l[3] - l[1]);
            } else {
                assertThat(l[1]).isCloseTo(up(3), within(0.01));
                assertThat(l[3]).isCloseTo(up(3), within(0.01));
                assertThat(Math.max(l[0], l[2])).isLessThan(across(8) + 0.01);
                level += Math.abs(l[2] - l[0]);
            }
        }
        assertThat(upright).isCloseTo(HIGH, within(0.05));
        assertThat(level).isCloseTo(WIDE * 2 / 3, within(0.05));
    }

    @Test
    void cellsAreFilledBetweenTheirEdges() {
        Shapes s = Shapes.of(draw(halves()));
        List<Element> cells = Xml.all(s.document(), "rect").stream()
                .filter(e -> e.getAttribute("fill").startsWith("url(") && !e.hasAttribute("stroke"))
                .toList();
        assertThat(cells).hasSize(8);
        assertThat(cells).allSatisfy(e -> {
            boolean first = e.getAttribute("fill").endsWith("-0)");
            assertThat(Shapes.n(e, "x")).isCloseTo(first ? LEFT : across(8), within(0.01));
            assertThat(Shapes.n(e, "width")).isCloseTo(first ? WIDE * 2 / 3 : WIDE / 3, within(0.02));
            assertThat(Shapes.n(e, "height")).isCloseTo(HIGH / 4, within(0.02));
        });
        assertThat(Shapes.n(cells.get(0), "y")).as("the first row lies lowest").isCloseTo(up(1), within(0.01));
    }

    @Test
    void linesOfEqualRatioStandWhereTheRatioIsReached() {
        // 0.85, 1.05, 1.25 at x = 5, 7, 9: one is reached at 6.5, nine tenths at 5.5, 1.1 at 7.5.
        Shapes s = Shapes.of(draw(halves().withRatios(ratios(0.2, 0))));
        List<double[]> limit = new ArrayList<>(s.lines("ll-limit"));
        limit.removeIf(l -> l[0] > LEFT + WIDE);
        assertThat(limit).isNotEmpty();
        double length = 0;
        for (double[] l : limit) {
            assertThat(l[0]).isCloseTo(across(6.5), within(0.01));
            assertThat(l[2]).isCloseTo(across(6.5), within(0.01));
            length += Math.abs(l[3] - l[1]);
        }
        assertThat(length).as("from the lowest row of middles to the highest").isCloseTo(HIGH * 3 / 4, within(0.1));
        Set<Long> places = new HashSet<>();
        s.lines("ll-ghost").stream().filter(l -> l[0] < LEFT + WIDE).forEach(l -> places.add(Math.round(l[0])));
        // The largest value, 1.25, is reached by the last column alone, where it counts as above.
        assertThat(places)
                .containsExactlyInAnyOrder(Math.round(across(5.5)), Math.round(across(7.5)), Math.round(across(9)));
        for (String number : List.of("0.9", "1.1")) {
            Element e = s.texts(number).stream()
                    .filter(t -> t.getAttribute("text-anchor").equals("middle"))
                    .findFirst()
                    .orElseThrow();
            assertThat(Shapes.n(e, "x")).isCloseTo(across(number.equals("0.9") ? 5.5 : 7.5), within(0.01));
        }
        assertThat(s.words()).contains("demand over capacity", "demand over capacity 1");
        assertThat(Shapes.of(draw(halves())).words()).doesNotContain("demand over capacity", "demand over capacity 1");
    }

    @Test
    void labelsOfTheMapDoNotCoverEachOther() {
        Shapes s = Shapes.of(
                draw(halves().withRatios(ratios(0.3, 0.2)).withDesignX(6.5).withDesignY(1.5)));
        List<double[]> boxes = new ArrayList<>();
        for (Element e : Xml.all(s.document(), "text")) {
            double x = e.hasAttribute("x") ? Shapes.n(e, "x") : 0;
            double y = e.hasAttribute("y") ? Shapes.n(e, "y") : 0;
            if (x <= LEFT || x >= LEFT + WIDE || y <= TOP || y >= TOP + HIGH) {
                continue;
            }
            double w = TextWidth.of(e.getTextContent());
            double left = e.getAttribute("text-anchor").equals("middle") ? x - w / 2 : x;
            for (double[] other : boxes) {
                boolean apart = left >= other[1] || left + w <= other[0] || Math.abs(y - other[2]) >= 11.9;
                assertThat(apart).as("%s at %s %s", e.getTextContent(), x, y).isTrue();
            }
            boxes.add(new double[] {left, left + w, y});
        }
        assertThat(boxes).hasSizeGreaterThan(5);
    }

    @Test
    void aRegionCarriesItsNameAndASmallOneItsNumber() {
        double[] x = new double[24];
        int[][] classes = new int[2][24];
        for (int j = 0; j < 24; j++) {
            x[j] = j + 1;
        }
        classes[0][3] = 1;
        classes[1][3] = 1;
        Shapes s = Shapes.of(MapPicture.in(UnitChoice.SI)
                .draw(
                        "Map",
                        "d",
                        SPAN,
                        SAG,
                        MapGrid.of(x, new double[] {1, 2}, classes, List.of("feasible", "clearance"))));
        // Edges at 0.5 … 24.5: the fourth column is 21.7 wide, too narrow for a word, and its middle is at 4.
        Element number = s.texts("2").stream()
                .filter(e -> e.getAttribute("class").contains("bold"))
                .findFirst()
                .orElseThrow();
        assertThat(Shapes.n(number, "x")).isCloseTo(LEFT + WIDE * 3.5 / 24, within(0.01));
        assertThat(s.texts("clearance")).isEmpty();
        List<Element> named = s.texts("feasible");
        assertThat(named).as("on both sides, the wider first").hasSize(2);
        assertThat(Shapes.n(named.get(0), "x")).isCloseTo(LEFT + WIDE * 14 / 24, within(0.01));
        assertThat(Shapes.n(named.get(1), "x")).isCloseTo(LEFT + WIDE * 1.5 / 24, within(0.01));
        assertThat(s.words()).contains("1 feasible", "2 clearance");
    }

    @Test
    void hatchesOfSevenClassesDifferInSpacingDirectionOrCrossing() {
        int[][] classes = {{0, 1, 2, 3}, {4, 5, 6, -1}};
        List<String> names = List.of("a", "b", "c", "d", "e", "f", "g");
        Shapes s = Shapes.of(MapPicture.in(UnitChoice.SI)
                .draw(
                        "Map",
                        "d",
                        SPAN,
                        SAG,
                        MapGrid.of(new double[] {1, 2, 3, 4}, new double[] {1, 2}, classes, names)));
        List<Element> patterns = Xml.all(s.document(), "pattern");
        assertThat(patterns).hasSize(7);
        Set<String> looks = new HashSet<>();
        Set<String> ids = new HashSet<>();
        for (Element p : patterns) {
            looks.add(p.getAttribute("width")
                    + p.getAttribute("patternTransform")
                    + p.getElementsByTagName("line").getLength());
            ids.add(p.getAttribute("id"));
        }
        assertThat(looks).hasSize(7);
        assertThat(ids).hasSize(7);
        for (Element e : Xml.all(s.document(), "rect")) {
            String fill = e.getAttribute("fill");
            if (fill.startsWith("url(#")) {
                assertThat(ids).as("every fill has its hatch").contains(fill.substring(5, fill.length() - 1));
            }
        }
        List<Element> key = Xml.all(s.document(), "rect").stream()
                .filter(e -> e.hasAttribute("stroke"))
                .toList();
        assertThat(key).as("boxes of the key").hasSize(7);
        for (int k = 0; k < 7; k++) {
            Element label = s.text((k + 1) + " " + names.get(k));
            assertThat(Shapes.n(label, "y") - 11).isCloseTo(Shapes.n(key.get(k), "y"), within(0.01));
            assertThat(Shapes.n(label, "x")).isGreaterThan(Shapes.n(key.get(k), "x") + 22);
            assertThat(key.get(k).getAttribute("fill")).endsWith("-" + k + ")");
        }
    }

    @Test
    void ticksStandAtTheirNumbersInBothSystemsOfUnits() {
        for (UnitChoice choice : List.of(UnitChoice.SI, UnitChoice.US_CUSTOMARY)) {
            double factor = choice == UnitChoice.SI ? 1 : 1 / 0.3048;
            Shapes s = Shapes.of(MapPicture.in(choice).draw("Map", "d", SPAN, SAG, halves()));
            int ticks = 0;
            for (Element e : Xml.all(s.document(), "text")) {
                if (e.getAttribute("text-anchor").equals("middle")
                        && e.getTextContent().matches("[0-9.]+")) {
                    double value = Double.parseDouble(e.getTextContent()) / factor;
                    assertThat(Shapes.n(e, "x")).isCloseTo(across(value), within(0.02));
                    ticks++;
                } else if (e.getAttribute("text-anchor").equals("end")) {
                    assertThat(Shapes.n(e, "y") - 4)
                            .isCloseTo(up(Double.parseDouble(e.getTextContent())), within(0.02));
                    ticks++;
                }
            }
            assertThat(ticks).isGreaterThan(8);
            assertThat(s.lines("ll-thin")).as("a stroke for each number").hasSize(ticks);
            assertThat(s.words()).contains(choice == UnitChoice.SI ? "span [m]" : "span [ft]", "sag");
        }
    }

    @Test
    void theTableCarriesTheRatioWhereItIsKnown() {
        double[][] ratios = ratios(0.2, 0);
        ratios[0][1] = Double.NaN;
        ReportBlock.Table table = draw(halves().withRatios(ratios)).data();
        assertThat(table.columns().get(0).heading()).isEqualTo("sag \\ span [m]");
        assertThat(table.rows()).hasSize(4);
        assertThat(table.rows().get(3).cells())
                .containsExactly("0.5000", "feasible 0.8500", "feasible", "anchor load 1.250");
        assertThat(table.rows().get(0).cells().get(0)).isEqualTo("3.500");
    }

    @Test
    void hostileNamesOfClassesStayText() {
        List<String> names = List.of("<script>x</script>", "\u202Eevil & \"quoted\"", "y".repeat(3000));
        MapGrid grid = MapGrid.of(new double[] {1, 2}, new double[] {1, 2}, new int[][] {{0, 1}, {2, 0}}, names);
        Picture p = MapPicture.in(UnitChoice.SI).draw("</title><b>", "<desc>", SPAN, SAG, grid);
        Shapes s = Shapes.of(p);
        assertThat(Xml.all(s.document(), "script")).isEmpty();
        assertThat(Xml.all(s.document(), "b")).isEmpty();
        assertThat(p.svg()).doesNotContain("\u202E");
        assertThat(s.words()).allSatisfy(w -> assertThat(TextWidth.of(w)).isLessThan(WIDE));
    }
}
