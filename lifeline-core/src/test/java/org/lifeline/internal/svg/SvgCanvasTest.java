package org.lifeline.internal.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.report.Xml;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** What is drawn can be read back from the document, as a browser would. */
class SvgCanvasTest {
    private static Document drawn(java.util.function.Consumer<SvgCanvas> drawing) {
        SvgCanvas canvas = new SvgCanvas(200, 100);
        drawing.accept(canvas);
        return Xml.parse(canvas.finish("a title", "a description"));
    }

    private static double number(Element e, String attribute) {
        return Double.parseDouble(e.getAttribute(attribute));
    }

    private static double[][] points(Element e) {
        return Arrays.stream(e.getAttribute("points").split(" ", -1))
                .map(p -> Arrays.stream(p.split(",", -1))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toArray(double[][]::new);
    }

    /** Area of a polygon by the cross products of its corners. */
    private static double area(double[][] p) {
        double sum = 0;
        for (int i = 0; i < p.length; i++) {
            double[] q = p[(i + 1) % p.length];
            sum += p[i][0] * q[1] - q[0] * p[i][1];
        }
        return Math.abs(0.5 * sum);
    }

    @ParameterizedTest
    @CsvSource({"1, 1", "1.5, 1.5", "1.005, 1.01", "-0.001, 0", "0, 0", "-2.345, -2.35", "1e7, 10000000", "0.1, 0.1"})
    void numbersHaveTwoDecimalsAtMost(double value, String written) {
        assertThat(SvgElement.n(value)).isEqualTo(written);
    }

    @Test
    void aDocumentHasTitleDescriptionAndSize() {
        Document d = drawn(c -> c.line(Pen.INK, 1, 2, 3, 4));
        Element svg = d.getDocumentElement();
        assertThat(svg.getAttribute("viewBox")).isEqualTo("0 0 200 100");
        assertThat(svg.getAttribute("role")).isEqualTo("img");
        assertThat(Xml.all(d, "title").get(0).getTextContent()).isEqualTo("a title");
        assertThat(Xml.all(d, "desc").get(0).getTextContent()).isEqualTo("a description");
        Element ground = Xml.all(d, "rect").get(0);
        assertThat(number(ground, "width")).isEqualTo(200);
        assertThat(number(ground, "height")).isEqualTo(100);
        assertThat(new SvgCanvas(200, 100).height()).isEqualTo(100);
    }

    @Test
    void aLineGoesFromOnePointToTheOther() {
        Element line =
                Xml.all(drawn(c -> c.line(Pen.SECOND, 1, 2, 3, 4)), "line").get(0);
        assertThat(number(line, "x1")).isEqualTo(1);
        assertThat(number(line, "y1")).isEqualTo(2);
        assertThat(number(line, "x2")).isEqualTo(3);
        assertThat(number(line, "y2")).isEqualTo(4);
        assertThat(line.getAttribute("stroke")).isEqualTo(Pen.SECOND.light);
        assertThat(line.getAttribute("stroke-dasharray")).isEqualTo(Pen.SECOND.dash);
        Element plain = Xml.all(drawn(c -> c.line(Pen.INK, 1, 2, 3, 4)), "line").get(0);
        assertThat(plain.hasAttribute("stroke-dasharray"))
                .as("a solid line has none")
                .isFalse();
    }

    @Test
    void shapesHaveTheirSize() {
        Document d = drawn(c -> c.square(Pen.INK, new Spot(50, 50), 4)
                .dot(Pen.FIRST, new Spot(10, 20), 3)
                .ring(Pen.FIRST, new Spot(30, 40), 5)
                .polyline(Pen.FIRST, List.of(new Spot(1, 1), new Spot(2, 3))));
        assertThat(area(points(Xml.all(d, "polygon").get(0)))).isCloseTo(64, within(1e-9));
        Element dot = Xml.all(d, "circle").get(0);
        assertThat(number(dot, "cx")).isEqualTo(10);
        assertThat(number(dot, "cy")).isEqualTo(20);
        assertThat(number(dot, "r")).isEqualTo(3);
        assertThat(dot.getAttribute("fill")).isEqualTo(Pen.FIRST.light);
        Element ring = Xml.all(d, "circle").get(1);
        assertThat(number(ring, "r")).isEqualTo(5);
        assertThat(ring.getAttribute("stroke")).isEqualTo(Pen.FIRST.light);
        assertThat(ring.getAttribute("fill")).isEqualTo("#ffffff");
        assertThat(Xml.all(d, "polyline").get(0).getAttribute("points")).isEqualTo("1,1 2,3");
    }

    /** The head is a triangle at the tip, as wide on both sides, and the shaft ends within it. */
    @Test
    void anArrowPointsAtItsEnd() {
        for (long seed = 1; seed <= 200; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double x1 = r.nextDouble(0, 200);
            double y1 = r.nextDouble(0, 100);
            double x2 = r.nextDouble(0, 200);
            double y2 = r.nextDouble(0, 100);
            double length = Math.hypot(x2 - x1, y2 - y1);
            if (length < 1) {
                continue;
            }
            Document d = drawn(c -> c.arrow(Pen.FORCE, x1, y1, x2, y2));
            double[][] head = points(Xml.all(d, "polygon").get(0));
            assertThat(head[0][0]).as("seed %d", seed).isCloseTo(x2, within(0.006));
            assertThat(head[0][1]).as("seed %d", seed).isCloseTo(y2, within(0.006));
            double left = Math.hypot(head[1][0] - x2, head[1][1] - y2);
            double right = Math.hypot(head[2][0] - x2, head[2][1] - y2);
            assertThat(left).as("seed %d", seed).isCloseTo(right, within(0.03));
            // The middle of the foot lies on the shaft.
            double mx = 0.5 * (head[1][0] + head[2][0]) - x1;
            double my = 0.5 * (head[1][1] + head[2][1]) - y1;
            double off = (mx * (y2 - y1) - my * (x2 - x1)) / length;
            assertThat(off).as("seed %d", seed).isCloseTo(0, within(0.02));
            Element shaft = Xml.all(d, "line").get(0);
            assertThat(Math.hypot(number(shaft, "x2") - x2, number(shaft, "y2") - y2))
                    .as("seed %d", seed)
                    .isBetween(0.1, 8.0);
        }
        assertThat(Xml.all(drawn(c -> c.arrow(Pen.FORCE, 5, 5, 5, 5)), "polygon"))
                .as("an arrow of no length is nothing")
                .isEmpty();
    }

    @Test
    void textIsInert() {
        Document d = drawn(c -> c.text(5, 20, "start", "<script>&\"\u202e")
                .bold(5, 40, "end", "bold")
                .upward(9, 50, "up"));
        List<Element> texts = Xml.all(d, "text");
        assertThat(texts.get(0).getTextContent()).isEqualTo("<script>&\"⟨U+202E⟩");
        assertThat(texts.get(0).hasAttribute("font-weight")).isFalse();
        assertThat(texts.get(1).getAttribute("font-weight")).isEqualTo("bold");
        assertThat(texts.get(1).getAttribute("text-anchor")).isEqualTo("end");
        assertThat(texts.get(2).getAttribute("transform")).isEqualTo("translate(9 50) rotate(-90)");
        assertThat(Xml.all(d, "script")).isEmpty();
    }

    @Test
    void hatchesCanBeToldApart() {
        Document d = drawn(c -> {
            for (int i = 0; i < 7; i++) {
                c.hatch(new Hatch("h", i), Pen.FIRST);
            }
            c.fill(new SvgCanvas.Box(1, 2, 3, 4), new Hatch("h", 2));
        });
        List<Element> patterns = Xml.all(d, "pattern");
        assertThat(patterns).hasSize(7);
        assertThat(patterns).extracting(p -> p.getAttribute("id")).doesNotHaveDuplicates();
        assertThat(patterns)
                .extracting(p -> p.getAttribute("patternTransform")
                        + p.getAttribute("width")
                        + p.getElementsByTagName("line").getLength())
                .doesNotHaveDuplicates();
        Element filled = Xml.all(d, "rect").get(1);
        assertThat(filled.getAttribute("fill")).isEqualTo("url(#h2)");
        assertThat(number(filled, "height")).isEqualTo(4);
    }

    @Test
    void longTextIsCutToItsRoom() {
        for (String text :
                List.of("short", "a much longer text that does not fit", "WWWWWWWWWWWWWWWWWWWWWWWWW", "iiii")) {
            for (double room = 20; room < 300; room += 7) {
                String cut = TextWidth.cut(text, room);
                if (TextWidth.of(text) <= room) {
                    assertThat(cut).isEqualTo(text);
                } else {
                    assertThat(cut).endsWith("…").hasSizeLessThanOrEqualTo(text.length() + 1);
                    assertThat(text).startsWith(cut.substring(0, cut.length() - 1));
                    assertThat(TextWidth.of(cut)).isLessThan(Math.max(room, 25));
                }
            }
        }
        assertThat(TextWidth.of("M")).isGreaterThan(TextWidth.of("a"));
        assertThat(TextWidth.of("a")).isGreaterThan(TextWidth.of("i"));
        assertThat(TextWidth.of("")).isZero();
    }

    /** Half of a character outside the basic plane would be no character at all. */
    @Test
    void aCutDoesNotGoThroughACharacter() {
        String text = "\uD83D\uDC77".repeat(30);
        for (double room = 20; room < 200; room += 3) {
            String cut = TextWidth.cut(text, room);
            assertThat(Character.isHighSurrogate(cut.charAt(Math.max(0, cut.length() - 2))))
                    .as("room %s", room)
                    .isFalse();
        }
    }
}
