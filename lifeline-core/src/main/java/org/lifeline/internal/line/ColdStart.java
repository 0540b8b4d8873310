package org.lifeline.internal.line;

import org.jspecify.annotations.Nullable;
import org.lifeline.internal.catenary.LoadedSpan;

/**
 * First guesses that do not build on the state: for a line between rigid ends, gripped by one load. Newton's method on the
 * whole line needs a few steps from there. Not thread-safe.
 */
final class ColdStart {
    private final LineSystem system;
    private @Nullable LoadedSpan cold;
    private @Nullable FreeLineStart free;

    /** Newton steps taken so far. */
    int iterations;

    ColdStart(LineSystem system) {
        this.system = system;
    }

    /**
     * Replaces the state of a line between rigid anchors, gripped by one load, by one that does not build on it: a single
     * span by the bare solver, a line that runs freely over its intermediate anchors by {@link FreeLineStart}.
     *
     * @return false if the line is another one, or nothing was found; the state is then of no use
     */
    boolean apply(LineState s) {
        int active = onlyLoad(s);
        if (active < 0) {
            return false;
        }
        if (system.spans > 1) {
            FreeLineStart line = freeLine();
            return line.fits(s) && line.apply(s, active);
        }
        if (cold == null) {
            cold = new LoadedSpan();
        }
        double x = system.px[1] - system.px[0];
        double y = system.py[1] - system.py[0];
        cold.run = Math.sqrt(x * x + y * y);
        cold.rise = system.pz[1] - system.pz[0];
        cold.weight = system.weight / s.thermal;
        cold.compliance = system.law.compliance(0);
        cold.before = s.coordinate[active] * s.thermal;
        cold.behind = (system.length[0] - s.coordinate[active]) * s.thermal;
        cold.load = s.force[active];
        if (!cold.solve()) {
            return false;
        }
        s.tension[0] = cold.horizontal * x / cold.run;
        s.tension[1] = cold.horizontal * y / cold.run;
        s.tension[2] = cold.vertical;
        iterations += cold.iterations;
        return true;
    }

    /**
     * The two unknowns of a line that runs freely over its intermediate anchors under one load that grips it.
     *
     * @return ready to be solved; null if the line is another one
     */
    @Nullable
    FreeLineStart freeLine(LineState s) {
        int active = onlyLoad(s);
        if (active < 0 || system.spans == 1 || !freeLine().fits(s)) {
            return null;
        }
        FreeLineStart line = freeLine();
        line.begin(s, active);
        return line;
    }

    private FreeLineStart freeLine() {
        FreeLineStart line = free;
        if (line == null) {
            line = new FreeLineStart(system);
            free = line;
        }
        return line;
    }

    /** The one load that takes part, if it grips a line of one stiffness between rigid ends; otherwise −1. */
    private int onlyLoad(LineState s) {
        if (system.elastic || system.law.pieces() > 1 || system.absorbers[0] != null || system.absorbers[1] != null) {
            return -1;
        }
        int active = -1;
        for (int j = 0; j < system.loads; j++) {
            if (s.active[j]) {
                if (active >= 0 || !system.gripped[j]) {
                    return -1;
                }
                active = j;
            }
        }
        return active;
    }
}
