package org.lifeline.internal.motion;

import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;

/**
 * An anchor: rigid or on springs, with the cable clamped, free to run, or running against friction.
 *
 * <p>On springs it carries the mass of the cable that is lumped at it and no other. A spring enters the step by the
 * mean of three positions (Newmark, J. Eng. Mech. Div. ASCE 85(EM3), 1959, with β = ¼), which adds k h²/4 to that mass
 * and lets it be as stiff as it likes.
 *
 * <p>Friction: the material that passes is slowed by the capstan rule (Euler 1769; Eytelwein 1808) applied to the pulls
 * on both sides. Each step first goes on as the last one did, stuck or slipping; if what comes out contradicts that, the
 * step is solved again the other way.
 */
final class SupportJoint extends Joint {
    private final boolean runs;
    private final double coefficient;
    private final double[] spring = new double[3];
    private final double[] installed = new double[3];
    private final double[] held = new double[3];
    private final boolean elastic;

    private final double[] inverse = new double[3];
    private final double[] before = new double[3];
    private double grip;
    private int status;
    private boolean stopped;
    private double flowPredicted;
    private double passing;
    private double load;
    private double reactionX;
    private double reactionY;
    private double reactionZ;

    /** What the rows of this joint hold now, to take it out again. */
    private double addedBefore;

    private double addedBehind;
    private double addedRateBefore;
    private double addedRateBehind;

    /**
     * An anchor.
     *
     * @param chain the chain
     * @param node its node
     * @param support what it is
     * @param reaction force of the line on it at the start, components in [N]
     * @param displacement how far it has yielded at the start, components in [m]
     */
    SupportJoint(LumpedMassChain chain, int node, Support support, Vector3 reaction, Vector3 displacement) {
        super(chain, node);
        coefficient = support.passage().friction();
        runs = !support.isEnd() && !Double.isInfinite(coefficient);
        Stiffness s = support.stiffness();
        Point p = support.position();
        spring[0] = s.x();
        spring[1] = s.y();
        spring[2] = s.z();
        installed[0] = p.x();
        installed[1] = p.y();
        installed[2] = p.z();
        double[] r = {reaction.x(), reaction.y(), reaction.z()};
        double[] d = {displacement.x(), displacement.y(), displacement.z()};
        for (int c = 0; c < 3; c++) {
            held[c] = Double.isInfinite(spring[c]) ? 0 : r[c] - spring[c] * d[c];
        }
        elastic = !s.isRigid();
    }

    @Override
    boolean passes() {
        return runs;
    }

    /** How the cable passes at present: 0 stuck, 1 running toward the end, −1 toward the start. */
    int status() {
        return status;
    }

    /** Displacement since installation along an axis [m]. */
    double displacement(int axis) {
        return position(axis) - installed[axis];
    }

    private double position(int axis) {
        return axis == 0 ? chain.x[node] : axis == 1 ? chain.y[node] : chain.z[node];
    }

    private double velocity(int axis) {
        return axis == 0 ? chain.vx[node] : axis == 1 ? chain.vy[node] : chain.vz[node];
    }

    private void setVelocity(int axis, double value) {
        (axis == 0 ? chain.vx : axis == 1 ? chain.vy : chain.vz)[node] = value;
    }

    private void setPrediction(int axis, double value) {
        (axis == 0 ? chain.wx : axis == 1 ? chain.wy : chain.wz)[node] = value;
    }

    private double prediction(int axis) {
        return axis == 0 ? chain.wx[node] : axis == 1 ? chain.wy[node] : chain.wz[node];
    }

    private double direction(int axis, int segment) {
        return axis == 0 ? chain.ux[segment] : axis == 1 ? chain.uy[segment] : chain.uz[segment];
    }

    /** Tells whether its spring across the x–z plane, if it has one, is at rest. */
    boolean isStraight() {
        return Double.isInfinite(spring[1]) || held[1] + spring[1] * displacement(1) == 0;
    }

    /** Energy of the springs beyond what they hold as installed at no displacement [J]. */
    double springEnergy() {
        double sum = 0;
        if (elastic) {
            for (int c = 0; c < 3; c++) {
                if (spring[c] < Double.POSITIVE_INFINITY) {
                    double d = displacement(c);
                    sum += d * (held[c] + 0.5 * spring[c] * d);
                }
            }
        }
        return sum;
    }

    /** Sum of the pulls of two tensions along an axis: behind less before [N]. */
    private double net(int axis, double[] force) {
        double sum = 0;
        if (hasBehind()) {
            sum += force[node] * direction(axis, node);
        }
        if (hasBefore()) {
            sum -= force[node - 1] * direction(axis, node - 1);
        }
        return sum;
    }

    /** Force of the line on the anchor along an axis at the last step [N]. */
    double reaction(int axis) {
        return axis == 0 ? reactionX : axis == 1 ? reactionY : reactionZ;
    }

    /** Takes the reaction from the tensions that came out. */
    private void react() {
        LumpedMassChain c = chain;
        double x = 0;
        double y = 0;
        double z = 0;
        if (hasBehind()) {
            double t = c.tension[node];
            x = t * c.ux[node];
            y = t * c.uy[node];
            z = t * c.uz[node];
        }
        if (hasBefore()) {
            double t = c.tension[node - 1];
            x -= t * c.ux[node - 1];
            y -= t * c.uy[node - 1];
            z -= t * c.uz[node - 1];
        }
        reactionX = x + pullX;
        reactionY = y + pullY;
        reactionZ = z - c.mass(node) * c.gravity + pullZ;
    }

    @Override
    void predict(double kick) {
        passing = passingMass();
        for (int c = 0; c < 3; c++) {
            before[c] = velocity(c);
            if (elastic && spring[c] < Double.POSITIVE_INFINITY) {
                inverse[c] = 1 / (passing + 0.25 * kick * kick * spring[c]);
                double force = net(c, chain.elastic)
                        - (c == 2 ? passing * chain.gravity : 0)
                        + (c == 0 ? pullX : c == 1 ? pullY : pullZ)
                        - held[c]
                        - spring[c] * displacement(c);
                setPrediction(c, before[c] + kick * inverse[c] * force);
            } else {
                setPrediction(c, 0);
            }
        }
        if (runs) {
            flowBefore = flow;
            load = flowLoad();
            grip = coefficient == 0 ? 1 : StrictMath.exp(coefficient * turned());
            stopped = false;
            if (coefficient == 0) {
                status = 1;
            }
            predictFlow(kick);
        }
    }

    @Override
    void retension(int segment, double change, double kick) {
        double force = segment == node ? change : -change;
        if (elastic) {
            LumpedMassChain c = chain;
            c.wx[node] += kick * inverse[0] * force * c.ux[segment];
            c.wy[node] += kick * inverse[1] * force * c.uy[segment];
            c.wz[node] += kick * inverse[2] * force * c.uz[segment];
        }
        if (runs && status != 0) {
            double weight = segment == node ? weighBehind() : weighBefore();
            flowPredicted += kick / passing * weight * chain.ratio(segment) * force;
        }
    }

    private double turned() {
        int a = node - 1;
        double cx = chain.uy[a] * chain.uz[node] - chain.uz[a] * chain.uy[node];
        double cy = chain.uz[a] * chain.ux[node] - chain.ux[a] * chain.uz[node];
        double cz = chain.ux[a] * chain.uy[node] - chain.uy[a] * chain.ux[node];
        return StrictMath.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), chain.cosine(a));
    }

    /** Factor on the pull before the anchor: the side that gives way against friction counts more. */
    private double weighBefore() {
        return status > 0 ? grip : 1;
    }

    private double weighBehind() {
        return status < 0 ? grip : 1;
    }

    private void predictFlow(double kick) {
        if (status == 0) {
            flowPredicted = 0;
            return;
        }
        double drive = weighBehind() * chain.pull(node, chain.elastic[node])
                - weighBefore() * chain.pull(node - 1, chain.elastic[node - 1])
                + load;
        flowPredicted = flowBefore + kick * drive / passing;
        if (coefficient == 0 && blocked(flowPredicted)) {
            flowPredicted = 0;
            status = 0;
        }
    }

    @Override
    void addRows(double kick) {
        addedBefore = 0;
        addedBehind = 0;
        addedRateBefore = 0;
        addedRateBehind = 0;
        writeRows(kick);
    }

    private void writeRows(double kick) {
        LumpedMassChain c = chain;
        double implicit = c.weight * kick;
        double selfBefore = 0;
        double selfBehind = 0;
        double cross = 0;
        if (elastic) {
            for (int k = 0; k < 3; k++) {
                if (spring[k] < Double.POSITIVE_INFINITY) {
                    double a = hasBefore() ? direction(k, node - 1) : 0;
                    double b = hasBehind() ? direction(k, node) : 0;
                    selfBefore += inverse[k] * a * a;
                    selfBehind += inverse[k] * b * b;
                    cross += inverse[k] * a * b;
                }
            }
        }
        double crossBefore = cross;
        double crossBehind = cross;
        double rateBefore = 0;
        double rateBehind = 0;
        if (runs && status != 0) {
            double a = c.ratio(node - 1);
            double b = c.ratio(node);
            double m = 1 / passing;
            selfBefore += m * a * a * weighBefore();
            selfBehind += m * b * b * weighBehind();
            crossBefore += m * a * b * weighBehind();
            crossBehind += m * a * b * weighBefore();
            double speed = c.weight * flowPredicted + (1 - c.weight) * flowBefore;
            rateBefore = a * speed;
            rateBehind = -b * speed;
        } else if (runs) {
            double speed = (1 - c.weight) * flowBefore;
            rateBefore = c.ratio(node - 1) * speed;
            rateBehind = -c.ratio(node) * speed;
        }
        if (hasBefore()) {
            c.diagonal[node - 1] += implicit * selfBefore - addedBefore;
            c.rate[node - 1] += rateBefore - addedRateBefore;
            addedBefore = implicit * selfBefore;
            addedRateBefore = rateBefore;
        }
        if (hasBehind()) {
            c.diagonal[node] += implicit * selfBehind - addedBehind;
            c.rate[node] += rateBehind - addedRateBehind;
            addedBehind = implicit * selfBehind;
            addedRateBehind = rateBehind;
        }
        if (hasBefore() && hasBehind()) {
            c.upper[node - 1] = implicit * crossBefore;
            c.lower[node] = implicit * crossBehind;
        }
    }

    @Override
    boolean revise(double kick) {
        if (!runs || coefficient == 0) {
            return false;
        }
        if (status != 0) {
            double speed = flowAfter(kick);
            if (speed * status < 0 || blocked(speed)) {
                status = 0;
                stopped = true;
            } else {
                return false;
            }
        } else {
            if (stopped) {
                return false;
            }
            double behind = chain.pull(node, chain.tension[node]) + load;
            double ahead = chain.pull(node - 1, chain.tension[node - 1]);
            int wish = behind > grip * ahead ? 1 : ahead > grip * behind ? -1 : 0;
            if (wish == 0 || blocked(wish)) {
                return false;
            }
            status = wish;
            stopped = true;
        }
        predictFlow(kick);
        writeRows(kick);
        return true;
    }

    private double flowAfter(double kick) {
        if (status == 0) {
            return 0;
        }
        return flowPredicted
                + kick
                        / passing
                        * (weighBehind() * chain.ratio(node) * chain.excess[node]
                                - weighBefore() * chain.ratio(node - 1) * chain.excess[node - 1]);
    }

    @Override
    void finish(double kick) {
        react();
        frictionHeat = 0;
        dampingHeat = 0;
        for (int c = 0; c < 3; c++) {
            if (elastic && spring[c] < Double.POSITIVE_INFINITY) {
                double force = net(c, chain.excess);
                double next = prediction(c) + kick * inverse[c] * force;
                dampingHeat -= 0.5 * kick * force * (next + before[c]);
                setVelocity(c, next);
            } else {
                setVelocity(c, 0);
            }
        }
        if (elastic) {
            frictionHeat = contactHeat(kick, before[0], before[1], before[2]);
        }
        if (runs) {
            flow = flowAfter(kick);
            if (status * flow < 0 && coefficient > 0) {
                flow = 0;
            }
            double mean = 0.5 * (flow + flowBefore);
            double damped = chain.ratio(node) * chain.excess[node] - chain.ratio(node - 1) * chain.excess[node - 1];
            double driven = chain.pull(node, chain.elastic[node])
                    - chain.pull(node - 1, chain.elastic[node - 1])
                    + load
                    + damped;
            dampingHeat -= kick * damped * mean;
            frictionHeat += (kick * driven - passing * (flow - flowBefore)) * mean;
        }
    }

    /**
     * Takes up cable. Where cable passes, what the new one goes along its segment, seen from the anchor, joins the flow, and
     * only what it goes across is shared with the anchor: momentum given to both would count twice, and would throw a
     * yielding anchor along the line.
     */
    @Override
    void absorb(double mass, Velocity velocity, int segment) {
        LumpedMassChain c = chain;
        int i = node;
        double dx = velocity.x - c.vx[i];
        double dy = velocity.y - c.vy[i];
        double dz = velocity.z - c.vz[i];
        double own = passingMass();
        double sum = own + mass;
        double share = mass / sum;
        double along = runs ? dx * c.ux[segment] + dy * c.uy[segment] + dz * c.uz[segment] : 0;
        flow = (own * flow + mass * along / taut(segment)) / sum;
        c.vx[i] += spring[0] < Double.POSITIVE_INFINITY ? share * (dx - along * c.ux[segment]) : 0;
        c.vy[i] += spring[1] < Double.POSITIVE_INFINITY ? share * (dy - along * c.uy[segment]) : 0;
        c.vz[i] += spring[2] < Double.POSITIVE_INFINITY ? share * (dz - along * c.uz[segment]) : 0;
    }

    @Override
    double cableEnergy() {
        return 0.5 * passingMass() * (flow * flow + chain.speedSquared(node));
    }

    @Override
    double attachmentMobility() {
        return elastic ? 1 / passingMass() : 0;
    }

    @Override
    double mobility() {
        double m = 0;
        double mass = passingMass();
        if (elastic) {
            m += 1 / mass;
        }
        if (runs) {
            m += 1 / mass;
        }
        return m;
    }
}
