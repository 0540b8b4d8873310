/**
 * Floor 3: the energy balance of a fall on the path of a line, for one faller and for several.
 *
 * <p>Start with {@code FallBalance}, the balance of one extension; {@code UnequalFallers} bounds the extensions of several
 * that are not alike. The package may use {@code internal.path}, {@code model} and {@code base}. Signs: forces and descents
 * positive down.
 */
@NullMarked
package org.lifeline.internal.balance;

import org.jspecify.annotations.NullMarked;
