/**
 * What the criteria of a design say of it, laid out comparison by comparison. The criteria themselves are the core's.
 *
 * <p>A criterion never says that a design complies with anything: it gives the ratio of demand to capacity for a qualified
 * person to judge.
 */
@NullMarked
package org.lifeline.examples.criteria;

import org.jspecify.annotations.NullMarked;
