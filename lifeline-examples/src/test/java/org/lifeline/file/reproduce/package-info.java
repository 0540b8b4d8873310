/** Tests of the reproduction. */
@NullMarked
package org.lifeline.file.reproduce;

import org.jspecify.annotations.NullMarked;
