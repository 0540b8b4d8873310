/** Tests of the reproduction. */
@NullMarked
package org.lifeline.examples.reproduce;

import org.jspecify.annotations.NullMarked;
