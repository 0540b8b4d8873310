package org.lifeline.analysis;

import java.util.function.DoubleUnaryOperator;

/**
 * A weightless elastic cable of one span, pulled down at one point: two straight legs, everything in closed form or by
 * bisection of one monotone function. The independent way beside the solver.
 *
 * <p>run and rise of the chord, unstretched length S, stiffness EA. The point of the load is a material point at the
 * share a of S from the start (gripped), or runs to where both legs have the same slope (free-running).
 */
final class StraightLegs {
    private final double run;
    private final double rise;
    private final double length;
    private final double stiffness;

    StraightLegs(double run, double rise, double length, double stiffness) {
        this.run = run;
        this.rise = rise;
        this.length = length;
        this.stiffness = stiffness;
    }

    /** What the cable does under a force. */
    record Shape(double x, double drop, double firstTension, double lastTension, double energy) {}

    /** Free-running: T = EA(l/S − 1), cos β = run/l, P = 2 T sin β, both legs at β below the horizontal. */
    Shape running(double force) {
        double chord = Math.hypot(run, rise);
        double l = solve(
                x -> 2 * tension(x, length) * Math.sqrt(1 - run * run / (x * x)) - force,
                Math.max(chord, length),
                1e3 * chord);
        double sin = Math.sqrt(1 - run * run / (l * l));
        double first = 0.5 * (l - rise / sin);
        double t = tension(l, length);
        return new Shape(first * run / l, first * sin, t, t, t * t * length / (2 * stiffness));
    }

    /** Gripped at the share a: two legs of S a and S (1 − a), equal horizontal tension. */
    Shape gripped(double force, double a) {
        double low = 0;
        double high = run;
        double x = 0;
        double drop = 0;
        // Outer bisection on the horizontal place, inner on the drop by the vertical balance.
        for (int k = 0; k < 200; k++) {
            x = 0.5 * (low + high);
            double at = x;
            drop = solve(d -> vertical(at, d, a) - force, -3 * run - Math.abs(rise), 30 * run + Math.abs(rise));
            if (horizontal(at, drop, a) > 0) {
                high = x;
            } else {
                low = x;
            }
        }
        double t1 = tension(Math.hypot(x, drop), a * length);
        double t2 = tension(Math.hypot(run - x, drop + rise), (1 - a) * length);
        double energy = (t1 * t1 * a + t2 * t2 * (1 - a)) * length / (2 * stiffness);
        return new Shape(x, drop, t1, t2, energy);
    }

    private double vertical(double x, double drop, double a) {
        double l1 = Math.hypot(x, drop);
        double l2 = Math.hypot(run - x, drop + rise);
        return tension(l1, a * length) * drop / l1 + tension(l2, (1 - a) * length) * (drop + rise) / l2;
    }

    /** Pull toward the start less pull toward the end: positive when the point is too far along. */
    private double horizontal(double x, double drop, double a) {
        double l1 = Math.hypot(x, drop);
        double l2 = Math.hypot(run - x, drop + rise);
        return tension(l1, a * length) * x / l1 - tension(l2, (1 - a) * length) * (run - x) / l2;
    }

    private double tension(double stretched, double unstretched) {
        return Math.max(0, stiffness * (stretched / unstretched - 1));
    }

    /** Root of a rising function. */
    static double solve(DoubleUnaryOperator f, double low, double high) {
        double a = low;
        double b = high;
        for (int k = 0; k < 200; k++) {
            double m = 0.5 * (a + b);
            if (f.applyAsDouble(m) > 0) {
                b = m;
            } else {
                a = m;
            }
        }
        return 0.5 * (a + b);
    }
}
