/** Tests of the library as it was compiled for a browser, without a browser: the same digits as the JVM. */
@NullMarked
package org.lifeline.explorer.engine;

import org.jspecify.annotations.NullMarked;
