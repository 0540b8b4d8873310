/** Tests of the part of a study as a file. */
@NullMarked
package org.lifeline.file.study;

import org.jspecify.annotations.NullMarked;
