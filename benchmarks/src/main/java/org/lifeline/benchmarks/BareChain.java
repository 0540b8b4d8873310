package org.lifeline.benchmarks;

/**
 * The bare cost of a step: a taut chain of lumped masses in space between two fixed ends, tension-only segments with
 * explicit damping, by the leapfrog scheme; no joints, no worker, no material that passes, no mesh that changes, no
 * account of energy. What the simulation of a line costs is measured as a ratio to it.
 */
final class BareChain {
    private static final double STIFFNESS = 4.9e6;
    private static final double MASS = 0.57;
    private static final double DAMPING = 1e-5;
    private static final double GRAVITY = 9.80665;
    private static final double SPAN = 30;

    private final int n;
    private final double[] x;
    private final double[] y;
    private final double[] z;
    private final double[] vx;
    private final double[] vy;
    private final double[] vz;
    private final double[] fx;
    private final double[] fy;
    private final double[] fz;
    private final double length;
    private final double kick;

    /**
     * A chain.
     *
     * @param segments number of segments
     */
    BareChain(int segments) {
        n = segments;
        x = new double[n + 1];
        y = new double[n + 1];
        z = new double[n + 1];
        vx = new double[n + 1];
        vy = new double[n + 1];
        vz = new double[n + 1];
        fx = new double[n];
        fy = new double[n];
        fz = new double[n];
        for (int i = 0; i <= n; i++) {
            x[i] = SPAN * i / n;
            z[i] = -0.3 * Math.sin(Math.PI * i / n);
        }
        length = SPAN / n * 0.9995;
        kick = 0.5 * length * Math.sqrt(MASS / STIFFNESS);
    }

    /**
     * Goes on.
     *
     * @param steps number of steps
     * @return elevation of the middle [m]
     */
    double run(int steps) {
        for (int k = 0; k < steps; k++) {
            forces();
            move();
        }
        return z[n / 2];
    }

    private void forces() {
        double perLength = 1 / length;
        for (int j = 0; j < n; j++) {
            double dx = x[j + 1] - x[j];
            double dy = y[j + 1] - y[j];
            double dz = z[j + 1] - z[j];
            double per = 1 / Math.sqrt(dx * dx + dy * dy + dz * dz);
            double rate = (dx * (vx[j + 1] - vx[j]) + dy * (vy[j + 1] - vy[j]) + dz * (vz[j + 1] - vz[j])) * per;
            double strain = 1 / (per * length) - 1;
            double t = strain > 0 ? Math.max(0.0, STIFFNESS * (strain + DAMPING * rate * perLength)) : 0;
            double f = t * per;
            fx[j] = f * dx;
            fy[j] = f * dy;
            fz[j] = f * dz;
        }
    }

    private void move() {
        double a = kick / (MASS * length);
        double fall = kick * GRAVITY;
        for (int i = 1; i < n; i++) {
            vx[i] += a * (fx[i] - fx[i - 1]);
            vy[i] += a * (fy[i] - fy[i - 1]);
            vz[i] += a * (fz[i] - fz[i - 1]) - fall;
            x[i] += kick * vx[i];
            y[i] += kick * vy[i];
            z[i] += kick * vz[i];
        }
    }
}
