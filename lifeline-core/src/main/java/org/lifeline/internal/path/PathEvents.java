package org.lifeline.internal.path;

import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.model.InlineAbsorber;

/** Where on a step of a path an anchor begins to slip or an in-line absorber begins to yield. */
final class PathEvents {
    private final LineSystem system;
    private final Equilibrium equilibrium;
    private int watched;

    PathEvents(LineSystem system, Equilibrium equilibrium) {
        this.system = system;
        this.equilibrium = equilibrium;
    }

    /**
     * The share of a step at which the first anchor that sticks comes to its limit, or the first absorber yields, by the
     * chord between two states; it is watched from now on. An anchor that stands on its limit from the start is none of
     * them: a step that finds no rates with which it lets go settles that at its end.
     *
     * @param low the state at the start of the step, below every limit
     * @param high the state at its end
     * @return the share, from 0 to 1; 1 if no limit is passed
     */
    double share(LineState low, LineState high) {
        double first = 1;
        for (int i = 1; i < system.spans; i++) {
            if (sticks(high, i)) {
                double beyond = equilibrium.excess(high, i);
                double start = beyond > PathTolerances.BEYOND_LIMIT ? toward(low, high, i) : 0;
                if (beyond > PathTolerances.BEYOND_LIMIT && start <= PathTolerances.AT_LIMIT) {
                    first = nearer(first, chord(start, beyond, PathTolerances.AIM), i);
                }
            }
        }
        for (int e = 0; e < 2; e++) {
            InlineAbsorber a = system.absorbers[e];
            if (a != null && !high.yielding[e]) {
                double limit = equilibrium.resistance(a, high, e);
                double beyond = system.endTension(high, e) / limit - 1;
                if (beyond > PathTolerances.EVENT) {
                    first = nearer(
                            first,
                            chord(system.endTension(low, e) / limit - 1, beyond, PathTolerances.YIELD_AIM),
                            -1 - e);
                }
            }
        }
        return first;
    }

    private double nearer(double first, double share, int which) {
        if (share < first) {
            watched = which;
            return share;
        }
        return first;
    }

    /** What is watched: number of a support, or −1 less the end of an absorber. */
    int watched() {
        return watched;
    }

    /**
     * How far what is watched is beyond the value that is aimed at.
     *
     * @param s the state
     * @param later a state beyond the limit
     * @return excess of the log of the tension ratio, or of the tension as a share of the resistance [-]
     */
    double beyond(LineState s, LineState later) {
        if (watched > 0) {
            return toward(s, later, watched) - PathTolerances.AIM;
        }
        int e = -1 - watched;
        InlineAbsorber a = system.absorbers[e];
        return a == null
                ? 0
                : system.endTension(s, e) / equilibrium.resistance(a, later, e) - 1 - PathTolerances.YIELD_AIM;
    }

    /**
     * The lowest rate at the end of a step of an anchor that slips, or an absorber that yields, as a share of its rate at
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
                int k = system.slipIndex(i);
                least = Math.min(least, share(-mode * now.tangent[k], -mode * next.tangent[k]));
            }
        }
        for (int e = 0; e < 2; e++) {
            if (system.absorbers[e] != null && now.state.yielding[e] && next.state.yielding[e]) {
                int k = system.extensionIndex(e);
                least = Math.min(least, share(now.tangent[k], next.tangent[k]));
            }
        }
        return least;
    }

    private static double share(double rate, double later) {
        return rate > 0 ? later / rate : 1;
    }

    /** How far an anchor is beyond that one of its two limits which a later state is nearer to. */
    private double toward(LineState s, LineState later, int i) {
        return Math.signum(system.logRatio(later, i)) * system.logRatio(s, i)
                - system.friction[i] * system.turned(s, i);
    }

    /** How many times a small step may be taken until it meets the first event. */
    double steps(LineState now, LineState ahead) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < system.spans; i++) {
            if (sticks(now, i)) {
                double beyond = equilibrium.excess(now, i);
                if (beyond <= PathTolerances.AT_LIMIT) {
                    least = Math.min(least, steps(beyond, equilibrium.excess(ahead, i) - beyond));
                }
            }
        }
        for (int e = 0; e < 2; e++) {
            InlineAbsorber a = system.absorbers[e];
            if (a != null && !now.yielding[e]) {
                double limit = equilibrium.resistance(a, now, e);
                double tension = system.endTension(now, e);
                least = Math.min(least, steps(tension - limit, system.endTension(ahead, e) - tension));
            }
        }
        return least;
    }

    private static double steps(double beyond, double rise) {
        return rise > 0 && beyond < 0 ? -beyond / rise : Double.POSITIVE_INFINITY;
    }

    /** Where the chord comes to a value. */
    private static double chord(double low, double high, double aim) {
        double from = Math.min(low, 0);
        return high <= aim ? 1 : (aim - from) / (high - from);
    }

    /** Tells whether one of the limits that a later state passes is just met, or just passed where that is an absorber's. */
    boolean isMet(LineState s, LineState later) {
        for (int i = 1; i < system.spans; i++) {
            if (sticks(s, i)
                    && equilibrium.excess(later, i) > PathTolerances.BEYOND_LIMIT
                    && equilibrium.excess(s, i) > PathTolerances.AT_LIMIT) {
                return true;
            }
        }
        for (int e = 0; e < 2; e++) {
            InlineAbsorber a = system.absorbers[e];
            if (a != null
                    && !s.yielding[e]
                    && system.endTension(s, e) > equilibrium.resistance(a, s, e) * (1 + PathTolerances.BEYOND_LIMIT)) {
                return true;
            }
        }
        return false;
    }

    boolean sticks(LineState s, int i) {
        return !system.clamped[i] && system.friction[i] > 0 && s.passage[i] == LineState.STUCK;
    }
}
