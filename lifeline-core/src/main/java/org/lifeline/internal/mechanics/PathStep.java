package org.lifeline.internal.mechanics;

/**
 * One step of a {@link LoadPath}: the equilibrium at a force, or where an anchor begins to slip before it. Not
 * thread-safe.
 */
final class PathStep {
    private static final int EVENT_STEPS = 60;

    /** Share of the force within which an event is not sought any closer. */
    private static final double NARROW = 1e-9;

    private static final int TURN_STEPS = 30;

    /** Share of a step from which on a turn counts as its end: what runs back beyond is its square. */
    private static final double LATE = 0.999;

    /** Factor on the foreseen distance of an event, so that a step ends beyond it rather than before. */
    private static final double EXCESS = 1.05;

    /** How far beyond two points the next one may be foreseen from their parabola, in distances between them. */
    private static final double FARTHEST = 3;

    private final LineSystem system;
    private final Equilibrium equilibrium;
    private final PathRates rates;
    private final PathEvents events;
    private final int load;
    private final boolean follow;
    private final LineState low;
    private final PathNode end;

    /** Share of the last step at which something that ran came to rest. */
    private double turn = 1;

    PathStep(Equilibrium equilibrium, PathRates rates, int load, boolean follow) {
        this.equilibrium = equilibrium;
        this.system = equilibrium.system;
        this.rates = rates;
        this.events = new PathEvents(system, equilibrium);
        this.load = load;
        this.follow = follow;
        this.low = new LineState(system.spans, system.loads);
        this.end = new PathNode(system);
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
        double want = follow ? Math.min(to, now.force + EXCESS * rates.untilEvent(now, events)) : to;
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
        for (int k = 0; k < TURN_STEPS; k++) {
            double reached = settle(now, next, before, goal);
            double share = Double.isNaN(reached) ? 1 : turn;
            if (share > LATE) {
                return reached;
            }
            // Something that runs comes to rest and would run back: the step ends there.
            double step = rates.measure(goal) - rates.measure(now.force);
            goal = rates.beyond(now.force, (share + 0.5 * (1 - LATE)) * step);
            end.set(next);
            if (!newton(now, next, end, goal)) {
                return Double.NaN;
            }
        }
        return Double.NaN;
    }

    /** Settles the modes at the end of a step and completes the point there; returns the force or NaN. */
    private double settle(PathNode now, PathNode next, PathNode before, double goal) {
        next.force = goal;
        low.set(next.state);
        if (!equilibrium.changeModes(next.state, now.state, 0)) {
            rates.finish(next);
            rates.accumulate(now, next, before);
            turn = follow ? events.turn(now, next) : 1;
            return goal;
        }
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
     * Goes back from the end of a step, which {@code next} holds, to the first event on it: false position on the share
     * of the step, the side that stays being weighted down, until a limit is passed by no more than the tolerance.
     *
     * @return the force reached, or NaN if no equilibrium was found
     */
    private double event(PathNode now, PathNode next, double to) {
        double share = events.share(now.state, next.state, 1);
        if (share == 1) {
            return to;
        }
        double from = now.force;
        low.set(now.state);
        end.state.set(next.state);
        end.force = to;
        double weight = 1;
        for (int k = 0; k < EVENT_STEPS; k++) {
            double least = NARROW * Math.max(end.force, 1e-3 * to);
            boolean last = end.force - from < 2 * least;
            double goal = from + Math.min(Math.max(share, 1e-3), 0.999) * (end.force - from);
            if (last) {
                goal = Math.min(to, from + least);
            }
            if (!newton(now, next, end, goal)) {
                return Double.NaN;
            }
            double again = events.share(low, next.state, 1);
            if (last || (again == 1 && events.isMet(next.state, end.state))) {
                return goal;
            }
            if (again < 1) {
                end.state.set(next.state);
                end.force = goal;
                weight = Math.max(1, 2 * weight);
            } else {
                low.set(next.state);
                from = goal;
                weight = Math.min(1, 0.5 * weight);
            }
            share = events.share(low, end.state, weight);
        }
        return Double.NaN;
    }

    /** Equilibrium at a force with the modes of a point: foreseen from two points, or from a cold start, or from itself. */
    private boolean newton(PathNode now, PathNode next, PathNode other, double force) {
        if (!follow) {
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
        double whole = rates.measure(other.force) - rates.measure(now.force);
        double t = (rates.measure(force) - rates.measure(now.force)) / whole;
        if (!(Math.abs(t) < FARTHEST) || !other.state.hasModesOf(now.state)) {
            equilibrium.apply(next, now.state, force - now.force, now.tangent);
            return;
        }
        double perMeasure = whole * rates.perMeasure(now.force);
        if (other.hasTangent && Math.abs(t) < 0.7 * FARTHEST) {
            equilibrium.apply(next, now.state, perMeasure * t * (1 - t) * (1 - t), now.tangent);
            equilibrium.addDifference(next, t * t * (3 - 2 * t), now.state, other.state);
            equilibrium.apply(next, next, whole * rates.perMeasure(other.force) * t * t * (t - 1), other.tangent);
        } else {
            equilibrium.apply(next, now.state, perMeasure * t * (1 - t), now.tangent);
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

    /** Lets anchors that stand on their limit slip, if the tangent says that they then slip the right way. */
    private void release(PathNode now) {
        boolean any = false;
        for (int i = 1; i < system.spans; i++) {
            if (events.sticks(now.state, i) && equilibrium.excess(now.state, i) > PathEvents.LIMIT) {
                now.state.passage[i] = system.logRatio(now.state, i) > 0 ? LineState.RUNS_ON : LineState.RUNS_BACK;
                any = true;
            }
        }
        if (!any) {
            return;
        }
        equilibrium.spoil();
        for (int round = 0; round < system.spans; round++) {
            rates.tangent(now);
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
        rates.ratesAlong(now);
    }
}
