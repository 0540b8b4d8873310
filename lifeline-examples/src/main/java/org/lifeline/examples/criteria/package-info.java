/**
 * Criteria as data: a demand, a capacity, the source of the limit and whether its value was read there.
 *
 * <p>A criterion never says that a design complies with anything: it gives the ratio of demand to capacity for a qualified
 * person to judge. All values are SI.
 */
@NullMarked
package org.lifeline.examples.criteria;

import org.jspecify.annotations.NullMarked;
