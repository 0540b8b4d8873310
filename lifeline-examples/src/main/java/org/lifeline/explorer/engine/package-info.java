/** What a page asks of the library, compiled for the browser: texts in, texts out. Quantities in SI, as in result files. */
@NullMarked
package org.lifeline.explorer.engine;

import org.jspecify.annotations.NullMarked;
