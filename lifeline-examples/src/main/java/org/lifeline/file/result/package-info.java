/**
 * How a result file is drawn up: the stated falls of a design as they are written, their comparisons with the criteria, their
 * independent check, and the writer. Not exported by the module: a program uses {@link org.lifeline.file.ResultFile}.
 */
@NullMarked
package org.lifeline.file.result;

import org.jspecify.annotations.NullMarked;
