/**
 * Floor 6: the assessment of a design, the one answer to what governs it.
 *
 * <p>Uses criteria, the envelope, the analyses, the independent check, {@code internal.numeric}, the model and base. Start
 * reading at {@link org.lifeline.design.assessment.Assessment}, then {@link org.lifeline.design.assessment.AssessmentResult}.
 * Every number that steers the search in time stands in {@code SearchParameters}.
 *
 * <p>An assessment computes the stated falls, moves the falls over the whole line by energy balance (the envelope), follows
 * arrests in time where a load, a force or a distance may be at its worst, judges the criteria on the worst of all of them,
 * checks what governs a second way, and says what it could not compute. Which method a verdict rests on is the
 * {@link org.lifeline.design.assessment.Basis}. Signs are those of the analyses; values carry the model factors of the design
 * where they say so.
 *
 * <p>Limits: the search in time samples the line on coarse meshes and follows the worst of that finely; a worse place between
 * two samples is found as far as the tests against a search of 25 places a span show.
 */
@NullMarked
package org.lifeline.design.assessment;

import org.jspecify.annotations.NullMarked;
