package org.lifeline.base;

/**
 * A force or a displacement in space, by its components along the axes of {@link Point}.
 *
 * <p>The unit is that of the quantity it stands for: [N] for a force, [m] for a displacement. Immutable and
 * thread-safe.
 *
 * @param x component along x [N] or [m]
 * @param y component along y [N] or [m]
 * @param z component along z [N] or [m], positive up
 */
public record Vector3(double x, double y, double z) {

    /** The vector of no length. */
    public static final Vector3 ZERO = new Vector3(0, 0, 0);

    /**
     * The sum of two vectors.
     *
     * @param other the other vector
     * @return this + other
     */
    public Vector3 plus(Vector3 other) {
        return new Vector3(x + other.x, y + other.y, z + other.z);
    }

    /**
     * The difference of two vectors.
     *
     * @param other the other vector
     * @return this − other
     */
    public Vector3 minus(Vector3 other) {
        return new Vector3(x - other.x, y - other.y, z - other.z);
    }

    /**
     * The vector multiplied by a number.
     *
     * @param factor the number [-]
     * @return factor · this
     */
    public Vector3 times(double factor) {
        return new Vector3(factor * x, factor * y, factor * z);
    }

    /**
     * Scalar product.
     *
     * @param other the other vector
     * @return the product of the two, in the product of their units: [N·m], [N²] or [m²]
     */
    public double dot(Vector3 other) {
        return x * other.x + y * other.y + z * other.z;
    }

    /**
     * Vector product.
     *
     * @param other the other vector
     * @return this × other, right-handed
     */
    public Vector3 cross(Vector3 other) {
        return new Vector3(y * other.z - z * other.y, z * other.x - x * other.z, x * other.y - y * other.x);
    }

    /**
     * Length of the vector.
     *
     * @return the magnitude [N] or [m], never negative
     */
    public double magnitude() {
        return Math.sqrt(x * x + y * y + z * z);
    }

    /**
     * Length of the horizontal part.
     *
     * @return √(x² + y²) [N] or [m], never negative
     */
    public double horizontal() {
        return Math.sqrt(x * x + y * y);
    }

    /**
     * The angle between two vectors, exact for small angles as well as for opposed vectors.
     *
     * @param other the other vector
     * @return the angle [rad], from 0 to π
     */
    public double angleTo(Vector3 other) {
        return StrictMath.atan2(cross(other).magnitude(), dot(other));
    }
}
