package org.lifeline.internal.motion;

/** The parts of the energy account of a motion, by their places in an array. */
public final class MotionEnergy {
    /** Kinetic energy of the cable. */
    public static final int CABLE_MOTION = 0;

    /** Kinetic energy of the workers. */
    public static final int WORKER_MOTION = 1;

    /** Strain energy of the cable. */
    public static final int STRAIN = 2;

    /** Potential energy of the cable's weight. */
    public static final int WEIGHT = 3;

    /** Energy of the elastic anchors. */
    public static final int ANCHORS = 4;

    /** Work taken by the connecting subsystems. */
    public static final int CONNECTIONS = 5;

    /** Work taken by the in-line absorbers. */
    public static final int INLINE = 6;

    /** Heat of friction at the anchors. */
    public static final int FRICTION = 7;

    /** Heat of the cable's internal damping. */
    public static final int DAMPING = 8;

    /** Potential energy of the workers. */
    public static final int WORKER_WEIGHT = 9;

    /** What merging and splitting segments beside joints has cost. */
    public static final int MESH = 10;

    /** Number of parts. */
    public static final int PARTS = 11;

    private MotionEnergy() {}
}
