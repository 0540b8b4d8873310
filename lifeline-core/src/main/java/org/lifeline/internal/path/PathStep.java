package org.lifeline.internal.path;

import org.jspecify.annotations.Nullable;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineForces;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.internal.numeric.RootBracket;
import org.lifeline.internal.numeric.RootBracket.Sample;
import org.lifeline.model.InlineAbsorber;

/**
 * One step of an {@link EquilibriumPath}: the equilibrium at a value of its parameter, or where an event comes before it.
 * Not thread-safe.
 */
final class PathStep {
    private final LineSystem system;
    private final Equilibrium equilibrium;
    private final EquilibriumPath path;
    private final PathCoordinate coordinate;
    private final PathTangent tangent;
    private final PathParameter parameter;
    private final PathEvents events;
    private final RootBracket bracket = new RootBracket();
    private final LineState low;
    private @Nullable PathPoint spare;

    /** The lowest rate at the end of the last step of what ran at its start, as a share of that at the start [-]. */
    private double turn = 1;

    PathStep(EquilibriumPath path, Equilibrium equilibrium, PathParameter parameter, PathTangent tangent) {
        this.path = path;
        this.equilibrium = equilibrium;
        this.system = equilibrium.system;
        this.parameter = parameter;
        this.coordinate = path.coordinate();
        this.tangent = tangent;
        this.events = new PathEvents(system, equilibrium);
        this.low = new LineState(system.spans, system.loads);
    }

    /** Steps over what loads and absorbers do from now on, or ends at it. */
    void passOver(boolean pass) {
        events.passOver(pass);
    }

    /** A point to keep the end of a step in, made when there is need of it. */
    private PathPoint end() {
        PathPoint e = spare;
        if (e == null) {
            e = new PathPoint(system, path.isFollowed());
            spare = e;
        }
        return e;
    }

    /**
     * Takes one step from the path's current point into its next one.
     *
     * @param other a point, before or beyond the step, that helps to foresee where it ends
     * @param to value to go to
     * @return the value reached, or NaN if no equilibrium was found
     */
    double take(PathPoint other, double to) {
        PathPoint now = path.now();
        if (!path.isFollowed()) {
            if (!now.hasTangent && other.value > 0 && !isBeside(other, to)) {
                tangent.find(now);
            }
            return newton(other, to) ? settle(to) : Double.NaN;
        }
        release(now);
        double rise = to - now.value;
        double foreseen = PathTolerances.OVERSHOOT * tangent.untilEvent(now, events, coordinate);
        double want = Math.min(to, now.value + Math.max(foreseen, PathTolerances.LEAST_TO_EVENT * rise));
        double goal = newton(other, want) ? event(want) : Double.NaN;
        double reached = Double.isNaN(goal) ? goal : settle(goal);
        return Double.isNaN(reached) || turn >= 0 ? reached : comeToRest(reached);
    }

    /** Ends a step just beyond where something that runs comes to rest and would run back, by its rate. */
    private double comeToRest(double beyond) {
        PathPoint now = path.now();
        PathPoint next = path.next();
        PathPoint end = end();
        end.set(next);
        double aim = 0.5 * PathTolerances.REST;
        bracket.begin(
                new Sample(0, 1 + aim, Double.NaN),
                new Sample(coordinate.step(now.value, beyond - now.value), turn + aim, Double.NaN));
        for (int k = 0; k < PathTolerances.REST_STEPS; k++) {
            double high = bracket.high().at();
            boolean last = bracket.width() < PathTolerances.NARROW * high || k == PathTolerances.REST_STEPS - 1;
            double step = last ? high : bracket.next();
            double goal = coordinate.beyond(now.value, step);
            if (!newton(end, goal)) {
                return Double.NaN;
            }
            double reached = settle(goal);
            if (Double.isNaN(reached) || last || (turn <= 0 && turn > -PathTolerances.REST)) {
                return reached;
            }
            bracket.add(new Sample(step, turn + aim, Double.NaN), turn < 0);
        }
        return Double.NaN;
    }

    /** Settles the modes at the end of a step and completes the point there; returns the value or NaN. */
    private double settle(double goal) {
        PathPoint now = path.now();
        PathPoint next = path.next();
        path.place(next, goal);
        low.set(next.state);
        if (!equilibrium.changeModes(next.state, now.state, 0)) {
            path.complete(next);
            turn = path.isFollowed() ? events.turn(now, next) : 1;
            return goal;
        }
        PathPoint end = end();
        // The step ends where something lets go: up to here with the rates before that, from here on with those after.
        end.state.set(next.state);
        next.state.set(low);
        equilibrium.modes.keepYield(next.state, now.state);
        path.complete(next);
        turn = events.turn(now, next);
        low.set(next.state);
        double descent = next.descent;
        next.state.set(end.state);
        // Slips and extensions move on from here and not from the start of the step.
        if (!equilibrium.solve(next.state, low)) {
            return Double.NaN;
        }
        path.completeJump(next, low, descent);
        return goal;
    }

    /**
     * Goes back from the end of a step, which the next point holds, to the first event on it, until a limit is passed by
     * no more than the tolerance.
     *
     * @return the value reached, or NaN if no equilibrium was found
     */
    private double event(double to) {
        PathPoint now = path.now();
        PathPoint next = path.next();
        if (events.share(now.state, next.state) == 1) {
            return to;
        }
        PathPoint end = end();
        low.set(now.state);
        end.state.set(next.state);
        end.hasTangent = false;
        path.place(end, to);
        bracket.begin(
                sample(now.value, now.state, end.state, tangent.rateOfEvent(now, events, end.state)),
                sample(to, end.state, end.state, Double.NaN));
        for (int k = 0; k < PathTolerances.EVENT_STEPS; k++) {
            double least = PathTolerances.NARROW * Math.max(end.value, PathTolerances.LEAST_VALUE * to);
            boolean last = bracket.width() < 2 * least;
            double goal = last ? Math.min(to, bracket.low().at() + least) : bracket.next();
            if (!newton(end, goal)) {
                return Double.NaN;
            }
            int watched = events.watched();
            boolean passed = events.share(low, next.state) < 1;
            if (last || (!passed && events.isMet(next.state, end.state))) {
                return goal;
            }
            if (passed) {
                end.state.set(next.state);
                path.place(end, goal);
            }
            if (events.watched() == watched) {
                bracket.add(sample(goal, next.state, end.state, Double.NaN), passed);
            } else {
                bracket.begin(
                        sample(bracket.low().at(), low, end.state, Double.NaN),
                        sample(goal, end.state, end.state, Double.NaN));
            }
            if (!passed) {
                low.set(next.state);
            }
        }
        return Double.NaN;
    }

    private Sample sample(double value, LineState s, LineState later, double slope) {
        return new Sample(value, events.beyond(s, later), slope);
    }

    /** Equilibrium at a value with the modes of the current point: foreseen from two points, or from the current one. */
    private boolean newton(PathPoint other, double value) {
        PathPoint now = path.now();
        PathPoint next = path.next();
        boolean beside = isBeside(other, value);
        if (beside && !now.hasTangent) {
            next.state.set(other.state);
            parameter.set(next.state, value);
            equilibrium.apply(next.state, other.state, value - other.value, other.tangent);
            if (equilibrium.newton(next.state)) {
                return true;
            }
        }
        if (!path.isFollowed() && (system.spans == 1 || !now.hasTangent || (now.value == 0 && !beside))) {
            reset(value);
            if (equilibrium.startCold(next.state) && equilibrium.newton(next.state)) {
                return true;
            }
        }
        if (now.hasTangent) {
            reset(value);
            foresee(other, value);
            if (isPlausible(next.state, now.state) && equilibrium.newton(next.state)) {
                return true;
            }
        }
        reset(value);
        return equilibrium.newton(next.state);
    }

    /** Tells whether a value on a path that depends on nothing but it is so near to another point's that the tangent there foresees it. */
    private boolean isBeside(PathPoint other, double value) {
        return !path.isFollowed()
                && other.hasTangent
                && Math.abs(other.value - value) < PathTolerances.NEAR_END * value
                && other.state.hasModesOf(path.now().state);
    }

    private void reset(double value) {
        LineState s = path.next().state;
        s.set(path.now().state);
        parameter.set(s, value);
    }

    /**
     * The cubic in w through two points with their tangents; the parabola where the other point has none or is far; the
     * tangent alone where its modes are others.
     */
    private void foresee(PathPoint other, double value) {
        PathPoint now = path.now();
        LineState next = path.next().state;
        double whole = coordinate.distance(now, other.value, other.w);
        double t = coordinate.distance(now, value, coordinate.w(value)) / whole;
        if (!(Math.abs(t) < PathTolerances.FARTHEST_PARABOLA) || !other.state.hasModesOf(now.state)) {
            equilibrium.apply(next, now.state, value - now.value, now.tangent);
            return;
        }
        double first = whole * coordinate.perW(now);
        if (other.hasTangent && Math.abs(t) < PathTolerances.FARTHEST_CUBIC) {
            equilibrium.apply(next, now.state, first * t * (1 - t) * (1 - t), now.tangent);
            equilibrium.addDifference(next, t * t * (3 - 2 * t), now.state, other.state);
            equilibrium.apply(next, next, whole * coordinate.perW(other) * t * t * (t - 1), other.tangent);
        } else {
            equilibrium.apply(next, now.state, first * t * (1 - t), now.tangent);
            equilibrium.addDifference(next, t * t, now.state, other.state);
        }
    }

    private boolean isPlausible(LineState to, LineState from) {
        for (int i = 0; i < system.spans; i++) {
            double x = from.tension[3 * i];
            double y = from.tension[3 * i + 1];
            double share = (to.tension[3 * i] * x + to.tension[3 * i + 1] * y) / (x * x + y * y);
            if (!(share > PathTolerances.LEAST_TENSION && share < PathTolerances.MOST_TENSION)) {
                return false;
            }
            double have = system.length[i] + from.slip[i + 1] - from.slip[i];
            if (!(system.length[i] + to.slip[i + 1] - to.slip[i] > PathTolerances.LEAST_CABLE * have)) {
                return false;
            }
        }
        return true;
    }

    /**
     * Lets supports that stand on their limit slip and absorbers yield, if the tangent says that they then slip the right way, and lets none
     * stick that the tangent would drive beyond its limit. Supports that have come to rest stick from here on.
     */
    private void release(PathPoint now) {
        boolean changed = stick(now);
        for (int i = 1; i < system.spans; i++) {
            changed |= letGo(now.state, i);
        }
        for (int e = 0; e < 2; e++) {
            changed |= letYield(now.state, e);
        }
        for (int round = 0; changed && round < 2 * system.spans; round++) {
            equilibrium.forget();
            tangent.find(now);
            changed = stick(now);
            if (!changed) {
                tangent.findRatesAlong(now);
                tangent.lookAhead(now, coordinate);
                for (int i = 1; i < system.spans; i++) {
                    changed |= tangent.excessGrows(now, i) && letGo(now.state, i);
                }
            }
        }
    }

    /** Lets what moves the wrong way by the tangent come to rest, support or absorber; returns whether there is any. */
    private boolean stick(PathPoint now) {
        boolean any = false;
        for (int e = 0; e < 2 && !events.passesOver(); e++) {
            InlineAbsorber absorber = system.absorbers[e];
            if (absorber != null && now.state.yielding[e] && !LineForces.isAtStop(now.state, e, absorber)) {
                double on = now.tangent[system.unknowns.extensionIndex(e)] * coordinate.perStep(now.value);
                if (on < -PathTolerances.STILL * system.chord[e == 0 ? 0 : system.spans - 1]) {
                    now.state.yielding[e] = false;
                    any = true;
                }
            }
        }
        for (int i = 1; i < system.spans; i++) {
            int mode = now.state.passage[i];
            if (system.friction[i] > 0 && Math.abs(mode) == 1) {
                double back = mode * now.tangent[system.unknowns.slipIndex(i)] * coordinate.perStep(now.value);
                if (back > PathTolerances.STILL * system.chord[i]) {
                    // Where friction is next to nothing both limits are one, and what cannot run one way runs the
                    // other. A
                    // cable that is straight at a rough support has both limits in one place too, but sticks.
                    boolean holds = system.friction[i] > PathTolerances.HARDLY_ROUGH
                            || system.friction[i] * system.forces.turned(now.state, i) > -PathTolerances.AT_LIMIT;
                    now.state.passage[i] = holds ? LineState.STUCK : -mode;
                    any = true;
                }
            }
        }
        return any;
    }

    /** Lets an absorber yield whose tension stands at what it resists; returns whether it does. */
    private boolean letYield(LineState s, int e) {
        InlineAbsorber absorber = system.absorbers[e];
        if (absorber == null || events.excessOfYield(s, e) <= PathTolerances.AT_LIMIT) {
            return false;
        }
        equilibrium.modes.startYield(s, e, absorber);
        return true;
    }

    /** Lets a support slip that sticks on its limit; returns whether it does. */
    private boolean letGo(LineState s, int i) {
        if (!events.sticks(s, i) || equilibrium.modes.excess(s, i) <= PathTolerances.AT_LIMIT) {
            return false;
        }
        s.passage[i] = system.forces.logRatio(s, i) > 0 ? LineState.RUNS_ON : LineState.RUNS_BACK;
        return true;
    }
}
