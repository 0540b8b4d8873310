package org.lifeline.explorer.engine.stand;

/**
 * Stands in for {@link java.lang.StrictMath}: the functions that the library takes from it, to the last digit. Engines of scripts
 * have functions of their own, which differ from engine to engine. Algorithms and coefficients are those that the JDK names, of
 * fdlibm 5.3, Sun Microsystems (1993): "Permission to use, copy, modify, and distribute this software is freely granted, provided
 * that this notice is preserved." Written from memory, and held to the JDK's digits by {@code StandInsTest}.
 */
@SuppressWarnings("JavaLangClash") // It has to have the name of what it stands in for.
public final class StrictMath {
    private static final double FAR = 0x1p60;
    private static final double LARGE = 0x1p500;
    private static final double SMALL = 0x1p-500;
    private static final double SCALE = 0x1p600;

    private StrictMath() {}

    /**
     * The natural logarithm.
     *
     * @param value number from zero up [-]
     * @return logarithm [-]
     */
    public static double log(double value) {
        return Exponentials.log(value);
    }

    /**
     * The natural logarithm of 1 + x.
     *
     * @param x number above -1 [-]
     * @return logarithm [-]
     */
    public static double log1p(double x) {
        return Exponentials.log1p(x);
    }

    /**
     * The exponential.
     *
     * @param value exponent [-]
     * @return exponential [-]
     */
    public static double exp(double value) {
        return Exponentials.exp(value);
    }

    /**
     * The hyperbolic sine.
     *
     * @param x argument [-]
     * @return hyperbolic sine [-]
     */
    public static double sinh(double x) {
        return Exponentials.sinh(x);
    }

    /**
     * The hyperbolic cosine.
     *
     * @param x argument [-]
     * @return hyperbolic cosine [-]
     */
    public static double cosh(double x) {
        return Exponentials.cosh(x);
    }

    /**
     * The sine.
     *
     * @param x angle [rad]
     * @return sine [-]
     */
    public static double sin(double x) {
        return Angles.sin(x);
    }

    /**
     * The cosine.
     *
     * @param x angle [rad]
     * @return cosine [-]
     */
    public static double cos(double x) {
        return Angles.cos(x);
    }

    /**
     * The direction of a point.
     *
     * @param y its ordinate
     * @param x its abscissa, in the same unit
     * @return angle from the axis of abscissae, from -π to π [rad]
     */
    public static double atan2(double y, double x) {
        return Angles.atan2(y, x);
    }

    /**
     * The angle whose sine is given.
     *
     * @param x sine from -1 to 1 [-]
     * @return angle [rad]
     */
    public static double asin(double x) {
        return Angles.asin(x);
    }

    /**
     * The length of a hypotenuse.
     *
     * @param x one side
     * @param y the other side, in the same unit
     * @return length in that unit
     */
    public static double hypot(double x, double y) {
        double a = Math.max(Math.abs(x), Math.abs(y));
        double b = Math.min(Math.abs(x), Math.abs(y));
        if (Double.isInfinite(x) || Double.isInfinite(y)) {
            return Double.POSITIVE_INFINITY;
        }
        if (!(a <= b * FAR)) {
            return a + b;
        }
        if (a > LARGE) {
            return scaled(a / SCALE, b / SCALE) * SCALE;
        }
        return b < SMALL ? scaled(a * SCALE, b * SCALE) / SCALE : scaled(a, b);
    }

    private static double scaled(double a, double b) {
        double w = a - b;
        if (w > b) {
            double t1 = Words.upper(a);
            double t2 = a - t1;
            return Math.sqrt(t1 * t1 - (b * -b - t2 * (a + t1)));
        }
        double y1 = Words.upper(b);
        double y2 = b - y1;
        double twice = a + a;
        double t1 = Words.upper(twice);
        double t2 = twice - t1;
        return Math.sqrt(t1 * y1 - (w * -w - (t1 * y2 + t2 * b)));
    }

    /**
     * The tangent, as the engine has it: it gives limits of input alone.
     *
     * @param x angle [rad]
     * @return tangent [-]
     */
    public static double tan(double x) {
        return Math.tan(x);
    }

    /**
     * The common logarithm, as the engine has it: it counts digits alone.
     *
     * @param x number above zero [-]
     * @return logarithm [-]
     */
    public static double log10(double x) {
        return Math.log10(x);
    }

    /**
     * A power, as the engine has it: nothing in a script takes one from here.
     *
     * @param x base [-]
     * @param y exponent [-]
     * @return power [-]
     */
    public static double pow(double x, double y) {
        return Math.pow(x, y);
    }

    /**
     * What a division leaves.
     *
     * @param x dividend
     * @param y divisor, in the same unit
     * @return remainder in that unit
     */
    public static double IEEEremainder(double x, double y) {
        return Math.IEEEremainder(x, y);
    }
}
