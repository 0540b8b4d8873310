/** A Monte Carlo study whose parts Apache Spark hands out to its machines. */
@NullMarked
package org.lifeline.spark;

import org.jspecify.annotations.NullMarked;
