package org.lifeline.internal.motion;

/**
 * The loops over a whole chain that make up a step. They are short, without branches, and each does one thing, because
 * that is what the compiler turns into vector instructions; longer loops over more arrays measured slower.
 *
 * <p>Damping along the cable couples the segments' forces D in a scalar tridiagonal system. With the material rate of
 * stretching r before the step and r′ after it, D = (EA τ/L)(θ r′ + (1 − θ) r), and r′ depends on D itself and on the
 * D of the two neighbours. θ above ½ makes stiff damping die out instead of ringing.
 */
final class ChainStep {
    private ChainStep() {}

    /** Directions, stretched lengths, elastic tensions. */
    static void geometry(LumpedMassChain c) {
        int n = c.nodes - 1;
        differences(n, c.x, c.ux);
        differences(n, c.y, c.uy);
        differences(n, c.z, c.uz);
        lengths(n, c.ux, c.uy, c.uz, c.stretched);
        inverses(n, c.stretched, c.factor);
        scale(n, c.factor, c.ux);
        scale(n, c.factor, c.uy);
        scale(n, c.factor, c.uz);
        stretch(n, c.law.stiffness, c.stretched, c.perLength, c.elastic);
        if (!c.law.linear) {
            bent(c, n);
        }
    }

    private static void bent(LumpedMassChain c, int n) {
        for (int j = 0; j < n; j++) {
            double e = c.stretched[j] * c.perLength[j] - 1;
            c.elastic[j] = c.law.tension(e);
            c.slope[j] = c.law.slope(e);
        }
    }

    /** Velocities after a kick by elastic forces and weight. */
    static void predict(LumpedMassChain c, double kick) {
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
        double px = t[0] * ux[0];
        double py = t[0] * uy[0];
        double pz = t[0] * uz[0];
        for (int i = 1; i < last; i++) {
            double a = kick * m[i];
            double f = t[i];
            double qx = f * ux[i];
            double qy = f * uy[i];
            double qz = f * uz[i];
            wx[i] = vx[i] + a * (qx - px);
            wy[i] = vy[i] + a * (qy - py);
            wz[i] = vz[i] + a * (qz - pz) - fall;
            px = qx;
            py = qy;
            pz = qz;
        }
    }

    /** The tridiagonal system of the damping forces, joints left out. */
    static void rows(LumpedMassChain c, double kick) {
        int n = c.nodes - 1;
        double implicit = NumericalParameters.DAMPING_WEIGHT * kick;
        rates(n, c.wx, c.vx, c.factor, c.partial);
        multiply(n, c.partial, c.ux, c.rate);
        rates(n, c.wy, c.vy, c.factor, c.partial);
        multiply(n, c.partial, c.uy, c.damping);
        add(n, c.damping, c.rate);
        rates(n, c.wz, c.vz, c.factor, c.partial);
        multiply(n, c.partial, c.uz, c.damping);
        add(n, c.damping, c.rate);
        soften(n, 1 / (c.law.stiffness * c.dampingTime), c.elastic, c.length, c.compliance);
        if (!c.law.linear) {
            for (int j = 0; j < n; j++) {
                if (c.elastic[j] > 0) {
                    c.compliance[j] = c.length[j] / (c.slope[j] * c.dampingTime);
                }
            }
        }
        diagonal(n, implicit, c.compliance, c.mobility, c.diagonal);
        System.arraycopy(c.mobility, 1, c.lower, 0, n - 1);
        System.arraycopy(c.ux, 1, c.factor, 0, n - 1);
        multiply(n - 1, c.ux, c.factor, c.upper);
        System.arraycopy(c.uy, 1, c.factor, 0, n - 1);
        multiply(n - 1, c.uy, c.factor, c.partial);
        add(n - 1, c.partial, c.upper);
        System.arraycopy(c.uz, 1, c.factor, 0, n - 1);
        multiply(n - 1, c.uz, c.factor, c.partial);
        add(n - 1, c.partial, c.upper);
        couple(n - 1, implicit, c.lower, c.upper);
        c.upper[n - 1] = 0;
        c.lower[0] = 0;
        System.arraycopy(c.upper, 0, c.lower, 1, n - 1);
    }

    private static void rates(int n, double[] after, double[] before, double[] mixed, double[] out) {
        mix(n + 1, after, before, mixed);
        differences(n, mixed, out);
    }

    /** Solves the tridiagonal system from both ends at once, so that two chains of divisions run side by side. */
    static void solve(LumpedMassChain c) {
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

    /** Tensions from elastic parts and damping; none below zero. */
    static void tensions(LumpedMassChain c) {
        pull(c.nodes - 1, c.elastic, c.damping, c.tension, c.excess);
    }

    /** Finds the largest tension. */
    static void findLargest(LumpedMassChain c) {
        double[] t = c.tension;
        int n = c.nodes - 1;
        double most = 0;
        for (int j = 0; j < n; j++) {
            most = Math.max(most, t[j]);
        }
        c.largest = most;
    }

    /**
     * Adds the damping forces to the velocities of the nodes that move freely.
     *
     * @return heat that the damping forces make there [J]
     */
    static double finish(LumpedMassChain c, double kick) {
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
        double px = d[0] * ux[0];
        double py = d[0] * uy[0];
        double pz = d[0] * uz[0];
        double power = 0;
        for (int i = 1; i < last; i++) {
            double a = kick * m[i];
            double f = d[i];
            double qx = f * ux[i];
            double qy = f * uy[i];
            double qz = f * uz[i];
            double nx = wx[i] + a * (qx - px);
            double ny = wy[i] + a * (qy - py);
            double nz = wz[i] + a * (qz - pz);
            if (a != 0) {
                power += (qx - px) * (nx + vx[i]) + (qy - py) * (ny + vy[i]) + (qz - pz) * (nz + vz[i]);
            }
            vx[i] = nx;
            vy[i] = ny;
            vz[i] = nz;
            px = qx;
            py = qy;
            pz = qz;
        }
        return -0.5 * kick * power;
    }

    /** Moves the nodes. */
    static void drift(LumpedMassChain c, double step) {
        int n = c.nodes;
        move(n, step, c.vx, c.x);
        move(n, step, c.vy, c.y);
        move(n, step, c.vz, c.z);
    }

    private static void differences(int n, double[] of, double[] out) {
        for (int j = 0; j < n; j++) {
            out[j] = of[j + 1] - of[j];
        }
    }

    private static void lengths(int n, double[] dx, double[] dy, double[] dz, double[] out) {
        for (int j = 0; j < n; j++) {
            // The tiny number keeps a segment that has folded up to nothing from dividing by it.
            out[j] = Math.sqrt(dx[j] * dx[j] + dy[j] * dy[j] + dz[j] * dz[j] + NumericalParameters.TINY_SQUARE);
        }
    }

    private static void inverses(int n, double[] of, double[] out) {
        for (int j = 0; j < n; j++) {
            out[j] = 1 / of[j];
        }
    }

    private static void scale(int n, double[] by, double[] out) {
        for (int j = 0; j < n; j++) {
            out[j] = out[j] * by[j];
        }
    }

    private static void multiply(int n, double[] a, double[] b, double[] out) {
        for (int j = 0; j < n; j++) {
            out[j] = a[j] * b[j];
        }
    }

    private static void add(int n, double[] a, double[] out) {
        for (int j = 0; j < n; j++) {
            out[j] = out[j] + a[j];
        }
    }

    private static void stretch(int n, double ea, double[] stretched, double[] per, double[] out) {
        for (int j = 0; j < n; j++) {
            out[j] = Math.max(0.0, ea * (stretched[j] * per[j] - 1));
        }
    }

    private static void mix(int n, double[] after, double[] before, double[] out) {
        for (int i = 0; i < n; i++) {
            out[i] = NumericalParameters.DAMPING_WEIGHT * after[i]
                    + (1 - NumericalParameters.DAMPING_WEIGHT) * before[i];
        }
    }

    private static void soften(int n, double soft, double[] elastic, double[] length, double[] out) {
        for (int j = 0; j < n; j++) {
            out[j] = elastic[j] > 0 ? length[j] * soft : NumericalParameters.SLACK_COMPLIANCE;
        }
    }

    private static void diagonal(int n, double implicit, double[] compliance, double[] m, double[] out) {
        for (int j = 0; j < n; j++) {
            out[j] = compliance[j] + implicit * (m[j] + m[j + 1]);
        }
    }

    private static void couple(int n, double implicit, double[] m, double[] out) {
        for (int j = 0; j < n; j++) {
            out[j] = implicit * m[j] * out[j];
        }
    }

    private static void pull(int n, double[] elastic, double[] damping, double[] tension, double[] excess) {
        for (int j = 0; j < n; j++) {
            double t = Math.max(0.0, elastic[j] + damping[j]);
            tension[j] = t;
            excess[j] = t - elastic[j];
        }
    }

    private static void move(int n, double step, double[] v, double[] x) {
        for (int i = 0; i < n; i++) {
            x[i] = x[i] + step * v[i];
        }
    }
}
