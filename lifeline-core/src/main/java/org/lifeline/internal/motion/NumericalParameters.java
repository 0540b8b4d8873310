package org.lifeline.internal.motion;

/**
 * The numbers that steer mesh, step and contact of a motion, each with its reason and its unit.
 *
 * <p>None of them is a property of the line. What a result owes to them is measured in
 * {@code src/docs/theory/transient.md}.
 */
final class NumericalParameters {
    // Step in time.

    /** Part of the largest stable step that is taken [-]: Gershgorin's bound is taken anew only every so many steps. */
    static final double STEP_SAFETY = 0.9;

    /**
     * Speed of a node at which a motion has run away [m/s]: a tension that breaks any cable moves its material at some hundred
     * metres a second.
     */
    static final double RUNAWAY_SPEED = 1e4;

    /** Step at which a motion has run away [s]: a wave crosses the shortest segment of any mesh in a thousand times as long. */
    static final double RUNAWAY_STEP = 1e-9;

    /** Steps between two looks at the stable step: directions and ratios change little within them. */
    static final int STEPS_BETWEEN_BOUNDS = 32;

    /** Steps between two looks at the mesh: material passes a small part of a segment within them. */
    static final int STEPS_BETWEEN_REMESHING = 4;

    /** No step is longer [s]: where segments go slack or taut the energy account errs by the square of the step. */
    static final double LONGEST_STEP = 2.5e-4;

    /**
     * Square of the step times the square of the angular frequency of attachment and worker on their connecting
     * subsystem, at most [-]: an eighth of what an explicit step can follow.
     */
    static final double SUBSYSTEM_STEP = 0.5;

    /** Steps at most, on account of a connecting subsystem, where the cable needs one: limits the cost of stiff ones. */
    static final double MOST_SUBSTEPS = 8;

    /** Weight of the rate after the step in the damping force [-]: above ½, so that stiff damping dies out. */
    static final double DAMPING_WEIGHT = 0.6;

    /** Weight of the tensions one step before and after in the elastic force of long steps [-]: Newmark's β = ¼ is stable. */
    static final double ELASTIC_WEIGHT = 0.25;

    /** Times that a step is solved again at most while sticking, slipping and yielding change. */
    static final int MOST_SOLUTIONS = 6;

    /** How often an in-line absorber may change the line of its curve within a step. */
    static final int MOST_LINE_CHANGES = 3;

    /** Steps between two looks at the interrupt flag: a millisecond at a thousand nodes. */
    static final int STEPS_BETWEEN_INTERRUPT_CHECKS = 64;

    // Stand-ins for nothing and for infinity.

    /** Added to the square of a length [m²], so that what has folded up to nothing is not divided by. */
    static final double TINY_SQUARE = 1e-200;

    /** Compliance of a slack segment in the damping system [m/(N·s)]: no damping force, beyond any real one. */
    static final double SLACK_COMPLIANCE = 1e30;

    /** Slope that stands for a plateau of an in-line absorber, in stiffnesses of its segment [-]: 1e-7 shifts no force. */
    static final double FLAT_SLOPE = 1e-7;

    /** Stiffness of an in-line absorber that is rigid, in stiffnesses of its segment [-]: implicit, so it costs nothing. */
    static final double RIGID_INLINE = 1e4;

    /** Rounding of an extension, relative and in [m]: decides between a line of a curve and the next one. */
    static final double EXTENSION_ROUNDING = 1e-15;

    /** Extension that is rounding of the taut length [-]. */
    static final double TAUT_ROUNDING = 1e-12;

    /** Rounding of a sampling interval [-]. */
    static final double SAMPLING_ROUNDING = 1e-9;

    // Sliding attachment.

    /** Mass of the ring of a sliding attachment, in masses of the lightest worker [-]: next to none, yet steps stay. */
    static final double RING_SHARE = 1e-4;

    /** Time in which a ring that nothing pulls comes to rest on the cable [s]: short against any swing of a worker. */
    static final double RING_REST_TIME = 5e-3;

    /**
     * Time within which momentum acts that cable brings to a ring when the mesh changes [s]: long against an axial wave
     * over a segment, so that it strains nothing, and short against any swing of a worker.
     */
    static final double MOMENTUM_TIME = 5e-3;

    /** Contact stiffness of a ring, in ring masses over the square of the step [-]: stable with a margin of forty. */
    static final double CONTACT_STIFFNESS = 0.1;

    /** Damping of a ring's contact, in times √(stiffness · mass) [-]: a quarter of the critical one. */
    static final double CONTACT_DAMPING = 0.5;

    /** Sum of two unit directions below which the cable turns back on itself at a ring [-]. */
    static final double FOLDED_BACK = 1e-6;

    // Mesh.

    /**
     * Least damping time, in times that an axial wave needs to cross a segment [-]: waves as short as a segment are not
     * the cable's but the mesh's, and shocks would feed them without end.
     */
    static final double LEAST_DAMPING = 0.5;

    /** How much longer segments are in spans where nobody falls [-]: waves come there smoothed. */
    static final double COARSER = 2;

    /** Segments that such a span has at most. */
    static final double COARSEST = 128;

    /** Least distance of an attachment from a support, absolute [m] and as a part of the span [-]: a ring needs room. */
    static final double ROOM_AT_SUPPORT = 0.05;

    static final double ROOM_AT_SUPPORT_SHARE = 0.05;

    /** Two attachments nearer than this are one joint [m]. */
    static final double TOGETHER = 0.01;

    /** Rounding of a place along a piece of cable [-]. */
    static final double PLACE_ROUNDING = 1e-12;

    /** Part of the reference length that must remain in a segment beside a joint [-]; flow stops there. */
    static final double LEAST_REMAINDER = 0.15;

    /** Distance at which a ring meets a support, in reference lengths [-]: above the least remainder. */
    static final double CONTACT_DISTANCE = 0.25;

    /** Below this part of its reference length a segment beside a joint may be merged [-]. */
    static final double SHORT = 0.65;

    /** Below this part of its reference length it must be merged [-]. */
    static final double SHORTEST = 0.25;

    /** Above this multiple of its reference length a segment beside a joint may be split [-]. */
    static final double LONG = 1.7;

    /** Above this multiple of its reference length it must be split [-]. */
    static final double LONGEST = 2;

    /** Energy that a change of the mesh may cost where it need not happen, per weight of a worker [m]. */
    static final double QUIET = 2e-5;

    /** Nodes that a chain has room for beyond twice those it starts with. */
    static final int SPARE_NODES = 64;

    // Refinement.

    /** Share by which the force on an end may exceed that of its in-line absorber and still be it [-]: weight at the node. */
    static final double SAME_FORCE = 1e-3;

    /** Segments of the first mesh in the shortest span where somebody falls, unless that makes them too long. */
    static final double FIRST_SEGMENTS = 64;

    /** Longest segment of the first mesh [m]. */
    static final double FIRST_LENGTH = 0.25;

    /**
     * Length below which segments are not halved again [m]: two diameters of a rope, where bending, which the chain does
     * not know, would smooth what a finer mesh sharpens.
     */
    static final double FINEST = 0.02;

    /** Length of the first mesh over that of the third [-]. */
    private static final double FINEST_OF_THREE = 4;

    /** Segments of the first mesh in a very short span. */
    private static final double LEAST_SEGMENTS = 8;

    /** Steps times nodes that one run may cost at most: about a minute. */
    static final double MOST_WORK = 4e9;

    private NumericalParameters() {}

    /**
     * Length of the segments of the first mesh [m]. A short span is cut so that three meshes end near the finest one, a
     * very short one into eight.
     *
     * @param span chord of the shortest span with a fall [m]
     */
    static double firstLength(double span) {
        double least = Math.min(FINEST_OF_THREE * FINEST, span / LEAST_SEGMENTS);
        return Math.max(Math.min(FIRST_LENGTH, span / FIRST_SEGMENTS), least);
    }
}
