/** Tests of the example programs. */
@NullMarked
package org.lifeline.examples.programs;

import org.jspecify.annotations.NullMarked;
