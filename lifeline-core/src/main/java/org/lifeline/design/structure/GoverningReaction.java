package org.lifeline.design.structure;

import java.util.List;
import java.util.Optional;
import org.lifeline.analysis.Method;
import org.lifeline.base.Vector3;
import org.lifeline.base.Violations;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.model.Support;

/**
 * The largest of one effect on one support, as a load case: the force there and the forces on all other supports.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class GoverningReaction {
    private final Subject subject;
    private final double value;
    private final double angle;
    private final ComputedCase computed;
    private final List<Vector3> forces;

    /** What is largest where. */
    record Subject(int number, Support support, LoadEffect effect) {}

    /** A case with the pull at an angle across the line [rad]. */
    record Pulled(ComputedCase computed, double angle) {}

    GoverningReaction(Subject subject, double value, Pulled pulled, List<Vector3> forces) {
        this.subject = subject;
        this.value = value;
        this.angle = pulled.angle;
        this.computed = pulled.computed;
        this.forces = List.copyOf(forces);
    }

    /**
     * The support.
     *
     * @return the support of the design
     */
    public Support support() {
        return subject.support;
    }

    /**
     * The effect that is largest.
     *
     * @return the effect
     */
    public LoadEffect effect() {
        return subject.effect;
    }

    /**
     * The largest value, with the model factor on force.
     *
     * @return value [N], [N·m] or [-] by the effect
     */
    public double value() {
        return value;
    }

    /**
     * The service load with a stated factor.
     *
     * @param factor the factor
     * @return value times factor [N], [N·m] or [-] by the effect
     */
    public double factored(StatedFactor factor) {
        Violations.required("factor", factor);
        return value * factor.factor();
    }

    /**
     * The angle of the pull from the vertical, in the plane across the line.
     *
     * @return angle [rad], positive to the left of one who looks along the line
     */
    public double angle() {
        return angle;
    }

    /**
     * Force of the line on the support, with the model factor on force.
     *
     * @return components in [N]
     */
    public Vector3 vector() {
        return forces.get(subject.number);
    }

    /**
     * Forces of the line on all supports, in the order of the line, with the model factor on force.
     *
     * @return components in [N]; unmodifiable
     */
    public List<Vector3> forces() {
        return forces;
    }

    /**
     * Tells whether the forces act at the same moment. By energy balance and at rest they do; in time each is the peak of its own
     * support, which together are on the safe side.
     *
     * @return true if they act together
     */
    public boolean simultaneous() {
        return method() != Method.TRANSIENT;
    }

    /**
     * Moment of the force about the base of the post.
     *
     * @return moment about x, y, z, components in [N·m]; empty where no post is stated
     */
    public Optional<Vector3> moment() {
        return subject.support.post().map(p -> LoadEffect.moment(p, vector()));
    }

    /**
     * The method that it was computed with.
     *
     * @return energy balance, transient, or rescue at rest
     */
    public Method method() {
        return computed.arrest().method();
    }

    /**
     * The case.
     *
     * @return the case
     */
    public FallCase fallCase() {
        return computed.fallCase();
    }
}
