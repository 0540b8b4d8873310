/**
 * Floor 3: the mechanics of the line: the elastic catenary, the assembly of a whole line, its equilibrium and the
 * path along which a load is applied. Not part of the public interface.
 *
 * <p>The unknowns are forces: of every span the tension vector at its first support, t, pointing along the line.
 * Then equilibrium of every piece of cable holds by construction, and what is left to solve is that the pieces fit
 * between the supports. The stretched vector of a span is the gradient of a convex function of t (its complementary
 * energy), which is why this choice converges where displacements as unknowns do not. See
 * {@code src/docs/theory/mechanics.md}.
 *
 * <p>Signs: z up; the tension vector at arc length s is the force of the cable behind s on the cable before it,
 * t(s) = t(0) + (w s + loads before s) ẑ.
 */
@NullMarked
package org.lifeline.internal.mechanics;

import org.jspecify.annotations.NullMarked;
