package org.lifeline.internal.path;

import java.util.Arrays;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineForces;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.model.InlineAbsorber;

/**
 * Where on a step of a path something changes its mode: a support begins to slip, cable jams at a support or comes free,
 * a free-running load comes to its bound or leaves it, an in-line absorber begins to yield or comes to the next corner of
 * its curve.
 *
 * <p>Each has an excess, below zero before the event and above it after: of the log of a ratio of tensions, of a tension
 * over its limit, or of a length over a chord [-]. What begins to slip or to yield is met just before its limit, and the
 * next step lets it go; everything else just beyond it, where the settling of modes sees it. Not thread-safe.
 */
final class PathEvents {
    private final LineSystem system;
    private final Equilibrium equilibrium;

    /** Numbers of the first jam, load and absorber; supports come first. */
    private final int jams;

    private final int loads;
    private final int absorbers;
    private final int count;

    /** Excesses of the events in the state that is looked at, and in the one beside it [-]. */
    private final double[] here;

    private final double[] there;

    /** The events whose excess is asked for. */
    private final boolean[] wanted;

    private int watched;
    private boolean passOver;

    PathEvents(LineSystem system, Equilibrium equilibrium) {
        this.system = system;
        this.equilibrium = equilibrium;
        this.jams = system.spans;
        this.loads = 2 * system.spans;
        this.absorbers = loads + system.loads;
        this.count = absorbers + 2;
        this.here = new double[count];
        this.there = new double[count];
        this.wanted = new boolean[count];
    }

    /**
     * The share of a step at which the first event on it comes, by the chord between two states; it is watched from now
     * on. What stands at its limit from the start is none: a step that finds no rates with which it changes settles that
     * at its end.
     *
     * @param low the state at the start of the step
     * @param high the state at its end
     * @return the share, from 0 to 1; 1 if there is none
     */
    double share(LineState low, LineState high) {
        findAll(high, high);
        for (int k = 1; k < count; k++) {
            wanted[k] = here[k] > passedFrom(k, high);
        }
        find(there, low, high);
        double first = 1;
        for (int k = 1; k < count; k++) {
            if (wanted[k] && there[k] <= startsFrom(k, high)) {
                double from = Math.min(there[k], 0);
                double share = (aim(k, high) - from) / (here[k] - from);
                if (share < first) {
                    first = share;
                    watched = k;
                }
            }
        }
        return first;
    }

    /** Counts what loads and absorbers do as an event, or not. */
    void passOver(boolean pass) {
        passOver = pass;
    }

    boolean passesOver() {
        return passOver;
    }

    /** Number of what is watched. */
    int watched() {
        return watched;
    }

    /** How far what is watched is beyond the excess that is aimed at, seen from a later state beyond the event [-]. */
    double beyond(LineState s, LineState later) {
        Arrays.fill(wanted, false);
        wanted[watched] = true;
        find(here, s, later);
        return here[watched] - aim(watched, s);
    }

    /** How many times a small step may be taken until it meets the first event. */
    double steps(LineState now, LineState ahead) {
        findAll(now, now);
        for (int k = 1; k < count; k++) {
            wanted[k] = here[k] > Double.NEGATIVE_INFINITY && here[k] <= startsFrom(k, now) && here[k] < 0;
        }
        find(there, ahead, now);
        double least = Double.POSITIVE_INFINITY;
        for (int k = 1; k < count; k++) {
            double rise = there[k] - here[k];
            least = wanted[k] && rise > 0 ? Math.min(least, -here[k] / rise) : least;
        }
        return least;
    }

    /** Tells whether one of the events that a later state has passed is just met. */
    boolean isMet(LineState s, LineState later) {
        findAll(s, later);
        for (int k = 1; k < count; k++) {
            wanted[k] = here[k] > metFrom(k, s);
        }
        find(there, later, later);
        for (int k = 1; k < count; k++) {
            if (wanted[k] && there[k] > passedFrom(k, later)) {
                return true;
            }
        }
        return false;
    }

    private double aim(int k, LineState s) {
        return letsGo(k, s) ? PathTolerances.AIM : 0.5 * passedFrom(k, s);
    }

    /** Excess above which an event is passed [-]. */
    private double passedFrom(int k, LineState s) {
        return letsGo(k, s)
                ? PathTolerances.BEYOND_LIMIT
                : isOfLength(k, s) ? PathTolerances.BOUND : PathTolerances.EVENT;
    }

    /** Excess above which it is met [-]: the settling of modes acts from there. */
    private double metFrom(int k, LineState s) {
        return letsGo(k, s) ? PathTolerances.AT_LIMIT : isOfLength(k, s) ? 0 : PathTolerances.SEEN;
    }

    /** Excess above which what is at its limit from the start is no event [-]. */
    private double startsFrom(int k, LineState s) {
        return letsGo(k, s) ? PathTolerances.AT_LIMIT : aim(k, s);
    }

    /** Tells whether an event is that of a support that begins to slip, or an absorber that begins to yield. */
    private boolean letsGo(int k, LineState s) {
        return k < jams || (k >= absorbers && !s.yielding[k - absorbers]);
    }

    /** Excess of the tension at an in-line absorber that does not yield over what it resists; −∞ for any other [-]. */
    double excessOfYield(LineState s, int e) {
        return s.yielding[e] || passOver ? Double.NEGATIVE_INFINITY : excessOfAbsorber(s, e);
    }

    /** Tells whether an event is that of a length: cable or a load comes to a bound, an absorber to a corner. */
    private boolean isOfLength(int k, LineState s) {
        if (k < loads) {
            return Math.abs(s.passage[k - jams]) == 1;
        }
        return k < absorbers ? s.mode[k - loads] == LineState.RUNNING : s.yielding[k - absorbers];
    }

    /** Finds the excesses of all events in a state. */
    private void findAll(LineState s, LineState later) {
        Arrays.fill(wanted, true);
        find(here, s, later);
    }

    /**
     * Finds the excesses of the events that are wanted in a state [-], for a support on that side to which a later state
     * slips; −∞ where an event cannot happen.
     */
    private void find(double[] excess, LineState s, LineState later) {
        for (int i = 1; i < system.spans; i++) {
            if (wanted[i] || wanted[jams + i]) {
                findAtSupport(excess, s, later, i);
            }
        }
        excess[jams] = Double.NEGATIVE_INFINITY;
        for (int k = loads; k < absorbers; k++) {
            excess[k] = passOver || !wanted[k] ? Double.NEGATIVE_INFINITY : excessOfLoad(s, k - loads);
        }
        for (int k = absorbers; k < count; k++) {
            excess[k] = passOver || !wanted[k] ? Double.NEGATIVE_INFINITY : excessOfAbsorber(s, k - absorbers);
        }
    }

    /** Finds the excess of the friction at a support, and of the cable that jams there. */
    private void findAtSupport(double[] excess, LineState s, LineState later, int i) {
        excess[i] = Double.NEGATIVE_INFINITY;
        excess[jams + i] = Double.NEGATIVE_INFINITY;
        if (system.clamped[i]) {
            return;
        }
        int mode = s.passage[i];
        boolean held = Math.abs(mode) == 2;
        if (held || sticks(s, i)) {
            double ratio = system.forces.logRatio(s, i);
            double limit = system.friction[i] == 0 ? 0 : system.friction[i] * system.forces.turned(s, i);
            if (held) {
                excess[jams + i] = (mode == LineState.JAMMED_BACK ? ratio : -ratio) - limit;
            } else {
                double side = later == s ? ratio : system.forces.logRatio(later, i);
                excess[i] = Math.signum(side) * ratio - limit;
            }
        } else if (mode != LineState.STUCK) {
            double beyond =
                    Math.max(s.slip[i] - system.forces.mostSlip(s, i), system.forces.leastSlip(s, i) - s.slip[i]);
            excess[jams + i] = beyond / system.chord[i];
        }
    }

    private double excessOfLoad(LineState s, int j) {
        if (!s.active[j] || system.gripped[j] || s.mode[j] == LineState.FOLLOWS) {
            return Double.NEGATIVE_INFINITY;
        }
        if (s.mode[j] == LineState.RUNNING) {
            double low = system.forces.bound(s, j, false);
            double high = system.forces.bound(s, j, true);
            return Math.max(low - s.coordinate[j], s.coordinate[j] - high) / system.chord[system.loadSpan[j]];
        }
        double pull = system.forces.pull(s, j);
        double size = Math.abs(system.forces.beforeLoad(s, j)) + s.force[j];
        return (s.mode[j] == LineState.AT_START ? -pull : pull) / size;
    }

    private double excessOfAbsorber(LineState s, int e) {
        InlineAbsorber a = system.absorbers[e];
        if (a == null) {
            return Double.NEGATIVE_INFINITY;
        }
        double chord = system.chord[e == 0 ? 0 : system.spans - 1];
        if (LineForces.isAtStop(s, e, a)) {
            double last = a.curve().lastForce();
            return Double.isInfinite(a.curve().stopStiffness())
                    ? 1 - system.forces.endTension(s, e) / last
                    : (a.curve().maximumExtension() - s.extension[e]) / chord;
        }
        if (s.yielding[e]) {
            double corner = a.curve().pieceStart(s.piece[e] + 1);
            return (s.extension[e] - corner) / chord;
        }
        return system.forces.endTension(s, e) / equilibrium.modes.resistance(a, s, e) - 1;
    }

    /**
     * The lowest rate at the end of a step of a support that slips, or an absorber that yields, as a share of its rate at
     * the start: below zero if one has come to rest on the way, which the two states need not show.
     *
     * @param now the start of the step, with its tangent
     * @param next its end, with its tangent
     * @return the share; 1 if nothing runs
     */
    double turn(PathPoint now, PathPoint next) {
        double least = 1;
        for (int i = 1; i < system.spans; i++) {
            int mode = next.state.passage[i];
            boolean runs = system.friction[i] > 0 && Math.abs(mode) == 1 && mode == now.state.passage[i];
            if (runs) {
                int k = system.unknowns.slipIndex(i);
                least = Math.min(least, share(-mode * now.tangent[k], -mode * next.tangent[k]));
            }
        }
        for (int e = 0; e < 2; e++) {
            InlineAbsorber a = system.absorbers[e];
            boolean yields = a != null && now.state.yielding[e] && next.state.yielding[e];
            if (yields && !LineForces.isAtStop(now.state, e, a)) {
                int k = system.unknowns.extensionIndex(e);
                least = Math.min(least, share(now.tangent[k], next.tangent[k]));
            }
        }
        return least;
    }

    private static double share(double rate, double later) {
        return rate > 0 ? later / rate : 1;
    }

    boolean sticks(LineState s, int i) {
        return !system.clamped[i] && system.friction[i] > 0 && s.passage[i] == LineState.STUCK;
    }
}
