package org.lifeline.benchmarks;

import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.lifeline.internal.motion.MotionState;

/**
 * The single span of {@link Motions#singleSpan} as ordinary differential equations of the first order, from the same
 * nodes at rest: for integrators of general purpose. State: positions of the inner nodes and of the worker, then their
 * velocities. The forces are those of the simulation: T = EA (ε + τ dε/dt), nothing below zero, a lanyard that only pulls.
 */
final class Bounce implements FirstOrderDifferentialEquations {
    static final double SPAN = 12;
    static final double MASS_PER_LENGTH = 0.57;
    static final double STIFFNESS = 4.9e6;
    static final double LANYARD_STIFFNESS = 6e4;
    private static final double GRAVITY = 9.80665;

    private final int nodes;
    private final int attachment;
    private final double[] length;
    private final double[] mass;
    private final double[] start;
    private final double[] x;
    private final double[] v;
    private final double[] force;

    /** Largest force of the lanyard in an accepted state so far [N]. */
    private double peak;

    /** Number of evaluations of the forces. */
    private long evaluations;

    /**
     * The equations on the mesh of a motion that has not begun.
     *
     * @param at the nodes at rest
     * @param segments number of segments
     */
    Bounce(MotionState at, int segments) {
        nodes = segments + 1;
        attachment = at.attachmentNode(0);
        length = new double[segments];
        mass = new double[nodes];
        for (int j = 0; j < segments; j++) {
            length[j] = at.length(j);
            mass[j] += 0.5 * MASS_PER_LENGTH * length[j];
            mass[j + 1] += 0.5 * MASS_PER_LENGTH * length[j];
        }
        x = new double[3 * (nodes + 1)];
        v = new double[3 * (nodes + 1)];
        force = new double[3 * (nodes + 1)];
        for (int i = 0; i < nodes; i++) {
            for (int c = 0; c < 3; c++) {
                x[3 * i + c] = at.position(i, c);
            }
        }
        for (int c = 0; c < 3; c++) {
            x[3 * nodes + c] = at.position(attachment, c);
        }
        x[3 * nodes + 2] -= Motions.tautLength();
        v[3 * nodes + 2] = -Motions.catchSpeed(GRAVITY);
        start = new double[getDimension()];
        System.arraycopy(x, 3, start, 0, half() - 3);
        System.arraycopy(x, 3 * nodes, start, half() - 3, 3);
        System.arraycopy(v, 3 * nodes, start, 2 * half() - 3, 3);
    }

    private int half() {
        return 3 * (nodes - 1);
    }

    @Override
    public int getDimension() {
        return 2 * half();
    }

    /** The state at the catch. */
    double[] start() {
        return start.clone();
    }

    /** Number of evaluations so far. */
    long evaluations() {
        return evaluations;
    }

    /** Largest force of the lanyard that was kept [N]. */
    double peak() {
        return peak;
    }

    /** Keeps the force of the lanyard in a state that was accepted. */
    void keep(double[] state) {
        scatter(state);
        peak = Math.max(peak, lanyard());
    }

    /** How much longer than taut the lanyard is [m]. */
    double stretch(double[] state) {
        scatter(state);
        double dx = x[3 * nodes] - x[3 * attachment];
        double dy = x[3 * nodes + 1] - x[3 * attachment + 1];
        double dz = x[3 * nodes + 2] - x[3 * attachment + 2];
        return Math.sqrt(dx * dx + dy * dy + dz * dz) - Motions.tautLength();
    }

    private void scatter(double[] state) {
        System.arraycopy(state, 0, x, 3, half() - 3);
        System.arraycopy(state, half() - 3, x, 3 * nodes, 3);
        System.arraycopy(state, half(), v, 3, half() - 3);
        System.arraycopy(state, 2 * half() - 3, v, 3 * nodes, 3);
    }

    @Override
    public void computeDerivatives(double t, double[] state, double[] rate) {
        evaluations++;
        scatter(state);
        for (int i = 1; i < nodes - 1; i++) {
            force[3 * i] = 0;
            force[3 * i + 1] = 0;
            force[3 * i + 2] = -mass[i] * GRAVITY;
        }
        for (int j = 0; j < nodes - 1; j++) {
            segment(j);
        }
        force[3 * nodes] = 0;
        force[3 * nodes + 1] = 0;
        force[3 * nodes + 2] = -Motions.mass() * GRAVITY;
        lanyard();
        int at = half();
        System.arraycopy(state, at, rate, 0, at);
        for (int i = 1; i < nodes - 1; i++) {
            rate[at++] = force[3 * i] / mass[i];
            rate[at++] = force[3 * i + 1] / mass[i];
            rate[at++] = force[3 * i + 2] / mass[i];
        }
        rate[at++] = force[3 * nodes] / Motions.mass();
        rate[at++] = force[3 * nodes + 1] / Motions.mass();
        rate[at] = force[3 * nodes + 2] / Motions.mass();
    }

    private void segment(int j) {
        int a = 3 * j;
        int b = a + 3;
        double dx = x[b] - x[a];
        double dy = x[b + 1] - x[a + 1];
        double dz = x[b + 2] - x[a + 2];
        double per = 1 / Math.sqrt(dx * dx + dy * dy + dz * dz);
        double strain = 1 / (per * length[j]) - 1;
        if (strain <= 0) {
            return;
        }
        double speed = (dx * (v[b] - v[a]) + dy * (v[b + 1] - v[a + 1]) + dz * (v[b + 2] - v[a + 2])) * per;
        double t = Math.max(0, STIFFNESS * (strain + Motions.DAMPING * speed / length[j])) * per;
        force[a] += t * dx;
        force[a + 1] += t * dy;
        force[a + 2] += t * dz;
        force[b] -= t * dx;
        force[b + 1] -= t * dy;
        force[b + 2] -= t * dz;
    }

    /** Adds the pull of the lanyard, and returns it [N]. */
    private double lanyard() {
        int a = 3 * attachment;
        int b = 3 * nodes;
        double dx = x[b] - x[a];
        double dy = x[b + 1] - x[a + 1];
        double dz = x[b + 2] - x[a + 2];
        double d = Math.sqrt(dx * dx + dy * dy + dz * dz);
        double f = Math.max(0, LANYARD_STIFFNESS * (d - Motions.tautLength()));
        force[a] += f * dx / d;
        force[a + 1] += f * dy / d;
        force[a + 2] += f * dz / d;
        force[b] -= f * dx / d;
        force[b + 1] -= f * dy / d;
        force[b + 2] -= f * dz / d;
        return f;
    }
}
