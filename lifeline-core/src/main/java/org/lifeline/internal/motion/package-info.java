/**
 * Floor 3, the line in motion: the cable as lumped masses on tension-only segments with internal damping, the joints
 * where it meets supports and attachments, falling workers on connecting subsystems with a memory, and the steps in
 * time. Not part of the public interface.
 *
 * <p><b>Where to start.</b> {@link org.lifeline.internal.motion.MotionSetup} takes a line at rest and the workers on it,
 * {@link org.lifeline.internal.motion.MeshRefinement} follows them on meshes that are halved, {@link
 * org.lifeline.internal.motion.Motion} is one run on one mesh, and {@code MotionSystem.kick} and {@code move} are one
 * step. {@code NumericalParameters} holds every number that steers them.
 *
 * <p><b>What it may touch.</b> Of the mechanics at rest only the line from which a motion starts; {@code model} and {@code
 * base}. {@code analysis} alone uses it.
 *
 * <p><b>Words.</b> A <i>joint</i> is, as in the mechanics of several bodies, where the cable is bound to something else:
 * to a support, fixed to an attachment, or sliding through one. <i>Before</i> and <i>behind</i> are toward the start and
 * toward the end of the line.
 *
 * <p>The scheme is a leapfrog: velocities live half a step before and behind positions. Elastic forces, weight and the
 * forces of the connecting subsystems are explicit; the internal damping of the cable is implicit, which costs one
 * scalar tridiagonal system a step because damping acts along the cable only. So the step is set by the time an axial
 * wave needs to cross the shortest segment, and not by the damping. See {@code src/docs/theory/transient.md} and
 * decision record 0011.
 *
 * <p>Material that passes a support or a sliding attachment is counted by one flow coordinate per joint: it lengthens
 * one neighbouring segment and shortens the other, in strain as in strain rate. Nodes that come too close to a joint are
 * merged away and new ones are split off beside it, momentum kept.
 *
 * <p>Signs: z up; flow counts positive toward the end of the line; forces of segments pull.
 */
@NullMarked
package org.lifeline.internal.motion;

import org.jspecify.annotations.NullMarked;
