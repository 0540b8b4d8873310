package org.lifeline.internal.line;

import org.jspecify.annotations.Nullable;
import org.lifeline.internal.numeric.WatchedWork;

/**
 * Finds the equilibrium of a {@link LineSystem} near a given state: Newton's method with a line search inside, and
 * outside it the decision which supports hold the cable, which loads rest against a bound and which in-line absorbers
 * yield.
 *
 * <p>Not thread-safe.
 */
public final class Equilibrium {
    /** Scaled residual that counts as converged [-]. */
    public static final double CONVERGED = LineTolerances.CONVERGED;

    public final LineSystem system;
    private @Nullable LineState trial;
    public final LineAssembly assembly;

    /** What changes between two runs of Newton's method. */
    public final ModeChanges modes;

    private final ColdStart cold;
    private final WatchedWork work;

    private final double[] step;

    private @Nullable LineState fresh;
    private @Nullable LineState factored;
    private double enough = LineTolerances.TIGHT;

    /** Newton steps taken so far, over all calls. */
    public int iterations;

    /** Scaled residual of the last call. */
    public double residual;

    /**
     * Equilibria of a system.
     *
     * @param system the system
     * @param work what they are looked for in; every Newton step asks whether it is to go on
     */
    public Equilibrium(LineSystem system, WatchedWork work) {
        this.system = system;
        this.work = work;
        this.assembly = new LineAssembly(system);
        this.modes = new ModeChanges(system);
        this.cold = new ColdStart(system);
        this.step = new double[system.unknowns.count()];
    }

    /**
     * Finds the equilibrium, modes included. Path-dependent parts move on from a reference state: slip counts from
     * there, absorbers do not give back what they had there.
     *
     * @param state the start; replaced by the equilibrium
     * @param past the last state on the path
     * @return false if none was found; the state is then of no use
     */
    public boolean solve(LineState state, LineState past) {
        for (int round = 0; round < LineTolerances.MODE_ROUNDS; round++) {
            if (!newton(state)) {
                return false;
            }
            if (!changeModes(state, past, round)) {
                return true;
            }
        }
        return false;
    }

    /**
     * The same from a state that may be the equilibrium already: one that is to rounding stays as it is.
     *
     * @param state the start; replaced by the equilibrium
     * @param past the last state on the path
     * @return false if none was found; the state is then of no use
     */
    public boolean confirm(LineState state, LineState past) {
        forget();
        if (!assembly.assemble(state, true) || !(assembly.equations.worst < LineTolerances.ROUNDING)) {
            return solve(state, past);
        }
        fresh = state;
        return !changeModes(state, past, 0) || solve(state, past);
    }

    /** Changes the modes that an equilibrium shows to be wrong; returns whether there is one. */
    public boolean changeModes(LineState s, LineState past, int round) {
        boolean changed = modes.change(s, past, round);
        if (changed) {
            forget();
        }
        return changed;
    }

    /**
     * Replaces a state by a first guess that does not build on it, where there is one.
     *
     * @return false if there is none; the state is then of no use
     */
    public boolean startCold(LineState s) {
        boolean found = cold.apply(s);
        iterations += cold.iterations;
        cold.iterations = 0;
        return found;
    }

    /**
     * The two unknowns of a line that runs freely over its intermediate anchors under one load that grips it.
     *
     * @return ready to be solved; null if the line is another one
     */
    public @Nullable FreeLineStart freeLine(LineState s) {
        return cold.freeLine(s);
    }

    /** Newton's method with the modes held. */
    public boolean newton(LineState s) {
        forget();
        if (!assembly.assemble(s, true)) {
            return false;
        }
        boolean fine = assembly.equations.worst < LineTolerances.ROUNDING;
        double earlier = 1;
        LineState beside = null;
        for (int k = 0; k < LineTolerances.NEWTON_STEPS; k++) {
            work.goOn(step.length);
            double merit = assembly.equations.merit;
            residual = assembly.equations.worst;
            if (!assembly.factor(s)) {
                return false;
            }
            for (int i = 0; i < step.length; i++) {
                step[i] = -assembly.equations.residual[i];
            }
            assembly.equations.matrix.solve(step);
            iterations++;
            double relative = relativeStep(s);
            if (!(relative < Double.POSITIVE_INFINITY)) {
                return false;
            }
            if (relative < LineTolerances.LAST_STEP && residual < LineTolerances.NEAR) {
                apply(s, s, 1);
                factored = s;
                return true;
            }
            double factor = Math.min(1, admissible(s));
            if (enough == LineTolerances.LOOSE
                    && factor == 1
                    && residual < LineTolerances.CLOSE
                    && isLast(relative, earlier)) {
                apply(s, s, 1);
                factored = relative < LineTolerances.SAME ? s : null;
                return true;
            }
            if (beside == null) {
                beside = trial(s);
            }
            boolean last = relative < LineTolerances.LAST_STEP && factor == 1;
            while (true) {
                apply(beside, s, factor);
                if (assembly.assemble(beside, true)
                        && (assembly.equations.merit < merit * (1 - LineTolerances.DECREASE * factor)
                                || assembly.equations.worst < LineTolerances.ROUNDING)) {
                    s.setUnknowns(beside);
                    break;
                }
                if (last) {
                    // Rounding keeps the residual from falling any further.
                    return true;
                }
                factor *= 0.5;
                if (factor < LineTolerances.SHORTEST) {
                    return false;
                }
            }
            residual = assembly.equations.worst;
            boolean small = assembly.equations.worst
                    < (enough == LineTolerances.TIGHT ? LineTolerances.ROUNDING : LineTolerances.CONVERGED);
            if (last || (small && (fine || (factor == 1 && isLast(relative, earlier))))) {
                fresh = s;
                return true;
            }
            earlier = relative;
            fine = assembly.equations.worst < LineTolerances.ROUNDING;
        }
        return false;
    }

    /** A state beside another one, with its modes. */
    private LineState trial(LineState s) {
        LineState t = trial;
        if (t == null) {
            t = new LineState(system.spans, system.loads);
            trial = t;
        }
        t.set(s);
        return t;
    }

    /** Tells from a relative step and the one before it whether what is left is small enough. */
    private boolean isLast(double relative, double earlier) {
        double growth = earlier < LineTolerances.FORESEEABLE
                ? Math.max(1, LineTolerances.GROWTH_RESERVE * relative / (earlier * earlier))
                : LineTolerances.MOST_GROWTH;
        return relative * relative * growth < enough;
    }

    /** From now on a solve ends when a relative error of the state of about 1e-11 is left. */
    public void loosen() {
        enough = LineTolerances.LOOSE;
        modes.settleFor(enough);
    }

    /** From now on a solve ends at rounding. */
    public void tighten() {
        enough = LineTolerances.TIGHT;
        modes.settleFor(enough);
    }

    /**
     * Factors the tangent at a state, unless the last solve left it factored, or at least assembled, at that very state.
     *
     * @return false if the state is no good or the tangent singular
     */
    public boolean factorAt(LineState s) {
        if (factored != s) {
            boolean ready = fresh == s || assembly.assemble(s, true);
            forget();
            factored = ready && assembly.factor(s) ? s : null;
        }
        return factored == s;
    }

    /** Forgets what the last solve left: its state was changed, or the matrix was used. */
    public void forget() {
        fresh = null;
        factored = null;
    }

    /** Largest step of a tension relative to that tension, of a length relative to its span. */
    private double relativeStep(LineState s) {
        double worst = 0;
        for (int i = 0; i < system.spans; i++) {
            int b = system.unknowns.tensionIndex(i);
            double x = s.tension[3 * i];
            double y = s.tension[3 * i + 1];
            double z = s.tension[3 * i + 2];
            double t2 = x * x + y * y + z * z;
            double across = system.unknowns.across(step, i);
            double up = step[b + system.unknowns.up];
            double d2 = step[b] * step[b] + across * across + up * up;
            double r = Math.sqrt(d2 / t2);
            if (!(r <= worst)) {
                worst = r;
            }
            if (i > 0) {
                double q = Math.abs(step[system.unknowns.slipIndex(i)]) / system.chord[i];
                worst = Math.max(worst, q);
            }
        }
        for (int j = 0; j < system.loads; j++) {
            if (system.unknowns.loadIndex(j) >= 0) {
                double q = Math.abs(step[system.unknowns.loadIndex(j)]) / system.chord[system.loadSpan[j]];
                worst = Math.max(worst, q);
            }
        }
        return worst;
    }

    /** Largest part of the step that keeps horizontal tensions and lengths of spans above a tenth of what they are. */
    private double admissible(LineState s) {
        double limit = Double.POSITIVE_INFINITY;
        for (int i = 0; i < system.spans; i++) {
            int b = system.unknowns.tensionIndex(i);
            double x = system.unknowns.along(s, i);
            double y = system.unknowns.across(s, i);
            double along = (x * step[b] + y * system.unknowns.across(step, i)) / (x * x + y * y);
            if (along < 0) {
                limit = Math.min(limit, -LineTolerances.MOST_LOSS / along);
            }
            double from = i > 0 ? step[system.unknowns.slipIndex(i)] : 0;
            double to = i + 1 < system.spans ? step[system.unknowns.slipIndex(i + 1)] : 0;
            double have = system.length[i] + s.slip[i + 1] - s.slip[i];
            if (to - from < 0) {
                limit = Math.min(limit, -LineTolerances.MOST_LOSS * have / (to - from));
            }
        }
        return limit;
    }

    private void apply(LineState to, LineState from, double factor) {
        apply(to, from, factor, step);
    }

    /** Adds factor · direction to the unknowns. */
    public void apply(LineState to, LineState from, double factor, double[] direction) {
        for (int i = 0; i < system.spans; i++) {
            int b = system.unknowns.tensionIndex(i);
            double along = factor * direction[b];
            double x = system.unknowns.planar ? system.unknowns.ux * along : along;
            double y = system.unknowns.planar ? system.unknowns.uy * along : factor * direction[b + 1];
            to.tension[3 * i] = from.tension[3 * i] + x;
            to.tension[3 * i + 1] = from.tension[3 * i + 1] + y;
            to.tension[3 * i + 2] = from.tension[3 * i + 2] + factor * direction[b + system.unknowns.up];
            if (i > 0) {
                to.slip[i] = from.slip[i] + factor * direction[system.unknowns.slipIndex(i)];
            }
        }
        for (int j = 0; j < system.loads; j++) {
            int k = system.unknowns.loadIndex(j);
            if (k >= 0) {
                to.coordinate[j] = from.coordinate[j] + factor * direction[k];
            }
        }
        for (int e = 0; e < 2; e++) {
            if (system.absorbers[e] != null) {
                to.extension[e] = from.extension[e] + factor * direction[system.unknowns.extensionIndex(e)];
            }
        }
    }

    /** Adds factor · (b − a) to the unknowns; what is held stays. */
    public void addDifference(LineState to, double factor, LineState a, LineState b) {
        for (int i = 0; i < system.spans; i++) {
            double x = b.tension[3 * i] - a.tension[3 * i];
            double y = b.tension[3 * i + 1] - a.tension[3 * i + 1];
            if (system.unknowns.planar) {
                // Rounding across the plane, which no equation holds down, must not grow from step to step.
                double along = system.unknowns.ux * x + system.unknowns.uy * y;
                x = system.unknowns.ux * along;
                y = system.unknowns.uy * along;
            }
            to.tension[3 * i] += factor * x;
            to.tension[3 * i + 1] += factor * y;
            to.tension[3 * i + 2] += factor * (b.tension[3 * i + 2] - a.tension[3 * i + 2]);
        }
        for (int i = 1; i < system.spans; i++) {
            if (Math.abs(to.passage[i]) == 1) {
                to.slip[i] += factor * (b.slip[i] - a.slip[i]);
            }
        }
        for (int j = 0; j < system.loads; j++) {
            if (to.active[j] && !system.gripped[j]) {
                to.coordinate[j] += factor * (b.coordinate[j] - a.coordinate[j]);
            }
        }
        for (int e = 0; e < 2; e++) {
            to.extension[e] += factor * (b.extension[e] - a.extension[e]);
        }
    }
}
