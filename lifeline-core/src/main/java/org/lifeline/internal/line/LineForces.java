package org.lifeline.internal.line;

import org.lifeline.model.InlineAbsorber;

/**
 * Forces, displacements and bounds of a {@link LineSystem} in a {@link LineState}: what follows from the unknowns without
 * solving anything. Each support has a start side and an end side, toward the two ends of the line. Immutable and
 * thread-safe.
 */
public final class LineForces {
    private final LineSystem system;

    LineForces(LineSystem system) {
        this.system = system;
    }

    /** Vertical tension component at the end of a span [N]. */
    public double endZ(LineState s, int span) {
        double sum = s.tension[3 * span + 2] + system.weight * (system.length[span] + s.slip[span + 1] - s.slip[span]);
        for (int j = system.firstLoad[span]; j < system.firstLoad[span + 1]; j++) {
            sum += cableForce(s, j);
        }
        return sum;
    }

    /**
     * The support on which a load pulls, or on which a free-running load rests itself, so that the cable runs past it
     * without carrying it; −1 for a load on the cable. Where an in-line absorber stands between anchor and cable, the load rests on the cable's end.
     */
    public int restSupport(LineState s, int load) {
        if (system.pulledSupport[load] >= 0) {
            return system.pulledSupport[load];
        }
        if (!s.active[load] || system.gripped[load]) {
            return -1;
        }
        int head = s.mode[load] == LineState.FOLLOWS ? leader(s, load) : load;
        int mode = s.mode[head];
        if (mode != LineState.AT_START && mode != LineState.AT_END) {
            return -1;
        }
        boolean atEnd = mode == LineState.AT_END;
        int support = atEnd ? system.loadSpan[load] + 1 : system.loadSpan[load];
        boolean onAbsorber = (support == 0 && system.absorbers[0] != null)
                || (support == system.spans && system.absorbers[1] != null);
        return !onAbsorber && boundIsSupport(s, head, atEnd) ? support : -1;
    }

    /** Downward force that a load puts on the cable [N]; 0 if it takes no part or rests on a support. */
    public double cableForce(LineState s, int load) {
        return s.active[load] && restSupport(s, load) < 0 ? s.force[load] : 0;
    }

    /** Vertical tension component just before a load [N]. */
    public double beforeLoad(LineState s, int load) {
        int span = system.loadSpan[load];
        double sum = s.tension[3 * span + 2] + system.weight * (s.coordinate[load] - s.slip[span]);
        for (int j = system.firstLoad[span]; j < load; j++) {
            sum += cableForce(s, j);
        }
        return sum;
    }

    /** Component (0, 1, 2) of the force on a support [N]. */
    public double reaction(LineState s, int support, int component) {
        return reaction(s, support, component, component == 2 && support > 0 ? endZ(s, support - 1) : 0);
    }

    /** The same with the vertical tension component at the end of the span before the support at hand [N]. */
    double reaction(LineState s, int support, int component, double endBefore) {
        double r = 0;
        if (support < system.spans) {
            r += s.tension[3 * support + component];
        }
        if (support > 0) {
            r -= component == 2 ? endBefore : s.tension[3 * (support - 1) + component];
        }
        if (component == 2 && system.loads > 0) {
            r -= restingForce(s, support);
        }
        return r;
    }

    /** Sum of the loads that rest on a support [N]. */
    private double restingForce(LineState s, int support) {
        double sum = 0;
        int from = system.firstLoad[Math.max(0, support - 1)];
        int to = system.firstLoad[Math.min(system.spans, support + 1)];
        for (int j = from; j < to; j++) {
            if (restSupport(s, j) == support) {
                sum += s.force[j];
            }
        }
        return sum;
    }

    /** Component of the displacement of a support since installation [m]. */
    public double displacement(LineState s, int support, int component) {
        if (system.compliance[3 * support + component] == 0) {
            return 0;
        }
        return displacement(s, support, component, component == 2 && support > 0 ? endZ(s, support - 1) : 0);
    }

    /** The same with the vertical tension component at the end of the span before the support at hand [N]. */
    double displacement(LineState s, int support, int component, double endBefore) {
        double c = system.compliance[3 * support + component];
        return c == 0
                ? 0
                : c * (reaction(s, support, component, endBefore) - system.reference[3 * support + component]);
    }

    /** Takes the reactions of a state as those that the springs hold as installed. */
    public void setReference(LineState s) {
        for (int i = 0; i <= system.spans; i++) {
            for (int c = 0; c < 3; c++) {
                system.reference[3 * i + c] = reaction(s, i, c);
            }
        }
    }

    /** Sum of the forces of the loads that stand together with a load and follow it, itself included [N]. */
    public double groupForce(LineState s, int load) {
        double sum = s.force[load];
        for (int j = load + 1; j < system.firstLoad[system.loadSpan[load] + 1]; j++) {
            if (!s.active[j]) {
                continue;
            }
            if (s.mode[j] != LineState.FOLLOWS) {
                break;
            }
            sum += s.force[j];
        }
        return sum;
    }

    /**
     * How far a free-running load is from equal tension on both sides [N]: above zero the tension behind it is larger,
     * and it runs toward the lower tension, to the start. For a load that rests on a support: how it would be on the
     * cable just beside it.
     */
    public double pull(LineState s, int load) {
        boolean restsAtStart = s.mode[load] == LineState.AT_START && restSupport(s, load) >= 0;
        return beforeLoad(s, load) + (restsAtStart ? -0.5 : 0.5) * groupForce(s, load);
    }

    /** Material coordinate that bounds a free-running load on a side, and the slip index that moves it (or −1). */
    public double bound(LineState s, int load, boolean atEnd) {
        int span = system.loadSpan[load];
        int step = atEnd ? 1 : -1;
        for (int j = load + step; j >= system.firstLoad[span] && j < system.firstLoad[span + 1]; j += step) {
            if (s.active[j] && system.gripped[j]) {
                return s.coordinate[j];
            }
        }
        return atEnd ? system.length[span] + s.slip[span + 1] : s.slip[span];
    }

    /**
     * Largest slip at an intermediate support: where the first gripped load behind it, or the cable's end at an in-line
     * absorber, comes up to it.
     */
    public double mostSlip(LineState s, int support) {
        for (int j = system.firstLoad[support]; j < system.firstLoad[support + 1]; j++) {
            if (s.active[j] && system.gripped[j]) {
                return s.coordinate[j];
            }
        }
        boolean endsAtAbsorber = support == system.spans - 1 && system.absorbers[1] != null;
        return endsAtAbsorber ? LineTolerances.USED_UP * system.length[support] : Double.POSITIVE_INFINITY;
    }

    /**
     * Least slip at an intermediate support: where the last gripped load before it, or the cable's end at an in-line
     * absorber, comes up to it.
     */
    public double leastSlip(LineState s, int support) {
        for (int j = system.firstLoad[support] - 1; j >= system.firstLoad[support - 1]; j--) {
            if (s.active[j] && system.gripped[j]) {
                return s.coordinate[j] - system.length[support - 1];
            }
        }
        boolean endsAtAbsorber = support == 1 && system.absorbers[0] != null;
        return endsAtAbsorber ? -LineTolerances.USED_UP * system.length[0] : Double.NEGATIVE_INFINITY;
    }

    public boolean boundIsSupport(LineState s, int load, boolean atEnd) {
        int span = system.loadSpan[load];
        int step = atEnd ? 1 : -1;
        for (int j = load + step; j >= system.firstLoad[span] && j < system.firstLoad[span + 1]; j += step) {
            if (s.active[j] && system.gripped[j]) {
                return false;
            }
        }
        return true;
    }

    public int leader(LineState s, int load) {
        int j = load - 1;
        while (!s.active[j] || s.mode[j] == LineState.FOLLOWS) {
            j--;
        }
        return j;
    }

    public static double angle(double ax, double ay, double az, double bx, double by, double bz) {
        double cx = ay * bz - az * by;
        double cy = az * bx - ax * bz;
        double cz = ax * by - ay * bx;
        return StrictMath.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), ax * bx + ay * by + az * bz);
    }

    /** ln(T behind / T before) at an intermediate support. */
    public double logRatio(LineState s, int support) {
        return StrictMath.log(endSideTension(s, support) / startSideTension(s, support));
    }

    /** Angle turned by the cable at an intermediate support [rad]. */
    public double turned(LineState s, int support) {
        int i = 3 * (support - 1);
        int k = 3 * support;
        return angle(
                s.tension[i], s.tension[i + 1], endZ(s, support - 1), s.tension[k], s.tension[k + 1], s.tension[k + 2]);
    }

    /** Tells whether the cable turns to the same side at a support in two states, by the axes about which it turns. */
    public boolean turnsAlike(LineState s, LineState t, int support) {
        int i = 3 * (support - 1);
        int k = 3 * support;
        double sz = endZ(s, support - 1);
        double tz = endZ(t, support - 1);
        double x = (s.tension[i + 1] * s.tension[k + 2] - sz * s.tension[k + 1])
                * (t.tension[i + 1] * t.tension[k + 2] - tz * t.tension[k + 1]);
        double y = (sz * s.tension[k] - s.tension[i] * s.tension[k + 2])
                * (tz * t.tension[k] - t.tension[i] * t.tension[k + 2]);
        double z = (s.tension[i] * s.tension[k + 1] - s.tension[i + 1] * s.tension[k])
                * (t.tension[i] * t.tension[k + 1] - t.tension[i + 1] * t.tension[k]);
        return x + y + z >= 0;
    }

    public double startSideTension(LineState s, int support) {
        int i = 3 * (support - 1);
        double z = endZ(s, support - 1);
        return Math.sqrt(s.tension[i] * s.tension[i] + s.tension[i + 1] * s.tension[i + 1] + z * z);
    }

    public double endSideTension(LineState s, int support) {
        int k = 3 * support;
        return Math.sqrt(s.tension[k] * s.tension[k]
                + s.tension[k + 1] * s.tension[k + 1]
                + s.tension[k + 2] * s.tension[k + 2]);
    }

    /** Tension of the cable at an end of the line (0 or 1). */
    public double endTension(LineState s, int end) {
        return end == 0 ? endSideTension(s, 0) : startSideTension(s, system.spans);
    }

    /** Extension that stays when an in-line absorber is unloaded [m]; its stop is elastic and leaves nothing. */
    public double permanent(LineState s, int end, InlineAbsorber absorber) {
        double y = s.yielded[end];
        if (y == 0) {
            return 0;
        }
        return Math.max(0, y - absorber.curve().force(y) / absorber.initialStiffness());
    }

    /** Tells whether an in-line absorber is drawn out to its stop, the last piece of its curve. */
    public static boolean isAtStop(LineState s, int end, InlineAbsorber absorber) {
        return s.yielding[end] && s.piece[end] == absorber.curve().pieces() - 1;
    }
}
