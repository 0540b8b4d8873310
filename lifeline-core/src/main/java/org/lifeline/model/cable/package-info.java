/**
 * Floor 2: the cable: its class of rope, diameter, weight, stiffness or load–elongation curve, strength, expansion.
 *
 * <p>Immutable and checked when built; SI (m, N, kg, s; temperatures in °C). May use {@code base} only. Start reading with
 * {@link org.lifeline.model.cable.Cable}.
 */
@NullMarked
package org.lifeline.model.cable;

import org.jspecify.annotations.NullMarked;
