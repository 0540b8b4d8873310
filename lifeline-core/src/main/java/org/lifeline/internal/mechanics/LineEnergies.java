package org.lifeline.internal.mechanics;

import org.lifeline.model.InlineAbsorber;

/** Heights and energies of a {@link LineState}, in closed form. */
final class LineEnergies {
    private LineEnergies() {}

    /** Elevation of a load that takes part above the as-installed first support [m]. */
    static double height(LineSystem sys, LineState s, int load) {
        ElasticCatenary c = new ElasticCatenary(sys.law);
        int i = sys.loadSpan[load];
        double tx = s.tension[3 * i];
        double ty = s.tension[3 * i + 1];
        double tz = s.tension[3 * i + 2];
        double z = startHeight(sys, s, i);
        double from = s.slip[i];
        double wHot = sys.weight / s.thermal;
        for (int j = sys.firstLoad[i]; j <= load; j++) {
            if (s.active[j]) {
                double piece = (s.coordinate[j] - from) * s.thermal;
                c.evaluate(tx, ty, tz, piece, wHot);
                z += c.dz;
                tz += wHot * piece + sys.cableForce(s, j);
                from = s.coordinate[j];
            }
        }
        return z;
    }

    /** Elevation at which the cable of a span begins above the as-installed first support [m]. */
    private static double startHeight(LineSystem sys, LineState s, int i) {
        double z = sys.pz[i] - sys.pz[0] + sys.displacement(s, i, 2);
        if (i == 0 && sys.absorbers[0] != null) {
            z += (s.extension[0] - sys.installedExtension[0]) * s.tension[2] / sys.tensionBehind(s, 0);
        }
        return z;
    }

    static LineEnergy of(LineSystem sys, LineState s) {
        ElasticCatenary c = new ElasticCatenary(sys.law);
        double strain = 0;
        double total = 0;
        double hanging = 0;
        double wHot = sys.weight / s.thermal;
        for (int i = 0; i < sys.spans; i++) {
            double tx = s.tension[3 * i];
            double ty = s.tension[3 * i + 1];
            double tz = s.tension[3 * i + 2];
            double z = startHeight(sys, s, i);
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
                    tz += sys.cableForce(s, j);
                }
                from = to;
            }
        }
        return new LineEnergy(strain, total - strain, springs(sys, s), inline(sys, s), hanging);
    }

    private static double springs(LineSystem sys, LineState s) {
        double sum = 0;
        for (int i = 0; i <= sys.spans; i++) {
            for (int k = 0; k < 3; k++) {
                if (sys.compliance[3 * i + k] != 0) {
                    double now = sys.reaction(s, i, k);
                    double then = sys.reference[3 * i + k];
                    sum += 0.5 * sys.compliance[3 * i + k] * (now - then) * (now + then);
                }
            }
        }
        return sum;
    }

    private static double inline(LineSystem sys, LineState s) {
        double sum = 0;
        for (int e = 0; e < 2; e++) {
            InlineAbsorber a = sys.absorbers[e];
            if (a != null) {
                double tension = sys.endTension(s, e);
                double y = s.yielded[e];
                double yieldForce = y > 0 ? a.curve().force(y) : 0;
                double soft = 1 / a.initialStiffness();
                sum += a.curve().work(y) + 0.5 * soft * (tension * tension - yieldForce * yieldForce);
            }
        }
        return sum;
    }
}
