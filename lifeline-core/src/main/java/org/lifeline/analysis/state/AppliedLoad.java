package org.lifeline.analysis.state;

import org.lifeline.base.Violations;
import org.lifeline.model.Attachment;
import org.lifeline.model.Place;

/**
 * A vertical load on the line.
 *
 * <p>Immutable and thread-safe.
 *
 * @param place where it is hooked on
 * @param attachment whether it grips the cable there or is free to run
 * @param force downward force [N], not negative
 * @since 1.0.0
 */
public record AppliedLoad(Place place, Attachment attachment, double force) {
    /**
     * Checks the force.
     *
     * @param place where it is hooked on
     * @param attachment whether it grips the cable there or is free to run
     * @param force downward force [N], not negative
     * @throws org.lifeline.base.InvalidInputException if it is negative or not finite
     */
    public AppliedLoad {
        Violations.required("place", place);
        Violations.required("attachment", attachment);
        new Violations().notNegative("force", force, "N").throwIfAny();
    }
}
