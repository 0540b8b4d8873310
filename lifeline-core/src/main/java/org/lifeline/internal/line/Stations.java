package org.lifeline.internal.line;

import org.lifeline.base.Vector3;
import org.lifeline.internal.catenary.ElasticCatenary;

/** Which material point of a span is where. */
public final class Stations {
    private Stations() {}

    /** Material coordinate that hangs at a horizontal distance from where the cable of a span without loads begins. */
    public static double coordinateAt(LineSystem sys, LineState s, int span, double station) {
        Vector3 t = new Vector3(s.tension[3 * span], s.tension[3 * span + 1], s.tension[3 * span + 2]);
        double length = (sys.length[span] + s.slip[span + 1] - s.slip[span]) * s.thermal;
        ElasticCatenary c = new ElasticCatenary(sys.law);
        return s.slip[span] + Piece.lengthAtRun(c, t, length, sys.weight / s.thermal, station) / s.thermal;
    }

    /** Material coordinate at which the cable of a span is lowest, or the nearer end where it falls all the way. */
    public static double lowest(LineSystem system, LineState state, int span) {
        double at = state.slip[span];
        double z = state.tension[3 * span + 2];
        for (int j = system.firstLoad[span]; z < 0 && j < system.firstLoad[span + 1]; j++) {
            if (!state.active[j]) {
                continue;
            }
            double level = at - z / system.weight; // without weight it is never level again
            if (level <= state.coordinate[j]) {
                return level;
            }
            z += system.weight * (state.coordinate[j] - at) + system.forces.cableForce(state, j);
            at = state.coordinate[j];
        }
        return z < 0 ? Math.min(system.length[span] + state.slip[span + 1], at - z / system.weight) : at;
    }
}
