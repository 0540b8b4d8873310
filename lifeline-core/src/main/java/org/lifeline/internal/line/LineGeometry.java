package org.lifeline.internal.line;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.internal.catenary.ElasticCatenary;

/** Where the cable and the supports of a line are in a state. Not thread-safe. */
public final class LineGeometry {
    private final LineSystem system;
    private final LineState state;
    private @Nullable ElasticCatenary catenary;

    /**
     * The geometry of a state, which must not change as long as this is used.
     *
     * @param system the line
     * @param state its state
     */
    public LineGeometry(LineSystem system, LineState state) {
        this.system = system;
        this.state = state;
    }

    /**
     * Walks along the pieces of a span to a load, or to a material coordinate.
     *
     * @param pieces its pieces
     * @param span span from 0
     * @param coordinate material coordinate [m]
     * @param stopLoad number of the load; −1 for the coordinate
     * @return the point
     */
    public Point walk(List<Piece> pieces, int span, double coordinate, int stopLoad) {
        double from = state.slip[span];
        Point last = pieces.get(0).start();
        int k = 0;
        for (int j = system.firstLoad[span]; j < system.firstLoad[span + 1]; j++) {
            if (!state.active[j]) {
                continue;
            }
            if (j == stopLoad) {
                return pieces.get(k).end();
            }
            if (stopLoad < 0 && state.coordinate[j] >= coordinate) {
                break;
            }
            from = state.coordinate[j];
            last = pieces.get(k).end();
            k++;
        }
        return pieces.get(k).at(catenary(), (coordinate - from) * state.thermal, last);
    }

    /**
     * The point of the cable at a station of a span, in the current state.
     *
     * @param span span from 0
     * @param station horizontal distance from the span's first support as installed [m]
     * @return the point
     */
    public Point pointAtStation(int span, double station) {
        List<Piece> pieces = pieces(span);
        for (Piece piece : pieces) {
            double run = runTo(span, station, piece.start());
            if (run <= runTo(piece)) {
                return piece.at(piece.lengthAtRun(Math.max(run, 0)));
            }
        }
        return pieces.get(pieces.size() - 1).end();
    }

    /** Horizontal distance, along a span's present direction, from a point of the span to a station as installed. */
    public double runTo(int span, double station, Point from) {
        Point a = support(span);
        Point b = support(span + 1);
        double run = a.horizontalDistance(b);
        double ux = (b.x() - a.x()) / run;
        double uy = (b.y() - a.y()) / run;
        return station - (from.x() - system.px[span]) * ux - (from.y() - system.py[span]) * uy;
    }

    /** Horizontal distance from the start of a piece to its end. */
    public static double runTo(Piece piece) {
        return piece.start().horizontalDistance(piece.end());
    }

    /**
     * Position of a support in the current state.
     *
     * @param i support from 0
     * @return as-installed position plus displacement
     */
    public Point support(int i) {
        return new Point(
                system.px[i] + system.forces.displacement(state, i, 0),
                system.py[i] + system.forces.displacement(state, i, 1),
                system.pz[i] + system.forces.displacement(state, i, 2));
    }

    /**
     * Displacement of a support since installation.
     *
     * @param i support from 0
     * @return displacement, components in [m]
     */
    public Vector3 displacement(int i) {
        if (!system.yields(i)) {
            return Vector3.ZERO;
        }
        return new Vector3(
                system.forces.displacement(state, i, 0),
                system.forces.displacement(state, i, 1),
                system.forces.displacement(state, i, 2));
    }

    /**
     * Force of the line on a support.
     *
     * @param i support from 0
     * @return force, components in [N]
     */
    public Vector3 reaction(int i) {
        return new Vector3(
                system.forces.reaction(state, i, 0),
                system.forces.reaction(state, i, 1),
                system.forces.reaction(state, i, 2));
    }

    /**
     * The pieces of cable of a span in the current state.
     *
     * @param span span from 0
     * @return at least one piece
     */
    public List<Piece> pieces(int span) {
        List<Piece> list = new ArrayList<>(system.firstLoad[span + 1] - system.firstLoad[span] + 1);
        Vector3 t = new Vector3(state.tension[3 * span], state.tension[3 * span + 1], state.tension[3 * span + 2]);
        Point at = support(span);
        if (span == 0 && system.absorbers[0] != null) {
            double link = state.extension[0] - system.installedExtension[0];
            at = at.plus(t.times(link / t.magnitude()));
        }
        double from = state.slip[span];
        for (int j = system.firstLoad[span]; j <= system.firstLoad[span + 1]; j++) {
            boolean last = j == system.firstLoad[span + 1];
            if (!last && !state.active[j]) {
                continue;
            }
            double to = last ? system.length[span] + state.slip[span + 1] : state.coordinate[j];
            double load = last ? 0 : system.forces.cableForce(state, j);
            Piece piece = Piece.of(
                    catenary(),
                    new Piece.Start(at, t),
                    (to - from) * state.thermal,
                    system.weight / state.thermal,
                    load);
            list.add(piece);
            if (!last) {
                at = piece.end();
                Vector3 before = piece.endTension();
                t = new Vector3(before.x(), before.y(), before.z() + load);
                from = to;
            }
        }
        return list;
    }

    private ElasticCatenary catenary() {
        ElasticCatenary c = catenary;
        if (c == null) {
            c = new ElasticCatenary(system.law);
            catenary = c;
        }
        return c;
    }
}
