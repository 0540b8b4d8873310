/** Benchmarks of the library, as ratios to a bare kernel; see {@code benchmarks/README.md}. */
@NullMarked
package org.lifeline.benchmarks;

import org.jspecify.annotations.NullMarked;
