package org.lifeline.internal.motion;

/**
 * A place where the cable meets something else: an anchor, a worker's attachment. Owns the motion of its node and of the
 * material that passes it.
 *
 * <p>A joint takes part in a step in this order: {@link #contact}, {@link #predict}, {@link #addRows}, {@link #revise} as often as it
 * asks for, {@link #finish}, {@link #drift}. Mutable, not thread-safe.
 */
abstract class Joint {
    final LumpedMassChain chain;

    /** Index of its node in the chain. */
    int node;

    /** Force of the connecting subsystems on the joint [N]. */
    double pullX;

    double pullY;
    double pullZ;

    /** The part of it that comes from contact with neighbouring joints [N]. */
    double contactX;

    double contactY;
    double contactZ;

    /** Sum of force over length of the connecting subsystems: their stiffness against being turned [N/m]. */
    double swing;

    /** Speed of the material that passes, toward the end of the line, as unstretched length [m/s]. */
    double flow;

    /** Unstretched length that has passed since the start, toward the end of the line [m]. */
    double passed;

    /** Flow half a step ago [m/s]. */
    double flowBefore;

    /** Least unstretched length that may remain in the segment before and behind [m]. */
    double leastBefore;

    double leastBehind;

    /** Heat of friction in the last step and heat of damping at this node in the last step [J]. */
    double frictionHeat;

    double dampingHeat;

    /** A velocity that is filled in again and again, so that steps allocate nothing. */
    static final class Velocity {
        /** Components [m/s]. */
        double x;

        double y;
        double z;

        void set(double newX, double newY, double newZ) {
            x = newX;
            y = newY;
            z = newZ;
        }
    }

    Joint(LumpedMassChain chain, int node) {
        this.chain = chain;
        this.node = node;
    }

    /** Tells whether material can pass. */
    abstract boolean passes();

    /** Says that a worker's connecting subsystem is taut here. */
    void load() {
        // Only a sliding joint behaves differently before.
    }

    /** Forgets the forces of the last step. */
    final void release() {
        pullX = 0;
        pullY = 0;
        pullZ = 0;
        contactX = 0;
        contactY = 0;
        contactZ = 0;
        swing = 0;
    }

    /** Takes a force of contact. */
    final void press(double fx, double fy, double fz) {
        pullX += fx;
        pullY += fy;
        pullZ += fz;
        contactX += fx;
        contactY += fy;
        contactZ += fz;
    }

    /** Work that contact takes from the node in a step, by its velocity before and after [J]. */
    final double contactHeat(double kick, double beforeX, double beforeY, double beforeZ) {
        LumpedMassChain c = chain;
        return -0.5
                * kick
                * (contactX * (c.vx[node] + beforeX)
                        + contactY * (c.vy[node] + beforeY)
                        + contactZ * (c.vz[node] + beforeZ));
    }

    /** Contact with neighbouring joints, before any joint predicts. */
    void contact(double kick) {
        // Only what runs along the cable can meet another joint.
    }

    /** Velocity after everything but damping. */
    abstract void predict(double kick);

    /** Adds what couples the two neighbouring segments to the tridiagonal system. */
    abstract void addRows(double kick);

    /** Looks at the tensions that came out; true if the rows were changed and the system must be solved again. */
    boolean revise(double kick) {
        return false;
    }

    /**
     * Takes into the prediction that the elastic tension of a neighbouring segment changes within the step.
     *
     * @param segment the segment before the node or behind it
     * @param change by how much [N]
     * @param kick length of the step [s]
     */
    abstract void retension(int segment, double change, double kick);

    /** Velocity after damping, heat of the step. */
    abstract void finish(double kick);

    /** An upper bound of the mobility that the neighbouring segments see here [1/kg]. */
    abstract double mobility();

    /** An upper bound of the mobility that a connecting subsystem sees here [1/kg]. */
    double attachmentMobility() {
        return Math.max(mobility(), 1 / chain.mass(node));
    }

    /** Mass of cable that passes at the speed of the flow [kg]. */
    double passingMass() {
        return chain.mass(node);
    }

    boolean hasBefore() {
        return node > 0;
    }

    boolean hasBehind() {
        return node < chain.nodes - 1;
    }

    /**
     * Takes up cable that was lumped at a node merged away.
     *
     * @param mass its mass [kg]
     * @param velocity its velocity
     * @param segment the neighbouring segment that it comes from
     */
    void absorb(double mass, Velocity velocity, int segment) {
        // Only where material passes does the cable at a joint have a motion of its own.
    }

    /**
     * Gives away cable to a node that is split off and moves with the material.
     *
     * @param mass its mass [kg]
     * @param segment the neighbouring segment that it goes to
     */
    void shed(double mass, int segment) {
        // Only a ring has cable that moves otherwise than along a segment.
    }

    /** Takes the directions beside it after a change of the mesh, where they leap. */
    void remeshed() {
        // Only a ring keeps one.
    }

    /** Kinetic energy of joint and cable lumped here, if the joint moves it [J]. */
    double cableEnergy() {
        return 0.5 * passingMass() * flow * flow;
    }

    /** Fills in the velocity of the cable that passes here, on the side of a segment: along it, seen from the node. */
    final void cableVelocity(int segment, Velocity out) {
        double speed = flow * taut(segment);
        out.set(
                chain.vx[node] + speed * chain.ux[segment],
                chain.vy[node] + speed * chain.uy[segment],
                chain.vz[node] + speed * chain.uz[segment]);
    }

    /** Stretch of a segment, stretched over unstretched length [-]; 1 where it is slack. */
    final double taut(int segment) {
        return Math.max(1, chain.ratio(segment));
    }

    /** Passes material on, from one neighbouring segment to the other. */
    final void drift(double step) {
        if (flow == 0) {
            return;
        }
        double moved = step * flow;
        passed += moved;
        chain.setLength(node - 1, chain.length[node - 1] - moved);
        chain.setLength(node, chain.length[node] + moved);
        if (chain.mobility[node - 1] > 0) {
            chain.reweigh(node - 1);
        }
        if (chain.mobility[node + 1] > 0) {
            chain.reweigh(node + 1);
        }
    }

    /** Tells whether a flow would use up a neighbouring segment. */
    final boolean blocked(double speed) {
        return speed > 0 ? chain.length[node - 1] < leastBefore : speed < 0 && chain.length[node] < leastBehind;
    }

    /**
     * Force on the flow that comes from the weight of the neighbouring segments and from the momentum of the nodes whose
     * mass changes [N].
     */
    final double flowLoad() {
        LumpedMassChain c = chain;
        double weight = -0.5 * c.massPerLength * c.gravity * (c.z[node + 1] - c.z[node - 1]);
        double ahead = c.mobility[node + 1] > 0 ? c.speedSquared(node + 1) : 0;
        double behind = c.mobility[node - 1] > 0 ? c.speedSquared(node - 1) : 0;
        return weight + 0.25 * c.massPerLength * (ahead - behind);
    }
}
