/** Tests of the package of the same name. */
@NullMarked
package org.lifeline.examples.json;

import org.jspecify.annotations.NullMarked;
