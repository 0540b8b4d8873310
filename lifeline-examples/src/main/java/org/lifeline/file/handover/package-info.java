/**
 * The parts that a design hands over, as members of the result file.
 *
 * <p>Start reading at {@link org.lifeline.file.handover.HandoverWriter}. Numbers are SI and unrounded but where a member says so; angles
 * are in radians.
 */
@NullMarked
package org.lifeline.file.handover;

import org.jspecify.annotations.NullMarked;
