/**
 * Floor 5: an independent check of any result.
 *
 * <p>{@link org.lifeline.verify.Verifier} takes a result apart into plain numbers and holds each of them to the laws of
 * mechanics and to the stated rules of the model: equilibrium of every joint, the shape of every piece of cable by
 * numerical quadrature, springs, passages, attachments, absorbers, energy, clearance. It shares no formula with the
 * solver: shapes and energies are integrated over the arc length from the tension vector at the start of a piece, the
 * load–elongation law and the loading curves are read off their corners. What it finds is a
 * {@link org.lifeline.verify.VerificationReport}. Start reading at {@link org.lifeline.verify.Check}, which lists the laws;
 * each of the package's other classes holds the checks of one subject. What they read off a result, and the
 * quadrature, is in {@code verify.state}. The package builds on that, on {@code analysis} (results, and statics for the
 * installed state), {@code model} and {@code base}, never on an internal package.
 *
 * <p>Signs are those of the results: z up; a tension vector points along the line; forces on an anchor are those that
 * the line exerts. Most values are relative errors, each with the quantity it is relative to in
 * {@link org.lifeline.verify.Check}. Limits: a check of end states cannot see the path between them; the heat of friction
 * is held to its sign, to the account and, where the analysis followed it, to the work along the path.
 */
@NullMarked
package org.lifeline.verify;

import org.jspecify.annotations.NullMarked;
