package org.lifeline.design.field;

/**
 * One span at one temperature, while the line is being tensioned.
 *
 * <p>Immutable and thread-safe.
 *
 * @param temperature temperature of the cable [°C]
 * @param span number of the span, from 1
 * @param tension magnitude of the tension at the first support of the span [N]
 * @param sag midspan sag [m]; its highest value belongs to the lowest tension
 * @since 1.0.0
 */
public record StringingRow(double temperature, int span, Reading tension, Reading sag) {}
