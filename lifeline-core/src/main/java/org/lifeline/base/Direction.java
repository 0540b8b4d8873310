package org.lifeline.base;

/**
 * A direction along an axis, for the component of an anchor load.
 *
 * @since 1.0.0
 */
public enum Direction {
    /** Along x, positive. */
    PLUS_X("+x"),
    /** Against x. */
    MINUS_X("-x"),
    /** Along y, positive. */
    PLUS_Y("+y"),
    /** Against y. */
    MINUS_Y("-y"),
    /** Up. */
    UP("+z"),
    /** Down. */
    DOWN("-z");

    private final String symbol;

    Direction(String symbol) {
        this.symbol = symbol;
    }

    /**
     * The direction in a table.
     *
     * @return for example {@code "+x"}
     */
    public String symbol() {
        return symbol;
    }

    /**
     * Component of a vector in this direction.
     *
     * @param vector the vector, components in [N]
     * @return component [N], negative when the vector points the other way
     */
    public double component(Vector3 vector) {
        return switch (this) {
            case PLUS_X -> vector.x();
            case MINUS_X -> -vector.x();
            case PLUS_Y -> vector.y();
            case MINUS_Y -> -vector.y();
            case UP -> vector.z();
            case DOWN -> -vector.z();
        };
    }
}
