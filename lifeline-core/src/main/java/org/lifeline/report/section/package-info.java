/**
 * What the sections of a calculation report say, one class a section or a group of them.
 *
 * <p>Start reading at {@link org.lifeline.report.section.SummarySection}, then
 * {@link org.lifeline.report.section.ArrestSections}; {@link org.lifeline.report.section.GoverningArrests} says which
 * arrests are shown in full. The package may use {@code report.document}, {@code report.picture} and every public package
 * on a floor below. A section computes nothing but ratios and sums of what results hold.
 */
@NullMarked
package org.lifeline.report.section;

import org.jspecify.annotations.NullMarked;
