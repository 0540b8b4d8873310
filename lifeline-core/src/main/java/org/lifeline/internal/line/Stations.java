package org.lifeline.internal.line;

import org.lifeline.internal.catenary.ElasticCatenary;

/** Which material point of a span is where. */
public final class Stations {
    private Stations() {}

    /** Material coordinate that hangs at a horizontal distance from where the span's cable begins. */
    public static double coordinateAt(LineSystem sys, LineState s, int span, double station) {
        double total = sys.length[span] + s.slip[span + 1] - s.slip[span];
        double low = 0;
        double high = total;
        double runX = sys.px[span + 1] - sys.px[span];
        double runY = sys.py[span + 1] - sys.py[span];
        double guess = total * station / Math.sqrt(runX * runX + runY * runY);
        double x = Math.min(Math.max(guess, low), high);
        ElasticCatenary c = new ElasticCatenary(sys.law);
        double tx = s.tension[3 * span];
        double ty = s.tension[3 * span + 1];
        double h = Math.sqrt(tx * tx + ty * ty);
        for (int k = 0; k < 100; k++) {
            c.evaluate(tx, ty, s.tension[3 * span + 2], x * s.thermal, sys.weight / s.thermal);
            double at = (c.dx * tx + c.dy * ty) / h;
            double slope = (c.ex * tx + c.ey * ty) / h * s.thermal;
            if (at > station) {
                high = x;
            } else {
                low = x;
            }
            double step = (station - at) / slope;
            if (Math.abs(step) <= LineTolerances.STATION_STEP * total) {
                // The square of such a step is rounding.
                x += step;
                break;
            }
            x = x + step > low && x + step < high ? x + step : 0.5 * (low + high);
        }
        return x + s.slip[span];
    }

    /** Material coordinate at which the cable of a span is lowest, or the nearer end where it falls all the way. */
    public static double lowest(LineSystem system, LineState state, int span) {
        double w = system.weight;
        double low = state.slip[span];
        double high = system.length[span] + state.slip[span + 1];
        int from = system.firstLoad[span];
        int to = system.firstLoad[span + 1];
        double z = state.tension[3 * span + 2];
        double at = low;
        for (int j = from; j < to; j++) {
            if (!state.active[j]) {
                continue;
            }
            double next = z + w * (state.coordinate[j] - at);
            if (next >= 0) {
                return z >= 0 ? at : at - z / w;
            }
            at = state.coordinate[j];
            z = next + system.forces.cableForce(state, j);
            if (z >= 0) {
                return at;
            }
        }
        if (z >= 0) {
            return at;
        }
        return w > 0 ? Math.min(high, at - z / w) : high;
    }
}
