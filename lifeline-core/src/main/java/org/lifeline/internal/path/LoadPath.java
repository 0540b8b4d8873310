package org.lifeline.internal.path;

import org.lifeline.base.NoEquilibriumException;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineEnergy;
import org.lifeline.internal.line.LineSystem;

/**
 * The path along which one load on a line grows from nothing: force, descent of the load, energy taken up by the line.
 *
 * <p>Where no anchor has friction the state at a force does not depend on the way to it, and a step may be as long as
 * Newton's method carries. Where an anchor has friction, steps end where an anchor starts to slip, and stay so short
 * that the heat, ∫ΔΨ dq by Hermite interpolation ({@link PathRates}), agrees with the work ∫P dδ done on the line by the
 * same rule.
 *
 * <p>Not thread-safe.
 */
public final class LoadPath {
    private static final int MOST_STEPS = 20_000;

    /** First step and longest step of a path that is followed, in u = asinh(P/P₀). */
    private static final double FIRST = 1.5;

    private static final double LONGEST = 1.5;

    /** Step so short that its error may be rounding. */
    private static final double SHORT = 0.2;

    /** Shortest step, as a share of the force to go to, unless an event ends it. */
    private static final double SHORTEST = 1e-7;

    /** Number of steps after which the tolerance of a step grows fourfold, and again. */
    private static final int PATIENCE = 300;

    private static final double WORK_TOLERANCE = 2e-7;
    private static final double SMALLEST = 1e-11;

    /** Rounding of an energy that is a difference of larger ones [-]. */
    static final double ROUNDING = 2e-14;

    private static final double MOST_GROWTH = 3;
    private static final double AFTER_EVENT = 0.2;

    /** Relative excess of a limit within which an event counts as met [-]. */
    static final double EVENT = 1e-7;

    /** A quantity that starts at or above zero and whose first root along the path is sought. */
    @FunctionalInterface
    public interface Gap {
        /**
         * The quantity.
         *
         * @param path the path, at a point
         * @return the quantity [J]
         */
        double at(LoadPath path);

        /**
         * Its derivative by the force, which speeds up the search; need not hold at corners.
         *
         * @param force force [N]
         * @param descentRate derivative of the descent by the force [m/N]
         * @return derivative [J/N]; NaN if it is not known
         */
        default double slope(double force, double descentRate) {
            return Double.NaN;
        }
    }

    private final LineModel model;
    private final LineSystem system;
    private final int load;
    private final Equilibrium equilibrium;
    private final PathRates rates;
    private final PathStep stepper;
    private final PathRoot root;
    private final boolean friction;

    /** True for a load at a support that does not yield under it: the line stays as it is, whatever the force. */
    private final boolean still;
    private final double startHeight;
    private final double scale;
    private final LineEnergy energyBefore;
    private double reach = FIRST;
    private double peak;
    private boolean gaveWay;

    private PathNode now;
    private PathNode next;

    /** The point before the current one. */
    private PathNode before;

    /** A point beyond the current one, if the last step overshot. */
    private PathNode beyond;

    private boolean overshot;

    /**
     * A path that starts at the model's current state.
     *
     * @param model the line; follows the path
     * @param load the load that grows; takes part from now on
     * @param startHeight elevation from which the descent of the load counts [m]
     * @param energyScale an energy against which errors of the path are measured [J], above zero
     */
    public LoadPath(LineModel model, LineModel.Load load, double startHeight, double energyScale) {
        this.model = model;
        this.energyBefore = model.energy();
        model.activate(load);
        this.system = model.system();
        this.load = load.index();
        this.equilibrium = new Equilibrium(system);
        boolean rough = false;
        for (int i = 1; i < system.spans; i++) {
            rough |= system.friction[i] > 0 && !system.clamped[i];
        }
        // In-line absorbers do not give back what they had: where the tension at an end can fall again while the load
        // grows, because of another absorber or another load, the way is followed as it is with friction.
        boolean first = system.absorbers[0] != null;
        boolean second = system.absorbers[1] != null;
        int support = system.pulledSupport[this.load];
        this.still = support >= 0 && system.compliance[3 * support + 2] == 0;
        boolean memory = rough || (first && second) 
                || ((first || second) && (system.loads > 1 || support >= 0));
        this.friction = memory && !still;
        this.startHeight = startHeight;
        this.scale = energyScale;
        this.now = new PathNode(system, friction);
        this.next = new PathNode(system, friction);
        this.before = PathNode.NONE;
        this.beyond = PathNode.NONE;
        now.state.set(model.state());
        next.state.set(now.state);
        if (!equilibrium.solve(now.state, next.state)) {
            throw model.failure("line at the start of the fall", 0, equilibrium);
        }
        double[] datum = {startHeight - system.pz[0], energyBefore.line() + energyBefore.hanging()};
        this.rates = new PathRates(equilibrium, this.load, friction, now.state, datum);
        this.stepper = new PathStep(equilibrium, rates, this.load, friction);
        this.root = new PathRoot(this, energyScale);
        rates.finish(now);
    }

    /**
     * Energies of the line before the load took part.
     *
     * @return the parts
     */
    public LineEnergy energyBefore() {
        return energyBefore;
    }

    /**
     * Force at the current point.
     *
     * @return force [N]
     */
    public double force() {
        return now.force;
    }

    /**
     * Largest force so far on the path: above {@link #force} only while the line gives way.
     *
     * @return force [N]
     */
    public double peakForce() {
        return Math.max(now.force, peak);
    }

    /**
     * Tells whether the line gave way somewhere on the path, at a force that fell while the load went down.
     *
     * @return true if it did
     */
    public boolean gaveWay() {
        return gaveWay;
    }

    /**
     * Descent of the load at the current point.
     *
     * @return descent from the start height [m], positive down
     */
    public double descent() {
        return now.descent;
    }

    /**
     * Energy that the line has taken up since the start: stored, turned to heat, or lent to loads that it lifted.
     *
     * @return energy [J]
     */
    public double work() {
        return now.energy + now.heat;
    }

    /**
     * Heat of friction at the anchors since the start.
     *
     * @return heat [J]
     */
    public double heat() {
        return now.heat;
    }

    /**
     * Work done by the load, by quadrature over the steps taken.
     *
     * @return ∫P dδ [J]; NaN unless an anchor has friction, since only then steps are kept short, and NaN where the line
     *     gave way
     */
    public double pathWork() {
        return friction && !gaveWay ? now.pathWork : Double.NaN;
    }

    /**
     * Tells whether an anchor has friction, so that the path is followed step by step.
     *
     * @return true if one has
     */
    public boolean hasFriction() {
        return friction;
    }

    /**
     * An exception for a search along the path that came to nothing.
     *
     * @param what what was sought
     * @return the exception
     */
    public NoEquilibriumException hopeless(String what) {
        return model.failure(what, 0, equilibrium);
    }

    /**
     * Goes on to a force, unless a quantity that starts at or above zero falls below zero on the way; then goes on to its
     * root.
     *
     * @param target force to go to [N], not lower than the current one
     * @param gap the quantity; must be continuous along the path
     * @param watchFrom force below which the gap is not looked at [N]
     * @return true if the root was met
     */
    public boolean advance(double target, Gap gap, double watchFrom) {
        int steps = 0;
        int failures = 0;
        double least = SHORTEST * target;
        while (now.force < target) {
            double to = friction ? rates.beyond(now.force, Math.max(reach, rates.step(now.force, least))) : target;
            to = Math.min(to, target);
            if (failures > 0 && !friction) {
                to = Math.min(target, now.force + Math.pow(0.25, failures) * (target - now.force));
            }
            if (target - to < 1e-9 * target) {
                to = target;
            }
            settleFor(to == target);
            double reached = step(to);
            boolean lost = Double.isNaN(reached);
            double error = lost || !friction ? 0 : PathRates.error(now, next);
            double tolerance = stepTolerance() * Math.pow(4, Math.floorDiv(steps, PATIENCE));
            if (lost || (error > tolerance && reached - now.force > 10 * least)) {
                failures++;
                if (lost) {
                    reach = 0.25 * rates.step(now.force, to - now.force);
                    if (failures > 400 || to - now.force < 4 * least) {
                        if (giveWay(gap, watchFrom)) {
                            publish();
                            return true;
                        }
                        failures = 0;
                        reach = rates.step(now.force, 1e-3 * target);
                    }
                } else {
                    reach = shrink(error / tolerance) * rates.step(now.force, reached - now.force);
                    keepBeyond();
                }
                continue;
            }
            // A step that cannot be made short enough is a jump, as when a load leaves an anchor with friction.
            gaveWay |= friction && error > tolerance;
            if (reached > watchFrom && gapAt(next, gap) < 0) {
                settleFor(true);
                root.find(gap, watchFrom);
                publish();
                return true;
            }
            failures = 0;
            if (friction) {
                double done = rates.step(now.force, reached - now.force);
                double grown = done * (error > 0 ? Math.min(MOST_GROWTH, shrink(error / tolerance)) : MOST_GROWTH);
                // Behind an event there is no third point yet, so that steps must be shorter.
                double behind = Math.max(AFTER_EVENT * reach, 0.1);
                reach = Math.min(LONGEST, reached < to ? behind : grown);
            }
            accept();
            overshot = false;
            if (++steps > MOST_STEPS) {
                throw lost(now.force / target);
            }
        }
        publish();
        return false;
    }

    /** Asks for states to rounding, where somebody looks at them, or for as much as the way needs. */
    private void settleFor(boolean view) {
        if (view || !friction) {
            equilibrium.tighten();
        } else {
            equilibrium.loosen();
        }
    }

    /** What the error of a step may be: a part of the work done in it, so that the parts add up to that of the whole. */
    private double stepTolerance() {
        double work = Math.abs(next.energy + next.heat - now.energy - now.heat);
        // Rounding hides the error of a step, but it does not make a long step right.
        boolean isShort = rates.step(now.force, next.force - now.force) < SHORT;
        return WORK_TOLERANCE * work + SMALLEST * scale + (isShort ? ROUNDING * next.size : 0);
    }

    /** Factor on a step that would bring its error to the tolerance, with some to spare. */
    private double shrink(double excess) {
        return Math.max(0.2, 0.9 * Math.pow(excess, -1.0 / next.order));
    }

    /**
     * Takes one step into the next point.
     *
     * @return the force reached, or NaN if no equilibrium was found
     */
    double step(double to) {
        if (still) {
            next.set(now);
            next.state.force[load] = to;
            rates.place(next, to);
            return to;
        }
        return stepper.take(new PathNode[] {now, next, before, overshot ? beyond : before}, to);
    }

    /** The next point becomes the current one; a point beyond it is kept. */
    void accept() {
        PathNode t = before;
        before = now;
        now = next;
        next = reusable(t);
    }

    private PathNode reusable(PathNode node) {
        return node == PathNode.NONE ? new PathNode(system, friction) : node;
    }

    /** The next point is kept as one beyond the current one. */
    void keepBeyond() {
        PathNode t = next;
        next = reusable(beyond);
        beyond = t;
        overshot = true;
    }

    PathNode now() {
        return now;
    }

    PathNode next() {
        return next;
    }

    /** Derivative of the gap by the force at a point [J/N]; NaN if unknown. */
    double slopeAt(PathNode node, Gap gap) {
        if (!friction) {
            rates.rates(node);
        }
        return node.hasTangent ? gap.slope(node.force, node.descentRate) : Double.NaN;
    }

    NoEquilibriumException lost(double share) {
        publish();
        return model.failure("line under the arrest load", share, equilibrium);
    }

    /**
     * Passes a place at which the line cannot carry more where it is: the load goes down at a falling force until the
     * line carries again. The descent is prescribed there and the force follows.
     *
     * @return true if the root of the gap was met on the way
     */
    boolean giveWay(Gap gap, double watchFrom) {
        gaveWay = true;
        overshot = false;
        peak = Math.max(peak, now.force);
        double span = system.chord[system.loadSpan[load]];
        double drop = 1e-4 * span;
        int failures = 0;
        while (now.force <= peak * (1 + 1e-9)) {
            if (!descend(now.descent + drop)) {
                drop *= 0.25;
                if (++failures > 200 || drop < 1e-13 * span || now.descent > 1e3 * span) {
                    publish();
                    throw model.failure("line that gives way under the arrest load", 0, equilibrium);
                }
                continue;
            }
            if (peak > watchFrom && gapAt(next, gap) < 0) {
                double low = now.descent;
                double high = next.descent;
                for (int k = 0; k < 100 && high - low > 1e-13 * span; k++) {
                    double middle = 0.5 * (low + high);
                    if (descend(middle) && gapAt(next, gap) >= 0) {
                        accept();
                        low = now.descent;
                    } else {
                        high = middle;
                    }
                }
                return true;
            }
            accept();
            drop = Math.min(1.5 * drop, 0.02 * span);
        }
        return false;
    }

    /** Takes one step into {@link #next}, to a descent; the force is found with the state. */
    private boolean descend(double descent) {
        double want = startHeight - system.pz[0] - descent;
        DescentControl control = new DescentControl(system, equilibrium, load);
        next.state.set(now.state);
        for (int round = 0; round < 50; round++) {
            if (!control.solve(next.state, want)) {
                return false;
            }
            if (!equilibrium.changeModes(next.state, now.state, round)) {
                rates.place(next, next.state.force[load]);
                rates.finish(next);
                next.pathWork = now.pathWork;
                next.heat = now.heat;
                rates.addJump(now.state, next, next.descent - now.descent);
                return true;
            }
        }
        return false;
    }

    /** Hands the current point to the model. */
    private void publish() {
        model.state().set(now.state);
        model.note(equilibrium);
        equilibrium.iterations = 0;
    }

    double gapAt(PathNode node, Gap gap) {
        PathNode keep = now;
        now = node;
        double value = gap.at(this);
        now = keep;
        return value;
    }
}
