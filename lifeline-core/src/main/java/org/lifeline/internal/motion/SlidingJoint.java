package org.lifeline.internal.motion;

import org.jspecify.annotations.Nullable;

/**
 * A free-running attachment: a ring without friction on the cable, of next to no mass of its own.
 *
 * <p>The ring and the cable lumped at it share their motion across the cable; along the cable each goes its own way, and
 * the difference of the two is material that passes. With the ring's velocity v, the flow q and the pulls G on either
 * side, kinetic energy ½ m |v + q u|² + ½ m′ |v|² and the forces Q on the ring, B = G₂ − G₁ on the flow, the motion is
 *
 * <pre>
 *   across:  (m + m′) v̇ = Q
 *   along:   m′ v̇ = Q·u − B,   m (q̇ + v̇) = B
 * </pre>
 *
 * <p>What bounds its way is {@link RingContact}'s.
 */
final class SlidingJoint extends Joint {
    private final double ringMass;
    private @Nullable RingContact bounds;

    /** Tells whether no worker has been caught here yet; until then it stays where it is on the cable. */
    private boolean waiting = true;

    private double ax;
    private double ay;
    private double az;
    private double along1 = 1;
    private double along2 = 1;
    private double across;
    private double m11;
    private double m12;
    private double m22;
    private double beforeX;
    private double beforeY;
    private double beforeZ;
    private double flowPredicted;
    private double passing;
    private boolean stopped;
    private double stopHeat;
    private double drag;

    /** Share of the flow that its drag leaves within a step [-]. */
    private double left = 1;

    /** Momentum that cable has brought to the ring or taken from it and that has not acted yet [N·s]. */
    private double owedX;

    private double owedY;
    private double owedZ;

    SlidingJoint(LumpedMassChain chain, int node, double ringMass) {
        super(chain, node);
        this.ringMass = ringMass;
    }

    /** Names the joints before and behind, and how near to them the ring comes [m]. */
    void between(Joint before, Joint behind, double distance) {
        bounds = new RingContact(this, before, behind, distance);
    }

    @Override
    boolean passes() {
        return true;
    }

    @Override
    double attachmentMobility() {
        return 1 / ringMass;
    }

    @Override
    void load() {
        waiting = false;
    }

    /** Mass of the ring [kg]. */
    double ringMass() {
        return ringMass;
    }

    /** Tells whether the ring rests against a support. */
    boolean resting() {
        return bounds != null && bounds.resting();
    }

    /** Component of the material's velocity along an axis [m/s]. */
    double unitX() {
        return ax;
    }

    double unitY() {
        return ay;
    }

    double unitZ() {
        return az;
    }

    /** Takes the direction of the cable at the ring from its two neighbours. */
    private void point() {
        LumpedMassChain c = chain;
        double sx = c.ux[node - 1] + c.ux[node];
        double sy = c.uy[node - 1] + c.uy[node];
        double sz = c.uz[node - 1] + c.uz[node];
        double s = Math.sqrt(sx * sx + sy * sy + sz * sz);
        if (s < NumericalParameters.FOLDED_BACK) {
            sx = c.ux[node];
            sy = c.uy[node];
            sz = c.uz[node];
            s = 1;
        }
        ax = sx / s;
        ay = sy / s;
        az = sz / s;
    }

    /**
     * Takes the direction of the cable at the ring anew. The velocities of ring and cable along it stay as they are;
     * across it the two share their momentum.
     */
    void turn() {
        LumpedMassChain c = chain;
        double cableX = c.vx[node] + flow * ax;
        double cableY = c.vy[node] + flow * ay;
        double cableZ = c.vz[node] + flow * az;
        point();
        if (flow == 0) {
            return;
        }
        double mass = passingMass();
        double share = mass / (mass + ringMass);
        double ringAlong = c.vx[node] * ax + c.vy[node] * ay + c.vz[node] * az;
        double cableAlong = cableX * ax + cableY * ay + cableZ * az;
        flow = cableAlong - ringAlong;
        double keep = share * (cableAlong - ringAlong);
        c.vx[node] += share * (cableX - c.vx[node]) - keep * ax;
        c.vy[node] += share * (cableY - c.vy[node]) - keep * ay;
        c.vz[node] += share * (cableZ - c.vz[node]) - keep * az;
    }

    @Override
    void remeshed() {
        double momentum = passingMass() * flow;
        owedX += momentum * ax;
        owedY += momentum * ay;
        owedZ += momentum * az;
        point();
        owedX -= momentum * ax;
        owedY -= momentum * ay;
        owedZ -= momentum * az;
    }

    @Override
    void predict(double kick) {
        LumpedMassChain c = chain;
        int l = node - 1;
        passing = passingMass();
        flowBefore = flow;
        stopHeat = 0;
        beforeX = c.vx[node];
        beforeY = c.vy[node];
        beforeZ = c.vz[node];
        along1 = ax * c.ux[l] + ay * c.uy[l] + az * c.uz[l];
        along2 = ax * c.ux[node] + ay * c.uy[node] + az * c.uz[node];
        across = 1 / (passing + ringMass);
        double q1 = c.ratio(l);
        double q2 = c.ratio(node);
        double cross = c.cosine(l);
        if (waiting) {
            m11 = across;
            m22 = across;
            m12 = cross * across;
            hold(kick);
            return;
        }
        m11 = (1 - along1 * along1) * across + (along1 - q1) * (along1 - q1) / ringMass + q1 * q1 / passing;
        m22 = (1 - along2 * along2) * across + (along2 - q2) * (along2 - q2) / ringMass + q2 * q2 / passing;
        m12 = (cross - along1 * along2) * across + (along1 - q1) * (along2 - q2) / ringMass + q1 * q2 / passing;
        double t1 = c.elastic[l];
        double t2 = c.elastic[node];
        double fx = t2 * c.ux[node] - t1 * c.ux[l] + pullX;
        double fy = t2 * c.uy[node] - t1 * c.uy[l] + pullY;
        double fz = t2 * c.uz[node] - t1 * c.uz[l] + pullZ - passing * c.gravity;
        double drive = c.pull(node, t2) - c.pull(l, t1) + flowLoad();
        resist(kick, q1, q2);
        push(kick, fx, fy, fz, drive);
    }

    /** What drags the ring along with the cable that passes keeps the tensions beside it from moving the two apart. */
    private void resist(double kick, double q1, double q2) {
        drag = Math.max(ringMass / NumericalParameters.RING_REST_TIME, 2 * Math.sqrt(ringMass * swing));
        left = 1 / (1 + kick * drag * (1 / passing + 1 / ringMass));
        double share = kick * drag * left;
        double flow1 = q1 / passing - (along1 - q1) / ringMass;
        double flow2 = q2 / passing - (along2 - q2) / ringMass;
        m11 -= share * flow1 * flow1;
        m22 -= share * flow2 * flow2;
        m12 -= share * flow1 * flow2;
    }

    /** A kick without any flow: ring and cable are one. */
    private void hold(double kick) {
        LumpedMassChain c = chain;
        double t1 = c.elastic[node - 1];
        double t2 = c.elastic[node];
        double a = kick * across;
        c.wx[node] = beforeX + a * (t2 * c.ux[node] - t1 * c.ux[node - 1]);
        c.wy[node] = beforeY + a * (t2 * c.uy[node] - t1 * c.uy[node - 1]);
        c.wz[node] = beforeZ + a * (t2 * c.uz[node] - t1 * c.uz[node - 1] - passing * c.gravity);
        flowPredicted = 0;
    }

    /** Adds a kick to the velocity before the step: forces on the ring, drive on the flow. */
    private void push(double kick, double fx, double fy, double fz, double drive) {
        LumpedMassChain c = chain;
        flowPredicted = left * flowBefore;
        double dragged = kick * drag / ringMass * flowPredicted;
        c.wx[node] = beforeX + dragged * ax;
        c.wy[node] = beforeY + dragged * ay;
        c.wz[node] = beforeZ + dragged * az;
        stopped = false;
        stopHeat = 0;
        add(kick, fx, fy, fz, drive);
        stopped = blocked(flowPredicted);
        if (stopped) {
            stop();
            add(kick, fx, fy, fz, drive);
        }
    }

    /**
     * Where no material can pass ring and cable are one: what pulls on the cable pulls on the ring. The two share the momentum
     * that they had along the cable; what their encounter costs is heat.
     */
    private void stop() {
        LumpedMassChain c = chain;
        int l = node - 1;
        m11 = across;
        m22 = across;
        m12 = c.cosine(l) * across;
        double gain = passing * across * flowBefore;
        c.wx[node] = beforeX + gain * ax;
        c.wy[node] = beforeY + gain * ay;
        c.wz[node] = beforeZ + gain * az;
        flowPredicted = 0;
        stopHeat = 0.5 * ringMass * gain * flowBefore;
    }

    /** Adds a kick to the prediction. Before anybody is caught ring and cable are one. */
    private void add(double kick, double fx, double fy, double fz, double drive) {
        LumpedMassChain c = chain;
        double ft = fx * ax + fy * ay + fz * az;
        double gain = gain(kick, ft, drive);
        double along = along(kick, ft, drive, gain);
        flowPredicted += gain;
        c.wx[node] += kick * fx * across + along * ax;
        c.wy[node] += kick * fy * across + along * ay;
        c.wz[node] += kick * fz * across + along * az;
    }

    /** What the flow gains by a force on the ring along the cable and a drive [m/s]. */
    private double gain(double kick, double force, double drive) {
        return waiting || stopped ? 0 : left * kick * (drive / passing - (force - drive) / ringMass);
    }

    /** What the ring gains along the cable beyond what it would gain if it moved all the cable lumped at it [m/s]. */
    private double along(double kick, double force, double drive, double gain) {
        return waiting || stopped
                ? 0
                : kick * ((force - drive) / ringMass - force * across) + kick * drag / ringMass * gain;
    }

    @Override
    void retension(int segment, double change, double kick) {
        LumpedMassChain c = chain;
        double force = segment == node ? change : -change;
        add(kick, force * c.ux[segment], force * c.uy[segment], force * c.uz[segment], c.ratio(segment) * force);
    }

    @Override
    void contact(double kick) {
        turn();
        if (waiting) {
            return;
        }
        settle(kick);
        double stiffness = NumericalParameters.CONTACT_STIFFNESS * ringMass / (kick * kick);
        if (bounds != null) {
            bounds.act(stiffness);
        }
    }

    @Override
    void addRows(double kick) {
        LumpedMassChain c = chain;
        double implicit = c.weight * kick;
        int l = node - 1;
        c.diagonal[l] += implicit * m11;
        c.diagonal[node] += implicit * m22;
        c.upper[l] = implicit * m12;
        c.lower[node] = implicit * m12;
        double speed = c.weight * flowPredicted + (1 - c.weight) * flowBefore;
        c.rate[l] += c.ratio(l) * speed;
        c.rate[node] -= c.ratio(node) * speed;
    }

    @Override
    void finish(double kick) {
        LumpedMassChain c = chain;
        int l = node - 1;
        double d1 = c.excess[l];
        double d2 = c.excess[node];
        double fx = d2 * c.ux[node] - d1 * c.ux[l];
        double fy = d2 * c.uy[node] - d1 * c.uy[l];
        double fz = d2 * c.uz[node] - d1 * c.uz[l];
        double drive = c.ratio(node) * d2 - c.ratio(l) * d1;
        double ft = fx * ax + fy * ay + fz * az;
        double gain = gain(kick, ft, drive);
        double along = along(kick, ft, drive, gain);
        double next = waiting || stopped ? 0 : flowPredicted + gain;
        c.vx[node] = c.wx[node] + kick * fx * across + along * ax;
        c.vy[node] = c.wy[node] + kick * fy * across + along * ay;
        c.vz[node] = c.wz[node] + kick * fz * across + along * az;
        double impulse = kick * drag * next;
        flow = next;
        dampingHeat = -0.5
                * kick
                * (fx * (c.vx[node] + beforeX)
                        + fy * (c.vy[node] + beforeY)
                        + fz * (c.vz[node] + beforeZ)
                        + drive * (flow + flowBefore));
        frictionHeat = 0.5 * impulse * (flow + flowBefore) + stopHeat + contactHeat(kick, beforeX, beforeY, beforeZ);
    }

    @Override
    double cableEnergy() {
        double vx = chain.vx[node];
        double vy = chain.vy[node];
        double vz = chain.vz[node];
        double mx = vx + flow * ax;
        double my = vy + flow * ay;
        double mz = vz + flow * az;
        return 0.5 * (passingMass() * (mx * mx + my * my + mz * mz) + ringMass * chain.speedSquared(node));
    }

    /**
     * Takes up cable without a jolt: what it goes along its segment joins the flow, and the ring goes on as it did. The
     * cable lumped at the ring moves along the mean of both directions, so that at a kink the momentum does not come
     * out; what is missing is owed, and acts on the ring little by little. A ring thrown aside at once would strain
     * both segments in a single step, by forces that the line does not have.
     */
    @Override
    void absorb(double mass, Velocity velocity, int segment) {
        LumpedMassChain c = chain;
        double own = passingMass();
        double wx = velocity.x - c.vx[node];
        double wy = velocity.y - c.vy[node];
        double wz = velocity.z - c.vz[node];
        if (waiting) {
            double share = mass / (own + ringMass + mass);
            c.vx[node] += share * wx;
            c.vy[node] += share * wy;
            c.vz[node] += share * wz;
            return;
        }
        double along = wx * c.ux[segment] + wy * c.uy[segment] + wz * c.uz[segment];
        double next = (own * flow + mass * along / taut(segment)) / (own + mass);
        double gained = (own + mass) * next - own * flow;
        owedX += mass * wx - gained * ax;
        owedY += mass * wy - gained * ay;
        owedZ += mass * wz - gained * az;
        flow = next;
    }

    @Override
    void shed(double mass, int segment) {
        LumpedMassChain c = chain;
        double speed = taut(segment);
        owedX += mass * flow * (ax - speed * c.ux[segment]);
        owedY += mass * flow * (ay - speed * c.uy[segment]);
        owedZ += mass * flow * (az - speed * c.uz[segment]);
    }

    /** Momentum along an axis that is owed and has not acted yet [N·s]. */
    double owed(int axis) {
        return axis == 0 ? owedX : axis == 1 ? owedY : owedZ;
    }

    /** Lets a part of the momentum that is owed act within a step [s]. */
    private void settle(double kick) {
        double share = Math.min(1, kick / NumericalParameters.MOMENTUM_TIME);
        press(share * owedX / kick, share * owedY / kick, share * owedZ / kick);
        owedX -= share * owedX;
        owedY -= share * owedY;
        owedZ -= share * owedZ;
    }

    /** Kinetic energy at the time of the positions, from the velocities half a step before and ahead [J]. */
    double kineticEnergy() {
        LumpedMassChain c = chain;
        double mx = (beforeX + flowBefore * ax) * (c.vx[node] + flow * ax);
        double my = (beforeY + flowBefore * ay) * (c.vy[node] + flow * ay);
        double mz = (beforeZ + flowBefore * az) * (c.vz[node] + flow * az);
        double ring = beforeX * c.vx[node] + beforeY * c.vy[node] + beforeZ * c.vz[node];
        return 0.5 * (passing * (mx + my + mz) + ringMass * ring);
    }

    @Override
    double mobility() {
        double mass = passingMass();
        double sharp = Math.max(Math.abs(1 - along1), Math.abs(1 - along2));
        return 1 / mass + 1 / (mass + ringMass) + sharp * sharp / ringMass;
    }
}
