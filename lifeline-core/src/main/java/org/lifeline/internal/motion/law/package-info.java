/**
 * Floor 3, the laws of force that a motion needs at every step: tension of the cable against strain, and force of an
 * absorber or a lanyard against extension, with what it remembers. Not part of the public interface.
 *
 * <p>They turn what the model states as points into arrays that a stepping loop reads without allocating. They may use
 * {@code model} and {@code base}, and know nothing of masses, meshes or time. Start reading at {@link
 * org.lifeline.internal.motion.law.HystereticCurve}. Signs: pull, stretch and extension count positive.
 */
@NullMarked
package org.lifeline.internal.motion.law;

import org.jspecify.annotations.NullMarked;
