package org.lifeline.internal.svg;

/**
 * A hatch of a picture; those with different numbers differ in spacing and direction, so that they can be told apart
 * without colour.
 *
 * @param prefix first part of its id, the same for all hatches of a picture
 * @param number its number in the picture, from 0
 */
public record Hatch(String prefix, int number) {
    private static final double LEAST_SPACING = 7;
    private static final int SPACINGS = 3;
    private static final int TURN = 45;
    private static final int HALF_TURN = 180;
    private static final int FIRST_DIRECTION = 20;
    private static final int CROSSED_EVERY = 4;

    public String id() {
        return prefix + number;
    }

    public String reference() {
        return "url(#" + id() + ")";
    }

    /** Distance of its lines [user units]. */
    public double spacing() {
        return LEAST_SPACING + 2.0 * (number % SPACINGS);
    }

    /** Direction of its lines [°]. */
    public double direction() {
        return number * TURN % HALF_TURN + FIRST_DIRECTION;
    }

    /** True if it has lines across too. */
    public boolean isCrossed() {
        return number % CROSSED_EVERY == CROSSED_EVERY - 1;
    }
}
