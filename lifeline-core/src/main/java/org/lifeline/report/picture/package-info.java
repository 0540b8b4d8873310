/**
 * Drawings and charts as SVG: elevation and plan of an arrest, load and energy against descent, envelopes along the line,
 * histories in time, maps over two variables.
 *
 * <p>Start reading at {@link org.lifeline.report.picture.SystemPicture}; {@link org.lifeline.report.picture.ChartPicture}
 * draws every chart, {@code SvgCanvas} writes every shape. The package may use {@code report.document} and every public
 * package on a floor below. Coordinates are in user units of the picture, x to the right, y down. A picture holds no
 * script and no reference to anything outside; each line has dashes as well as a colour of its own.
 */
@NullMarked
package org.lifeline.report.picture;

import org.jspecify.annotations.NullMarked;
