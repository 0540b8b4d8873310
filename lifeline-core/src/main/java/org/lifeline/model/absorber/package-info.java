/**
 * Floor 2: how an energy absorber deploys: its loading curve, and a deployment force that is stated with its scatter.
 *
 * <p>Immutable and checked when built; SI (m, N, J). May use {@code base} only. Start reading with {@link
 * org.lifeline.model.absorber.LoadingCurve}.
 */
@NullMarked
package org.lifeline.model.absorber;

import org.jspecify.annotations.NullMarked;
