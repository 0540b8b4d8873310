/**
 * Floor 6e: how many workers may be hooked on to a line at once, in each span and in all.
 *
 * <p>Uses the criteria, the combinations of the envelope, the assessment, the analyses, the model and base. Start reading at {@link org.lifeline.design.occupancy.Occupancy}.
 *
 * <p>A number is tried in every arrangement that can govern: together at one place, one after the other in one span, and with
 * the others in neighbouring spans; each of those who differ falls last. The criteria are judged on falls moved along the span, at
 * the temperatures and on both sides of the forces of the design.
 *
 * <p>Limits: by energy balance unless an assessment confirms the number; those who fell before hang at the middle of their span or
 * run to where the line lets them rest; no more than {@link org.lifeline.design.occupancy.Occupancy#MOST_CREWS} different
 * selections of a crew are tried, the heaviest first.
 */
@NullMarked
package org.lifeline.design.occupancy;

import org.jspecify.annotations.NullMarked;
