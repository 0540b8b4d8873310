package org.lifeline.internal.motion;

import java.util.Arrays;

/**
 * The largest values of a motion within a window of time, with the times at which they were met.
 *
 * <p>Arrays are filled step by step and must not be changed by who reads them. Not thread-safe.
 */
public final class PeakValues {
    /** Force in the connecting subsystem of each worker [N] and its time [s]. */
    public final double[] force;

    /** Time of the largest force [s]. */
    public final double[] forceTime;

    /** Largest extension of each subsystem [m]. */
    public final double[] extension;

    /** Lowest elevation of each worker's harness attachment [m], its time [s]. */
    public final double[] lowest;

    /** Time of the lowest elevation [s]. */
    public final double[] lowestTime;

    /** Elevation of the attachment on the line at that time [m]. */
    public final double[] lineAtLowest;

    /** Extension at that time [m]. */
    public final double[] extensionAtLowest;

    /** Lowest elevation of each attachment on the line [m]. */
    public final double[] lineLowest;

    /** Largest force of the line on each support [N]. */
    public final double[] support;

    /** Its time [s]. */
    public final double[] supportTime;

    /** Its components x, y, z, one support after the other [N]. */
    public final double[] supportVector;

    /** Displacement of each support at that time, x, y, z [m]. */
    public final double[] supportDisplacement;

    /** Largest tension before and behind each support, one support after the other [N]. */
    public final double[] supportTension;

    /** Largest extension of the in-line absorbers [m]. */
    public final double[] inline = new double[2];

    /** Largest tension anywhere in the cable [N]. */
    public double tension;

    /** Its time [s]. */
    public double tensionTime;

    /** Where it was met: x, y, z of the segment's middle [m]. */
    public final double[] tensionPlace = new double[3];

    /** Largest sum of the forces of all who fall first, at one place [N]. */
    public double together;

    /** Largest force in each subsystem behind the low-pass filter [N]. */
    public final double[] filteredForce;

    /** Largest force of the line on each support behind the low-pass filter [N]. */
    public final double[] filteredSupport;

    /** Largest tension anywhere in the cable behind the low-pass filter [N]. */
    public double filteredTension;

    private final double[] square;

    PeakValues(int bodies, int supports) {
        force = new double[bodies];
        forceTime = new double[bodies];
        extension = new double[bodies];
        lowest = new double[bodies];
        lowestTime = new double[bodies];
        lineAtLowest = new double[bodies];
        extensionAtLowest = new double[bodies];
        lineLowest = new double[bodies];
        support = new double[supports];
        supportTime = new double[supports];
        supportVector = new double[3 * supports];
        supportDisplacement = new double[3 * supports];
        supportTension = new double[2 * supports];
        square = new double[supports];
        filteredForce = new double[bodies];
        filteredSupport = new double[supports];
        Arrays.fill(lowest, Double.POSITIVE_INFINITY);
        Arrays.fill(lineLowest, Double.POSITIVE_INFINITY);
    }

    /** Takes over what another window of time has seen. */
    void copy(PeakValues o) {
        double[][] from = {
            o.force,
            o.forceTime,
            o.extension,
            o.lowest,
            o.lowestTime,
            o.lineAtLowest,
            o.extensionAtLowest,
            o.lineLowest,
            o.support,
            o.supportTime,
            o.supportVector,
            o.supportDisplacement,
            o.supportTension,
            o.square,
            o.filteredForce,
            o.filteredSupport,
            o.inline,
            o.tensionPlace
        };
        double[][] to = {
            force,
            forceTime,
            extension,
            lowest,
            lowestTime,
            lineAtLowest,
            extensionAtLowest,
            lineLowest,
            support,
            supportTime,
            supportVector,
            supportDisplacement,
            supportTension,
            square,
            filteredForce,
            filteredSupport,
            inline,
            tensionPlace
        };
        for (int i = 0; i < from.length; i++) {
            System.arraycopy(from[i], 0, to[i], 0, from[i].length);
        }
        tension = o.tension;
        tensionTime = o.tensionTime;
        together = o.together;
        filteredTension = o.filteredTension;
    }

    /** Looks at the state after a kick. */
    void look(MotionSystem s) {
        double sum = 0;
        for (int k = 0; k < force.length; k++) {
            FallingBody b = s.bodies[k];
            look(s, k, b);
            sum += b.first ? b.force : 0;
        }
        together = Math.max(together, sum);
        LumpedMassChain c = s.chain;
        double largest = c.largest;
        if (largest > tension) {
            int j = 0;
            while (c.tension[j] < largest) {
                j++;
            }
            tension = largest;
            tensionTime = s.time;
            tensionPlace[0] = 0.5 * (c.x[j] + c.x[j + 1]);
            tensionPlace[1] = 0.5 * (c.y[j] + c.y[j + 1]);
            tensionPlace[2] = 0.5 * (c.z[j] + c.z[j + 1]);
        }
        for (int i = 0; i < support.length; i++) {
            look(s, i, s.anchors[i]);
        }
        for (int e = 0; e < 2; e++) {
            InlineElement at = s.inline[e];
            if (at != null) {
                inline[e] = Math.max(inline[e], at.extension);
            }
        }
    }

    /** Looks at the filtered forces after a kick. */
    void look(MeasuredForces m) {
        filteredTension = Math.max(filteredTension, m.tension());
        for (int k = 0; k < force.length; k++) {
            filteredForce[k] = Math.max(filteredForce[k], m.force(k));
        }
        for (int i = 0; i < support.length; i++) {
            filteredSupport[i] = Math.max(filteredSupport[i], m.support(i));
        }
    }

    private void look(MotionSystem s, int k, FallingBody b) {
        if (b.force > force[k]) {
            force[k] = b.force;
            forceTime[k] = s.time;
        }
        extension[k] = Math.max(extension[k], b.longest);
        double line = s.chain.z[b.joint.node];
        if (b.z < lowest[k]) {
            lowest[k] = b.z;
            lowestTime[k] = s.time;
            lineAtLowest[k] = line;
            extensionAtLowest[k] = b.extension;
        }
        lineLowest[k] = Math.min(lineLowest[k], line);
    }

    private void look(MotionSystem s, int i, SupportJoint a) {
        double x = a.reaction(0);
        double y = a.reaction(1);
        double z = a.reaction(2);
        double sum = x * x + y * y + z * z;
        if (sum > square[i]) {
            square[i] = sum;
            support[i] = Math.sqrt(sum);
            supportTime[i] = s.time;
            supportVector[3 * i] = x;
            supportVector[3 * i + 1] = y;
            supportVector[3 * i + 2] = z;
            for (int c = 0; c < 3; c++) {
                supportDisplacement[3 * i + c] = a.displacement(c);
            }
        }
        if (a.hasBefore()) {
            supportTension[2 * i] = Math.max(supportTension[2 * i], s.chain.tension[a.node - 1]);
        }
        if (a.hasBehind()) {
            supportTension[2 * i + 1] = Math.max(supportTension[2 * i + 1], s.chain.tension[a.node]);
        }
    }
}
