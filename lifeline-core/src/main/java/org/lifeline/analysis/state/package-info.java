/**
 * Floor 4: what an analysis reads off one state of a line: reactions, loads, in-line absorbers, places on the
 * cable, where the energy of a fall went, which limit of a free-running attachment it belongs to.
 *
 * <p>Values only; they are made by {@code analysis}. z up; forces on an anchor are those that the line exerts on it. Start
 * reading with {@link org.lifeline.analysis.state.SupportReaction}.
 */
@NullMarked
package org.lifeline.analysis.state;

import org.jspecify.annotations.NullMarked;
