package org.lifeline.base;

/**
 * A place in space. The z axis points up; x and y are horizontal.
 *
 * <p>Immutable and thread-safe.
 *
 * @param x first horizontal coordinate [m]
 * @param y second horizontal coordinate [m]
 * @param z elevation [m], positive up
 * @since 1.0.0
 */
public record Point(double x, double y, double z) {

    /**
     * A point from its three coordinates.
     *
     * @param x first horizontal coordinate [m]
     * @param y second horizontal coordinate [m]
     * @param z elevation [m], positive up
     * @return the point
     */
    public static Point of(double x, double y, double z) {
        return new Point(x, y, z);
    }

    /**
     * The point displaced by a vector.
     *
     * @param displacement the displacement, components in [m]
     * @return the displaced point
     */
    public Point plus(Vector3 displacement) {
        return new Point(x + displacement.x(), y + displacement.y(), z + displacement.z());
    }

    /**
     * The vector that leads from another point to this one.
     *
     * @param from the other point
     * @return this − from, components in [m]
     */
    public Vector3 minus(Point from) {
        return new Vector3(x - from.x, y - from.y, z - from.z);
    }

    /**
     * Straight distance to another point.
     *
     * @param other the other point
     * @return the distance [m], never negative
     */
    public double distance(Point other) {
        return minus(other).magnitude();
    }

    /**
     * Horizontal distance to another point.
     *
     * @param other the other point
     * @return the distance in plan [m], never negative
     */
    public double horizontalDistance(Point other) {
        double dx = x - other.x;
        double dy = y - other.y;
        return Math.sqrt(dx * dx + dy * dy);
    }

    /**
     * Tells whether all three coordinates are finite numbers.
     *
     * @return true if none is infinite or NaN
     */
    public boolean isFinite() {
        return Double.isFinite(x) && Double.isFinite(y) && Double.isFinite(z);
    }
}
