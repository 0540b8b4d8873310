package org.lifeline.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;

/** Collects the shapes of a picture. Coordinates in user units, x to the right, y down. Not thread-safe. */
final class SvgCanvas {
    /** A way of drawing: each has its own colour, its own dashes and its own name, so that one of them always survives. */
    enum Pen {
        INK("ink", "#14181c", "#eef1f4", 1.2, ""),
        THIN("thin", "#5c666f", "#a5afb8", 0.8, ""),
        GRID("grid", "#cfd5da", "#3a4249", 0.6, ""),
        FIRST("s1", "#0a4f8f", "#7db8f0", 2.2, ""),
        SECOND("s2", "#b2400a", "#ff9d66", 2.2, "9 4"),
        THIRD("s3", "#0f6b4f", "#63d3ac", 2.2, "2.5 3"),
        FOURTH("s4", "#77377f", "#dba0e4", 2.2, "11 3 2.5 3"),
        FIFTH("s5", "#5c5300", "#d9cc55", 2.2, "5 2 5 6"),
        SIXTH("s6", "#14181c", "#eef1f4", 1.4, "14 3"),
        GHOST("ghost", "#5c666f", "#a5afb8", 1.3, "6 4"),
        FORCE("force", "#b2400a", "#ff9d66", 1.8, ""),
        LIMIT("limit", "#9a1028", "#ff8a9a", 1.4, "3 2");

        final String css;
        final String light;
        final String dark;
        final double width;
        final String dash;

        Pen(String css, String light, String dark, double width, String dash) {
            this.css = css;
            this.light = light;
            this.dark = dark;
            this.width = width;
            this.dash = dash;
        }
    }

    /** Letters with a rim in the colour of the paper, so that lines behind them do not disturb. */
    private static final String HALO =
            " fill=\"#14181c\" stroke=\"#ffffff\" stroke-width=\"3\" stroke-linejoin=\"round\""
                    + " paint-order=\"stroke\"";

    private static final String FONT = "font-family=\"Helvetica, Arial, 'DejaVu Sans', sans-serif\"";
    private final StringBuilder body = new StringBuilder();
    private final double width;
    private final double height;
    private final StringBuilder definitions = new StringBuilder();

    SvgCanvas(double width, double height) {
        this.width = width;
        this.height = height;
    }

    double height() {
        return height;
    }

    /** A number with two decimals at most. */
    static String n(double value) {
        BigDecimal b =
                BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP).stripTrailingZeros();
        return b.signum() == 0 ? "0" : b.toPlainString();
    }

    SvgCanvas line(Pen pen, double x1, double y1, double x2, double y2) {
        body.append("<line class=\"ll-")
                .append(pen.css)
                .append("\" x1=\"")
                .append(n(x1))
                .append("\" y1=\"")
                .append(n(y1))
                .append("\" x2=\"")
                .append(n(x2))
                .append("\" y2=\"")
                .append(n(y2))
                .append("\"")
                .append(stroke(pen))
                .append("/>\n");
        return this;
    }

    private static String stroke(Pen pen) {
        return " stroke=\"" + pen.light + "\" stroke-width=\"" + n(pen.width) + "\""
                + (pen.dash.isEmpty() ? "" : " stroke-dasharray=\"" + pen.dash + "\"");
    }

    /** A line through points given as x, y, x, y, … */
    SvgCanvas polyline(Pen pen, List<double[]> points) {
        body.append("<polyline class=\"ll-")
                .append(pen.css)
                .append("\" fill=\"none\" stroke-linejoin=\"round\"")
                .append(stroke(pen))
                .append(" points=\"");
        String gap = "";
        for (double[] p : points) {
            body.append(gap).append(n(p[0])).append(',').append(n(p[1]));
            gap = " ";
        }
        body.append("\"/>\n");
        return this;
    }

    /** A filled shape in the colour of a pen. */
    SvgCanvas shape(Pen pen, double... xy) {
        body.append("<polygon class=\"ll-f-")
                .append(pen.css)
                .append("\" fill=\"")
                .append(pen.light)
                .append("\" points=\"");
        for (int i = 0; i < xy.length; i += 2) {
            body.append(i == 0 ? "" : " ").append(n(xy[i])).append(',').append(n(xy[i + 1]));
        }
        body.append("\"/>\n");
        return this;
    }

    SvgCanvas dot(Pen pen, double x, double y, double radius) {
        body.append("<circle class=\"ll-f-")
                .append(pen.css)
                .append("\" fill=\"")
                .append(pen.light)
                .append("\" cx=\"")
                .append(n(x))
                .append("\" cy=\"")
                .append(n(y))
                .append("\" r=\"")
                .append(n(radius))
                .append("\"/>\n");
        return this;
    }

    SvgCanvas ring(Pen pen, double x, double y, double radius) {
        body.append("<circle class=\"ll-")
                .append(pen.css)
                .append(" ll-paper\" fill=\"#ffffff\"")
                .append(stroke(pen))
                .append(" cx=\"")
                .append(n(x))
                .append("\" cy=\"")
                .append(n(y))
                .append("\" r=\"")
                .append(n(radius))
                .append("\"/>\n");
        return this;
    }

    /** A rectangle filled with a hatch or, with a pattern of −1, left empty. */
    SvgCanvas box(Pen pen, double[] box, int pattern, String prefix) {
        body.append("<rect class=\"ll-")
                .append(pen.css)
                .append("\" fill=\"")
                .append(pattern < 0 ? "none" : "url(#" + prefix + pattern + ")")
                .append("\"")
                .append(stroke(pen))
                .append(" x=\"")
                .append(n(box[0]))
                .append("\" y=\"")
                .append(n(box[1]))
                .append("\" width=\"")
                .append(n(box[2]))
                .append("\" height=\"")
                .append(n(box[3]))
                .append("\"/>\n");
        return this;
    }

    /** A hatched area without an outline. */
    SvgCanvas fill(double[] box, int pattern, String prefix) {
        body.append("<rect fill=\"url(#")
                .append(prefix)
                .append(pattern)
                .append(")\" x=\"")
                .append(n(box[0]))
                .append("\" y=\"")
                .append(n(box[1]))
                .append("\" width=\"")
                .append(n(box[2]))
                .append("\" height=\"")
                .append(n(box[3]))
                .append("\"/>\n");
        return this;
    }

    /** A hatch for {@link #box}: each has a spacing and a direction of its own. */
    SvgCanvas hatch(String prefix, int pattern, Pen pen) {
        double size = 7 + 2.0 * (pattern % 3);
        definitions
                .append("<pattern id=\"")
                .append(prefix)
                .append(pattern)
                .append("\" width=\"")
                .append(n(size))
                .append("\" height=\"")
                .append(n(size))
                .append("\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(")
                .append(n(pattern * 45 % 180 + 20))
                .append(")\">");
        definitions
                .append("<line class=\"ll-h-")
                .append(pen.css)
                .append("\" x1=\"0\" y1=\"0\" x2=\"0\" y2=\"")
                .append(n(size))
                .append("\" stroke=\"")
                .append(pen.light)
                .append("\" stroke-width=\"1.1\"/>");
        if (pattern % 4 == 3) {
            definitions
                    .append("<line class=\"ll-h-")
                    .append(pen.css)
                    .append("\" x1=\"0\" y1=\"0\" x2=\"")
                    .append(n(size))
                    .append("\" y2=\"0\" stroke=\"")
                    .append(pen.light)
                    .append("\" stroke-width=\"1.1\"/>");
        }
        definitions.append("</pattern>\n");
        return this;
    }

    /** An arrow from one point to another, with its head at the second. */
    SvgCanvas arrow(Pen pen, double x1, double y1, double x2, double y2) {
        double length = Math.hypot(x2 - x1, y2 - y1);
        if (length < 1e-6) {
            return this;
        }
        double ux = (x2 - x1) / length;
        double uy = (y2 - y1) / length;
        double head = Math.min(8, length);
        line(pen, x1, y1, x2 - ux * head * 0.6, y2 - uy * head * 0.6);
        return shape(
                pen,
                x2,
                y2,
                x2 - ux * head - uy * head * 0.38,
                y2 - uy * head + ux * head * 0.38,
                x2 - ux * head + uy * head * 0.38,
                y2 - uy * head - ux * head * 0.38);
    }

    /** Text on paper: a halo keeps lines from running through it. Anchor is start, middle or end. */
    SvgCanvas text(double x, double y, String anchor, String text) {
        return text(x, y, anchor, "ll-text", text);
    }

    SvgCanvas bold(double x, double y, String anchor, String text) {
        return text(x, y, anchor, "ll-text ll-bold", text);
    }

    private SvgCanvas text(double x, double y, String anchor, String css, String text) {
        body.append("<text class=\"")
                .append(css)
                .append("\" x=\"")
                .append(n(x))
                .append("\" y=\"")
                .append(n(y))
                .append("\" text-anchor=\"")
                .append(anchor)
                .append('"')
                .append(HALO)
                .append(css.contains("bold") ? " font-weight=\"bold\"" : "")
                .append(">")
                .append(InertText.markup(text))
                .append("</text>\n");
        return this;
    }

    /** Text turned to read upward. */
    SvgCanvas upward(double x, double y, String text) {
        body.append("<text class=\"ll-text\" transform=\"translate(")
                .append(n(x))
                .append(' ')
                .append(n(y))
                .append(") rotate(-90)\" text-anchor=\"middle\"")
                .append(HALO)
                .append('>')
                .append(InertText.markup(text))
                .append("</text>\n");
        return this;
    }

    /** Estimated width of a text in user units; a little too wide rather than too narrow. */
    static double width(String text) {
        double sum = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if ("il.,:;'|!()[] jtfr".indexOf(c) >= 0) {
                sum += 4.3;
            } else if ("mwMW@%—".indexOf(c) >= 0 || c > 0x2E80) {
                sum += 11.5;
            } else if (Character.isUpperCase(c)) {
                sum += 8.7;
            } else {
                sum += 7.0;
            }
        }
        return sum;
    }

    /** Text cut to a width, with an ellipsis. */
    static String cut(String text, double most) {
        String plain = InertText.plain(text);
        if (width(plain) <= most) {
            return plain;
        }
        int end = plain.length();
        while (end > 1 && width(plain.substring(0, end)) + 9 > most) {
            end--;
        }
        if (Character.isHighSurrogate(plain.charAt(end - 1))) {
            end--;
        }
        return plain.substring(0, end).stripTrailing() + "…";
    }

    /** The picture as a complete SVG document. */
    String finish(String title, String description) {
        StringBuilder b = new StringBuilder();
        b.append("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" viewBox=\"0 0 ")
                .append(n(width))
                .append(' ')
                .append(n(height))
                .append("\" width=\"")
                .append(n(width))
                .append("\" height=\"")
                .append(n(height))
                .append("\" ")
                .append(FONT)
                .append(" font-size=\"12.5\">\n");
        b.append("<title>")
                .append(InertText.markup(title))
                .append("</title>\n<desc>")
                .append(InertText.markup(description))
                .append("</desc>\n");
        b.append("<style>").append(dark()).append("</style>\n");
        if (definitions.length() > 0) {
            b.append("<defs>\n").append(definitions).append("</defs>\n");
        }
        b.append("<rect class=\"ll-ground\" width=\"")
                .append(n(width))
                .append("\" height=\"")
                .append(n(height))
                .append("\" fill=\"#ffffff\"/>\n");
        return b.append(body).append("</svg>\n").toString();
    }

    /** Colours for a dark screen; print and everything else take the colours that stand on the shapes. */
    private static String dark() {
        StringBuilder b = new StringBuilder("@media screen and (prefers-color-scheme:dark){");
        b.append(".ll-ground,.ll-paper{fill:#14181c}.ll-text{fill:#eef1f4;stroke:#14181c}");
        for (Pen p : Arrays.asList(Pen.values())) {
            b.append(".ll-")
                    .append(p.css)
                    .append(",.ll-h-")
                    .append(p.css)
                    .append("{stroke:")
                    .append(p.dark)
                    .append("}.ll-f-")
                    .append(p.css)
                    .append("{fill:")
                    .append(p.dark)
                    .append('}');
        }
        return b.append('}').toString();
    }
}
