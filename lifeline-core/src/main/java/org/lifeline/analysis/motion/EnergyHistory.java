package org.lifeline.analysis.motion;

import java.util.EnumMap;
import java.util.Map;
import org.lifeline.base.Violations;

/**
 * Where the energy is in time. Every part counts from the start of the fall; together they stay at zero but for the drift
 * of the integration.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class EnergyHistory {
    private final Map<Part, double[]> parts;

    /**
     * The parts of the account.
     *
     * @since 1.0.0
     */
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
     * @param parts one history for each part, all of one length [J]
     */
    public EnergyHistory(Map<Part, double[]> parts) {
        Violations.required("parts", parts);
        this.parts = new EnumMap<>(Part.class);
        for (Part part : Part.values()) {
            double[] values = parts.getOrDefault(part, new double[0]).clone();
            double first = values.length > 0 ? values[0] : 0;
            for (int i = 0; i < values.length; i++) {
                values[i] -= first;
            }
            this.parts.put(part, values);
        }
    }

    /**
     * One part of the account.
     *
     * @param part the part
     * @return energy at each time, counted from the start of the fall [J]
     */
    public double[] of(Part part) {
        Violations.required("part", part);
        return parts.getOrDefault(part, new double[0]).clone();
    }

    /**
     * Sum of all parts: the drift of the integration.
     *
     * @return drift at each time [J]
     */
    public double[] drift() {
        double[] sum = of(Part.STRAIN);
        for (Part part : Part.values()) {
            double[] each = of(part);
            for (int i = 0; i < sum.length && part != Part.STRAIN; i++) {
                sum[i] += each[i];
            }
        }
        return sum;
    }
}
