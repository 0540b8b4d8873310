/** What a design file adds to the core's calculation report: the input as it was written, and what it left out. */
@NullMarked
package org.lifeline.examples.print;

import org.jspecify.annotations.NullMarked;
