/**
 * Floor 7b, drawings to scale as SVG: elevation and plan of a whole line, and of an arrest with its account of clearance.
 *
 * <p>Start reading at {@link org.lifeline.report.picture.SystemPicture}. The package may use {@code report.document}, {@code
 * internal.svg} and every public package on a floor below. Coordinates are in user units of the picture, x to the right, y
 * down. A picture holds no script and no reference to anything outside.
 */
@NullMarked
package org.lifeline.report.picture;

import org.jspecify.annotations.NullMarked;
