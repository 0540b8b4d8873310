/** Tests of the gate for outputs. */
@NullMarked
package org.lifeline.examples.files;

import org.jspecify.annotations.NullMarked;
