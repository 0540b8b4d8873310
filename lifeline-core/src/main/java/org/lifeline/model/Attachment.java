package org.lifeline.model;

/**
 * How the connecting subsystem of a worker holds on to the line.
 *
 * @since 1.0.0
 */
public enum Attachment {
    /** Holds one material point of the cable: a rope grab or a knot. */
    GRIPPED,
    /** A traveller or connector without friction: runs along its span to where the tension is equal on both sides. */
    FREE_RUNNING
}
