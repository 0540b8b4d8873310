/** The files as a program of another firm uses them: public packages only. */
@NullMarked
package org.lifeline.file.embedding;

import org.jspecify.annotations.NullMarked;
