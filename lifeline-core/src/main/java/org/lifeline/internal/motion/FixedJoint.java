package org.lifeline.internal.motion;

/** An attachment that holds a material point: a node of the cable like any other, pulled by its worker. */
final class FixedJoint extends Joint {
    private double beforeX;
    private double beforeY;
    private double beforeZ;

    FixedJoint(LumpedMassChain chain, int node) {
        super(chain, node);
    }

    @Override
    boolean passes() {
        return false;
    }

    @Override
    void predict(double kick) {
        beforeX = chain.vx[node];
        beforeY = chain.vy[node];
        beforeZ = chain.vz[node];
        double a = kick * chain.mobility[node];
        chain.wx[node] += a * pullX;
        chain.wy[node] += a * pullY;
        chain.wz[node] += a * pullZ;
    }

    @Override
    void addRows(double kick) {
        // The chain's own rows hold.
    }

    @Override
    void retension(int segment, double change, double kick) {
        chain.retension(node, segment, kick * chain.mobility[node] * change);
    }

    @Override
    void finish(double kick) {
        frictionHeat = contactHeat(kick, beforeX, beforeY, beforeZ);
    }

    @Override
    double mobility() {
        return chain.mobility[node];
    }
}
