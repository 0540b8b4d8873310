/** Tests of the package of the same name. */
@NullMarked
package org.lifeline.examples.arrests;

import org.jspecify.annotations.NullMarked;
