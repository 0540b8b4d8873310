package org.lifeline.internal.svg;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.lifeline.base.InertText;

/** Collects the shapes of a picture. Coordinates in user units, x to the right, y down. Not thread-safe. */
public final class SvgCanvas {
    /**
     * A rectangle of a picture.
     *
     * @param left left edge [user units]
     * @param top upper edge [user units]
     * @param width width [user units]
     * @param height height [user units]
     */
    public record Box(double left, double top, double width, double height) {}

    /** Letters with a rim in the colour of the paper, so that lines behind them do not disturb. */
    private static final String[] HALO = {
        "fill", "#14181c", "stroke", "#ffffff", "stroke-width", "3", "stroke-linejoin", "round", "paint-order", "stroke"
    };

    /** Width of the lines of a hatch [user units]. */
    private static final String HATCH_WIDTH = "1.1";

    /** An arrow shorter than this is not drawn [user units]. */
    private static final double SHORTEST_ARROW = 1e-6;

    /** Length of the head of an arrow [user units]. */
    private static final double ARROW_HEAD = 8;

    /** Half the width of the head over its length [-]. */
    private static final double HALF_HEAD = 0.38;

    /** Where the shaft ends within the head, so that it does not show at the tip [share of the head]. */
    private static final double SHAFT_INTO_HEAD = 0.6;

    private static final String FONT = "Helvetica, Arial, 'DejaVu Sans', sans-serif";
    private final StringBuilder body = new StringBuilder();
    private final double width;
    private final double height;
    private final StringBuilder definitions = new StringBuilder();

    public SvgCanvas(double width, double height) {
        this.width = width;
        this.height = height;
    }

    public double height() {
        return height;
    }

    private SvgCanvas shape(String tag, String... attributes) {
        SvgElement.write(body, tag, null, attributes);
        body.append('\n');
        return this;
    }

    private static String[] stroke(Pen pen, String css, String... more) {
        return SvgElement.attributes(
                SvgElement.attributes(new String[] {"class", "ll-" + pen.css + css}, more),
                "stroke",
                pen.light,
                "stroke-width",
                SvgElement.n(pen.width),
                "stroke-dasharray",
                pen.dash);
    }

    public SvgCanvas line(Pen pen, double x1, double y1, double x2, double y2) {
        return shape(
                "line",
                SvgElement.attributes(
                        stroke(pen, ""),
                        "x1",
                        SvgElement.n(x1),
                        "y1",
                        SvgElement.n(y1),
                        "x2",
                        SvgElement.n(x2),
                        "y2",
                        SvgElement.n(y2)));
    }

    /** A line through points. */
    public SvgCanvas polyline(Pen pen, List<Spot> points) {
        return shape(
                "polyline",
                SvgElement.attributes(
                        stroke(pen, "", "fill", "none", "stroke-linejoin", "round"), "points", list(points)));
    }

    private static String list(List<Spot> points) {
        return points.stream()
                .map(p -> SvgElement.n(p.x()) + "," + SvgElement.n(p.y()))
                .collect(Collectors.joining(" "));
    }

    /** A polygon filled in the colour of a pen. */
    public SvgCanvas polygon(Pen pen, Spot... corners) {
        return shape("polygon", "class", "ll-f-" + pen.css, "fill", pen.light, "points", list(List.of(corners)));
    }

    /** A filled square about a point, the sign of an end anchor. */
    public SvgCanvas square(Pen pen, Spot middle, double half) {
        return polygon(
                pen,
                middle.moved(-half, -half),
                middle.moved(half, -half),
                middle.moved(half, half),
                middle.moved(-half, half));
    }

    public SvgCanvas dot(Pen pen, Spot middle, double radius) {
        return shape(
                "circle",
                SvgElement.attributes(
                        new String[] {"class", "ll-f-" + pen.css, "fill", pen.light}, circle(middle, radius)));
    }

    public SvgCanvas ring(Pen pen, Spot middle, double radius) {
        return shape(
                "circle", SvgElement.attributes(stroke(pen, " ll-paper", "fill", "#ffffff"), circle(middle, radius)));
    }

    private static String[] circle(Spot middle, double radius) {
        return new String[] {"cx", SvgElement.n(middle.x()), "cy", SvgElement.n(middle.y()), "r", SvgElement.n(radius)};
    }

    /** A rectangle with an outline, filled with a hatch. */
    public SvgCanvas box(Pen pen, Box box, Hatch hatch) {
        return shape("rect", SvgElement.attributes(stroke(pen, "", "fill", hatch.reference()), rectangle(box)));
    }

    /** A hatched area without an outline. */
    public SvgCanvas fill(Box box, Hatch hatch) {
        return shape("rect", SvgElement.attributes(new String[] {"fill", hatch.reference()}, rectangle(box)));
    }

    /** The area between a line and a level, hatched. */
    public SvgCanvas area(List<Spot> line, double level, Hatch hatch) {
        Spot first = line.get(0);
        Spot last = line.get(line.size() - 1);
        return shape(
                "polygon",
                "fill",
                hatch.reference(),
                "points",
                list(line) + " " + list(List.of(new Spot(last.x(), level), new Spot(first.x(), level))));
    }

    private static String[] rectangle(Box b) {
        return new String[] {
            "x",
            SvgElement.n(b.left()),
            "y",
            SvgElement.n(b.top()),
            "width",
            SvgElement.n(b.width()),
            "height",
            SvgElement.n(b.height())
        };
    }

    /** Defines a hatch for {@link #box} and {@link #fill}: each has a spacing and a direction of its own. */
    public SvgCanvas hatch(Hatch hatch, Pen pen) {
        String size = SvgElement.n(hatch.spacing());
        StringBuilder lines = new StringBuilder();
        hatchLine(lines, pen, "0", size);
        if (hatch.isCrossed()) {
            hatchLine(lines, pen, size, "0");
        }
        SvgElement.write(
                definitions,
                "pattern",
                lines.toString(),
                "id",
                hatch.id(),
                "width",
                size,
                "height",
                size,
                "patternUnits",
                "userSpaceOnUse",
                "patternTransform",
                "rotate(" + SvgElement.n(hatch.direction()) + ")");
        definitions.append('\n');
        return this;
    }

    private static void hatchLine(StringBuilder out, Pen pen, String x2, String y2) {
        SvgElement.write(
                out,
                "line",
                null,
                "class",
                "ll-h-" + pen.css,
                "x1",
                "0",
                "y1",
                "0",
                "x2",
                x2,
                "y2",
                y2,
                "stroke",
                pen.light,
                "stroke-width",
                HATCH_WIDTH);
    }

    /** An arrow from one point to another, with its head at the second. */
    public SvgCanvas arrow(Pen pen, double x1, double y1, double x2, double y2) {
        double length = StrictMath.hypot(x2 - x1, y2 - y1);
        if (length < SHORTEST_ARROW) {
            return this;
        }
        double ux = (x2 - x1) / length;
        double uy = (y2 - y1) / length;
        double head = Math.min(ARROW_HEAD, length);
        line(pen, x1, y1, x2 - ux * head * SHAFT_INTO_HEAD, y2 - uy * head * SHAFT_INTO_HEAD);
        Spot tip = new Spot(x2, y2);
        double side = head * HALF_HEAD;
        return polygon(
                pen,
                tip,
                tip.moved(-ux * head - uy * side, -uy * head + ux * side),
                tip.moved(-ux * head + uy * side, -uy * head - ux * side));
    }

    /** Text on paper: a halo keeps lines from running through it. Anchor is start, middle or end. */
    public SvgCanvas text(double x, double y, String anchor, String text) {
        return text(x, y, anchor, "ll-text", text);
    }

    /** The title at the top of a picture, cut to a room. */
    public SvgCanvas heading(String title, double room) {
        return bold(12, 22, "start", TextWidth.cut(title, room / TextWidth.BOLD));
    }

    public SvgCanvas bold(double x, double y, String anchor, String text) {
        return text(x, y, anchor, "ll-text ll-bold", text);
    }

    private SvgCanvas text(double x, double y, String anchor, String css, String text) {
        SvgElement.write(
                body,
                "text",
                InertText.markup(text),
                SvgElement.attributes(
                        SvgElement.attributes(
                                new String[] {
                                    "class", css, "x", SvgElement.n(x), "y", SvgElement.n(y), "text-anchor", anchor
                                },
                                HALO),
                        "font-weight",
                        css.contains("bold") ? "bold" : ""));
        body.append('\n');
        return this;
    }

    /** Text turned to read upward. */
    public SvgCanvas upward(double x, double y, String text) {
        SvgElement.write(
                body,
                "text",
                InertText.markup(text),
                SvgElement.attributes(
                        new String[] {
                            "class",
                            "ll-text",
                            "transform",
                            "translate(" + SvgElement.n(x) + ' ' + SvgElement.n(y) + ") rotate(-90)",
                            "text-anchor",
                            "middle"
                        },
                        HALO));
        body.append('\n');
        return this;
    }

    /** The picture as a complete SVG document. */
    public String finish(String title, String description) {
        StringBuilder inner = new StringBuilder("\n");
        SvgElement.write(inner, "title", InertText.markup(title));
        inner.append('\n');
        SvgElement.write(inner, "desc", InertText.markup(description));
        inner.append('\n');
        SvgElement.write(inner, "style", dark());
        inner.append('\n');
        if (definitions.length() > 0) {
            SvgElement.write(inner, "defs", "\n" + definitions);
            inner.append('\n');
        }
        SvgElement.write(
                inner,
                "rect",
                null,
                "class",
                "ll-ground",
                "width",
                SvgElement.n(width),
                "height",
                SvgElement.n(height),
                "fill",
                "#ffffff");
        inner.append('\n').append(body);
        StringBuilder out = new StringBuilder();
        SvgElement.write(
                out,
                "svg",
                inner.toString(),
                "xmlns",
                "http://www.w3.org/2000/svg",
                "role",
                "img",
                "viewBox",
                "0 0 " + SvgElement.n(width) + ' ' + SvgElement.n(height),
                "width",
                SvgElement.n(width),
                "height",
                SvgElement.n(height),
                "font-family",
                FONT,
                "font-size",
                "12.5");
        return out.append('\n').toString();
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
