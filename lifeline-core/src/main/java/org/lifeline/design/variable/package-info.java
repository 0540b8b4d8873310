/**
 * Floor 6: which values of a design variable meet the criteria. A variable turns a value into a changed design; a search finds
 * the range of values for which all chosen criteria are met, with the criterion that closes each end.
 *
 * <p>Uses criteria, the envelope, the analyses, {@code internal.numeric}, the model and base. Start reading at
 * {@link org.lifeline.design.variable.FeasibleSearch}.
 *
 * <p>The search works on the worst ratio of demand to capacity over all criteria and all cases: it samples the variable
 * over its bounds and finds each crossing of 1 by bracketed root finding. Where no sample is feasible it looks for the
 * least worst ratio between the samples. A feasible or infeasible stretch that lies wholly between two samples of the other
 * kind, without showing as a turn of the ratio, is not seen; more samples narrow that.
 *
 * <p>Values of variables are SI.
 */
@NullMarked
package org.lifeline.design.variable;

import org.jspecify.annotations.NullMarked;
