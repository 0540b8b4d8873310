package org.lifeline.internal.motion;

/**
 * The line at one moment. Room is made at the start, so that taking it allocates nothing. Not thread-safe.
 */
public final class MotionState {
    /** The parts of the energy account of a motion, by their places in an array. */
    public static final class Energy {
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

        private Energy() {}
    }

    private final double[] x;
    private final double[] y;
    private final double[] z;
    private final double[] length;
    private final double[] tension;
    private final double[] energy = new double[Energy.PARTS];
    private final int[] support;
    private final int[] attachment;
    private final double[] passed;
    private final double[] body;
    private final double[] inline = new double[2];
    private int nodes;
    private double time = Double.NaN;

    MotionState(int capacity, int supports, int bodies) {
        x = new double[capacity];
        y = new double[capacity];
        z = new double[capacity];
        length = new double[capacity];
        tension = new double[capacity];
        support = new int[supports];
        attachment = new int[bodies];
        passed = new double[supports];
        body = new double[3 * bodies];
    }

    void take(MotionSystem s) {
        LumpedMassChain c = s.chain;
        nodes = c.nodes;
        time = s.time;
        System.arraycopy(c.x, 0, x, 0, nodes);
        System.arraycopy(c.y, 0, y, 0, nodes);
        System.arraycopy(c.z, 0, z, 0, nodes);
        System.arraycopy(c.length, 0, length, 0, nodes - 1);
        System.arraycopy(c.tension, 0, tension, 0, nodes - 1);
        for (int i = 0; i < support.length; i++) {
            support[i] = s.anchors[i].node;
            passed[i] = s.anchors[i].passed;
        }
        for (int i = 0; i < attachment.length; i++) {
            attachment[i] = s.bodies[i].joint.node;
            body[3 * i] = s.bodies[i].x;
            body[3 * i + 1] = s.bodies[i].y;
            body[3 * i + 2] = s.bodies[i].z;
        }
        for (int e = 0; e < 2; e++) {
            InlineElement at = s.inline[e];
            inline[e] = at == null ? 0 : at.extension;
        }
        s.energies(energy);
    }

    /**
     * Time at which it was taken.
     *
     * @return time [s]; NaN if it never was
     */
    public double time() {
        return time;
    }

    /**
     * A part of the energy account.
     *
     * @param part see {@link Energy}
     * @return energy [J]
     */
    public double energy(int part) {
        return energy[part];
    }

    /**
     * Node at a support.
     *
     * @param number the support
     * @return index of its node
     */
    public int supportNode(int number) {
        return support[number];
    }

    /**
     * Node at a worker's attachment.
     *
     * @param number the worker
     * @return index of its node
     */
    public int attachmentNode(int number) {
        return attachment[number];
    }

    /**
     * Unstretched length that has passed a support since the start, toward the end of the line.
     *
     * @param number the support
     * @return length [m]
     */
    public double passed(int number) {
        return passed[number];
    }

    /**
     * A coordinate of a worker's harness attachment.
     *
     * @param number the worker
     * @param axis 0, 1, 2 for x, y, z
     * @return coordinate [m]
     */
    public double body(int number, int axis) {
        return body[3 * number + axis];
    }

    /**
     * Extension of an in-line absorber.
     *
     * @param end 0 or 1
     * @return extension [m]
     */
    public double inline(int end) {
        return inline[end];
    }

    /**
     * A coordinate of a node.
     *
     * @param node the node
     * @param axis 0, 1, 2 for x, y, z
     * @return coordinate [m]
     */
    public double position(int node, int axis) {
        return axis == 0 ? x[node] : axis == 1 ? y[node] : z[node];
    }

    /**
     * Unstretched length of a segment.
     *
     * @param segment the segment, behind the node of the same number
     * @return length [m]
     */
    public double length(int segment) {
        return length[segment];
    }

    /**
     * Tension of a segment.
     *
     * @param segment the segment
     * @return tension [N]
     */
    public double tension(int segment) {
        return tension[segment];
    }
}
