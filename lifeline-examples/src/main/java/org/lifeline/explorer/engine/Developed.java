package org.lifeline.explorer.engine;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.base.Point;
import org.lifeline.model.Lifeline;

/** A line drawn out into one plane: distance along it [m] and elevation [m]. */
final class Developed {
    private final Lifeline line;
    private final double[] offset;

    Developed(Lifeline line) {
        this.line = line;
        offset = new double[line.spans() + 1];
        for (int i = 1; i <= line.spans(); i++) {
            offset[i] = offset[i - 1] + line.run(i);
        }
    }

    /** Where a support stands along the line [m]. */
    double along(int support) {
        return offset[support];
    }

    /** A point of a span, counted from 1, as distance along the line and elevation [m]. */
    double[] point(int span, Point p) {
        Point first = line.supports().get(span - 1).position();
        Point second = line.supports().get(span).position();
        double dx = second.x() - first.x();
        double dy = second.y() - first.y();
        double share = ((p.x() - first.x()) * dx + (p.y() - first.y()) * dy) / (dx * dx + dy * dy);
        return new double[] {offset[span - 1] + share * line.run(span), p.z()};
    }

    /** The cable: distance along the line and elevation [m] of one point after the other. */
    double[] shape(LineEquilibrium state, int intervals) {
        List<double[]> points = new ArrayList<>();
        for (SpanState span : state.spans()) {
            for (Point p : span.shape(intervals)) {
                points.add(point(span.number(), p));
            }
        }
        double[] flat = new double[2 * points.size()];
        for (int i = 0; i < points.size(); i++) {
            flat[2 * i] = points.get(i)[0];
            flat[2 * i + 1] = points.get(i)[1];
        }
        return flat;
    }
}
