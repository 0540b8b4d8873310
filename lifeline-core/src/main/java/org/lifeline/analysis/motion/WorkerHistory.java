package org.lifeline.analysis.motion;

import java.util.Map;
import org.lifeline.base.Violations;

/**
 * One worker in time: force and extension of the connecting subsystem, where the harness attachment is and where the
 * attachment on the line.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class WorkerHistory {
    private final String id;
    private final Map<Quantity, double[]> values;

    /**
     * What is recorded of a worker.
     *
     * @since 1.0.0
     */
    public enum Quantity {
        /** Force in the connecting subsystem [N]. */
        FORCE,
        /** Extension of the connecting subsystem beyond its taut length [m]. */
        EXTENSION,
        /** Position of the harness attachment along x [m]. */
        X,
        /** Position of the harness attachment along y [m]. */
        Y,
        /** Elevation of the harness attachment [m]. */
        Z,
        /** Position of the attachment on the line along x [m]. */
        LINE_X,
        /** Position of the attachment on the line along y [m]. */
        LINE_Y,
        /** Elevation of the attachment on the line [m]. */
        LINE_Z
    }

    /**
     * The history, as an analysis hands it over.
     *
     * @param id the worker
     * @param values one history for each quantity, all of one length [unit of the quantity]
     */
    public WorkerHistory(String id, Map<Quantity, double[]> values) {
        Violations.required("values", values);
        this.id = id;
        this.values = Columns.copy(Quantity.class, values);
    }

    private double[] of(Quantity quantity) {
        return values.getOrDefault(quantity, new double[0]).clone();
    }

    /**
     * The worker.
     *
     * @return the id
     */
    public String id() {
        return id;
    }

    /**
     * Force in the connecting subsystem.
     *
     * @return force at each time [N], not negative
     */
    public double[] force() {
        return of(Quantity.FORCE);
    }

    /**
     * Extension of the connecting subsystem beyond its taut length.
     *
     * @return extension at each time [m]; 0 when slack
     */
    public double[] extension() {
        return of(Quantity.EXTENSION);
    }

    /**
     * Position of the harness attachment along x.
     *
     * @return coordinate at each time [m]
     */
    public double[] x() {
        return of(Quantity.X);
    }

    /**
     * Position of the harness attachment along y.
     *
     * @return coordinate at each time [m]
     */
    public double[] y() {
        return of(Quantity.Y);
    }

    /**
     * Elevation of the harness attachment.
     *
     * @return elevation at each time [m], positive up
     */
    public double[] z() {
        return of(Quantity.Z);
    }

    /**
     * Position of the attachment on the line along x.
     *
     * @return coordinate at each time [m]
     */
    public double[] lineX() {
        return of(Quantity.LINE_X);
    }

    /**
     * Position of the attachment on the line along y.
     *
     * @return coordinate at each time [m]
     */
    public double[] lineY() {
        return of(Quantity.LINE_Y);
    }

    /**
     * Elevation of the attachment on the line.
     *
     * @return elevation at each time [m], positive up
     */
    public double[] lineZ() {
        return of(Quantity.LINE_Z);
    }
}
