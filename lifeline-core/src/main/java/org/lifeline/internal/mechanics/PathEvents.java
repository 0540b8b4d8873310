package org.lifeline.internal.mechanics;

import org.lifeline.model.InlineAbsorber;

/** Where on a step of a {@link LoadPath} an anchor begins to slip or an in-line absorber begins to yield. */
final class PathEvents {
    private final LineSystem system;
    private final Equilibrium equilibrium;

    PathEvents(LineSystem system, Equilibrium equilibrium) {
        this.system = system;
        this.equilibrium = equilibrium;
    }

    /** The force at which the first anchor that sticks comes to its limit, by the chord between now and next. */
    double before(LineState now, LineState next, double[] forces) {
        double goal = forces[1];
        double event = goal;
        for (int i = 1; i < system.spans; i++) {
            if (sticks(next, i)) {
                double beyond = equilibrium.excess(next, i);
                if (beyond > LoadPath.EVENT) {
                    double before = Math.min(equilibrium.excess(now, i), 0);
                    double share = -before / (beyond - before);
                    event = Math.min(event, forces[0] + (share + 0.5 * LoadPath.EVENT) * (goal - forces[0]));
                }
            }
        }
        for (int e = 0; e < 2; e++) {
            InlineAbsorber a = system.absorbers[e];
            if (a != null && !next.yielding[e]) {
                double limit = equilibrium.resistance(a, next, e);
                double beyond = system.endTension(next, e) / limit - 1;
                if (beyond > LoadPath.EVENT) {
                    double before = Math.min(system.endTension(now, e) / limit - 1, 0);
                    double share = -before / (beyond - before);
                    event = Math.min(event, forces[0] + (share + 0.5 * LoadPath.EVENT) * (goal - forces[0]));
                }
            }
        }
        return event;
    }

    boolean sticks(LineState s, int i) {
        return !system.clamped[i] && system.friction[i] > 0 && s.passage[i] == LineState.STUCK;
    }
}
