/**
 * Floor 6e: what those need who install a line: lengths to cut, take-up of the tensioner, constructional stretch, stringing table,
 * and what a reading outside the tolerance means.
 *
 * <p>Uses field checks and stringing tables, the envelope, the analyses, the model and base. Start reading at {@link
 * org.lifeline.design.installation.InstallationPlan}.
 *
 * <p>Lengths are of stress-free cable [m] at the temperature that is named; tensions are magnitudes at the first end anchor [N];
 * strains are without unit. While a line is tensioned its cable runs over every intermediate anchor; clamps are closed afterwards.
 *
 * <p>Limits: what terminations and the tensioner itself take of the cable is not in a length; the settling of terminations and of
 * anchors that are not elastic is not in a take-up.
 */
@NullMarked
package org.lifeline.design.installation;

import org.jspecify.annotations.NullMarked;
