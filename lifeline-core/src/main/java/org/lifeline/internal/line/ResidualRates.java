package org.lifeline.internal.line;

import java.util.Arrays;
import org.lifeline.internal.catenary.ElasticCatenary;
import org.lifeline.model.InlineAbsorber;

/** Derivatives of the residuals of a {@link LineSystem} by what is changed from outside. Not thread-safe. */
public final class ResidualRates {
    private final LineSystem sys;
    private final ElasticCatenary catenary;
    private final double[] u = new double[3];

    public ResidualRates(LineSystem system) {
        this.sys = system;
        this.catenary = new ElasticCatenary(system.law);
    }

    /**
     * Derivative of the residuals by the force of a load.
     *
     * @param s the state
     * @param load the load
     * @param out receives ∂residual/∂force
     */
    public void byForce(LineState s, int load, double[] out) {
        Arrays.fill(out, 0);
        int rest = sys.forces.restSupport(s, load);
        if (rest >= 0) {
            double c = sys.compliance[3 * rest + 2];
            if (rest > 0) {
                out[sys.unknowns.tensionIndex(rest - 1) + sys.unknowns.up] += c;
            }
            if (rest < sys.spans) {
                out[sys.unknowns.tensionIndex(rest) + sys.unknowns.up] -= c;
            }
            return;
        }
        int i = sys.loadSpan[load];
        int row = sys.unknowns.tensionIndex(i);
        double tz = s.tension[3 * i + 2];
        double from = s.slip[i];
        int last = sys.firstLoad[i + 1];
        double wHot = sys.weight / s.thermal;
        for (int j = sys.firstLoad[i]; j <= last; j++) {
            if (j < last && !s.active[j]) {
                continue;
            }
            double to = j == last ? sys.length[i] + s.slip[i + 1] : s.coordinate[j];
            if (j > load) {
                catenary.evaluate(
                        sys.unknowns.along(s, i), sys.unknowns.across(s, i), tz, (to - from) * s.thermal, wHot);
                out[row] += catenary.kxz;
                if (!sys.unknowns.planar) {
                    out[row + 1] += catenary.kyz;
                }
                out[row + sys.unknowns.up] += catenary.kzz;
                if (j < last && !sys.gripped[j] && s.mode[j] == LineState.RUNNING) {
                    double scale = Math.abs(s.tension[3 * i]) + Math.abs(s.tension[3 * i + 1]) + s.force[j];
                    out[sys.unknowns.loadIndex(j)] += 1 / scale;
                }
            }
            tz += sys.weight * (to - from) + (j < last ? sys.forces.cableForce(s, j) : 0);
            from = to;
        }
        if (!sys.gripped[load]) {
            int head = s.mode[load] == LineState.FOLLOWS ? sys.forces.leader(s, load) : load;
            if (s.mode[head] == LineState.RUNNING) {
                double scale = Math.abs(s.tension[3 * i]) + Math.abs(s.tension[3 * i + 1]) + s.force[head];
                out[sys.unknowns.loadIndex(head)] += 0.5 / scale;
            }
        }
        // The load raises endZ[i] by one: displacement of support i+1, passage there, absorber and link at the end.
        double c1 = sys.compliance[3 * (i + 1) + 2];
        if (c1 != 0) {
            out[row + sys.unknowns.up] += c1;
            if (i + 1 < sys.spans) {
                out[sys.unknowns.tensionIndex(i + 1) + sys.unknowns.up] -= c1;
            }
        }
        if (i + 1 < sys.spans) {
            passageByEnd(s, i + 1, out);
        } else if (sys.absorbers[1] != null) {
            absorberByEnd(s, sys.absorbers[1], out);
        }
    }

    /**
     * Derivative of the residuals by the factor on unstretched lengths. The vector of a piece is that of one of unit length
     * under the same weight, times its length, so that it grows in proportion.
     *
     * @param s the state
     * @param out receives ∂residual/∂factor
     */
    public void byTemperature(LineState s, double[] out) {
        Arrays.fill(out, 0);
        double wHot = sys.weight / s.thermal;
        for (int i = 0; i < sys.spans; i++) {
            int row = sys.unknowns.tensionIndex(i);
            double tz = s.tension[3 * i + 2];
            double from = s.slip[i];
            int last = sys.firstLoad[i + 1];
            for (int j = sys.firstLoad[i]; j <= last; j++) {
                if (j < last && !s.active[j]) {
                    continue;
                }
                double to = j == last ? sys.length[i] + s.slip[i + 1] : s.coordinate[j];
                catenary.evaluate(
                        sys.unknowns.along(s, i), sys.unknowns.across(s, i), tz, (to - from) * s.thermal, wHot);
                out[row] += catenary.dx / s.thermal;
                if (!sys.unknowns.planar) {
                    out[row + 1] += catenary.dy / s.thermal;
                }
                out[row + sys.unknowns.up] += catenary.dz / s.thermal;
                tz += sys.weight * (to - from) + (j < last ? sys.forces.cableForce(s, j) : 0);
                from = to;
            }
        }
    }

    private void passageByEnd(LineState s, int support, double[] out) {
        if (Math.abs(s.passage[support]) != 1) {
            return;
        }
        int i = support - 1;
        double ax = s.tension[3 * i];
        double ay = s.tension[3 * i + 1];
        double az = sys.forces.endZ(s, i);
        double a2 = ax * ax + ay * ay + az * az;
        double mu = s.passage[support] * sys.friction[support];
        double daz = -az / a2;
        double theta = mu == 0 ? 0 : sys.forces.turned(s, support);
        if (theta > LineTolerances.TURNED) {
            double b = sys.forces.endSideTension(s, support);
            double sin = StrictMath.sin(theta);
            daz += -mu * StrictMath.cos(theta) / sin * az / a2
                    + mu / (sin * Math.sqrt(a2) * b) * s.tension[3 * support + 2];
        }
        out[sys.unknowns.slipIndex(support)] += daz;
    }

    private void absorberByEnd(LineState s, InlineAbsorber absorber, double[] out) {
        int i = sys.spans - 1;
        int row = sys.unknowns.tensionIndex(i);
        u[0] = sys.unknowns.along(s, i);
        u[1] = sys.unknowns.across(s, i);
        u[2] = sys.forces.endZ(s, i);
        double t = sys.forces.startSideTension(s, sys.spans);
        double e = s.extension[1] - sys.installedExtension[1];
        for (int c = 0; c < sys.unknowns.up; c++) {
            out[row + c] -= e / t * u[c] * u[2] / (t * t);
        }
        out[row + sys.unknowns.up] += e / t * (1 - u[2] * u[2] / (t * t));
        boolean rigid = LineForces.isAtStop(s, 1, absorber)
                && Double.isInfinite(absorber.curve().stopStiffness());
        double byTension = rigid ? 0 : s.yielding[1] ? 1 / t : -1 / absorber.initialStiffness();
        out[sys.unknowns.extensionIndex(1)] += byTension * u[2] / t;
    }
}
