/**
 * Quantities with units as they stand in a file or on the command line: {@code "3.5 kN"} is read by {@link
 * org.lifeline.file.units.QuantityText}. Uses {@code base} of the core; knows nothing of JSON.
 */
@NullMarked
package org.lifeline.file.units;

import org.jspecify.annotations.NullMarked;
