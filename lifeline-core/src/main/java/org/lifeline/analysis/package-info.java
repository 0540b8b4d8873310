/**
 * Floor 4: configured analyses of a lifeline and their results.
 *
 * <p>An analysis is immutable and stateless: {@code EnergyBalance.withDefaults().withTemperature(-30).solve(line,
 * fall)}. Results are immutable, keep what they were computed from, and answer in SI. Signs: z up; forces on an anchor
 * are those that the line exerts on it; sag, descent and fall distances are positive down.
 */
@NullMarked
package org.lifeline.analysis;

import org.jspecify.annotations.NullMarked;
