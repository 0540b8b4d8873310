/**
 * Floor 3, peaks of a motion as numbers: signals through a low-pass filter as laboratories use one, and what a peak on
 * meshes that are halved says of the peak on ever finer ones. Not part of the public interface.
 *
 * <p>Knows nothing of cables: signals and numbers only. Start reading at {@link
 * org.lifeline.internal.motion.peak.RefinementBound}. All values are SI.
 */
@NullMarked
package org.lifeline.internal.motion.peak;

import org.jspecify.annotations.NullMarked;
