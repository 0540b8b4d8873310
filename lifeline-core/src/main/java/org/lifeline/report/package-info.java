/**
 * Floor 7: what people read: the calculation report as text and as one HTML file, tables as CSV, pictures as SVG.
 *
 * <p>Start reading at {@link org.lifeline.report.CalculationReport}: it turns a design and its arrests into a
 * {@link org.lifeline.report.document.ReportDocument}, which {@link org.lifeline.report.TextReport} and
 * {@link org.lifeline.report.HtmlReport} write. This package orders the sections and writes the formats; what a report is
 * made of stands in {@code report.document}, what its sections say in {@code report.section}, how its pictures are drawn in
 * {@code report.picture} and {@code report.chart}. It may use these four and every public package on a floor below.
 *
 * <p>The same input gives the same characters on every machine. Names and titles are taken as untrusted text: they come out
 * inert in every format, see {@link org.lifeline.base.InertText}.
 */
@NullMarked
package org.lifeline.report;

import org.jspecify.annotations.NullMarked;
