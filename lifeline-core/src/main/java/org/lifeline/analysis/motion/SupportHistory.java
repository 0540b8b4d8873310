package org.lifeline.analysis.motion;

import java.util.List;
import java.util.Map;
import org.lifeline.base.Violations;

/**
 * One support in time: tension of the cable on both sides, material that passed, force of the line, displacement.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class SupportHistory {
    private static final List<Quantity> FORCES = List.of(Quantity.FORCE_X, Quantity.FORCE_Y, Quantity.FORCE_Z);
    private static final List<Quantity> DISPLACEMENTS =
            List.of(Quantity.DISPLACEMENT_X, Quantity.DISPLACEMENT_Y, Quantity.DISPLACEMENT_Z);

    private final String id;
    private final Map<Quantity, double[]> values;

    /**
     * What is recorded of a support.
     *
     * @since 1.0.0
     */
    public enum Quantity {
        /** Tension of the cable that comes from the start of the line [N]. */
        TENSION_BEFORE,
        /** Tension of the cable that leaves toward the end of the line [N]. */
        TENSION_BEHIND,
        /** Unstretched length that has passed toward the span of the fall [m]. */
        SLIP,
        /** Force of the line along x [N]. */
        FORCE_X,
        /** Force of the line along y [N]. */
        FORCE_Y,
        /** Force of the line along z [N]. */
        FORCE_Z,
        /** Displacement since installation along x [m]. */
        DISPLACEMENT_X,
        /** Displacement since installation along y [m]. */
        DISPLACEMENT_Y,
        /** Displacement since installation along z [m]. */
        DISPLACEMENT_Z,
        /** Extension of the in-line energy absorber [m]. */
        INLINE_EXTENSION
    }

    /**
     * The history, as an analysis hands it over.
     *
     * @param id the support
     * @param values one history for each quantity, all of one length [unit of the quantity]
     */
    public SupportHistory(String id, Map<Quantity, double[]> values) {
        Violations.required("values", values);
        this.id = id;
        this.values = Columns.copy(Quantity.class, values);
    }

    private static int checked(int axis) {
        return Violations.requiredIndex("axis", axis, FORCES.size());
    }

    private double[] of(Quantity quantity) {
        return values.getOrDefault(quantity, new double[0]).clone();
    }

    /**
     * The support.
     *
     * @return the id
     */
    public String id() {
        return id;
    }

    /**
     * Tension of the cable that comes to the support from the start of the line.
     *
     * @return tension at each time [N], not negative; 0 at the first support
     */
    public double[] tensionBefore() {
        return of(Quantity.TENSION_BEFORE);
    }

    /**
     * Tension of the cable that leaves the support toward the end of the line.
     *
     * @return tension at each time [N], not negative; 0 at the last support
     */
    public double[] tensionBehind() {
        return of(Quantity.TENSION_BEHIND);
    }

    /**
     * Unstretched length of cable that has passed the support since the start of the fall.
     *
     * @return slip at each time [m], positive toward the span of the fall
     */
    public double[] slip() {
        return of(Quantity.SLIP);
    }

    /**
     * Force of the line on the support.
     *
     * @return magnitude at each time [N]
     */
    public double[] force() {
        double[] f = of(Quantity.FORCE_X);
        double[] y = of(Quantity.FORCE_Y);
        double[] z = of(Quantity.FORCE_Z);
        for (int i = 0; i < f.length; i++) {
            f[i] = Math.sqrt(f[i] * f[i] + y[i] * y[i] + z[i] * z[i]);
        }
        return f;
    }

    /**
     * Force of the line on the support along an axis.
     *
     * @param axis 0, 1, 2 for x, y, z
     * @return component at each time [N]
     * @throws IllegalArgumentException if there is no such axis
     */
    public double[] forceAlong(int axis) {
        return of(FORCES.get(checked(axis)));
    }

    /**
     * Displacement of the support since installation along an axis.
     *
     * @param axis 0, 1, 2 for x, y, z
     * @return component at each time [m]
     * @throws IllegalArgumentException if there is no such axis
     */
    public double[] displacement(int axis) {
        return of(DISPLACEMENTS.get(checked(axis)));
    }

    /**
     * Extension of the in-line energy absorber at this end anchor.
     *
     * @return extension at each time [m]; 0 where there is none
     */
    public double[] inlineExtension() {
        return of(Quantity.INLINE_EXTENSION);
    }
}
