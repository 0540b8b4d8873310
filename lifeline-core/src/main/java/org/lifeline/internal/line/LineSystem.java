package org.lifeline.internal.line;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.LoadElongation;
import org.lifeline.model.Support;

/**
 * The equations of a whole line: assembly of residual and tangent for a {@link LineState}.
 *
 * <p>Unknowns, span by span: the tension vector at the span's first support (3, or 2 where the line is {@link #planar}),
 * the coordinates of its free-running
 * loads, and the slip at its second support; the extension of an in-line absorber stands behind the first tension vector
 * and at the end of the list. Equations in the same order: the span fits between its supports (3 or 2), each free-running load has equal tension on both sides or
 * rests against its bound, the cable sticks at the support or the tension ratio is on its limit; an in-line absorber is
 * rigid, elastic or on its curve. The matrix is a band; its width does not grow with the number of spans.
 *
 * <p>Works in arrays made once. Not thread-safe.
 */
public final class LineSystem {
    /** Share of an end span that an in-line absorber can draw over the next anchor before the cable's end jams. */
    private static final double USED_UP = 0.999;

    /** Share of a span by which it may leave the direction of a straight line in plan. */
    private static final double ROUNDING = 4e-15;

    public final int spans;
    public final double weight;
    public final LoadElongation law;

    /** For one piece of cable at a time: whoever evaluates it reads it before anybody else does. */
    public final ElasticCatenary catenary;

    public final double[] px;
    public final double[] py;
    public final double[] pz;
    public final double[] compliance;
    public final double[] reference;
    public final double[] friction;
    public final boolean[] clamped;
    public final double[] length;
    public final double[] chord;
    public final @Nullable InlineAbsorber[] absorbers;

    /** Extension of the in-line absorbers as installed; positions are as installed, so the geometry counts from it. */
    public final double[] installedExtension;

    public final int loads;
    public final int[] loadSpan;
    public final int[] firstLoad;
    public final boolean[] gripped;

    /** Support on which a load pulls; −1 for a load on the cable. A load at a support never takes part in the cable. */
    public final int[] pulledSupport;

    private final int unknowns;
    private final int[] block;
    private final int[] loadIndex;
    public final boolean elastic;

    /**
     * Tells whether the line is straight in plan and no support can leave its vertical plane. A tension vector then counts
     * as two unknowns, along the line in plan and up, and a span has two equations.
     */
    public final boolean planar;

    /** Direction of a planar line in plan. */
    public final double ux;

    public final double uy;

    /** Where the vertical component of a tension vector stands behind its first one in the list of unknowns. */
    public final int up;

    /** Number of diagonals of the tangent below and above the main one. */
    public final int lower;

    public final int upper;

    public LineSystem(List<Support> supports, double weight, LoadElongation law) {
        this.spans = supports.size() - 1;
        this.weight = weight;
        this.law = law;
        this.catenary = new ElasticCatenary(law);
        int n = supports.size();
        px = new double[n];
        py = new double[n];
        pz = new double[n];
        compliance = new double[3 * n];
        reference = new double[3 * n];
        friction = new double[n];
        clamped = new boolean[n];
        length = new double[spans];
        chord = new double[spans];
        boolean yields = false;
        for (int i = 0; i < n; i++) {
            Support s = supports.get(i);
            px[i] = s.position().x();
            py[i] = s.position().y();
            pz[i] = s.position().z();
            compliance[3 * i] = 1 / s.stiffness().x();
            compliance[3 * i + 1] = 1 / s.stiffness().y();
            compliance[3 * i + 2] = 1 / s.stiffness().z();
            yields |= !s.stiffness().isRigid();
            clamped[i] = Double.isInfinite(s.passage().friction());
            friction[i] = clamped[i] ? 0 : s.passage().friction();
            if (i > 0) {
                chord[i - 1] = s.position().distance(supports.get(i - 1).position());
            }
        }
        elastic = yields;
        double x = px[spans] - px[0];
        double y = py[spans] - py[0];
        double run = Math.sqrt(x * x + y * y);
        ux = x / run;
        uy = y / run;
        planar = isPlanar();
        up = planar ? 1 : 2;
        absorbers = new @Nullable InlineAbsorber[2];
        installedExtension = new double[2];
        absorbers[0] = supports.get(0).inlineAbsorber().orElse(null);
        absorbers[1] = supports.get(n - 1).inlineAbsorber().orElse(null);
        loads = 0;
        loadSpan = new int[0];
        gripped = new boolean[0];
        pulledSupport = new int[0];
        firstLoad = new int[spans + 1];
        loadIndex = new int[0];
        block = new int[spans + 1];
        unknowns = number();
        lower = reach(true);
        upper = reach(false);
    }

    /** The same line with loads; shares everything else with the line that it is made from. */
    public LineSystem(LineSystem line, List<LoadSlot> slots) {
        spans = line.spans;
        weight = line.weight;
        law = line.law;
        catenary = line.catenary;
        px = line.px;
        py = line.py;
        pz = line.pz;
        compliance = line.compliance;
        reference = line.reference;
        friction = line.friction;
        clamped = line.clamped;
        length = line.length;
        chord = line.chord;
        elastic = line.elastic;
        planar = line.planar;
        ux = line.ux;
        uy = line.uy;
        up = line.up;
        absorbers = line.absorbers;
        installedExtension = line.installedExtension;
        loads = slots.size();
        loadSpan = new int[loads];
        gripped = new boolean[loads];
        pulledSupport = new int[loads];
        firstLoad = new int[spans + 1];
        for (int j = 0; j < loads; j++) {
            loadSpan[j] = slots.get(j).span();
            gripped[j] = slots.get(j).gripped();
            pulledSupport[j] = slots.get(j).support();
        }
        for (int i = 0, j = 0; i <= spans; i++) {
            while (j < loads && loadSpan[j] < i) {
                j++;
            }
            firstLoad[i] = j;
        }
        loadIndex = new int[loads];
        block = new int[spans + 1];
        unknowns = number();
        lower = reach(true);
        upper = reach(false);
    }

    private boolean isPlanar() {
        for (int i = 0; i < spans; i++) {
            double x = px[i + 1] - px[i];
            double y = py[i + 1] - py[i];
            double along = x * ux + y * uy;
            if (!(Math.abs(x * uy - y * ux) <= ROUNDING * along)) {
                return false;
            }
        }
        boolean alongAxis = ux == 0 || uy == 0;
        for (int i = 0; i <= spans; i++) {
            if (!alongAxis && compliance[3 * i] != compliance[3 * i + 1]) {
                return false;
            }
        }
        return true;
    }

    /** Numbers the unknowns; returns how many there are. */
    private int number() {
        int at = 0;
        for (int i = 0; i < spans; i++) {
            block[i] = at;
            at += up + (i == 0 && absorbers[0] != null ? 2 : 1);
            for (int j = firstLoad[i]; j < firstLoad[i + 1]; j++) {
                loadIndex[j] = gripped[j] ? -1 : at++;
            }
            if (i < spans - 1) {
                at++;
            }
        }
        block[spans] = at;
        return at + (absorbers[1] == null ? 0 : 1);
    }

    /** Largest distance from the diagonal of a derivative that is not zero, to the left or to the right. */
    private int reach(boolean toLeft) {
        int most = up;
        for (int i = 0; i < spans; i++) {
            int slipBefore = i > 0 ? block[i] - 1 : 0;
            boolean yields = i > 0 && isElastic(i);
            if (toLeft) {
                // The slip behind a span by the slip before it; an elastic support joins two spans' tensions.
                most = Math.max(most, block[i + 1] - 1 - slipBefore);
                if (yields) {
                    most = Math.max(most, block[i] + up - (i > 1 ? block[i - 1] - 1 : 0));
                }
            } else {
                most = Math.max(most, block[i + 1] - 1 - block[i]);
                if (yields) {
                    most = Math.max(most, Math.max(block[i] - block[i - 1], block[i + 1] - block[i] + up));
                }
                most = Math.max(most, i + 1 < spans ? up + 1 : 0);
            }
        }
        if (absorbers[1] != null) {
            most = Math.max(most, toLeft && spans > 1 ? unknowns - block[spans - 1] : unknowns - 1 - block[spans - 1]);
        }
        return Math.min(most, unknowns - 1);
    }

    private boolean isElastic(int support) {
        return compliance[3 * support] != 0 || compliance[3 * support + 1] != 0 || compliance[3 * support + 2] != 0;
    }

    public int unknowns() {
        return unknowns;
    }

    /** Tells whether a load pulls on a support and not on the cable. */
    public boolean pullsOnSupports() {
        for (int support : pulledSupport) {
            if (support >= 0) {
                return true;
            }
        }
        return false;
    }

    /** Index of the tension vector of a span in the list of unknowns. */
    public int tensionIndex(int span) {
        return block[span];
    }

    /** Index of the slip at an intermediate support (1 … n−1). */
    public int slipIndex(int support) {
        return block[support] - 1;
    }

    /** Index of the coordinate of a free-running load. */
    public int loadIndex(int load) {
        return loadIndex[load];
    }

    /** Index of the extension of the absorber at an end (0 or 1). */
    public int extensionIndex(int end) {
        return end == 0 ? up + 1 : unknowns - 1;
    }

    /** First component of the tension of a span as an unknown [N]: along a planar line, else along x. */
    public double along(LineState s, int span) {
        return planar ? ux * s.tension[3 * span] + uy * s.tension[3 * span + 1] : s.tension[3 * span];
    }

    /** Second component of the tension of a span [N]: along y; none where the line is planar. */
    public double across(LineState s, int span) {
        return planar ? 0 : s.tension[3 * span + 1];
    }

    /** The same component in a list of the unknowns or of their derivatives. */
    public double across(double[] unknowns, int span) {
        return planar ? 0 : unknowns[tensionIndex(span) + 1];
    }

    /** Compliance of a support in the direction of an unknown component of tension [m/N]. */
    public double give(int support, int component) {
        double x = compliance[3 * support];
        double y = compliance[3 * support + 1];
        return component == up
                ? compliance[3 * support + 2]
                : planar ? ux * ux * x + uy * uy * y : component == 0 ? x : y;
    }

    /** Vertical tension component at the end of a span [N]. */
    public double endZ(LineState s, int span) {
        double sum = s.tension[3 * span + 2] + weight * (length[span] + s.slip[span + 1] - s.slip[span]);
        for (int j = firstLoad[span]; j < firstLoad[span + 1]; j++) {
            sum += cableForce(s, j);
        }
        return sum;
    }

    /**
     * The support on which a load pulls, or on which a free-running load rests itself, so that the cable runs past it without carrying it; −1 for
     * a load on the cable. Where an in-line absorber stands between anchor and cable, the load rests on the cable's end.
     */
    public int restSupport(LineState s, int load) {
        if (pulledSupport[load] >= 0) {
            return pulledSupport[load];
        }
        if (!s.active[load] || gripped[load]) {
            return -1;
        }
        int head = s.mode[load] == LineState.FOLLOWS ? leader(s, load) : load;
        int mode = s.mode[head];
        if (mode != LineState.AT_START && mode != LineState.AT_END) {
            return -1;
        }
        boolean atEnd = mode == LineState.AT_END;
        int support = atEnd ? loadSpan[load] + 1 : loadSpan[load];
        boolean onAbsorber = (support == 0 && absorbers[0] != null) || (support == spans && absorbers[1] != null);
        return !onAbsorber && boundIsSupport(s, head, atEnd) ? support : -1;
    }

    /** Downward force that a load puts on the cable [N]; 0 if it takes no part or rests on a support. */
    public double cableForce(LineState s, int load) {
        return s.active[load] && restSupport(s, load) < 0 ? s.force[load] : 0;
    }

    /** Vertical tension component just before a load [N]. */
    public double beforeLoad(LineState s, int load) {
        int span = loadSpan[load];
        double sum = s.tension[3 * span + 2] + weight * (s.coordinate[load] - s.slip[span]);
        for (int j = firstLoad[span]; j < load; j++) {
            sum += cableForce(s, j);
        }
        return sum;
    }

    /** Component (0, 1, 2) of the force on a support [N]. */
    public double reaction(LineState s, int support, int component) {
        double r = 0;
        if (support < spans) {
            r += s.tension[3 * support + component];
        }
        if (support > 0) {
            r -= component == 2 ? endZ(s, support - 1) : s.tension[3 * (support - 1) + component];
        }
        if (component == 2 && loads > 0) {
            r -= restingForce(s, support);
        }
        return r;
    }

    /** Sum of the loads that rest on a support [N]. */
    private double restingForce(LineState s, int support) {
        double sum = 0;
        int from = firstLoad[Math.max(0, support - 1)];
        int to = firstLoad[Math.min(spans, support + 1)];
        for (int j = from; j < to; j++) {
            if (restSupport(s, j) == support) {
                sum += s.force[j];
            }
        }
        return sum;
    }

    /** Component of the displacement of a support since installation [m]. */
    public double displacement(LineState s, int support, int component) {
        double c = compliance[3 * support + component];
        return c == 0 ? 0 : c * (reaction(s, support, component) - reference[3 * support + component]);
    }

    /** Takes the reactions of a state as those that the springs hold as installed. */
    public void setReference(LineState s) {
        for (int i = 0; i <= spans; i++) {
            for (int c = 0; c < 3; c++) {
                reference[3 * i + c] = reaction(s, i, c);
            }
        }
    }

    /** Sum of the forces of the loads that stand together with a load and follow it, itself included [N]. */
    public double groupForce(LineState s, int load) {
        double sum = s.force[load];
        for (int j = load + 1; j < firstLoad[loadSpan[load] + 1]; j++) {
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
        int span = loadSpan[load];
        int step = atEnd ? 1 : -1;
        for (int j = load + step; j >= firstLoad[span] && j < firstLoad[span + 1]; j += step) {
            if (s.active[j] && gripped[j]) {
                return s.coordinate[j];
            }
        }
        return atEnd ? length[span] + s.slip[span + 1] : s.slip[span];
    }

    /**
     * Largest slip at an intermediate support: where the first gripped load behind it, or the cable's end at an in-line
     * absorber, comes up to it.
     */
    public double mostSlip(LineState s, int support) {
        for (int j = firstLoad[support]; j < firstLoad[support + 1]; j++) {
            if (s.active[j] && gripped[j]) {
                return s.coordinate[j];
            }
        }
        boolean endsAtAbsorber = support == spans - 1 && absorbers[1] != null;
        return endsAtAbsorber ? USED_UP * length[support] : Double.POSITIVE_INFINITY;
    }

    /**
     * Least slip at an intermediate support: where the last gripped load before it, or the cable's end at an in-line
     * absorber, comes up to it.
     */
    public double leastSlip(LineState s, int support) {
        for (int j = firstLoad[support] - 1; j >= firstLoad[support - 1]; j--) {
            if (s.active[j] && gripped[j]) {
                return s.coordinate[j] - length[support - 1];
            }
        }
        boolean endsAtAbsorber = support == 1 && absorbers[0] != null;
        return endsAtAbsorber ? -USED_UP * length[0] : Double.NEGATIVE_INFINITY;
    }

    public boolean boundIsSupport(LineState s, int load, boolean atEnd) {
        int span = loadSpan[load];
        int step = atEnd ? 1 : -1;
        for (int j = load + step; j >= firstLoad[span] && j < firstLoad[span + 1]; j += step) {
            if (s.active[j] && gripped[j]) {
                return false;
            }
        }
        return true;
    }

    public double coordinate(int support, int c) {
        return c == 0 ? px[support] : c == 1 ? py[support] : pz[support];
    }

    public int slipColumn(int support) {
        return support == 0 || support == spans ? -1 : slipIndex(support);
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
        return Math.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), ax * bx + ay * by + az * bz);
    }

    /** ln(T behind / T before) at an intermediate support. */
    public double logRatio(LineState s, int support) {
        return Math.log(tensionBehind(s, support) / tensionBefore(s, support));
    }

    /** Angle turned by the cable at an intermediate support [rad]. */
    public double turned(LineState s, int support) {
        int i = 3 * (support - 1);
        int k = 3 * support;
        return angle(
                s.tension[i], s.tension[i + 1], endZ(s, support - 1), s.tension[k], s.tension[k + 1], s.tension[k + 2]);
    }

    public double tensionBefore(LineState s, int support) {
        int i = 3 * (support - 1);
        double z = endZ(s, support - 1);
        return Math.sqrt(s.tension[i] * s.tension[i] + s.tension[i + 1] * s.tension[i + 1] + z * z);
    }

    public double tensionBehind(LineState s, int support) {
        int k = 3 * support;
        return Math.sqrt(s.tension[k] * s.tension[k]
                + s.tension[k + 1] * s.tension[k + 1]
                + s.tension[k + 2] * s.tension[k + 2]);
    }

    /** Tension of the cable at an end of the line (0 or 1). */
    public double endTension(LineState s, int end) {
        return end == 0 ? tensionBehind(s, 0) : tensionBefore(s, spans);
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
