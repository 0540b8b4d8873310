package org.lifeline.report.picture;

/**
 * A rectangle of a picture.
 *
 * @param left left edge [user units]
 * @param top upper edge [user units]
 * @param width width [user units]
 * @param height height [user units]
 */
record Box(double left, double top, double width, double height) {}
