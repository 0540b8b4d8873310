/**
 * Floor 0: what a value consists of, in a form that is the same on every machine: names, numbers with unit, texts. From it
 * follow a fingerprint, by which results can be stored and found again, and the differences between two values.
 *
 * <p>Start reading with {@link org.lifeline.base.canonical.CanonicalForm}.
 *
 * @since 1.0.0
 */
@NullMarked
package org.lifeline.base.canonical;

import org.jspecify.annotations.NullMarked;
