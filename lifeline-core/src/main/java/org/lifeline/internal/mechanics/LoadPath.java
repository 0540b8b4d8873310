package org.lifeline.internal.mechanics;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.internal.numeric.Roots;
import org.lifeline.model.InlineAbsorber;
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
    private static final double EVENT = 1e-7;
    private static final double[] GAUSS = {0.5 - Math.sqrt(0.15), 0.5, 0.5 + Math.sqrt(0.15)};
    private static final double[] GAUSS_WEIGHT = {5 / 18.0, 8 / 18.0, 5 / 18.0};

    private final LineModel model;
    private final LineSystem system;
    private final int load;
    private final Equilibrium equilibrium;
    private final boolean friction;
    private final double startEnergy;
    private final double startHeight;
    private final double tolerance;
    private double suggested;

    private Node now;
    private Node next;

    /** A point of the path. */
    private static final class Node {
        final LineState state;
        final double[] tangent;
        final double[] slipRate;
        final double[] drop;
        final double[] dropRate;
        boolean hasTangent;
        double force;
        double descent;
        double descentRate;
        double energy;
        double heat;
        double pathWork;

        Node(LineSystem s) {
            state = new LineState(s.spans, s.loads);
            tangent = new double[s.unknowns()];
            slipRate = new double[s.spans + 1];
            drop = new double[s.spans + 1];
            dropRate = new double[s.spans + 1];
        }

        void set(Node n) {
            state.set(n.state);
            System.arraycopy(n.tangent, 0, tangent, 0, tangent.length);
            System.arraycopy(n.slipRate, 0, slipRate, 0, slipRate.length);
            System.arraycopy(n.drop, 0, drop, 0, drop.length);
            System.arraycopy(n.dropRate, 0, dropRate, 0, dropRate.length);
            hasTangent = n.hasTangent;
            force = n.force;
            descent = n.descent;
            descentRate = n.descentRate;
            energy = n.energy;
            heat = n.heat;
            pathWork = n.pathWork;
        }
    }

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
        boolean rough = false;
        for (int i = 1; i < system.spans; i++) {
            rough |= system.friction[i] > 0 && !system.clamped[i];
        }
        this.friction = rough;
        this.startHeight = startHeight;
        this.tolerance = 2e-8 * energyScale;
        this.startEnergy = before.line() + before.hanging();
        this.now = new Node(system);
        this.next = new Node(system);
        now.state.set(model.state());
        now.force = 0;
        if (!equilibrium.solve(now.state, now.state.copy())) {
            throw LineModel.failure("line at the start of the fall", 0, equilibrium);
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
     * Work done by the load, by quadrature over the steps taken; meaningful where an anchor has friction, since only then
     * steps are kept short.
     *
     * @return ∫P dδ [J]
     */
    public double pathWork() {
        return now.pathWork;
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
        return LineModel.failure(what, 0, equilibrium);
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
            if (Double.isNaN(reached) || (friction && error > tolerance && reached - now.force > 1e-6 * target)) {
                failures++;
                reach = (Double.isNaN(reached) ? to - now.force : reached - now.force)
                        * (Double.isNaN(reached) ? 0.25 : Math.max(0.2, 0.9 * Math.pow(tolerance / error, 0.2)));
                if (failures > 400 || reach < 1e-12 * target) {
                    throw LineModel.failure("line under the arrest load", now.force / target, equilibrium);
                }
                continue;
            }
            if (reached > watchFrom && gapAt(next, gap) < 0) {
                root(gap, Math.max(now.force, watchFrom), reached);
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
                throw LineModel.failure("line under the arrest load", now.force / target, equilibrium);
            }
        }
        return false;
    }

    private void swap() {
        Node t = now;
        now = next;
        next = t;
        publish();
    }

    private void publish() {
        model.setState(now.state);
        model.note(equilibrium);
        equilibrium.iterations = 0;
    }

    private double gapAt(Node node, ToDoubleFunction<LoadPath> gap) {
        Node keep = now;
        now = node;
        double value = gap.applyAsDouble(this);
        now = keep;
        return value;
    }

    private void root(ToDoubleFunction<LoadPath> gap, double low, double high) {
        Node best = new Node(system);
        double[] from = {low};
        double force = Roots.bracketed(
                "force at which the fall is arrested",
                f -> {
                    solveAt(f);
                    double value = gapAt(next, gap);
                    if (value >= 0 && f >= from[0]) {
                        best.set(next);
                        from[0] = f;
                    }
                    return value;
                },
                low,
                high);
        solveAt(force);
        swap();
    }

    private void solveAt(double force) {
        if (force == now.force) {
            next.set(now);
            return;
        }
        double reached = step(force);
        if (Double.isNaN(reached) || reached < force) {
            // The step to here was accepted in one go before; a shorter one fails only by rounding at an event.
            next.state.set(now.state);
            next.state.force[load] = force;
            if (!equilibrium.solve(next.state, now.state)) {
                throw LineModel.failure("line under the arrest load", now.force / force, equilibrium);
            }
            next.force = force;
            finish(next, now);
        }
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
            double event = friction ? eventForce(goal) : goal;
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
            if (sticks(now.state, i) && equilibrium.excess(now.state, i) > -1e-9) {
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

    private boolean sticks(LineState s, int i) {
        return !system.clamped[i] && system.friction[i] > 0 && s.passage[i] == LineState.STUCK;
    }

    /** The force at which the first anchor that sticks comes to its limit, by the chord between now and next. */
    private double eventForce(double goal) {
        double event = goal;
        for (int i = 1; i < system.spans; i++) {
            if (sticks(next.state, i)) {
                double beyond = equilibrium.excess(next.state, i);
                if (beyond > EVENT) {
                    double before = Math.min(equilibrium.excess(now.state, i), 0);
                    double share = -before / (beyond - before);
                    event = Math.min(event, now.force + (share + 0.5 * EVENT) * (goal - now.force));
                }
            }
        }
        for (int e = 0; e < 2; e++) {
            InlineAbsorber a = system.absorbers[e];
            if (a != null && !next.state.yielding[e]) {
                double limit = equilibrium.resistance(a, next.state, e);
                double beyond = system.endTension(next.state, e) / limit - 1;
                if (beyond > EVENT) {
                    double before = Math.min(system.endTension(now.state, e) / limit - 1, 0);
                    double share = -before / (beyond - before);
                    event = Math.min(event, now.force + (share + 0.5 * EVENT) * (goal - now.force));
                }
            }
        }
        return event;
    }

    /** Completes a point: descent, energies, tangent, and what the step from the point before adds. */
    private void finish(Node node, @Nullable Node before) {
        LineEnergy e = LineEnergies.of(system, node.state);
        double height = system.pz[0] + height(node.state);
        node.descent = startHeight - height;
        double hanging = e.hanging() - node.state.force[load] * (height - system.pz[0]);
        node.energy = e.line() + hanging - startEnergy;
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
            node.pathWork += quadrature(step, new double[] {before.force, 1, node.force, 1}, new double[] {
                before.descent, before.descentRate, node.descent, node.descentRate
            });
            for (int i = 1; i < system.spans; i++) {
                double from = before.state.slip[i];
                double to = node.state.slip[i];
                if (from != to && system.friction[i] > 0) {
                    node.heat -= node.state.thermal
                            * quadrature(
                                    step,
                                    new double[] {before.drop[i], before.dropRate[i], node.drop[i], node.dropRate[i]},
                                    new double[] {from, before.slipRate[i], to, node.slipRate[i]});
                }
            }
        }
    }

    /** ∫f dg over a step, f and g cubic in the force by values and slopes at both ends. */
    private static double quadrature(double step, double[] f, double[] g) {
        double sum = 0;
        for (int k = 0; k < 3; k++) {
            double u = GAUSS[k];
            double a = 1 - u;
            double value = f[0] * (1 + 2 * u) * a * a
                    + f[1] * step * u * a * a
                    + f[2] * u * u * (3 - 2 * u)
                    - f[3] * step * u * u * a;
            double slope = 6 * u * a * (g[2] - g[0]) + step * (g[1] * a * (1 - 3 * u) + g[3] * u * (3 * u - 2));
            sum += GAUSS_WEIGHT[k] * value * slope;
        }
        return sum;
    }

    private double stepError() {
        if (!friction) {
            return 0;
        }
        double byEnergy = next.energy + next.heat - now.energy - now.heat;
        double byPath = next.pathWork - now.pathWork;
        return Math.abs(byEnergy - byPath);
    }

    private boolean tangent(Node node) {
        if (!equilibrium.assembly.assemble(node.state, true)) {
            return false;
        }
        equilibrium.assembly.byForce(node.state, load, node.tangent);
        for (int i = 0; i < node.tangent.length; i++) {
            node.tangent[i] = -node.tangent[i];
        }
        if (!equilibrium.assembly.matrix.factor()) {
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
    private void finishRates(Node node) {
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
