package org.lifeline.internal.motion;

import java.util.List;

/**
 * Keeps segments beside joints from growing too short or too long while material runs through: a node that comes too
 * near is merged away, a segment that has grown too long is split. Unstretched length and the momentum of the cable are
 * kept; what a kink at a merged node held of stretch is passed to the merged segment. A node that is split off moves
 * with the material, so that its segments go on being strained as the one before.
 *
 * <p>Mutable, not thread-safe.
 */
final class Remeshing {
    private final LumpedMassChain chain;
    private final List<Joint> joints;
    private final double[] reference;
    private final double allowance;
    private final Joint.Velocity velocity = new Joint.Velocity();

    /** Energy that merging and splitting have cost so far [J]. */
    double lost;

    /** How often a node was merged away or split off. */
    int changes;

    /**
     * A remeshing.
     *
     * @param chain the chain
     * @param joints the joints in their order along the chain
     * @param reference reference length of the segments between joint i and joint i + 1 [m]
     * @param weight weight of the lightest worker [N]
     */
    Remeshing(LumpedMassChain chain, List<Joint> joints, List<Double> reference, double weight) {
        this.allowance = NumericalParameters.QUIET * weight;
        this.chain = chain;
        this.joints = joints;
        this.reference = reference.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Looks at every joint that material passes; true if the mesh was changed. */
    boolean adapt() {
        boolean changed = false;
        for (int i = 0; i < joints.size(); i++) {
            Joint joint = joints.get(i);
            if (joint.passes()) {
                changed |= before(i, joint);
                changed |= behind(i, joint);
            }
        }
        return changed;
    }

    private boolean before(int i, Joint joint) {
        double length = chain.length[joint.node - 1];
        double unit = reference[i - 1];
        int inside = joint.node - joints.get(i - 1).node - 1;
        if (inside > 0
                && length < NumericalParameters.SHORT * unit
                && (length < NumericalParameters.SHORTEST * unit || quiet(joint, joint.node - 1))) {
            merge(i, joint, joint.node - 1);
            return true;
        }
        if (chain.hasRoom()
                && length > NumericalParameters.LONG * unit
                && (length > NumericalParameters.LONGEST * unit || quiet(joint, joint.node - 1))) {
            split(i, joint, joint.node - 1, length - unit * (inside > 0 ? 1 : 0.5 * length / unit));
            return true;
        }
        return false;
    }

    private boolean behind(int i, Joint joint) {
        double length = chain.length[joint.node];
        double unit = reference[i];
        int inside = joints.get(i + 1).node - joint.node - 1;
        if (inside > 0
                && length < NumericalParameters.SHORT * unit
                && (length < NumericalParameters.SHORTEST * unit || quiet(joint, joint.node + 1))) {
            merge(i + 1, joint, joint.node + 1);
            return true;
        }
        if (chain.hasRoom()
                && length > NumericalParameters.LONG * unit
                && (length > NumericalParameters.LONGEST * unit || quiet(joint, joint.node + 1))) {
            split(i + 1, joint, joint.node, length - unit * (inside > 0 ? 1 : 0.5 * length / unit));
            return true;
        }
        return false;
    }

    /**
     * Tells whether merging a node away, or splitting one off, costs next to no energy now: the cable at node and joint
     * moves alike, and there is no kink at the node that would have to be straightened.
     */
    private boolean quiet(Joint joint, int node) {
        LumpedMassChain c = chain;
        joint.cableVelocity(node > joint.node ? joint.node : node, velocity);
        double dx = c.vx[node] - velocity.x;
        double dy = c.vy[node] - velocity.y;
        double dz = c.vz[node] - velocity.z;
        double mixed = 0.25 * c.mass(node) * (dx * dx + dy * dy + dz * dz);
        if (node == 0 || node == c.nodes - 1) {
            return mixed < allowance;
        }
        double a = c.stretched[node - 1];
        double b = c.stretched[node];
        double straightened = a * b / (a + b) * Math.max(0, 1 - c.cosine(node - 1));
        return mixed + c.tension[node] * straightened < allowance;
    }

    /**
     * Energy of what a change touches: cable at nodes and at the joints of the bay, strain of a stretch of segments
     * [J].
     */
    private double energy(int nextJoint, int from, int to) {
        LumpedMassChain c = chain;
        double sum =
                joints.get(nextJoint - 1).cableEnergy() + joints.get(nextJoint).cableEnergy();
        for (int i = from; i <= to; i++) {
            if (c.mobility[i] > 0) {
                sum += 0.5 * c.speedSquared(i) / c.mobility[i];
            }
        }
        for (int j = from; j < to; j++) {
            sum += c.strainEnergy(j);
        }
        return sum;
    }

    /** Merges a node away; its mass goes to its two neighbours as a lever would put it. */
    private void merge(int nextJoint, Joint joint, int node) {
        LumpedMassChain c = chain;
        boolean ahead = node > joint.node;
        int other = ahead ? node + 1 : node - 1;
        int near = ahead ? node - 1 : node;
        int far = ahead ? node : node - 1;
        double toJoint = 0.5 * c.massPerLength * c.length[far];
        double toOther = 0.5 * c.massPerLength * c.length[near];
        lost += energy(nextJoint, node - 1, node + 1);
        velocity.set(c.vx[node], c.vy[node], c.vz[node]);
        if (c.mobility[other] > 0) {
            double m = 1 / c.mobility[other];
            c.vx[other] = (m * c.vx[other] + toOther * velocity.x) / (m + toOther);
            c.vy[other] = (m * c.vy[other] + toOther * velocity.y) / (m + toOther);
            c.vz[other] = (m * c.vz[other] + toOther * velocity.z) / (m + toOther);
            c.mobility[other] = 1 / (m + toOther);
        } else {
            joints.get(ahead ? nextJoint : nextJoint - 1).absorb(toOther, velocity, far);
        }
        joint.absorb(toJoint, velocity, near);
        c.remove(node);
        shift(nextJoint, -1);
        changed(nextJoint, node - 1, node);
    }

    /** Splits a segment beside a joint; the part beside the joint gets a given length. */
    private void split(int nextJoint, Joint joint, int segment, double beside) {
        LumpedMassChain c = chain;
        boolean ahead = segment == joint.node;
        double first = ahead ? beside : c.length[segment] - beside;
        lost += energy(nextJoint, segment, segment + 1);
        materialWithin(nextJoint, segment, first / c.length[segment]);
        shed(nextJoint, segment, first);
        c.insert(segment, first);
        shift(nextJoint, 1);
        int fresh = segment + 1;
        c.vx[fresh] = velocity.x;
        c.vy[fresh] = velocity.y;
        c.vz[fresh] = velocity.z;
        c.mobility[fresh] = 1 / c.mass(fresh);
        int other = ahead ? fresh + 1 : fresh - 1;
        if (c.mobility[other] > 0) {
            c.mobility[other] = 1 / c.mass(other);
        }
        changed(nextJoint, segment, segment + 2);
    }

    /** Takes account of a change: directions and energies of what it touched. */
    private void changed(int nextJoint, int from, int to) {
        ChainStep.geometry(chain);
        joints.get(nextJoint - 1).remeshed();
        joints.get(nextJoint).remeshed();
        lost -= energy(nextJoint, from, to);
        changes++;
    }

    /** Tells the joints at the ends of a segment what cable goes over to the node that it gets [kg]. */
    private void shed(int nextJoint, int segment, double first) {
        Joint from = joints.get(nextJoint - 1);
        Joint to = joints.get(nextJoint);
        if (from.node == segment) {
            from.shed(0.5 * chain.massPerLength * (chain.length[segment] - first), segment);
        }
        if (to.node == segment + 1) {
            to.shed(0.5 * chain.massPerLength * first, segment);
        }
    }

    /**
     * Takes the velocity of the material within a segment. The segment stays straight, and along it the velocity is
     * linear from end to end of the cable, so that both parts are strained at the rate of the whole. At an end where
     * material passes, or where the link of an absorber grows, the cable has another velocity than the node: flow and
     * growth along the segment come to it.
     */
    private void materialWithin(int nextJoint, int segment, double part) {
        LumpedMassChain c = chain;
        Joint from = joints.get(nextJoint - 1);
        Joint to = joints.get(nextJoint);
        int next = segment + 1;
        double chord = c.chord(segment);
        double ex = (c.x[next] - c.x[segment]) / chord;
        double ey = (c.y[next] - c.y[segment]) / chord;
        double ez = (c.z[next] - c.z[segment]) / chord;
        double dx = c.vx[next] - c.vx[segment];
        double dy = c.vy[next] - c.vy[segment];
        double dz = c.vz[next] - c.vz[segment];
        double ratio = (chord - c.link(segment) - c.link(next)) * c.perLength[segment];
        double ahead = ratio * (from.node == segment ? from.flow : 0) + c.linkRate(segment);
        double behind = ratio * (to.node == next ? to.flow : 0) - c.linkRate(next);
        double share = c.divide(segment, part);
        double along = (part - share) * (dx * ex + dy * ey + dz * ez) + (1 - part) * ahead + part * behind;
        velocity.set(
                c.vx[segment] + share * dx + along * ex,
                c.vy[segment] + share * dy + along * ey,
                c.vz[segment] + share * dz + along * ez);
    }

    private void shift(int from, int by) {
        // A joint that the change happens in front of moves by one in the chain, and so do all behind it.
        for (int k = from; k < joints.size(); k++) {
            joints.get(k).node += by;
        }
    }
}
