package org.lifeline.internal.path;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.Convergence;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineAssembly;
import org.lifeline.internal.line.LineEnergies;
import org.lifeline.internal.line.LineEnergy;
import org.lifeline.internal.line.LineGeometry;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.internal.line.LoadSlot;
import org.lifeline.internal.line.Piece;
import org.lifeline.internal.line.installation.Installation;
import org.lifeline.internal.numeric.WatchedWork;
import org.lifeline.model.Lifeline;

/**
 * A line through its history: installed, brought to a temperature, loaded by one load after the other. Holds the
 * current state and answers questions about it. Not thread-safe; one analysis makes one model.
 */
public final class LineModel {
    /** How far a search came that had no load to put on. */
    static final NoEquilibriumException.Reached NOTHING_REACHED = new NoEquilibriumException.Reached(0, Double.NaN);

    private final Lifeline line;
    private final WatchedWork work;
    private final LineSystem bare;
    private final LineState installed;
    private final List<Load> loads = new ArrayList<>();
    private LineSystem system;
    private LineState state;
    private int iterations;
    private double residual;

    /** A load hooked on to the line; its number in the current system may change when others are added. */
    public static final class Load {
        final int span;
        final boolean gripped;
        final int support;

        /** Material coordinate when the load was hooked on, or when the loads were last put in order [m]. */
        double coordinate;

        /** Number in the current system, in the order along the cable. */
        int index;

        private Load(LoadSlot slot) {
            this.span = slot.span();
            this.gripped = slot.gripped();
            this.coordinate = slot.coordinate();
            this.support = slot.support();
        }

        private Load(Load other) {
            this.span = other.span;
            this.gripped = other.gripped;
            this.coordinate = other.coordinate;
            this.support = other.support;
            this.index = other.index;
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
        this(line, WatchedWork.alone());
    }

    /**
     * The line as installed, with somebody who hears of the work and can end it.
     *
     * @param line the line
     * @param work what the line is solved for
     * @throws org.lifeline.base.InvalidInputException if the line cannot hang as stated
     */
    public LineModel(Lifeline line, WatchedWork work) {
        this.line = line;
        this.work = work;
        this.bare = new LineSystem(
                line.supports(), Installation.weight(line), line.cable().elongation());
        Installation installation = new Installation(line);
        this.installed = installation.install(bare);
        this.system = bare;
        // Nothing changes a state in place before a load is put on, and that one takes part in a state of its own.
        this.state = installed;
        if (!installation.isExact()) {
            state = installed.copy();
            Equilibrium e = new Equilibrium(bare, work);
            if (!e.newton(state)) {
                throw failure("installed line", NOTHING_REACHED, e);
            }
            note(e);
        }
    }

    private LineModel(LineModel other) {
        this.line = other.line;
        this.work = WatchedWork.alone();
        this.bare = other.bare;
        this.installed = other.installed;
        for (Load each : other.loads) {
            loads.add(new Load(each));
        }
        this.system = other.system;
        this.state = other.state.copy();
        this.iterations = other.iterations;
        this.residual = other.residual;
    }

    /**
     * A model in the same state, with loads of its own, that goes its own way from here. A model that is only copied from any
     * more may be so by several threads.
     *
     * @return the copy; nobody hears of its work
     */
    public LineModel copy() {
        return new LineModel(this);
    }

    /**
     * The loads.
     *
     * @return the loads in the order in which they were hooked on; unmodifiable
     */
    public List<Load> loads() {
        return List.copyOf(loads);
    }

    /**
     * The line that this is a model of.
     *
     * @return the line
     */
    public Lifeline line() {
        return line;
    }

    WatchedWork work() {
        return work;
    }

    LineSystem system() {
        return system;
    }

    LineState state() {
        return state;
    }

    LineSystem bare() {
        return bare;
    }

    LineState installed() {
        return installed;
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
        if (EquilibriumPath.remembers(system) || !solveAt(thermal, Math.abs(rise))) {
            follow(thermal, Math.abs(rise), null);
        }
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
        LoadPlacement placement = new LoadPlacement(this);
        double coordinate = gripped ? placement.gripped(span, station) : placement.running(span, station);
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
        LoadPlacement.Arrangement next = new LoadPlacement(this).with(load, loads);
        loads.add(load);
        system = next.system();
        state = next.state();
        return load;
    }

    /**
     * Lets a load grow to its weight, and the line with it.
     *
     * @param load the load
     * @param force its weight [N], not below what it is
     */
    public void hang(Load load, double force) {
        PathParameter weight = new PathParameter.Weight(load.index);
        if (EquilibriumPath.remembers(system)) {
            EquilibriumPath.Scale scale = scale(load, force);
            new LoadPlacement(this).activate(load);
            follow(weight, force, scale);
            return;
        }
        new LoadPlacement(this).activate(load);
        if (!solveAt(weight, force)) {
            follow(weight, force, scale(load, force));
        }
    }

    private EquilibriumPath.Scale scale(Load load, double force) {
        LineEnergy before = energy();
        double others = before.hanging() - energyOf(load);
        PathEnergy.Datum datum =
                new PathEnergy.Datum(line.supports().get(0).position().z(), before.line() + others);
        return new EquilibriumPath.Scale(datum, force, 0);
    }

    /** Solves for the end of a change, where the way to it does not matter; false if nothing was found. */
    private boolean solveAt(PathParameter parameter, double to) {
        Equilibrium e = new Equilibrium(system, work);
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
        }
        return found;
    }

    private void follow(PathParameter parameter, double to, EquilibriumPath.@Nullable Scale scale) {
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

    NoEquilibriumException failure(String what, NoEquilibriumException.Reached reached, Equilibrium e) {
        return new NoEquilibriumException(
                what + reason(),
                reached,
                new Convergence(iterations + e.iterations, e.residual, Equilibrium.CONVERGED));
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

    /**
     * Where the cable and the supports are in the current state.
     *
     * @return the geometry, until the state changes
     */
    public LineGeometry geometry() {
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
     * The point of the cable that lies a length of it behind the first end, as installed.
     *
     * @param length unstretched length of cable between the first end and the point [m]
     * @return number of its span from 0, and where it hangs; empty where the cable is shorter
     */
    public Optional<CablePoint> installedPoint(double length) {
        double left = length;
        for (int i = 0; i < bare.spans; i++) {
            if (left < bare.length[i]) {
                LineGeometry geometry = new LineGeometry(bare, installed);
                return Optional.of(new CablePoint(i, geometry.walk(geometry.pieces(i), i, left, -1)));
            }
            left -= bare.length[i];
        }
        return Optional.empty();
    }

    /**
     * A point of the cable.
     *
     * @param span number of its span, from 0
     * @param point where it hangs
     */
    public record CablePoint(int span, Point point) {}

    /**
     * Unstretched length of the whole cable between its ends, as installed.
     *
     * @return length [m]
     */
    public double installedLength() {
        double sum = 0;
        for (double each : bare.length) {
            sum += each;
        }
        return sum;
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
