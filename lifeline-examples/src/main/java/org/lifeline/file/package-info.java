/**
 * The design file and the result file: JSON in and out.
 *
 * <p>Every quantity of a design file is a string with its unit; {@link org.lifeline.base.unit.QuantityText} turns it
 * into SI with exact factors. {@link org.lifeline.file.DesignReader} reads a whole file and reports everything
 * that is wrong with it together, each violation with its path, the value as written and the rule. Results are plain SI
 * numbers (m, N, J, kg; temperatures in °C), unrounded.
 */
@NullMarked
package org.lifeline.file;

import org.jspecify.annotations.NullMarked;
