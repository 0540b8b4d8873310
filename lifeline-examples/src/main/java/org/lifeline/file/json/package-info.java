/**
 * JSON text as a tree, and what is found wrong with it, in words.
 *
 * <p>Start reading at {@link org.lifeline.file.json.JsonTree}; {@link org.lifeline.file.json.Findings} collects violations
 * with their paths while a file is read. Not part of the public interface. The package knows nothing of what a file holds; it
 * may use Jackson and {@code org.lifeline.base}.
 */
@NullMarked
package org.lifeline.file.json;

import org.jspecify.annotations.NullMarked;
