package org.lifeline.internal.path;

import org.jspecify.annotations.Nullable;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;

/**
 * One step of a {@link LoadPath}: the equilibrium at a force, or where an anchor begins to slip before it. Not
 * thread-safe.
 */
final class PathStep {
    private static final int EVENT_STEPS = 60;

    /** Share of the force within which an event is not sought any closer. */
    private static final double NARROW = 1e-9;

    private static final int TURN_STEPS = 30;

    /** Share of its rate at the start up to which a rate backward counts as rest: what runs back is its square. */
    private static final double REST = 1e-3;

    /** Factor on the foreseen distance of an event, so that a step ends beyond it rather than before. */
    private static final double EXCESS = 1.05;

    /** Share of a step below which an event is not aimed at: what stands at its limit and stays there would stop the path. */
    private static final double LEAST = 1e-4;

    /** Rate, in chords for a step of one, below which an anchor is not seen to slip the wrong way. */
    private static final double STILL = 1e-12;

    /** How far beyond two points the next one may be foreseen from their parabola, in distances between them. */
    private static final double FARTHEST = 3;

    private final LineSystem system;
    private final Equilibrium equilibrium;
    private final PathRates rates;
    private final PathEvents events;
    private final int load;
    private final boolean follow;
    private final LineState low;
    private @Nullable PathNode spare;
    private final EventBracket bracket = new EventBracket();

    /** The lowest rate at the end of the last step of what ran at its start, as a share of that at the start. */
    private double turn = 1;

    PathStep(Equilibrium equilibrium, PathRates rates, int load, boolean follow) {
        this.equilibrium = equilibrium;
        this.system = equilibrium.system;
        this.rates = rates;
        this.events = new PathEvents(system, equilibrium);
        this.load = load;
        this.follow = follow;
        this.low = new LineState(system.spans, system.loads);
    }

    /** A point to keep the end of a step in, made when there is need of it. */
    private PathNode end() {
        PathNode e = spare;
        if (e == null) {
            e = new PathNode(system, follow);
            spare = e;
        }
        return e;
    }

    /**
     * Takes one step.
     *
     * @param points where it starts; what receives where it ends; the point before; a point, before or beyond the step,
     *     that helps to foresee where it ends
     * @param to force to go to [N]
     * @return the force reached, or NaN if no equilibrium was found
     */
    double take(PathNode[] points, double to) {
        PathNode now = points[0];
        PathNode next = points[1];
        PathNode before = points[2];
        PathNode other = points[3];
        if (follow) {
            release(now);
        } else if (!now.hasTangent && other.force > 0) {
            rates.tangent(now);
        }
        double want = to;
        if (follow) {
            double ahead = Math.max(EXCESS * rates.untilEvent(now, events), LEAST * (to - now.force));
            want = Math.min(to, now.force + ahead);
        }
        if (!newton(now, next, other, want)) {
            return Double.NaN;
        }
        double goal = follow ? event(now, next, want) : to;
        if (Double.isNaN(goal)) {
            return Double.NaN;
        }
        if (!follow) {
            return settle(now, next, before, goal);
        }
        double reached = settle(now, next, before, goal);
        return Double.isNaN(reached) || turn >= 0 ? reached : comeToRest(points, reached);
    }

    /**
     * Ends a step just beyond where something that runs comes to rest and would run back: false position on the lowest
     * rate, as a share of that at the start, the side that stays being weighted down.
     */
    private double comeToRest(PathNode[] points, double beyond) {
        PathNode end = end();
        PathNode now = points[0];
        PathNode next = points[1];
        double low = 0;
        double lowRate = 1;
        double high = rates.step(now.force, beyond - now.force);
        double highRate = turn;
        for (int k = 0; k < TURN_STEPS; k++) {
            double step = low + (high - low) * (lowRate + 0.5 * REST) / (lowRate - highRate);
            boolean last = high - low < NARROW * high || k == TURN_STEPS - 1;
            double goal = rates.beyond(now.force, last ? high : Math.min(step, high));
            if (k == 0) {
                end.set(next);
            }
            if (!newton(now, next, end, goal)) {
                return Double.NaN;
            }
            double reached = settle(now, next, points[2], goal);
            if (Double.isNaN(reached) || last || (turn <= 0 && turn > -REST)) {
                return reached;
            }
            if (turn < 0) {
                lowRate *= 0.5;
                high = step;
                highRate = turn;
            } else {
                highRate *= 0.5;
                low = step;
                lowRate = turn;
            }
        }
        return Double.NaN;
    }

    /** Settles the modes at the end of a step and completes the point there; returns the force or NaN. */
    private double settle(PathNode now, PathNode next, PathNode before, double goal) {
        rates.place(next, goal);
        low.set(next.state);
        if (!equilibrium.changeModes(next.state, now.state, 0)) {
            rates.finish(next);
            rates.accumulate(now, next, before);
            turn = follow ? events.turn(now, next) : 1;
            return goal;
        }
        PathNode end = end();
        // The step ends where something lets go: up to here with the rates before that, from here on with those behind.
        end.state.set(next.state);
        next.state.set(low);
        Equilibrium.keepYield(next.state, now.state);
        rates.finish(next);
        rates.accumulate(now, next, before);
        turn = events.turn(now, next);
        low.set(next.state);
        double descent = next.descent;
        next.state.set(end.state);
        if (!equilibrium.solve(next.state, now.state)) {
            return Double.NaN;
        }
        rates.finish(next);
        rates.addJump(low, next, next.descent - descent);
        return goal;
    }

    /**
     * Goes back from the end of a step, which {@code next} holds, to the first event on it, until a limit is passed by no
     * more than the tolerance: from the parabola with the rate at the start, then by inverse interpolation through the
     * last three points.
     *
     * @return the force reached, or NaN if no equilibrium was found
     */
    private double event(PathNode now, PathNode next, double to) {
        if (events.share(now.state, next.state) == 1) {
            return to;
        }
        PathNode end = end();
        low.set(now.state);
        end.state.set(next.state);
        end.hasTangent = false;
        rates.place(end, to);
        bracket.start(now.force, to, events.beyond(low, end.state), events.beyond(end.state, end.state));
        double goal = bracket.parabola(rates.rateOfEvent(now, events, end.state));
        for (int k = 0; k < EVENT_STEPS; k++) {
            double least = NARROW * Math.max(end.force, 1e-3 * to);
            boolean last = bracket.width() < 2 * least;
            if (last) {
                goal = Math.min(to, bracket.low() + least);
            }
            if (!newton(now, next, end, goal)) {
                return Double.NaN;
            }
            int watched = events.watched();
            boolean passed = events.share(low, next.state) < 1;
            if (last || (!passed && events.isMet(next.state, end.state))) {
                return goal;
            }
            if (passed) {
                end.state.set(next.state);
                rates.place(end, goal);
            }
            if (events.watched() == watched) {
                bracket.add(goal, events.beyond(next.state, end.state), passed);
            } else {
                double start = bracket.low();
                bracket.start(start, goal, events.beyond(low, end.state), events.beyond(end.state, end.state));
            }
            if (!passed) {
                low.set(next.state);
            }
            goal = bracket.next(k);
        }
        return Double.NaN;
    }

    /** Equilibrium at a force with the modes of a point: from a cold start, or foreseen from two points, or from itself. */
    private boolean newton(PathNode now, PathNode next, PathNode other, double force) {
        if (!follow && (system.spans == 1 || !now.hasTangent || now.force == 0)) {
            reset(now, next, force);
            if (equilibrium.startCold(next.state) && equilibrium.newton(next.state)) {
                return true;
            }
        }
        if (now.hasTangent) {
            reset(now, next, force);
            foresee(now, next.state, other, force);
            if (isPlausible(next.state, now.state) && equilibrium.newton(next.state)) {
                return true;
            }
        }
        reset(now, next, force);
        return equilibrium.newton(next.state);
    }

    private void reset(PathNode now, PathNode next, double force) {
        next.state.set(now.state);
        next.state.force[load] = force;
    }

    /**
     * The cubic in u through two points with their tangents; the parabola where the other point has none or is far; the
     * tangent alone where its modes are others.
     */
    private void foresee(PathNode now, LineState next, PathNode other, double force) {
        double whole = rates.way(now, other.force, other.way);
        double t = rates.way(now, force, rates.way(force)) / whole;
        if (!(Math.abs(t) < FARTHEST) || !other.state.hasModesOf(now.state)) {
            equilibrium.apply(next, now.state, force - now.force, now.tangent);
            return;
        }
        double perStep = whole * rates.perWay(now);
        if (other.hasTangent && Math.abs(t) < 0.7 * FARTHEST) {
            equilibrium.apply(next, now.state, perStep * t * (1 - t) * (1 - t), now.tangent);
            equilibrium.addDifference(next, t * t * (3 - 2 * t), now.state, other.state);
            equilibrium.apply(next, next, whole * rates.perWay(other) * t * t * (t - 1), other.tangent);
        } else {
            equilibrium.apply(next, now.state, perStep * t * (1 - t), now.tangent);
            equilibrium.addDifference(next, t * t, now.state, other.state);
        }
    }

    private boolean isPlausible(LineState to, LineState from) {
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

    /**
     * Lets anchors that stand on their limit slip, if the tangent says that they then slip the right way, and lets none
     * stick that the tangent would drive beyond its limit. Anchors that have come to rest stick from here on.
     */
    private void release(PathNode now) {
        boolean changed = now.hasTangent && stick(now);
        for (int i = 1; i < system.spans; i++) {
            changed |= letGo(now.state, i);
        }
        for (int round = 0; changed && round < 2 * system.spans; round++) {
            equilibrium.spoil();
            rates.tangent(now);
            changed = stick(now);
            if (!changed) {
                rates.ratesAlong(now);
                rates.ahead(now);
                for (int i = 1; i < system.spans; i++) {
                    changed |= rates.excessGrows(now, i) && letGo(now.state, i);
                }
            }
        }
    }

    /** Lets anchors stick that slip the wrong way by the tangent; returns whether there are any. */
    private boolean stick(PathNode now) {
        boolean any = false;
        for (int i = 1; i < system.spans; i++) {
            int mode = now.state.passage[i];
            if (system.friction[i] > 0 && Math.abs(mode) == 1) {
                double back = mode * now.tangent[system.slipIndex(i)] * rates.perMeasure(now.force);
                if (back > STILL * system.chord[i]) {
                    now.state.passage[i] = LineState.STUCK;
                    any = true;
                }
            }
        }
        return any;
    }

    /** Lets an anchor slip that sticks on its limit; returns whether it does. */
    private boolean letGo(LineState s, int i) {
        if (!events.sticks(s, i) || equilibrium.excess(s, i) <= PathEvents.LIMIT) {
            return false;
        }
        s.passage[i] = system.logRatio(s, i) > 0 ? LineState.RUNS_ON : LineState.RUNS_BACK;
        return true;
    }
}
