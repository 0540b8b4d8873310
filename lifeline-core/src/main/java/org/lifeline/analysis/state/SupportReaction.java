package org.lifeline.analysis.state;

import org.lifeline.base.Vector3;

/**
 * What the line does to a support.
 *
 * <p>Immutable and thread-safe.
 *
 * @param id the support
 * @param vector force of the line on the anchor, components in [N]
 * @param displacement displacement of the anchor since installation, components in [m]
 * @param slip unstretched length of cable that has passed since installation [m], positive toward the start of the line
 */
public record SupportReaction(String id, Vector3 vector, Vector3 displacement, double slip) {
    /**
     * Magnitude of the force on the anchor.
     *
     * @return force [N]
     */
    public double force() {
        return vector.magnitude();
    }

    /**
     * Angle of the force below the horizontal.
     *
     * @return angle [rad], positive when the anchor is pulled down
     */
    public double angleBelowHorizontal() {
        return StrictMath.atan2(-vector.z(), vector.horizontal());
    }
}
