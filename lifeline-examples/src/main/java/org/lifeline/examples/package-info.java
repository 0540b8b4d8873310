/** The command line. */
@NullMarked
package org.lifeline.examples;

import org.jspecify.annotations.NullMarked;
