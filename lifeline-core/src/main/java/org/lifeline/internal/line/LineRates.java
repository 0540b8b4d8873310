package org.lifeline.internal.line;

import org.lifeline.internal.catenary.ElasticCatenary;

/**
 * Derivatives of what a {@link LineState} shows by the force of one load, from the derivatives of the unknowns. Not
 * thread-safe.
 */
public final class LineRates {
    private final LineSystem sys;
    private final int load;
    private final ElasticCatenary c;

    public LineRates(LineSystem system, int load) {
        this.sys = system;
        this.load = load;
        this.c = new ElasticCatenary(system.law);
    }

    /** Elevation of the load [m/N]. */
    public double height(LineState s, double[] tangent) {
        int support = sys.pulledSupport[load];
        if (support >= 0) {
            return sys.compliance[3 * support + 2] * reaction(s, tangent, support);
        }
        int i = sys.loadSpan[load];
        int at = sys.unknowns.tensionIndex(i);
        double tx = sys.unknowns.along(s, i);
        double ty = sys.unknowns.across(s, i);
        double tz = s.tension[3 * i + 2];
        double x = tangent[at];
        double y = sys.unknowns.across(tangent, i);
        double z = tangent[at + sys.unknowns.up];
        double rate = startHeight(s, tangent, i);
        double from = s.slip[i];
        double fromRate = slip(tangent, i);
        double wHot = sys.weight / s.thermal;
        for (int j = sys.firstLoad[i]; j <= load; j++) {
            if (s.active[j]) {
                int column = sys.unknowns.loadIndex(j);
                double toRate = column < 0 ? 0 : tangent[column];
                double piece = (s.coordinate[j] - from) * s.thermal;
                double grows = (toRate - fromRate) * s.thermal;
                c.evaluate(tx, ty, tz, piece, wHot);
                rate += c.kxz * x + c.kyz * y + c.kzz * z + c.ez * grows;
                tz += wHot * piece + sys.forces.cableForce(s, j);
                z += wHot * grows;
                from = s.coordinate[j];
                fromRate = toRate;
            }
        }
        return rate;
    }

    /** Elevation at which the cable of a span begins [m/N]. */
    private double startHeight(LineState s, double[] tangent, int i) {
        double rate = sys.compliance[3 * i + 2] == 0 ? 0 : sys.compliance[3 * i + 2] * reaction(s, tangent, i);
        if (i == 0 && sys.absorbers[0] != null) {
            double t = sys.forces.endSideTension(s, 0);
            double link = s.extension[0] - sys.installedExtension[0];
            double turn = tangent[sys.unknowns.up] - s.tension[2] / t * endSideTension(s, tangent, 0);
            rate += tangent[sys.unknowns.extensionIndex(0)] * s.tension[2] / t + link / t * turn;
        }
        return rate;
    }

    /** Vertical force on a support [-]. */
    private double reaction(LineState s, double[] tangent, int support) {
        double rate = load >= 0 && sys.forces.restSupport(s, load) == support ? -1 : 0;
        if (support < sys.spans) {
            rate += tangent[sys.unknowns.tensionIndex(support) + sys.unknowns.up];
        }
        return support > 0 ? rate - endZ(s, tangent, support - 1) : rate;
    }

    /** Vertical component of the tension at the end of a span [-]. */
    private double endZ(LineState s, double[] tangent, int span) {
        boolean carried = load >= 0 && span == sys.loadSpan[load] && sys.forces.restSupport(s, load) < 0;
        return tangent[sys.unknowns.tensionIndex(span) + sys.unknowns.up]
                + sys.weight * (slip(tangent, span + 1) - slip(tangent, span))
                + (carried ? 1 : 0);
    }

    /** Cable that passes a support [m/N]. */
    public double slip(double[] tangent, int support) {
        int column = sys.unknowns.slipColumn(support);
        return column < 0 ? 0 : tangent[column];
    }

    /** Tension on the end side of a support [-]. */
    public double endSideTension(LineState s, double[] tangent, int support) {
        return tension(
                s,
                tangent,
                support,
                s.tension[3 * support + 2],
                tangent[sys.unknowns.tensionIndex(support) + sys.unknowns.up]);
    }

    /** Tension on the start side of a support [-]. */
    public double startSideTension(LineState s, double[] tangent, int support) {
        int span = support - 1;
        return tension(s, tangent, span, sys.forces.endZ(s, span), endZ(s, tangent, span));
    }

    private double tension(LineState s, double[] tangent, int span, double z, double rate) {
        int at = sys.unknowns.tensionIndex(span);
        double x = sys.unknowns.along(s, span);
        double y = sys.unknowns.across(s, span);
        return (x * tangent[at] + y * sys.unknowns.across(tangent, span) + z * rate) / Math.sqrt(x * x + y * y + z * z);
    }
}
