/**
 * Floor 7: what people read: the calculation report as text and as one HTML file, tables as CSV, pictures as SVG.
 *
 * <p>A {@link org.lifeline.report.CalculationReport} turns a design and its arrests into a
 * {@link org.lifeline.report.ReportDocument}; {@link org.lifeline.report.TextReport} and
 * {@link org.lifeline.report.HtmlReport} write it. Pictures are drawn by {@link org.lifeline.report.ElevationPicture},
 * {@link org.lifeline.report.PlanPicture}, {@link org.lifeline.report.DescentPicture},
 * {@link org.lifeline.report.EnvelopePicture}, {@link org.lifeline.report.HistoryPicture},
 * {@link org.lifeline.report.ChartPicture} and {@link org.lifeline.report.MapPicture}. The same input gives the same characters on every machine. Names and titles
 * are taken as untrusted text: they come out inert in every format, see {@link org.lifeline.report.InertText}.
 *
 * <p>Numbers are rounded half up from the exact value of the double, once, after an exact conversion of units. Rows
 * that add up do so as printed: they get as many decimals as that takes, see {@link org.lifeline.report.Account}.
 */
@NullMarked
package org.lifeline.report;

import org.jspecify.annotations.NullMarked;
