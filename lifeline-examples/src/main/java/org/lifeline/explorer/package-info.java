/**
 * The line in a browser: one HTML file with the library in it, compiled for the browser, that loads nothing.
 *
 * <p>{@link org.lifeline.explorer.ExplorerPage} puts the file together; what the page asks of the library stands in
 * {@code org.lifeline.explorer.engine}; the page itself is among the resources.
 */
@NullMarked
package org.lifeline.explorer;

import org.jspecify.annotations.NullMarked;
