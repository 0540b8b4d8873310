/**
 * Floor 3: a line in one state: the assembly of a whole line, its equilibrium and its
 * energies; {@code internal.line.installation} finds its installed state. Not part of the public interface. May use {@code internal.catenary}, {@code internal.numeric}, {@code model} and
 * {@code base}; knows nothing of how a state came about, which is {@code internal.path}.
 *
 * <p>The unknowns are forces: of every span the tension vector at its first support, t, pointing along the line.
 * Then equilibrium of every piece of cable holds by construction, and what is left to solve is that the pieces fit
 * between the supports. The stretched vector of a span is the gradient of a convex function of t (its complementary
 * energy), which is why this choice converges where displacements as unknowns do not. See
 * {@code src/docs/theory/mechanics.md}.
 *
 * <p>Signs: z up; the tension vector at arc length s is the force of the cable beyond s on the cable before it,
 * t(s) = t(0) + (w s + loads before s) ẑ.
 *
 * <p>Start reading with {@code LineSystem} (the numbers of a line) and
 * {@code LineState} (its unknowns), then {@code LineAssembly} (residuals and tangent) and {@code Equilibrium}.
 */
@NullMarked
package org.lifeline.internal.line;

import org.jspecify.annotations.NullMarked;
