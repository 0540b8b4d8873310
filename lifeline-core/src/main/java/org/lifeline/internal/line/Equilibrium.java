package org.lifeline.internal.line;

import org.jspecify.annotations.Nullable;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.LoadingCurve;

/**
 * Finds the equilibrium of a {@link LineSystem} near a given state: Newton's method with a line search inside, and
 * outside it the decision which supports hold the cable, which loads rest against a bound and which in-line absorbers
 * yield.
 *
 * <p>Not thread-safe.
 */
public final class Equilibrium {
    private static final int NEWTON_STEPS = 60;
    private static final int MODE_ROUNDS = 200;
    private static final int PATIENCE = 60;
    private static final double STEP_TOLERANCE = 1e-10;
    private static final double ROUNDING = 4e-15;

    /** Residual from which a last step of less than {@link #STEP_TOLERANCE} leads to rounding. */
    private static final double NEAR = 1e-13;

    /** Residual that counts as converged when it cannot be lowered any further. */
    public static final double TOLERANCE = 1e-11;

    /** Relative error of a state, as foreseen from the square of the last step, at which Newton's method ends. */
    private static final double TIGHT = 1e-15;

    /** How far an anchor that slips may have moved the wrong way before it sticks, in chords. */
    private static final double STILL = 1e-13;

    /** The same on the way along a path, where what follows does not build on the last digits. */
    private static final double LOOSE = 1e-11;

    /** Relative step so small that the tangent before it serves behind it. */
    private static final double SAME = 1e-6;

    /** Residual before a step from which its square is trusted to be the next one. */
    private static final double CLOSE = 1e-4;

    public final LineSystem system;
    private @Nullable LineState trial;
    public final LineAssembly assembly;
    private final double[] step;

    private @Nullable LoadedSpan cold;
    private @Nullable LineState fresh;
    private @Nullable LineState factored;
    private double enough = TIGHT;

    /** Newton steps taken so far, over all calls. */
    public int iterations;

    /** Scaled residual of the last call. */
    public double residual;

    public Equilibrium(LineSystem system) {
        this.system = system;
        this.assembly = new LineAssembly(system);
        this.step = new double[system.unknowns()];
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
        for (int round = 0; round < MODE_ROUNDS; round++) {
            if (!newton(state)) {
                return false;
            }
            if (!changeModes(state, past, round)) {
                return true;
            }
        }
        return false;
    }

    /** Newton's method with the modes held. */
    public boolean newton(LineState s) {
        spoil();
        if (!assembly.assemble(s, true)) {
            return false;
        }
        boolean fine = assembly.worst < ROUNDING;
        double earlier = 1;
        LineState beside = null;
        for (int k = 0; k < NEWTON_STEPS; k++) {
            double merit = assembly.merit;
            residual = assembly.worst;
            if (!assembly.factor(s)) {
                return fine;
            }
            for (int i = 0; i < step.length; i++) {
                step[i] = -assembly.residual[i];
            }
            assembly.matrix.solve(step);
            iterations++;
            double relative = relativeStep(s);
            if (!(relative < Double.POSITIVE_INFINITY)) {
                return false;
            }
            if (relative < STEP_TOLERANCE && residual < NEAR) {
                apply(s, s, 1);
                factored = s;
                return true;
            }
            double factor = Math.min(1, admissible(s));
            if (enough == LOOSE && factor == 1 && residual < CLOSE && isLast(relative, earlier)) {
                apply(s, s, 1);
                factored = relative < SAME ? s : null;
                return true;
            }
            if (beside == null) {
                beside = trial(s);
            }
            double before = merit;
            boolean last = relative < STEP_TOLERANCE && factor == 1;
            while (true) {
                apply(beside, s, factor);
                boolean valid = assembly.assemble(beside, true);
                if (valid && (assembly.merit < before * (1 - 1e-4 * factor) || assembly.worst < ROUNDING)) {
                    s.setUnknowns(beside);
                    break;
                }
                if (last || (valid && residual < TOLERANCE && factor < 0.2)) {
                    // Rounding keeps the residual from falling any further: the better of the two states stands.
                    if (valid && assembly.merit < before) {
                        s.setUnknowns(beside);
                    }
                    residual = Math.min(residual, assembly.worst);
                    return residual < TOLERANCE || last;
                }
                factor *= 0.5;
                if (factor < 1e-7) {
                    return false;
                }
            }
            residual = assembly.worst;
            boolean small = assembly.worst < (enough == TIGHT ? ROUNDING : TOLERANCE);
            if (last || (small && (fine || (factor == 1 && isLast(relative, earlier))))) {
                fresh = s;
                return true;
            }
            earlier = relative;
            fine = assembly.worst < ROUNDING;
        }
        return residual < TOLERANCE;
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
        double growth = earlier < 0.1 ? Math.max(1, 3 * relative / (earlier * earlier)) : 100;
        return relative * relative * growth < enough;
    }

    /** From now on a solve ends when a relative error of the state of about 1e-11 is left. */
    public void loosen() {
        enough = LOOSE;
    }

    /** From now on a solve ends at rounding. */
    public void tighten() {
        enough = TIGHT;
    }

    /**
     * Factors the tangent at a state, unless the last solve left it factored, or at least assembled, at that very state.
     *
     * @return false if the state is no good or the tangent singular
     */
    public boolean factorAt(LineState s) {
        if (factored != s) {
            boolean ready = fresh == s || assembly.assemble(s, true);
            spoil();
            factored = ready && assembly.factor(s) ? s : null;
        }
        return factored == s;
    }

    /** Forgets what the last solve left: its state was changed, or the matrix was used. */
    public void spoil() {
        fresh = null;
        factored = null;
    }

    /**
     * Replaces the state of a line between rigid anchors, gripped by one load, by one that does not build on it: a single
     * span by the bare solver, a line that runs freely over its intermediate anchors by {@link FreeLineStart}.
     *
     * @return false if the line is another one, or nothing was found; the state is then of no use
     */
    public boolean startCold(LineState s) {
        if (system.elastic || system.law.pieces() > 1 || system.absorbers[0] != null || system.absorbers[1] != null) {
            return false;
        }
        int active = -1;
        for (int j = 0; j < system.loads; j++) {
            if (s.active[j]) {
                if (active >= 0 || !system.gripped[j]) {
                    return false;
                }
                active = j;
            }
        }
        if (active < 0) {
            return false;
        }
        if (system.spans > 1) {
            FreeLineStart start = new FreeLineStart(system);
            return start.fits(s) && start.apply(s, active);
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

    /** Largest step of a tension relative to that tension, of a length relative to its span. */
    private double relativeStep(LineState s) {
        double worst = 0;
        for (int i = 0; i < system.spans; i++) {
            int b = system.tensionIndex(i);
            double x = s.tension[3 * i];
            double y = s.tension[3 * i + 1];
            double z = s.tension[3 * i + 2];
            double t2 = x * x + y * y + z * z;
            double across = system.across(step, i);
            double up = step[b + system.up];
            double d2 = step[b] * step[b] + across * across + up * up;
            double r = Math.sqrt(d2 / t2);
            if (!(r <= worst)) {
                worst = r;
            }
            if (i > 0) {
                double q = Math.abs(step[system.slipIndex(i)]) / system.chord[i];
                worst = Math.max(worst, q);
            }
        }
        for (int j = 0; j < system.loads; j++) {
            if (system.loadIndex(j) >= 0) {
                double q = Math.abs(step[system.loadIndex(j)]) / system.chord[system.loadSpan[j]];
                worst = Math.max(worst, q);
            }
        }
        return worst;
    }

    /** Largest part of the step that keeps horizontal tensions and lengths of spans above a tenth of what they are. */
    private double admissible(LineState s) {
        double limit = Double.POSITIVE_INFINITY;
        for (int i = 0; i < system.spans; i++) {
            int b = system.tensionIndex(i);
            double x = system.along(s, i);
            double y = system.across(s, i);
            double along = (x * step[b] + y * system.across(step, i)) / (x * x + y * y);
            if (along < 0) {
                limit = Math.min(limit, -0.9 / along);
            }
            double from = i > 0 ? step[system.slipIndex(i)] : 0;
            double to = i + 1 < system.spans ? step[system.slipIndex(i + 1)] : 0;
            double have = system.length[i] + s.slip[i + 1] - s.slip[i];
            if (to - from < 0) {
                limit = Math.min(limit, -0.9 * have / (to - from));
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
            int b = system.tensionIndex(i);
            double along = factor * direction[b];
            double x = system.planar ? system.ux * along : along;
            double y = system.planar ? system.uy * along : factor * direction[b + 1];
            to.tension[3 * i] = from.tension[3 * i] + x;
            to.tension[3 * i + 1] = from.tension[3 * i + 1] + y;
            to.tension[3 * i + 2] = from.tension[3 * i + 2] + factor * direction[b + system.up];
            if (i > 0) {
                to.slip[i] = from.slip[i] + factor * direction[system.slipIndex(i)];
            }
        }
        for (int j = 0; j < system.loads; j++) {
            int k = system.loadIndex(j);
            if (k >= 0) {
                to.coordinate[j] = from.coordinate[j] + factor * direction[k];
            }
        }
        for (int e = 0; e < 2; e++) {
            if (system.absorbers[e] != null) {
                to.extension[e] = from.extension[e] + factor * direction[system.extensionIndex(e)];
            }
        }
    }

    /** Adds factor · (b − a) to the unknowns; what is held stays. */
    public void addDifference(LineState to, double factor, LineState a, LineState b) {
        for (int i = 0; i < system.spans; i++) {
            double x = b.tension[3 * i] - a.tension[3 * i];
            double y = b.tension[3 * i + 1] - a.tension[3 * i + 1];
            if (system.planar) {
                // Rounding across the plane, which no equation holds down, must not grow from step to step.
                double along = system.ux * x + system.uy * y;
                x = system.ux * along;
                y = system.uy * along;
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

    /**
     * Changes the modes that an equilibrium shows to be wrong.
     *
     * @return true if one was changed
     */
    public boolean changeModes(LineState s, LineState past, int round) {
        boolean changed = false;
        for (int i = 1; i < system.spans; i++) {
            if (!system.clamped[i]) {
                changed |= changeJam(s, i) || (system.friction[i] > 0 && changePassage(s, past, i, round));
            }
        }
        for (int j = 0; j < system.loads; j++) {
            if (s.active[j] && !system.gripped[j] && s.mode[j] != LineState.FOLLOWS) {
                changed |= changeLoad(s, j, round);
            }
        }
        for (int e = 0; e < 2; e++) {
            InlineAbsorber a = system.absorbers[e];
            if (a != null) {
                changed |= changeAbsorber(s, past, e, a);
            }
        }
        if (changed) {
            spoil();
        }
        return changed;
    }

    /** How far the log of a support's tension ratio is beyond its limit, positive when it is. */
    public double excess(LineState s, int support) {
        return Math.abs(system.logRatio(s, support)) - system.friction[support] * system.turned(s, support);
    }

    /** A gripped load cannot be drawn over a support: the cable jams there until it is pulled the other way. */
    private boolean changeJam(LineState s, int i) {
        int mode = s.passage[i];
        if (Math.abs(mode) == 2) {
            double limit = system.friction[i] == 0 ? 0 : system.friction[i] * system.turned(s, i);
            double ratio = system.logRatio(s, i);
            boolean away = mode == LineState.JAMMED_BACK ? ratio > limit + 1e-10 : ratio < -limit - 1e-10;
            if (away) {
                s.passage[i] = mode == LineState.JAMMED_BACK || system.friction[i] == 0
                        ? LineState.RUNS_ON
                        : LineState.RUNS_BACK;
            }
            return away;
        }
        double most = system.mostSlip(s, i);
        if (s.slip[i] > most) {
            s.passage[i] = LineState.JAMMED_BACK;
            s.slip[i] = most;
            return true;
        }
        double least = system.leastSlip(s, i);
        if (s.slip[i] < least) {
            s.passage[i] = LineState.JAMMED_ON;
            s.slip[i] = least;
            return true;
        }
        return false;
    }

    private boolean changePassage(LineState s, LineState past, int i, int round) {
        int mode = s.passage[i];
        if (Math.abs(mode) == 2) {
            return false;
        }
        if (mode == LineState.STUCK) {
            double slack = 1e-10 * (1 + round / 20);
            if (excess(s, i) > slack) {
                s.passage[i] = system.logRatio(s, i) > 0 ? LineState.RUNS_ON : LineState.RUNS_BACK;
                return true;
            }
            return false;
        }
        // Running on means that cable moves toward the end: the slip coordinate falls.
        double moved = (s.slip[i] - past.slip[i]) * mode;
        if (moved > Math.max(STILL, 10 * enough) * system.chord[i] * (1 + round)) {
            s.passage[i] = LineState.STUCK;
            s.slip[i] = past.slip[i];
            return true;
        }
        return false;
    }

    private boolean changeLoad(LineState s, int j, int round) {
        double low = system.bound(s, j, false);
        double high = system.bound(s, j, true);
        switch (s.mode[j]) {
            case LineState.RUNNING -> {
                if (s.coordinate[j] < low) {
                    place(s, j, LineState.AT_START, low);
                    return true;
                }
                if (s.coordinate[j] > high) {
                    place(s, j, LineState.AT_END, high);
                    return true;
                }
                return false;
            }
            case LineState.AT_START, LineState.AT_END -> {
                if (round > PATIENCE) {
                    // At an anchor with friction a load may fit neither on the support nor just beside it, since the
                    // cable turns by another angle in the two places; then it stays on the support.
                    return false;
                }
                boolean atStart = s.mode[j] == LineState.AT_START;
                double pull = system.pull(s, j);
                double slack = 1e-9 * (system.beforeLoad(s, j) + s.force[j]);
                if (atStart ? pull < -Math.abs(slack) : pull > Math.abs(slack)) {
                    int rest = system.restSupport(s, j);
                    if (atStart && rest >= 0) {
                        s.tension[3 * system.loadSpan[j] + 2] -= system.groupForce(s, j);
                    }
                    if (rest > 0 && rest < system.spans && system.friction[rest] > 0 && !system.clamped[rest]) {
                        // The cable now turns by another angle at the anchor: it holds there until the new limit.
                        s.passage[rest] = LineState.STUCK;
                    }
                    s.mode[j] = LineState.RUNNING;
                    return true;
                }
                return false;
            }
            default -> {
                return false;
            }
        }
    }

    private void place(LineState s, int j, int mode, double coordinate) {
        s.mode[j] = mode;
        s.coordinate[j] = coordinate;
        for (int k = j + 1; k < system.firstLoad[system.loadSpan[j] + 1]; k++) {
            if (s.active[k] && s.mode[k] == LineState.FOLLOWS) {
                s.coordinate[k] = coordinate;
            }
        }
        if (mode == LineState.AT_START && system.restSupport(s, j) >= 0) {
            s.tension[3 * system.loadSpan[j] + 2] += system.groupForce(s, j);
        }
    }

    /** Takes over the extensions to which in-line absorbers that yield have come; beyond the stop they come back. */
    public void keepYield(LineState s, LineState past) {
        for (int e = 0; e < 2; e++) {
            InlineAbsorber a = system.absorbers[e];
            if (a != null && s.yielding[e]) {
                double most = a.curve().maximumExtension();
                s.yielded[e] = Math.max(past.yielded[e], Math.min(s.extension[e], most));
            }
        }
    }

    private boolean changeAbsorber(LineState s, LineState past, int e, InlineAbsorber a) {
        LoadingCurve curve = a.curve();
        int stop = curve.pieces() - 1;
        int piece = s.piece[e];
        double tension = system.endTension(s, e);
        if (!s.yielding[e]) {
            if (tension <= resistance(a, s, e) * (1 + 1e-12)) {
                return false;
            }
            s.yielding[e] = true;
            s.piece[e] = Math.max(curve.firstYieldPiece(), curve.piece(s.yielded[e]));
            double least = Math.max(s.yielded[e], curve.pieceStart(s.piece[e]));
            s.extension[e] = rigidStop(s, e, a) ? least : Math.max(s.extension[e], least);
            return true;
        }
        if (piece == stop && comesBack(s, e, a, tension)) {
            boolean torn = past.yielded[e] >= curve.maximumExtension() || piece == curve.firstYieldPiece();
            s.yielding[e] = !torn;
            s.piece[e] = torn ? piece : piece - 1;
            s.yielded[e] = past.yielded[e];
            return true;
        }
        if (piece < stop && s.extension[e] > curve.pieceStart(piece + 1)) {
            s.piece[e] = piece + 1;
            s.extension[e] = rigidStop(s, e, a) ? curve.maximumExtension() : s.extension[e];
            return true;
        }
        if (piece < stop && s.extension[e] < past.extension[e] - 1e-13) {
            s.yielding[e] = false;
            s.yielded[e] = past.yielded[e];
            s.extension[e] = past.extension[e];
            return true;
        }
        if (piece < stop && piece > curve.firstYieldPiece() && s.extension[e] < curve.pieceStart(piece)) {
            s.piece[e] = piece - 1;
            return true;
        }
        keepYield(s, past);
        return false;
    }

    private static boolean rigidStop(LineState s, int e, InlineAbsorber a) {
        return LineSystem.isAtStop(s, e, a) && Double.isInfinite(a.curve().stopStiffness());
    }

    /** Tells whether an absorber at its stop has come off it again. */
    private static boolean comesBack(LineState s, int e, InlineAbsorber a, double tension) {
        return rigidStop(s, e, a)
                ? tension < a.curve().lastForce() * (1 - 1e-12)
                : s.extension[e] < a.curve().maximumExtension();
    }

    /** Tension at which an in-line absorber yields further. */
    public double resistance(InlineAbsorber a, LineState s, int e) {
        double y = s.yielded[e];
        return Math.max(a.curve().activationForce(), y > 0 ? a.curve().force(y) : 0);
    }
}
