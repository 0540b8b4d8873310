/**
 * What a report is made of: sections, blocks, tables, units, digits, inert text.
 *
 * <p>Start reading at {@link org.lifeline.report.document.ReportDocument} and
 * {@link org.lifeline.report.document.ReportBlock} for the parts, at {@link org.lifeline.report.document.QuantityKind} for
 * units and digits. The package may use what it names (results of {@code analysis} and {@code design}, {@code model},
 * {@code base}) but no other package of the report.
 *
 * <p>Numbers are rounded half up from the exact value of the double, once, after an exact conversion of units. Rows that add
 * up do so as printed: they get as many decimals as that takes, see
 * {@link org.lifeline.report.document.RoundedAccount}.
 */
@NullMarked
package org.lifeline.report.document;

import org.jspecify.annotations.NullMarked;
