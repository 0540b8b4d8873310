package org.lifeline.internal.line;

import java.util.Arrays;
import org.lifeline.internal.numeric.BandMatrix;
import org.lifeline.model.InlineAbsorber;

/**
 * Assembles the residuals and the tangent of a {@link LineSystem} at a {@link LineState}.
 *
 * <p>Works in arrays made once. Not thread-safe.
 */
public final class LineAssembly {
    private final LineSystem sys;
    private final ElasticCatenary catenary;
    private final double[] endZ;
    private final double[] d = new double[3];
    private final double[] u = new double[3];

    public final BandMatrix matrix;
    public final double[] residual;

    /** Residuals divided by their scales, the largest one. */
    public double worst;

    /** Sum of the squares of the scaled residuals. */
    public double merit;

    public LineAssembly(LineSystem system) {
        this.sys = system;
        this.catenary = system.catenary;
        this.endZ = new double[system.spans];
        this.matrix = new BandMatrix(system.unknowns(), system.lower, system.upper);
        this.residual = new double[system.unknowns()];
    }

    /**
     * Assembles the residuals, and the tangent if asked for.
     *
     * @param s the state
     * @param tangent true to assemble the matrix as well
     * @return true if every number is finite and every piece of cable that must have a sys.length has one
     */
    public boolean assemble(LineState s, boolean tangent) {
        if (tangent) {
            matrix.clear();
        }
        worst = 0;
        merit = 0;
        for (int i = 0; i < sys.spans; i++) {
            if (!(sys.length[i] + s.slip[i + 1] - s.slip[i] > 0)) {
                return false;
            }
            endZ[i] = sys.endZ(s, i);
        }
        for (int i = 0; i < sys.spans; i++) {
            assembleSpan(s, i, tangent);
            for (int j = sys.firstLoad[i]; j < sys.firstLoad[i + 1]; j++) {
                if (!sys.gripped[j]) {
                    assembleLoad(s, j, tangent);
                }
            }
            if (i < sys.spans - 1) {
                assemblePassage(s, i + 1, tangent);
            }
        }
        for (int end = 0; end < 2; end++) {
            InlineAbsorber absorber = sys.absorbers[end];
            if (absorber != null) {
                assembleAbsorber(s, end, absorber, tangent);
            }
        }
        return merit < Double.POSITIVE_INFINITY;
    }

    /**
     * Factors the tangent that was assembled last. A span's three equations are positive definite in its tensions, so
     * that no exchange of rows is needed as a rule; where a pivot fades all the same, rows are exchanged.
     *
     * @param s the state at which it was assembled
     * @return false if it is singular
     */
    public boolean factor(LineState s) {
        return matrix.eliminate() || (assemble(s, true) && matrix.factor());
    }

    private void put(int row, double value, double scale) {
        residual[row] = value;
        double r = value / scale;
        merit += r * r;
        worst = Math.max(worst, Math.abs(r));
    }

    private void assembleSpan(LineState s, int i, boolean tangent) {
        int row = sys.tensionIndex(i);
        double tx = sys.along(s, i);
        double ty = sys.across(s, i);
        double tz = s.tension[3 * i + 2];
        double dx = 0;
        double dy = 0;
        double dz = 0;
        double wHot = sys.weight / s.thermal;
        double from = s.slip[i];
        int fromLoad = -1;
        double end = sys.length[i] + s.slip[i + 1];
        int last = sys.firstLoad[i + 1];
        for (int j = sys.firstLoad[i]; j <= last; j++) {
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
            tz += sys.weight * (to - from);
            if (j < last) {
                tz += sys.cableForce(s, j);
                fromLoad = j;
                from = to;
            }
        }
        d[0] = dx;
        d[1] = dy;
        d[2] = dz;
        if (i == 0 && sys.absorbers[0] != null) {
            addLink(s, 0, tangent);
        }
        if (i == sys.spans - 1 && sys.absorbers[1] != null) {
            addLink(s, 1, tangent);
        }
        double x = want(s, i, 0);
        double y = want(s, i, 1);
        if (sys.planar) {
            put(row, d[0] - sys.ux * x - sys.uy * y, sys.chord[i]);
        } else {
            put(row, d[0] - x, sys.chord[i]);
            put(row + 1, d[1] - y, sys.chord[i]);
        }
        put(row + sys.up, d[2] - want(s, i, 2), sys.chord[i]);
        if (tangent && sys.elastic) {
            supportTangent(i, row);
        }
    }

    /** Component of the vector from the first support of a span to its second one [m]. */
    private double want(LineState s, int i, int c) {
        double rigid = sys.coordinate(i + 1, c) - sys.coordinate(i, c);
        return sys.elastic ? rigid + sys.displacement(s, i + 1, c) - sys.displacement(s, i, c) : rigid;
    }

    /** Adds the derivatives of one piece of cable of a span, between two bounds given by load numbers (or −1). */
    private void spanTangent(LineState s, int i, int row, int fromLoad, int toLoad) {
        ElasticCatenary k = catenary;
        add3(row, row, k.kxx, k.kxy, k.kxz);
        if (!sys.planar) {
            add3(row, row + 1, k.kxy, k.kyy, k.kyz);
        }
        add3(row, row + sys.up, k.kxz, k.kyz, k.kzz);
        double f = s.thermal;
        // The piece's end moves along the cable.
        int toColumn = toLoad >= 0 ? sys.loadIndex(toLoad) : sys.slipColumn(i + 1);
        if (toColumn >= 0) {
            add3(row, toColumn, f * k.ex, f * k.ey, f * k.ez);
        }
        // The piece's start moves: it becomes shorter, and its start tension gains the sys.weight before it.
        int fromColumn = fromLoad >= 0 ? sys.loadIndex(fromLoad) : sys.slipColumn(i);
        if (fromColumn >= 0) {
            add3(row, fromColumn, -f * k.ex, -f * k.ey, -f * k.ez);
            if (fromLoad >= 0) {
                add3(row, fromColumn, sys.weight * k.kxz, sys.weight * k.kyz, sys.weight * k.kzz);
            }
        }
        int first = sys.slipColumn(i);
        if (fromLoad >= 0 && first >= 0) {
            add3(row, first, -sys.weight * k.kxz, -sys.weight * k.kyz, -sys.weight * k.kzz);
        }
    }

    private void add3(int row, int column, double x, double y, double z) {
        matrix.add(row, column, x);
        if (!sys.planar) {
            matrix.add(row + 1, column, y);
        }
        matrix.add(row + sys.up, column, z);
    }

    /** Adds the derivatives of one equation by the components of a tension. */
    private void addByTension(int row, int column, double x, double y, double z) {
        matrix.add(row, column, x);
        if (!sys.planar) {
            matrix.add(row, column + 1, y);
        }
        matrix.add(row, column + sys.up, z);
    }

    /** Derivatives of the supports' displacements in the three equations of a span. */
    private void supportTangent(int i, int row) {
        for (int c = 0; c <= sys.up; c++) {
            double c0 = sys.give(i, c);
            double c1 = sys.give(i + 1, c);
            // want = … + c1 (t[i+1] − tEnd[i]) − c0 (t[i] − tEnd[i−1]); the residual subtracts it.
            if (c0 != 0) {
                matrix.add(row + c, row + c, c0);
                if (i > 0) {
                    matrix.add(row + c, sys.tensionIndex(i - 1) + c, -c0);
                    if (c == sys.up) {
                        addEndWeight(row + c, i - 1, -c0);
                    }
                }
            }
            if (c1 != 0) {
                matrix.add(row + c, row + c, c1);
                if (c == sys.up) {
                    addEndWeight(row + c, i, c1);
                }
                if (i + 1 < sys.spans) {
                    matrix.add(row + c, sys.tensionIndex(i + 1) + c, -c1);
                }
            }
        }
    }

    /** Adds factor · ∂endZ[span]/∂slip. */
    private void addEndWeight(int row, int span, double factor) {
        int a = sys.slipColumn(span);
        int b = sys.slipColumn(span + 1);
        if (a >= 0) {
            matrix.add(row, a, -factor * sys.weight);
        }
        if (b >= 0) {
            matrix.add(row, b, factor * sys.weight);
        }
    }

    /** The in-line absorber's extension as a straight link in the direction of the cable at that end. */
    private void addLink(LineState s, int end, boolean tangent) {
        int i = end == 0 ? 0 : sys.spans - 1;
        int row = sys.tensionIndex(i);
        double tx = sys.along(s, i);
        double ty = sys.across(s, i);
        double tz = end == 0 ? s.tension[2] : endZ[i];
        double t = Math.sqrt(tx * tx + ty * ty + tz * tz);
        double e = s.extension[end] - sys.installedExtension[end];
        u[0] = tx / t;
        u[1] = ty / t;
        u[2] = tz / t;
        for (int c = 0; c < 3; c++) {
            d[c] += e * u[c];
        }
        if (tangent) {
            int column = sys.extensionIndex(end);
            add3(row, column, u[0], u[1], u[2]);
            for (int k = 0; k < 3; k += 3 - sys.up) {
                double f = e / t;
                double x = (k == 0 ? f : 0) - f * u[0] * u[k];
                double y = (k == 1 ? f : 0) - f * u[1] * u[k];
                double z = (k == 2 ? f : 0) - f * u[2] * u[k];
                add3(row, row + Math.min(k, sys.up), x, y, z);
                if (k == 2 && end == 1) {
                    addEndWeight(row, i, x);
                    if (!sys.planar) {
                        addEndWeight(row + 1, i, y);
                    }
                    addEndWeight(row + sys.up, i, z);
                }
            }
        }
    }

    private void assembleLoad(LineState s, int j, boolean tangent) {
        int row = sys.loadIndex(j);
        int i = sys.loadSpan[j];
        int mode = s.active[j] ? s.mode[j] : LineState.GRIPPED;
        switch (mode) {
            case LineState.RUNNING -> {
                double scale = Math.abs(s.tension[3 * i]) + Math.abs(s.tension[3 * i + 1]) + s.force[j];
                put(row, sys.pull(s, j) / scale, 1);
                if (tangent) {
                    matrix.add(row, sys.tensionIndex(i) + sys.up, 1 / scale);
                    matrix.add(row, row, sys.weight / scale);
                    int a = sys.slipColumn(i);
                    if (a >= 0) {
                        matrix.add(row, a, -sys.weight / scale);
                    }
                }
            }
            case LineState.AT_START, LineState.AT_END -> {
                boolean atEnd = mode == LineState.AT_END;
                put(row, s.coordinate[j] - sys.bound(s, j, atEnd), sys.chord[i]);
                if (tangent) {
                    matrix.add(row, row, 1);
                    int a = sys.boundIsSupport(s, j, atEnd) ? sys.slipColumn(atEnd ? i + 1 : i) : -1;
                    if (a >= 0) {
                        matrix.add(row, a, -1);
                    }
                }
            }
            case LineState.FOLLOWS -> {
                int leader = sys.leader(s, j);
                put(row, s.coordinate[j] - s.coordinate[leader], sys.chord[i]);
                if (tangent) {
                    matrix.add(row, row, 1);
                    matrix.add(row, sys.loadIndex(leader), -1);
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

    private void assemblePassage(LineState s, int support, boolean tangent) {
        int row = sys.slipIndex(support);
        int mode = s.passage[support];
        if (Math.abs(mode) != 1) {
            put(row, 0, 1);
            if (tangent) {
                matrix.add(row, row, 1);
            }
            return;
        }
        int i = support - 1;
        double ax = sys.along(s, i);
        double ay = sys.across(s, i);
        double az = endZ[i];
        double bx = sys.along(s, support);
        double by = sys.across(s, support);
        double bz = s.tension[3 * support + 2];
        double a2 = ax * ax + ay * ay + az * az;
        double b2 = bx * bx + by * by + bz * bz;
        double mu = mode * sys.friction[support];
        double fb = 1 / b2;
        double fa = -1 / a2;
        double cross = 0;
        double limit = 0;
        if (mu != 0) {
            double dot = ax * bx + ay * by + az * bz;
            double cx = ay * bz - az * by;
            double cy = az * bx - ax * bz;
            double cz = ax * by - ay * bx;
            double area = Math.sqrt(cx * cx + cy * cy + cz * cz);
            double theta = Math.atan2(area, dot);
            limit = mu * theta;
            if (theta > 1e-9) {
                // ∂θ/∂b = (cos θ b/|b| − a/|a|)/(|b| sin θ), with cos θ = dot/|a||b| and sin θ = area/|a||b|.
                fb -= mu * dot / (area * b2);
                fa -= mu * dot / (area * a2);
                cross = mu / area;
            }
        }
        put(row, 0.5 * Math.log(b2 / a2) - limit, 1);
        if (!tangent) {
            return;
        }
        int ca = sys.tensionIndex(i);
        int cb = sys.tensionIndex(support);
        addByTension(row, cb, fb * bx + cross * ax, fb * by + cross * ay, fb * bz + cross * az);
        double daz = fa * az + cross * bz;
        addByTension(row, ca, fa * ax + cross * bx, fa * ay + cross * by, daz);
        addEndWeight(row, i, daz);
    }

    private void assembleAbsorber(LineState s, int end, InlineAbsorber absorber, boolean tangent) {
        int row = sys.extensionIndex(end);
        int i = end == 0 ? 0 : sys.spans - 1;
        double t = sys.endTension(s, end);
        double e = s.extension[end];
        double byTension;
        double byExtension;
        double value;
        if (LineSystem.isAtStop(s, end, absorber)
                && Double.isInfinite(absorber.curve().stopStiffness())) {
            byTension = 0;
            byExtension = 1;
            put(row, e - absorber.curve().maximumExtension(), sys.chord[i]);
        } else if (s.yielding[end]) {
            double slope = absorber.curve().slopeOfPiece(s.piece[end]);
            double force = absorber.curve().forceOnPiece(s.piece[end], e);
            value = (t - force) / t;
            byTension = 1 / t;
            byExtension = -slope / t;
            put(row, value, 1);
        } else {
            double soft = 1 / absorber.initialStiffness();
            value = e - sys.permanent(s, end, absorber) - soft * t;
            byTension = -soft;
            byExtension = 1;
            put(row, value, sys.chord[i]);
        }
        if (tangent) {
            matrix.add(row, row, byExtension);
            double z = end == 0 ? s.tension[2] : endZ[i];
            int c = sys.tensionIndex(i);
            double f = byTension / t;
            addByTension(row, c, f * sys.along(s, i), f * sys.across(s, i), f * z);
            if (end == 1) {
                addEndWeight(row, i, f * z);
            }
        }
    }

    /**
     * Derivative of the residuals by the force of a load.
     *
     * @param s the state; the tangent must have been assembled at it or not at all
     * @param load the load
     * @param out receives ∂residual/∂force
     */
    public void byForce(LineState s, int load, double[] out) {
        Arrays.fill(out, 0);
        int rest = sys.restSupport(s, load);
        if (rest >= 0) {
            double c = sys.compliance[3 * rest + 2];
            if (rest > 0) {
                out[sys.tensionIndex(rest - 1) + sys.up] += c;
            }
            if (rest < sys.spans) {
                out[sys.tensionIndex(rest) + sys.up] -= c;
            }
            return;
        }
        int i = sys.loadSpan[load];
        int row = sys.tensionIndex(i);
        double tz = s.tension[3 * i + 2];
        double from = s.slip[i];
        int last = sys.firstLoad[i + 1];
        double wHot = sys.weight / s.thermal;
        for (int j = sys.firstLoad[i]; j <= last; j++) {
            if (j < last && !s.active[j]) {
                continue;
            }
            double to = j == last ? sys.length[i] + s.slip[i + 1] : s.coordinate[j];
            if (j > load) {
                catenary.evaluate(sys.along(s, i), sys.across(s, i), tz, (to - from) * s.thermal, wHot);
                out[row] += catenary.kxz;
                if (!sys.planar) {
                    out[row + 1] += catenary.kyz;
                }
                out[row + sys.up] += catenary.kzz;
                if (j < last && !sys.gripped[j] && s.mode[j] == LineState.RUNNING) {
                    double scale = Math.abs(s.tension[3 * i]) + Math.abs(s.tension[3 * i + 1]) + s.force[j];
                    out[sys.loadIndex(j)] += 1 / scale;
                }
            }
            tz += sys.weight * (to - from) + (j < last ? sys.cableForce(s, j) : 0);
            from = to;
        }
        if (!sys.gripped[load]) {
            int head = s.mode[load] == LineState.FOLLOWS ? sys.leader(s, load) : load;
            if (s.mode[head] == LineState.RUNNING) {
                double scale = Math.abs(s.tension[3 * i]) + Math.abs(s.tension[3 * i + 1]) + s.force[head];
                out[sys.loadIndex(head)] += 0.5 / scale;
            }
        }
        // The load raises endZ[i] by one: displacement of support i+1, passage there, absorber and link at the end.
        double c1 = sys.compliance[3 * (i + 1) + 2];
        if (c1 != 0) {
            out[row + sys.up] += c1;
            if (i + 1 < sys.spans) {
                out[sys.tensionIndex(i + 1) + sys.up] -= c1;
            }
        }
        if (i + 1 < sys.spans) {
            passageByEnd(s, i + 1, out);
        } else if (sys.absorbers[1] != null) {
            absorberByEnd(s, sys.absorbers[1], out);
        }
    }

    /**
     * Derivative of the residuals by the factor on unstretched lengths. The vector of a piece is that of one of unit length
     * under the same weight, times its length, so that it grows in proportion.
     *
     * @param s the state
     * @param out receives ∂residual/∂factor
     */
    public void byTemperature(LineState s, double[] out) {
        Arrays.fill(out, 0);
        double wHot = sys.weight / s.thermal;
        for (int i = 0; i < sys.spans; i++) {
            int row = sys.tensionIndex(i);
            double tz = s.tension[3 * i + 2];
            double from = s.slip[i];
            int last = sys.firstLoad[i + 1];
            for (int j = sys.firstLoad[i]; j <= last; j++) {
                if (j < last && !s.active[j]) {
                    continue;
                }
                double to = j == last ? sys.length[i] + s.slip[i + 1] : s.coordinate[j];
                catenary.evaluate(sys.along(s, i), sys.across(s, i), tz, (to - from) * s.thermal, wHot);
                out[row] += catenary.dx / s.thermal;
                if (!sys.planar) {
                    out[row + 1] += catenary.dy / s.thermal;
                }
                out[row + sys.up] += catenary.dz / s.thermal;
                tz += sys.weight * (to - from) + (j < last ? sys.cableForce(s, j) : 0);
                from = to;
            }
        }
    }

    private void passageByEnd(LineState s, int support, double[] out) {
        if (Math.abs(s.passage[support]) != 1) {
            return;
        }
        int i = support - 1;
        double ax = s.tension[3 * i];
        double ay = s.tension[3 * i + 1];
        double az = sys.endZ(s, i);
        double a2 = ax * ax + ay * ay + az * az;
        double mu = s.passage[support] * sys.friction[support];
        double daz = -az / a2;
        double theta = mu == 0 ? 0 : sys.turned(s, support);
        if (theta > 1e-9) {
            double b = sys.tensionBehind(s, support);
            double sin = Math.sin(theta);
            daz += -mu * Math.cos(theta) / sin * az / a2 + mu / (sin * Math.sqrt(a2) * b) * s.tension[3 * support + 2];
        }
        out[sys.slipIndex(support)] += daz;
    }

    private void absorberByEnd(LineState s, InlineAbsorber absorber, double[] out) {
        int i = sys.spans - 1;
        int row = sys.tensionIndex(i);
        u[0] = sys.along(s, i);
        u[1] = sys.across(s, i);
        u[2] = sys.endZ(s, i);
        double t = sys.tensionBefore(s, sys.spans);
        double e = s.extension[1] - sys.installedExtension[1];
        for (int c = 0; c < sys.up; c++) {
            out[row + c] -= e / t * u[c] * u[2] / (t * t);
        }
        out[row + sys.up] += e / t * (1 - u[2] * u[2] / (t * t));
        boolean rigid = LineSystem.isAtStop(s, 1, absorber)
                && Double.isInfinite(absorber.curve().stopStiffness());
        double byTension = rigid ? 0 : s.yielding[1] ? 1 / t : -1 / absorber.initialStiffness();
        out[sys.extensionIndex(1)] += byTension * u[2] / t;
    }
}
