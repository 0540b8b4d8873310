/**
 * Floor 0: points, vectors, intervals, units, violations, exceptions, the listener that hears of progress and
 * the convergence record: what every other package speaks in. Uses the JDK alone.
 *
 * <p>Everything inside the library is SI: m, N, J, kg, s; temperatures in °C. The z axis points up.
 * {@link org.lifeline.base.Units} converts at the border.
 */
@NullMarked
package org.lifeline.base;

import org.jspecify.annotations.NullMarked;
