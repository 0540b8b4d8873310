package org.lifeline.analysis.motion;

/**
 * Where the energy is in time. Every part counts from the start of the fall; together they stay at zero but for the drift
 * of the integration.
 *
 * <p>Immutable and thread-safe.
 */
public final class EnergyHistory {
    private final double[][] parts;

    /** The parts of the account. */
    public enum Part {
        /** Kinetic energy of the cable. */
        CABLE_MOTION,
        /** Kinetic energy of the workers. */
        WORKER_MOTION,
        /** Strain energy of the cable. */
        STRAIN,
        /** Potential energy of the cable's weight. */
        WEIGHT,
        /** Energy of the elastic anchors. */
        ANCHORS,
        /** Work taken by the connecting subsystems. */
        CONNECTIONS,
        /** Work taken by in-line absorbers. */
        INLINE_ABSORBERS,
        /** Heat of friction at the anchors and of contact with them. */
        FRICTION,
        /** Heat of the internal damping of the cable. */
        DAMPING,
        /** Potential energy of the workers. */
        WORKER_WEIGHT,
        /** What merging and splitting segments beside anchors and travellers cost. */
        MESH
    }

    /**
     * The history, as an analysis hands it over.
     *
     * @param parts one history for each part, in their order [J]
     */
    public EnergyHistory(double[][] parts) {
        this.parts = Columns.copy(parts);
        for (double[] each : this.parts) {
            double first = each.length > 0 ? each[0] : 0;
            for (int i = 0; i < each.length; i++) {
                each[i] -= first;
            }
        }
    }

    /**
     * One part of the account.
     *
     * @param part the part
     * @return energy at each time, counted from the start of the fall [J]
     */
    public double[] of(Part part) {
        return parts[part.ordinal()].clone();
    }

    /**
     * Sum of all parts: the drift of the integration.
     *
     * @return drift at each time [J]
     */
    public double[] drift() {
        double[] sum = new double[parts[0].length];
        for (double[] each : parts) {
            for (int i = 0; i < sum.length; i++) {
                sum[i] += each[i];
            }
        }
        return sum;
    }
}
