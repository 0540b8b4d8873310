package org.lifeline.base;

/**
 * Conversions at the border of the library, into SI and back: {@code kN(6)} is 6000 N, and {@code toKN(6000)} is 6 kN. Text
 * with units is read and printed by {@link org.lifeline.base.unit.QuantityText} and {@link org.lifeline.base.unit.Unit}.
 *
 * <p>Factors are exact by definition: 1 in = 0.0254 m, 1 lb = 0.45359237 kg (international yard and pound
 * agreement, 1959), standard gravity 9.80665 m/s² (3rd CGPM, 1901), hence 1 lbf = 4.4482216152605 N.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
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

    /**
     * Thousands of pounds-force.
     *
     * @param value force [kip]
     * @return force [N]
     */
    public static double kips(double value) {
        return value * (1000 * POUND_FORCE);
    }

    /**
     * Thousands of pounds-force, from SI.
     *
     * @param value force [N]
     * @return force [kip]
     */
    public static double toKips(double value) {
        return value / (1000 * POUND_FORCE);
    }

    /**
     * Pounds-force per foot.
     *
     * @param value force per length [lbf/ft]
     * @return force per length [N/m]
     */
    public static double poundsForcePerFoot(double value) {
        return value * POUND_FORCE / FOOT;
    }

    /**
     * Pounds-force per foot, from SI.
     *
     * @param value force per length [N/m]
     * @return force per length [lbf/ft]
     */
    public static double toPoundsForcePerFoot(double value) {
        return value * FOOT / POUND_FORCE;
    }

    /**
     * Pounds-force per inch.
     *
     * @param value force per length [lbf/in]
     * @return force per length [N/m]
     */
    public static double poundsForcePerInch(double value) {
        return value * POUND_FORCE / INCH;
    }

    /**
     * Pounds-force per inch, from SI.
     *
     * @param value force per length [N/m]
     * @return force per length [lbf/in]
     */
    public static double toPoundsForcePerInch(double value) {
        return value * INCH / POUND_FORCE;
    }

    /**
     * Pounds of mass per foot.
     *
     * @param value mass per length [lb/ft]
     * @return mass per length [kg/m]
     */
    public static double poundsPerFoot(double value) {
        return value * POUND / FOOT;
    }

    /**
     * Pounds of mass per foot, from SI.
     *
     * @param value mass per length [kg/m]
     * @return mass per length [lb/ft]
     */
    public static double toPoundsPerFoot(double value) {
        return value * FOOT / POUND;
    }

    /**
     * Megapascals.
     *
     * @param value stress or modulus [MPa]
     * @return stress or modulus [Pa]
     */
    public static double megapascals(double value) {
        return value * 1e6;
    }

    /**
     * Megapascals, from SI.
     *
     * @param value stress or modulus [Pa]
     * @return stress or modulus [MPa]
     */
    public static double toMegapascals(double value) {
        return value / 1e6;
    }

    /**
     * Pounds-force per square inch.
     *
     * @param value stress or modulus [psi]
     * @return stress or modulus [Pa]
     */
    public static double psi(double value) {
        return value * POUND_FORCE / (INCH * INCH);
    }

    /**
     * Pounds-force per square inch, from SI.
     *
     * @param value stress or modulus [Pa]
     * @return stress or modulus [psi]
     */
    public static double toPsi(double value) {
        return value * (INCH * INCH) / POUND_FORCE;
    }

    /**
     * Thousands of pounds-force per square inch.
     *
     * @param value stress or modulus [ksi]
     * @return stress or modulus [Pa]
     */
    public static double ksi(double value) {
        return value * (1000 * POUND_FORCE) / (INCH * INCH);
    }

    /**
     * Thousands of pounds-force per square inch, from SI.
     *
     * @param value stress or modulus [Pa]
     * @return stress or modulus [ksi]
     */
    public static double toKsi(double value) {
        return value * (INCH * INCH) / (1000 * POUND_FORCE);
    }

    /**
     * Foot pounds-force.
     *
     * @param value energy [ft·lbf]
     * @return energy [J]
     */
    public static double footPoundsForce(double value) {
        return value * (FOOT * POUND_FORCE);
    }

    /**
     * Foot pounds-force, from SI.
     *
     * @param value energy [J]
     * @return energy [ft·lbf]
     */
    public static double toFootPoundsForce(double value) {
        return value / (FOOT * POUND_FORCE);
    }

    /**
     * Millimetres, from SI.
     *
     * @param value length [m]
     * @return length [mm]
     */
    public static double toMillimetres(double value) {
        return value * 1000;
    }

    /**
     * Feet, from SI.
     *
     * @param value length [m]
     * @return length [ft]
     */
    public static double toFeet(double value) {
        return value / FOOT;
    }

    /**
     * Inches, from SI.
     *
     * @param value length [m]
     * @return length [in]
     */
    public static double toInches(double value) {
        return value / INCH;
    }

    /**
     * Kilonewtons, from SI.
     *
     * @param value force [N]
     * @return force [kN]
     */
    public static double toKN(double value) {
        return value / 1000;
    }

    /**
     * Meganewtons, from SI.
     *
     * @param value force [N]
     * @return force [MN]
     */
    public static double toMeganewtons(double value) {
        return value / 1e6;
    }

    /**
     * Pounds-force, from SI.
     *
     * @param value force [N]
     * @return force [lbf]
     */
    public static double toPoundsForce(double value) {
        return value / POUND_FORCE;
    }

    /**
     * Pounds of mass, from SI.
     *
     * @param value mass [kg]
     * @return mass [lb]
     */
    public static double toPounds(double value) {
        return value / POUND;
    }

    /**
     * Kilonewtons per metre, from SI.
     *
     * @param value stiffness [N/m]
     * @return stiffness [kN/m]
     */
    public static double toKNPerMetre(double value) {
        return value / 1000;
    }

    /**
     * Gigapascals, from SI.
     *
     * @param value stress or modulus [Pa]
     * @return stress or modulus [GPa]
     */
    public static double toGigapascals(double value) {
        return value / 1e9;
    }

    /**
     * Square millimetres, from SI.
     *
     * @param value area [m²]
     * @return area [mm²]
     */
    public static double toSquareMillimetres(double value) {
        return value * 1e6;
    }

    /**
     * Degrees Fahrenheit, from SI.
     *
     * @param value temperature [°C]
     * @return temperature [°F]
     */
    public static double toFahrenheit(double value) {
        return 1.8 * value + 32;
    }

    /**
     * Degrees of angle, from SI.
     *
     * @param value angle [rad]
     * @return angle [°]
     */
    public static double toDegrees(double value) {
        return Math.toDegrees(value);
    }
}
