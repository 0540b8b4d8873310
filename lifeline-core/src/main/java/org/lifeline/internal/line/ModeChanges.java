package org.lifeline.internal.line;

import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.absorber.LoadingCurve;

/**
 * Changes the modes of a {@link LineState} that its equilibrium shows to be wrong: which supports hold the cable, which
 * loads rest against a bound, which in-line absorbers yield. Not thread-safe.
 */
public final class ModeChanges {
    private final LineSystem system;

    /** How far a support that slips may have moved the wrong way before it sticks, in chords [-]. */
    private double still = LineTolerances.STILL;

    ModeChanges(LineSystem system) {
        this.system = system;
    }

    /** Judges movement by states of this accuracy [-]. */
    void settleFor(double accuracy) {
        still = Math.max(LineTolerances.STILL, 10 * accuracy);
    }

    /**
     * Changes the modes that an equilibrium shows to be wrong.
     *
     * @return true if one was changed
     */
    public boolean change(LineState s, LineState past, int round) {
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
        return changed;
    }

    /** How far the log of a support's tension ratio is beyond its limit, positive when it is. */
    public double excess(LineState s, int support) {
        return Math.abs(system.forces.logRatio(s, support))
                - system.friction[support] * system.forces.turned(s, support);
    }

    /** A gripped load cannot be drawn over a support: the cable jams there until it is pulled the other way. */
    private boolean changeJam(LineState s, int i) {
        int mode = s.passage[i];
        if (Math.abs(mode) == 2) {
            double limit = system.friction[i] == 0 ? 0 : system.friction[i] * system.forces.turned(s, i);
            double ratio = system.forces.logRatio(s, i);
            boolean away = mode == LineState.JAMMED_BACK
                    ? ratio > limit + LineTolerances.FRICTION
                    : ratio < -limit - LineTolerances.FRICTION;
            if (away) {
                s.passage[i] = mode == LineState.JAMMED_BACK || system.friction[i] == 0
                        ? LineState.RUNS_ON
                        : LineState.RUNS_BACK;
            }
            return away;
        }
        double most = system.forces.mostSlip(s, i);
        if (s.slip[i] > most) {
            s.passage[i] = LineState.JAMMED_BACK;
            s.slip[i] = most;
            return true;
        }
        double least = system.forces.leastSlip(s, i);
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
            double slack = LineTolerances.FRICTION * (1 + round / LineTolerances.ROUNDS_PER_FRICTION);
            if (excess(s, i) > slack) {
                s.passage[i] = system.forces.logRatio(s, i) > 0 ? LineState.RUNS_ON : LineState.RUNS_BACK;
                return true;
            }
            return false;
        }
        // Running on means that cable moves toward the end: the slip coordinate falls.
        double moved = (s.slip[i] - past.slip[i]) * mode;
        if (moved > still * system.chord[i] * (1 + round)) {
            s.passage[i] = LineState.STUCK;
            s.slip[i] = past.slip[i];
            return true;
        }
        return false;
    }

    private boolean changeLoad(LineState s, int j, int round) {
        double low = system.forces.bound(s, j, false);
        double high = system.forces.bound(s, j, true);
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
                if (round > LineTolerances.MOST_TRIES) {
                    // At an anchor with friction a load may fit neither on the support nor just beside it, since the
                    // cable turns by another angle in the two places; then it stays on the support.
                    return false;
                }
                boolean atStart = s.mode[j] == LineState.AT_START;
                double pull = system.forces.pull(s, j);
                double slack = LineTolerances.PULL * (system.forces.beforeLoad(s, j) + s.force[j]);
                if (atStart ? pull < -Math.abs(slack) : pull > Math.abs(slack)) {
                    int rest = system.forces.restSupport(s, j);
                    if (atStart && rest >= 0) {
                        s.tension[3 * system.loadSpan[j] + 2] -= system.forces.groupForce(s, j);
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
        if (mode == LineState.AT_START && system.forces.restSupport(s, j) >= 0) {
            s.tension[3 * system.loadSpan[j] + 2] += system.forces.groupForce(s, j);
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
        double tension = system.forces.endTension(s, e);
        if (!s.yielding[e]) {
            if (tension <= resistance(a, s, e) * (1 + LineTolerances.RESISTANCE)) {
                return false;
            }
            startYield(s, e, a);
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
        if (piece < stop && s.extension[e] < past.extension[e] - LineTolerances.EXTENSION) {
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

    /** Lets an in-line absorber yield from the extension that it has. */
    public void startYield(LineState s, int e, InlineAbsorber a) {
        LoadingCurve curve = a.curve();
        s.yielding[e] = true;
        s.piece[e] = Math.max(curve.firstYieldPiece(), curve.piece(s.yielded[e]));
        double least = Math.max(s.yielded[e], curve.pieceStart(s.piece[e]));
        s.extension[e] = rigidStop(s, e, a) ? least : Math.max(s.extension[e], least);
    }

    private static boolean rigidStop(LineState s, int e, InlineAbsorber a) {
        return LineForces.isAtStop(s, e, a) && Double.isInfinite(a.curve().stopStiffness());
    }

    /** Tells whether an absorber at its stop has come off it again. */
    private static boolean comesBack(LineState s, int e, InlineAbsorber a, double tension) {
        return rigidStop(s, e, a)
                ? tension < a.curve().lastForce() * (1 - LineTolerances.RESISTANCE)
                : s.extension[e] < a.curve().maximumExtension();
    }

    /** Tension at which an in-line absorber yields further. */
    public double resistance(InlineAbsorber a, LineState s, int e) {
        double y = s.yielded[e];
        return Math.max(a.curve().activationForce(), y > 0 ? a.curve().force(y) : 0);
    }
}
