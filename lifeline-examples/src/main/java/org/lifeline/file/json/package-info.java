/**
 * JSON text as a tree, and what is found wrong with it, in words.
 *
 * <p>Start reading at {@link org.lifeline.file.json.JsonTree}; {@link org.lifeline.file.json.Findings} collects violations
 * with their paths while a file is read. Who reads says which code a broken {@link org.lifeline.file.json.JsonRule} has, so
 * that the package knows nothing of what a file holds; it may use Jackson and {@code org.lifeline.base}. Not part of the
 * public interface.
 */
@NullMarked
package org.lifeline.file.json;

import org.jspecify.annotations.NullMarked;
