/**
 * Floor 4: what a caller configures, and its results.
 *
 * <p>Start with {@link org.lifeline.analysis.EnergyBalance}, the arrest of a fall, and {@link
 * org.lifeline.analysis.ArrestResult}, what it returns; {@link org.lifeline.analysis.Statics} is the line at rest, {@link
 * org.lifeline.analysis.TransientArrest} the arrest in time. An analysis is immutable and stateless: {@code
 * EnergyBalance.withDefaults().withTemperature(-30).solve(line, fall)}. Results are immutable, keep what they were computed
 * from, and answer in SI. {@link org.lifeline.analysis.Statics} and {@link org.lifeline.analysis.EnergyBalance} drive the
 * kernel of the line and read it out into a {@link org.lifeline.analysis.LineEquilibrium}.
 *
 * <p>Beside it stand {@code analysis.clearance}, the account of elevations, {@code analysis.explain}, the calculation
 * sheet, {@code analysis.motion}, histories in time, {@code analysis.state}, what is read off one state, and {@code
 * analysis.warning}, what a result warns of. This package may use the {@code internal} packages, {@code model}
 * and {@code base}; none of the internal types shows in a public signature.
 *
 * <p>Signs: z up; forces on an anchor are those that the line exerts on it; sag, descent and fall distances are positive
 * down.
 */
@NullMarked
package org.lifeline.analysis;

import org.jspecify.annotations.NullMarked;
