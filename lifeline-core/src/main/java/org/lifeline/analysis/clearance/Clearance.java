package org.lifeline.analysis.clearance;

import java.util.List;
import java.util.OptionalDouble;

/**
 * The clearance of one arrest as an account of elevations: each row goes down by its value.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Clearance {
    private final List<ClearanceRow> rows;
    private final double walkingLevel;
    private final double lowestPoint;
    private final double obstruction;

    Clearance(List<ClearanceRow> rows, double walkingLevel, double lowestPoint, OptionalDouble obstruction) {
        this.rows = List.copyOf(rows);
        this.walkingLevel = walkingLevel;
        this.lowestPoint = lowestPoint;
        this.obstruction = obstruction.orElse(Double.NaN);
    }

    /** The same elevations with other words beside them. */
    Clearance withRows(List<ClearanceRow> values) {
        return new Clearance(values, walkingLevel, lowestPoint, obstruction());
    }

    /**
     * The account, from the line before the fall down to the margin.
     *
     * @return the rows; unmodifiable
     */
    public List<ClearanceRow> rows() {
        return rows;
    }

    /**
     * Elevation of the line at the worker's station before the fall.
     *
     * @return elevation [m]
     */
    public double lineElevation() {
        return rows.get(0).elevation();
    }

    /**
     * Elevation of the lowest point that the worker's feet reach.
     *
     * @return elevation [m]
     */
    public double lowestPoint() {
        return lowestPoint;
    }

    /**
     * Elevation below which nothing may stand: the lowest point less the margin.
     *
     * @return elevation [m]
     */
    public double requiredElevation() {
        return rows.get(rows.size() - 1).elevation();
    }

    /**
     * Clearance required below the line at the worker's station before the fall.
     *
     * @return distance [m], positive down
     */
    public double requiredBelowLine() {
        return lineElevation() - requiredElevation();
    }

    /**
     * Clearance required below the walking level.
     *
     * @return distance [m], positive down
     */
    public double requiredBelowWalkingLevel() {
        return walkingLevel - requiredElevation();
    }

    /**
     * Elevation of the highest obstruction below the place of the fall.
     *
     * @return elevation [m], if there is one
     */
    public OptionalDouble obstruction() {
        return Double.isNaN(obstruction) ? OptionalDouble.empty() : OptionalDouble.of(obstruction);
    }

    /**
     * What remains between the required elevation and the highest obstruction below.
     *
     * @return margin [m] beyond the required one, negative when the clearance does not suffice; empty without an
     *     obstruction
     */
    public OptionalDouble margin() {
        return Double.isNaN(obstruction)
                ? OptionalDouble.empty()
                : OptionalDouble.of(requiredElevation() - obstruction);
    }
}
