/**
 * The part of a Monte Carlo study as a file, format {@code org.lifeline.study/1}: what one machine has done, to be stored, sent and
 * put together with the parts of others.
 */
@NullMarked
package org.lifeline.file.study;

import org.jspecify.annotations.NullMarked;
