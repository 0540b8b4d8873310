package org.lifeline.design.structure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.analysis.Statics;
import org.lifeline.base.Vector3;
import org.lifeline.base.Violations;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Post;
import org.lifeline.model.Support;

/**
 * Loads for the structure that carries a line.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class SupportLoadsResult {
    private final LifelineDesign design;
    private final Asked asked;
    private final List<GoverningReaction> balance;
    private final List<GoverningReaction> inTime;
    private final List<Vector3> permanent;

    /** The angle of the pull [rad], whether it was stated, and the factors. */
    record Asked(double angle, boolean assumed, List<StatedFactor> factors) {}

    SupportLoadsResult(
            LifelineDesign design, Asked asked, List<GoverningReaction> balance, List<GoverningReaction> inTime) {
        this.design = design;
        this.asked = asked;
        this.balance = List.copyOf(balance);
        this.inTime = List.copyOf(inTime);
        List<Vector3> atRest = new ArrayList<>();
        Statics.withDefaults().solve(design.line(), List.of()).supports().forEach(s -> atRest.add(s.vector()));
        this.permanent = List.copyOf(atRest);
    }

    /**
     * The design.
     *
     * @return the design
     */
    public LifelineDesign design() {
        return design;
    }

    /**
     * Largest angle of the pull from the vertical, to either side across the line.
     *
     * @return angle [rad]
     */
    public double angle() {
        return asked.angle;
    }

    /**
     * Whether the angle of the pull is {@link SupportLoads#ASSUMED_ANGLE}, taken because none was stated.
     *
     * @return true if it is an assumption of the analysis, false if it was stated
     */
    public boolean isAngleAssumed() {
        return asked.assumed;
    }

    /**
     * The user's factors.
     *
     * @return factors with their sources; unmodifiable
     */
    public List<StatedFactor> factors() {
        return asked.factors;
    }

    /**
     * What the line does to each support as installed, nobody on it: the permanent load from pretension and weight.
     *
     * @return forces in the order of the line, components in [N], without model factor; unmodifiable
     */
    public List<Vector3> permanent() {
        return permanent;
    }

    /**
     * Load cases by energy balance: forces on all supports act together.
     *
     * @return support by support, effect by effect; effects that occur nowhere are left out; unmodifiable
     */
    public List<GoverningReaction> byEnergyBalance() {
        return balance;
    }

    /**
     * Load cases of arrests in time: each force is the peak of its support.
     *
     * @return support by support, effect by effect; empty if none was followed or the verdicts rest on the energy balance;
     *     unmodifiable
     */
    public List<GoverningReaction> inTime() {
        return inTime;
    }

    /**
     * The largest of each effect by either method.
     *
     * @return support by support, effect by effect; unmodifiable
     */
    public List<GoverningReaction> governing() {
        List<GoverningReaction> list = new ArrayList<>();
        for (Support s : design.line().supports()) {
            for (LoadEffect e : LoadEffect.values()) {
                governing(s.id(), e).ifPresent(list::add);
            }
        }
        return List.copyOf(list);
    }

    /**
     * The largest of one effect on one support by either method.
     *
     * @param support id of the support
     * @param effect the effect
     * @return the load case; empty if the effect does not occur there
     */
    public Optional<GoverningReaction> governing(String support, LoadEffect effect) {
        Violations.required("support", support);
        Violations.required("effect", effect);
        Optional<GoverningReaction> slow = find(balance, support, effect);
        Optional<GoverningReaction> fast = find(inTime, support, effect);
        if (slow.isEmpty() || fast.isEmpty()) {
            return slow.or(() -> fast);
        }
        return fast.get().value() > slow.get().value() ? fast : slow;
    }

    /**
     * The largest of one effect on one support by energy balance.
     *
     * @param support id of the support
     * @param effect the effect
     * @return the load case with its simultaneous partners; empty if the effect does not occur there
     */
    public Optional<GoverningReaction> byEnergyBalance(String support, LoadEffect effect) {
        Violations.required("support", support);
        Violations.required("effect", effect);
        return find(balance, support, effect);
    }

    private static Optional<GoverningReaction> find(List<GoverningReaction> rows, String support, LoadEffect effect) {
        return rows.stream()
                .filter(r -> r.effect() == effect && r.support().id().equals(support))
                .findFirst();
    }

    /**
     * How far the top of a post bends under its largest shear, counted from the unloaded post: F h³/(3 E I) along x and y.
     *
     * @param support id of the support
     * @return deflection along x, y, z [m], z zero; empty where no post with a section is stated, or no load occurs
     */
    public Optional<Vector3> deflection(String support) {
        Violations.required("support", support);
        Optional<GoverningReaction> row = governing(support, LoadEffect.SHEAR);
        if (row.isEmpty()) {
            return Optional.empty();
        }
        Vector3 f = row.get().vector();
        return row.get()
                .support()
                .post()
                .filter(Post::hasSection)
                .map(p -> new Vector3(
                        f.x() / p.stiffness().x(), f.y() / p.stiffness().y(), 0));
    }

    /**
     * What must not be overlooked: posts whose stated elastic moment of resistance is passed, and those for which the moment
     * cannot be compared because a direction has none stated.
     *
     * @return a sentence each; unmodifiable
     */
    public List<PostWarning> warnings() {
        List<PostWarning> list = new ArrayList<>();
        for (Support s : design.line().supports()) {
            governing(s.id(), LoadEffect.ELASTIC_SHARE)
                    .filter(r -> r.value() > 1)
                    .ifPresent(r -> list.add(new PostWarning(
                            s.id(),
                            "the elastic moment of resistance that is stated for the post is passed: it yields, its"
                                    + " stiffness no longer holds, and the line comes down further than computed",
                            r.value())));
            s.post()
                    .filter(p -> p.momentOfResistanceX().isPresent()
                            != p.momentOfResistanceY().isPresent())
                    .ifPresent(p -> list.add(new PostWarning(
                            s.id(),
                            "an elastic moment of resistance is stated for one direction only: the moment of the other"
                                    + " is not compared with anything",
                            Double.NaN)));
        }
        return List.copyOf(list);
    }

    /**
     * A warning about a post.
     *
     * @param support id of the support
     * @param text what must not be overlooked
     * @param share share of the elastic moment of resistance [-]; NaN where it is about something else
     * @since 1.0.0
     */
    public record PostWarning(String support, String text, double share) {}
}
