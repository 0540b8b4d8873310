package org.lifeline.verify;

import org.lifeline.base.Vector3;

/** Measures of error. */
final class Deviation {
    private Deviation() {}

    /** Difference of two magnitudes relative to the larger [-]. */
    static double difference(Vector3 a, Vector3 b) {
        double most = Math.max(a.magnitude(), b.magnitude());
        return Math.abs(a.magnitude() - b.magnitude()) / most;
    }

    /** By how much a value exceeds a bound; 0 when it does not, NaN when one is not a number. */
    static double over(double value, double bound) {
        double excess = value - bound;
        return excess <= 0 ? 0 : excess;
    }
}
