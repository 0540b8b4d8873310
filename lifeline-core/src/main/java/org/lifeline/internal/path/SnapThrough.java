package org.lifeline.internal.path;

import org.jspecify.annotations.Nullable;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.internal.numeric.RootBracket;
import org.lifeline.internal.numeric.RootBracket.Sample;

/**
 * Passes a place at which the line cannot carry more where it is: the load goes down at a falling force until the line
 * carries again. The descent is prescribed there and the force follows. Not thread-safe.
 */
final class SnapThrough {
    private static final int MODE_ROUNDS = 50;
    private static final int ROOT_STEPS = 100;
    private static final int MOST_FAILURES = 200;

    private final EquilibriumPath path;
    private final LineSystem system;
    private final Equilibrium equilibrium;
    private final int load;
    private final PathEnergy energy;
    private final DescentControl control;
    private boolean happened;
    private double peak;

    SnapThrough(EquilibriumPath path, Equilibrium equilibrium, int load, PathEnergy energy) {
        this.path = path;
        this.equilibrium = equilibrium;
        this.system = equilibrium.system;
        this.load = load;
        this.energy = energy;
        this.control = new DescentControl(system, equilibrium, load);
    }

    boolean happened() {
        return happened;
    }

    /** Largest force at which the line has given way [N]; 0 if it never did. */
    double peak() {
        return peak;
    }

    /**
     * Goes down until the line carries more than before. A path that has no force yet begins by its descent in the same way.
     *
     * @return true if the end of the path was met on the way
     */
    boolean pass(EquilibriumPath.@Nullable End end, double watchFrom) {
        happened = true;
        path.forgetBeyond();
        peak = Math.max(peak, path.now().value);
        double span = system.chord[system.loadSpan[load]];
        double drop = PathTolerances.FIRST_DROP * span;
        int failures = 0;
        while (path.now().value <= peak * PathTolerances.CARRIES_AGAIN) {
            double descent = path.now().descent;
            if (!descend(descent + drop)) {
                drop *= PathTolerances.AFTER_LOSS;
                if (++failures > MOST_FAILURES
                        || drop < PathTolerances.SHORTEST_DROP * span
                        || descent > PathTolerances.BOTTOMLESS * span) {
                    throw path.failure(
                            peak > 0
                                    ? "line that gives way under the arrest load"
                                    : "line that does not take up the first of a load",
                            peak);
                }
                continue;
            }
            if (end != null && peak > watchFrom && end.value(path.next()) < 0) {
                findEnd(end, span);
                return true;
            }
            path.accept();
            drop = Math.min(PathTolerances.DROP_GROWTH * drop, PathTolerances.LONGEST_DROP * span);
        }
        return false;
    }

    private void findEnd(EquilibriumPath.End end, double span) {
        RootBracket bracket = new RootBracket();
        bracket.begin(sample(path.now(), end), sample(path.next(), end));
        for (int k = 0; k < ROOT_STEPS && bracket.width() > PathTolerances.SHORTEST_DROP * span; k++) {
            double to = bracket.next();
            boolean found = descend(to);
            double value = found ? end.value(path.next()) : -bracket.low().value();
            bracket.add(new Sample(to, value, Double.NaN), value < 0);
            if (value >= 0) {
                path.accept();
            }
        }
    }

    private static Sample sample(PathPoint point, EquilibriumPath.End end) {
        return new Sample(point.descent, end.value(point), Double.NaN);
    }

    /** Takes one step into the next point, to a descent; the force is found with the state. */
    private boolean descend(double descent) {
        PathPoint now = path.now();
        PathPoint next = path.next();
        next.state.set(now.state);
        for (int round = 0; round < MODE_ROUNDS; round++) {
            if (!control.solve(next.state, energy.height(descent))) {
                return false;
            }
            if (!equilibrium.changeModes(next.state, now.state, round)) {
                path.place(next, next.state.force[load]);
                next.loadWork = now.loadWork;
                next.frictionHeat = now.frictionHeat;
                path.completeJump(next, now.state, now.descent);
                return true;
            }
        }
        return false;
    }
}
