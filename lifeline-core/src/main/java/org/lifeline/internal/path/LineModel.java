package org.lifeline.internal.path;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.Convergence;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.Installation;
import org.lifeline.internal.line.LineAssembly;
import org.lifeline.internal.line.LineEnergies;
import org.lifeline.internal.line.LineEnergy;
import org.lifeline.internal.line.LineGeometry;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.internal.line.LoadSlot;
import org.lifeline.internal.line.Piece;
import org.lifeline.internal.line.Stations;
import org.lifeline.model.Lifeline;

/**
 * A line through its history: installed, brought to a temperature, loaded by one load after the other. Holds the
 * current state and answers questions about it. Not thread-safe; one analysis makes one model.
 */
public final class LineModel {
    private final Lifeline line;
    private final LineSystem bare;
    private final LineState installed;
    private final List<Load> loads = new ArrayList<>();
    private LineSystem system;
    private LineState state;
    private int iterations;
    private double residual;

    /** A load hooked on to the line; its number in the current system may change when others are added. */
    public static final class Load {
        private final int span;
        private final boolean gripped;
        private double coordinate;
        private final int support;
        private int index;

        private Load(LoadSlot slot) {
            this.span = slot.span();
            this.gripped = slot.gripped();
            this.coordinate = slot.coordinate();
            this.support = slot.support();
        }

        int index() {
            return index;
        }
    }

    /**
     * The line as installed.
     *
     * @param line the line
     * @throws org.lifeline.base.InvalidInputException if the line cannot hang as stated
     */
    public LineModel(Lifeline line) {
        this.line = line;
        this.bare = new LineSystem(
                line.supports(), line.weightPerLength(), line.cable().elongation());
        Installation installation = new Installation(line);
        this.installed = installation.install(bare);
        this.system = bare;
        this.state = installed.copy();
        if (!installation.isExact()) {
            Equilibrium e = new Equilibrium(bare);
            if (!e.newton(state)) {
                throw failure("installed line", 0, e);
            }
            note(e);
        }
    }

    /**
     * The line that this is a model of.
     *
     * @return the line
     */
    public Lifeline line() {
        return line;
    }

    LineSystem system() {
        return system;
    }

    LineState state() {
        return state;
    }

    /**
     * Brings the line to a temperature.
     *
     * @param temperature temperature [°C]
     */
    public void bringTo(double temperature) {
        double to = 1
                + line.cable().thermalExpansion()
                        * (temperature - line.installed().temperature());
        double rise = to - state.thermal;
        if (rise == 0) {
            return;
        }
        PathParameter thermal = new PathParameter.Thermal(state.thermal, rise > 0 ? 1 : -1);
        change(thermal, Math.abs(rise), null);
        state.thermal = to;
    }

    /**
     * Hooks a load on to the line; it weighs nothing yet.
     *
     * @param span span from 0
     * @param station horizontal distance from the span's first support, as installed [m]
     * @param gripped true if it holds the material point that hangs at the station as installed; where that has run out
     *     of the span meanwhile, the one that hangs at the station now
     * @return the load
     */
    public Load hook(int span, double station, boolean gripped) {
        double coordinate = gripped ? grippedCoordinate(span, station) : runningCoordinate(span, station);
        return add(new LoadSlot(span, gripped, coordinate));
    }

    /**
     * Hooks a load on to a support: it pulls on the anchor itself, on the anchor side of an in-line absorber, and not on
     * the cable. It weighs nothing yet.
     *
     * @param support support from 0
     * @return the load
     */
    public Load hookAtSupport(int support) {
        return add(LoadSlot.atSupport(support, Math.min(support, line.spans() - 1)));
    }

    private Load add(LoadSlot slot) {
        Load load = new Load(slot);
        loads.add(load);
        rebuild();
        return load;
    }

    private double grippedCoordinate(int span, double station) {
        double coordinate = Stations.coordinateAt(bare, installed, span, station);
        double low = state.slip[span];
        double high = system.length[span] + state.slip[span + 1];
        return coordinate > low && coordinate < high ? coordinate : presentCoordinate(span, station);
    }

    /** Where a free-running load goes without weight: to the lowest point of its bay, since it does not pass a grip. */
    private double runningCoordinate(int span, double station) {
        double at = presentCoordinate(span, station);
        double low = Double.NEGATIVE_INFINITY;
        double high = Double.POSITIVE_INFINITY;
        for (int j = system.firstLoad[span]; j < system.firstLoad[span + 1]; j++) {
            if (system.gripped[j] && state.coordinate[j] <= at) {
                low = state.coordinate[j];
            } else if (system.gripped[j]) {
                high = Math.min(high, Math.nextDown(state.coordinate[j]));
            }
        }
        return Math.max(low, Math.min(high, Stations.lowest(system, state, span)));
    }

    /** Material coordinate that hangs at a station in the current state. */
    private double presentCoordinate(int span, double station) {
        double sum = state.slip[span];
        for (Piece piece : pieces(span)) {
            double run = geometry().runTo(span, station, piece.start());
            if (run <= LineGeometry.runTo(piece)) {
                return sum + piece.lengthAtRun(Math.max(run, 0)) / state.thermal;
            }
            sum += piece.length() / state.thermal;
        }
        return system.length[span] + state.slip[span + 1];
    }

    /** Makes a new system in which the loads stand in their present order along the cable. */
    private void rebuild() {
        for (Load each : loads) {
            if (each != loads.get(loads.size() - 1)) {
                each.coordinate = state.coordinate[each.index];
            }
        }
        Load added = loads.get(loads.size() - 1);
        List<Load> order = new ArrayList<>(loads.subList(0, loads.size() - 1));
        order.sort(Comparator.comparingInt(Load::index));
        int at = 0;
        while (at < order.size() && isBefore(order.get(at), added)) {
            at++;
        }
        order.add(at, added);
        List<LoadSlot> slots = new ArrayList<>();
        for (Load each : order) {
            slots.add(new LoadSlot(each.span, each.gripped, each.coordinate, each.support));
        }
        LineSystem next = new LineSystem(bare, slots);
        LineState s = new LineState(next.spans, next.loads);
        System.arraycopy(state.tension, 0, s.tension, 0, s.tension.length);
        System.arraycopy(state.slip, 0, s.slip, 0, s.slip.length);
        System.arraycopy(state.passage, 0, s.passage, 0, s.passage.length);
        for (int e = 0; e < 2; e++) {
            s.extension[e] = state.extension[e];
            s.yielded[e] = state.yielded[e];
            s.yielding[e] = state.yielding[e];
            s.piece[e] = state.piece[e];
        }
        s.thermal = state.thermal;
        for (int j = 0; j < order.size(); j++) {
            Load each = order.get(j);
            s.coordinate[j] = each.coordinate;
            if (each != added) {
                s.force[j] = state.force[each.index];
                s.active[j] = state.active[each.index];
                s.mode[j] = state.mode[each.index];
            }
            each.index = j;
        }
        system = next;
        state = s;
    }

    private static boolean isBefore(Load a, Load b) {
        return a.span < b.span || (a.span == b.span && a.coordinate <= b.coordinate);
    }

    /**
     * Lets a load take part, if it does not yet: from now on it rests on the line, without weight yet.
     *
     * @param load the load
     */
    void activate(Load load) {
        int j = load.index;
        if (state.active[j] || load.support >= 0) {
            return;
        }
        state.active[j] = true;
        if (load.gripped) {
            state.mode[j] = LineState.GRIPPED;
            double low = state.slip[load.span];
            double high = system.length[load.span] + state.slip[load.span + 1];
            state.coordinate[j] = Math.min(Math.max(state.coordinate[j], low), high);
            return;
        }
        int before = neighbour(j, -1);
        int behind = neighbour(j, 1);
        if (before >= 0) {
            state.mode[j] = LineState.FOLLOWS;
            state.coordinate[j] = state.coordinate[before];
        } else if (behind >= 0) {
            state.mode[j] = state.mode[behind];
            state.coordinate[j] = state.coordinate[behind];
            state.mode[behind] = LineState.FOLLOWS;
        } else {
            double low = system.forces.bound(state, j, false);
            double high = system.forces.bound(state, j, true);
            double at = state.coordinate[j];
            state.mode[j] =
                    at <= low ? LineState.AT_START : at >= Math.nextDown(high) ? LineState.AT_END : LineState.RUNNING;
            state.coordinate[j] = Math.min(Math.max(at, low), high);
        }
    }

    /** The nearest active free-running load on a side with no gripped one between, or −1. */
    private int neighbour(int load, int step) {
        int span = system.loadSpan[load];
        for (int j = load + step; j >= system.firstLoad[span] && j < system.firstLoad[span + 1]; j += step) {
            if (state.active[j]) {
                return system.gripped[j] ? -1 : j;
            }
        }
        return -1;
    }

    /**
     * Lets a load grow to its weight, and the line with it.
     *
     * @param load the load
     * @param force its weight [N], not below what it is
     */
    public void hang(Load load, double force) {
        LineEnergy before = energy();
        double others = before.hanging() - energyOf(load);
        activate(load);
        PathEnergy.Datum datum =
                new PathEnergy.Datum(line.supports().get(0).position().z(), before.line() + others);
        change(new PathParameter.Weight(load.index), force, new EquilibriumPath.Scale(datum, force));
    }

    /** Follows a change to the end, or solves for its end where the way to it does not matter. */
    private void change(PathParameter parameter, double to, EquilibriumPath.@Nullable Scale scale) {
        if (!EquilibriumPath.remembers(system)) {
            Equilibrium e = new Equilibrium(system);
            LineState next = state.copy();
            parameter.set(next, to);
            boolean found = e.startCold(next) && e.solve(next, state);
            if (!found) {
                next.set(state);
                parameter.set(next, to);
                found = e.solve(next, state);
            }
            note(e);
            if (found) {
                state = next;
                return;
            }
        }
        new EquilibriumPath(this, parameter, scale).advance(to, null, 0);
    }

    /** Potential energy of a load by its position [J]; 0 if it weighs nothing yet. */
    double energyOf(Load load) {
        double force = state.force[load.index];
        return force == 0 ? 0 : force * new LineEnergies(system).height(state, load.index);
    }

    /** Takes over a state that was found on a path. */
    void take(LineState found, Equilibrium by) {
        state = found.copy();
        note(by);
        by.iterations = 0;
    }

    NoEquilibriumException failure(String what, double share, Equilibrium e) {
        return new NoEquilibriumException(
                what + reason(), share, new Convergence(e.iterations, e.residual, Equilibrium.CONVERGED));
    }

    private String reason() {
        for (int i = 0; i <= system.spans; i++) {
            double moved = displacement(i).magnitude();
            double near = Math.min(system.chord[Math.max(0, i - 1)], system.chord[Math.min(system.spans - 1, i)]);
            if (moved > 0.4 * near) {
                return "; anchor " + line.supports().get(i).id() + " has been pulled " + moved
                        + " m out of place, toward the next anchor " + near + " m away: it is too soft for this load";
            }
        }
        return "";
    }

    void note(Equilibrium e) {
        iterations += e.iterations;
        residual = e.residual;
    }

    /**
     * How the iterations went so far.
     *
     * @return number of Newton steps and the last residual
     */
    public Convergence convergence() {
        if (iterations == 0) {
            LineAssembly assembly = new LineAssembly(system);
            assembly.assemble(state, false);
            residual = assembly.equations.worst;
        }
        return new Convergence(iterations, residual, Equilibrium.CONVERGED);
    }

    /**
     * The support on which a load rests.
     *
     * @param load a load that takes part
     * @return number of the support from 0, or −1 for a load on the cable
     */
    public int restsOn(Load load) {
        return system.forces.restSupport(state, load.index);
    }

    /**
     * Position of a point of the cable, found by walking along the pieces of its span.
     *
     * @param load a load that takes part
     * @return where it hangs
     */
    public Point position(Load load) {
        return position(load, pieces(load.span));
    }

    /**
     * The same with the pieces of its span at hand.
     *
     * @param load a load that takes part
     * @param pieces the pieces of its span, see {@link #pieces}
     * @return where it hangs
     */
    public Point position(Load load, List<Piece> pieces) {
        if (load.support >= 0) {
            return support(load.support);
        }
        int j = load.index;
        return geometry().walk(pieces, load.span, state.coordinate[j], j);
    }

    /**
     * The point of the cable that a gripped load holds or will hold, or the support that a load pulls on, in the current
     * state.
     *
     * @param load the load, active or not
     * @return the point
     */
    public Point materialPoint(Load load) {
        if (load.support >= 0) {
            return support(load.support);
        }
        int stop = state.active[load.index] ? load.index : -1;
        return geometry().walk(pieces(load.span), load.span, load.coordinate, stop);
    }

    /**
     * Unstretched length that has passed a support since installation.
     *
     * @param i support from 0
     * @return length [m], positive toward the start of the line
     */
    public double slip(int i) {
        return state.slip[i];
    }

    /**
     * Extension of the in-line absorber at an end.
     *
     * @param end 0 or 1
     * @return extension [m]
     */
    public double extension(int end) {
        return state.extension[end];
    }

    /**
     * Extension of the in-line absorber at an end as installed; positions are as installed, so geometry counts from it.
     *
     * @param end 0 or 1
     * @return extension [m]
     */
    public double installedExtension(int end) {
        return system.installedExtension[end];
    }

    /**
     * Largest extension so far at which the in-line absorber at an end yielded.
     *
     * @param end 0 or 1
     * @return extension [m]; 0 if it never did
     */
    public double yieldedExtension(int end) {
        return state.yielded[end];
    }

    /**
     * Energies of the current state.
     *
     * @return the parts
     */
    public LineEnergy energy() {
        return LineEnergies.of(system, state);
    }

    private LineGeometry geometry() {
        return new LineGeometry(system, state);
    }

    /**
     * The point of the cable at a station of a span, in the current state.
     *
     * @param span span from 0
     * @param station horizontal distance from the span's first support as installed [m]
     * @return the point
     */
    public Point pointAtStation(int span, double station) {
        return geometry().pointAtStation(span, station);
    }

    /**
     * Position of a support in the current state.
     *
     * @param i support from 0
     * @return as-installed position plus displacement
     */
    public Point support(int i) {
        return geometry().support(i);
    }

    /**
     * Displacement of a support since installation.
     *
     * @param i support from 0
     * @return displacement, components in [m]
     */
    public Vector3 displacement(int i) {
        return geometry().displacement(i);
    }

    /**
     * Force of the line on a support.
     *
     * @param i support from 0
     * @return force, components in [N]
     */
    public Vector3 reaction(int i) {
        return geometry().reaction(i);
    }

    /**
     * The pieces of cable of a span in the current state.
     *
     * @param span span from 0
     * @return at least one piece
     */
    public List<Piece> pieces(int span) {
        return geometry().pieces(span);
    }
}
