/**
 * Floor 6: the line in the field. A stringing table for those who tension it; from a sag or a tension that was measured later,
 * the pretension that the line has now, and the whole analysis again with it.
 *
 * <p>Uses the envelope, the analyses, {@code internal.numeric}, the model and base. Start reading at
 * {@link org.lifeline.design.field.FieldCheck}.
 *
 * <p>Signs: sag [m] positive below the chord, tensions [N] positive. Midspan sag is the vertical distance from the chord to
 * the cable half-way between the supports in plan, without anybody on the line.
 */
@NullMarked
package org.lifeline.design.field;

import org.jspecify.annotations.NullMarked;
