/**
 * Shapes of a picture as SVG: lines, areas, hatches, text, arrows; the pens they are drawn with; axes with round numbers;
 * labels that keep clear of each other. Not part of the public interface. Uses {@code base} alone and knows nothing of
 * what is drawn: that is {@code report.picture} and {@code report.chart}, the only two that use it.
 *
 * <p>Start reading at {@link org.lifeline.internal.svg.SvgCanvas}. Coordinates are in user units of the picture, x to the
 * right, y down. A shape carries its colours for paper itself; a dark screen finds its own by the class of the shape.
 */
@NullMarked
package org.lifeline.internal.svg;

import org.jspecify.annotations.NullMarked;
