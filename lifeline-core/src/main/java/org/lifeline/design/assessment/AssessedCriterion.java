package org.lifeline.design.assessment;

import org.lifeline.design.criteria.CriterionResult;

/**
 * A criterion judged on the worst of the whole line.
 *
 * <p>Immutable and thread-safe.
 *
 * @param result on the basis of the assessment; met only if everything that the criterion needs was computed
 * @param stated the same for the stated falls alone by energy balance, for comparison
 * @param remark what has to be said beside the result, for example that arrests were not followed in time; may be empty
 * @since 1.0.0
 */
public record AssessedCriterion(CriterionResult result, CriterionResult stated, String remark) {}
