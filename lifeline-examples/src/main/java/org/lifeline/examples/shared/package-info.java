/**
 * What several example programs share: their arguments, the part of a design that they look at, and how they write a value
 * or a case.
 *
 * <p>Start with {@link org.lifeline.examples.shared.DesignArgument}. The package may use the library and the files; it knows
 * none of the programs.
 */
@NullMarked
package org.lifeline.examples.shared;

import org.jspecify.annotations.NullMarked;
