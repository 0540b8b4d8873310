package org.lifeline.internal.motion;

import java.util.Arrays;

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
        differences(n, c.z, c.uz);
        if (c.plane) {
            lengths(n, c.ux, c.uz, c.stretched);
        } else {
            differences(n, c.y, c.uy);
            lengths(n, c.ux, c.uy, c.uz, c.stretched);
        }
        inverses(n, c.stretched, c.factor);
        scale(n, c.factor, c.ux);
        if (!c.plane) {
            scale(n, c.factor, c.uy);
        }
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
        push(last, kick, c.mobility, c.elastic, c.ux, c.vx, c.wx);
        if (!c.plane) {
            push(last, kick, c.mobility, c.elastic, c.uy, c.vy, c.wy);
        }
        push(last, kick, c.mobility, c.elastic, c.uz, c.vz, c.wz);
        lower(last, kick * c.gravity, c.wz);
    }

    /** The tridiagonal system of the damping forces, joints left out. */
    static void rows(LumpedMassChain c, double kick) {
        int n = c.nodes - 1;
        double implicit = c.weight * kick;
        stretching(n, c.weight, c.wx, c.vx, c.ux, c.rate);
        cosines(n - 1, c.ux, c.upper);
        if (!c.plane) {
            addStretching(n, c.weight, c.wy, c.vy, c.uy, c.rate);
            addCosines(n - 1, c.uy, c.upper);
        }
        addStretching(n, c.weight, c.wz, c.vz, c.uz, c.rate);
        addCosines(n - 1, c.uz, c.upper);
        soften(n, 1 / (c.law.stiffness * c.dampingTime), c.elastic, c.length, c.compliance);
        if (!c.law.linear) {
            for (int j = 0; j < n; j++) {
                if (c.elastic[j] > 0) {
                    c.compliance[j] = c.length[j] / (c.slope[j] * c.dampingTime);
                }
            }
        }
        diagonal(n, implicit, c.compliance, c.mobility, c.diagonal);
        couple(n - 1, implicit, c.mobility, c.upper);
        c.upper[n - 1] = 0;
        c.lower[0] = 0;
        System.arraycopy(c.upper, 0, c.lower, 1, n - 1);
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
     * Adds the damping forces to the velocities of the nodes that move freely. The power of these forces on every node is left
     * in {@code partial}; that of nodes that joints move is none of it.
     */
    static void finish(LumpedMassChain c, double kick) {
        int last = c.nodes - 1;
        double[] power = c.partial;
        Arrays.fill(power, 0, last + 1, 0);
        settle(last, kick, c, c.ux, c.vx, c.wx);
        if (!c.plane) {
            settle(last, kick, c, c.uy, c.vy, c.wy);
        }
        settle(last, kick, c, c.uz, c.vz, c.wz);
    }

    private static void settle(int last, double kick, LumpedMassChain c, double[] u, double[] v, double[] w) {
        forces(last, c.excess, u, c.rate);
        add(last, kick, c.mobility, c.rate, w);
        work(last, c.rate, w, v, c.partial);
        System.arraycopy(w, 1, v, 1, last - 1);
    }

    /** Heat of a step from the power on every node [J]. */
    static double heat(LumpedMassChain c, double kick) {
        double[] p = c.partial;
        int last = c.nodes - 1;
        double a = 0;
        double b = 0;
        double d = 0;
        double e = 0;
        int i = 1;
        for (; i + 3 < last; i += 4) {
            a += p[i];
            b += p[i + 1];
            d += p[i + 2];
            e += p[i + 3];
        }
        for (; i < last; i++) {
            a += p[i];
        }
        return -0.5 * kick * (a + b + d + e);
    }

    /** Moves the nodes. */
    static void drift(LumpedMassChain c, double step) {
        int n = c.nodes;
        move(n, step, c.vx, c.x);
        if (!c.plane) {
            move(n, step, c.vy, c.y);
        }
        move(n, step, c.vz, c.z);
    }

    private static void push(int last, double kick, double[] m, double[] t, double[] u, double[] v, double[] w) {
        for (int i = 1; i < last; i++) {
            w[i] = v[i] + kick * m[i] * (t[i] * u[i] - t[i - 1] * u[i - 1]);
        }
    }

    private static void lower(int last, double speed, double[] w) {
        for (int i = 1; i < last; i++) {
            w[i] = w[i] - speed;
        }
    }

    private static void forces(int last, double[] d, double[] u, double[] out) {
        for (int i = 1; i < last; i++) {
            out[i] = d[i] * u[i] - d[i - 1] * u[i - 1];
        }
    }

    private static void add(int last, double kick, double[] m, double[] f, double[] w) {
        for (int i = 1; i < last; i++) {
            w[i] = w[i] + kick * m[i] * f[i];
        }
    }

    private static void work(int last, double[] f, double[] after, double[] before, double[] out) {
        for (int i = 1; i < last; i++) {
            out[i] = out[i] + f[i] * (after[i] + before[i]);
        }
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

    private static void lengths(int n, double[] dx, double[] dz, double[] out) {
        for (int j = 0; j < n; j++) {
            out[j] = Math.sqrt(dx[j] * dx[j] + dz[j] * dz[j] + NumericalParameters.TINY_SQUARE);
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

    private static void stretch(int n, double ea, double[] stretched, double[] per, double[] out) {
        for (int j = 0; j < n; j++) {
            out[j] = Math.max(0.0, ea * (stretched[j] * per[j] - 1));
        }
    }

    private static void stretching(int n, double weight, double[] after, double[] before, double[] u, double[] out) {
        for (int j = 0; j < n; j++) {
            out[j] = u[j] * (weight * (after[j + 1] - after[j]) + (1 - weight) * (before[j + 1] - before[j]));
        }
    }

    private static void addStretching(int n, double weight, double[] after, double[] before, double[] u, double[] out) {
        for (int j = 0; j < n; j++) {
            out[j] = out[j] + u[j] * (weight * (after[j + 1] - after[j]) + (1 - weight) * (before[j + 1] - before[j]));
        }
    }

    private static void cosines(int n, double[] u, double[] out) {
        for (int j = 0; j < n; j++) {
            out[j] = u[j] * u[j + 1];
        }
    }

    private static void addCosines(int n, double[] u, double[] out) {
        for (int j = 0; j < n; j++) {
            out[j] = out[j] + u[j] * u[j + 1];
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
            out[j] = implicit * m[j + 1] * out[j];
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
