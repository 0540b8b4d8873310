package org.lifeline.analysis;

import org.lifeline.base.Point;

/**
 * Where a load hangs.
 *
 * <p>Immutable and thread-safe.
 *
 * @param span number of the span, from 1
 * @param point where the attachment is
 * @param force downward force [N]
 */
public record LoadPosition(int span, Point point, double force) {}
