/**
 * Floor 6f: what an assessed design hands over, all parts together, and the data sheet for the line.
 *
 * <p>Uses {@code design.structure}, {@code design.clearance}, {@code design.installation}, {@code design.occupancy}, the assessment
 * and what it uses. Start reading at {@link org.lifeline.design.handover.Handover}.
 *
 * <p>A part is drawn up if it is asked for. Values carry the model factors of the design; units are SI. Limits: those of the parts; a
 * data sheet names required values, never a product, and claims compliance with nothing.
 */
@NullMarked
package org.lifeline.design.handover;

import org.jspecify.annotations.NullMarked;
