/**
 * Floor 2: what else may happen on a line in the first minutes after a fall, as far as a design states it.
 *
 * <p>Times in seconds after the start of the first fall. Nothing here is computed with unless a design states it: a
 * {@link org.lifeline.model.LifelineDesign} has it as an optional member, and the assessment takes it up. Values only; the
 * rules that need the workers and falls of a design are checked by its builder.
 */
@NullMarked
package org.lifeline.model.incident;

import org.jspecify.annotations.NullMarked;
