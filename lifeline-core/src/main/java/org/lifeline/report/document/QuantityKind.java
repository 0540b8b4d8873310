package org.lifeline.report.document;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.lifeline.base.UnitSystem;
import org.lifeline.base.unit.Unit;

/**
 * How a kind of quantity is shown: its unit in each system and the digits that a result carries in tables and drawings.
 *
 * <p>Conversions are exact (international yard and pound agreement, 1959; standard gravity, 3rd CGPM, 1901); the number is
 * rounded once, half up, from the exact value of the double. Digits are the same wherever a kind of quantity is shown:
 * forces 0.01 kN or 1 lbf, lengths 1 mm or 0.001 ft, small lengths 0.1 mm or 0.01 in, energies 1 J or 1 ft·lbf, angles 0.1°,
 * temperatures 0.1°, times 1 ms, the rest four significant digits: more would pretend an accuracy that ropes, absorbers and
 * bodies do not have. The unrounded numbers are those of the results themselves.
 *
 * @since 1.0.0
 */
public enum QuantityKind {
    /** Force. */
    FORCE(new Shown(Unit.KILONEWTON, 2), new Shown(Unit.POUND_FORCE, 0), 0, 2),
    /** Length, height, distance. */
    LENGTH(Shown.in(Unit.METRE), Shown.in(Unit.FOOT), 0, 3),
    /** Small length. */
    SMALL_LENGTH(new Shown(Unit.MILLIMETRE, 1), new Shown(Unit.INCH, 2), 4, 0),
    /** Moment of a force [N·m], as kN·m or lbf·ft. */
    MOMENT(new Shown(Unit.KILONEWTON_METRE, 2), new Shown(Unit.POUND_FORCE_FOOT, 0), 0, 2),
    /** Energy. */
    ENERGY(Shown.in(Unit.JOULE), Shown.in(Unit.FOOT_POUND_FORCE), 0, 0),
    /** Mass. */
    MASS(Shown.in(Unit.KILOGRAM), Shown.in(Unit.POUND), 4, 0),
    /** Mass per length. */
    MASS_PER_LENGTH(Shown.in(Unit.KILOGRAM_PER_METRE), Shown.in(Unit.POUND_PER_FOOT), 4, 0),
    /** Weight per length. */
    WEIGHT_PER_LENGTH(Shown.in(Unit.NEWTON_PER_METRE), Shown.in(Unit.POUND_FORCE_PER_FOOT), 4, 0),
    /** Stiffness of a spring. */
    STIFFNESS(Shown.in(Unit.KILONEWTON_PER_METRE), Shown.in(Unit.POUND_FORCE_PER_INCH), 4, 0),
    /** Temperature. */
    TEMPERATURE(Shown.in(Unit.CELSIUS), Shown.in(Unit.FAHRENHEIT), 0, 1),
    /** Thermal expansion. */
    EXPANSION(Shown.in(Unit.PER_KELVIN), Shown.in(Unit.PER_FAHRENHEIT), 4, 0),
    /** Angle. */
    ANGLE(Shown.in(Unit.DEGREE), Shown.in(Unit.DEGREE), 0, 1),
    /** Time. */
    TIME(Shown.in(Unit.SECOND), Shown.in(Unit.SECOND), 0, 3),
    /** Bare number. */
    RATIO(Shown.in(Unit.ONE), Shown.in(Unit.ONE), 4, 0);

    private static final int INPUT_DIGITS = 7;

    private final Unit si;
    private final int siDecimals;
    private final Unit customary;
    private final int customaryDecimals;
    private final int significant;
    private final int decimals;

    /**
     * A kind.
     *
     * @param si unit, and most decimals of a computed number
     * @param customary the same for the customary unit
     * @param significant significant digits of a computed number; 0 if the decimals are fixed
     * @param decimals decimals, if they are fixed
     */
    QuantityKind(Shown si, Shown customary, int significant, int decimals) {
        this.si = si.unit;
        this.siDecimals = si.mostDecimals;
        this.customary = customary.unit;
        this.customaryDecimals = customary.mostDecimals;
        this.significant = significant;
        this.decimals = decimals;
    }

    /** A unit, and the most decimals that a computed number has in it. */
    private record Shown(Unit unit, int mostDecimals) {
        private static final int MOST_DECIMALS = 9;

        static Shown in(Unit unit) {
            return new Shown(unit, MOST_DECIMALS);
        }

        /** The symbol in a report, which writes 1/°C where a file writes /K. */
        String symbol() {
            return switch (unit) {
                case PER_KELVIN -> "1/°C";
                case PER_FAHRENHEIT -> "1/°F";
                default -> unit.symbol();
            };
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

    private Shown in(UnitSystem system) {
        return system == UnitSystem.SI ? new Shown(si, siDecimals) : new Shown(customary, customaryDecimals);
    }

    /**
     * The unit in which the quantity is shown.
     *
     * @param system the system
     * @return its symbol; empty for a bare number
     */
    public String unit(UnitSystem system) {
        return in(system).symbol();
    }

    /**
     * The exact number in the unit of a system.
     *
     * @param value the quantity in SI [unit of the kind], finite
     * @param system the system
     * @return the number, to sixty digits
     */
    public BigDecimal exact(double value, UnitSystem system) {
        return in(system).unit().exact(value);
    }

    /**
     * The number in the unit of a system.
     *
     * @param value the quantity in SI [unit of the kind], finite
     * @param system the system
     * @return the number [unit of the system], not rounded beyond the last place of a double
     */
    public double in(double value, UnitSystem system) {
        return in(system).unit().fromSi(value);
    }

    /**
     * A quantity in SI from a number in the unit of a system.
     *
     * @param number the number [unit of the system], finite
     * @param system the system
     * @return the quantity in SI [unit of the kind]
     */
    public double back(double number, UnitSystem system) {
        return in(system).unit().toSi(number);
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
