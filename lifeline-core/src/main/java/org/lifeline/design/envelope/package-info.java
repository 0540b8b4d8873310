/**
 * Floor 6: the worst that can happen on a line, and what governs.
 *
 * <p>Uses the analyses, {@code internal.numeric}, the model and base; knows no criterion. Start reading at
 * {@link org.lifeline.design.envelope.Envelope}, then {@link org.lifeline.design.envelope.Extremes}. Every tolerance of the
 * search stands in {@code EnvelopeTolerances}.
 *
 * <p>An envelope moves the falls of a design along the whole line, over temperatures, both sides of the absorber's force
 * range, and ranges of mass, pretension and friction, and keeps for each quantity its worst value with the case that
 * governs it. Signs are those of the analyses: forces of the line on its anchors, sag and descents positive down,
 * elevations positive up. Model factors of the design are in every value; the arrests themselves are as computed.
 *
 * <p>Limits: places nearer than 1 mm to a support are not looked at; a worst value between two samples is found as long as
 * the quantity is concave there, which the first samples (17 in each span) make true in practice.
 */
@NullMarked
package org.lifeline.design.envelope;

import org.jspecify.annotations.NullMarked;
