package org.lifeline.internal.catenary;

import org.lifeline.internal.numeric.Elementary;
import org.lifeline.internal.numeric.Roots;
import org.lifeline.model.cable.LoadElongation;

/**
 * First estimates of an unloaded span: the parabola of a taut one, and the inextensible catenary with its weight spread
 * over the stretched length, one scalar root. Not thread-safe.
 */
final class SpanEstimate {
    private final LoadElongation law;
    private final double w;
    private final double run;
    private final double rise;
    private final double chord;

    /** Horizontal tension [N]. */
    double h;

    /** Vertical component of the tension at the start [N]. */
    double v;

    /** Unstretched length [m]. */
    double s;

    /** Tells that there may be no such span although there is an estimate. */
    boolean doubtful;

    SpanEstimate(LoadElongation law, double w, double run, double rise) {
        this.law = law;
        this.w = w;
        this.run = run;
        this.rise = rise;
        this.chord = Math.sqrt(run * run + rise * rise);
    }

    /** Least tension at the first support at which the span can hang [N]; 0 without weight. */
    double leastStartTension() {
        return w == 0 ? 0 : startTension(lambdaOfLeastTension(w), w);
    }

    /** From the parabola; false for a cable whose law has corners, or without a solution. */
    boolean ofTautSpan(SpanFinder.Known known, double value) {
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
        s = known == SpanFinder.Known.UNSTRETCHED_LENGTH ? value : taut.length(h);
        v = h * rise / run - 0.5 * w * s;
        return h > 0 && s > 0;
    }

    private double lambdaOfLeastTension(double weight) {
        return Roots.minimum(
                l -> startTension(l, weight), CatenaryTolerances.FLATTEST, CatenaryTolerances.BEYOND_LEAST);
    }

    /** From the inextensible catenary; false if there is no such span. */
    boolean of(SpanFinder.Known known, double value) {
        return switch (known) {
            case START_TENSION -> estimateFromTension(value);
            case HORIZONTAL_TENSION -> {
                double weight = w / (1 + law.strain(value * chord / run));
                if (weight * run / (2 * value) > CatenaryTolerances.STEEPEST) {
                    yield false;
                }
                fromHorizontal(value, weight);
                yield true;
            }
            case SAG -> estimateFromSag(value);
            case UNSTRETCHED_LENGTH -> estimateFromLength(value);
        };
    }

    private boolean estimateFromTension(double tension) {
        double strain = law.strain(tension);
        double weight = w / (1 + strain);
        double straight = tension * run / chord;
        if (weight * run < CatenaryTolerances.WEIGHTLESS * tension) {
            return straight(straight, strain);
        }
        double least = lambdaOfLeastTension(weight);
        double lowest = startTension(least, weight);
        // A cable that stretches hangs with a little less, by the share of its strain.
        doubtful = lowest > tension;
        if (doubtful) {
            fromHorizontal(weight * run / (2 * CatenaryTolerances.TAUTER * least), weight);
            return lowest < tension * (1 + strain);
        }
        double low = Math.min(CatenaryTolerances.LOWEST, weight * run / (4 * tension));
        double lambda = Roots.bracketed(
                "inextensible span from its tension", l -> startTension(l, weight) - tension, low, least);
        fromHorizontal(weight * run / (2 * lambda), weight);
        return true;
    }

    private boolean estimateFromSag(double sag) {
        if (w == 0) {
            return false;
        }
        double low = CatenaryTolerances.FLATTEST;
        if (inextensibleSag(low) > sag) {
            return straight(w * run * chord / (8 * sag), law.strain(w * chord * chord / (8 * sag)));
        }
        if (inextensibleSag(CatenaryTolerances.STEEPEST) < sag) {
            return false;
        }
        double lambda = Roots.bracketed(
                "inextensible span from its sag", l -> inextensibleSag(l) - sag, low, CatenaryTolerances.STEEPEST);
        double first = w * run / (2 * lambda);
        double weight = w / (1 + law.strain(first * chord / run));
        fromHorizontal(weight * run / (2 * lambda), weight);
        return true;
    }

    private boolean estimateFromLength(double length) {
        double strain = chord / length - 1;
        if (w == 0) {
            return straight(law.tension(strain) * run / chord, strain);
        }
        double low = w * run / (2 * CatenaryTolerances.STEEPEST);
        if (misfit(low, length) < 0) {
            return false;
        }
        double high = law.tension(strain) + w * run;
        while (misfit(high, length) > 0) {
            high *= CatenaryTolerances.WIDEN_UP;
        }
        double from = StrictMath.log(low);
        double to = StrictMath.log(high);
        double root = StrictMath.exp(
                Roots.bracketed("inextensible span from its length", x -> misfit(StrictMath.exp(x), length), from, to));
        double weight = w / (1 + law.strain(root * chord / run));
        fromHorizontal(root, weight);
        s = length;
        return true;
    }

    /** Length that the catenary wants at a horizontal tension, less the stretched length that is there. */
    private double misfit(double horizontal, double length) {
        double strain = law.strain(horizontal * chord / run);
        double lambda = w / (1 + strain) * run / (2 * horizontal);
        double sag = run * sinhc(lambda);
        return Math.sqrt(rise * rise + sag * sag) - length * (1 + strain);
    }

    private boolean straight(double horizontal, double strain) {
        h = horizontal;
        s = chord / (1 + strain);
        v = h * rise / run - 0.5 * w * s;
        return h > 0;
    }

    private void fromHorizontal(double horizontal, double weight) {
        double lambda = weight * run / (2 * horizontal);
        double theta = asinh(rise / (run * sinhc(lambda)));
        double length = run * sinhc(lambda);
        h = horizontal;
        v = h * Elementary.sinh(theta - lambda);
        double mean = horizontal * chord / run;
        s = Math.sqrt(rise * rise + length * length) / (1 + law.strain(mean));
    }

    private double startTension(double lambda, double weight) {
        double theta = asinh(rise / (run * sinhc(lambda)));
        return weight * run / (2 * lambda) * Elementary.cosh(theta - lambda);
    }

    private double inextensibleSag(double lambda) {
        double scale = run / (2 * lambda);
        double theta = asinh(rise / (run * sinhc(lambda)));
        double slope = rise / run;
        double touch = asinh(slope);
        double x = scale * (touch - theta + lambda);
        double z = scale * (Elementary.cosh(touch) - Elementary.cosh(theta - lambda));
        return slope * x - z;
    }

    private static double sinhc(double x) {
        return Math.abs(x) < CatenaryTolerances.SERIES ? 1 + x * x / 6 : Elementary.sinh(x) / x;
    }

    private static double asinh(double x) {
        double a = Math.abs(x);
        double value = a < CatenaryTolerances.SERIES ? a * (1 - a * a / 6) : StrictMath.log(a + Math.sqrt(a * a + 1));
        return Math.copySign(value, x);
    }
}
