package org.lifeline.internal.catenary;

import org.lifeline.base.Convergence;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.model.cable.LoadElongation;

/**
 * The unloaded span between two fixed points, when one number about it is known: tension at its first support,
 * horizontal tension, sag, or unstretched length.
 *
 * <p>A taut span, the normal case, starts from its parabola in closed form ({@link TautSpan}). Elsewhere a first
 * estimate comes from the inextensible catenary with its weight spread over the stretched length, one scalar root.
 * Newton's method on the exact elastic catenary ends both. Not thread-safe.
 */
public final class SpanFinder {
    /** What is known. */
    public enum Known {
        /** Tension at the first support [N]. */
        START_TENSION,
        /** Horizontal tension [N]. */
        HORIZONTAL_TENSION,
        /** Sag below the chord [m]. */
        SAG,
        /** Unstretched length [m]. */
        UNSTRETCHED_LENGTH
    }

    private final LoadElongation law;
    private final double w;
    private final double run;
    private final double rise;
    private final double chord;
    private final ElasticCatenary catenary;
    private final SpanEstimate estimate;

    /** Horizontal tension [N]. */
    public double h;

    /** Vertical component of the tension at the start [N]. */
    public double v;

    /** Unstretched length [m]. */
    public double s;

    /** Tells whether Newton's steps died out, so that the span fits to rounding. */
    public boolean exact;

    private double closing;
    private double closingH;
    private double closingV;
    private double closingS;

    /**
     * A span to find.
     *
     * @param law load–elongation law of the cable
     * @param w weight per unstretched length [N/m], at least 0
     * @param run horizontal distance of the supports [m], positive
     * @param rise height of the second support above the first [m], either sign as in the catenary
     */
    public SpanFinder(LoadElongation law, double w, double run, double rise) {
        this.law = law;
        this.w = w;
        this.run = run;
        this.rise = rise;
        this.chord = Math.sqrt(run * run + rise * rise);
        this.catenary = new ElasticCatenary(law);
        this.estimate = new SpanEstimate(law, w, run, rise);
    }

    /**
     * Least tension at the first support at which the span can hang, on the taut side.
     *
     * @return tension [N]; 0 without weight
     */
    public double leastStartTension() {
        return estimate.leastStartTension();
    }

    /**
     * Finds the span.
     *
     * @param known what is known
     * @param value its value [N] or [m]
     * @return false if there is no such span
     */
    public boolean find(Known known, double value) {
        exact = findTaut(known, value);
        return exact || findAny(known, value);
    }

    /** The span from its parabola, if it is so taut that only one shape can be meant and Newton's steps die out. */
    private boolean findTaut(Known known, double value) {
        if (w == 0 || !takeOver(estimate.ofTautSpan(known, value)) || w * run > 2 * CatenaryTolerances.TAUT * h) {
            return false;
        }
        double worst = 1;
        for (int i = 0; i < CatenaryTolerances.TAUT_STEPS && worst > CatenaryTolerances.SMALL_STEP; i++) {
            catenary.evaluate(h, 0, v, s, w);
            closing(known, value);
            double h0 = h;
            double v0 = v;
            double s0 = s;
            newton(1);
            worst = Math.max((Math.abs(h - h0) + Math.abs(v - v0)) / h, Math.abs(s - s0) / s);
        }
        return worst <= CatenaryTolerances.SMALL_STEP && w * run < 2 * CatenaryTolerances.STILL_TAUT * h;
    }

    /** Takes the estimate as the state to start from; passes on whether there is one. */
    private boolean takeOver(boolean there) {
        h = estimate.h;
        v = estimate.v;
        s = estimate.s;
        return there;
    }

    private boolean findAny(Known known, double value) {
        if (!takeOver(estimate.of(known, value))) {
            return false;
        }
        try {
            refine(known, value);
        } catch (NoEquilibriumException e) {
            if (estimate.doubtful) {
                return false;
            }
            fromLight(known, value);
        }
        return true;
    }

    /** The span found by letting the weight grow from almost nothing, where the first estimate is too far off. */
    private void fromLight(Known known, double value) {
        double step = CatenaryTolerances.WEIGHT_STEP;
        double share = step;
        SpanFinder light = new SpanFinder(law, w * share, run, rise);
        light.find(known, value); // there is one, as there is an estimate of the heavy span
        while (share < 1) {
            double next = Math.min(1, share + step);
            SpanFinder trial = new SpanFinder(law, w * next, run, rise);
            trial.h = light.h;
            trial.v = light.v;
            trial.s = light.s;
            try {
                trial.refine(known, value);
            } catch (NoEquilibriumException e) {
                step *= 0.5;
                if (step < CatenaryTolerances.LEAST_WEIGHT_STEP) {
                    throw e;
                }
                continue;
            }
            light = trial;
            share = next;
        }
        h = light.h;
        v = light.v;
        s = light.s;
    }

    private void refine(Known known, double value) {
        double scale =
                switch (known) {
                    case START_TENSION, HORIZONTAL_TENSION -> value;
                    case SAG -> Math.max(value, CatenaryTolerances.LEAST_SAG_SCALE * chord);
                    case UNSTRETCHED_LENGTH -> chord;
                };
        double worst = residual(known, value, scale);
        for (int i = 0; i < CatenaryTolerances.STEPS; i++) {
            if (worst < CatenaryTolerances.ROUNDING) {
                newton(1);
                return;
            }
            double h0 = h;
            double v0 = v;
            double s0 = s;
            double before = worst;
            double factor = 1;
            while (true) {
                boolean moved = newton(factor);
                worst = moved ? residual(known, value, scale) : Double.NaN;
                if (worst < before || factor < CatenaryTolerances.SHORTEST) {
                    break;
                }
                h = h0;
                v = v0;
                s = s0;
                residual(known, value, scale);
                factor *= 0.5;
            }
            if (!(worst < before)) {
                h = h0;
                v = v0;
                s = s0;
                if (before < CatenaryTolerances.CONVERGED) {
                    // Rounding of a small sag hides that the ends can still be met.
                    residual(known, value, scale);
                    newton(1);
                    return;
                }
                throw new NoEquilibriumException(
                        "unloaded span of " + run + " m from its " + known,
                        0,
                        new Convergence(i, before, CatenaryTolerances.ROUNDING));
            }
        }
        throw new NoEquilibriumException(
                "unloaded span of " + run + " m from its " + known,
                0,
                new Convergence(CatenaryTolerances.STEPS, worst, CatenaryTolerances.ROUNDING));
    }

    private double residual(Known known, double value, double scale) {
        catenary.evaluate(h, 0, v, s, w);
        closing(known, value);
        double fit = Math.max(Math.abs(catenary.dx - run), Math.abs(catenary.dz - rise)) / chord;
        return Math.max(fit, Math.abs(closing) / scale);
    }

    private void closing(Known known, double value) {
        switch (known) {
            case START_TENSION -> {
                double t = Math.sqrt(h * h + v * v);
                closing = t - value;
                closingH = h / t;
                closingV = v / t;
                closingS = 0;
            }
            case HORIZONTAL_TENSION -> {
                closing = h - value;
                closingH = 1;
                closingV = 0;
                closingS = 0;
            }
            case UNSTRETCHED_LENGTH -> {
                closing = s - value;
                closingH = 0;
                closingV = 0;
                closingS = 1;
            }
            case SAG -> {
                double slope = rise / run;
                double at = (h * slope - v) / w;
                ElasticCatenary part = new ElasticCatenary(law);
                part.evaluate(h, 0, v, at, w);
                closing = slope * part.dx - part.dz - value;
                closingH = slope * part.kxx - part.kxz;
                closingV = slope * part.kxz - part.kzz;
                closingS = 0;
            }
        }
    }

    /** One Newton step on (h, v, s), from the residuals evaluated last; false if it leaves the domain. */
    private boolean newton(double factor) {
        double rx = run - catenary.dx;
        double rz = rise - catenary.dz;
        double rc = -closing;
        double a = catenary.kxx;
        double b = catenary.kxz;
        double c = catenary.kzz;
        double det = a * c - b * b;
        // (h, v) as a function of s from the first two rows, then s from the closing row.
        double h0 = (c * rx - b * rz) / det;
        double v0 = (a * rz - b * rx) / det;
        double hs = -(c * catenary.ex - b * catenary.ez) / det;
        double vs = -(a * catenary.ez - b * catenary.ex) / det;
        double slope = closingH * hs + closingV * vs + closingS;
        double ds = (rc - closingH * h0 - closingV * v0) / slope;
        h += factor * (h0 + hs * ds);
        v += factor * (v0 + vs * ds);
        s += factor * ds;
        return h > 0 && s > 0;
    }
}
