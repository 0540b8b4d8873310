/**
 * Floor 2: what exists on site: cable, supports, absorbers, connecting subsystems, workers, falls, obstructions.
 *
 * <p>Everything here is immutable and checked when it is built: a builder's {@code build()} reports all violations
 * at once. Nothing here computes mechanics. Supports are numbered 0 … n in the order of the line, spans 1 … n;
 * a station is the horizontal distance from the first support of its span. z points up; all values are SI
 * (m, N, J, kg, s; temperatures in °C). The cable stands in {@code model.cable}, how absorbers deploy in {@code
 * model.absorber}.
 */
@NullMarked
package org.lifeline.model;

import org.jspecify.annotations.NullMarked;
