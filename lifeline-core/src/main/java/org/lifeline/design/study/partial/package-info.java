/**
 * Floor 6: the part of a study that one machine has done, as plain data: what can be stored, sent and put together.
 *
 * <p>Uses {@code internal.numeric} and base. Start reading at {@link org.lifeline.design.study.partial.StudyPartial}. Sums are kept
 * without rounding and counts by bins, so that parts give the same result in any order and grouping, to the last digit.
 */
@NullMarked
package org.lifeline.design.study.partial;

import org.jspecify.annotations.NullMarked;
