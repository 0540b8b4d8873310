package org.lifeline.internal.line;

import org.lifeline.internal.catenary.ElasticCatenary;
import org.lifeline.model.InlineAbsorber;

/** Heights and energies of the states of a line, in closed form. Not thread-safe. */
public final class LineEnergies {
    private final LineSystem sys;
    private final ElasticCatenary c;

    /** Vertical tension component at the end of the span before each support [N]; 0 where nothing yields. */
    private final double[] endBefore;

    /** Strain energy of the cable [J]. */
    public double strain;

    /** Potential energy of the cable's weight [J]. */
    public double weight;

    /** Energy of the elastic anchors, from the installed state [J]. */
    public double springs;

    /** Work taken by in-line absorbers [J]. */
    public double inlineAbsorbers;

    /** Potential energy of the loads, by their positions [J]. */
    public double hanging;

    public LineEnergies(LineSystem system) {
        this.sys = system;
        this.c = new ElasticCatenary(system.law);
        this.endBefore = new double[system.spans + 1];
    }

    public static LineEnergy of(LineSystem system, LineState s) {
        LineEnergies e = new LineEnergies(system);
        e.evaluate(s);
        return new LineEnergy(e.strain, e.weight, e.springs, e.inlineAbsorbers, e.hanging);
    }

    /** Elevation of a load that takes part above the as-installed first support [m]. */
    public double height(LineState s, int load) {
        int support = sys.pulledSupport[load];
        if (support >= 0) {
            return sys.pz[support] - sys.pz[0] + sys.forces.displacement(s, support, 2);
        }
        int i = sys.loadSpan[load];
        double tx = sys.unknowns.along(s, i);
        double ty = sys.unknowns.across(s, i);
        double tz = s.tension[3 * i + 2];
        double z = startHeight(s, i, sys.forces.displacement(s, i, 2));
        double from = s.slip[i];
        double wHot = sys.weight / s.thermal;
        for (int j = sys.firstLoad[i]; j <= load; j++) {
            if (s.active[j]) {
                double piece = (s.coordinate[j] - from) * s.thermal;
                c.evaluate(tx, ty, tz, piece, wHot);
                z += c.dz;
                tz += wHot * piece + sys.forces.cableForce(s, j);
                from = s.coordinate[j];
            }
        }
        return z;
    }

    /** Elevation at which the cable of a span begins above the as-installed first support, which has moved up [m]. */
    private double startHeight(LineState s, int i, double up) {
        double z = sys.pz[i] - sys.pz[0] + up;
        if (i == 0 && sys.absorbers[0] != null) {
            z += (s.extension[0] - sys.installedExtension[0]) * s.tension[2] / sys.forces.endSideTension(s, 0);
        }
        return z;
    }

    /** Works out the energies of a state. */
    public void evaluate(LineState s) {
        strain = 0;
        hanging = 0;
        double total = 0;
        double wHot = sys.weight / s.thermal;
        for (int i = 0; sys.elastic && i < sys.spans; i++) {
            endBefore[i + 1] = sys.forces.endZ(s, i);
        }
        for (int i = 0; i < sys.spans; i++) {
            double tx = sys.unknowns.along(s, i);
            double ty = sys.unknowns.across(s, i);
            double tz = s.tension[3 * i + 2];
            double z = startHeight(s, i, sys.forces.displacement(s, i, 2, endBefore[i]));
            double from = s.slip[i];
            int last = sys.firstLoad[i + 1];
            for (int j = sys.firstLoad[i]; j <= last; j++) {
                if (j < last && !s.active[j]) {
                    continue;
                }
                double to = j == last ? sys.length[i] + s.slip[i + 1] : s.coordinate[j];
                double piece = (to - from) * s.thermal;
                c.evaluate(tx, ty, tz, piece, wHot);
                c.energies(tx, ty, tz, piece, wHot);
                double endZ = tz + wHot * piece;
                strain += c.strainEnergy;
                total += z * wHot * piece + c.dz * endZ + tx * c.dx + ty * c.dy - c.complementary;
                z += c.dz;
                tz = endZ;
                if (j < last) {
                    hanging += s.force[j] * z;
                    tz += sys.forces.cableForce(s, j);
                }
                from = to;
            }
        }
        for (int j = 0; j < sys.loads; j++) {
            if (sys.pulledSupport[j] >= 0) {
                hanging += s.force[j] * height(s, j);
            }
        }
        weight = total - strain;
        springs = sys.elastic ? springs(s) : 0;
        inlineAbsorbers = inline(s);
    }

    private double springs(LineState s) {
        double sum = 0;
        for (int i = 0; i <= sys.spans; i++) {
            for (int k = 0; k < 3; k++) {
                double now = sys.forces.reaction(s, i, k, endBefore[i]);
                double then = sys.reference[3 * i + k];
                sum += 0.5 * sys.compliance[3 * i + k] * (now - then) * (now + then);
            }
        }
        return sum;
    }

    private double inline(LineState s) {
        double sum = 0;
        for (int e = 0; e < 2; e++) {
            InlineAbsorber a = sys.absorbers[e];
            if (a != null) {
                double tension = sys.forces.endTension(s, e);
                if (LineForces.isAtStop(s, e, a)) {
                    sum += a.curve().work(Math.max(s.extension[e], a.curve().maximumExtension()));
                    continue;
                }
                double y = s.yielded[e];
                double yieldForce = a.curve().force(y);
                double soft = 1 / a.initialStiffness();
                sum += a.curve().work(y) + 0.5 * soft * (tension * tension - yieldForce * yieldForce);
            }
        }
        return sum;
    }
}
