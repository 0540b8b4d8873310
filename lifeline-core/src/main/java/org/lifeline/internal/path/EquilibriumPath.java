package org.lifeline.internal.path;

import org.jspecify.annotations.Nullable;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.internal.numeric.Elementary;

/**
 * The path of a line's equilibria while one {@link PathParameter} grows: the follower of every change of load or
 * temperature.
 *
 * <p>Where no support has friction and no two absorbers remember, the state does not depend on the way to it, and a step
 * may be as long as Newton's method carries. Elsewhere the path is followed: steps end at events ({@link PathEvents}),
 * and stay so short that for a load the energy taken up agrees with its work ({@link PathEnergy}), and that for a
 * temperature tensions and slips agree with the trapezoidal rule over their rates.
 *
 * <p>Not thread-safe.
 */
final class EquilibriumPath {
    /** A quantity that starts at or above zero and at whose first root the path ends. */
    interface End {
        double value(PathPoint point);

        /** Its derivative by the parameter; NaN if unknown. */
        double slope(PathPoint point);
    }

    private final LineModel model;
    private final LineSystem system;
    private final Equilibrium equilibrium;
    private final boolean followed;

    /** True for a load at a support that does not yield under it: the line stays as it is, whatever the force. */
    private final boolean still;

    private final PathCoordinate coordinate;
    private final PathParameter parameter;
    private final PathTangent tangent;
    private final PathStep stepper;
    private final @Nullable PathForecast forecast;
    private final @Nullable PathEnergy energy;
    private final @Nullable SnapThrough snap;

    /** The energy against which errors of the path are measured [J], and how much of what comes a step may have as error [-]. */
    private final double energyScale;

    private final double ofWhatComes;

    private double reach = PathTolerances.LONGEST_STEP;
    private boolean jumped;
    private PathPoint now;
    private PathPoint next;
    private PathPoint before = PathPoint.NONE;

    /** A point beyond the current one, if the last step overshot. */
    private PathPoint beyond = PathPoint.NONE;

    private boolean overshot;

    /** What the path goes to [unit of the parameter]; 0 before it goes anywhere. */
    private double target;

    private int tried;

    /**
     * Where a path of a load starts, and how exactly it is followed.
     *
     * @param datum see {@link PathEnergy.Datum}
     * @param energy the energy against which errors are measured [J]
     * @param ofWhatComes share that the error of a step may have of what the line will have taken up in the end [-]; 0 where what has
     *     slipped remains, and under the next change must be what it would be after a hundred small ones
     */
    record Scale(PathEnergy.Datum datum, double energy, double ofWhatComes) {}

    /**
     * A path that starts at the model's current state.
     *
     * @param model the line; follows the path when it is handed its state
     * @param parameter what grows
     * @param scale for the path of a load
     */
    EquilibriumPath(LineModel model, PathParameter parameter, @Nullable Scale scale) {
        this.model = model;
        this.system = model.system();
        this.parameter = parameter;
        this.equilibrium = new Equilibrium(system, model.work());
        this.still = isStill(system, parameter.load());
        this.followed = remembers(system) && !still;
        this.now = new PathPoint(system, followed);
        this.next = new PathPoint(system, followed);
        now.state.set(model.state());
        next.state.set(now.state);
        // Where the way matters one more step counts, even at rounding: without it soft posts were not pulled over.
        boolean found =
                followed ? equilibrium.solve(now.state, next.state) : equilibrium.confirm(now.state, next.state);
        if (!found) {
            throw model.failure("line at the start of a change", LineModel.NOTHING_REACHED, equilibrium);
        }
        this.coordinate = new PathCoordinate(parameter.scale(system, now.state));
        this.tangent = new PathTangent(equilibrium, parameter, followed);
        this.stepper = new PathStep(this, equilibrium, parameter, tangent);
        this.energyScale = scale == null ? 0 : scale.energy;
        this.ofWhatComes = scale == null ? 0 : scale.ofWhatComes;
        if (scale == null) {
            energy = null;
            snap = null;
        } else {
            energy = new PathEnergy(system, parameter.load(), followed, coordinate, scale.datum);
            snap = new SnapThrough(this, equilibrium, parameter.load(), energy);
        }
        place(now, parameter.value(now.state));
        findRates(now);
        this.forecast = PathForecast.of(this, equilibrium);
    }

    /**
     * Tells whether the state of a line depends on the way to it: where a support has friction; and where in-line
     * absorbers do not give back what they had, while the tension at an end can fall again although the load grows, because
     * of another absorber or another load.
     */
    static boolean remembers(LineSystem system) {
        for (int i = 1; i < system.spans; i++) {
            if (system.friction[i] > 0 && !system.clamped[i]) {
                return true;
            }
        }
        boolean first = system.absorbers[0] != null;
        boolean second = system.absorbers[1] != null;
        return (first && second) || ((first || second) && (system.loads > 1 || system.pullsOnSupports()));
    }

    private static boolean isStill(LineSystem system, int load) {
        int support = load < 0 ? -1 : system.pulledSupport[load];
        return support >= 0 && system.compliance[3 * support + 2] == 0;
    }

    boolean isFollowed() {
        return followed;
    }

    PathCoordinate coordinate() {
        return coordinate;
    }

    /** What finds the equilibria of the path, with the work that they took. */
    Equilibrium equilibrium() {
        return equilibrium;
    }

    /** Steps tried so far, by the path and by the search for its end; those among them that were too long too. */
    int tried() {
        return tried;
    }

    PathPoint now() {
        return now;
    }

    PathPoint next() {
        return next;
    }

    double energyScale() {
        return energyScale;
    }

    /** Tells whether the path jumped, or the line gave way at a force that fell while the load went down. */
    boolean jumped() {
        return jumped || (snap != null && snap.happened());
    }

    /** Largest value so far: above that of the current point only while the line gives way. */
    double peak() {
        return snap == null ? now.value : Math.max(now.value, snap.peak());
    }

    /** Sets the value of a point. */
    void place(PathPoint point, double value) {
        point.value = value;
        point.w = coordinate.w(value);
    }

    /** Completes a point at which an equilibrium was found, reached in one step from the current one. */
    void complete(PathPoint point) {
        findRates(point);
        if (energy != null) {
            energy.accumulate(now, point, before);
        } else if (followed) {
            point.error = trapezoidalError(point);
        }
    }

    /** Completes a point that was reached from another state at the same value. */
    void completeJump(PathPoint point, LineState from, double descent) {
        findRates(point);
        if (energy != null) {
            energy.addJump(from, point, point.descent - descent);
        }
    }

    private void findRates(PathPoint point) {
        if (energy != null) {
            energy.find(point);
        }
        point.hasTangent = false;
        if (followed) {
            tangent.findRates(point);
        }
    }

    /**
     * Goes on to a value, unless the end of the path comes first.
     *
     * @param target value to go to, not lower than the current one
     * @param end where the path ends; null if nowhere
     * @param watchFrom value below which the end is not looked for
     * @return true if the end was met
     */
    boolean advance(double target, @Nullable End end, double watchFrom) {
        this.target = target;
        if (end != null && forecast != null && meets(forecast, end, watchFrom)) {
            return published(true);
        }
        int steps = 0;
        int failures = 0;
        int crowd = 0;
        while (now.value < target) {
            // A line of hardly any weight gives most of its way under a load that is as small.
            double least = PathTolerances.SHORTEST_STEP * Math.min(target, Math.max(now.value, coordinate.scale()));
            double to = goal(target, least, failures);
            settleFor(to == target);
            double reached = step(to);
            boolean lost = Double.isNaN(reached);
            double error = lost || !followed ? 0 : error(steps);
            if (lost) {
                failures++;
                reach = PathTolerances.AFTER_LOSS * coordinate.step(now.value, to - now.value);
                if (failures > PathTolerances.MOST_FAILURES || to - now.value < 4 * least) {
                    if (snap == null) {
                        throw failure(now.value / target);
                    }
                    if (snap.pass(end, watchFrom)) {
                        return published(true);
                    }
                    failures = 0;
                    reach = coordinate.step(now.value, PathTolerances.LEAST_VALUE * target);
                }
                continue;
            }
            if (error > 1 && reached - now.value > 10 * least) {
                failures++;
                reach = shrink(error) * coordinate.step(now.value, reached - now.value);
                keepBeyond();
                continue;
            }
            // A step that cannot be made short enough is a jump, as when a load leaves a support with friction.
            jumped |= followed && error > 1;
            if (end != null && reached > watchFrom && end.value(next) < 0) {
                settleFor(true);
                new EndSearch(this, end).find(watchFrom);
                return published(true);
            }
            failures = 0;
            if (followed) {
                double done = coordinate.step(now.value, reached - now.value);
                double grown = done
                        * (error > 0
                                ? Math.min(PathTolerances.MOST_GROWTH, shrink(error))
                                : PathTolerances.MOST_GROWTH);
                // After an event there is no third point yet, so that steps must be shorter.
                double afterEvent = Math.max(PathTolerances.AFTER_EVENT * reach, PathTolerances.LEAST_AFTER_EVENT);
                reach = Math.min(PathTolerances.LONGEST_STEP, reached < to ? afterEvent : grown);
            }
            crowd = reached - now.value < PathTolerances.CROWDED * target ? crowd + 1 : 0;
            stepper.passOver(crowd > PathTolerances.CROWD);
            accept();
            overshot = false;
            if (++steps > PathTolerances.MOST_STEPS) {
                throw failure(now.value / target);
            }
        }
        return published(false);
    }

    /** Goes to the end by way of where it is foreseen; false if it was not met there, and the path goes on from where it is. */
    private boolean meets(PathForecast foreseen, End end, double watchFrom) {
        double aim = foreseen.end(now, target, end, watchFrom);
        return aim > now.value && aim < target && new EndSearch(this, end).findNear(aim, target, watchFrom);
    }

    /** A step whose end is not looked at itself, but other states are foreseen from it. */
    double stepRoughly(double to) {
        equilibrium.loosen();
        double reached = step(to);
        equilibrium.tighten();
        return reached;
    }

    /** Where the next step goes to. */
    private double goal(double target, double least, int failures) {
        double to = target;
        if (followed) {
            double rise = Math.max(reach, coordinate.step(now.value, least));
            to = Math.min(target, coordinate.beyond(now.value, rise));
        } else if (failures > 0) {
            to = now.value + Elementary.power(PathTolerances.AFTER_LOSS, failures) * (target - now.value);
        }
        return target - to < PathTolerances.SAME_VALUE * target ? target : to;
    }

    /** Asks for states to rounding, where somebody looks at them, or for as much as the way needs. */
    private void settleFor(boolean view) {
        if (view || !followed) {
            equilibrium.tighten();
        } else {
            equilibrium.loosen();
        }
    }

    /** Error of the step to the next point over what is allowed [-]. */
    private double error(int steps) {
        double patience = Elementary.power(4, Math.floorDiv(steps, PathTolerances.STEPS_PER_TOLERANCE));
        if (energy == null) {
            return next.error / (PathTolerances.STATE * patience);
        }
        double work = Math.abs(PathEnergy.taken(next) - PathEnergy.taken(now));
        // Rounding hides the error of a step, but it does not make a long step right.
        boolean isShort = coordinate.step(now.value, next.value - now.value) < PathTolerances.SHORT_STEP;
        double tolerance = PathTolerances.WORK * work
                + Math.max(PathTolerances.SMALLEST_WORK * energyScale, ofWhatComes * Math.min(energyScale, expected()))
                + (isShort ? PathTolerances.ENERGY_ROUNDING * next.energySize : 0);
        return PathEnergy.error(now, next) / (tolerance * patience);
    }

    /**
     * What the line will have taken up when the force is where the path goes to, by what it has taken up so far, or less [J].
     * A cable that hangs by its own tension takes up as the square of the force, one whose tension the load makes as its
     * power of 4/3; taken is the latter.
     */
    private double expected() {
        return Math.abs(PathEnergy.taken(next))
                * Elementary.power(target / next.value, PathTolerances.LEAST_POWER_OF_WORK);
    }

    /** How far tensions (relative) and slips (over chords) are from the trapezoidal rule over their rates by w [-]. */
    private double trapezoidalError(PathPoint point) {
        double half = 0.5 * coordinate.distance(now, point.value, point.w);
        double a = half * coordinate.perW(now);
        double b = half * coordinate.perW(next);
        double worst = 0;
        for (int i = 0; i < system.spans; i++) {
            int k = system.unknowns.tensionIndex(i);
            double x = system.unknowns.along(point.state, i) - system.unknowns.along(now.state, i);
            double miss = x - a * now.tangent[k] - b * point.tangent[k];
            worst = Math.max(worst, Math.abs(miss) / system.forces.endSideTension(point.state, i));
            if (i > 0) {
                int q = system.unknowns.slipIndex(i);
                double slip = point.state.slip[i] - now.state.slip[i];
                double missSlip = slip - a * now.tangent[q] - b * point.tangent[q];
                worst = Math.max(worst, Math.abs(missSlip) / system.chord[i]);
            }
        }
        point.order = PathQuadrature.ORDER_OF_TRAPEZOID;
        return worst;
    }

    /** Factor on a step that would bring its error to what is allowed, with some to spare. */
    private double shrink(double error) {
        return Math.max(
                PathTolerances.LEAST_SHRINK, PathTolerances.SHRINK * Elementary.power(error, -1.0 / next.order));
    }

    /** Takes one step into the next point; returns the value reached, or NaN if no equilibrium was found. */
    double step(double to) {
        tried++;
        if (still) {
            next.set(now);
            next.state.force[parameter.load()] = to;
            place(next, to);
            return to;
        }
        return stepper.take(overshot ? beyond : before, to);
    }

    /** The next point becomes the current one; a point beyond it is kept. */
    void accept() {
        PathPoint t = before;
        before = now;
        now = next;
        next = reusable(t);
    }

    private PathPoint reusable(PathPoint point) {
        return point == PathPoint.NONE ? new PathPoint(system, followed) : point;
    }

    /** The next point is kept as one beyond the current one. */
    void keepBeyond() {
        PathPoint t = next;
        next = reusable(beyond);
        beyond = t;
        overshot = true;
    }

    /** Forgets a point beyond the current one. */
    void forgetBeyond() {
        overshot = false;
    }

    /** Derivative of an end at a point; NaN if unknown. */
    double slope(PathPoint point, End end) {
        if (!followed) {
            if (!point.hasTangent) {
                tangent.find(point);
            }
            tangent.findRatesAlong(point);
        }
        return point.hasTangent ? end.slope(point) : Double.NaN;
    }

    /**
     * Passes a place at which the path jumps over its end; true if it was met on the way. A line that stays as it is has
     * none: what looks like one is a connection whose extension runs far while its force hardly rises.
     */
    boolean passJump(End end, double watchFrom) {
        return snap != null && !still && snap.pass(end, watchFrom);
    }

    NoEquilibriumException failure(double share) {
        publish();
        return reached("line under a growing load or at another temperature", share);
    }

    /** A failure while the line gives way, at the point that was reached; the value is the largest so far. */
    NoEquilibriumException failure(String what, double value) {
        publish();
        return reached(what, target > 0 ? Math.min(1, value / target) : 0);
    }

    private NoEquilibriumException reached(String what, double share) {
        double load = parameter.load() >= 0 ? peak() : Double.NaN;
        return model.failure(what, new NoEquilibriumException.Reached(share, load), equilibrium);
    }

    private boolean published(boolean met) {
        publish();
        return met;
    }

    /** Hands the current point to the model. */
    private void publish() {
        model.take(now.state, equilibrium);
    }
}
