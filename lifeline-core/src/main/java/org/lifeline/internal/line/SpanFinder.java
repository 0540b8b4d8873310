package org.lifeline.internal.line;

import org.lifeline.base.Convergence;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.internal.numeric.Roots;
import org.lifeline.model.LoadElongation;

/**
 * The unloaded span between two fixed points, when one number about it is known: tension at its first support,
 * horizontal tension, sag, or unstretched length.
 *
 * <p>A taut span, the normal case, starts from its parabola in closed form ({@link TautSpan}). Elsewhere a first
 * estimate comes from the inextensible catenary with its weight spread over the stretched length, one scalar root.
 * Newton's method on the exact elastic catenary ends both. Not thread-safe.
 */
final class SpanFinder {
    private static final double STEEPEST_LAMBDA = 25;
    private static final double TOLERANCE = 1e-14;
    private static final int ITERATIONS = 60;

    /** Half the weight of a taut span over its horizontal tension, at most; least tension lies above 1. */
    private static final double TAUT = 0.4;

    private static final int TAUT_ITERATIONS = 8;

    /** Relative step after which the next Newton step would be rounding. */
    private static final double SMALL_STEP = 1e-9;

    /**
     * Least scale of a sag's error, in chords: a sag must weigh as much as its own size, or the line search puts the fit
     * of the ends before it and creeps; below this it drowns in the rounding of the ends.
     */
    private static final double LEAST_SAG_SCALE = 1e-5;

    /** What is known. */
    enum Known {
        START_TENSION,
        HORIZONTAL_TENSION,
        SAG,
        UNSTRETCHED_LENGTH
    }

    private final LoadElongation law;
    private final double w;
    private final double run;
    private final double rise;
    private final double chord;
    private final ElasticCatenary catenary;

    /** Horizontal tension [N]. */
    double h;

    /** Vertical component of the tension at the start [N]. */
    double v;

    /** Unstretched length [m]. */
    double s;

    /** Tells whether Newton's steps died out, so that the span fits to rounding. */
    boolean exact;

    private double closing;
    private double closingH;
    private double closingV;
    private double closingS;

    SpanFinder(LoadElongation law, double w, double run, double rise) {
        this.law = law;
        this.w = w;
        this.run = run;
        this.rise = rise;
        this.chord = Math.sqrt(run * run + rise * rise);
        this.catenary = new ElasticCatenary(law);
    }

    /**
     * Least tension at the first support at which the span can hang, on the taut side.
     *
     * @return tension [N]; 0 without weight
     */
    double leastStartTension() {
        if (w == 0) {
            return 0;
        }
        double lambda = lambdaOfLeastTension(w);
        return startTension(lambda, w);
    }

    private double lambdaOfLeastTension(double weight) {
        return Roots.minimum(l -> startTension(l, weight), 1e-6, 6);
    }

    /**
     * Finds the span.
     *
     * @param known what is known
     * @param value its value [N] or [m]
     * @return false if there is no such span
     */
    boolean find(Known known, double value) {
        exact = findTaut(known, value);
        return exact || findAny(known, value);
    }

    /** The span from its parabola, if it is so taut that only one shape can be meant and Newton's steps die out. */
    private boolean findTaut(Known known, double value) {
        if (w == 0 || !estimateTaut(known, value) || w * run > 2 * TAUT * h) {
            return false;
        }
        double worst = 1;
        for (int i = 0; i < TAUT_ITERATIONS && worst > SMALL_STEP; i++) {
            catenary.evaluate(h, 0, v, s, w);
            closing(known, value);
            double h0 = h;
            double v0 = v;
            double s0 = s;
            if (!newton(1)) {
                return false;
            }
            worst = Math.max((Math.abs(h - h0) + Math.abs(v - v0)) / h, Math.abs(s - s0) / s);
        }
        return worst <= SMALL_STEP && w * run < 2.2 * TAUT * h;
    }

    private boolean estimateTaut(Known known, double value) {
        if (law.pieces() > 1) {
            return false;
        }
        TautSpan taut = new TautSpan(law.compliance(0), w, run, rise);
        h = switch (known) {
            case START_TENSION -> taut.fromTension(value);
            case HORIZONTAL_TENSION -> value;
            case SAG -> w * run * chord / (8 * value);
            case UNSTRETCHED_LENGTH -> taut.fromLength(value);
        };
        s = known == Known.UNSTRETCHED_LENGTH ? value : taut.length(h);
        v = h * rise / run - 0.5 * w * s;
        return h > 0 && s > 0;
    }

    private boolean findAny(Known known, double value) {
        if (!estimate(known, value)) {
            return false;
        }
        try {
            return refine(known, value);
        } catch (NoEquilibriumException e) {
            return fromLight(known, value);
        }
    }

    /** The span found by letting the weight grow from almost nothing, where the first estimate is too far off. */
    private boolean fromLight(Known known, double value) {
        double step = 0.05;
        double share = step;
        SpanFinder light = new SpanFinder(law, w * share, run, rise);
        if (!light.find(known, value)) {
            return false;
        }
        while (share < 1) {
            double next = Math.min(1, share + step);
            SpanFinder trial = new SpanFinder(law, w * next, run, rise);
            trial.h = light.h;
            trial.v = light.v;
            trial.s = light.s;
            boolean found;
            try {
                found = trial.refine(known, value);
            } catch (NoEquilibriumException e) {
                step *= 0.5;
                if (step < 1e-6) {
                    throw e;
                }
                continue;
            }
            if (!found) {
                return false;
            }
            light = trial;
            share = next;
        }
        h = light.h;
        v = light.v;
        s = light.s;
        return true;
    }

    private boolean refine(Known known, double value) {
        double scale =
                switch (known) {
                    case START_TENSION, HORIZONTAL_TENSION -> value;
                    case SAG -> Math.max(value, LEAST_SAG_SCALE * chord);
                    case UNSTRETCHED_LENGTH -> chord;
                };
        double worst = residual(known, value, scale);
        for (int i = 0; i < ITERATIONS; i++) {
            if (worst < TOLERANCE) {
                newton(1);
                return h > 0 && s > 0;
            }
            double h0 = h;
            double v0 = v;
            double s0 = s;
            double before = worst;
            double factor = 1;
            while (true) {
                boolean moved = newton(factor);
                worst = moved ? residual(known, value, scale) : Double.NaN;
                if (worst < before || factor < 1e-3) {
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
                if (before < 1e-10) {
                    return true;
                }
                throw new NoEquilibriumException(
                        "unloaded span of " + run + " m from its " + known, 0, new Convergence(i, before, TOLERANCE));
            }
        }
        throw new NoEquilibriumException(
                "unloaded span of " + run + " m from its " + known, 0, new Convergence(ITERATIONS, worst, TOLERANCE));
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

    /** One Newton step on (h, v, s), from the residuals evaluated last; false if it would leave the domain. */
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
        double dh = h0 + hs * ds;
        double limit = dh < -0.8 * h ? -0.8 * h / dh : 1;
        if (ds < -0.8 * s) {
            limit = Math.min(limit, -0.8 * s / ds);
        }
        double f = factor * limit;
        h += f * dh;
        v += f * (v0 + vs * ds);
        s += f * ds;
        return Double.isFinite(h) && Double.isFinite(v) && Double.isFinite(s) && h > 0 && s > 0;
    }

    private boolean estimate(Known known, double value) {
        return switch (known) {
            case START_TENSION -> estimateFromTension(value);
            case HORIZONTAL_TENSION -> {
                double weight = w / (1 + law.strain(value * chord / run));
                if (weight * run / (2 * value) > STEEPEST_LAMBDA) {
                    yield false;
                }
                yield fromHorizontal(value, weight);
            }
            case SAG -> estimateFromSag(value);
            case UNSTRETCHED_LENGTH -> estimateFromLength(value);
        };
    }

    private boolean estimateFromTension(double tension) {
        double strain = law.strain(tension);
        double weight = w / (1 + strain);
        double straight = tension * run / chord;
        if (weight * run < 1e-7 * tension) {
            return straight(straight, strain);
        }
        double least = lambdaOfLeastTension(weight);
        if (startTension(least, weight) > tension) {
            return false;
        }
        double low = Math.min(1e-8, weight * run / (4 * tension));
        double lambda = Roots.bracketed(
                "inextensible span from its tension", l -> startTension(l, weight) - tension, low, least);
        return fromHorizontal(weight * run / (2 * lambda), weight);
    }

    private boolean estimateFromSag(double sag) {
        if (w == 0) {
            return false;
        }
        double low = 1e-6;
        if (inextensibleSag(low) > sag) {
            return straight(w * run * chord / (8 * sag), law.strain(w * chord * chord / (8 * sag)));
        }
        if (inextensibleSag(STEEPEST_LAMBDA) < sag) {
            return false;
        }
        double lambda =
                Roots.bracketed("inextensible span from its sag", l -> inextensibleSag(l) - sag, low, STEEPEST_LAMBDA);
        double first = w * run / (2 * lambda);
        double weight = w / (1 + law.strain(first * chord / run));
        return fromHorizontal(weight * run / (2 * lambda), weight);
    }

    private boolean estimateFromLength(double length) {
        if (w == 0 && length >= chord) {
            return false;
        }
        double low = Math.max(w * run / (2 * STEEPEST_LAMBDA), 1e-300);
        double high = Math.max(2 * low, (law.tension(Math.max(chord / length - 1, 0)) + w * run) * run / chord + 1e-12);
        while (misfit(high, length) > 0) {
            high *= 4;
        }
        while (misfit(low, length) < 0 && low > 1e-290) {
            low *= 1e-3;
        }
        if (w > 0 && misfit(w * run / (2 * STEEPEST_LAMBDA), length) < 0) {
            return false;
        }
        double from = Math.log(low);
        double to = Math.log(high);
        double root = Math.exp(
                Roots.bracketed("inextensible span from its length", x -> misfit(Math.exp(x), length), from, to));
        double weight = w / (1 + law.strain(root * chord / run));
        fromHorizontal(root, weight);
        s = length;
        return true;
    }

    /** Length that the catenary wants at a horizontal tension, less the stretched length that is there. */
    private double misfit(double horizontal, double length) {
        double strain = law.strain(horizontal * chord / run);
        double lambda = w / (1 + strain) * run / (2 * horizontal);
        if (lambda > STEEPEST_LAMBDA) {
            return Double.MAX_VALUE;
        }
        double sag = run * sinhc(lambda);
        return Math.sqrt(rise * rise + sag * sag) - length * (1 + strain);
    }

    private boolean straight(double horizontal, double strain) {
        h = horizontal;
        s = chord / (1 + strain);
        v = h * rise / run - 0.5 * w * s;
        return h > 0;
    }

    private boolean fromHorizontal(double horizontal, double weight) {
        double lambda = weight * run / (2 * horizontal);
        double theta = asinh(rise / (run * sinhc(lambda)));
        double length = run * sinhc(lambda);
        h = horizontal;
        v = h * Math.sinh(theta - lambda);
        double mean = horizontal * chord / run;
        s = Math.sqrt(rise * rise + length * length) / (1 + law.strain(mean));
        return true;
    }

    private double startTension(double lambda, double weight) {
        double theta = asinh(rise / (run * sinhc(lambda)));
        return weight * run / (2 * lambda) * Math.cosh(theta - lambda);
    }

    private double inextensibleSag(double lambda) {
        double scale = run / (2 * lambda);
        double theta = asinh(rise / (run * sinhc(lambda)));
        double slope = rise / run;
        double touch = asinh(slope);
        double x = scale * (touch - theta + lambda);
        double z = scale * (Math.cosh(touch) - Math.cosh(theta - lambda));
        return slope * x - z;
    }

    private static double sinhc(double x) {
        return Math.abs(x) < 1e-4 ? 1 + x * x / 6 : Math.sinh(x) / x;
    }

    private static double asinh(double x) {
        double a = Math.abs(x);
        double value = a < 1e-4 ? a * (1 - a * a / 6) : Math.log(a + Math.sqrt(a * a + 1));
        return Math.copySign(value, x);
    }
}
