package org.lifeline.benchmarks;

import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealVector;

/**
 * What an engineer would otherwise script with Commons Math for the span of the bare kernel: the textbook equations,
 * Newton's method with a Jacobian by differences and a dense LU decomposition, and Brent's method for the force at which
 * a fall is arrested.
 */
final class ScriptedSpan {
    private static final double SPAN = 30;
    private static final double WEIGHT = 4;
    private static final double STIFFNESS = 5e6;
    private static final double LENGTH = SPAN * 1.002;
    private static final double GRAVITY = 9.80665;

    /**
     * Tension vector at the start under a load at rest.
     *
     * @param load downward load [N]
     * @param left unstretched length before the load [m]
     * @return horizontal and vertical component [N]
     */
    double[] solve(double load, double left) {
        double slack = LENGTH - SPAN;
        double sag = Math.sqrt(0.75 * slack * SPAN / 2);
        double h = (load / 4 + WEIGHT * SPAN / 8) * SPAN / sag;
        double[] x = {h, -load * (1 - left / LENGTH) - WEIGHT * LENGTH / 2};
        for (int k = 0; k < 100; k++) {
            double[] r = misfit(x, load, left);
            double[][] j = new double[2][2];
            for (int c = 0; c < 2; c++) {
                double step = 1e-6 * Math.max(Math.abs(x[c]), 1);
                double[] moved = x.clone();
                moved[c] += step;
                double[] q = misfit(moved, load, left);
                j[0][c] = (q[0] - r[0]) / step;
                j[1][c] = (q[1] - r[1]) / step;
            }
            RealVector d = new LUDecomposition(new Array2DRowRealMatrix(j, false))
                    .getSolver()
                    .solve(new ArrayRealVector(r, false));
            double share = d.getEntry(0) > 0.8 * x[0] ? 0.8 * x[0] / d.getEntry(0) : 1;
            x[0] -= share * d.getEntry(0);
            x[1] -= share * d.getEntry(1);
            if (share == 1 && d.getNorm() < 1e-11 * Math.hypot(x[0], x[1])) {
                break;
            }
        }
        return x;
    }

    private static double[] misfit(double[] t, double load, double left) {
        double[] end = new double[2];
        piece(t[0], t[1], left, end);
        piece(t[0], t[1] + WEIGHT * left + load, LENGTH - left, end);
        return new double[] {end[0] - SPAN, end[1]};
    }

    private static void piece(double h, double v, double s, double[] end) {
        double a = v / h;
        double b = (v + WEIGHT * s) / h;
        end[0] += h * s / STIFFNESS + h / WEIGHT * (asinh(b) - asinh(a));
        end[1] += s / STIFFNESS * (v + WEIGHT * s / 2) + h / WEIGHT * (Math.sqrt(1 + b * b) - Math.sqrt(1 + a * a));
    }

    private static double asinh(double x) {
        return Math.log(x + Math.sqrt(x * x + 1));
    }

    /** Depth of the point that grips the cable at an unstretched length from the start [m]. */
    private double depth(double load, double left) {
        double[] t = solve(load, left);
        double[] end = new double[2];
        piece(t[0], t[1], left, end);
        return -end[1];
    }

    /** The unstretched length at which the unloaded cable hangs at a station [m]. */
    private double coordinate(double station) {
        double[] t = solve(0, LENGTH / 2);
        return new BrentSolver(1e-13, 1e-13)
                .solve(
                        200,
                        s -> {
                            double[] end = new double[2];
                            piece(t[0], t[1], s, end);
                            return end[0] - station;
                        },
                        0,
                        LENGTH);
    }

    /**
     * Force at which a fall on a lanyard without an absorber is arrested: Brent's method on the energy balance, the
     * work done on the line by Simpson's rule over its deflection.
     *
     * @param station where the lanyard is hooked on [m]
     * @param mass mass [kg]
     * @param drop free fall [m]
     * @param stiffness stiffness of the lanyard [N/m]
     * @return force [N]
     */
    double arrest(double station, double mass, double drop, double stiffness) {
        double left = coordinate(station);
        double start = depth(0, left);
        return new BrentSolver(1e-10, 1e-8)
                .solve(
                        200,
                        p -> {
                            double down = depth(p, left) - start;
                            // ∫P dδ = P δ − ∫δ dP
                            int n = 64;
                            double sum = 0;
                            for (int i = 0; i <= n; i++) {
                                double weight = i == 0 || i == n ? 1 : i % 2 == 1 ? 4 : 2;
                                sum += weight * (depth(p * i / n, left) - start);
                            }
                            double work = p * down - sum * p / n / 3;
                            return mass * GRAVITY * (drop + down + p / stiffness) - work - p * p / (2 * stiffness);
                        },
                        mass * GRAVITY,
                        30_000);
    }
}
