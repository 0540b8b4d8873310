package org.lifeline.internal.motion;

import java.util.Arrays;
import org.lifeline.internal.numeric.OrderedWork;

/**
 * Histories of a motion at (nearly) equal intervals of time: one array a quantity.
 *
 * <p>Room for all samples is made at the start. Not thread-safe.
 */
public final class TimeHistory {
    /** Quantities of a worker: force, extension, position of the harness attachment, position of the attachment. */
    private static final int PER_BODY = 8;

    /** Quantities of a support: tension before and behind, slip, force of the line on it, its displacement. */
    private static final int PER_SUPPORT = 9;

    private final double interval;
    private final double[] times;
    private final double[][] body;
    private final double[][] support;
    private final double[][] inline;
    private final double[][] energy;
    private final double[] parts = new double[MotionState.Energy.PARTS];
    private int samples;
    private double next;

    TimeHistory(double duration, double interval, int bodies, int supports) {
        this.interval = interval;
        int room = (int) Math.ceil(duration / interval) + 3;
        times = new double[room];
        body = columns(PER_BODY * bodies, room);
        support = columns(PER_SUPPORT * supports, room);
        inline = columns(2, room);
        energy = columns(MotionState.Energy.PARTS, room);
    }

    /**
     * Columns of a history. On a line of thousands of supports they take gigabytes and a second or more, so an interrupt is
     * looked for at each.
     */
    private static double[][] columns(int number, int room) {
        double[][] columns = new double[number][];
        for (int i = 0; i < number; i++) {
            OrderedWork.stopIfInterrupted();
            columns[i] = new double[room];
        }
        return columns;
    }

    /** Tells whether a sample is due. */
    boolean due(double time) {
        return time >= next && samples < times.length;
    }

    /** Takes a sample after a kick. */
    void sample(MotionSystem s) {
        int i = samples++;
        times[i] = s.time;
        for (int k = 0; k < s.bodies.length; k++) {
            FallingBody b = s.bodies[k];
            int node = b.joint.node;
            int at = PER_BODY * k;
            body[at][i] = b.force;
            body[at + 1][i] = Math.max(0, b.extension);
            body[at + 2][i] = b.x;
            body[at + 3][i] = b.y;
            body[at + 4][i] = b.z;
            body[at + 5][i] = s.chain.x[node];
            body[at + 6][i] = s.chain.y[node];
            body[at + 7][i] = s.chain.z[node];
        }
        for (int k = 0; k < s.anchors.length; k++) {
            SupportJoint a = s.anchors[k];
            int at = PER_SUPPORT * k;
            support[at][i] = a.hasBefore() ? s.chain.tension[a.node - 1] : 0;
            support[at + 1][i] = a.hasBehind() ? s.chain.tension[a.node] : 0;
            support[at + 2][i] = a.passed;
            for (int c = 0; c < 3; c++) {
                support[at + 3 + c][i] = a.reaction(c);
                support[at + 6 + c][i] = a.displacement(c);
            }
        }
        for (int e = 0; e < 2; e++) {
            InlineElement at = s.inline[e];
            inline[e][i] = at == null ? 0 : at.extension;
        }
        s.energies(parts);
        for (int k = 0; k < parts.length; k++) {
            energy[k][i] = parts[k];
        }
        next = s.time + interval * (1 - NumericalParameters.SAMPLING_ROUNDING);
    }

    /**
     * Puts the free fall before the first catch in front of the first sample: nothing moves but those who fall.
     *
     * @param s the system at its first sample
     * @param until time of that sample [s]
     */
    void prepend(MotionSystem s, double until) {
        int n = (int) Math.floor(until / interval - NumericalParameters.SAMPLING_ROUNDING) + 1;
        if (until <= 0 || samples != 1 || n + 1 > times.length) {
            return;
        }
        double g = s.chain.gravity;
        for (double[] each : all()) {
            Arrays.fill(each, 0, n + 1, each[0]);
        }
        times[n] = times[0];
        for (int i = 0; i < n; i++) {
            double t = i * interval;
            times[i] = t;
            double motion = 0;
            double weight = 0;
            for (int k = 0; k < s.bodies.length; k++) {
                FallingBody b = s.bodies[k];
                double z = b.z;
                if (b.falling() && b.start > Double.NEGATIVE_INFINITY) {
                    double gone = Math.max(0, t - b.start);
                    z = b.startZ - 0.5 * g * gone * gone;
                    motion += 0.5 * b.mass * g * g * gone * gone;
                    body[PER_BODY * k + 4][i] = z;
                }
                weight += b.mass * g * z;
            }
            energy[MotionState.Energy.WORKER_MOTION][i] = motion;
            energy[MotionState.Energy.WORKER_WEIGHT][i] = weight;
        }
        samples = n + 1;
    }

    private double[][] all() {
        double[][] list = new double[body.length + support.length + inline.length + energy.length][];
        int at = 0;
        for (double[][] group : new double[][][] {body, support, inline, energy}) {
            for (double[] each : group) {
                list[at++] = each;
            }
        }
        return list;
    }

    private double[] cut(double[] a) {
        return Arrays.copyOf(a, samples);
    }

    /**
     * Number of samples.
     *
     * @return the number so far
     */
    public int samples() {
        return samples;
    }

    /**
     * Times of the samples.
     *
     * @return times [s]
     */
    public double[] times() {
        return cut(times);
    }

    /**
     * A quantity of a worker.
     *
     * @param number the worker
     * @param quantity 0 force [N], 1 extension [m], 2 … 4 position, 5 … 7 position of the attachment [m]
     * @return its history
     */
    public double[] body(int number, int quantity) {
        return cut(body[PER_BODY * number + quantity]);
    }

    /**
     * A quantity of a support.
     *
     * @param number the support
     * @param quantity 0, 1 tension before and behind [N], 2 slip toward the end [m], 3 … 5 force on it [N], 6 … 8
     *     displacement [m]
     * @return its history
     */
    public double[] support(int number, int quantity) {
        return cut(support[PER_SUPPORT * number + quantity]);
    }

    /**
     * Extension of an in-line absorber.
     *
     * @param end 0 or 1
     * @return its history [m]
     */
    public double[] inline(int end) {
        return cut(inline[end]);
    }

    /**
     * A part of the energy account.
     *
     * @param part see {@link MotionState.Energy}
     * @return its history [J]
     */
    public double[] energy(int part) {
        return cut(energy[part]);
    }
}
