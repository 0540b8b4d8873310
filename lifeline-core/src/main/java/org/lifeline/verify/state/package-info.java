/**
 * Floor 5: the numbers that a check reads off a result, and the shape of the cable that follows from them.
 *
 * <p>A result is copied into plain records: {@link org.lifeline.verify.state.StateNumbers} for a line at rest,
 * {@link org.lifeline.verify.state.ArrestNumbers} for an arrest; start reading there. What the solver knows in closed form
 * is integrated here: {@link org.lifeline.verify.state.PieceShape} integrates a piece of cable over its unstretched length
 * from the tension at its start, {@link org.lifeline.verify.state.LoadingTable} and
 * {@link org.lifeline.verify.state.ElongationTable} interpolate between the corners of the stated curves,
 * {@link org.lifeline.verify.state.MaterialPoints} finds points of the cable by length.
 *
 * <p>Made for the checks of {@code org.lifeline.verify}; a caller has no need of it, and its types may change. It builds on
 * {@code analysis} (results), {@code model} and {@code base}, never on an internal package: no formula is shared with
 * the solver. Signs are those of the results: z up, a tension vector points along the line.
 */
@NullMarked
package org.lifeline.verify.state;

import org.jspecify.annotations.NullMarked;
