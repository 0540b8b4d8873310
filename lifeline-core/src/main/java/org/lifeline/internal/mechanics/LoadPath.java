package org.lifeline.internal.mechanics;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.model.LoadElongation;

/**
 * The path along which one load on a line grows from nothing: force, descent of the load, energy taken up by the line.
 *
 * <p>Where no anchor has friction the state at a force does not depend on the way to it, and a step may be as long as
 * Newton's method carries. Where an anchor has friction, steps end where an anchor starts to slip, and stay so short
 * that the heat, ∫ΔΨ dq with cubic Hermite interpolation in the force, agrees with the work ∫P dδ done on the line by
 * the same rule.
 *
 * <p>Not thread-safe.
 */
public final class LoadPath {
    private static final int MOST_STEPS = 20_000;
    private static final int ROOT_STEPS = 200;
    private static final double ROOT_TOLERANCE = 1e-14;
    /** Number of steps after which the tolerance of a step grows fourfold, and again. */
    private static final int PATIENCE = 300;

    private static final double WORK_TOLERANCE = 2e-7;
    private static final double SMALLEST = 1e-11;
    private static final double ROUNDING = 2e-14;
    /** Part of a step, or relative excess of a limit, within which an event counts as met [-]. */
    static final double EVENT = 1e-7;

    private final LineModel model;
    private final LineSystem system;
    private final int load;
    private final Equilibrium equilibrium;
    private final PathEvents events;
    private final boolean friction;
    private final double startEnergy;
    private final double startHeight;
    private final double scale;
    private double suggested;
    private double peak;
    private boolean gaveWay;

    private PathNode now;
    private PathNode next;

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
        LineEnergy before = model.energy();
        model.activate(load);
        this.system = model.system();
        this.load = load.index();
        this.equilibrium = new Equilibrium(system);
        this.events = new PathEvents(system, equilibrium);
        boolean rough = false;
        for (int i = 1; i < system.spans; i++) {
            rough |= system.friction[i] > 0 && !system.clamped[i];
        }
        // In-line absorbers do not give back what they had: where the tension at an end can fall again while the load
        // grows, because of another absorber or another load, the way is followed as it is with friction.
        boolean first = system.absorbers[0] != null;
        boolean second = system.absorbers[1] != null;
        this.friction = rough || (first && second) || ((first || second) && system.loads > 1);
        this.startHeight = startHeight;
        this.scale = energyScale;
        this.startEnergy = before.line() + before.hanging();
        this.now = new PathNode(system);
        this.next = new PathNode(system);
        now.state.set(model.state());
        now.force = 0;
        if (!equilibrium.solve(now.state, now.state.copy())) {
            throw model.failure("line at the start of the fall", 0, equilibrium);
        }
        finish(now, null);
        this.suggested = Double.NaN;
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
    public boolean advance(double target, ToDoubleFunction<LoadPath> gap, double watchFrom) {
        int steps = 0;
        int failures = 0;
        double reach = Double.isNaN(suggested) || !friction ? target - now.force : suggested;
        if (friction && Double.isNaN(suggested)) {
            reach = (target - now.force) / 16;
        }
        while (now.force < target) {
            double to = Math.min(target, now.force + reach);
            if (target - to < 1e-9 * target) {
                to = target;
            }
            boolean wanted = to == now.force + reach;
            double reached = step(to);
            double error = Double.isNaN(reached) ? Double.NaN : stepError();
            double tolerance =
                    Double.isNaN(reached) ? Double.NaN : stepTolerance() * Math.pow(4, Math.floorDiv(steps, PATIENCE));
            if (Double.isNaN(reached) || (friction && error > tolerance && reached - now.force > 1e-6 * target)) {
                failures++;
                reach = (Double.isNaN(reached) ? to - now.force : reached - now.force)
                        * (Double.isNaN(reached) ? 0.25 : Math.max(0.2, 0.9 * Math.pow(tolerance / error, 0.2)));
                if (Double.isNaN(reached) && (failures > 400 || reach < 1e-7 * target)) {
                    if (giveWay(gap, watchFrom)) {
                        return true;
                    }
                    failures = 0;
                    reach = 1e-3 * target;
                }
                continue;
            }
            // A step that cannot be made short enough is a jump, as when a load leaves an anchor with friction.
            gaveWay |= friction && error > tolerance;
            if (reached > watchFrom && gapAt(next, gap) < 0) {
                root(gap, watchFrom, reached);
                return true;
            }
            double done = reached - now.force;
            swap();
            if (friction) {
                double grow = error > 0 ? Math.min(4, 0.9 * Math.pow(tolerance / error, 0.2)) : 4;
                reach = wanted || reached < to ? Math.max(done * grow, 1e-9 * target) : Math.max(reach, done);
                suggested = reach;
            } else {
                reach = Math.max(target - now.force, 0);
            }
            if (++steps > MOST_STEPS) {
                throw model.failure("line under the arrest load", now.force / target, equilibrium);
            }
        }
        return false;
    }

    /**
     * Passes a place at which the line cannot carry more where it is: the load goes down at a falling force until the
     * line carries again. The descent is prescribed there and the force follows.
     *
     * @return true if the root of the gap was met on the way
     */
    private boolean giveWay(ToDoubleFunction<LoadPath> gap, double watchFrom) {
        gaveWay = true;
        peak = Math.max(peak, now.force);
        double span = system.chord[system.loadSpan[load]];
        double drop = 1e-4 * span;
        int failures = 0;
        while (now.force <= peak * (1 + 1e-9)) {
            if (!descend(now.descent + drop)) {
                drop *= 0.25;
                if (++failures > 200 || drop < 1e-13 * span || now.descent > 1e3 * span) {
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
                        swap();
                        low = now.descent;
                    } else {
                        high = middle;
                    }
                }
                return true;
            }
            swap();
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
                next.force = next.state.force[load];
                finish(next, now);
                double fall = next.descent - now.descent;
                next.pathWork = now.pathWork + 0.5 * (now.force + next.force) * fall;
                next.heat = now.heat;
                for (int i = 1; i < system.spans; i++) {
                    double moved = next.state.slip[i] - now.state.slip[i];
                    next.heat -= 0.5 * next.state.thermal * moved * (drop(now.state, i) + drop(next.state, i));
                }
                return true;
            }
        }
        return false;
    }

    private void swap() {
        PathNode t = now;
        now = next;
        next = t;
        publish();
    }

    private void publish() {
        model.state().set(now.state);
        model.note(equilibrium);
        equilibrium.iterations = 0;
    }

    private double gapAt(PathNode node, ToDoubleFunction<LoadPath> gap) {
        PathNode keep = now;
        now = node;
        double value = gap.applyAsDouble(this);
        now = keep;
        return value;
    }

    /**
     * Goes to the root of the gap, which lies between the current point, or the force from which the gap is looked at,
     * and a force beyond it. Each point at which the gap is not yet below zero becomes the current point, so that the
     * path is followed and not jumped. Regula falsi with the Illinois weight, and halving where it stalls.
     */
    private void root(ToDoubleFunction<LoadPath> gap, double watchFrom, double beyond) {
        while (now.force < watchFrom) {
            if (Double.isNaN(step(watchFrom))) {
                throw model.failure("line under the arrest load", now.force / watchFrom, equilibrium);
            }
            swap();
        }
        double lowGap = gapAt(now, gap);
        double high = beyond;
        double highGap = gapAt(next, gap);
        if (next.force != beyond) {
            highGap = -lowGap;
        }
        double width = high - now.force;
        boolean halve = false;
        for (int k = 0; k < ROOT_STEPS; k++) {
            double low = now.force;
            if (lowGap <= ROOT_TOLERANCE * scale) {
                return;
            }
            if (high - low <= 1e-13 * high) {
                boolean jump = gapAt(now, gap) > 1e-10 * scale + ROUNDING * now.size;
                if (!jump || giveWay(gap, watchFrom) || high - low <= 1e-15 * high) {
                    return;
                }
            }
            double share = halve ? 0.5 : lowGap / (lowGap - highGap);
            double to = low + share * (high - low);
            if (!(to > low && to < high)) {
                to = 0.5 * (low + high);
            }
            double reached = step(to);
            for (int tries = 0; Double.isNaN(reached) && tries < 40; tries++) {
                to = low + 0.25 * (to - low);
                reached = step(to);
            }
            if (Double.isNaN(reached)) {
                throw model.failure("line under the arrest load", low / high, equilibrium);
            }
            double value = gapAt(next, gap);
            if (value >= 0) {
                swap();
                lowGap = value;
                highGap = k > 0 ? 0.5 * highGap : highGap;
            } else {
                high = reached;
                highGap = value;
                if (-value <= ROOT_TOLERANCE * scale) {
                    swap();
                    return;
                }
                lowGap = k > 0 ? 0.5 * lowGap : lowGap;
                if (k % 3 == 2) {
                    lowGap = gapAt(now, gap);
                }
            }
            halve = high - now.force > 0.5 * width;
            width = high - now.force;
        }
        throw model.failure("force at which the fall is arrested", now.force / high, equilibrium);
    }

    /**
     * Takes one step into {@link #next}: to the force, or to where an anchor starts to slip before it.
     *
     * @return the force reached, or NaN if no equilibrium was found
     */
    private double step(double to) {
        if (friction) {
            release();
        }
        double goal = to;
        double low = now.force;
        for (int k = 0; k < 60; k++) {
            if (!newton(goal)) {
                return Double.NaN;
            }
            double event = friction ? events.before(now.state, next.state, new double[] {now.force, goal}) : goal;
            if (!(event < goal)) {
                break;
            }
            double least = low + 1e-3 * (goal - low);
            goal = Math.max(event, least);
            if (goal - low < EVENT * Math.max(goal, 1e-3 * to)) {
                goal = low + EVENT * Math.max(goal, 1e-3 * to);
                if (goal >= to) {
                    goal = to;
                }
                if (!newton(goal)) {
                    return Double.NaN;
                }
                break;
            }
        }
        if (!equilibrium.changeModes(next.state, now.state, 0)) {
            next.force = goal;
            finish(next, now);
            return goal;
        }
        if (!equilibrium.solve(next.state, now.state)) {
            return Double.NaN;
        }
        next.force = goal;
        finish(next, now);
        return goal;
    }

    /** Equilibrium at a force with the modes of the current point, from its tangent or, failing that, from itself. */
    private boolean newton(double force) {
        next.state.set(now.state);
        next.state.force[load] = force;
        if (now.hasTangent) {
            equilibrium.apply(next.state, now.state, force - now.force, now.tangent);
            if (plausible(next.state, now.state) && equilibrium.newton(next.state)) {
                return true;
            }
            next.state.set(now.state);
            next.state.force[load] = force;
        }
        return equilibrium.newton(next.state);
    }

    private boolean plausible(LineState to, LineState from) {
        for (int i = 0; i < system.spans; i++) {
            double x = to.tension[3 * i];
            double y = to.tension[3 * i + 1];
            double fx = from.tension[3 * i];
            double fy = from.tension[3 * i + 1];
            double dot = x * fx + y * fy;
            double old = fx * fx + fy * fy;
            if (!(dot > 0.1 * old && dot < 30 * old)) {
                return false;
            }
            double have = system.length[i] + from.slip[i + 1] - from.slip[i];
            if (!(system.length[i] + to.slip[i + 1] - to.slip[i] > 0.5 * have)) {
                return false;
            }
        }
        return true;
    }

    /** Lets anchors that stand on their limit slip, if the tangent says that they then slip the right way. */
    private void release() {
        boolean any = false;
        for (int i = 1; i < system.spans; i++) {
            if (events.sticks(now.state, i) && equilibrium.excess(now.state, i) > -1e-9) {
                now.state.passage[i] = system.logRatio(now.state, i) > 0 ? LineState.RUNS_ON : LineState.RUNS_BACK;
                any = true;
            }
        }
        if (!any) {
            return;
        }
        for (int round = 0; round < system.spans; round++) {
            tangent(now);
            boolean wrong = false;
            for (int i = 1; i < system.spans; i++) {
                boolean rough = system.friction[i] > 0 && !system.clamped[i];
                if (rough && now.state.passage[i] * now.tangent[system.slipIndex(i)] > 0) {
                    now.state.passage[i] = LineState.STUCK;
                    wrong = true;
                }
            }
            if (!wrong) {
                break;
            }
        }
        finishRates(now);
    }

    /** Completes a point: descent, energies, tangent, and what the step from the point before adds. */
    private void finish(PathNode node, @Nullable PathNode before) {
        LineEnergy e = LineEnergies.of(system, node.state);
        double height = system.pz[0] + height(node.state);
        node.descent = startHeight - height;
        double hanging = e.hanging() - node.state.force[load] * (height - system.pz[0]);
        node.energy = e.line() + hanging - startEnergy;
        node.size = Math.abs(e.strain()) + Math.abs(e.weight()) + Math.abs(e.springs()) + Math.abs(hanging);
        node.heat = before == null ? 0 : before.heat;
        node.pathWork = before == null ? 0 : before.pathWork;
        if (!friction) {
            node.hasTangent = tangent(node);
            return;
        }
        node.hasTangent = tangent(node);
        finishRates(node);
        if (before != null) {
            double step = node.force - before.force;
            node.pathWork += PathQuadrature.integral(step, new double[] {before.force, 1, node.force, 1}, new double[] {
                before.descent, before.descentRate, node.descent, node.descentRate
            });
            for (int i = 1; i < system.spans; i++) {
                double from = before.state.slip[i];
                double to = node.state.slip[i];
                if (from != to && system.friction[i] > 0) {
                    node.heat -= node.state.thermal
                            * PathQuadrature.integral(
                                    step,
                                    new double[] {before.drop[i], before.dropRate[i], node.drop[i], node.dropRate[i]},
                                    new double[] {from, before.slipRate[i], to, node.slipRate[i]});
                }
            }
        }
    }

    /** What the error of a step may be: a part of the work done in it, so that the parts add up to that of the whole. */
    private double stepTolerance() {
        double work = Math.abs(next.energy + next.heat - now.energy - now.heat);
        return WORK_TOLERANCE * work + SMALLEST * scale + ROUNDING * next.size;
    }

    private double stepError() {
        if (!friction) {
            return 0;
        }
        double byEnergy = next.energy + next.heat - now.energy - now.heat;
        double byPath = next.pathWork - now.pathWork;
        return Math.abs(byEnergy - byPath);
    }

    private boolean tangent(PathNode node) {
        if (!equilibrium.assembly.assemble(node.state, true)) {
            return false;
        }
        equilibrium.assembly.byForce(node.state, load, node.tangent);
        for (int i = 0; i < node.tangent.length; i++) {
            node.tangent[i] = -node.tangent[i];
        }
        if (!equilibrium.assembly.factor(node.state)) {
            Arrays.fill(node.tangent, 0);
            return false;
        }
        equilibrium.assembly.matrix.solve(node.tangent);
        for (double v : node.tangent) {
            if (!Double.isFinite(v)) {
                Arrays.fill(node.tangent, 0);
                return false;
            }
        }
        return true;
    }

    /** Rates of descent, slip and tension drop by the force, by central differences along the tangent. */
    private void finishRates(PathNode node) {
        double h = 1e-4 * Math.max(node.force, 0.1);
        LineState a = node.state.copy();
        LineState b = node.state.copy();
        equilibrium.apply(a, node.state, -h, node.tangent);
        equilibrium.apply(b, node.state, h, node.tangent);
        a.force[load] = node.force - h;
        b.force[load] = node.force + h;
        node.descentRate = -(height(b) - height(a)) / (2 * h);
        for (int i = 1; i < system.spans; i++) {
            node.slipRate[i] = node.tangent[system.slipIndex(i)];
            node.drop[i] = drop(node.state, i);
            node.dropRate[i] = (drop(b, i) - drop(a, i)) / (2 * h);
        }
    }

    /** Difference of T + ∫ε dT across an anchor, behind less before: what a unit of cable that slips turns to heat. */
    private double drop(LineState s, int i) {
        LoadElongation law = system.law;
        double a = system.tensionBefore(s, i);
        double b = system.tensionBehind(s, i);
        return b - a + law.complementaryEnergy(b) - law.complementaryEnergy(a);
    }

    /** Elevation of the load above the as-installed first support. */
    private double height(LineState s) {
        return LineEnergies.height(system, s, load);
    }
}
