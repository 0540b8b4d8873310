/** Tests of the gate for outputs. */
@NullMarked
package org.lifeline.file.output;

import org.jspecify.annotations.NullMarked;
