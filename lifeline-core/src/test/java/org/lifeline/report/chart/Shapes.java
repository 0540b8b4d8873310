package org.lifeline.report.chart;

import java.util.Arrays;
import java.util.List;
import org.lifeline.report.Xml;
import org.lifeline.report.document.Picture;
import org.lifeline.report.picture.PictureChecks;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The shapes of a picture by the pen that drew them, after the checks that every picture must pass. */
public final class Shapes {
    private final Document document;

    private Shapes(Document document) {
        this.document = document;
    }

    public static Shapes of(Picture p) {
        return new Shapes(PictureChecks.check(p));
    }

    public Document document() {
        return document;
    }

    public static double n(Element e, String attribute) {
        return Double.parseDouble(e.getAttribute(attribute));
    }

    /** Elements with one of whose classes is this. */
    public List<Element> all(String tag, String css) {
        return Xml.all(document, tag).stream()
                .filter(e -> !((Element) e.getParentNode()).getTagName().equals("pattern"))
                .filter(e -> List.of(e.getAttribute("class").split(" ", -1)).contains(css))
                .toList();
    }

    /** Ends of straight lines of a pen: x1, y1, x2, y2. */
    public List<double[]> lines(String css) {
        return all("line", css).stream()
                .map(e -> new double[] {n(e, "x1"), n(e, "y1"), n(e, "x2"), n(e, "y2")})
                .toList();
    }

    /** Points of the lines of a pen. */
    public List<double[][]> polylines(String css) {
        return all("polyline", css).stream().map(Shapes::points).toList();
    }

    public static double[][] points(Element e) {
        return Arrays.stream(e.getAttribute("points").split(" ", -1))
                .map(p -> Arrays.stream(p.split(",", -1))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toArray(double[][]::new);
    }

    /** Middle and radius of circles: x, y, r. */
    public List<double[]> circles(String css) {
        return all("circle", css).stream()
                .map(e -> new double[] {n(e, "cx"), n(e, "cy"), n(e, "r")})
                .toList();
    }

    public List<Element> texts(String text) {
        return Xml.all(document, "text").stream()
                .filter(e -> e.getTextContent().equals(text))
                .toList();
    }

    public Element text(String text) {
        List<Element> found = texts(text);
        if (found.size() != 1) {
            throw new AssertionError(found.size() + " texts \"" + text + "\" in " + words());
        }
        return found.get(0);
    }

    public List<String> words() {
        return Xml.all(document, "text").stream().map(Element::getTextContent).toList();
    }
}
