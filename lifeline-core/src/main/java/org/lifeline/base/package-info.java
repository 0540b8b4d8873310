/**
 * Floor 0: points, vectors, units, violations, exceptions and the convergence record that every other
 * package speaks in.
 *
 * <p>Everything inside the library is SI: m, N, J, kg, s; temperatures in °C. The z axis points up.
 * {@link org.lifeline.base.Units} converts at the border.
 */
@NullMarked
package org.lifeline.base;

import org.jspecify.annotations.NullMarked;
