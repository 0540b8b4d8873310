/** Tests of the package of the same name. */
@NullMarked
package org.lifeline.examples.units;

import org.jspecify.annotations.NullMarked;
