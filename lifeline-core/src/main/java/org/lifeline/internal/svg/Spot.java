package org.lifeline.internal.svg;

/**
 * A point of a picture.
 *
 * @param x to the right [user units]
 * @param y down [user units]
 */
public record Spot(double x, double y) {
    public Spot moved(double dx, double dy) {
        return new Spot(x + dx, y + dy);
    }
}
