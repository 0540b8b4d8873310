package org.lifeline.internal.mechanics;

import java.util.List;
import org.lifeline.internal.numeric.BandMatrix;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.LoadElongation;
import org.lifeline.model.Support;
import org.jspecify.annotations.Nullable;

/**
 * The equations of a whole line: assembly of residual and tangent for a {@link LineState}.
 *
 * <p>Unknowns, span by span: the tension vector at the span's first support (3), the coordinates of its free-running
 * loads, and the slip at its second support; at both ends of the list the extension of an in-line absorber. Equations in
 * the same order: the span fits between its supports (3), each free-running load has equal tension on both sides or
 * rests against its bound, the cable sticks at the support or the tension ratio is on its limit; an in-line absorber is
 * rigid, elastic or on its curve. The matrix is a band; its width does not grow with the number of spans.
 *
 * <p>Works in arrays made once. Not thread-safe.
 */
final class LineSystem {
    final int spans;
    final double weight;
    final LoadElongation law;
    final double[] px;
    final double[] py;
    final double[] pz;
    final double[] compliance;
    final double[] reference;
    final double[] friction;
    final boolean[] clamped;
    final double[] length;
    final double[] chord;
    final @Nullable InlineAbsorber[] absorbers = new @Nullable InlineAbsorber[2];

    /** Extension of the in-line absorbers as installed; positions are as installed, so the geometry counts from it. */
    final double[] installedExtension = new double[2];

    final int loads;
    final int[] loadSpan;
    final int[] firstLoad;
    final boolean[] gripped;

    private final int unknowns;
    private final int[] block;
    private final int[] loadIndex;
    private final boolean elastic;
    private final ElasticCatenary catenary;

    final BandMatrix matrix;
    final double[] residual;

    /** Residuals divided by their scales, the largest one. */
    double worst;

    /** Sum of the squares of the scaled residuals. */
    double merit;

    private final double[] endZ;

    LineSystem(List<Support> supports, double weight, LoadElongation law, List<LoadSlot> slots) {
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
        endZ = new double[spans];
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
        absorbers[0] = supports.get(0).inlineAbsorber().orElse(null);
        absorbers[1] = supports.get(n - 1).inlineAbsorber().orElse(null);
        loads = slots.size();
        loadSpan = new int[loads];
        gripped = new boolean[loads];
        firstLoad = new int[spans + 1];
        for (int j = 0; j < loads; j++) {
            loadSpan[j] = slots.get(j).span();
            gripped[j] = slots.get(j).gripped();
        }
        for (int i = 0, j = 0; i <= spans; i++) {
            while (j < loads && loadSpan[j] < i) {
                j++;
            }
            firstLoad[i] = j;
        }
        block = new int[spans + 1];
        loadIndex = new int[loads];
        int at = absorbers[0] == null ? 0 : 1;
        int widest = 0;
        for (int i = 0; i < spans; i++) {
            block[i] = at;
            at += 3;
            for (int j = firstLoad[i]; j < firstLoad[i + 1]; j++) {
                loadIndex[j] = gripped[j] ? -1 : at++;
            }
            if (i < spans - 1) {
                at++;
            }
            widest = Math.max(widest, at - block[i]);
        }
        block[spans] = at;
        unknowns = at + (absorbers[1] == null ? 0 : 1);
        int band = Math.min(unknowns - 1, elastic ? 2 * widest : widest + 1);
        matrix = new BandMatrix(unknowns, band, band);
        residual = new double[unknowns];
    }

    int unknowns() {
        return unknowns;
    }

    /** Index of the tension vector of a span in the list of unknowns. */
    int tensionIndex(int span) {
        return block[span];
    }

    /** Index of the slip at an intermediate support (1 … n−1). */
    int slipIndex(int support) {
        return block[support] - 1;
    }

    /** Index of the coordinate of a free-running load. */
    int loadIndex(int load) {
        return loadIndex[load];
    }

    /** Index of the extension of the absorber at an end (0 or 1). */
    int extensionIndex(int end) {
        return end == 0 ? 0 : unknowns - 1;
    }

    /** Vertical tension component at the end of a span [N]. */
    double endZ(LineState s, int span) {
        double sum = s.tension[3 * span + 2] + weight * (length[span] + s.slip[span + 1] - s.slip[span]);
        for (int j = firstLoad[span]; j < firstLoad[span + 1]; j++) {
            if (s.active[j]) {
                sum += s.force[j];
            }
        }
        return sum;
    }

    /** Vertical tension component just before a load [N]. */
    double beforeLoad(LineState s, int load) {
        int span = loadSpan[load];
        double sum = s.tension[3 * span + 2] + weight * (s.coordinate[load] - s.slip[span]);
        for (int j = firstLoad[span]; j < load; j++) {
            if (s.active[j]) {
                sum += s.force[j];
            }
        }
        return sum;
    }

    /** Component (0, 1, 2) of the force on a support [N]. */
    double reaction(LineState s, int support, int component) {
        double r = 0;
        if (support < spans) {
            r += s.tension[3 * support + component];
        }
        if (support > 0) {
            r -= component == 2 ? endZ(s, support - 1) : s.tension[3 * (support - 1) + component];
        }
        return r;
    }

    /** Component of the displacement of a support since installation [m]. */
    double displacement(LineState s, int support, int component) {
        double c = compliance[3 * support + component];
        return c == 0 ? 0 : c * (reaction(s, support, component) - reference[3 * support + component]);
    }

    /** Takes the reactions of a state as those that the springs hold as installed. */
    void setReference(LineState s) {
        for (int i = 0; i <= spans; i++) {
            for (int c = 0; c < 3; c++) {
                reference[3 * i + c] = reaction(s, i, c);
            }
        }
    }

    /** Sum of the forces of the loads that stand together with a load and follow it, itself included [N]. */
    private double groupForce(LineState s, int load) {
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
     * and it runs toward the lower tension, to the start.
     */
    double pull(LineState s, int load) {
        return beforeLoad(s, load) + 0.5 * groupForce(s, load);
    }

    /** Material coordinate that bounds a free-running load on a side, and the slip index that moves it (or −1). */
    double bound(LineState s, int load, boolean atEnd) {
        int span = loadSpan[load];
        int step = atEnd ? 1 : -1;
        for (int j = load + step; j >= firstLoad[span] && j < firstLoad[span + 1]; j += step) {
            if (s.active[j] && gripped[j]) {
                return s.coordinate[j];
            }
        }
        return atEnd ? length[span] + s.slip[span + 1] : s.slip[span];
    }

    private boolean boundIsSupport(LineState s, int load, boolean atEnd) {
        int span = loadSpan[load];
        int step = atEnd ? 1 : -1;
        for (int j = load + step; j >= firstLoad[span] && j < firstLoad[span + 1]; j += step) {
            if (s.active[j] && gripped[j]) {
                return false;
            }
        }
        return true;
    }

    /**
     * Assembles the residuals, and the tangent if asked for.
     *
     * @param s the state
     * @param tangent true to assemble the matrix as well
     * @return true if every number is finite and every piece of cable that must have a length has one
     */
    boolean assemble(LineState s, boolean tangent) {
        if (tangent) {
            matrix.clear();
        }
        worst = 0;
        merit = 0;
        for (int i = 0; i < spans; i++) {
            if (!(length[i] + s.slip[i + 1] - s.slip[i] > 0)) {
                return false;
            }
            endZ[i] = endZ(s, i);
        }
        for (int i = 0; i < spans; i++) {
            assembleSpan(s, i, tangent);
            for (int j = firstLoad[i]; j < firstLoad[i + 1]; j++) {
                if (!gripped[j]) {
                    assembleLoad(s, j, tangent);
                }
            }
            if (i < spans - 1) {
                assemblePassage(s, i + 1, tangent);
            }
        }
        for (int end = 0; end < 2; end++) {
            InlineAbsorber absorber = absorbers[end];
            if (absorber != null) {
                assembleAbsorber(s, end, absorber, tangent);
            }
        }
        return merit < Double.POSITIVE_INFINITY;
    }

    private void put(int row, double value, double scale) {
        residual[row] = value;
        double r = value / scale;
        merit += r * r;
        worst = Math.max(worst, Math.abs(r));
    }

    private void assembleSpan(LineState s, int i, boolean tangent) {
        int row = block[i];
        double tx = s.tension[3 * i];
        double ty = s.tension[3 * i + 1];
        double tz = s.tension[3 * i + 2];
        double dx = 0;
        double dy = 0;
        double dz = 0;
        double wHot = weight / s.thermal;
        double from = s.slip[i];
        int fromLoad = -1;
        double end = length[i] + s.slip[i + 1];
        int last = firstLoad[i + 1];
        for (int j = firstLoad[i]; j <= last; j++) {
            if (j < last && !s.active[j]) {
                continue;
            }
            double to = j == last ? end : s.coordinate[j];
            double piece = (to - from) * s.thermal;
            catenary.evaluate(tx, ty, tz, piece, wHot);
            dx += catenary.dx;
            dy += catenary.dy;
            dz += catenary.dz;
            if (tangent) {
                spanTangent(s, i, row, fromLoad, j == last ? -1 : j);
            }
            tz += weight * (to - from);
            if (j < last) {
                tz += s.force[j];
                fromLoad = j;
                from = to;
            }
        }
        double[] d = {dx, dy, dz};
        if (i == 0 && absorbers[0] != null) {
            addLink(s, 0, d, tangent);
        }
        if (i == spans - 1 && absorbers[1] != null) {
            addLink(s, 1, d, tangent);
        }
        for (int c = 0; c < 3; c++) {
            double want = coordinate(i + 1, c) - coordinate(i, c) + displacement(s, i + 1, c) - displacement(s, i, c);
            put(row + c, d[c] - want, chord[i]);
        }
        if (tangent && elastic) {
            supportTangent(i, row);
        }
    }

    private double coordinate(int support, int c) {
        return c == 0 ? px[support] : c == 1 ? py[support] : pz[support];
    }

    /** Adds the derivatives of one piece of cable of a span, between two bounds given by load numbers (or −1). */
    private void spanTangent(LineState s, int i, int row, int fromLoad, int toLoad) {
        ElasticCatenary k = catenary;
        add3(row, row, k.kxx, k.kxy, k.kxz);
        add3(row, row + 1, k.kxy, k.kyy, k.kyz);
        add3(row, row + 2, k.kxz, k.kyz, k.kzz);
        double f = s.thermal;
        // The piece's end moves along the cable.
        int toColumn = toLoad >= 0 ? loadIndex[toLoad] : slipColumn(i + 1);
        if (toColumn >= 0) {
            add3(row, toColumn, f * k.ex, f * k.ey, f * k.ez);
        }
        // The piece's start moves: it becomes shorter, and its start tension gains the weight before it.
        int fromColumn = fromLoad >= 0 ? loadIndex[fromLoad] : slipColumn(i);
        if (fromColumn >= 0) {
            add3(row, fromColumn, -f * k.ex, -f * k.ey, -f * k.ez);
            if (fromLoad >= 0) {
                add3(row, fromColumn, weight * k.kxz, weight * k.kyz, weight * k.kzz);
            }
        }
        int first = slipColumn(i);
        if (fromLoad >= 0 && first >= 0) {
            add3(row, first, -weight * k.kxz, -weight * k.kyz, -weight * k.kzz);
        }
    }

    private int slipColumn(int support) {
        return support == 0 || support == spans ? -1 : slipIndex(support);
    }

    private void add3(int row, int column, double x, double y, double z) {
        matrix.add(row, column, x);
        matrix.add(row + 1, column, y);
        matrix.add(row + 2, column, z);
    }

    /** Derivatives of the supports' displacements in the three equations of a span. */
    private void supportTangent(int i, int row) {
        for (int c = 0; c < 3; c++) {
            double c0 = compliance[3 * i + c];
            double c1 = compliance[3 * (i + 1) + c];
            // want = … + c1 (t[i+1] − tEnd[i]) − c0 (t[i] − tEnd[i−1]); the residual subtracts it.
            if (c0 != 0) {
                matrix.add(row + c, row + c, c0);
                if (i > 0) {
                    matrix.add(row + c, block[i - 1] + c, -c0);
                    if (c == 2) {
                        addEndWeight(row + c, i - 1, -c0);
                    }
                }
            }
            if (c1 != 0) {
                matrix.add(row + c, row + c, c1);
                if (c == 2) {
                    addEndWeight(row + c, i, c1);
                }
                if (i + 1 < spans) {
                    matrix.add(row + c, block[i + 1] + c, -c1);
                }
            }
        }
    }

    /** Adds factor · ∂endZ[span]/∂slip. */
    private void addEndWeight(int row, int span, double factor) {
        int a = slipColumn(span);
        int b = slipColumn(span + 1);
        if (a >= 0) {
            matrix.add(row, a, -factor * weight);
        }
        if (b >= 0) {
            matrix.add(row, b, factor * weight);
        }
    }

    /** The in-line absorber's extension as a straight link in the direction of the cable at that end. */
    private void addLink(LineState s, int end, double[] d, boolean tangent) {
        int i = end == 0 ? 0 : spans - 1;
        int row = block[i];
        double tx = s.tension[3 * i];
        double ty = s.tension[3 * i + 1];
        double tz = end == 0 ? s.tension[2] : endZ[i];
        double t = Math.sqrt(tx * tx + ty * ty + tz * tz);
        double e = s.extension[end] - installedExtension[end];
        double[] u = {tx / t, ty / t, tz / t};
        for (int c = 0; c < 3; c++) {
            d[c] += e * u[c];
        }
        if (tangent) {
            int column = extensionIndex(end);
            add3(row, column, u[0], u[1], u[2]);
            for (int c = 0; c < 3; c++) {
                for (int k = 0; k < 3; k++) {
                    double turn = e / t * ((c == k ? 1 : 0) - u[c] * u[k]);
                    matrix.add(row + c, row + k, turn);
                    if (k == 2 && end == 1) {
                        addEndWeight(row + c, i, turn);
                    }
                }
            }
        }
    }

    private void assembleLoad(LineState s, int j, boolean tangent) {
        int row = loadIndex[j];
        int i = loadSpan[j];
        int mode = s.active[j] ? s.mode[j] : LineState.GRIPPED;
        switch (mode) {
            case LineState.RUNNING -> {
                double scale = Math.abs(s.tension[3 * i]) + Math.abs(s.tension[3 * i + 1]) + s.force[j];
                put(row, pull(s, j) / scale, 1);
                if (tangent) {
                    matrix.add(row, block[i] + 2, 1 / scale);
                    matrix.add(row, row, weight / scale);
                    int a = slipColumn(i);
                    if (a >= 0) {
                        matrix.add(row, a, -weight / scale);
                    }
                }
            }
            case LineState.AT_START, LineState.AT_END -> {
                boolean atEnd = mode == LineState.AT_END;
                put(row, s.coordinate[j] - bound(s, j, atEnd), chord[i]);
                if (tangent) {
                    matrix.add(row, row, 1);
                    int a = boundIsSupport(s, j, atEnd) ? slipColumn(atEnd ? i + 1 : i) : -1;
                    if (a >= 0) {
                        matrix.add(row, a, -1);
                    }
                }
            }
            case LineState.FOLLOWS -> {
                int leader = leader(s, j);
                put(row, s.coordinate[j] - s.coordinate[leader], chord[i]);
                if (tangent) {
                    matrix.add(row, row, 1);
                    matrix.add(row, loadIndex[leader], -1);
                }
            }
            default -> {
                put(row, 0, 1);
                if (tangent) {
                    matrix.add(row, row, 1);
                }
            }
        }
    }

    int leader(LineState s, int load) {
        int j = load - 1;
        while (!s.active[j] || s.mode[j] == LineState.FOLLOWS) {
            j--;
        }
        return j;
    }

    private void assemblePassage(LineState s, int support, boolean tangent) {
        int row = slipIndex(support);
        int mode = s.passage[support];
        if (mode == LineState.STUCK) {
            put(row, 0, 1);
            if (tangent) {
                matrix.add(row, row, 1);
            }
            return;
        }
        int i = support - 1;
        double ax = s.tension[3 * i];
        double ay = s.tension[3 * i + 1];
        double az = endZ[i];
        double bx = s.tension[3 * support];
        double by = s.tension[3 * support + 1];
        double bz = s.tension[3 * support + 2];
        double a2 = ax * ax + ay * ay + az * az;
        double b2 = bx * bx + by * by + bz * bz;
        double mu = mode * friction[support];
        double theta = mu == 0 ? 0 : angle(ax, ay, az, bx, by, bz);
        put(row, 0.5 * Math.log(b2 / a2) - mu * theta, 1);
        if (!tangent) {
            return;
        }
        double fb = 1 / b2;
        double fa = -1 / a2;
        double cross = 0;
        if (mu != 0 && theta > 1e-9) {
            double sin = Math.sin(theta);
            double cos = Math.cos(theta);
            double ab = Math.sqrt(a2 * b2);
            // ∂θ/∂b = (cos θ b/|b| − a/|a|)/(|b| sin θ)
            fb -= mu * cos / (sin * b2);
            fa -= mu * cos / (sin * a2);
            cross = mu / (sin * ab);
        }
        int ca = block[i];
        int cb = block[support];
        matrix.add(row, cb, fb * bx + cross * ax);
        matrix.add(row, cb + 1, fb * by + cross * ay);
        matrix.add(row, cb + 2, fb * bz + cross * az);
        matrix.add(row, ca, fa * ax + cross * bx);
        matrix.add(row, ca + 1, fa * ay + cross * by);
        double daz = fa * az + cross * bz;
        matrix.add(row, ca + 2, daz);
        addEndWeight(row, i, daz);
    }

    static double angle(double ax, double ay, double az, double bx, double by, double bz) {
        double cx = ay * bz - az * by;
        double cy = az * bx - ax * bz;
        double cz = ax * by - ay * bx;
        return Math.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), ax * bx + ay * by + az * bz);
    }

    /** ln(T behind / T before) at an intermediate support. */
    double logRatio(LineState s, int support) {
        return Math.log(tensionBehind(s, support) / tensionBefore(s, support));
    }

    /** Angle turned by the cable at an intermediate support [rad]. */
    double turned(LineState s, int support) {
        int i = 3 * (support - 1);
        int k = 3 * support;
        return angle(
                s.tension[i],
                s.tension[i + 1],
                endZ(s, support - 1),
                s.tension[k],
                s.tension[k + 1],
                s.tension[k + 2]);
    }

    double tensionBefore(LineState s, int support) {
        int i = 3 * (support - 1);
        double z = endZ(s, support - 1);
        return Math.sqrt(s.tension[i] * s.tension[i] + s.tension[i + 1] * s.tension[i + 1] + z * z);
    }

    double tensionBehind(LineState s, int support) {
        int k = 3 * support;
        return Math.sqrt(s.tension[k] * s.tension[k]
                + s.tension[k + 1] * s.tension[k + 1]
                + s.tension[k + 2] * s.tension[k + 2]);
    }

    /** Tension of the cable at an end of the line (0 or 1). */
    double endTension(LineState s, int end) {
        return end == 0 ? tensionBehind(s, 0) : tensionBefore(s, spans);
    }

    private void assembleAbsorber(LineState s, int end, InlineAbsorber absorber, boolean tangent) {
        int row = extensionIndex(end);
        int i = end == 0 ? 0 : spans - 1;
        double t = endTension(s, end);
        double e = s.extension[end];
        double byTension;
        double byExtension;
        double value;
        if (s.yielding[end]) {
            double force = absorber.curve().force(e);
            double slope = absorber.curve().slope(e);
            value = (t - force) / t;
            byTension = 1 / t;
            byExtension = -slope / t;
            put(row, value, 1);
        } else {
            double soft = 1 / absorber.initialStiffness();
            value = e - permanent(s, end, absorber) - soft * t;
            byTension = -soft;
            byExtension = 1;
            put(row, value, chord[i]);
        }
        if (tangent) {
            matrix.add(row, row, byExtension);
            double z = end == 0 ? s.tension[2] : endZ[i];
            int c = block[i];
            matrix.add(row, c, byTension * s.tension[3 * i] / t);
            matrix.add(row, c + 1, byTension * s.tension[3 * i + 1] / t);
            matrix.add(row, c + 2, byTension * z / t);
            if (end == 1) {
                addEndWeight(row, i, byTension * z / t);
            }
        }
    }

    /** Extension that stays when an in-line absorber is unloaded [m]. */
    double permanent(LineState s, int end, InlineAbsorber absorber) {
        double y = s.yielded[end];
        if (y == 0) {
            return 0;
        }
        return Math.max(0, y - absorber.curve().force(y) / absorber.initialStiffness());
    }

    /**
     * Derivative of the residuals by the force of a load.
     *
     * @param s the state; the tangent must have been assembled at it or not at all
     * @param load the load
     * @param out receives ∂residual/∂force
     */
    void byForce(LineState s, int load, double[] out) {
        java.util.Arrays.fill(out, 0);
        int i = loadSpan[load];
        int row = block[i];
        double tz = s.tension[3 * i + 2];
        double from = s.slip[i];
        int last = firstLoad[i + 1];
        double wHot = weight / s.thermal;
        for (int j = firstLoad[i]; j <= last; j++) {
            if (j < last && !s.active[j]) {
                continue;
            }
            double to = j == last ? length[i] + s.slip[i + 1] : s.coordinate[j];
            if (j > load) {
                catenary.evaluate(
                        s.tension[3 * i], s.tension[3 * i + 1], tz, (to - from) * s.thermal, wHot);
                out[row] += catenary.kxz;
                out[row + 1] += catenary.kyz;
                out[row + 2] += catenary.kzz;
                if (j < last && !gripped[j] && s.mode[j] == LineState.RUNNING) {
                    double scale = Math.abs(s.tension[3 * i]) + Math.abs(s.tension[3 * i + 1]) + s.force[j];
                    out[loadIndex[j]] += 1 / scale;
                }
            }
            tz += weight * (to - from) + (j < last ? s.force[j] : 0);
            from = to;
        }
        if (!gripped[load]) {
            int head = s.mode[load] == LineState.FOLLOWS ? leader(s, load) : load;
            if (s.mode[head] == LineState.RUNNING) {
                double scale = Math.abs(s.tension[3 * i]) + Math.abs(s.tension[3 * i + 1]) + s.force[head];
                out[loadIndex[head]] += 0.5 / scale;
            }
        }
        // The load raises endZ[i] by one: displacement of support i+1, passage there, absorber and link at the end.
        double c1 = compliance[3 * (i + 1) + 2];
        if (c1 != 0) {
            out[row + 2] += c1;
            if (i + 1 < spans) {
                out[block[i + 1] + 2] -= c1;
            }
        }
        if (i + 1 < spans) {
            passageByEnd(s, i + 1, out);
        } else if (absorbers[1] != null) {
            absorberByEnd(s, absorbers[1], out);
        }
    }

    private void passageByEnd(LineState s, int support, double[] out) {
        if (s.passage[support] == LineState.STUCK) {
            return;
        }
        int i = support - 1;
        double ax = s.tension[3 * i];
        double ay = s.tension[3 * i + 1];
        double az = endZ(s, i);
        double a2 = ax * ax + ay * ay + az * az;
        double mu = s.passage[support] * friction[support];
        double daz = -az / a2;
        double theta = mu == 0 ? 0 : turned(s, support);
        if (theta > 1e-9) {
            double b = tensionBehind(s, support);
            double sin = Math.sin(theta);
            daz += -mu * Math.cos(theta) / sin * az / a2
                    + mu / (sin * Math.sqrt(a2) * b) * s.tension[3 * support + 2];
        }
        out[slipIndex(support)] += daz;
    }

    private void absorberByEnd(LineState s, InlineAbsorber absorber, double[] out) {
        int i = spans - 1;
        int row = block[i];
        double[] u = {s.tension[3 * i], s.tension[3 * i + 1], endZ(s, i)};
        double t = tensionBefore(s, spans);
        double e = s.extension[1] - installedExtension[1];
        for (int c = 0; c < 3; c++) {
            out[row + c] += e / t * ((c == 2 ? 1 : 0) - u[c] * u[2] / (t * t));
        }
        double byTension = s.yielding[1] ? 1 / t : -1 / absorber.initialStiffness();
        out[extensionIndex(1)] += byTension * u[2] / t;
    }
}
