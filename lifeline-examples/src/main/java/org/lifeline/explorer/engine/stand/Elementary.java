package org.lifeline.explorer.engine.stand;

import org.teavm.jso.JSBody;

/**
 * Stands in for {@link org.lifeline.internal.numeric.Elementary}. The compiler's own library takes log1p(x) as log(1 + x) and
 * sinh by a difference of exponentials, which leaves few digits of small arguments; engines of scripts have these functions in
 * full, and most take them from where the JDK takes them, fdlibm of Sun Microsystems (1993). A hypotenuse engines compute in
 * their own ways; here it is that of fdlibm's e_hypot.
 */
public final class Elementary {
    private static final long HIGH = 0xFFFFFFFF_00000000L;
    private static final double FAR = 0x1p60;
    private static final double LARGE = 0x1p500;
    private static final double SMALL = 0x1p-500;
    private static final double SCALE = 0x1p600;

    private Elementary() {}

    /**
     * The natural logarithm of 1 + x.
     *
     * @param x number above -1 [-]
     * @return logarithm [-]
     */
    @JSBody(params = "x", script = "return Math.log1p(x);")
    public static native double log1p(double x);

    /**
     * The hyperbolic sine.
     *
     * @param x argument [-]
     * @return hyperbolic sine [-]
     */
    @JSBody(params = "x", script = "return Math.sinh(x);")
    public static native double sinh(double x);

    /**
     * The hyperbolic cosine.
     *
     * @param x argument [-]
     * @return hyperbolic cosine [-]
     */
    @JSBody(params = "x", script = "return Math.cosh(x);")
    public static native double cosh(double x);

    /**
     * A power of a positive number through its logarithm.
     *
     * @param x base above zero [-]
     * @param y exponent [-]
     * @return x to the power y [-]
     */
    public static double power(double x, double y) {
        return Math.exp(y * Math.log(x));
    }

    /**
     * The length of a hypotenuse.
     *
     * @param x one side
     * @param y the other side, in the same unit
     * @return length in that unit, rounded as the JDK rounds it
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
            double t1 = high(a);
            double t2 = a - t1;
            return Math.sqrt(t1 * t1 - (b * -b - t2 * (a + t1)));
        }
        double y1 = high(b);
        double y2 = b - y1;
        double twice = a + a;
        double t1 = high(twice);
        double t2 = twice - t1;
        return Math.sqrt(t1 * y1 - (w * -w - (t1 * y2 + t2 * b)));
    }

    /** A number without the lower half of its digits. */
    private static double high(double x) {
        return Double.longBitsToDouble(Double.doubleToRawLongBits(x) & HIGH);
    }
}
