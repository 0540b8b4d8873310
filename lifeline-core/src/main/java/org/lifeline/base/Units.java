package org.lifeline.base;

/**
 * Conversions at the border of the library: named factories into SI.
 *
 * <p>Factors are exact by definition: 1 in = 0.0254 m, 1 lb = 0.45359237 kg (international yard and pound
 * agreement, 1959), standard gravity 9.80665 m/s² (3rd CGPM, 1901), hence 1 lbf = 4.4482216152605 N.
 *
 * <p>Immutable and thread-safe.
 */
public final class Units {
    /** Standard gravity [m/s²] (3rd CGPM, 1901). */
    public static final double STANDARD_GRAVITY = 9.80665;

    /** One inch [m], exact. */
    public static final double INCH = 0.0254;

    /** One foot [m], exact. */
    public static final double FOOT = 0.3048;

    /** One pound [kg], exact. */
    public static final double POUND = 0.45359237;

    /** One pound-force [N], exact. */
    public static final double POUND_FORCE = POUND * STANDARD_GRAVITY;

    private Units() {}

    /**
     * Millimetres.
     *
     * @param value length [mm]
     * @return length [m]
     */
    public static double millimetres(double value) {
        return value / 1000;
    }

    /**
     * Feet.
     *
     * @param value length [ft]
     * @return length [m]
     */
    public static double feet(double value) {
        return value * FOOT;
    }

    /**
     * Inches.
     *
     * @param value length [in]
     * @return length [m]
     */
    public static double inches(double value) {
        return value * INCH;
    }

    /**
     * Kilonewtons.
     *
     * @param value force [kN]
     * @return force [N]
     */
    public static double kN(double value) {
        return value * 1000;
    }

    /**
     * Meganewtons.
     *
     * @param value force [MN]
     * @return force [N]
     */
    public static double meganewtons(double value) {
        return value * 1e6;
    }

    /**
     * Pounds-force.
     *
     * @param value force [lbf]
     * @return force [N]
     */
    public static double poundsForce(double value) {
        return value * POUND_FORCE;
    }

    /**
     * Pounds of mass.
     *
     * @param value mass [lb]
     * @return mass [kg]
     */
    public static double pounds(double value) {
        return value * POUND;
    }

    /**
     * Kilonewtons per metre.
     *
     * @param value stiffness [kN/m]
     * @return stiffness [N/m]
     */
    public static double kNPerMetre(double value) {
        return value * 1000;
    }

    /**
     * Gigapascals.
     *
     * @param value stress or modulus [GPa]
     * @return stress or modulus [Pa]
     */
    public static double gigapascals(double value) {
        return value * 1e9;
    }

    /**
     * Square millimetres.
     *
     * @param value area [mm²]
     * @return area [m²]
     */
    public static double squareMillimetres(double value) {
        return value / 1e6;
    }

    /**
     * Degrees Fahrenheit as a temperature (not a difference).
     *
     * @param value temperature [°F]
     * @return temperature [°C]
     */
    public static double fahrenheit(double value) {
        return (value - 32) / 1.8;
    }

    /**
     * Degrees of angle.
     *
     * @param value angle [°]
     * @return angle [rad]
     */
    public static double degrees(double value) {
        return Math.toRadians(value);
    }
}
