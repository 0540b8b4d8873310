package org.lifeline.design.structure;

import java.util.Arrays;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;

/**
 * A second way to the statics of a cable under a load in any direction: elastic bars in space between two fixed points, weight
 * lumped at the joints, Newton's method on all coordinates with a dense solver of its own. Shares nothing with the library.
 */
final class BarChain {
    private final double ea;
    private final double[] lengths;
    private final double[][] x;
    private final double[][] loads;

    /**
     * A chain of two pieces.
     *
     * @param cable axial stiffness [N], weight per unstretched length [N/m]
     * @param ends first and second support, and a start for the loaded joint
     * @param pieces unstretched lengths of both pieces [m]
     * @param load force at the joint between the pieces [N]
     * @param bars bars a piece
     */
    BarChain(double[] cable, Point[] ends, double[] pieces, Vector3 load, int bars) {
        ea = cable[0];
        int n = 2 * bars;
        lengths = new double[n];
        x = new double[n + 1][];
        loads = new double[n + 1][3];
        for (int i = 0; i < n; i++) {
            lengths[i] = pieces[i / bars] / bars;
            loads[i][2] -= cable[1] * lengths[i] / 2;
            loads[i + 1][2] -= cable[1] * lengths[i] / 2;
        }
        loads[bars][0] += load.x();
        loads[bars][1] += load.y();
        loads[bars][2] += load.z();
        for (int i = 0; i <= n; i++) {
            Point a = i <= bars ? ends[0] : ends[2];
            Point b = i <= bars ? ends[2] : ends[1];
            double t = (i <= bars ? i : i - bars) / (double) bars;
            x[i] = new double[] {a.x() + t * (b.x() - a.x()), a.y() + t * (b.y() - a.y()), a.z() + t * (b.z() - a.z())};
        }
    }

    /** Solves, and gives the force on the first and on the second support. */
    Vector3[] reactions() {
        int inner = lengths.length - 1;
        int size = 3 * inner;
        for (int iteration = 0; iteration < 200; iteration++) {
            double[] r = new double[size];
            double[][] k = new double[size][size];
            for (int j = 1; j <= inner; j++) {
                for (int c = 0; c < 3; c++) {
                    r[3 * (j - 1) + c] = loads[j][c];
                }
            }
            for (int e = 0; e < lengths.length; e++) {
                bar(e, r, k);
            }
            double most = Arrays.stream(r).map(Math::abs).max().orElse(0);
            if (most < 1e-7) {
                return new Vector3[] {force(0), force(lengths.length)};
            }
            double[] step = solve(k, r);
            double longest = Arrays.stream(step).map(Math::abs).max().orElse(0);
            double scale = Math.min(1, 0.2 / longest);
            for (int i = 0; i < size; i++) {
                x[i / 3 + 1][i % 3] += scale * step[i];
            }
        }
        throw new IllegalStateException("the chain did not settle");
    }

    private double[] bar(int e) {
        double[] d = new double[4];
        for (int c = 0; c < 3; c++) {
            d[c] = x[e + 1][c] - x[e][c];
        }
        d[3] = Math.sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
        return d;
    }

    private void bar(int e, double[] r, double[][] k) {
        double[] d = bar(e);
        double t = ea * (d[3] / lengths[e] - 1);
        for (int a = 0; a < 3; a++) {
            for (int side = 0; side < 2; side++) {
                int at = e + side;
                if (at >= 1 && at < lengths.length) {
                    r[3 * (at - 1) + a] += (side == 0 ? t : -t) * d[a] / d[3];
                }
            }
            for (int b = 0; b < 3; b++) {
                double n = d[a] * d[b] / (d[3] * d[3]);
                double value = ea / lengths[e] * n + t / d[3] * ((a == b ? 1 : 0) - n);
                for (int i = 0; i < 2; i++) {
                    for (int j = 0; j < 2; j++) {
                        int p = e + i;
                        int q = e + j;
                        if (p >= 1 && p < lengths.length && q >= 1 && q < lengths.length) {
                            k[3 * (p - 1) + a][3 * (q - 1) + b] += i == j ? value : -value;
                        }
                    }
                }
            }
        }
    }

    private Vector3 force(int support) {
        int e = support == 0 ? 0 : lengths.length - 1;
        double[] d = bar(e);
        double t = ea * (d[3] / lengths[e] - 1) / d[3] * (support == 0 ? 1 : -1);
        return new Vector3(t * d[0] + loads[support][0], t * d[1] + loads[support][1], t * d[2] + loads[support][2]);
    }

    private static double[] solve(double[][] m, double[] r) {
        int n = r.length;
        double[] b = r.clone();
        for (int i = 0; i < n; i++) {
            int p = i;
            for (int j = i + 1; j < n; j++) {
                p = Math.abs(m[j][i]) > Math.abs(m[p][i]) ? j : p;
            }
            double[] row = m[i];
            m[i] = m[p];
            m[p] = row;
            double v = b[i];
            b[i] = b[p];
            b[p] = v;
            for (int j = i + 1; j < n; j++) {
                double f = m[j][i] / m[i][i];
                for (int c = i; c < n && f != 0; c++) {
                    m[j][c] -= f * m[i][c];
                }
                b[j] -= f * b[i];
            }
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int c = i + 1; c < n; c++) {
                b[i] -= m[i][c] * b[c];
            }
            b[i] /= m[i][i];
        }
        return b;
    }
}
