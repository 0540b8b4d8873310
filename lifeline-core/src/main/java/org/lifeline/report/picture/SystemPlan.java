package org.lifeline.report.picture;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.lifeline.base.UnitSystem;
import org.lifeline.internal.svg.AxisScale;
import org.lifeline.internal.svg.AxisScale.Range;
import org.lifeline.internal.svg.Pen;
import org.lifeline.internal.svg.Spot;
import org.lifeline.internal.svg.SvgCanvas;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Support;
import org.lifeline.report.document.QuantityKind;

/** The plan of a line to true scale: supports with their numbers, runs of the spans where the line turns. */
final class SystemPlan {
    private static final double HIGHEST = 260;
    private static final double HEAD = 24;
    private static final double FOOT = 30;
    private static final int SCALE_BARS = 7;

    private final Lifeline line;
    private final UnitSystem system;
    private final Range east;
    private final Range north;
    private final double wide;
    private final double scale;

    SystemPlan(Lifeline line, UnitSystem system, double width) {
        this.line = line;
        this.system = system;
        this.wide = width - SystemPicture.LEFT - SystemPicture.RIGHT;
        double[] x = line.supports().stream().mapToDouble(s -> s.position().x()).toArray();
        double[] y = line.supports().stream().mapToDouble(s -> s.position().y()).toArray();
        this.east = range(x);
        this.north = range(y);
        this.scale = Math.min(
                wide / Math.max(east.to() - east.from(), PlanPicture.NO_EXTENT),
                HIGHEST / Math.max(north.to() - north.from(), PlanPicture.NO_EXTENT));
    }

    private static Range range(double[] values) {
        return new Range(
                Arrays.stream(values).min().orElse(0),
                Arrays.stream(values).max().orElse(0));
    }

    /** Height of the plan without title and scale bar [user units]. */
    double high() {
        return scale * (north.to() - north.from());
    }

    void draw(SvgCanvas c, double top) {
        List<Spot> points = new ArrayList<>();
        for (Support s : line.supports()) {
            points.add(new Spot(
                    SystemPicture.LEFT + scale * (s.position().x() - east.from()),
                    top + HEAD + scale * (north.to() - s.position().y())));
        }
        c.bold(12, top, "start", "Plan");
        c.polyline(Pen.FIRST, points);
        for (int i = 0; i < points.size(); i++) {
            Spot at = points.get(i);
            DrawingMarks.support(c, line.supports().get(i), at);
            c.bold(at.x() + 8, at.y() - 8, "start", Integer.toString(i + 1));
        }
        if (PlanPicture.turns(line)) {
            for (int i = 1; i < points.size(); i++) {
                Spot a = points.get(i - 1);
                Spot b = points.get(i);
                String run = QuantityKind.LENGTH.number(line.run(i), system);
                c.text((a.x() + b.x()) / 2 + 6, (a.y() + b.y()) / 2 + 15, "start", run);
            }
        }
        foot(c, top + HEAD + high() + FOOT);
    }

    private void foot(SvgCanvas c, double y) {
        double perUnit = scale * QuantityKind.LENGTH.back(1, system);
        BigDecimal bar = AxisScale.step(wide / perUnit, SCALE_BARS);
        DrawingMarks.scaleBar(
                c,
                new Spot(SystemPicture.LEFT, y),
                perUnit,
                bar,
                QuantityKind.LENGTH.unit(system) + ", plan to true scale; x to the right, y up");
    }
}
