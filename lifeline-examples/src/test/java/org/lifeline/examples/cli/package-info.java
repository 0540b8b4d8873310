/** Tests of the package of the same name. */
@NullMarked
package org.lifeline.examples.cli;

import org.jspecify.annotations.NullMarked;
