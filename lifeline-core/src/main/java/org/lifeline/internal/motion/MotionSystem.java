package org.lifeline.internal.motion;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.lifeline.internal.motion.law.HystereticCurve;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Support;

/**
 * Line and workers as one system that moves on by steps.
 *
 * <p>Where steps are longer than the axial waves allow, the mean of the elastic force over three positions counts, a quarter,
 * half and a quarter (Newmark with β = ¼): its change within the step has the form of the damping force, and enters the same
 * system with a larger weight of the rate after the step.
 *
 * <p>A step kicks the velocities by the forces at the present positions, then moves the positions. The first kick is
 * half as long, since velocities are known at the start. No step allocates anything.
 *
 * <p>Mutable, not thread-safe.
 */
final class MotionSystem {
    final LumpedMassChain chain;
    final Joint[] joints;
    final SupportJoint[] anchors;
    final FallingBody[] bodies;
    final @Nullable InlineElement[] inline = new @Nullable InlineElement[2];
    final Remeshing remeshing;

    /** Present time, that of the positions [s]. */
    double time;

    /** Steps taken. */
    long steps;

    /** Steps times nodes [-]. */
    long work;

    /** Heat up to the time of the last kick [J]. */
    double frictionHeat;

    double dampingHeat;

    private double frictionStep;
    private double dampingStep;
    private double drift;
    private double stable;
    private final double longest;
    private final double stepScale;
    private final double[] oldX;
    private final double[] oldY;
    private final double[] oldZ;

    /**
     * A system at rest, its workers where their subsystems are first taut.
     *
     * @param setup line and workers
     * @param target length that segments should have [m]
     * @param stepScale part of the explicit step to take [-]; above 1 axial elasticity is implicit
     */
    MotionSystem(MotionSetup setup, double target, double stepScale) {
        this.stepScale = stepScale;
        double lightest = setup.spots.stream()
                .flatMap(s -> s.people.stream())
                .mapToDouble(MotionSetup.Person::mass)
                .min()
                .orElse(1);
        ChainBuilder.Result built = new ChainBuilder(setup, target).build(NumericalParameters.RING_SHARE * lightest);
        chain = built.chain();
        joints = built.joints().toArray(new Joint[0]);
        anchors = built.anchors().toArray(new SupportJoint[0]);
        remeshing = new Remeshing(chain, built.joints(), built.reference(), lightest * setup.gravity);
        bodies = new FallingBody[setup.people()];
        oldX = new double[chain.x.length];
        oldY = new double[chain.x.length];
        oldZ = new double[chain.x.length];
        OrderedWork.stopIfInterrupted();
        inlines(setup.model);
        chain.plane = isPlane();
        ChainStep.geometry(chain);
        for (InlineElement each : inline) {
            if (each != null) {
                each.shorten();
            }
        }
        OrderedWork.stopIfInterrupted();
        stable = stableStep();
        longest = subsystemStep(built.attachments());
        for (ChainBuilder.Attached each : built.attachments()) {
            hook(each.spot(), each.joint());
        }
    }

    /** Tells whether everything lies in one plane y = const, and springs across it hold nothing. */
    private boolean isPlane() {
        double y = chain.y[0];
        for (int i = 0; i < chain.nodes; i++) {
            if (chain.y[i] != y) {
                return false;
            }
        }
        for (SupportJoint each : anchors) {
            if (!each.isStraight()) {
                return false;
            }
        }
        return true;
    }

    private void inlines(LineModel model) {
        List<Support> supports = model.line().supports();
        for (int e = 0; e < 2; e++) {
            InlineAbsorber absorber = supports.get(e == 0 ? 0 : supports.size() - 1)
                    .inlineAbsorber()
                    .orElse(null);
            if (absorber != null) {
                int j = e == 0 ? 0 : chain.segments() - 1;
                double rigid = NumericalParameters.RIGID_INLINE * chain.law.stiffest * chain.perLength[j];
                HystereticCurve curve = new HystereticCurve(absorber.curve(), rigid);
                InlineElement element = new InlineElement(chain, e == 0, curve, model.installedExtension(e));
                element.start(model.yieldedExtension(e), model.extension(e));
                inline[e] = element;
            }
        }
    }

    /**
     * The longest step that follows the stiffest connecting subsystem [s]. What would need steps much shorter than the
     * cable does counts as rigid.
     */
    private double subsystemStep(List<ChainBuilder.Attached> attachments) {
        double axial = stepScale * NumericalParameters.STEP_SAFETY * stable;
        double step = axial;
        for (ChainBuilder.Attached each : attachments) {
            for (MotionSetup.Person person : each.spot().people) {
                double k = HystereticCurve.stiffest(person.curve());
                double mobility = each.joint().attachmentMobility() + 1 / person.mass();
                step = Math.min(step, Math.sqrt(NumericalParameters.SUBSYSTEM_STEP / (k * mobility)));
            }
        }
        return Math.min(
                Math.max(step, axial / NumericalParameters.MOST_SUBSTEPS),
                Math.min(1, stepScale) * NumericalParameters.LONGEST_STEP);
    }

    private void hook(MotionSetup.Spot spot, Joint joint) {
        for (int k = 0; k < spot.people.size(); k++) {
            MotionSetup.Person person = spot.people.get(k);
            double rigid = NumericalParameters.SUBSYSTEM_STEP
                    / (longest * longest * (joint.attachmentMobility() + 1 / person.mass()));
            HystereticCurve curve = new HystereticCurve(person.curve(), rigid);
            double z = chain.z[joint.node] - person.tautLength();
            boolean hangs = person.start() == Double.NEGATIVE_INFINITY;
            double extension = hangs ? curve.extensionFor(person.mass() * chain.gravity) : 0;
            FallingBody body = new FallingBody(
                    person,
                    joint,
                    curve,
                    hangs ? z - extension : z + person.timing().freeFall());
            body.x = chain.x[joint.node];
            body.y = chain.y[joint.node];
            if (hangs) {
                body.hang(extension);
                joint.load();
            }
            bodies[spot.numbers.get(k)] = body;
        }
    }

    /** The largest stable step of the present state [s], by Gershgorin's circles on the axial stiffness. */
    private double stableStep() {
        LumpedMassChain c = chain;
        int n = c.segments();
        double stiffest = c.law.stiffest;
        double most = 0;
        int next = 0;
        for (int j = 0; j < n; j++) {
            while (next < joints.length - 1 && joints[next].node < j) {
                next++;
            }
            double left = mobilityAt(j, next);
            double right = mobilityAt(j + 1, joints[next].node == j ? Math.min(next + 1, joints.length - 1) : next);
            double k = stiffest * c.perLength[j];
            double sum = k * (left + right);
            if (j > 0) {
                sum += 0.5 * (k + stiffest * c.perLength[j - 1]) * left;
            }
            if (j < n - 1) {
                sum += 0.5 * (k + stiffest * c.perLength[j + 1]) * right;
            }
            most = Math.max(most, sum);
        }
        return 2 / Math.sqrt(most);
    }

    private double mobilityAt(int node, int joint) {
        return joints[joint].node == node ? joints[joint].mobility() : chain.mobility[node];
    }

    /** Chooses the step and kicks all velocities; the state can then be looked at. */
    void kick() {
        if (steps % NumericalParameters.STEPS_BETWEEN_BOUNDS == 0) {
            stable = stableStep();
        }
        double next = Math.min(stepScale * NumericalParameters.STEP_SAFETY * stable, longest);
        double h = drift == 0 ? 0.5 * next : 0.5 * (drift + next);
        drift = next;
        LumpedMassChain c = chain;
        if (stepScale > 1) {
            c.weight = NumericalParameters.DAMPING_WEIGHT + NumericalParameters.ELASTIC_WEIGHT * h / c.dampingTime;
        }
        ChainStep.geometry(c);
        for (InlineElement each : inline) {
            if (each != null) {
                each.shorten();
                dampingHeat += each.settlingHeat;
            }
        }
        for (Joint each : joints) {
            each.release();
        }
        for (FallingBody each : bodies) {
            each.release(time, h - 0.5 * next, c.gravity);
            each.pull();
        }
        for (Joint each : joints) {
            each.contact(h);
        }
        ChainStep.predict(c, h);
        for (Joint each : joints) {
            each.predict(h);
        }
        solve(h);
        finish(h);
    }

    private void solve(double h) {
        LumpedMassChain c = chain;
        ChainStep.rows(c, h);
        for (Joint each : joints) {
            each.addRows(h);
        }
        for (InlineElement each : inline) {
            if (each != null) {
                each.addRow(h);
            }
        }
        for (int round = 0; round < NumericalParameters.MOST_SOLUTIONS; round++) {
            ChainStep.solve(c);
            ChainStep.tensions(c);
            boolean again = false;
            for (Joint each : joints) {
                again |= each.revise(h);
            }
            for (InlineElement each : inline) {
                again |= each != null && each.revise(h);
            }
            if (!again) {
                break;
            }
        }
        for (int e = 0; e < 2; e++) {
            InlineElement each = inline[e];
            if (each != null) {
                int last = joints.length - 1;
                each.finish(h, joints[e == 0 ? 0 : last], joints[e == 0 ? 1 : last - 1]);
            }
        }
    }

    private void finish(double h) {
        LumpedMassChain c = chain;
        frictionHeat += frictionStep;
        dampingHeat += dampingStep;
        ChainStep.findLargest(c);
        ChainStep.finish(c, h);
        for (Joint each : joints) {
            c.partial[each.node] *= c.mobility[each.node] > 0 ? 1 : 0;
        }
        double heat = ChainStep.heat(c, h);
        double rubbed = 0;
        for (Joint each : joints) {
            each.finish(h);
            heat += each.dampingHeat;
            rubbed += each.frictionHeat;
        }
        for (InlineElement each : inline) {
            if (each != null) {
                heat += each.dampingHeat;
            }
        }
        for (FallingBody each : bodies) {
            each.kick(h, c.gravity);
        }
        frictionStep = 0.5 * rubbed;
        dampingStep = 0.5 * heat;
        frictionHeat += frictionStep;
        dampingHeat += dampingStep;
    }

    /**
     * Tells whether the motion has run away, as it may where the mesh does not carry what happens: it would go on for ever in
     * ever shorter steps.
     */
    boolean hasRunAway() {
        double most = 0;
        for (int i = 0; i < chain.nodes; i++) {
            most = Math.max(most, Math.abs(chain.vx[i]) + Math.abs(chain.vy[i]) + Math.abs(chain.vz[i]));
        }
        return !(most < NumericalParameters.RUNAWAY_SPEED && stable > NumericalParameters.RUNAWAY_STEP);
    }

    /** Keeps the velocities before the next kick, for the energy account. */
    void remember() {
        int n = chain.nodes;
        System.arraycopy(chain.vx, 0, oldX, 0, n);
        System.arraycopy(chain.vy, 0, oldY, 0, n);
        System.arraycopy(chain.vz, 0, oldZ, 0, n);
    }

    /** Moves all positions on, passes material, and adapts the mesh. */
    void move() {
        ChainStep.drift(chain, drift);
        for (Joint each : joints) {
            each.drift(drift);
        }
        for (FallingBody each : bodies) {
            each.drift(drift);
        }
        time += drift;
        work += chain.nodes;
        if (steps % NumericalParameters.STEPS_BETWEEN_REMESHING == 0 && remeshing.adapt()) {
            stable = stableStep();
        }
        steps++;
    }

    /** Length of the last step [s]. */
    double step() {
        return drift;
    }

    /**
     * Fills in the energy account at the time of the last kick, before the move; {@link #remember} must have been
     * called before that kick.
     */
    void energies(double[] out) {
        LumpedMassChain c = chain;
        Arrays.fill(out, 0);
        double motion = 0;
        for (int i = 0; i < c.nodes; i++) {
            double m = c.mass(i);
            out[MotionState.Energy.WEIGHT] += m * c.gravity * c.z[i];
            if (c.mobility[i] > 0) {
                motion += m * (oldX[i] * c.vx[i] + oldY[i] * c.vy[i] + oldZ[i] * c.vz[i]);
            }
        }
        out[MotionState.Energy.CABLE_MOTION] = 0.5 * motion;
        for (int j = 0; j < c.segments(); j++) {
            out[MotionState.Energy.STRAIN] += c.strainEnergy(j);
        }
        for (Joint each : joints) {
            if (each instanceof SlidingJoint t) {
                out[MotionState.Energy.CABLE_MOTION] += t.kineticEnergy();
            } else if (each instanceof SupportJoint a) {
                int i = a.node;
                double m = a.passingMass();
                out[MotionState.Energy.CABLE_MOTION] +=
                        0.5 * m * (oldX[i] * c.vx[i] + oldY[i] * c.vy[i] + oldZ[i] * c.vz[i] + a.flowBefore * a.flow);
                out[MotionState.Energy.ANCHORS] += a.springEnergy();
            }
        }
        for (InlineElement each : inline) {
            if (each != null) {
                out[MotionState.Energy.INLINE] += each.work;
            }
        }
        for (FallingBody each : bodies) {
            out[MotionState.Energy.WORKER_MOTION] += each.kineticEnergy();
            out[MotionState.Energy.WORKER_WEIGHT] += each.mass * c.gravity * each.z;
            out[MotionState.Energy.CONNECTIONS] += each.work;
        }
        out[MotionState.Energy.FRICTION] = frictionHeat;
        out[MotionState.Energy.DAMPING] = dampingHeat;
        out[MotionState.Energy.MESH] = remeshing.lost;
    }
}
