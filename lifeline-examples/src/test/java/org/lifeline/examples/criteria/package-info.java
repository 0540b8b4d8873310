/** Tests of the package of the same name. */
@NullMarked
package org.lifeline.examples.criteria;

import org.jspecify.annotations.NullMarked;
