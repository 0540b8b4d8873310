package org.lifeline.report.picture;

/**
 * A point of a picture.
 *
 * @param x to the right [user units]
 * @param y down [user units]
 */
record Spot(double x, double y) {
    Spot moved(double dx, double dy) {
        return new Spot(x + dx, y + dy);
    }
}
