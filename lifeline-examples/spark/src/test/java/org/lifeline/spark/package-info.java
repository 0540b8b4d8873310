/** The recipe on Spark in its local mode. */
@NullMarked
package org.lifeline.spark;

import org.jspecify.annotations.NullMarked;
