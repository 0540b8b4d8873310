package org.lifeline.analysis;

import java.util.function.DoubleUnaryOperator;

/**
 * A fall at the middle of a symmetric weightless line, as one ordinary differential equation, written down from geometry
 * alone: y is how far the worker is below where the subsystem was taut, δ(y) how far the line is down, and
 * m ÿ = m g − P(δ) with P(δ) = k (y − δ). Integrated by the classical Runge–Kutta method. Not thread-safe.
 */
final class WeightlessLine {
    private static final double G = 9.80665;
    private static final double STEP = 5e-4;

    private final double half;
    private final DoubleUnaryOperator tension;
    private double inward;
    private final double anchor;
    private final double installed;

    /** Results at the lowest point. */
    record Lowest(double time, double distance, double force, double tension) {}

    /**
     * A line.
     *
     * @param half half the loaded span [m]
     * @param anchor stiffness of its anchors along the line [N/m], infinite where rigid, and the tension that they hold as
     *     installed [N]
     * @param tension tension in the loaded span at the stretched length of half of it [N]
     */
    WeightlessLine(double half, double[] anchor, DoubleUnaryOperator tension) {
        this.half = half;
        this.anchor = anchor[0];
        this.installed = anchor[1];
        this.tension = tension;
    }

    /** Tension at a descent of the middle [N]; anchors give way until their springs agree. */
    private double tensionAt(double descent) {
        if (Double.isInfinite(anchor)) {
            return tension.applyAsDouble(Math.hypot(half, descent));
        }
        double low = -half / 2;
        double high = half / 2;
        double t = 0;
        for (int i = 0; i < 60; i++) {
            inward = 0.5 * (low + high);
            double leg = Math.hypot(half - inward, descent);
            t = tension.applyAsDouble(leg);
            double pull = t * (half - inward) / leg - installed;
            if (pull > anchor * inward) {
                low = inward;
            } else {
                high = inward;
            }
        }
        return t;
    }

    private double load(double descent) {
        if (descent <= 0) {
            return 0;
        }
        double t = tensionAt(descent);
        double run = Double.isInfinite(anchor) ? half : half - inward;
        return 2 * t * descent / Math.hypot(run, descent);
    }

    private double descent(double y, double stiffness) {
        double low = 0;
        double high = Math.max(y, 0);
        for (int i = 0; i < 60; i++) {
            double d = 0.5 * (low + high);
            if (load(d) > stiffness * (y - d)) {
                high = d;
            } else {
                low = d;
            }
        }
        return 0.5 * (low + high);
    }

    /**
     * Follows a fall to its lowest point.
     *
     * @param mass mass [kg]
     * @param stiffness stiffness of the lanyard [N/m]
     * @param freeFall free fall [m]
     */
    Lowest fall(double mass, double stiffness, double freeFall) {
        double y = 0;
        double v = Math.sqrt(2 * G * freeFall);
        double t = v / G;
        DoubleUnaryOperator acceleration = at -> G - stiffness * (at - descent(at, stiffness)) / mass;
        while (true) {
            double a1 = acceleration.applyAsDouble(y);
            double v2 = v + 0.5 * STEP * a1;
            double a2 = acceleration.applyAsDouble(y + 0.5 * STEP * v);
            double v3 = v + 0.5 * STEP * a2;
            double a3 = acceleration.applyAsDouble(y + 0.5 * STEP * v2);
            double v4 = v + STEP * a3;
            double a4 = acceleration.applyAsDouble(y + STEP * v3);
            double next = v + STEP / 6 * (a1 + 2 * a2 + 2 * a3 + a4);
            double move = STEP / 6 * (v + 2 * v2 + 2 * v3 + v4);
            if (next < 0) {
                double share = v / (v - next);
                double lowest = y + share * move;
                double d = descent(lowest, stiffness);
                return new Lowest(t + share * STEP, lowest, stiffness * (lowest - d), tensionAt(d));
            }
            y += move;
            v = next;
            t += STEP;
        }
    }
}
