package org.lifeline.internal.mechanics.motion;

import java.util.Arrays;

/**
 * The loops over a whole chain that make up a step. Each is a plain loop over arrays without a branch that depends on
 * the mesh, so that the compiler can do its work.
 *
 * <p>Damping along the cable couples the segments' forces D in a scalar tridiagonal system. With the material rate of
 * stretching r before the step and r′ after it, D = (EA τ/L)(θ r′ + (1 − θ) r), and r′ depends on D itself and on the
 * D of the two neighbours. θ above ½ makes stiff damping die out instead of ringing.
 */
final class ChainStep {
    /** Weight of the rate after the step in the damping force [-]. */
    static final double THETA = 0.6;

    private static final double SLACK = 1e30;

    private ChainStep() {}

    /** Directions, stretched lengths, elastic tensions. */
    static void geometry(Chain c) {
        int n = c.nodes - 1;
        double ea = c.law.stiffness;
        double[] x = c.x;
        double[] y = c.y;
        double[] z = c.z;
        double[] per = c.perLength;
        double[] ux = c.ux;
        double[] uy = c.uy;
        double[] uz = c.uz;
        double[] stretched = c.stretched;
        double[] elastic = c.elastic;
        for (int j = 0; j < n; j++) {
            double dx = x[j + 1] - x[j];
            double dy = y[j + 1] - y[j];
            double dz = z[j + 1] - z[j];
            // The tiny number keeps a segment that has folded up to nothing from dividing by it.
            double l = Math.sqrt(dx * dx + dy * dy + dz * dz + 1e-200);
            double inverse = 1 / l;
            ux[j] = dx * inverse;
            uy[j] = dy * inverse;
            uz[j] = dz * inverse;
            stretched[j] = l;
            elastic[j] = Math.max(0.0, ea * (l * per[j] - 1));
        }
        if (!c.law.linear) {
            bent(c, n);
        }
    }

    private static void bent(Chain c, int n) {
        for (int j = 0; j < n; j++) {
            double e = c.stretched[j] * c.perLength[j] - 1;
            c.elastic[j] = c.law.tension(e);
            c.slope[j] = c.law.slope(e);
        }
    }

    /** Velocities after a kick by elastic forces and weight. */
    static void predict(Chain c, double kick) {
        int last = c.nodes - 1;
        double fall = kick * c.gravity;
        double[] m = c.mobility;
        double[] t = c.elastic;
        double[] ux = c.ux;
        double[] uy = c.uy;
        double[] uz = c.uz;
        double[] vx = c.vx;
        double[] vy = c.vy;
        double[] vz = c.vz;
        double[] wx = c.wx;
        double[] wy = c.wy;
        double[] wz = c.wz;
        for (int i = 1; i < last; i++) {
            double a = kick * m[i];
            double t0 = t[i - 1];
            double t1 = t[i];
            wx[i] = vx[i] + a * (t1 * ux[i] - t0 * ux[i - 1]);
            wy[i] = vy[i] + a * (t1 * uy[i] - t0 * uy[i - 1]);
            wz[i] = vz[i] + a * (t1 * uz[i] - t0 * uz[i - 1]) - fall;
        }
    }

    /** The tridiagonal system of the damping forces, joints left out. */
    static void rows(Chain c, double kick) {
        int n = c.nodes - 1;
        double implicit = THETA * kick;
        double[] m = c.mobility;
        double[] ux = c.ux;
        double[] uy = c.uy;
        double[] uz = c.uz;
        double[] vx = c.vx;
        double[] vy = c.vy;
        double[] vz = c.vz;
        double[] wx = c.wx;
        double[] wy = c.wy;
        double[] wz = c.wz;
        double[] elastic = c.elastic;
        double[] length = c.length;
        double[] compliance = c.compliance;
        double[] diagonal = c.diagonal;
        double[] upper = c.upper;
        double[] lower = c.lower;
        double[] rate = c.rate;
        double soft = 1 / (c.law.stiffness * c.dampingTime);
        for (int j = 0; j < n; j++) {
            int k = j + 1;
            double dx = THETA * (wx[k] - wx[j]) + (1 - THETA) * (vx[k] - vx[j]);
            double dy = THETA * (wy[k] - wy[j]) + (1 - THETA) * (vy[k] - vy[j]);
            double dz = THETA * (wz[k] - wz[j]) + (1 - THETA) * (vz[k] - vz[j]);
            rate[j] = ux[j] * dx + uy[j] * dy + uz[j] * dz;
            compliance[j] = elastic[j] > 0 ? length[j] * soft : SLACK;
        }
        if (!c.law.linear) {
            for (int j = 0; j < n; j++) {
                if (elastic[j] > 0) {
                    compliance[j] = length[j] / (c.slope[j] * c.dampingTime);
                }
            }
        }
        for (int j = 0; j < n; j++) {
            diagonal[j] = compliance[j] + implicit * (m[j] + m[j + 1]);
        }
        for (int j = 0; j < n - 1; j++) {
            upper[j] = implicit * m[j + 1] * (ux[j] * ux[j + 1] + uy[j] * uy[j + 1] + uz[j] * uz[j + 1]);
        }
        upper[n - 1] = 0;
        lower[0] = 0;
        System.arraycopy(upper, 0, lower, 1, n - 1);
    }

    /** Solves the tridiagonal system from both ends at once, so that two chains of divisions run side by side. */
    static void solve(Chain c) {
        int n = c.nodes - 1;
        double[] diagonal = c.diagonal;
        double[] lower = c.lower;
        double[] upper = c.upper;
        double[] right = c.rate;
        double[] f = c.factor;
        double[] p = c.partial;
        double[] d = c.damping;
        int middle = n / 2;
        int pairs = n - 1 - middle;
        double f0 = 0;
        double p0 = 0;
        double f1 = 0;
        double p1 = 0;
        int a = 0;
        int b = n - 1;
        for (int k = 0; k < pairs; k++, a++, b--) {
            double la = lower[a];
            double ub = upper[b];
            double da = 1 / (diagonal[a] - la * f0);
            double db = 1 / (diagonal[b] - ub * f1);
            p0 = (right[a] + la * p0) * da;
            p1 = (right[b] + ub * p1) * db;
            f0 = upper[a] * da;
            f1 = lower[b] * db;
            f[a] = f0;
            p[a] = p0;
            f[b] = f1;
            p[b] = p1;
        }
        while (a < middle) {
            double la = lower[a];
            double da = 1 / (diagonal[a] - la * f0);
            p0 = (right[a] + la * p0) * da;
            f0 = upper[a] * da;
            f[a] = f0;
            p[a] = p0;
            a++;
        }
        double va = (right[middle] + lower[middle] * p0 + upper[middle] * p1)
                / (diagonal[middle] - lower[middle] * f0 - upper[middle] * f1);
        double vb = va;
        d[middle] = va;
        b = middle + 1;
        a = middle - 1;
        for (int k = 0; k < pairs; k++, a--, b++) {
            va = p[a] + f[a] * va;
            vb = p[b] + f[b] * vb;
            d[a] = va;
            d[b] = vb;
        }
        while (a >= 0) {
            va = p[a] + f[a] * va;
            d[a] = va;
            a--;
        }
    }

    /** Tensions from elastic parts and damping; none below zero. Returns the segment of the largest. */
    static int tensions(Chain c) {
        int n = c.nodes - 1;
        double[] elastic = c.elastic;
        double[] damping = c.damping;
        double[] tension = c.tension;
        double[] excess = c.excess;
        double most = -1;
        int where = 0;
        for (int j = 0; j < n; j++) {
            double t = Math.max(0.0, elastic[j] + damping[j]);
            tension[j] = t;
            excess[j] = t - elastic[j];
            if (t > most) {
                most = t;
                where = j;
            }
        }
        return where;
    }

    /** Without damping the tensions are the elastic ones. */
    static int undamped(Chain c) {
        Arrays.fill(c.damping, 0, c.nodes - 1, 0);
        return tensions(c);
    }

    /**
     * Adds the damping forces to the velocities.
     *
     * @return heat that the damping forces make at the nodes that move freely [J]
     */
    static double finish(Chain c, double kick) {
        int last = c.nodes - 1;
        double[] m = c.mobility;
        double[] d = c.excess;
        double[] ux = c.ux;
        double[] uy = c.uy;
        double[] uz = c.uz;
        double[] vx = c.vx;
        double[] vy = c.vy;
        double[] vz = c.vz;
        double[] wx = c.wx;
        double[] wy = c.wy;
        double[] wz = c.wz;
        double power = 0;
        for (int i = 1; i < last; i++) {
            double a = kick * m[i];
            double d0 = d[i - 1];
            double d1 = d[i];
            double fx = d1 * ux[i] - d0 * ux[i - 1];
            double fy = d1 * uy[i] - d0 * uy[i - 1];
            double fz = d1 * uz[i] - d0 * uz[i - 1];
            double nx = wx[i] + a * fx;
            double ny = wy[i] + a * fy;
            double nz = wz[i] + a * fz;
            if (a != 0) {
                power += fx * (nx + vx[i]) + fy * (ny + vy[i]) + fz * (nz + vz[i]);
            }
            vx[i] = nx;
            vy[i] = ny;
            vz[i] = nz;
        }
        return -0.5 * kick * power;
    }

    /** Moves the nodes. */
    static void drift(Chain c, double step) {
        int n = c.nodes;
        move(c.x, c.vx, n, step);
        move(c.y, c.vy, n, step);
        move(c.z, c.vz, n, step);
    }

    private static void move(double[] x, double[] v, int n, double step) {
        for (int i = 0; i < n; i++) {
            x[i] += step * v[i];
        }
    }
}
