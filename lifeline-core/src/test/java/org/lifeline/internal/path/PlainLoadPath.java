package org.lifeline.internal.path;

import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineEnergies;
import org.lifeline.internal.line.LineEnergy;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.internal.numeric.WatchedWork;
import org.lifeline.model.cable.LoadElongation;

/**
 * The load path as plainly as it can be had: a great many short steps, each one Newton's method from the point before it
 * and the modes set right at its end; heat by the trapezoidal rule. No tangents, no events, no foresight, no cold start.
 */
final class PlainLoadPath {
    private final LineModel model;
    private final LineSystem system;
    private final Equilibrium equilibrium;
    private final int load;
    private final double startHeight;
    private final double startEnergy;
    private final LineState state;

    /** Force [N], descent of the load [m], energy that the line has taken up and heat that is part of it [J]. */
    double force;

    double descent;
    double work;
    double heat;

    PlainLoadPath(LineModel model, LineModel.Load load, double startHeight) {
        LineEnergy before = model.energy();
        new LoadPlacement(model).activate(load);
        this.model = model;
        this.system = model.system();
        this.load = load.index();
        this.equilibrium = new Equilibrium(system, WatchedWork.alone());
        this.startHeight = startHeight;
        this.startEnergy = before.line() + before.hanging();
        this.state = model.state().copy();
        if (!equilibrium.solve(state, state.copy())) {
            throw model.failure("line at the start", LineModel.NOTHING_REACHED, equilibrium);
        }
    }

    /** Goes on to a force in steps that grow in proportion to their number. */
    void advance(double target, int steps) {
        double from = force;
        for (int k = 1; k <= steps; k++) {
            double share = (double) k / steps;
            step(from + (target - from) * (from > 0 ? share : share * share));
        }
        LineEnergy e = LineEnergies.of(system, state);
        double height = new LineEnergies(system).height(state, load);
        descent = startHeight - system.pz[0] - height;
        work = e.line() + e.hanging() - state.force[load] * height - startEnergy + heat;
    }

    LineState state() {
        return state;
    }

    private void step(double to) {
        LineState next = state.copy();
        next.force[load] = to;
        if (!equilibrium.solve(next, state)) {
            throw model.failure("line on the plain path", LineModel.NOTHING_REACHED, equilibrium);
        }
        for (int i = 1; i < system.spans; i++) {
            if (system.friction[i] > 0) {
                double moved = next.slip[i] - state.slip[i];
                heat -= 0.5 * state.thermal * moved * (drop(state, i) + drop(next, i));
            }
        }
        state.set(next);
        force = to;
    }

    private double drop(LineState s, int i) {
        LoadElongation law = system.law;
        double a = system.forces.startSideTension(s, i);
        double b = system.forces.endSideTension(s, i);
        return b - a + law.complementaryEnergy(b) - law.complementaryEnergy(a);
    }
}
