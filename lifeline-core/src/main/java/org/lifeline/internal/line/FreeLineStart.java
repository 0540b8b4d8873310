package org.lifeline.internal.line;

/**
 * A first guess for a line that runs freely over all its intermediate anchors, between rigid ends, under one load that
 * grips the cable: Newton's method on the whole line then needs a few steps, however many spans there are.
 *
 * <p>On each side of the load the tension is taken as the same everywhere; a span at that tension is a parabola, so that
 * all spans of a side together take up (ΣC + A/T²)/(1 + T/EA) of cable, C the chords and A = Σw²l⁴/24C with the runs l.
 * That leaves two unknowns, where the load hangs, and two equations, the cable before and behind it. Not thread-safe.
 */
public final class FreeLineStart {
    private static final int STEPS = 60;
    private static final double NEAR = 1e-6;

    /** First depth of the load over its distance from the nearer support [-]. */
    private static final double DEPTH = 0.3;

    private final LineSystem sys;

    /** Sums over the spans of a side: chords [m], w²l⁴/24C [N²m]; cable there up to the load [m]. */
    private final double[] chords = new double[2];

    private final double[] sags = new double[2];
    private final double[] cable = new double[2];

    /** Tension of a side [N]; cable that it takes up less what is there [m]. */
    private final double[] tension = new double[2];

    private final double[] excess = new double[2];
    private double compliance;
    private double weight;
    private double run;
    private double rise;
    private double own;
    private double pull;

    /** Where the load hangs: distance from the start of its span, and depth below the chord [m]. */
    private double x;

    private double depth;
    private double horizontal;

    FreeLineStart(LineSystem system) {
        this.sys = system;
    }

    /** Tells whether the cable runs freely over all intermediate anchors. */
    boolean fits(LineState s) {
        for (int i = 1; i < sys.spans; i++) {
            if (sys.clamped[i] || sys.friction[i] != 0 || Math.abs(s.passage[i]) != 1) {
                return false;
            }
        }
        return true;
    }

    /**
     * Replaces tensions and slips by the guess.
     *
     * @param s the state
     * @param load the one load that takes part, gripped
     * @return false if none was found; the state is then of no use
     */
    boolean apply(LineState s, int load) {
        begin(s, load);
        if (!solve(s.force[load])) {
            return false;
        }
        fill(s, load);
        return true;
    }

    /** Takes in a line and where the load grips it. */
    void begin(LineState s, int load) {
        int span = sys.loadSpan[load];
        compliance = sys.law.compliance(0);
        weight = sys.weight / s.thermal;
        collect(s, span, s.coordinate[load]);
        run = runOf(span);
        rise = sys.pz[span + 1] - sys.pz[span];
        own = sys.length[span] * s.thermal;
        double share = Math.min(Math.max((s.coordinate[load] - s.slip[span]) / sys.length[span], 0.01), 0.99);
        x = share * run;
        depth = DEPTH * Math.min(x, run - x);
    }

    /**
     * Height of the load above the start of its span, as last solved.
     *
     * @return height [m]
     */
    public double height() {
        return rise * x / run - depth;
    }

    /**
     * Finds where a load hangs, from where it was found last.
     *
     * @param force the load [N]
     * @return false if nothing was found
     */
    public boolean solve(double force) {
        pull = force + 0.5 * weight * own;
        for (int k = 0; k < STEPS; k++) {
            double hx = LineTolerances.DIFFERENCE * run;
            double hd = LineTolerances.DIFFERENCE * depth;
            evaluate(x + hx, depth);
            double ax = excess[0];
            double bx = excess[1];
            evaluate(x, depth + hd);
            double ad = excess[0];
            double bd = excess[1];
            evaluate(x, depth);
            ax = (ax - excess[0]) / hx;
            bx = (bx - excess[1]) / hx;
            ad = (ad - excess[0]) / hd;
            bd = (bd - excess[1]) / hd;
            double det = ax * bd - bx * ad;
            double dx = -(bd * excess[0] - ad * excess[1]) / det;
            double dd = -(ax * excess[1] - bx * excess[0]) / det;
            double part = Math.min(1, 0.5 * Math.min(depth / Math.abs(dd), Math.min(x, run - x) / Math.abs(dx)));
            x += part * dx;
            depth += part * dd;
            if (!(part > 0)) {
                return false;
            }
            if (Math.abs(dx) + Math.abs(dd) < NEAR * depth) {
                evaluate(x, depth);
                return true;
            }
        }
        return false;
    }

    private void collect(LineState s, int span, double coordinate) {
        for (int side = 0; side < 2; side++) {
            chords[side] = 0;
            sags[side] = 0;
            cable[side] = side == 0 ? coordinate : sys.length[span] - coordinate;
        }
        for (int i = 0; i < sys.spans; i++) {
            if (i != span) {
                int side = i < span ? 0 : 1;
                double l = runOf(i);
                chords[side] += sys.chord[i];
                sags[side] += weight * weight * l * l * l * l / (24 * sys.chord[i]);
                cable[side] += sys.length[i];
            }
        }
        cable[0] *= s.thermal;
        cable[1] *= s.thermal;
    }

    private double runOf(int i) {
        double dx = sys.px[i + 1] - sys.px[i];
        double dy = sys.py[i + 1] - sys.py[i];
        return Math.sqrt(dx * dx + dy * dy);
    }

    /** Cable that both sides take up if the load hangs at a distance from the start of its span and below its chord. */
    private void evaluate(double at, double down) {
        double back = run - at;
        double dropA = down - rise * at / run;
        double dropB = down + rise * back / run;
        // Both slopes together carry the load: dropA/x + dropB/back = down · run/(at · back).
        horizontal = pull * at * back / (down * run);
        leg(0, at, dropA);
        leg(1, back, dropB);
    }

    private void leg(int side, double l, double drop) {
        double leg = Math.sqrt(l * l + drop * drop);
        double t = horizontal * leg / l;
        double sag = sags[side] + weight * weight * l * l * l * l / (24 * leg);
        tension[side] = t;
        excess[side] = (chords[side] + leg + sag / (t * t)) / (1 + t * compliance) - cable[side];
    }

    private void fill(LineState s, int load) {
        int span = sys.loadSpan[load];
        for (int i = 0; i < span; i++) {
            s.slip[i + 1] = s.slip[i] + stretch(s, i, tension[0]) - sys.length[i];
        }
        for (int i = sys.spans - 1; i > span; i--) {
            s.slip[i] = s.slip[i + 1] + sys.length[i] - stretch(s, i, tension[1]);
        }
        double left = (s.coordinate[load] - s.slip[span]) * s.thermal;
        set(s, span, horizontal, -horizontal * (depth / x - rise / run) - 0.5 * weight * left);
    }

    /** Sets the tension of a span without a load; its unstretched length at the reference temperature [m]. */
    private double stretch(LineState s, int i, double t) {
        double l = runOf(i);
        double up = (sys.pz[i + 1] - sys.pz[i]) / sys.chord[i];
        double arc = sys.chord[i] + weight * weight * l * l * l * l / (24 * sys.chord[i] * t * t);
        double length = arc / (1 + t * compliance);
        set(s, i, t * l / sys.chord[i], t * up - 0.5 * weight * length);
        return length / s.thermal;
    }

    private void set(LineState s, int i, double h, double vertical) {
        double l = runOf(i);
        s.tension[3 * i] = h * (sys.px[i + 1] - sys.px[i]) / l;
        s.tension[3 * i + 1] = h * (sys.py[i + 1] - sys.py[i]) / l;
        s.tension[3 * i + 2] = vertical;
    }
}
