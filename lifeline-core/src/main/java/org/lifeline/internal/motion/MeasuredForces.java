package org.lifeline.internal.motion;

import org.lifeline.internal.motion.peak.LowPassFilters;

/** The forces that a laboratory would record, through its low-pass filter. Mutable, not thread-safe. */
final class MeasuredForces {
    private final LowPassFilters filters;
    private final int bodies;
    private final int supports;
    private final double[] support;
    private double last = Double.NaN;

    MeasuredForces(int bodies, int supports) {
        this.bodies = bodies;
        this.supports = supports;
        support = new double[supports];
        filters = new LowPassFilters(LowPassFilters.LABORATORY, 1 + bodies + 3 * supports);
    }

    /** Takes the forces after a kick. */
    void record(MotionSystem s) {
        double step = s.time - last;
        filters.step(step);
        filters.take(0, s.chain.largest);
        for (int k = 0; k < bodies; k++) {
            filters.take(1 + k, s.bodies[k].force);
        }
        for (int i = 0; i < supports; i++) {
            int at = 1 + bodies + 3 * i;
            for (int axis = 0; axis < 3; axis++) {
                filters.take(at + axis, s.anchors[i].reaction(axis));
            }
            double x = filters.value(at);
            double y = filters.value(at + 1);
            double z = filters.value(at + 2);
            support[i] = Math.sqrt(x * x + y * y + z * z);
        }
        filters.start();
        last = s.time;
    }

    /** Largest tension in the cable [N]. */
    double tension() {
        return filters.value(0);
    }

    /** Force in the subsystem of a worker [N]. */
    double force(int body) {
        return filters.value(1 + body);
    }

    /** Magnitude of the force of the line on a support [N]. */
    double support(int number) {
        return support[number];
    }
}
