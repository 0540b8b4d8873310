package org.lifeline.internal.motion;

import org.lifeline.internal.motion.law.TensionStrainLaw;
import org.lifeline.internal.numeric.OrderedWork;

/**
 * The cable as a chain of lumped masses: nodes 0 … n, segments 0 … n − 1, segment j from node j to node j + 1.
 *
 * <p>Each segment hangs half of its mass on either end. Nodes that belong to a joint have no mobility here; their joint
 * moves them. Plain arrays, so that the stepping loop allocates nothing. Mutable, not thread-safe.
 */
final class LumpedMassChain {
    /** Mass per unstretched length at the temperature of the line [kg/m]. */
    final double massPerLength;

    /** Acceleration of gravity [m/s²]. */
    final double gravity;

    /** How the rope stretches. */
    final TensionStrainLaw law;

    /** Weight of the rate after the step in the damping force [-]; more where steps are long, see {@link MotionSystem}. */
    double weight = NumericalParameters.DAMPING_WEIGHT;

    /** Internal damping time τ [s]. */
    final double dampingTime;

    /** Number of nodes. */
    int nodes;

    /** True if the line lies in a plane y = const and nothing ever leaves it; y, v and w across it are then not touched. */
    boolean plane;

    /** Largest tension of the last step [N]. */
    double largest;

    /** Length of the links of in-line absorbers in the first and in the last segment [m]. */
    double firstLink;

    double lastLink;

    /** Speeds at which they grew in the last step [m/s]. */
    double firstLinkRate;

    double lastLinkRate;

    /** Positions [m]. */
    final double[] x;

    final double[] y;
    final double[] z;

    /** Velocities, half a step behind the positions before the kick and half a step ahead after it [m/s]. */
    final double[] vx;

    final double[] vy;
    final double[] vz;

    /** Velocities after everything but damping [m/s]. */
    final double[] wx;

    final double[] wy;
    final double[] wz;

    /** Inverse of the lumped mass [1/kg]; 0 where a joint moves the node. */
    final double[] mobility;

    /** Unstretched lengths of the segments [m] and their inverses [1/m]. */
    final double[] length;

    final double[] perLength;

    /** Directions of the segments. */
    final double[] ux;

    final double[] uy;
    final double[] uz;

    /** Stretched lengths [m], without the extension of an in-line absorber. */
    final double[] stretched;

    /** Elastic tension and whole tension [N]. */
    final double[] elastic;

    final double[] tension;

    /** Whole tension less the elastic one [N]. */
    final double[] excess;

    /** Slope of the tension by the strain [N]. */
    final double[] slope;

    /** The tridiagonal system of the damping forces; factor and partial serve as scratch before it is solved. */
    final double[] compliance;

    final double[] diagonal;
    final double[] lower;
    final double[] upper;
    final double[] rate;
    final double[] factor;
    final double[] partial;
    final double[] damping;

    /** What moves along when a node is removed or inserted. */
    private final double[][] nodeArrays;

    LumpedMassChain(int capacity, double massPerLength, double gravity, TensionStrainLaw law, double dampingTime) {
        this.massPerLength = massPerLength;
        this.gravity = gravity;
        this.law = law;
        this.dampingTime = dampingTime;
        x = room(capacity);
        y = room(capacity);
        z = room(capacity);
        vx = room(capacity);
        vy = room(capacity);
        vz = room(capacity);
        wx = room(capacity);
        wy = room(capacity);
        wz = room(capacity);
        mobility = room(capacity);
        length = room(capacity);
        perLength = room(capacity);
        ux = room(capacity);
        uy = room(capacity);
        uz = room(capacity);
        stretched = room(capacity);
        elastic = room(capacity);
        tension = room(capacity);
        excess = room(capacity);
        slope = room(capacity);
        compliance = room(capacity);
        diagonal = room(capacity);
        lower = room(capacity);
        upper = room(capacity);
        rate = room(capacity);
        factor = room(capacity);
        partial = room(capacity);
        damping = room(capacity);
        nodeArrays = new double[][] {x, y, z, vx, vy, vz, mobility};
    }

    /** Room for one quantity of all nodes. On thousands of spans each takes milliseconds, so an interrupt is looked for. */
    private static double[] room(int capacity) {
        OrderedWork.stopIfInterrupted();
        return new double[capacity];
    }

    /** Number of segments. */
    int segments() {
        return nodes - 1;
    }

    /** Tells whether another node fits in. */
    boolean hasRoom() {
        return nodes < x.length;
    }

    /** Sets the unstretched length of a segment [m]. */
    void setLength(int segment, double value) {
        length[segment] = value;
        perLength[segment] = 1 / value;
    }

    /** Mass of the cable at a node: half of the segments beside it [kg]. */
    double mass(int node) {
        double sum = 0;
        if (node > 0) {
            sum += length[node - 1];
        }
        if (node < nodes - 1) {
            sum += length[node];
        }
        return 0.5 * massPerLength * sum;
    }

    /** Stretch of a segment, stretched over unstretched length [-]. */
    double ratio(int segment) {
        return stretched[segment] * perLength[segment];
    }

    /**
     * What pulls material out of a segment: ratio · tension − strain energy per unstretched length [N], the power
     * conjugate of material that leaves it. For small strains it is the tension.
     *
     * @param segment the segment
     * @param force tension that counts [N]
     */
    double pull(int segment, double force) {
        double r = ratio(segment);
        return r * force - law.energy(r - 1);
    }

    /** Length of the link of an in-line absorber at a node [m]; 0 where there is none. */
    double link(int node) {
        return node == 0 ? firstLink : node == nodes - 1 ? lastLink : 0;
    }

    /** Speed at which that link grew in the last step [m/s]; 0 where there is none. */
    double linkRate(int node) {
        return node == 0 ? firstLinkRate : node == nodes - 1 ? lastLinkRate : 0;
    }

    /** Cosine of the angle between a segment and the next one. */
    double cosine(int segment) {
        int k = segment + 1;
        return ux[segment] * ux[k] + uy[segment] * uy[k] + uz[segment] * uz[k];
    }

    /** Speed squared of a node [m²/s²]. */
    double speedSquared(int node) {
        return vx[node] * vx[node] + vy[node] * vy[node] + vz[node] * vz[node];
    }

    /** Strain energy of a segment at the present positions [J]. */
    double strainEnergy(int segment) {
        double dx = x[segment + 1] - x[segment];
        double dy = y[segment + 1] - y[segment];
        double dz = z[segment + 1] - z[segment];
        double cable = Math.sqrt(dx * dx + dy * dy + dz * dz);
        if (segment == 0) {
            cable -= firstLink;
        }
        if (segment == nodes - 2) {
            cable -= lastLink;
        }
        return length[segment] * law.energy(cable * perLength[segment] - 1);
    }

    /** Adds to the prediction at a node what a neighbouring segment pulls more: speed along the segment [m/s]. */
    void retension(int node, int segment, double speed) {
        double v = segment == node ? speed : -speed;
        wx[node] += v * ux[segment];
        wy[node] += v * uy[segment];
        wz[node] += v * uz[segment];
    }

    /** Takes the mobility of a node from its mass, and keeps its momentum. */
    void reweigh(int node) {
        double fresh = 1 / mass(node);
        double share = fresh / mobility[node];
        vx[node] *= share;
        vy[node] *= share;
        vz[node] *= share;
        mobility[node] = fresh;
    }

    /** Removes a node; its two segments become one, whose unstretched length is the sum. */
    void remove(int node) {
        double sum = length[node - 1] + length[node];
        int tail = nodes - node - 1;
        for (double[] a : nodeArrays) {
            System.arraycopy(a, node + 1, a, node, tail);
        }
        System.arraycopy(length, node + 1, length, node, tail - 1);
        System.arraycopy(perLength, node + 1, perLength, node, tail - 1);
        nodes--;
        setLength(node - 1, sum);
    }

    /** Chord of a segment, with the link of an absorber in it [m]. */
    double chord(int segment) {
        double dx = x[segment + 1] - x[segment];
        double dy = y[segment + 1] - y[segment];
        double dz = z[segment + 1] - z[segment];
        return Math.sqrt(dx * dx + dy * dy + dz * dz + NumericalParameters.TINY_SQUARE);
    }

    /** Where along its chord a segment is divided whose first part gets a share of the unstretched length [-]. */
    double divide(int segment, double part) {
        double links = link(segment) + link(segment + 1);
        return part + (link(segment) - part * links) / chord(segment);
    }

    /**
     * Inserts a node behind another one; the segment between is split, its first part gets the given length. Both parts
     * are stretched alike: the link of an in-line absorber stays whole beside its anchor.
     */
    void insert(int node, double firstPart) {
        double rest = length[node] - firstPart;
        double share = divide(node, firstPart * perLength[node]);
        int tail = nodes - node - 1;
        for (double[] a : nodeArrays) {
            System.arraycopy(a, node + 1, a, node + 2, tail);
            a[node + 1] = a[node] + share * (a[node + 2] - a[node]);
        }
        System.arraycopy(length, node + 1, length, node + 2, tail - 1);
        System.arraycopy(perLength, node + 1, perLength, node + 2, tail - 1);
        nodes++;
        setLength(node, firstPart);
        setLength(node + 1, rest);
    }
}
