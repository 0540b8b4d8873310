package org.lifeline.report;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.SupportReaction;
import org.lifeline.base.Point;
import org.lifeline.base.UnitSystem;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Support;
import org.lifeline.report.SvgCanvas.Pen;

/**
 * Draws the plan of a line that turns, to true scale, with the horizontal force on every anchor at the lowest point of a
 * fall.
 */
public final class PlanPicture {
    private static final double WIDTH = 860;
    private static final double MARGIN = 120;
    private static final double HIGHEST = 560;
    private static final double ARROW = 90;

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
            if (Math.abs(off) > 1e-6 * (1 + a.horizontalDistance(p))) {
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
        double most = 1e-9;
        for (int i = 0; i <= line.spans(); i++) {
            Point p = line.supports().get(i).position();
            west = Math.min(west, p.x());
            east = Math.max(east, p.x());
            south = Math.min(south, p.y());
            north = Math.max(north, p.y());
            most = Math.max(most, arrest.supports().get(i).vector().horizontal());
        }
        double scale = Math.min(
                (WIDTH - 2 * MARGIN) / Math.max(east - west, 1e-9),
                (HIGHEST - 2 * MARGIN) / Math.max(north - south, 1e-9));
        double high = scale * (north - south) + 2 * MARGIN;
        double left = (WIDTH - scale * (east - west)) / 2;
        double[] origin = {left - scale * west, 30 + MARGIN + scale * north};
        SvgCanvas c = new SvgCanvas(WIDTH, high + 70);
        String title = "Plan: " + Governing.name(arrest, Quantities.in(choice));
        c.bold(12, 22, "start", SvgCanvas.cut(title, WIDTH - 40));
        List<double[]> points = new ArrayList<>();
        for (Support s : line.supports()) {
            points.add(at(s.position(), origin, scale));
        }
        c.polyline(Pen.FIRST, points);
        for (int i = 0; i <= line.spans(); i++) {
            support(c, line.supports().get(i), arrest.supports().get(i), points.get(i), new double[] {most, i}, system);
        }
        double[] load = at(arrest.attachmentAtPeak(), origin, scale);
        c.ring(Pen.FORCE, load[0], load[1], 7);
        c.dot(Pen.FORCE, load[0], load[1], 2.5);
        c.text(load[0] + 11, load[1] + 18, "start", "fall");
        foot(c, system, scale, high + 30);
        String description = "Plan of " + (line.spans() + 1)
                + " supports with the horizontal force of the line on each of" + " them; the largest is "
                + Quantities.in(choice).result(Measure.FORCE, most) + ". Drawn to true scale.";
        return new Picture(title, description, c.finish(title, description));
    }

    private static double[] at(Point p, double[] origin, double scale) {
        return new double[] {origin[0] + scale * p.x(), origin[1] - scale * p.y()};
    }

    private static void support(
            SvgCanvas c, Support s, SupportReaction r, double[] at, double[] mostAndNumber, UnitSystem system) {
        if (s.isEnd()) {
            c.shape(Pen.INK, at[0] - 6, at[1] - 6, at[0] + 6, at[1] - 6, at[0] + 6, at[1] + 6, at[0] - 6, at[1] + 6);
        } else {
            c.ring(Pen.INK, at[0], at[1], 5);
        }
        double force = r.vector().horizontal();
        double size = ARROW * force / mostAndNumber[0];
        double ux = r.vector().x() / Math.max(force, 1e-12);
        double uy = -r.vector().y() / Math.max(force, 1e-12);
        double tipX = at[0] + ux * (size + 8);
        double tipY = at[1] + uy * (size + 8);
        if (size > 3) {
            c.arrow(Pen.FORCE, at[0] + 8 * ux, at[1] + 8 * uy, tipX, tipY);
        }
        // The label stands on the side that the force leaves free: opposite to it.
        boolean leftward = ux > 0.3;
        boolean rightward = ux < -0.3;
        double lx = at[0] + (leftward ? -12 : rightward ? 12 : 0);
        String anchor = leftward ? "end" : rightward ? "start" : "middle";
        double ly = leftward || rightward ? at[1] - 4 : at[1] + (uy > 0 ? -24 : 24);
        c.text(lx, ly, anchor, SvgCanvas.cut(s.id(), MARGIN - 16));
        c.text(lx, ly + 14, anchor, Measure.FORCE.number(force, system) + " " + Measure.FORCE.unit(system));
    }

    private static void foot(SvgCanvas c, UnitSystem system, double scale, double y) {
        double perUnit = scale * Measure.LENGTH.back(1, system);
        BigDecimal bar = Scale.step(WIDTH / perUnit, 7);
        double size = bar.doubleValue() * perUnit;
        c.line(Pen.INK, 24, y, 24 + size, y);
        c.line(Pen.INK, 24, y - 4, 24, y + 4);
        c.line(Pen.INK, 24 + size, y - 4, 24 + size, y + 4);
        c.text(
                32 + size,
                y + 4,
                "start",
                bar.stripTrailingZeros().toPlainString() + " " + Measure.LENGTH.unit(system) + "; drawn to true scale");
        c.text(24, y + 24, "start", "Arrows: horizontal force of the line on the anchor at the lowest point.");
        c.arrow(Pen.THIN, WIDTH - 64, 64, WIDTH - 28, 64);
        c.arrow(Pen.THIN, WIDTH - 64, 64, WIDTH - 64, 28);
        c.text(WIDTH - 24, 68, "start", "x");
        c.text(WIDTH - 64, 24, "middle", "y");
    }
}
