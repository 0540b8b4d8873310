package org.lifeline.internal.line;

import org.lifeline.internal.catenary.ElasticCatenary;
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

    /** Displacements of the supports, by x, y, z one after the other [m]; 0 where nothing yields. */
    private final double[] moved;

    private final double[] d = new double[3];
    private final double[] u = new double[3];

    public final LineEquations equations;

    /** States assembled so far, and tangents factored: where the work of a search goes, beside its Newton steps. */
    public int assembled;

    public int factored;

    public LineAssembly(LineSystem system) {
        this.sys = system;
        this.catenary = new ElasticCatenary(system.law);
        this.endZ = new double[system.spans];
        this.moved = new double[3 * system.spans + 3];
        this.equations = new LineEquations(system);
    }

    /**
     * Assembles the residuals, and the tangent if asked for.
     *
     * @param s the state
     * @param tangent true to assemble the matrix as well
     * @return true if every number is finite and every piece of cable that must have a length has one
     */
    public boolean assemble(LineState s, boolean tangent) {
        assembled++;
        equations.clear(tangent);
        for (int i = 0; i < sys.spans; i++) {
            if (!(sys.length[i] + s.slip[i + 1] - s.slip[i] > 0)) {
                return false;
            }
            endZ[i] = sys.forces.endZ(s, i);
        }
        if (sys.elastic) {
            findDisplacements(s);
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
        return equations.merit < Double.POSITIVE_INFINITY;
    }

    /**
     * Factors the tangent that was assembled last. A span's three equations are positive definite in its tensions, so
     * that no exchange of rows is needed as a rule; where a pivot fades all the same, rows are exchanged.
     *
     * @param s the state at which it was assembled
     * @return false if it is singular
     */
    public boolean factor(LineState s) {
        factored++;
        return equations.matrix.eliminate() || (assemble(s, true) && equations.matrix.factor());
    }

    private void assembleSpan(LineState s, int i, boolean tangent) {
        int row = sys.unknowns.tensionIndex(i);
        double tx = sys.unknowns.along(s, i);
        double ty = sys.unknowns.across(s, i);
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
                tz += sys.forces.cableForce(s, j);
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
        double x = want(i, 0);
        double y = want(i, 1);
        if (sys.unknowns.planar) {
            equations.put(row, d[0] - sys.unknowns.ux * x - sys.unknowns.uy * y, sys.chord[i]);
        } else {
            equations.put(row, d[0] - x, sys.chord[i]);
            equations.put(row + 1, d[1] - y, sys.chord[i]);
        }
        equations.put(row + sys.unknowns.up, d[2] - want(i, 2), sys.chord[i]);
        if (tangent && sys.elastic) {
            supportTangent(i, row);
        }
    }

    /** Works out where the supports are, from the vertical tensions at the ends of the spans that are at hand. */
    private void findDisplacements(LineState s) {
        for (int i = 0; i <= sys.spans; i++) {
            double before = i > 0 ? endZ[i - 1] : 0;
            for (int c = 0; c < 3; c++) {
                moved[3 * i + c] = sys.forces.displacement(s, i, c, before);
            }
        }
    }

    /** Component of the vector from the first support of a span to its second one [m]. */
    private double want(int i, int c) {
        double rigid = sys.coordinate(i + 1, c) - sys.coordinate(i, c);
        return sys.elastic ? rigid + moved[3 * i + 3 + c] - moved[3 * i + c] : rigid;
    }

    /** Adds the derivatives of one piece of cable of a span, between two bounds given by load numbers (or −1). */
    private void spanTangent(LineState s, int i, int row, int fromLoad, int toLoad) {
        ElasticCatenary k = catenary;
        equations.add3(row, row, k.kxx, k.kxy, k.kxz);
        if (!sys.unknowns.planar) {
            equations.add3(row, row + 1, k.kxy, k.kyy, k.kyz);
        }
        equations.add3(row, row + sys.unknowns.up, k.kxz, k.kyz, k.kzz);
        double f = s.thermal;
        // The piece's end moves along the cable.
        int toColumn = toLoad >= 0 ? sys.unknowns.loadIndex(toLoad) : sys.unknowns.slipColumn(i + 1);
        if (toColumn >= 0) {
            equations.add3(row, toColumn, f * k.ex, f * k.ey, f * k.ez);
        }
        // The piece's start moves: it becomes shorter, and its start tension gains the weight before it.
        int fromColumn = fromLoad >= 0 ? sys.unknowns.loadIndex(fromLoad) : sys.unknowns.slipColumn(i);
        if (fromColumn >= 0) {
            equations.add3(row, fromColumn, -f * k.ex, -f * k.ey, -f * k.ez);
            if (fromLoad >= 0) {
                equations.add3(row, fromColumn, sys.weight * k.kxz, sys.weight * k.kyz, sys.weight * k.kzz);
            }
        }
        int first = sys.unknowns.slipColumn(i);
        if (fromLoad >= 0 && first >= 0) {
            equations.add3(row, first, -sys.weight * k.kxz, -sys.weight * k.kyz, -sys.weight * k.kzz);
        }
    }

    /** Derivatives of the supports' displacements in the three equations of a span. */
    private void supportTangent(int i, int row) {
        for (int c = 0; c <= sys.unknowns.up; c++) {
            double c0 = sys.unknowns.compliance(i, c);
            double c1 = sys.unknowns.compliance(i + 1, c);
            // want = … + c1 (t[i+1] − tEnd[i]) − c0 (t[i] − tEnd[i−1]); the residual subtracts it.
            if (c0 != 0) {
                equations.matrix.add(row + c, row + c, c0);
                if (i > 0) {
                    equations.matrix.add(row + c, sys.unknowns.tensionIndex(i - 1) + c, -c0);
                    if (c == sys.unknowns.up) {
                        equations.addEndWeight(row + c, i - 1, -c0);
                    }
                }
            }
            if (c1 != 0) {
                equations.matrix.add(row + c, row + c, c1);
                if (c == sys.unknowns.up) {
                    equations.addEndWeight(row + c, i, c1);
                }
                if (i + 1 < sys.spans) {
                    equations.matrix.add(row + c, sys.unknowns.tensionIndex(i + 1) + c, -c1);
                }
            }
        }
    }

    /** The in-line absorber's extension as a straight link in the direction of the cable at that end. */
    private void addLink(LineState s, int end, boolean tangent) {
        int i = end == 0 ? 0 : sys.spans - 1;
        int row = sys.unknowns.tensionIndex(i);
        double tx = sys.unknowns.along(s, i);
        double ty = sys.unknowns.across(s, i);
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
            int column = sys.unknowns.extensionIndex(end);
            equations.add3(row, column, u[0], u[1], u[2]);
            for (int k = 0; k < 3; k += 3 - sys.unknowns.up) {
                double f = e / t;
                double x = (k == 0 ? f : 0) - f * u[0] * u[k];
                double y = (k == 1 ? f : 0) - f * u[1] * u[k];
                double z = (k == 2 ? f : 0) - f * u[2] * u[k];
                equations.add3(row, row + Math.min(k, sys.unknowns.up), x, y, z);
                if (k == 2 && end == 1) {
                    equations.addEndWeight(row, i, x);
                    if (!sys.unknowns.planar) {
                        equations.addEndWeight(row + 1, i, y);
                    }
                    equations.addEndWeight(row + sys.unknowns.up, i, z);
                }
            }
        }
    }

    private void assembleLoad(LineState s, int j, boolean tangent) {
        int row = sys.unknowns.loadIndex(j);
        int i = sys.loadSpan[j];
        int mode = s.active[j] ? s.mode[j] : LineState.GRIPPED;
        switch (mode) {
            case LineState.RUNNING -> {
                double scale = Math.abs(s.tension[3 * i]) + Math.abs(s.tension[3 * i + 1]) + s.force[j];
                equations.put(row, sys.forces.pull(s, j) / scale, 1);
                if (tangent) {
                    equations.matrix.add(row, sys.unknowns.tensionIndex(i) + sys.unknowns.up, 1 / scale);
                    equations.matrix.add(row, row, sys.weight / scale);
                    int a = sys.unknowns.slipColumn(i);
                    if (a >= 0) {
                        equations.matrix.add(row, a, -sys.weight / scale);
                    }
                }
            }
            case LineState.AT_START, LineState.AT_END -> {
                boolean atEnd = mode == LineState.AT_END;
                equations.put(row, s.coordinate[j] - sys.forces.bound(s, j, atEnd), sys.chord[i]);
                if (tangent) {
                    equations.matrix.add(row, row, 1);
                    int a = sys.forces.boundIsSupport(s, j, atEnd) ? sys.unknowns.slipColumn(atEnd ? i + 1 : i) : -1;
                    if (a >= 0) {
                        equations.matrix.add(row, a, -1);
                    }
                }
            }
            case LineState.FOLLOWS -> {
                int leader = sys.forces.leader(s, j);
                equations.put(row, s.coordinate[j] - s.coordinate[leader], sys.chord[i]);
                if (tangent) {
                    equations.matrix.add(row, row, 1);
                    equations.matrix.add(row, sys.unknowns.loadIndex(leader), -1);
                }
            }
            default -> {
                equations.put(row, 0, 1);
                if (tangent) {
                    equations.matrix.add(row, row, 1);
                }
            }
        }
    }

    private void assemblePassage(LineState s, int support, boolean tangent) {
        int row = sys.unknowns.slipIndex(support);
        int mode = s.passage[support];
        if (Math.abs(mode) != 1) {
            equations.put(row, 0, 1);
            if (tangent) {
                equations.matrix.add(row, row, 1);
            }
            return;
        }
        int i = support - 1;
        double ax = sys.unknowns.along(s, i);
        double ay = sys.unknowns.across(s, i);
        double az = endZ[i];
        double bx = sys.unknowns.along(s, support);
        double by = sys.unknowns.across(s, support);
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
            double theta = StrictMath.atan2(area, dot);
            limit = mu * theta;
            if (theta > LineTolerances.TURNED) {
                // ∂θ/∂b = (cos θ b/|b| − a/|a|)/(|b| sin θ), with cos θ = dot/|a||b| and sin θ = area/|a||b|.
                fb -= mu * dot / (area * b2);
                fa -= mu * dot / (area * a2);
                cross = mu / area;
            }
        }
        equations.put(row, 0.5 * StrictMath.log(b2 / a2) - limit, 1);
        if (!tangent) {
            return;
        }
        int ca = sys.unknowns.tensionIndex(i);
        int cb = sys.unknowns.tensionIndex(support);
        equations.addByTension(row, cb, fb * bx + cross * ax, fb * by + cross * ay, fb * bz + cross * az);
        double daz = fa * az + cross * bz;
        equations.addByTension(row, ca, fa * ax + cross * bx, fa * ay + cross * by, daz);
        equations.addEndWeight(row, i, daz);
    }

    private void assembleAbsorber(LineState s, int end, InlineAbsorber absorber, boolean tangent) {
        int row = sys.unknowns.extensionIndex(end);
        int i = end == 0 ? 0 : sys.spans - 1;
        double t = sys.forces.endTension(s, end);
        double e = s.extension[end];
        double byTension;
        double byExtension;
        double value;
        if (LineForces.isAtStop(s, end, absorber)
                && Double.isInfinite(absorber.curve().stopStiffness())) {
            byTension = 0;
            byExtension = 1;
            equations.put(row, e - absorber.curve().maximumExtension(), sys.chord[i]);
        } else if (s.yielding[end]) {
            double slope = absorber.curve().slopeOfPiece(s.piece[end]);
            double force = absorber.curve().forceOnPiece(s.piece[end], e);
            value = (t - force) / t;
            byTension = 1 / t;
            byExtension = -slope / t;
            equations.put(row, value, 1);
        } else {
            double soft = 1 / absorber.initialStiffness();
            value = e - sys.forces.permanent(s, end, absorber) - soft * t;
            byTension = -soft;
            byExtension = 1;
            equations.put(row, value, sys.chord[i]);
        }
        if (tangent) {
            equations.matrix.add(row, row, byExtension);
            double z = end == 0 ? s.tension[2] : endZ[i];
            int c = sys.unknowns.tensionIndex(i);
            double f = byTension / t;
            equations.addByTension(row, c, f * sys.unknowns.along(s, i), f * sys.unknowns.across(s, i), f * z);
            if (end == 1) {
                equations.addEndWeight(row, i, f * z);
            }
        }
    }
}
