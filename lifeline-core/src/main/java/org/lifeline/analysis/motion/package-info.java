/**
 * Floor 4, histories and peaks of an arrest in time: what a {@link org.lifeline.analysis.TransientResult} is made of.
 *
 * <p>Arrays that are handed out are copies; entry i of every history belongs to entry i of the times. Signs: z up;
 * forces on a support are those of the line on it; slip counts toward the span of the fall. All values are SI.
 */
@NullMarked
package org.lifeline.analysis.motion;

import org.jspecify.annotations.NullMarked;
