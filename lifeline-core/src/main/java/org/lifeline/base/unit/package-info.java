/**
 * Floor 0: quantities with units as people write and read them: {@code "3.5 kN"} is read by {@link
 * org.lifeline.base.unit.QuantityText} and printed by {@link org.lifeline.base.unit.Unit}. One table of units for files, command
 * lines, reports and callers.
 *
 * @since 1.0.0
 */
@NullMarked
package org.lifeline.base.unit;

import org.jspecify.annotations.NullMarked;
