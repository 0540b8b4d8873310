/**
 * Floor 7b, charts as SVG: load and energy against descent, envelopes along the line, histories in time, maps over two
 * variables.
 *
 * <p>Start reading at {@link org.lifeline.report.chart.ChartPicture}, which draws every chart over one variable from its
 * panels, series and reference lines; {@link org.lifeline.report.chart.MapPicture} draws maps over two. The package may use
 * {@code report.document}, {@code internal.svg} and every public package on a floor below. Each line has dashes as well as a
 * colour of its own, and each chart a table of its numbers for those who cannot see it.
 */
@NullMarked
package org.lifeline.report.chart;

import org.jspecify.annotations.NullMarked;
