package org.lifeline.internal.motion;

import org.lifeline.internal.motion.law.HystereticCurve;

/**
 * A worker: a point mass that waits, falls, and is caught by its connecting subsystem.
 *
 * <p>The subsystem has no mass. It pulls along the straight line from attachment to worker once that is longer than the
 * taut length. Mutable, not thread-safe.
 */
final class FallingBody {
    final double mass;
    final double tautLength;
    final HystereticCurve curve;
    final Joint joint;

    /** Tells whether it is one of those whose first catch is followed. */
    final boolean first;

    /** When the fall begins [s]; negative infinity for one who hangs already. */
    final double start;

    /** Position before the fall [m]. */
    final double startZ;

    double x;
    double y;
    double z;
    double vx;
    double vy;
    double vz;

    /** Velocity half a step before [m/s]. */
    double beforeX;

    double beforeY;
    double beforeZ;

    /** Extension beyond the taut length [m], negative when slack; force [N]. */
    double extension;

    double force;

    /** Largest extension so far [m]. */
    double longest;

    /** Work taken by the subsystem [J]. */
    double work;

    private double lastExtension;
    private double lastForce;
    private boolean falling;
    private boolean engaged;
    private double reach;
    private double dirX;
    private double dirY;
    private double dirZ;

    FallingBody(MotionSetup.Person person, Joint joint, HystereticCurve curve, double startZ) {
        this.mass = person.mass();
        this.tautLength = person.tautLength();
        this.start = person.start();
        this.first = person.timing().first();
        this.joint = joint;
        this.curve = curve;
        this.startZ = startZ;
        this.z = startZ;
    }

    /** Tells whether it has left where it stood. */
    boolean falling() {
        return falling;
    }

    /**
     * Sets it in motion as it is at a time, if its fall has begun.
     *
     * @param time present time [s]
     * @param early by how much the velocity before the coming kick lags behind the position [s]
     * @param gravity acceleration of gravity [m/s²]
     */
    void release(double time, double early, double gravity) {
        if (!falling && start <= time) {
            falling = true;
            if (start > Double.NEGATIVE_INFINITY) {
                double t = time - start;
                z = startZ - 0.5 * gravity * t * t;
                vz = -gravity * (t - early);
            }
        }
    }

    /** Takes it as hanging at an extension. */
    void hang(double at) {
        engaged = true;
        falling = true;
        extension = at;
        curve.tear(at);
        force = curve.force(at);
        lastExtension = at;
        lastForce = force;
        longest = at;
    }

    /** Force of the subsystem at the present positions; pulls its joint. */
    void pull() {
        if (!falling) {
            return;
        }
        LumpedMassChain c = joint.chain;
        double dx = x - c.x[joint.node];
        double dy = y - c.y[joint.node];
        double dz = z - c.z[joint.node];
        double d = Math.sqrt(dx * dx + dy * dy + dz * dz + NumericalParameters.TINY_SQUARE);
        if (!engaged) {
            if (dz >= 0 && d > tautLength) {
                return;
            }
            engaged = true;
            reach = d;
        }
        // One who comes from farther off than the subsystem is long has slack in it until the distance grows again.
        reach = Math.min(reach, d);
        extension = d - Math.max(tautLength, reach);
        if (Math.abs(extension) < NumericalParameters.TAUT_ROUNDING * tautLength) {
            extension = 0;
        }
        force = extension > 0 ? curve.force(extension) : 0;
        if (extension >= 0) {
            joint.load();
        }
        double from = Math.max(lastExtension, 0);
        double to = Math.max(extension, 0);
        work += 0.5 * (force + lastForce) * (to - from);
        lastExtension = extension;
        lastForce = force;
        longest = Math.max(longest, extension);
        dirX = dx / d;
        dirY = dy / d;
        dirZ = dz / d;
        joint.swing += force / d;
        joint.pullX += force * dirX;
        joint.pullY += force * dirY;
        joint.pullZ += force * dirZ;
    }

    void kick(double kick, double gravity) {
        beforeX = vx;
        beforeY = vy;
        beforeZ = vz;
        if (!falling) {
            return;
        }
        double a = kick * force / mass;
        vx -= a * dirX;
        vy -= a * dirY;
        vz -= a * dirZ + kick * gravity;
    }

    void drift(double step) {
        if (falling) {
            x += step * vx;
            y += step * vy;
            z += step * vz;
        }
    }

    double kineticEnergy() {
        return falling ? 0.5 * mass * (beforeX * vx + beforeY * vy + beforeZ * vz) : 0;
    }
}
