package org.lifeline.internal.catenary;

/**
 * One span between two fixed points under one load that grips a point of the cable: two unknowns, the tension vector at
 * the start, by Newton's method from a closed-form start. The bare solver behind batches of spans, and the start of a
 * line of one span. Linear rope only.
 *
 * <p>Allocates nothing in {@link #solve}. Not thread-safe.
 */
public final class LoadedSpan {
    private static final int STEPS = 60;
    private static final int HALVINGS = 40;

    /** Relative step after which the next one would be rounding. */
    private static final double SMALL_STEP = 1e-8;

    /** Share of its horizontal tension that one step may take away. */
    private static final double MOST_LOSS = 0.8;

    /** Share of the weight of the cable that is the first horizontal tension of a load below a support [-]. */
    private static final double HANGING = 0.1;

    /** Slack, as a share of the chord, above which the start is the stiff triangle and not the parabola. */
    private static final double SLACK = 0.02;

    /** Horizontal distance and rise of the end from the start [m]. */
    public double run;

    public double rise;

    /** Weight per unstretched length [N/m], not negative. */
    public double weight;

    /** 1/EA [1/N], above zero. */
    public double compliance;

    /** Unstretched lengths before and behind the load [m], not negative, not both zero. */
    public double before;

    public double behind;

    /** Downward load [N], not negative. */
    public double load;

    /** Result: horizontal tension [N]. */
    public double horizontal;

    /** Result: vertical component of the tension at the start, along the line upward [N]. */
    public double vertical;

    /** Newton steps of the last solve. */
    public int iterations;

    private double x;
    private double z;
    private double xx;
    private double xz;
    private double zz;

    /**
     * Solves from a cold start.
     *
     * @return false if no equilibrium was found
     */
    public boolean solve() {
        start();
        return solveFrom();
    }

    /**
     * Solves from {@link #horizontal} and {@link #vertical} as they stand, as after a neighbouring case. The misfit is the
     * gradient of the complementary energy, which is convex, so that Newton's method comes to its one minimum from any start.
     *
     * @return false if no equilibrium was found; a cold start may still find one
     */
    public boolean solveFrom() {
        double h = horizontal;
        double v = vertical;
        evaluate(h, v);
        double misfit = misfit();
        if (!(h > 0)) {
            return false;
        }
        for (iterations = 1; iterations <= STEPS; iterations++) {
            double rx = run - x;
            double rz = rise - z;
            double det = xx * zz - xz * xz;
            double dh = (zz * rx - xz * rz) / det;
            double dv = (xx * rz - xz * rx) / det;
            double size = (Math.abs(dh) + Math.abs(dv)) / (h + Math.abs(v));
            if (!(size < Double.POSITIVE_INFINITY)) {
                return false;
            }
            if (size < SMALL_STEP) {
                horizontal = h + dh;
                vertical = v + dv;
                return horizontal > 0;
            }
            double part = dh < -MOST_LOSS * h ? -MOST_LOSS * h / dh : 1;
            for (int k = 0; ; k++) {
                evaluate(h + part * dh, v + part * dv);
                double now = misfit();
                if (now < misfit || size < CatenaryTolerances.CLOSE) {
                    misfit = now;
                    break;
                }
                if (k == HALVINGS) {
                    return false;
                }
                part *= 0.5;
            }
            h += part * dh;
            v += part * dv;
        }
        return false;
    }

    /**
     * How far the load hangs below the start, after a solve.
     *
     * @return distance [m], positive down
     */
    public double drop() {
        double h2 = horizontal * horizontal;
        double v2 = vertical + weight * before;
        double sum = Math.sqrt(h2 + vertical * vertical) + Math.sqrt(h2 + v2 * v2);
        return -before * (vertical + v2) * (1 / sum + 0.5 * compliance);
    }

    private double misfit() {
        return (run - x) * (run - x) + (rise - z) * (rise - z);
    }

    /** Start in closed form: the parabola with a kink, or the triangle of a rope without stretch. */
    private void start() {
        double c = Math.sqrt(run * run + rise * rise);
        double length = before + behind;
        if (length - c > SLACK * c) {
            triangle(c);
            return;
        }
        // Stretched length = chord + (1/2H²)∫V² dx (run/c)³ for a shallow line with shear V.
        double a = run * before / length;
        double b = run - a;
        double w = weight * length / run;
        double shear = load * load * a * b / run + w * load * a * b + w * w * run * run * run / 12;
        double ratio = run / c;
        horizontal = TautSpan.balance(0.5 * ratio * ratio * ratio * shear, length - c, length * compliance * c / run);
        vertical = horizontal * rise / run - load * b / run - 0.5 * w * run;
    }

    /**
     * The load hangs where circles about the supports meet, each leg with half its weight at either end; below the nearer
     * support where they do not meet, because one leg is longer than the chord and the other leg.
     */
    private void triangle(double c) {
        double along = (before * before - behind * behind + c * c) / (2 * c);
        double below = Math.sqrt(Math.max(before * before - along * along, CatenaryTolerances.FLAT_TRIANGLE * c * c));
        double least = CatenaryTolerances.NEAR_END * run;
        double foot = Math.min(Math.max((along * run + below * rise) / c, least), run - least);
        double depth = (along * rise - below * run) / c;
        double first = depth / foot;
        double second = (rise - depth) / (run - foot);
        if (!(second > first)) {
            double hanging = load + 0.5 * weight * (before + behind);
            horizontal = HANGING * hanging;
            vertical = before < behind ? -hanging : 0;
            return;
        }
        horizontal = (load + 0.5 * weight * (before + behind)) / (second - first);
        vertical = horizontal * first - 0.5 * weight * before;
    }

    private void evaluate(double h, double v) {
        x = 0;
        z = 0;
        xx = 0;
        xz = 0;
        zz = 0;
        piece(h, v, before);
        piece(h, v + weight * before + load, behind);
    }

    private void piece(double h, double v1, double s) {
        double v2 = v1 + weight * s;
        double h2 = h * h;
        double t1 = Math.sqrt(h2 + v1 * v1);
        double t2 = Math.sqrt(h2 + v2 * v2);
        double perSum = 1 / (t1 + t2);
        double perAll = perSum / (t1 * t2);
        double a = ElasticCatenary.inverseTension(h2, v1, v2, s, weight, t1, t2);
        double stretch = compliance * s;
        double b = s * ElasticCatenary.inverseCubeShare(h2, v1, v2, t1, t2) * perAll;
        x += h * (a + stretch);
        z += s * (v1 + v2) * (perSum + 0.5 * compliance);
        xx += a - h2 * b + stretch;
        xz -= h * s * (v1 + v2) * perAll;
        zz += h2 * b + stretch;
    }
}
