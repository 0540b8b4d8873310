package org.lifeline.report.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.clearance.ClearanceRow;
import org.lifeline.base.Point;
import org.lifeline.model.Obstruction;
import org.lifeline.report.PrintedNumber;
import org.lifeline.report.Xml;
import org.lifeline.report.chart.Shapes;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;
import org.w3c.dom.Element;

/** The elevation read with a ruler: supports, cable, obstructions, worker and clearance account stand to its scales. */
class ElevationMarksTest {
    private static final Map<String, ArrestResult> ARRESTS = SampleDesigns.arrests();
    private static final List<Obstruction> BELOW = List.of(new Obstruction(0, 18, 4.0), new Obstruction(18, 30, 5.5));

    /** The scales of a drawing: heights from its axis, lengths from the two ends of the walking level. */
    private record Scales(Shapes shapes, double left, double perMetre, double zero, double perHeight) {
        static Scales of(ArrestResult r, Picture p) {
            Shapes s = Shapes.of(p);
            List<Element> numbers = Xml.all(s.document(), "text").stream()
                    .filter(e -> e.getAttribute("text-anchor").equals("end"))
                    .filter(e -> e.getTextContent().matches("[0-9.]+") && Shapes.n(e, "x") < 60)
                    .toList();
            Element a = numbers.get(0);
            Element b = numbers.get(numbers.size() - 1);
            double low = Double.parseDouble(a.getTextContent());
            double per = (Shapes.n(b, "y") - Shapes.n(a, "y")) / (Double.parseDouble(b.getTextContent()) - low);
            double[] level = s.lines("ll-s6").get(0);
            double length = 0;
            for (int i = 1; i <= r.line().spans(); i++) {
                length += r.line().run(i);
            }
            return new Scales(s, level[0], (level[2] - level[0]) / length, Shapes.n(a, "y") - 4 - per * low, per);
        }

        double x(double along) {
            return left + perMetre * along;
        }

        double y(double elevation) {
            return zero + perHeight * elevation;
        }
    }

    private static ArrestResult arrest(String name) {
        return Objects.requireNonNull(ARRESTS.get(name));
    }

    private static Scales scales(String name) {
        ArrestResult r = arrest(name);
        return Scales.of(r, ElevationPicture.draw(r, BELOW, UnitChoice.SI));
    }

    @Test
    void supportsStandAtTheirPlacesByTheirSigns() {
        ArrestResult r = arrest("gallery");
        Scales s = scales("gallery");
        double[] along = {0, 12, 22, 30};
        List<double[]> rings =
                s.shapes().circles("ll-ink").stream().filter(c -> c[2] == 5).toList();
        assertThat(rings).as("rings for intermediate anchors").hasSize(2);
        for (int i = 1; i <= 2; i++) {
            assertThat(rings.get(i - 1)[0]).isCloseTo(s.x(along[i]), within(0.05));
            assertThat(rings.get(i - 1)[1])
                    .isCloseTo(s.y(r.line().supports().get(i).position().z()), within(0.05));
        }
        List<double[][]> squares = s.shapes().all("polygon", "ll-f-ink").stream()
                .map(Shapes::points)
                .filter(p -> p.length == 4)
                .toList();
        assertThat(squares).as("squares for end anchors").hasSize(2);
        for (int i = 0; i < 2; i++) {
            double middle = Arrays.stream(squares.get(i))
                    .mapToDouble(p -> p[0])
                    .average()
                    .orElseThrow();
            assertThat(middle).isCloseTo(s.x(i == 0 ? 0 : 30), within(0.05));
        }
    }

    @Test
    void everySupportCarriesItsNameAndForce() {
        ArrestResult r = arrest("gallery");
        Scales s = scales("gallery");
        for (int i = 0; i < 4; i++) {
            String label = r.line().supports().get(i).id() + ": ";
            Element e = Xml.all(s.shapes().document(), "text").stream()
                    .filter(t -> t.getTextContent().startsWith(label))
                    .findFirst()
                    .orElseThrow();
            PrintedNumber.check(
                    e.getTextContent().substring(label.length()),
                    1,
                    r.supports().get(i).force());
        }
    }

    @Test
    void theCableRunsThroughTheAttachmentBeforeAndAtTheLowestPoint() {
        for (String name : List.of("bottoms out", "fibre", "two together")) {
            ArrestResult r = arrest(name);
            Scales s = scales(name);
            double[] dot = s.shapes().circles("ll-f-s1").get(0);
            assertThat(dot[0]).as(name).isCloseTo(s.x(r.attachmentAtPeak().x()), within(0.05));
            assertThat(dot[1]).as(name).isCloseTo(s.y(r.attachmentAtPeak().z()), within(0.05));
            double lowest = Arrays.stream(s.shapes().polylines("ll-s1").get(0))
                    .mapToDouble(p -> p[1])
                    .max()
                    .orElseThrow();
            assertThat(lowest).as("the kink is the lowest point of the cable").isCloseTo(dot[1], within(0.3));
            double[][] before = s.shapes().polylines("ll-ghost").get(0);
            Point a = r.attachmentBefore();
            double nearest = Arrays.stream(before)
                    .filter(p -> Math.abs(p[0] - s.x(a.x())) < 0.05 * s.perMetre() * 10)
                    .mapToDouble(p -> Math.abs(p[1] - s.y(a.z())))
                    .min()
                    .orElseThrow();
            assertThat(nearest).as(name).isLessThan(1.5);
        }
    }

    @Test
    void obstructionsAreHatchedBoxesUpToTheirTops() {
        Scales s = scales("gallery");
        List<Element> boxes = Xml.all(s.shapes().document(), "rect").stream()
                .filter(e -> e.getAttribute("fill").startsWith("url(#"))
                .toList();
        assertThat(boxes).hasSize(2);
        double[] from = {0, 18, 30};
        double[] top = {4.0, 5.5};
        for (int i = 0; i < 2; i++) {
            Element b = boxes.get(i);
            assertThat(Shapes.n(b, "x")).isCloseTo(s.x(from[i]), within(0.05));
            assertThat(Shapes.n(b, "width")).isCloseTo(s.perMetre() * (from[i + 1] - from[i]), within(0.05));
            assertThat(Shapes.n(b, "y")).isCloseTo(s.y(top[i]), within(0.05));
        }
        assertThat(s.shapes().words()).contains("obstruction 4 m", "obstruction 5.5 m");
    }

    @Test
    void anObstructionBesideTheLineIsNotDrawn() {
        ArrestResult r = arrest("fibre");
        Picture p =
                ElevationPicture.draw(r, List.of(new Obstruction(12, 20, 9), new Obstruction(6, 40, 5)), UnitChoice.SI);
        Scales s = Scales.of(r, p);
        List<Element> boxes = Xml.all(s.shapes().document(), "rect").stream()
                .filter(e -> e.getAttribute("fill").startsWith("url(#"))
                .toList();
        assertThat(boxes).hasSize(1);
        assertThat(Shapes.n(boxes.get(0), "x") + Shapes.n(boxes.get(0), "width"))
                .as("cut at the end of the line")
                .isCloseTo(s.x(10), within(0.05));
    }

    @Test
    void theWalkingLevelIsALineThroughTheFeetOfWhoStands() {
        Scales s = scales("gallery");
        double[] level = s.shapes().lines("ll-s6").get(0);
        assertThat(level[1]).isCloseTo(s.y(10.9), within(0.05));
        assertThat(s.shapes().words()).contains("walking level 10.9 m");
        List<double[]> ghosts = s.shapes().lines("ll-ghost");
        assertThat(ghosts.stream().filter(l -> Math.abs(l[3] - level[1]) < 0.05))
                .as("two feet on the level")
                .hasSize(2);
    }

    @Test
    void theAccountBesideTheDrawingIsOnTheSameScaleAndAddsUp() {
        for (String name : List.of("gallery", "bottoms out", "self-retracting")) {
            ArrestResult r = arrest(name);
            Scales s = scales(name);
            double x = 724;
            List<ClearanceRow> rows = r.clearance().rows();
            int steps = 0;
            for (int i = 1; i < rows.size(); i++) {
                if (rows.get(i).value() == 0) {
                    continue;
                }
                steps++;
                double from = s.y(rows.get(i - 1).elevation());
                double to = s.y(rows.get(i).elevation());
                boolean drawn = Xml.all(s.shapes().document(), "line").stream()
                        .filter(e -> Shapes.n(e, "x1") == x && Shapes.n(e, "x2") == x)
                        .anyMatch(e ->
                                Math.abs(Shapes.n(e, "y1") - from) < 0.05 && Math.abs(Shapes.n(e, "y2") - to) < 0.05);
                assertThat(drawn).as("%s: %s", name, rows.get(i).item()).isTrue();
            }
            List<Element> values = Xml.all(s.shapes().document(), "text").stream()
                    .filter(e -> Math.abs((e.hasAttribute("x") ? Shapes.n(e, "x") : 0) - 1052) < 0.01)
                    .toList();
            double sum = 0;
            for (Element e : values.subList(0, steps)) {
                sum += Double.parseDouble(e.getTextContent());
            }
            double down = r.clearance().lineElevation() - r.clearance().requiredElevation();
            assertThat(sum).as(name).isCloseTo(down, within(0.0011));
            if (values.size() > steps) {
                double margin = Double.parseDouble(values.get(steps).getTextContent());
                assertThat(margin).isCloseTo(Math.abs(r.clearance().margin().orElseThrow()), within(0.00051));
            }
            assertThat(s.shapes().words()).contains("clearance account [m]");
        }
    }

    @Test
    void theScaleBarIsAsLongAsItSays() {
        for (String name : ARRESTS.keySet()) {
            Scales s = scales(name);
            Element text = Xml.all(s.shapes().document(), "text").stream()
                    .filter(e -> e.getTextContent().endsWith(" along the line"))
                    .findFirst()
                    .orElseThrow();
            double metres = Double.parseDouble(text.getTextContent().split(" ", 2)[0]);
            assertThat(Shapes.n(text, "x") - 8 - 64).as(name).isCloseTo(metres * s.perMetre(), within(0.05));
        }
    }

    @Test
    void inFeetTheSameDrawingHasOtherNumbers() {
        ArrestResult r = arrest("gallery");
        Shapes s = Shapes.of(ElevationPicture.draw(r, BELOW, UnitChoice.US_CUSTOMARY));
        assertThat(s.words()).contains("elevation [ft]", "clearance account [ft]", "walking level 35.761 ft");
        Element north = Xml.all(s.document(), "text").stream()
                .filter(t -> t.getTextContent().startsWith("north: "))
                .findFirst()
                .orElseThrow();
        PrintedNumber.check(
                north.getTextContent().substring(7), 1, r.supports().get(0).force());
    }

    @Test
    void theWordsGiveTheMarginAndTheScale() {
        ArrestResult r = arrest("gallery");
        String text = ElevationPicture.draw(r, BELOW, UnitChoice.SI).description();
        double margin = r.clearance().margin().orElseThrow();
        assertThat(text)
                .startsWith("Line of 3 spans before the fall")
                .contains(String.format(java.util.Locale.ROOT, "%.3f m", Math.abs(margin)))
                .contains(margin >= 0 ? "The clearance margin above the obstruction is" : "into the obstruction");
        assertThat(ElevationPicture.draw(arrest("fibre"), BELOW, UnitChoice.SI).description())
                .startsWith("Line of 1 span before");
    }
}
