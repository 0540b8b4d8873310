/**
 * Floor 4: the clearance of an arrest as an account of elevations, from the line before the fall down to the margin.
 *
 * <p>Start with {@link org.lifeline.analysis.clearance.Clearance}, the account of the worker who needs the most;
 * {@link org.lifeline.analysis.clearance.ClearanceAccount} draws it up. The package knows the model only, not the
 * analyses that call it. Signs: elevations z up, lengths of a row positive down.
 */
@NullMarked
package org.lifeline.analysis.clearance;

import org.jspecify.annotations.NullMarked;
