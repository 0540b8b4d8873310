/**
 * The one gate that every output of every command and example passes.
 *
 * <p>An {@link org.lifeline.file.output.OutputSet} holds the outputs of one command. It refuses, before anything is
 * computed, a place that is an input of the same command, that is the place of another of its outputs, or that holds a file
 * which is not a former output of the same kind; a design file is never replaced. Files are written beside their places and
 * moved there together when all of them are whole; FIFOs and devices are written to directly.
 */
@NullMarked
package org.lifeline.file.output;

import org.jspecify.annotations.NullMarked;
