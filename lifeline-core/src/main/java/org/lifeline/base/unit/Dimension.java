package org.lifeline.base.unit;

import java.math.BigDecimal;
import java.math.MathContext;
import org.lifeline.base.UnitSystem;

/**
 * What kind of quantity a number is, and its coherent unit in either {@link UnitSystem}.
 *
 * <p>Coherent: a formula without unit factors holds in both systems. In the customary system a mass is in pounds and
 * the acceleration of gravity in pounds-force per pound, so that weight = mass · g there as well. Conversions use the
 * exact definitions (international yard and pound agreement, 1959; standard gravity, 3rd CGPM, 1901).
 *
 * @since 1.0.0
 */
public enum Dimension {
    /** Length [m]. */
    LENGTH("m", "ft", "0.3048", "1", "length", "1.8 m"),
    /** Force [N]. */
    FORCE("N", "lbf", "4.4482216152605", "1", "force", "3.5 kN"),
    /** Energy [J]. */
    ENERGY("J", "ft·lbf", "1.3558179483314004", "1", "energy", "1.2 kJ"),
    /** Mass [kg]. */
    MASS("kg", "lb", "0.45359237", "1", "mass", "100 kg"),
    /** Force per length: stiffness, or weight per length [N/m]. */
    FORCE_PER_LENGTH("N/m", "lbf/ft", "4.4482216152605", "0.3048", "force per length", "300 kN/m"),
    /** Mass per length [kg/m]. */
    MASS_PER_LENGTH("kg/m", "lb/ft", "0.45359237", "0.3048", "mass per length", "0.576 kg/m"),
    /** Length per force: ∫ds/T along a cable [m/N]. */
    LENGTH_PER_FORCE("m/N", "ft/lbf", "0.3048", "4.4482216152605", "length per force", "1e-6 m/N"),
    /** Length times force squared: ∫T² ds along a cable [N²·m]. */
    FORCE_SQUARED_LENGTH(
            "N²·m", "lbf²·ft", "6.0309787041258790180399758042", "1", "length times force squared", "1e6 N²·m"),
    /** Acceleration of gravity as the weight of a mass [N/kg]. */
    WEIGHT_PER_MASS("N/kg", "lbf/lb", "9.80665", "1", "weight per mass", "9.81 N/kg"),
    /** Temperature, not a difference [°C]. */
    TEMPERATURE("°C", "°F", "1", "1.8", "temperature", "-30 °C"),
    /** Thermal expansion [1/K]. */
    EXPANSION("1/°C", "1/°F", "1.8", "1", "thermal expansion", "12e-6 /K"),
    /** Angle [rad]. */
    ANGLE("rad", "rad", "1", "1", "angle", "30 °"),
    /** A bare number [-]. */
    RATIO("-", "-", "1", "1", "ratio", "0.9"),
    /** Stress, modulus or tensile grade [Pa]. */
    STRESS("Pa", "lbf/ft²", "4.4482216152605", "0.09290304", "stress", "120 GPa"),
    /** Area [m²]. */
    AREA("m²", "ft²", "0.09290304", "1", "area", "64.7 mm²"),
    /** Time [s]. */
    TIME("s", "s", "1", "1", "time", "0.4 ms"),
    /** Strain [-]. */
    STRAIN("-", "-", "1", "1", "strain", "0.4 %"),
    /** Acceleration [m/s²]. */
    ACCELERATION("m/s²", "ft/s²", "0.3048", "1", "acceleration", "9.81 m/s²"),
    /** Moment of a force [N·m]. */
    MOMENT("N·m", "lbf·ft", "1.3558179483314004", "1", "moment", "12 kN·m"),
    /** Second moment of area [m⁴]. */
    SECOND_MOMENT("m⁴", "ft⁴", "0.0086309748412416", "1", "second moment of area", "1840 cm⁴");

    private static final MathContext PRECISE = new MathContext(40);

    private final String si;
    private final String customary;
    private final BigDecimal numerator;
    private final BigDecimal denominator;
    private final String label;
    private final String sample;

    Dimension(String si, String customary, String numerator, String denominator, String label, String sample) {
        this.label = label;
        this.sample = sample;
        this.si = si;
        this.customary = customary;
        this.numerator = new BigDecimal(numerator);
        this.denominator = new BigDecimal(denominator);
    }

    /**
     * The dimension in words.
     *
     * @return for example {@code "force per length"}
     */
    public String label() {
        return label;
    }

    /**
     * The dimension in words, with its article.
     *
     * @return for example {@code "an area"}
     */
    public String withArticle() {
        return (label.startsWith("a") || label.startsWith("e") ? "an " : "a ") + label;
    }

    /**
     * How a quantity of this dimension is written.
     *
     * @return for example {@code "1.8 m"}
     */
    public String sample() {
        return sample;
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
