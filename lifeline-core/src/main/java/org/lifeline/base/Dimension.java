package org.lifeline.base;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * What kind of quantity a number is, and its coherent unit in either {@link UnitSystem}.
 *
 * <p>Coherent: a formula without unit factors holds in both systems. In the customary system a mass is in pounds and
 * the acceleration of gravity in pounds-force per pound, so that weight = mass · g there as well. Conversions use the
 * exact definitions (international yard and pound agreement, 1959; standard gravity, 3rd CGPM, 1901).
 */
public enum Dimension {
    /** Length. */
    LENGTH("m", "ft", "0.3048", "1"),
    /** Force. */
    FORCE("N", "lbf", "4.4482216152605", "1"),
    /** Energy. */
    ENERGY("J", "ft·lbf", "1.3558179483314004", "1"),
    /** Mass. */
    MASS("kg", "lb", "0.45359237", "1"),
    /** Weight per length, or stiffness. */
    FORCE_PER_LENGTH("N/m", "lbf/ft", "4.4482216152605", "0.3048"),
    /** Mass per length. */
    MASS_PER_LENGTH("kg/m", "lb/ft", "0.45359237", "0.3048"),
    /** Length per force: ∫ds/T along a cable. */
    LENGTH_PER_FORCE("m/N", "ft/lbf", "0.3048", "4.4482216152605"),
    /** Length times force squared: ∫T² ds along a cable. */
    FORCE_SQUARED_LENGTH("N²·m", "lbf²·ft", "6.0309787041258790180399758042", "1"),
    /** Acceleration of gravity as the weight of a mass. */
    WEIGHT_PER_MASS("N/kg", "lbf/lb", "9.80665", "1"),
    /** Temperature. */
    TEMPERATURE("°C", "°F", "1", "1.8"),
    /** Thermal expansion. */
    EXPANSION("1/°C", "1/°F", "1.8", "1"),
    /** Angle. */
    ANGLE("rad", "rad", "1", "1"),
    /** A bare number. */
    RATIO("-", "-", "1", "1");

    private static final MathContext PRECISE = new MathContext(40);

    private final String si;
    private final String customary;
    private final BigDecimal numerator;
    private final BigDecimal denominator;

    Dimension(String si, String customary, String numerator, String denominator) {
        this.si = si;
        this.customary = customary;
        this.numerator = new BigDecimal(numerator);
        this.denominator = new BigDecimal(denominator);
    }

    /**
     * The coherent unit.
     *
     * @param system the system
     * @return its symbol, for example {@code "N"} or {@code "lbf"}; {@code "-"} for a bare number
     */
    public String unit(UnitSystem system) {
        return system == UnitSystem.SI ? si : customary;
    }

    /**
     * A quantity in the coherent unit of a system, without rounding beyond the 40th digit.
     *
     * @param value the quantity in SI [unit of the dimension], finite
     * @param system the system
     * @return the number in {@link #unit}
     */
    public BigDecimal exact(double value, UnitSystem system) {
        BigDecimal exact = new BigDecimal(value);
        if (system == UnitSystem.SI) {
            return exact;
        }
        BigDecimal converted = exact.multiply(denominator).divide(numerator, PRECISE);
        return this == TEMPERATURE ? converted.add(new BigDecimal(32)) : converted;
    }

    /**
     * A quantity in the coherent unit of a system.
     *
     * @param value the quantity in SI [unit of the dimension]; may be infinite or NaN
     * @param system the system
     * @return the number [unit of the system]
     */
    public double in(double value, UnitSystem system) {
        return system == UnitSystem.SI || !Double.isFinite(value)
                ? value
                : exact(value, system).doubleValue();
    }
}
