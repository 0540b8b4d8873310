/** Tests of the package of the same name; they run no benchmark. */
@NullMarked
package org.lifeline.benchmarks;

import org.jspecify.annotations.NullMarked;
