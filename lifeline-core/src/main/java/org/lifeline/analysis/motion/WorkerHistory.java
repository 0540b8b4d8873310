package org.lifeline.analysis.motion;

/**
 * One worker in time: force and extension of the connecting subsystem, where the harness attachment is and where the
 * attachment on the line.
 *
 * <p>Immutable and thread-safe.
 */
public final class WorkerHistory {
    private final String id;
    private final double[][] columns;

    /**
     * The history, as an analysis hands it over.
     *
     * @param id the worker
     * @param columns force [N], extension [m], x, y, z of the harness attachment [m], x, y, z of the attachment on the
     *     line [m]
     */
    public WorkerHistory(String id, double[][] columns) {
        this.id = id;
        this.columns = Columns.copy(columns);
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
        return columns[0].clone();
    }

    /**
     * Extension of the connecting subsystem beyond its taut length.
     *
     * @return extension at each time [m]; 0 when slack
     */
    public double[] extension() {
        return columns[1].clone();
    }

    /**
     * Position of the harness attachment along x.
     *
     * @return coordinate at each time [m]
     */
    public double[] x() {
        return columns[2].clone();
    }

    /**
     * Position of the harness attachment along y.
     *
     * @return coordinate at each time [m]
     */
    public double[] y() {
        return columns[3].clone();
    }

    /**
     * Elevation of the harness attachment.
     *
     * @return elevation at each time [m], positive up
     */
    public double[] z() {
        return columns[4].clone();
    }

    /**
     * Position of the attachment on the line along x.
     *
     * @return coordinate at each time [m]
     */
    public double[] lineX() {
        return columns[5].clone();
    }

    /**
     * Position of the attachment on the line along y.
     *
     * @return coordinate at each time [m]
     */
    public double[] lineY() {
        return columns[6].clone();
    }

    /**
     * Elevation of the attachment on the line.
     *
     * @return elevation at each time [m], positive up
     */
    public double[] lineZ() {
        return columns[7].clone();
    }
}
