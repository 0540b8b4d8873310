package org.lifeline.internal.path;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.lifeline.internal.line.LineGeometry;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.internal.line.LoadSlot;
import org.lifeline.internal.line.Piece;
import org.lifeline.internal.line.Stations;

/** Where on the cable a load goes that is hooked on, and in which order the loads then stand. */
final class LoadPlacement {
    private final LineModel model;

    /** A system with one load more, and the state of the line in its unknowns. */
    record Arrangement(LineSystem system, LineState state) {}

    LoadPlacement(LineModel model) {
        this.model = model;
    }

    /** Material coordinate that a load holds which grips a station as installed [m]. */
    double gripped(int span, double station) {
        double coordinate = Stations.coordinateAt(model.bare(), model.installed(), span, station);
        double low = model.state().slip[span];
        double high = model.system().length[span] + model.state().slip[span + 1];
        return coordinate > low && coordinate < high ? coordinate : presentCoordinate(span, station);
    }

    /** Where a free-running load goes without weight: to the lowest point of its bay, since it does not pass a grip. */
    double running(int span, double station) {
        double at = presentCoordinate(span, station);
        double low = Double.NEGATIVE_INFINITY;
        double high = Double.POSITIVE_INFINITY;
        for (int j = model.system().firstLoad[span]; j < model.system().firstLoad[span + 1]; j++) {
            if (model.system().gripped[j] && model.state().coordinate[j] <= at) {
                low = model.state().coordinate[j];
            } else if (model.system().gripped[j]) {
                high = Math.min(high, Math.nextDown(model.state().coordinate[j]));
            }
        }
        return Math.max(low, Math.min(high, Stations.lowest(model.system(), model.state(), span)));
    }

    /** Material coordinate that hangs at a station in the current model.state(). */
    private double presentCoordinate(int span, double station) {
        double sum = model.state().slip[span];
        for (Piece piece : model.pieces(span)) {
            double run = model.geometry().runTo(span, station, piece.start());
            if (run <= LineGeometry.runTo(piece)) {
                return sum + piece.lengthAtRun(Math.max(run, 0)) / model.state().thermal;
            }
            sum += piece.length() / model.state().thermal;
        }
        return model.system().length[span] + model.state().slip[span + 1];
    }

    /**
     * A new system in which the loads stand in their present order along the cable.
     *
     * @param added the load that comes to the others
     * @param others the loads that are there
     */
    Arrangement with(LineModel.Load added, List<LineModel.Load> others) {
        LineState state = model.state();
        for (LineModel.Load each : others) {
            each.coordinate = state.coordinate[each.index];
        }
        List<LineModel.Load> order = new ArrayList<>(others);
        order.sort(Comparator.comparingInt(LineModel.Load::index));
        int at = 0;
        while (at < order.size() && isBefore(order.get(at), added)) {
            at++;
        }
        order.add(at, added);
        List<LoadSlot> slots = new ArrayList<>();
        for (LineModel.Load each : order) {
            slots.add(new LoadSlot(each.span, each.gripped, each.coordinate, each.support));
        }
        LineSystem next = new LineSystem(model.bare(), slots);
        LineState s = new LineState(next.spans, next.loads);
        System.arraycopy(state.tension, 0, s.tension, 0, s.tension.length);
        System.arraycopy(state.slip, 0, s.slip, 0, s.slip.length);
        System.arraycopy(state.passage, 0, s.passage, 0, s.passage.length);
        for (int e = 0; e < 2; e++) {
            s.extension[e] = state.extension[e];
            s.yielded[e] = state.yielded[e];
            s.yielding[e] = state.yielding[e];
            s.piece[e] = state.piece[e];
        }
        s.thermal = state.thermal;
        for (int j = 0; j < order.size(); j++) {
            LineModel.Load each = order.get(j);
            s.coordinate[j] = each.coordinate;
            if (each != added) {
                s.force[j] = state.force[each.index];
                s.active[j] = state.active[each.index];
                s.mode[j] = state.mode[each.index];
            }
            each.index = j;
        }
        return new Arrangement(next, s);
    }

    private static boolean isBefore(LineModel.Load a, LineModel.Load b) {
        return a.span < b.span || (a.span == b.span && a.coordinate <= b.coordinate);
    }

    /**
     * Lets a load take part, if it does not yet: from now on it rests on the line, without weight yet.
     *
     * @param load the load
     */
    void activate(LineModel.Load load) {
        LineSystem system = model.system();
        LineState state = model.state();
        int j = load.index;
        if (state.active[j] || load.support >= 0) {
            return;
        }
        state.active[j] = true;
        if (load.gripped) {
            state.mode[j] = LineState.GRIPPED;
            double low = state.slip[load.span];
            double high = system.length[load.span] + state.slip[load.span + 1];
            state.coordinate[j] = Math.min(Math.max(state.coordinate[j], low), high);
            return;
        }
        int toStart = nearestRunning(j, -1);
        int toEnd = nearestRunning(j, 1);
        if (toStart >= 0) {
            state.mode[j] = LineState.FOLLOWS;
            state.coordinate[j] = state.coordinate[toStart];
        } else if (toEnd >= 0) {
            state.mode[j] = state.mode[toEnd];
            state.coordinate[j] = state.coordinate[toEnd];
            state.mode[toEnd] = LineState.FOLLOWS;
        } else {
            double low = system.forces.bound(state, j, false);
            double high = system.forces.bound(state, j, true);
            double at = state.coordinate[j];
            state.mode[j] =
                    at <= low ? LineState.AT_START : at >= Math.nextDown(high) ? LineState.AT_END : LineState.RUNNING;
            state.coordinate[j] = Math.min(Math.max(at, low), high);
        }
    }

    /** The nearest active free-running load on a side with no gripped one between, or −1. */
    private int nearestRunning(int load, int step) {
        LineSystem system = model.system();
        LineState state = model.state();
        int span = system.loadSpan[load];
        for (int j = load + step; j >= system.firstLoad[span] && j < system.firstLoad[span + 1]; j += step) {
            if (state.active[j]) {
                return system.gripped[j] ? -1 : j;
            }
        }
        return -1;
    }
}
