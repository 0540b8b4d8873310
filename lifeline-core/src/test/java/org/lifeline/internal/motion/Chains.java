package org.lifeline.internal.motion;

import java.util.SplittableRandom;
import org.lifeline.internal.motion.law.TensionStrainLaw;
import org.lifeline.model.cable.LoadElongation;

/** Short chains whose nodes are set by hand, so that a joint or a loop can be looked at alone. */
final class Chains {
    /** Mass per unstretched length [kg/m], axial stiffness [N]. */
    static final double MASS = 0.4;

    static final double EA = 2e6;
    static final double G = 9.80665;

    private Chains() {}

    /** A chain through points x, y, z, each segment as long as the distance over a stretch. */
    static LumpedMassChain through(double gravity, double stretch, double[]... points) {
        LumpedMassChain c = new LumpedMassChain(
                points.length + 4, MASS, gravity, new TensionStrainLaw(LoadElongation.linear(EA)), 1e-3);
        c.nodes = points.length;
        for (int i = 0; i < points.length; i++) {
            c.x[i] = points[i][0];
            c.y[i] = points[i][1];
            c.z[i] = points[i][2];
        }
        for (int j = 0; j < c.segments(); j++) {
            double dx = c.x[j + 1] - c.x[j];
            double dy = c.y[j + 1] - c.y[j];
            double dz = c.z[j + 1] - c.z[j];
            c.setLength(j, Math.sqrt(dx * dx + dy * dy + dz * dz) / stretch);
        }
        for (int i = 0; i < c.nodes; i++) {
            c.mobility[i] = 1 / c.mass(i);
        }
        ChainStep.geometry(c);
        return c;
    }

    /** A chain in space, a little crooked, with velocities, stretched by about a thousandth. */
    static LumpedMassChain crooked(long seed, int nodes, double gravity) {
        SplittableRandom r = new SplittableRandom(seed);
        double[][] points = new double[nodes][];
        for (int i = 0; i < nodes; i++) {
            points[i] = new double[] {i, r.nextDouble(-0.3, 0.3), r.nextDouble(-0.3, 0.3)};
        }
        LumpedMassChain c = through(gravity, 1.001, points);
        for (int j = 0; j < c.segments(); j++) {
            c.setLength(j, c.length[j] * (1 + r.nextDouble(-5e-4, 5e-4)));
        }
        for (int i = 0; i < nodes; i++) {
            c.mobility[i] = 1 / c.mass(i);
            c.vx[i] = r.nextDouble(-3, 3);
            c.vy[i] = r.nextDouble(-3, 3);
            c.vz[i] = r.nextDouble(-3, 3);
        }
        ChainStep.geometry(c);
        return c;
    }

    /** The part of a vector at a node along another one. */
    static double along(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    static double[] velocity(LumpedMassChain c, int node) {
        return new double[] {c.vx[node], c.vy[node], c.vz[node]};
    }

    static double[] predicted(LumpedMassChain c, int node) {
        return new double[] {c.wx[node], c.wy[node], c.wz[node]};
    }

    static double[] direction(LumpedMassChain c, int segment) {
        return new double[] {c.ux[segment], c.uy[segment], c.uz[segment]};
    }

    /** a + factor · b. */
    static double[] sum(double[] a, double factor, double[] b) {
        return new double[] {a[0] + factor * b[0], a[1] + factor * b[1], a[2] + factor * b[2]};
    }
}
