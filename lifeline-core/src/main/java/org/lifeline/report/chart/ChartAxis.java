package org.lifeline.report.chart;

import org.lifeline.report.document.QuantityKind;

/**
 * What is plotted along an axis.
 *
 * <p>Immutable and thread-safe.
 *
 * @param label what it is, without the unit
 * @param measure its kind, which gives the unit
 * @since 1.0.0
 */
public record ChartAxis(String label, QuantityKind measure) {}
