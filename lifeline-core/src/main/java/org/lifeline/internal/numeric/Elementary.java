package org.lifeline.internal.numeric;

/**
 * The elementary functions that platforms do not all compute to the last digits: on the JVM those of {@link StrictMath}. A
 * platform whose own ones keep few digits of small arguments puts others in the place of this class.
 */
public final class Elementary {
    private Elementary() {}

    /**
     * The natural logarithm of 1 + x.
     *
     * @param x number above -1 [-]
     * @return logarithm [-], with full digits for small numbers
     */
    public static double log1p(double x) {
        return StrictMath.log1p(x);
    }

    /**
     * The hyperbolic sine.
     *
     * @param x argument [-]
     * @return hyperbolic sine [-], with full digits for small arguments
     */
    public static double sinh(double x) {
        return StrictMath.sinh(x);
    }

    /**
     * The hyperbolic cosine.
     *
     * @param x argument [-]
     * @return hyperbolic cosine [-]
     */
    public static double cosh(double x) {
        return StrictMath.cosh(x);
    }

    /**
     * A power of a positive number through its logarithm. It may be a few last digits off, more of them the larger the power,
     * but it is the same number on every platform, which powers and roots of the platforms are not: for estimates and lengths
     * of steps, on whose last digits later choices turn.
     *
     * @param x base above zero [-]
     * @param y exponent [-]
     * @return x to the power y [-]
     */
    public static double power(double x, double y) {
        return StrictMath.exp(y * StrictMath.log(x));
    }

    /**
     * The length of a hypotenuse.
     *
     * @param x one side
     * @param y the other side, in the same unit
     * @return length in that unit
     */
    public static double hypot(double x, double y) {
        return StrictMath.hypot(x, y);
    }
}
