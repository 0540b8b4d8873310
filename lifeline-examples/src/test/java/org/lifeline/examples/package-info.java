/** Tests of the examples as a whole. */
@NullMarked
package org.lifeline.examples;

import org.jspecify.annotations.NullMarked;
