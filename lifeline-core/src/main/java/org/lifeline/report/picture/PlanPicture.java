package org.lifeline.report.picture;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.InertText;
import org.lifeline.base.Point;
import org.lifeline.base.UnitSystem;
import org.lifeline.base.Vector3;
import org.lifeline.internal.svg.AxisScale;
import org.lifeline.internal.svg.Pen;
import org.lifeline.internal.svg.Spot;
import org.lifeline.internal.svg.SvgCanvas;
import org.lifeline.internal.svg.TextWidth;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Support;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.TableBuilder;
import org.lifeline.report.document.UnitChoice;

/**
 * Draws the plan of a line that turns, to true scale, with the horizontal force on every anchor at the lowest point of a
 * fall.
 *
 * @since 1.0.0
 */
public final class PlanPicture {
    private static final double WIDTH = 860;
    private static final double MARGIN = 120;
    private static final double HIGHEST = 560;
    private static final double ARROW = 90;
    private static final double SHORTEST_ARROW = 3;
    private static final double FROM_SUPPORT = 8;
    private static final int DIRECTIONS = 8;

    /** A force that is none [N]: keeps a direction finite. */
    private static final double NO_FORCE = 1e-9;

    /** An extent that is none [m]: keeps a scale finite. */
    static final double NO_EXTENT = 1e-9;

    /** Deviation from a straight line, for each metre of distance, that counts as a turn [-]: rounding of coordinates. */
    private static final double TURN = 1e-6;

    private PlanPicture() {}

    /**
     * Tells whether a line turns in plan, so that a plan shows something.
     *
     * @param line the line
     * @return true unless all supports stand on one straight line
     */
    public static boolean turns(Lifeline line) {
        Point a = line.supports().get(0).position();
        Point b = line.supports().get(1).position();
        double run = a.horizontalDistance(b);
        for (Support s : line.supports()) {
            Point p = s.position();
            double off = ((b.x() - a.x()) * (p.y() - a.y()) - (b.y() - a.y()) * (p.x() - a.x())) / run;
            if (Math.abs(off) > TURN * (1 + a.horizontalDistance(p))) {
                return true;
            }
        }
        return false;
    }

    /**
     * Draws the plan.
     *
     * @param arrest the arrest
     * @param choice the units; the drawing is in the leading system
     * @return the picture
     */
    public static Picture draw(ArrestResult arrest, UnitChoice choice) {
        UnitSystem system = choice.leading();
        Lifeline line = arrest.line();
        double west = Double.POSITIVE_INFINITY;
        double east = Double.NEGATIVE_INFINITY;
        double south = Double.POSITIVE_INFINITY;
        double north = Double.NEGATIVE_INFINITY;
        double most = NO_FORCE;
        for (int i = 0; i <= line.spans(); i++) {
            Point p = line.supports().get(i).position();
            west = Math.min(west, p.x());
            east = Math.max(east, p.x());
            south = Math.min(south, p.y());
            north = Math.max(north, p.y());
            most = Math.max(most, arrest.supports().get(i).vector().horizontal());
        }
        double scale = Math.min(
                (WIDTH - 2 * MARGIN) / Math.max(east - west, NO_EXTENT),
                (HIGHEST - 2 * MARGIN) / Math.max(north - south, NO_EXTENT));
        double high = scale * (north - south) + 2 * MARGIN;
        double left = (WIDTH - scale * (east - west)) / 2;
        Spot origin = new Spot(left - scale * west, 30 + MARGIN + scale * north);
        SvgCanvas c = new SvgCanvas(WIDTH, high + 70);
        String title = "Plan: " + CaseNames.name(arrest, Quantities.in(choice));
        c.heading(title, WIDTH - 24);
        List<Spot> points = new ArrayList<>();
        for (Support s : line.supports()) {
            points.add(at(s.position(), origin, scale));
        }
        c.polyline(Pen.FIRST, points);
        for (int i = 0; i <= line.spans(); i++) {
            double size = ARROW * arrest.supports().get(i).vector().horizontal() / most;
            arrow(c, arrest.supports().get(i).vector(), points.get(i), size);
            DrawingMarks.support(c, line.supports().get(i), points.get(i));
            label(c, arrest.supports().get(i), points.get(i), free(points, i, arrest), system);
        }
        Spot load = at(arrest.attachmentAtPeak(), origin, scale);
        c.ring(Pen.FORCE, load, 7);
        c.dot(Pen.FORCE, load, 2.5);
        c.text(load.x() + 11, load.y() + 18, "start", "fall");
        foot(c, system, scale, high + 30);
        String description = "Plan of " + (line.spans() + 1)
                + " supports with the horizontal force of the line on each of" + " them; the largest is "
                + Quantities.in(choice).result(QuantityKind.FORCE, most) + ". Drawn to true scale.";
        return new Picture(
                title, description, c.finish(title, description), data(title, arrest, Quantities.in(choice)));
    }

    /** Where every support stands and what the line does to it at the lowest point. */
    static ReportBlock.Table data(String title, ArrestResult arrest, Quantities q) {
        TableBuilder t = new TableBuilder(title)
                .text("Support")
                .number("x")
                .number("y")
                .number("z (up)")
                .number("Force")
                .number("Horizontal force");
        for (int i = 0; i < arrest.supports().size(); i++) {
            Point p = arrest.line().supports().get(i).position();
            SupportReaction r = arrest.supports().get(i);
            t.row(
                    InertText.name(r.id()),
                    q.result(QuantityKind.LENGTH, p.x()),
                    q.result(QuantityKind.LENGTH, p.y()),
                    q.result(QuantityKind.LENGTH, p.z()),
                    q.result(QuantityKind.FORCE, r.force()),
                    q.result(QuantityKind.FORCE, r.vector().horizontal()));
        }
        return t.build();
    }

    private static Spot at(Point p, Spot origin, double scale) {
        return origin.moved(scale * p.x(), -scale * p.y());
    }

    private static void arrow(SvgCanvas c, Vector3 force, Spot at, double size) {
        if (size <= SHORTEST_ARROW) {
            return;
        }
        double ux = force.x() / force.horizontal();
        double uy = -force.y() / force.horizontal();
        double end = size + FROM_SUPPORT;
        c.arrow(
                Pen.FORCE,
                at.x() + FROM_SUPPORT * ux,
                at.y() + FROM_SUPPORT * uy,
                at.x() + ux * end,
                at.y() + uy * end);
    }

    /** The direction from a support, of eight, that is farthest from its spans and from the force on it; a unit vector. */
    private static Spot free(List<Spot> points, int support, ArrestResult arrest) {
        Spot at = points.get(support);
        List<Double> taken = new ArrayList<>();
        for (int other : new int[] {support - 1, support + 1}) {
            if (other >= 0 && other < points.size()) {
                Spot to = points.get(other);
                taken.add(StrictMath.atan2(to.y() - at.y(), to.x() - at.x()));
            }
        }
        Vector3 force = arrest.supports().get(support).vector();
        taken.add(StrictMath.atan2(-force.y(), force.x()));
        double best = 0;
        double widest = -1;
        for (int k = 0; k < DIRECTIONS; k++) {
            double angle = k * 2 * Math.PI / DIRECTIONS;
            double nearest = Math.PI;
            for (double each : taken) {
                nearest = Math.min(nearest, Math.abs(StrictMath.IEEEremainder(each - angle, 2 * Math.PI)));
            }
            if (nearest > widest + 1e-9) {
                widest = nearest;
                best = angle;
            }
        }
        return new Spot(StrictMath.cos(best), StrictMath.sin(best));
    }

    /** Name and force in two rows, in a free direction. */
    private static void label(SvgCanvas c, SupportReaction r, Spot at, Spot free, UnitSystem system) {
        boolean upright = Math.abs(free.x()) < 0.3;
        String anchor = upright ? "middle" : free.x() > 0 ? "start" : "end";
        double x = upright ? at.x() : at.x() + (free.x() > 0 ? 12 : -12);
        double y = at.y() - 3 + 24 * free.y();
        c.text(x, y, anchor, TextWidth.cut(r.id(), MARGIN - 16));
        double force = r.vector().horizontal();
        c.text(x, y + 14, anchor, QuantityKind.FORCE.number(force, system) + " " + QuantityKind.FORCE.unit(system));
    }

    private static void foot(SvgCanvas c, UnitSystem system, double scale, double y) {
        double perUnit = scale * QuantityKind.LENGTH.back(1, system);
        BigDecimal bar = AxisScale.step(WIDTH / perUnit, 7);
        DrawingMarks.scaleBar(
                c, new Spot(24, y), perUnit, bar, QuantityKind.LENGTH.unit(system) + "; drawn to true scale");
        c.text(24, y + 24, "start", "Arrows: horizontal force of the line on the anchor at the lowest point.");
        c.arrow(Pen.THIN, WIDTH - 64, 64, WIDTH - 28, 64);
        c.arrow(Pen.THIN, WIDTH - 64, 64, WIDTH - 64, 28);
        c.text(WIDTH - 24, 68, "start", "x");
        c.text(WIDTH - 64, 24, "middle", "y");
    }
}
