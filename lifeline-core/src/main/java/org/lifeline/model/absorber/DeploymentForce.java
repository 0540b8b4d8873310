package org.lifeline.model.absorber;

/**
 * Which side of an absorber's force range an analysis takes.
 *
 * @since 1.0.0
 */
public enum DeploymentForce {
    /** The low deployment force: governs distances and clearance. */
    CLEARANCE,
    /** The high deployment force: governs loads. */
    MAXIMUM
}
