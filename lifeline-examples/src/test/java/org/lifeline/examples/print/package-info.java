/** Tests of the package of the same name. */
@NullMarked
package org.lifeline.examples.print;

import org.jspecify.annotations.NullMarked;
