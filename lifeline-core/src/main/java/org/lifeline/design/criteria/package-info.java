/**
 * Floor 6: criteria as data, and what they say of a design.
 *
 * <p>Uses the envelope, the analyses, the model and base. Start reading at {@link org.lifeline.design.criteria.Criteria} for the
 * values and at {@code Requirement} for how they are put together.
 *
 * <p>A criterion compares a demand with a capacity; it has an identity, a source with its clause, a jurisdiction, and a mark
 * that says whether its value was read in that source. The result is a ratio of demand to capacity with the case that
 * governs, for a qualified person to judge: nothing here says that a design complies with anything. Where data are missing a
 * criterion is not evaluated and says why.
 *
 * <p>Values are SI: [N], [m], [kg], [rad]; forces and distances carry the model factors of the design.
 */
@NullMarked
package org.lifeline.design.criteria;

import org.jspecify.annotations.NullMarked;
