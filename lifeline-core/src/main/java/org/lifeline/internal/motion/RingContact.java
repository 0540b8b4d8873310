package org.lifeline.internal.motion;

import org.jspecify.annotations.Nullable;

/**
 * Contact of the ring of a sliding attachment with what bounds its way: supports and other rings.
 *
 * <p>A ring that comes to a support rests against it: a stiff damped spring holds it where it met the support, and goes
 * with the support where that yields, until the worker draws it away. Rings push each other off. Where the support holds
 * an in-line absorber the cable begins, and the ring stops, at the absorber's other end. Mutable, not thread-safe.
 */
final class RingContact {
    private final SlidingJoint ring;
    private final Joint before;
    private final Joint behind;

    /** Closest distance to a support, or to the link of an absorber at it [m]. */
    private final double distance;

    private boolean resting;
    private double restX;
    private double restY;
    private double restZ;
    private @Nullable Joint restSupport;

    RingContact(SlidingJoint ring, Joint before, Joint behind, double distance) {
        this.ring = ring;
        this.before = before;
        this.behind = behind;
        this.distance = distance;
    }

    /** Presses ring and neighbours apart where they touch, by springs of a stiffness [N/m]. */
    void act(double stiffness) {
        if (resting) {
            rest(stiffness);
            return;
        }
        meet(before, stiffness);
        meet(behind, stiffness);
    }

    /** Tells whether the ring rests against a support. */
    boolean resting() {
        return resting;
    }

    private double damping(double stiffness) {
        return NumericalParameters.CONTACT_DAMPING * Math.sqrt(stiffness * ring.ringMass());
    }

    /** Holds the ring beside the support where they met, unless it is drawn away. */
    private void rest(double stiffness) {
        Joint held = restSupport;
        if (held == null) {
            resting = false;
            return;
        }
        LumpedMassChain c = ring.chain;
        int at = held.node;
        int node = ring.node;
        double dx = c.x[at] + restX - c.x[node];
        double dy = c.y[at] + restY - c.y[node];
        double dz = c.z[at] + restZ - c.z[node];
        double away = (held == before ? 1 : -1) * (dx * ring.unitX() + dy * ring.unitY() + dz * ring.unitZ());
        if (away < 0) {
            resting = false;
            return;
        }
        double damping = damping(stiffness);
        press(
                held,
                stiffness * dx - damping * (c.vx[node] - c.vx[at]),
                stiffness * dy - damping * (c.vy[node] - c.vy[at]),
                stiffness * dz - damping * (c.vz[node] - c.vz[at]));
    }

    private void press(Joint other, double px, double py, double pz) {
        ring.press(px, py, pz);
        other.press(-px, -py, -pz);
    }

    /** Comes to rest against a support that is near enough, or is pushed off by another attachment. */
    private void meet(Joint other, double stiffness) {
        int node = ring.node;
        if (Math.abs(other.node - node) != 1) {
            return;
        }
        LumpedMassChain c = ring.chain;
        double dx = c.x[node] - c.x[other.node];
        double dy = c.y[node] - c.y[other.node];
        double dz = c.z[node] - c.z[other.node];
        double square = dx * dx + dy * dy + dz * dz;
        double near = distance + Math.max(0, c.link(other.node));
        if (square > near * near) {
            return;
        }
        if (other instanceof SupportJoint) {
            resting = true;
            restX = dx;
            restY = dy;
            restZ = dz;
            restSupport = other;
            return;
        }
        double apart = Math.sqrt(square + NumericalParameters.TINY_SQUARE);
        double closing = (dx * (c.vx[node] - c.vx[other.node])
                        + dy * (c.vy[node] - c.vy[other.node])
                        + dz * (c.vz[node] - c.vz[other.node]))
                / apart;
        double force = stiffness * (distance - apart) - damping(stiffness) * closing;
        if (force > 0) {
            double f = force / apart;
            press(other, f * dx, f * dy, f * dz);
        }
    }
}
