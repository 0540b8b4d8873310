/**
 * Floor 6e: clearance along the line, for those who install it and those who use it.
 *
 * <p>Uses the assessment, the envelope, the analyses, {@code internal.numeric}, the model and base. Start reading at {@link
 * org.lifeline.design.clearance.ClearanceAlongLine}.
 *
 * <p>The line is cut into stretches of a stated step. Each is given the most clearance that a fall anywhere in it needs, rounded up
 * to a stated unit, and what is free below it, rounded down. Elevations [m] count upward, required distances [m] downward from
 * their datum: the line as installed, or the walking level of the worker.
 *
 * <p>Limits: within a stretch falls are computed at its ends, in its middle and at its supports; what lies between is taken from
 * the parabola through them.
 */
@NullMarked
package org.lifeline.design.clearance;

import org.jspecify.annotations.NullMarked;
