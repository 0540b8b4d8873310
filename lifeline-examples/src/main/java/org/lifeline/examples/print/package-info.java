/** The printed calculation: inputs as given, results in SI and US customary units, every step with symbol and formula. */
@NullMarked
package org.lifeline.examples.print;

import org.jspecify.annotations.NullMarked;
