/**
 * What the report says of the parts that a design hands over, one class a part, and the data sheet for the line.
 *
 * <p>Start reading at {@link org.lifeline.report.handover.HandoverSections}. Stands beside {@code report.section} and may use {@code
 * report.document}, {@code report.picture} and every public package on a floor below. A section computes nothing but factored
 * loads and sums of what results hold.
 */
@NullMarked
package org.lifeline.report.handover;

import org.jspecify.annotations.NullMarked;
