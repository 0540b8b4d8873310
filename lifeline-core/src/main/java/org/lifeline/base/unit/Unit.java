package org.lifeline.base.unit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The units in which quantities are stated and shown, with factors into SI and back.
 *
 * <p>Exact by definition: 1 in = 0.0254 m, 1 ft = 0.3048 m, 1 lb = 0.45359237 kg (international yard and pound agreement,
 * 1959); standard gravity 9.80665 m/s² (3rd CGPM, 1901), hence 1 lbf = 4.4482216152605 N. A number is converted exactly and rounded once. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public enum Unit {
    /** Metre. */
    METRE(Dimension.LENGTH, "m", "1"),
    /** Millimetre. */
    MILLIMETRE(Dimension.LENGTH, "mm", "0.001"),
    /** Centimetre. */
    CENTIMETRE(Dimension.LENGTH, "cm", "0.01"),
    /** Foot. */
    FOOT(Dimension.LENGTH, "ft", "0.3048"),
    /** Inch. */
    INCH(Dimension.LENGTH, "in", "0.0254"),
    /** Newton. */
    NEWTON(Dimension.FORCE, "N", "1"),
    /** Kilonewton. */
    KILONEWTON(Dimension.FORCE, "kN", "1e3"),
    /** Meganewton. */
    MEGANEWTON(Dimension.FORCE, "MN", "1e6"),
    /** Pound-force. */
    POUND_FORCE(Dimension.FORCE, "lbf", "4.4482216152605"),
    /** Thousand pounds-force. */
    KIP(Dimension.FORCE, "kip", "4448.2216152605"),
    /** Kilogram. */
    KILOGRAM(Dimension.MASS, "kg", "1"),
    /** Pound of mass. */
    POUND(Dimension.MASS, "lb", "0.45359237"),
    /** Newton per metre. */
    NEWTON_PER_METRE(Dimension.FORCE_PER_LENGTH, "N/m", "1"),
    /** Kilonewton per metre. */
    KILONEWTON_PER_METRE(Dimension.FORCE_PER_LENGTH, "kN/m", "1e3"),
    /** Meganewton per metre. */
    MEGANEWTON_PER_METRE(Dimension.FORCE_PER_LENGTH, "MN/m", "1e6"),
    /** Newton per millimetre. */
    NEWTON_PER_MILLIMETRE(Dimension.FORCE_PER_LENGTH, "N/mm", "1e3"),
    /** Pound-force per foot. */
    POUND_FORCE_PER_FOOT(Dimension.FORCE_PER_LENGTH, "lbf/ft", "4.4482216152605", "0.3048"),
    /** Pound-force per inch. */
    POUND_FORCE_PER_INCH(Dimension.FORCE_PER_LENGTH, "lbf/in", "4.4482216152605", "0.0254"),
    /** Kilogram per metre. */
    KILOGRAM_PER_METRE(Dimension.MASS_PER_LENGTH, "kg/m", "1"),
    /** Pound per foot. */
    POUND_PER_FOOT(Dimension.MASS_PER_LENGTH, "lb/ft", "0.45359237", "0.3048"),
    /** Pascal. */
    PASCAL(Dimension.STRESS, "Pa", "1"),
    /** Kilopascal. */
    KILOPASCAL(Dimension.STRESS, "kPa", "1e3"),
    /** Megapascal. */
    MEGAPASCAL(Dimension.STRESS, "MPa", "1e6"),
    /** Gigapascal. */
    GIGAPASCAL(Dimension.STRESS, "GPa", "1e9"),
    /** Newton per square millimetre. */
    NEWTON_PER_SQUARE_MILLIMETRE(Dimension.STRESS, "N/mm²", "1e6", "1", "N/mm^2"),
    /** Pound-force per square inch. */
    POUND_PER_SQUARE_INCH(Dimension.STRESS, "psi", "4.4482216152605", "0.00064516"),
    /** Thousand pounds-force per square inch. */
    KIP_PER_SQUARE_INCH(Dimension.STRESS, "ksi", "4448.2216152605", "0.00064516"),
    /** Square millimetre. */
    SQUARE_MILLIMETRE(Dimension.AREA, "mm²", "1e-6", "1", "mm^2"),
    /** Square inch. */
    SQUARE_INCH(Dimension.AREA, "in²", "0.00064516", "1", "in^2"),
    /** Square metre. */
    SQUARE_METRE(Dimension.AREA, "m²", "1", "1", "m^2"),
    /** Joule. */
    JOULE(Dimension.ENERGY, "J", "1"),
    /** Kilojoule. */
    KILOJOULE(Dimension.ENERGY, "kJ", "1e3"),
    /** Foot pound-force. */
    FOOT_POUND_FORCE(
            Dimension.ENERGY, "ft·lbf", "1.3558179483314004", "1", "ftlbf", "ft-lbf", "ft*lbf", "ft.lbf", "ft lbf"),
    /** Second. */
    SECOND(Dimension.TIME, "s", "1"),
    /** Millisecond. */
    MILLISECOND(Dimension.TIME, "ms", "0.001"),
    /** Degree Celsius. */
    CELSIUS(Dimension.TEMPERATURE, "°C", "1", "1", "degC", "deg C"),
    /** Degree Fahrenheit. */
    FAHRENHEIT(Dimension.TEMPERATURE, "°F", "5", "9", "degF", "deg F"),
    /** Kelvin. */
    KELVIN(Dimension.TEMPERATURE, "K", "1"),
    /** Per kelvin. */
    PER_KELVIN(Dimension.EXPANSION, "/K", "1", "1", "1/K", "/°C", "1/°C", "/degC", "1/degC"),
    /** Per degree Fahrenheit of difference. */
    PER_FAHRENHEIT(Dimension.EXPANSION, "/°F", "1.8", "1", "1/°F", "/degF", "1/degF"),
    /** Percent. */
    PERCENT(Dimension.STRAIN, "%", "0.01"),
    /** A bare number. */
    ONE(Dimension.RATIO, "", "1"),
    /** Radian. */
    RADIAN(Dimension.ANGLE, "rad", "1"),
    /** Degree of angle: π/180 rad, to 41 digits. */
    DEGREE(Dimension.ANGLE, "°", "0.017453292519943295769236907684886127134429", "1", "deg"),
    /** Metre per second squared. */
    METRE_PER_SECOND_SQUARED(Dimension.ACCELERATION, "m/s²", "1", "1", "m/s^2"),
    /** Foot per second squared. */
    FOOT_PER_SECOND_SQUARED(Dimension.ACCELERATION, "ft/s²", "0.3048", "1", "ft/s^2"),
    /** Newton metre. */
    NEWTON_METRE(Dimension.MOMENT, "N·m", "1", "1", "Nm", "N*m", "N.m"),
    /** Kilonewton metre. */
    KILONEWTON_METRE(Dimension.MOMENT, "kN·m", "1e3", "1", "kNm", "kN*m", "kN.m"),
    /** Pound-force foot, as a moment. */
    POUND_FORCE_FOOT(Dimension.MOMENT, "lbf·ft", "1.3558179483314004", "1", "lbfft", "lbf*ft", "lbf.ft"),
    /** Kip foot. */
    KIP_FOOT(Dimension.MOMENT, "kip·ft", "1355.8179483314004", "1", "kipft", "kip*ft", "kip.ft"),
    /** Centimetre to the fourth. */
    CENTIMETRE_TO_THE_FOURTH(Dimension.SECOND_MOMENT, "cm⁴", "1e-8", "1", "cm^4"),
    /** Millimetre to the fourth. */
    MILLIMETRE_TO_THE_FOURTH(Dimension.SECOND_MOMENT, "mm⁴", "1e-12", "1", "mm^4"),
    /** Metre to the fourth. */
    METRE_TO_THE_FOURTH(Dimension.SECOND_MOMENT, "m⁴", "1", "1", "m^4"),
    /** Inch to the fourth: (0.0254 m)⁴. */
    INCH_TO_THE_FOURTH(Dimension.SECOND_MOMENT, "in⁴", "4.162314256e-7", "1", "in^4");

    private static final Pattern BLANKS = Pattern.compile("\\s*([/·])\\s*");

    private static final Map<String, Unit> BY_SPELLING = spellings();
    private static final MathContext PRECISE = new MathContext(60);
    private static final BigDecimal FREEZING_IN_FAHRENHEIT = BigDecimal.valueOf(32);
    private static final BigDecimal FREEZING_IN_KELVIN = new BigDecimal("273.15");

    /** Digits of a printed number: one is tried first; so many bring back what was stated, also a small °C in kelvin [-]. */
    private static final int FEWEST_DIGITS = 1;

    private static final int MOST_DIGITS = 45;

    private final Dimension dimension;
    private final String symbol;
    private final BigDecimal factor;
    private final BigDecimal divisor;
    private final String otherSpellings;

    Unit(Dimension dimension, String symbol, String factor) {
        this(dimension, symbol, factor, "1");
    }

    Unit(Dimension dimension, String symbol, String factor, String divisor, String... otherSpellings) {
        this.dimension = dimension;
        this.symbol = symbol;
        this.factor = new BigDecimal(factor);
        this.divisor = new BigDecimal(divisor);
        this.otherSpellings = String.join("|", otherSpellings);
    }

    private static Map<String, Unit> spellings() {
        Map<String, Unit> map = new LinkedHashMap<>();
        for (Unit each : values()) {
            each.allSpellings().forEach(s -> map.put(fold(s), each));
        }
        return Map.copyOf(map);
    }

    /** One form for spellings that look alike: mm² and mm2, cm⁴ and cm4, ℃ and °C, dots for a product, blanks around a slash. */
    private static String fold(String text) {
        String plain = text.replace('²', '2')
                .replace('⁴', '4')
                .replace("℃", "°C")
                .replace("℉", "°F")
                .replace('⋅', '·')
                .replace('∕', '/')
                .replace('⁄', '/')
                .replace('\u00a0', ' ')
                .replace('\u202f', ' ');
        return BLANKS.matcher(plain).replaceAll("$1").strip();
    }

    /**
     * The unit of a spelling.
     *
     * @param text the spelling, for example {@code "mm2"} or {@code "ft·lbf"}
     * @return the unit, if it is known
     */
    public static Optional<Unit> spelled(String text) {
        return Optional.ofNullable(BY_SPELLING.get(fold(text)));
    }

    /**
     * The units of a dimension, as a text for messages.
     *
     * @param dimension the dimension
     * @return for example {@code "m, mm, cm, ft, in"}
     */
    public static String list(Dimension dimension) {
        return Arrays.stream(values())
                .filter(u -> u.dimension == dimension)
                .map(Unit::symbol)
                .collect(Collectors.joining(", "));
    }

    /**
     * Every spelling that is understood.
     *
     * @return the spellings of all units, symbols first; unmodifiable
     */
    public List<String> allSpellings() {
        String all = otherSpellings.isEmpty() ? symbol : symbol + "|" + otherSpellings;
        return List.of(all.split("\\|", -1));
    }

    /**
     * What the unit measures.
     *
     * @return the dimension
     */
    public Dimension dimension() {
        return dimension;
    }

    /**
     * The unit's symbol.
     *
     * @return for example {@code "kN"}
     */
    public String symbol() {
        return symbol;
    }

    /**
     * Turns a number in this unit into SI, rounded once.
     *
     * @param value the number
     * @return the SI value [unit of the dimension]; temperatures [°C]
     */
    public double toSi(BigDecimal value) {
        BigDecimal shifted = this == FAHRENHEIT ? value.subtract(FREEZING_IN_FAHRENHEIT) : value;
        BigDecimal product = shifted.multiply(factor);
        if (divisor.compareTo(BigDecimal.ONE) != 0) {
            product = product.divide(divisor, PRECISE);
        }
        return (this == KELVIN ? product.subtract(FREEZING_IN_KELVIN) : product).doubleValue();
    }

    /**
     * Turns a number in this unit into SI, rounded once.
     *
     * @param value the number [unit of the number]; may be infinite or NaN
     * @return the SI value [unit of the dimension]; temperatures [°C]
     */
    public double toSi(double value) {
        return Double.isFinite(value) ? toSi(new BigDecimal(value)) : value;
    }

    /**
     * The exact number of a quantity in this unit.
     *
     * @param si the quantity in SI [unit of the dimension], finite; temperatures [°C]
     * @return the number, to 60 digits
     */
    public BigDecimal exact(double si) {
        BigDecimal shifted = this == KELVIN ? new BigDecimal(si).add(FREEZING_IN_KELVIN) : new BigDecimal(si);
        BigDecimal number =
                isSi() ? shifted.round(PRECISE) : shifted.multiply(divisor).divide(factor, PRECISE);
        return this == FAHRENHEIT ? number.add(FREEZING_IN_FAHRENHEIT) : number;
    }

    /** Tells whether a number in this unit is the number in SI. */
    private boolean isSi() {
        return this != KELVIN && factor.compareTo(divisor) == 0;
    }

    /**
     * Turns a quantity in SI into a number in this unit, rounded once.
     *
     * @param si the quantity in SI [unit of the dimension]; may be infinite or NaN; temperatures [°C]
     * @return the number [unit of the number]
     */
    public double fromSi(double si) {
        if (isSi()) {
            // Zero has no sign as a number with digits.
            return si + 0.0;
        }
        return Double.isFinite(si) ? exact(si).doubleValue() : si;
    }

    /**
     * A quantity with this unit, as text that {@link QuantityText} reads back.
     *
     * @param si the quantity in SI [unit of the dimension]; may be infinite or NaN; temperatures [°C]
     * @param decimals decimals to round to, half up; not negative
     * @return for example {@code "21.09 kN"}
     */
    public String print(double si, int decimals) {
        String number = Double.isFinite(si)
                ? exact(si).setScale(decimals, RoundingMode.HALF_UP).toPlainString()
                : Double.toString(si);
        return symbol.isEmpty() ? number : number + " " + symbol;
    }

    /**
     * A quantity with this unit, with as many digits as bring the same SI value back.
     *
     * @param si the quantity in SI [unit of the dimension]; may be infinite or NaN; temperatures [°C]
     * @return for example {@code "21.086413900000002 kN"}
     */
    public String print(double si) {
        if (!Double.isFinite(si)) {
            return print(si, 0);
        }
        BigDecimal exact = exact(si);
        int digits = FEWEST_DIGITS;
        BigDecimal shortest = exact.round(new MathContext(digits));
        while (toSi(shortest) != si && digits < MOST_DIGITS) {
            digits++;
            shortest = exact.round(new MathContext(digits));
        }
        BigDecimal plain = shortest.stripTrailingZeros();
        String number = plain.scale() < 0 ? plain.setScale(0).toPlainString() : plain.toPlainString();
        return symbol.isEmpty() ? number : number + " " + symbol;
    }
}
