package org.lifeline.report.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.lifeline.internal.svg.TextWidth;
import org.lifeline.report.Xml;
import org.lifeline.report.document.Picture;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** What every picture must be: well-formed, described, and within its frame. */
public final class PictureChecks {
    private PictureChecks() {}

    /** Checks a picture and parses it. */
    public static Document check(Picture p) {
        assertThat(p.svg()).doesNotContain("NaN", "Infinity", "null");
        assertThat(p.description()).isNotBlank();
        Document d = Xml.parse(p.svg());
        String[] box = d.getDocumentElement().getAttribute("viewBox").split(" ", -1);
        double width = Double.parseDouble(box[2]);
        double height = Double.parseDouble(box[3]);
        for (Element e : Xml.all(d, "text")) {
            // The rim in the colour of the paper lies behind the letters, or it would hide them on a dark screen.
            assertThat(e.getAttribute("paint-order")).isEqualTo("stroke");
            if (!e.hasAttribute("transform")) {
                double x = Double.parseDouble(e.getAttribute("x"));
                double size = TextWidth.of(e.getTextContent());
                double left =
                        switch (e.getAttribute("text-anchor")) {
                            case "end" -> x - size;
                            case "middle" -> x - size / 2;
                            default -> x;
                        };
                assertThat(left).as("left end of %s", e.getTextContent()).isGreaterThan(-14);
                assertThat(left + size)
                        .as("right end of %s", e.getTextContent())
                        .isLessThan(width + 14);
                assertThat(Double.parseDouble(e.getAttribute("y"))).isBetween(8.0, height);
            }
        }
        Matcher m = Pattern.compile("([0-9.-]+),([0-9.-]+)").matcher(points(d));
        while (m.find()) {
            assertThat(Double.parseDouble(m.group(1))).isBetween(0.0, width);
            assertThat(Double.parseDouble(m.group(2))).isBetween(0.0, height);
        }
        return d;
    }

    static String points(Document d) {
        StringBuilder b = new StringBuilder();
        Xml.all(d, "polyline").forEach(e -> b.append(e.getAttribute("points")).append(' '));
        return b.toString();
    }
}
