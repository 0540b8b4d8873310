/**
 * Floor 3, the line in motion: the cable as lumped masses on tension-only segments with internal damping, the joints
 * where it meets anchors and workers, falling workers on connecting subsystems with a memory, and the steps in time.
 * Not part of the public interface.
 *
 * <p>The scheme is a leapfrog: velocities live half a step before and behind positions. Elastic forces, weight and the
 * forces of the connecting subsystems are explicit; the internal damping of the cable is implicit, which costs one
 * scalar tridiagonal system a step because damping acts along the cable only. So the step is set by the time an axial
 * wave needs to cross the shortest segment, and not by the damping. See {@code src/docs/theory/transient.md} and
 * decision record 0011.
 *
 * <p>Material that passes an anchor or a traveller is counted by one flow coordinate per joint: it lengthens one
 * neighbouring segment and shortens the other, in strain as in strain rate. Nodes that come too close to a joint are
 * merged away and new ones are split off behind it, momentum kept.
 *
 * <p>Signs: z up; flow counts positive toward the end of the line; forces of segments pull.
 */
@NullMarked
package org.lifeline.internal.mechanics.motion;

import org.jspecify.annotations.NullMarked;
