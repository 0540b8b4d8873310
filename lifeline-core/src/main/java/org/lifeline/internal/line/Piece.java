package org.lifeline.internal.line;

import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.internal.catenary.ElasticCatenary;
import org.lifeline.model.cable.LoadElongation;

/**
 * A piece of cable between two places where force enters, with its numbers worked out.
 *
 * @param law how the rope stretches
 * @param begin where it starts and the tension there
 * @param length unstretched length at the present temperature [m]
 * @param weight weight per unstretched length at the present temperature [N/m]
 * @param end where it ends
 * @param endTension tension vector at its end, pointing along the line, components in [N]
 * @param load downward force that enters at its end [N]
 */
public record Piece(
        LoadElongation law, Start begin, double length, double weight, Point end, Vector3 endTension, double load) {

    /**
     * Start of a piece.
     *
     * @param point where it starts
     * @param tension tension vector there, pointing along the line, components in [N]
     */
    public record Start(Point point, Vector3 tension) {}

    /** Works out a piece with a catenary of its rope. */
    public static Piece of(ElasticCatenary c, Start begin, double length, double weight, double load) {
        Vector3 t = begin.tension();
        c.evaluate(t.x(), t.y(), t.z(), length, weight);
        Point end = from(begin.point(), c);
        return new Piece(c.law(), begin, length, weight, end, new Vector3(t.x(), t.y(), t.z() + weight * length), load);
    }

    /**
     * Where the piece starts.
     *
     * @return the point
     */
    public Point start() {
        return begin.point();
    }

    /**
     * Tension at the start.
     *
     * @return the vector along the line, components in [N]
     */
    public Vector3 startTension() {
        return begin.tension();
    }

    /** The point at an unstretched length from a start, worked out with a catenary of the rope. */
    Point at(ElasticCatenary c, double s, Point start) {
        Vector3 t = begin.tension();
        c.evaluate(t.x(), t.y(), t.z(), s, weight);
        return from(start, c);
    }

    private static Point from(Point start, ElasticCatenary c) {
        return new Point(start.x() + c.dx, start.y() + c.dy, start.z() + c.dz);
    }

    /**
     * The point at an unstretched length from the start.
     *
     * @param s unstretched length [m], from 0 to that of the piece
     * @return the point
     */
    public Point at(double s) {
        return at(new ElasticCatenary(law), s, start());
    }

    /**
     * The unstretched length from the start at which the piece has gone a horizontal distance, by Newton's method within a
     * bracket: a deep piece is steep at its ends and flat at its lowest point, and there the method alone leads away.
     *
     * @param run horizontal distance [m], not negative
     * @return unstretched length [m]; that of the piece, to rounding, if it does not go so far
     */
    public double lengthAtRun(double run) {
        return lengthAtRun(new ElasticCatenary(law), begin.tension(), length, weight, run);
    }

    /** The same for a piece of which only the tension at its start is known. */
    static double lengthAtRun(ElasticCatenary c, Vector3 t, double length, double weight, double run) {
        double h = t.horizontal();
        double low = 0;
        double high = length;
        double s = Math.min(run, length);
        for (int k = 0; k < LineTolerances.STATION_STEPS; k++) {
            c.evaluate(t.x(), t.y(), t.z(), s, weight);
            double at = (c.dx * t.x() + c.dy * t.y()) / h;
            double step = (run - at) * h / (c.ex * t.x() + c.ey * t.y());
            double next = s + step;
            if (Math.abs(step) <= LineTolerances.STATION_STEP * length) {
                // The square of such a step is rounding.
                return Math.min(Math.max(next, 0), length);
            }
            if (at > run) {
                high = s;
            } else {
                low = s;
            }
            double middle = 0.5 * (low + high);
            s = Math.abs(next - middle) < high - middle ? next : middle;
        }
        return s;
    }
}
