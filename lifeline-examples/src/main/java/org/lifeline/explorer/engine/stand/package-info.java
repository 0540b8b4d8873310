/**
 * Classes that stand in, in the compiled page alone, for those of the JDK and of libraries that the compiler for browsers does
 * not have. They keep the names of what they stand in for; the reader and the writer of files need them, the core does not.
 */
@NullMarked
package org.lifeline.explorer.engine.stand;

import org.jspecify.annotations.NullMarked;
