package org.lifeline.internal.path;

import org.lifeline.internal.numeric.Elementary;

/**
 * In what a path is measured and by what it is interpolated, for a parameter P of scale P₀.
 *
 * <p>Steps are measured in u = asinh(P/P₀). A load in the middle of a taut span of length L goes down by δ with
 * P = 4 (T₀ + 2 EA δ²/L²) δ/L, and the root of that cubic is δ ∝ w = sinh(u/3) with P₀ = 16 T₀ √(T₀/EA)/6^1.5. So
 * interpolation goes by w: there the descent is straight, the force P₀ (4 w³ + 3 w) a cubic and the tension a parabola,
 * nearly so where the line gives or sags. Immutable and thread-safe.
 *
 * @param scale P₀ [unit of the parameter], above zero
 */
record PathCoordinate(double scale) {
    /** A rise of the parameter from a value as a step in u [-]. */
    double step(double from, double rise) {
        double a = from / scale;
        double d = rise / scale;
        double b = a + d;
        double rootA = Math.sqrt(1 + a * a);
        // ln((b + √(1 + b²))/(a + √(1 + a²))) without cancellation.
        return Elementary.log1p(d * (1 + (a + b) / (rootA + Math.sqrt(1 + b * b))) / (a + rootA));
    }

    /** dP/du at a value [unit of the parameter]. */
    double perStep(double value) {
        return Math.sqrt(scale * scale + value * value);
    }

    /** The value that is a step in u beyond another. */
    double beyond(double value, double step) {
        double half = Elementary.sinh(0.5 * step);
        return value + 2 * half * (value * half + perStep(value) * Math.sqrt(1 + half * half));
    }

    /** The coordinate w of a value [-]. */
    double w(double value) {
        double x = value / scale;
        return Elementary.sinh(StrictMath.log(x + Math.sqrt(1 + x * x)) / 3);
    }

    /** The value at a w [unit of the parameter]. */
    double value(double w) {
        return scale * w * (3 + 4 * w * w);
    }

    /** ∫P dw from 0 [unit of the parameter]. */
    double integral(double w) {
        return scale * w * w * (1.5 + w * w);
    }

    /** The distance in w from a point to a value with its w: the difference of both cubics over that of the values. */
    double distance(PathPoint from, double value, double w) {
        double a = from.w;
        return (value - from.value) / (scale * (3 + 4 * (a * a + a * w + w * w)));
    }

    /** dP/dw at a point [unit of the parameter]. */
    double perW(PathPoint point) {
        return scale * (3 + 12 * point.w * point.w);
    }
}
