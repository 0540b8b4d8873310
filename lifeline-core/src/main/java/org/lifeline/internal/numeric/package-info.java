/**
 * Floor 1: linear systems, scalar roots, extrapolation, statistics, and work in a fixed order. The only door to EJML and Commons Math; their exceptions are turned into
 * ours here. Not part of the public interface.
 */
@NullMarked
package org.lifeline.internal.numeric;

import org.jspecify.annotations.NullMarked;
