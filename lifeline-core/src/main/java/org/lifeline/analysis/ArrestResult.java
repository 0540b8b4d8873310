package org.lifeline.analysis;

import static java.util.Objects.requireNonNull;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.lifeline.analysis.clearance.Clearance;
import org.lifeline.analysis.explain.CalculationStep;
import org.lifeline.analysis.explain.Explanations;
import org.lifeline.analysis.motion.MotionSummary;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.Convergence;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.Point;
import org.lifeline.base.UnitSystem;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * The arrest of one fall, at one temperature, on one side of the absorber's force range.
 *
 * <p>By energy balance all quantities belong to the lowest point, taken as an equilibrium. By the transient method
 * positions and energies belong to it, in motion; forces and tensions are peaks of the first catch, each at its own time.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class ArrestResult implements Canonical {
    private final Conditions conditions;
    private final LineEquilibrium before;
    private final LineEquilibrium peak;
    private final Point attachmentBefore;
    private final Point attachmentAtPeak;
    private final double freeFall;
    private final List<Double> deployments;
    private final double arrestForce;
    private final double lineLoad;
    private final boolean bottomedOut;
    private final boolean bound;
    private final EnergyAccount energy;
    private final double pathWork;
    private final Clearance clearance;
    private final double harnessStretch;
    private final Optional<MotionSummary> motion;
    private final Worker hardestArrested;
    private final Worker clearanceWorker;

    ArrestResult(ArrestResultBuilder b) {
        this.conditions = b.conditions;
        this.before = requireNonNull(b.before, "before");
        this.peak = requireNonNull(b.peak, "peak");
        this.attachmentBefore = requireNonNull(b.attachmentBefore, "attachmentBefore");
        this.attachmentAtPeak = requireNonNull(b.attachmentAtPeak, "attachmentAtPeak");
        this.freeFall = b.freeFall;
        this.deployments = List.copyOf(b.deployments);
        this.bound = b.bound;
        this.arrestForce = b.arrestForce;
        this.lineLoad = b.lineLoad;
        this.bottomedOut = b.bottomedOut;
        this.energy = requireNonNull(b.energy, "energy");
        this.pathWork = b.pathWork;
        this.clearance = requireNonNull(b.clearance, "clearance");
        this.harnessStretch = b.harnessStretch;
        this.motion = b.motion;
        this.hardestArrested = b.hardestArrested;
        this.clearanceWorker = b.clearanceWorker;
    }

    /** What an analysis was asked for. */
    record Conditions(Fall fall, DeploymentForce side, Method method, Optional<AttachmentLimit> limit) {}

    /**
     * The line.
     *
     * @return the line
     */
    public Lifeline line() {
        return peak.line();
    }

    /**
     * The fall.
     *
     * @return the fall
     */
    public Fall fall() {
        return conditions.fall();
    }

    /**
     * The span of the fall. A fall at a support counts to the span behind it, at the last support to the last span.
     *
     * @return number of the span, from 1
     */
    public int span() {
        return line().spanOf(fall().place());
    }

    /**
     * Temperature of the line.
     *
     * @return temperature [°C]
     */
    public double temperature() {
        return peak.temperature();
    }

    /**
     * Side of the absorber's force range.
     *
     * @return clearance side or maximum side
     */
    public DeploymentForce side() {
        return conditions.side();
    }

    /**
     * How the arrest was computed.
     *
     * @return the method
     */
    public Method method() {
        return conditions.method();
    }

    /**
     * The limit at which a free-running attachment was computed.
     *
     * @return running or held; empty for one that grips the cable or pulls on a support, and for an arrest in time, which
     *     follows the connector
     */
    public Optional<AttachmentLimit> attachmentLimit() {
        return conditions.limit();
    }

    /**
     * How the connection held on to the line in the analysis.
     *
     * @return gripped for a free-running attachment that was held, else that of those who fall
     */
    public Attachment attachment() {
        return conditions.limit().equals(Optional.of(AttachmentLimit.HELD))
                ? Attachment.GRIPPED
                : fall().fallers().get(0).attachment();
    }

    /**
     * The line just before the fall: at its temperature, with those who hang already.
     *
     * @return the equilibrium
     */
    public LineEquilibrium before() {
        return before;
    }

    /**
     * The line at the lowest point of the fall.
     *
     * @return the equilibrium under the line load
     */
    public LineEquilibrium peak() {
        return peak;
    }

    /**
     * Where the attachment was on the line just before the fall.
     *
     * @return the point
     */
    public Point attachmentBefore() {
        return attachmentBefore;
    }

    /**
     * Where the attachment is at the lowest point.
     *
     * @return the point
     */
    public Point attachmentAtPeak() {
        return attachmentAtPeak;
    }

    /**
     * Free fall of the harness attachment before the connecting subsystem carries force; of several who fall together,
     * the longest.
     *
     * @return free fall h [m], not negative
     */
    public double freeFall() {
        return freeFall;
    }

    /**
     * Extension of the connecting subsystem beyond its taut length: the deceleration distance; of several who fall
     * together, the largest.
     *
     * @return deployment x [m], not negative
     */
    public double deployment() {
        return Collections.max(deployments);
    }

    /**
     * Extension of each connecting subsystem, in the order of those who fall.
     *
     * @return deployments [m], not negative; unmodifiable
     */
    public List<Double> deployments() {
        return deployments;
    }

    /**
     * Tells whether forces and distances are bounds on the safe side: several fall together who are not alike. Then what
     * the line takes in the energy account is more than what the balances of all of them leave it.
     *
     * @return true for bounds, false for the solution of one balance
     */
    public boolean isBound() {
        return bound;
    }

    /**
     * Tells whether a connecting subsystem was used up and hit its stop.
     *
     * @return true if it bottomed out
     */
    public boolean bottomedOut() {
        return bottomedOut;
    }

    /**
     * Maximum arrest force on one worker; of several who fall together, on the one with the largest.
     *
     * @return force [N]
     */
    public double arrestForce() {
        return arrestForce;
    }

    /**
     * Vertical force on the line at the place of the fall, of all who fall there together.
     *
     * @return force P [N], positive down
     */
    public double lineLoad() {
        return lineLoad;
    }

    /**
     * Sag at the load: vertical distance from the chord of the span, between the supports where they now are, down to
     * the attachment.
     *
     * @return sag [m], positive down
     */
    public double sag() {
        return peak.span(span()).sagAt(attachmentAtPeak);
    }

    /**
     * Descent of the attachment from its position before the fall.
     *
     * @return descent δ [m], positive down
     */
    public double lineDescent() {
        return attachmentBefore.z() - attachmentAtPeak.z();
    }

    /**
     * Horizontal distance of the attachment from the first support of the span, where that now is, at the lowest point.
     *
     * @return distance [m]
     */
    public double loadX() {
        return attachmentAtPeak.horizontalDistance(peak.span(span()).firstSupport());
    }

    /**
     * Largest tension anywhere in the cable.
     *
     * @return tension [N]
     */
    public double maximumTension() {
        return peak.maximumTension();
    }

    /**
     * What the line does to its supports at the lowest point.
     *
     * @return supports 0 … n; unmodifiable
     */
    public List<SupportReaction> supports() {
        return peak.supports();
    }

    /**
     * Force on one anchor at the lowest point.
     *
     * @param id the support
     * @return force [N]
     * @throws org.lifeline.base.InvalidInputException if there is no such support
     */
    public double anchorLoad(String id) {
        return peak.support(id).force();
    }

    /**
     * The larger of the two end anchor loads.
     *
     * @return force [N]
     */
    public double endAnchorLoad() {
        List<SupportReaction> s = peak.supports();
        return Math.max(s.get(0).force(), s.get(s.size() - 1).force());
    }

    /**
     * Unstretched length of cable that passed a support toward the fall during the fall.
     *
     * @param support number of the support, from 0
     * @return slip [m], positive toward the span of the fall
     * @throws org.lifeline.base.InvalidInputException if there is no such support
     */
    public double slip(int support) {
        int last = peak.supports().size() - 1;
        new Violations()
                .numbered("support", support, Interval.of(0, last), InputRule.NO_SUCH_SUPPORT_NUMBER)
                .throwIfAny();
        double moved = peak.supports().get(support).slip()
                - before.supports().get(support).slip();
        // Adding zero turns −0 into 0.
        return (support < span() ? -moved : moved) + 0.0;
    }

    /**
     * The in-line energy absorbers at the lowest point.
     *
     * @return one for each end that has one; unmodifiable
     */
    public List<InlineAbsorberState> inlineAbsorbers() {
        return peak.inlineAbsorbers();
    }

    /**
     * Total fall distance: free fall, deployment, descent of the attachment, harness stretch. In a transient, where the
     * largest extension and the lowest point do not come at the same moment, the fall of the harness attachment to its lowest
     * point, and harness stretch.
     *
     * @return distance [m]
     */
    public double totalFallDistance() {
        return motion.map(MotionSummary::harnessFall).orElseGet(() -> freeFall + deployment() + lineDescent())
                + harnessStretch;
    }

    /**
     * How far the connecting subsystem reaches down at the lowest point, beyond its taut length.
     *
     * @return extension [m]: the deployment, or in a transient what is left of it at that moment
     */
    public double reach() {
        return motion.map(m -> m.harnessFall() - freeFall - lineDescent()).orElseGet(this::deployment);
    }

    /**
     * Stretch of the harness in the total fall distance.
     *
     * @return stretch [m]
     */
    public double harnessStretch() {
        return harnessStretch;
    }

    /**
     * Where the energy of the fall went.
     *
     * @return the account
     */
    public EnergyAccount energy() {
        return energy;
    }

    /**
     * Work done on the line at the place of the fall, by quadrature along the path where an anchor has friction; there
     * it checks {@link EnergyAccount#lineWork()} by a second way.
     *
     * @return ∫P dδ [J]; NaN where no anchor has friction and the path was not followed step by step
     */
    public double pathWork() {
        return pathWork;
    }

    /**
     * The clearance account of the worker who needs the most.
     *
     * @return the account
     */
    public Clearance clearance() {
        return clearance;
    }

    /**
     * How the iteration ended.
     *
     * @return Newton steps, scaled residual, tolerance
     */
    public Convergence convergence() {
        return peak.convergence();
    }

    /**
     * What stands behind the numbers of an arrest in time.
     *
     * @return mesh, peaks of the whole run, energy drift; empty for an energy balance
     */
    public Optional<MotionSummary> motion() {
        return motion;
    }

    /**
     * The worker for whom {@link #arrestForce()} is given when several fall together.
     *
     * @return in time the one who is arrested hardest, by energy balance the first of those who fall
     */
    public Worker hardestArrested() {
        return hardestArrested;
    }

    /**
     * The worker for whom {@link #clearance()} is given when several fall together.
     *
     * @return in time the one who needs the lowest level, by energy balance the first of those who fall
     */
    public Worker clearanceWorker() {
        return clearanceWorker;
    }

    /**
     * The first of those who fall, in the order of the fall. Others may be arrested harder or fall lower.
     *
     * @return the worker
     */
    public Worker firstFaller() {
        return fall().fallers().get(0);
    }

    /**
     * Where the result goes beyond what it is valid for, or beyond what cable, anchors and absorbers hold.
     *
     * @return the warnings; unmodifiable, empty if there is nothing to say
     */
    public List<Warning> warnings() {
        return ResultWarnings.of(this);
    }

    /**
     * The calculation from the inputs to the clearance, step by step, in SI.
     *
     * @return the lines; unmodifiable
     */
    public List<CalculationStep> explain() {
        return explainIn(UnitSystem.SI);
    }

    /**
     * The calculation from the inputs to the clearance, step by step.
     *
     * @param system the units to calculate in
     * @return the lines; unmodifiable
     */
    public List<CalculationStep> explainIn(UnitSystem system) {
        Violations.required("system", system);
        return Explanations.of(this, system);
    }

    @Override
    public CanonicalForm canonicalForm() {
        return ResultForms.of(this);
    }
}
