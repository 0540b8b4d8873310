package org.lifeline.benchmarks;

/**
 * The bare cost of the arithmetic: a 2×2 Newton solve of the elastic catenary of one loaded level span, by the textbook
 * formulas, with no model, no checks and no allocation. Everything else is measured as a ratio to it.
 */
final class BareKernel {
    private static final double SPAN = 30;
    private static final double WEIGHT = 4;
    private static final double STIFFNESS = 5e6;
    private static final double LENGTH = SPAN * 1.002;
    private static final double RELATIVE = 1e-12;

    private double x;
    private double z;
    private double xx;
    private double xz;
    private double zz;

    /**
     * Solves a span under a load, from a cold start.
     *
     * @param load downward load [N]
     * @param share where it grips, as a share of the length [-]
     * @return horizontal tension [N]
     */
    double solve(double load, double share) {
        double left = share * LENGTH;
        double right = LENGTH - left;
        double h = coldTension(load, left, right);
        double v = -load * (1 - share) - WEIGHT * LENGTH / 2;
        for (int k = 0; k < 50; k++) {
            x = 0;
            z = 0;
            xx = 0;
            xz = 0;
            zz = 0;
            piece(h, v, left);
            piece(h, v + WEIGHT * left + load, right);
            double rx = SPAN - x;
            double rz = -z;
            double det = xx * zz - xz * xz;
            double dh = (zz * rx - xz * rz) / det;
            double dv = (xx * rz - xz * rx) / det;
            double limit = dh < -0.8 * h ? -0.8 * h / dh : 1;
            h += limit * dh;
            v += limit * dv;
            if (Math.abs(dh) + Math.abs(dv) < RELATIVE * (h + Math.abs(v))) {
                break;
            }
        }
        return h;
    }

    /** Horizontal tension of the weightless inextensible triangle with these legs. */
    private static double coldTension(double load, double left, double right) {
        double foot = (left * left - right * right + SPAN * SPAN) / (2 * SPAN);
        double depth = Math.sqrt(Math.max(left * left - foot * foot, 1e-12));
        return load * foot * (SPAN - foot) / (SPAN * depth);
    }

    private void piece(double h, double v1, double s) {
        double v2 = v1 + WEIGHT * s;
        double h2 = h * h;
        double t1 = Math.sqrt(h2 + v1 * v1);
        double t2 = Math.sqrt(h2 + v2 * v2);
        double sum = t1 + t2;
        double q = WEIGHT * s / sum;
        double a = 2 / WEIGHT * 0.5 * Math.log1p(2 * q / (1 - q));
        double bs = s / STIFFNESS;
        x += h * (a + bs);
        z += s * (v1 + v2) * (1 / sum + 0.5 / STIFFNESS);
        double b = (v2 / t2 - v1 / t1) / (WEIGHT * h2);
        xx += a - h2 * b + bs;
        xz += h / WEIGHT * (1 / t2 - 1 / t1);
        zz += h2 * b + bs;
    }
}
