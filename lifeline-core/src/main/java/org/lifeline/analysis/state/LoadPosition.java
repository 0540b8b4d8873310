package org.lifeline.analysis.state;

import java.util.Optional;
import org.lifeline.base.Point;

/**
 * Where a load hangs.
 *
 * <p>Immutable and thread-safe.
 *
 * @param span number of the span, from 1; 0 for a load at a support
 * @param point where the attachment is
 * @param force downward force [N]
 * @param restsOn the support that carries the load: one at which somebody is hooked on, or one on which a free-running
 *     load rests itself, so that the cable runs past it without carrying it; empty for a load on the cable
 * @since 1.0.0
 */
public record LoadPosition(int span, Point point, double force, Optional<String> restsOn) {}
