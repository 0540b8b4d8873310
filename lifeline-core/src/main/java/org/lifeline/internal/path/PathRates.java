package org.lifeline.internal.path;

import java.util.Arrays;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineAssembly;
import org.lifeline.internal.line.LineEnergies;
import org.lifeline.internal.line.LineRates;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.model.LoadElongation;

/**
 * Completes the points of a {@link LoadPath}: descent, energy, tangent, rates, and what a step adds to heat and work.
 *
 * <p>Steps are measured in u = asinh(P/P₀). A load in the middle of a taut span of length L goes down by δ with
 * P = 4 (T₀ + 2 EA δ²/L²) δ/L, and the root of that cubic is δ ∝ w = sinh(u/3) with P₀ = 16 T₀ √(T₀/EA)/6^1.5. So
 * interpolation goes by w: there the descent is straight, the force P₀ (4 w³ + 3 w) a cubic and the tension a parabola,
 * nearly so where the line gives or sags. Not thread-safe.
 */
final class PathRates {
    private final LineSystem system;
    private final Equilibrium equilibrium;
    private final int load;
    private final boolean follow;
    private final double startHeight;
    private final double startEnergy;
    private final double scale;
    private final LineEnergies energies;
    private final LineRates lineRates;
    private final LineState fore;
    private final double[] values = new double[6];
    private final double[] measures = new double[6];

    /**
     * Rates along the path of a load.
     *
     * @param equilibrium finds the states
     * @param load the load that grows
     * @param follow true if the path is followed step by step
     * @param start the state in which the path starts
     * @param datum elevation from which the descent counts above the first support [m]; energy of the line and of what
     *     hangs on it at the start [J]
     */
    PathRates(Equilibrium equilibrium, int load, boolean follow, LineState start, double[] datum) {
        this.equilibrium = equilibrium;
        this.system = equilibrium.system;
        this.load = load;
        this.follow = follow;
        this.startHeight = datum[0];
        this.startEnergy = datum[1];
        this.fore = follow ? new LineState(system.spans, system.loads) : new LineState(0, 0);
        this.energies = new LineEnergies(system);
        this.lineRates = new LineRates(system, load);
        int span = system.loadSpan[load];
        double tension = system.tensionBehind(start, span);
        // Some twice the P₀ of the span alone, since the cable beside it and its anchors give; and where the load
        // outweighs the span, which is what counts when it is slack.
        double taut = 2 * tension * Math.sqrt(tension * system.law.compliance(0));
        this.scale = taut + 0.5 * system.weight * system.chord[span] + 1e-3;
    }

    /** A rise of force from another as a step in u [-]. */
    double step(double force, double rise) {
        double a = force / scale;
        double d = rise / scale;
        double b = a + d;
        double rootA = Math.sqrt(1 + a * a);
        // ln((b + √(1 + b²))/(a + √(1 + a²))) without cancellation.
        return Math.log1p(d * (1 + (a + b) / (rootA + Math.sqrt(1 + b * b))) / (a + rootA));
    }

    /** dP/du [N]. */
    double perMeasure(double force) {
        return Math.sqrt(scale * scale + force * force);
    }

    /** The way w = sinh(u/3) at a force [-]. */
    double way(double force) {
        double x = force / scale;
        return Math.sinh(Math.log(x + Math.sqrt(1 + x * x)) / 3);
    }

    /** The way from one point to another, where a force is [-]: the difference of both cubics over that of the forces. */
    double way(PathNode from, double force, double to) {
        double w = from.way;
        return (force - from.force) / (scale * (3 + 4 * (w * w + w * to + to * to)));
    }

    /** dP/dw at a point [N]. */
    double perWay(PathNode node) {
        return scale * (3 + 12 * node.way * node.way);
    }

    /** Sets the force of a point. */
    void place(PathNode node, double force) {
        node.force = force;
        node.way = way(force);
    }

    /** The force that is a step in u beyond another [N]. */
    double beyond(double force, double step) {
        double half = Math.sinh(0.5 * step);
        return force + 2 * half * (force * half + perMeasure(force) * Math.sqrt(1 + half * half));
    }

    /** Completes a point for which an equilibrium was found. */
    void finish(PathNode node) {
        energies.evaluate(node.state);
        double height = energies.height(node.state, load);
        node.descent = startHeight - height;
        double hanging = energies.hanging - node.state.force[load] * height;
        double held = energies.springs + energies.inlineAbsorbers;
        node.energy = energies.strain + energies.weight + held + hanging - startEnergy;
        node.size =
                Math.abs(energies.strain) + Math.abs(energies.weight) + Math.abs(energies.springs) + Math.abs(hanging);
        node.hasTangent = false;
        if (follow) {
            rates(node);
        }
    }

    /**
     * Adds to a point what the step from the point before it takes in heat and does in work.
     *
     * @param from the point before
     * @param to the point; its modes are still those of the step
     * @param before a third point of the path, used if it has the same modes
     */
    void accumulate(PathNode from, PathNode to, PathNode before) {
        to.heat = from.heat;
        to.pathWork = from.pathWork;
        if (!follow) {
            return;
        }
        double step = way(from, to.force, to.way);
        double third = way(from, before.force, before.way) / step;
        boolean three = PathQuadrature.isOfUse(third)
                && before.hasTangent
                && before.state.hasModesOf(from.state)
                && to.state.hasModesOf(from.state);
        to.order = three ? 7 : 5;
        double a = step * perWay(from);
        double b = step * perWay(to);
        double c = step * perWay(before);
        fill(values, 0, from.force, a);
        fill(values, 1, to.force, b);
        fill(values, 2, before.force, c);
        fill(measures, 0, from.descent, from.descentRate * a);
        fill(measures, 1, to.descent, to.descentRate * b);
        fill(measures, 2, before.descent, before.descentRate * c);
        to.pathWork += integral(three, third);
        for (int i = 1; i < system.spans; i++) {
            if (from.state.slip[i] != to.state.slip[i] && system.friction[i] > 0) {
                fill(values, 0, from.drop[i], from.dropRate[i] * a);
                fill(values, 1, to.drop[i], to.dropRate[i] * b);
                if (three) {
                    fill(values, 2, before.drop[i], before.dropRate[i] * c);
                    fill(measures, 2, before.state.slip[i], before.slipRate[i] * c);
                }
                fill(measures, 0, from.state.slip[i], from.slipRate[i] * a);
                fill(measures, 1, to.state.slip[i], to.slipRate[i] * b);
                to.heat -= to.state.thermal * integral(three, third);
            }
        }
    }

    private double integral(boolean three, double third) {
        return three ? PathQuadrature.integral(values, measures, third) : PathQuadrature.integral(1, values, measures);
    }

    private static void fill(double[] a, int point, double value, double slope) {
        a[2 * point] = value;
        a[2 * point + 1] = slope;
    }

    /** How far the energy taken up over a step is from the work done on the line over it [J]. */
    static double error(PathNode from, PathNode to) {
        double byEnergy = to.energy + to.heat - from.energy - from.heat;
        double byPath = to.pathWork - from.pathWork;
        return Math.abs(byEnergy - byPath);
    }

    /** Derivative of the unknowns by the force of the load. */
    void tangent(PathNode node) {
        node.hasTangent = false;
        boolean fine = equilibrium.factorAt(node.state);
        if (fine) {
            LineAssembly assembly = equilibrium.assembly;
            assembly.byForce(node.state, load, node.tangent);
            for (int i = 0; i < node.tangent.length; i++) {
                node.tangent[i] = -node.tangent[i];
            }
            assembly.matrix.solve(node.tangent);
            for (double v : node.tangent) {
                fine &= Double.isFinite(v);
            }
        }
        if (!fine) {
            Arrays.fill(node.tangent, 0);
        }
        node.hasTangent = fine;
    }

    /** Tangent, and rates of descent, slip and tension drop by the force. */
    void rates(PathNode node) {
        tangent(node);
        ratesAlong(node);
    }

    /** Rates of descent, slip and tension drop by the force, along the tangent. */
    void ratesAlong(PathNode node) {
        LineState s = node.state;
        node.descentRate = -lineRates.height(s, node.tangent);
        for (int i = 1; follow && i < system.spans; i++) {
            if (system.friction[i] > 0 && !system.clamped[i]) {
                LoadElongation law = system.law;
                double a = system.tensionBefore(s, i);
                double b = system.tensionBehind(s, i);
                double before = lineRates.before(s, node.tangent, i);
                double behind = lineRates.behind(s, node.tangent, i);
                node.slipRate[i] = lineRates.slip(node.tangent, i);
                node.drop[i] = drop(a, b);
                node.dropRate[i] = behind - before + law.strain(b) * behind - law.strain(a) * before;
            }
        }
    }

    /** Sets a state ahead along the tangent, for {@link #excessGrows}; returns how far [N]. */
    double ahead(PathNode node) {
        double h = 1e-4 * Math.max(node.force, 0.1);
        fore.set(node.state);
        equilibrium.apply(fore, node.state, h, node.tangent);
        fore.force[load] = node.force + h;
        return h;
    }

    /** Adds to a point what it takes to come there from a state at nearly the same force, by the trapezoidal rule. */
    void addJump(LineState from, PathNode to, double fall) {
        if (!follow) {
            return;
        }
        to.pathWork += 0.5 * (from.force[load] + to.force) * fall;
        for (int i = 1; i < system.spans; i++) {
            double moved = to.state.slip[i] - from.slip[i];
            if (moved != 0 && system.friction[i] > 0) {
                to.heat -= 0.5 * to.state.thermal * moved * (drop(from, i) + drop(to.state, i));
            }
        }
    }

    /** Rise of force until the tangent at a point, whose rates were found last, meets an event [N]; may be infinite. */
    double untilEvent(PathNode node, PathEvents events) {
        if (!node.hasTangent) {
            return Double.POSITIVE_INFINITY;
        }
        double h = ahead(node);
        return h * events.steps(node.state, fore);
    }

    /** Rate by the force at which what is watched nears its limit, after {@link #ahead} [1/N]. */
    double rateOfEvent(PathNode node, PathEvents events, LineState later) {
        double h = fore.force[load] - node.force;
        return (events.beyond(fore, later) - events.beyond(node.state, later)) / h;
    }

    /** Tells whether the ratio of tensions at an anchor grows beyond its limit along the tangent, after {@link #ahead}. */
    boolean excessGrows(PathNode node, int support) {
        return equilibrium.excess(fore, support) > equilibrium.excess(node.state, support);
    }

    /** Difference of T + ∫ε dT across an anchor, behind less before: what a unit of cable that slips turns to heat. */
    private double drop(LineState s, int i) {
        return drop(system.tensionBefore(s, i), system.tensionBehind(s, i));
    }

    private double drop(double a, double b) {
        LoadElongation law = system.law;
        return b - a + law.complementaryEnergy(b) - law.complementaryEnergy(a);
    }
}
