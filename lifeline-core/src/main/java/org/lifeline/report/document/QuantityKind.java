package org.lifeline.report.document;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.lifeline.base.UnitSystem;

/**
 * How a kind of quantity is shown: its unit in each system and the digits that a result carries in tables and drawings.
 *
 * <p>Conversions are exact (international yard and pound agreement, 1959; standard gravity, 3rd CGPM, 1901); the number is
 * rounded once, half up, from the exact value of the double. Digits are the same wherever a kind of quantity is shown:
 * forces 0.01 kN or 1 lbf, lengths 1 mm or 0.001 ft, small lengths 0.1 mm or 0.01 in, energies 1 J or 1 ft·lbf, angles 0.1°,
 * temperatures 0.1°, times 1 ms, the rest four significant digits: more would pretend an accuracy that ropes, absorbers and
 * bodies do not have. The unrounded numbers are those of the results themselves.
 */
public enum QuantityKind {
    /** Force. */
    FORCE("kN=1000;2", "lbf=4.4482216152605;0", 0, 2),
    /** Length, height, distance. */
    LENGTH("m=1", "ft=0.3048", 0, 3),
    /** Small length. */
    SMALL_LENGTH("mm=0.001;1", "in=0.0254;2", 4, 0),
    /** Moment of a force [N·m], as kN·m or ft·lbf. */
    MOMENT("kN·m=1000;2", "ft·lbf=1.3558179483314004;0", 0, 2),
    /** Energy. */
    ENERGY("J=1", "ft·lbf=1.3558179483314004", 0, 0),
    /** Mass. */
    MASS("kg=1", "lb=0.45359237", 4, 0),
    /** Mass per length. */
    MASS_PER_LENGTH("kg/m=1", "lb/ft=0.45359237/0.3048", 4, 0),
    /** Weight per length. */
    WEIGHT_PER_LENGTH("N/m=1", "lbf/ft=4.4482216152605/0.3048", 4, 0),
    /** Stiffness of a spring. */
    STIFFNESS("kN/m=1000", "lbf/in=4.4482216152605/0.0254", 4, 0),
    /** Temperature. */
    TEMPERATURE("°C=1", "°F=5/9", 0, 1),
    /** Thermal expansion. */
    EXPANSION("1/°C=1", "1/°F=9/5", 4, 0),
    /** Angle. */
    ANGLE("°=0.017453292519943295769236907684886127134", "°=0.017453292519943295769236907684886127134", 0, 1),
    /** Time. */
    TIME("s=1", "s=1", 0, 3),
    /** Bare number. */
    RATIO("=1", "=1", 4, 0);

    private static final int INPUT_DIGITS = 7;
    private static final int MOST_DECIMALS = 9;
    private static final MathContext PRECISE = new MathContext(50);

    private final String si;
    private final String customary;
    private final int significant;
    private final int decimals;

    /**
     * A kind.
     *
     * @param si unit, its size in SI, most decimals of a computed number: {@code name=numerator/denominator;decimals}
     * @param customary the same for the customary unit
     * @param significant significant digits of a computed number; 0 if the decimals are fixed
     * @param decimals decimals, if they are fixed
     */
    QuantityKind(String si, String customary, int significant, int decimals) {
        this.si = si;
        this.customary = customary;
        this.significant = significant;
        this.decimals = decimals;
    }

    /** A unit: name and its size in SI as a fraction. */
    private record Unit(String name, BigDecimal numerator, BigDecimal denominator, int mostDecimals) {
        static Unit parse(String spec) {
            int semicolon = spec.indexOf(';');
            String text = semicolon < 0 ? spec : spec.substring(0, semicolon);
            int most = semicolon < 0 ? MOST_DECIMALS : Integer.parseInt(spec.substring(semicolon + 1));
            int equals = text.indexOf('=');
            int slash = text.indexOf('/', equals);
            String top = slash < 0 ? text.substring(equals + 1) : text.substring(equals + 1, slash);
            String bottom = slash < 0 ? "1" : text.substring(slash + 1);
            return new Unit(text.substring(0, equals), new BigDecimal(top), new BigDecimal(bottom), most);
        }
    }

    /** Decimals for a number; never a rounding left of the point. */
    private int scale(BigDecimal value, UnitSystem system) {
        if (significant > 0 && value.signum() == 0) {
            return 0;
        }
        if (significant == 0) {
            return Math.min(decimals, in(system).mostDecimals());
        }
        BigDecimal rounded = value.round(new MathContext(significant, RoundingMode.HALF_UP));
        return Math.min(in(system).mostDecimals(), Math.max(0, rounded.scale() - rounded.precision() + significant));
    }

    private Unit in(UnitSystem system) {
        return Unit.parse(system == UnitSystem.SI ? si : customary);
    }

    /**
     * The unit in which the quantity is shown.
     *
     * @param system the system
     * @return its symbol; empty for a bare number
     */
    public String unit(UnitSystem system) {
        return in(system).name();
    }

    /**
     * The exact number in the unit of a system.
     *
     * @param value the quantity in SI [unit of the kind], finite
     * @param system the system
     * @return the number, to fifty digits
     */
    public BigDecimal exact(double value, UnitSystem system) {
        Unit u = in(system);
        BigDecimal converted = new BigDecimal(value).multiply(u.denominator()).divide(u.numerator(), PRECISE);
        return this == TEMPERATURE && system == UnitSystem.US_CUSTOMARY
                ? converted.add(BigDecimal.valueOf(32))
                : converted;
    }

    /**
     * The number in the unit of a system.
     *
     * @param value the quantity in SI [unit of the kind], finite
     * @param system the system
     * @return the number [unit of the system], not rounded beyond the last place of a double
     */
    public double in(double value, UnitSystem system) {
        return exact(value, system).doubleValue();
    }

    /**
     * A quantity in SI from a number in the unit of a system.
     *
     * @param number the number [unit of the system], finite
     * @param system the system
     * @return the quantity in SI [unit of the kind]
     */
    public double back(double number, UnitSystem system) {
        Unit u = in(system);
        BigDecimal shifted = this == TEMPERATURE && system == UnitSystem.US_CUSTOMARY
                ? new BigDecimal(number).subtract(BigDecimal.valueOf(32))
                : new BigDecimal(number);
        return shifted.multiply(u.numerator()).divide(u.denominator(), PRECISE).doubleValue();
    }

    /**
     * A computed number with the digits that it deserves, without its unit.
     *
     * @param value the quantity in SI [unit of the kind]
     * @param system the system
     * @return the number, with a true minus sign; "unlimited" for infinity and "none" for what is not a number
     */
    public String number(double value, UnitSystem system) {
        if (!Double.isFinite(value)) {
            return Double.isNaN(value) ? "none" : value > 0 ? "unlimited" : "−unlimited";
        }
        BigDecimal exact = exact(value, system);
        return show(exact.setScale(scale(exact, system), RoundingMode.HALF_UP));
    }

    /**
     * The number rounded half up to a number of decimals.
     *
     * @param value the quantity in SI [unit of the kind], finite
     * @param system the system
     * @param decimals the decimals
     * @return the number in the unit of the system
     */
    public BigDecimal rounded(double value, UnitSystem system, int decimals) {
        return exact(value, system).setScale(decimals, RoundingMode.HALF_UP);
    }

    /**
     * Decimals that a computed number of this size is shown with.
     *
     * @param value the quantity in SI [unit of the kind], finite
     * @param system the system
     * @return the decimals, not negative
     */
    public int decimals(double value, UnitSystem system) {
        return scale(exact(value, system), system);
    }

    /** A number that was put in: as short as it is, at most seven significant digits. */
    String input(double value, UnitSystem system) {
        if (!Double.isFinite(value)) {
            return number(value, system);
        }
        BigDecimal short7 = exact(value, system).round(new MathContext(INPUT_DIGITS, RoundingMode.HALF_UP));
        BigDecimal plain = short7.stripTrailingZeros();
        return show(plain.scale() < 0 ? plain.setScale(0) : plain);
    }

    /**
     * Digits of a number.
     *
     * @param number the number
     * @return its digits, with a true minus sign; zero has none
     */
    public static String show(BigDecimal number) {
        return number.signum() < 0
                ? "−" + number.negate().toPlainString()
                : number.abs().toPlainString();
    }
}
