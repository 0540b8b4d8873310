package org.lifeline.analysis.explain;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;
import org.lifeline.base.unit.Dimension;

/** A number of a calculation sheet, with the symbol it is known by and the digits it is printed with. */
final class Figure extends Expression {
    private static final int SIGNIFICANT = 6;
    private static final int MOST_SIGNIFICANT = 14;
    private static final int EXACT_DIGITS = 9;
    private static final int NOISE = 13;

    private final String symbol;
    private final double value;
    private int mostDecimals;
    private final boolean exact;
    private final BigDecimal shortest;
    private int decimals;

    /**
     * A figure.
     *
     * @param symbol its symbol
     * @param value its value in the unit of the sheet
     * @param dimension its dimension
     * @param given true for a number that was put in and not computed
     */
    Figure(String symbol, double value, Dimension dimension, boolean given) {
        this.symbol = symbol;
        this.value = value;
        // A difference of inputs such as 12.6 − 12.4 carries noise behind the 13th digit.
        this.shortest = new BigDecimal(value, new MathContext(NOISE)).stripTrailingZeros();
        this.exact = value == 0 || (given && shortest.precision() <= EXACT_DIGITS);
        int magnitude = value == 0 ? 0 : (int) Math.floor(StrictMath.log10(Math.abs(value)));
        this.mostDecimals = Math.max(0, MOST_SIGNIFICANT - 1 - magnitude);
        int wanted = Math.max(0, SIGNIFICANT - 1 - magnitude);
        this.decimals = exact ? Math.max(0, shortest.scale()) : Math.min(wanted, finest(dimension));
    }

    /** Decimals beyond which a small number says nothing, until another row needs them. */
    private static int finest(Dimension dimension) {
        return switch (dimension) {
            case FORCE, ENERGY, MOMENT, FORCE_SQUARED_LENGTH -> 3;
            case LENGTH -> 6;
            case TEMPERATURE, MASS -> 4;
            case FORCE_PER_LENGTH, MASS_PER_LENGTH, ANGLE, STRESS -> 8;
            case RATIO, WEIGHT_PER_MASS, LENGTH_PER_FORCE, EXPANSION, AREA, SECOND_MOMENT, TIME, STRAIN, ACCELERATION ->
                12;
        };
    }

    String symbol() {
        return symbol;
    }

    double value() {
        return value;
    }

    int decimals() {
        return decimals;
    }

    /** Adds a digit; false when there is none to add. */
    boolean refine() {
        if (exact || decimals >= mostDecimals) {
            return false;
        }
        decimals++;
        return true;
    }

    /** Gives a digit back, for good: what it is computed from does not hold it. False when there is none to give. */
    boolean coarsen() {
        if (exact || decimals == 0) {
            return false;
        }
        decimals--;
        mostDecimals = decimals;
        return true;
    }

    /** A number rounded as this figure is printed; what is beyond the 15th digit is noise that must not break a tie. */
    BigDecimal round(double number) {
        return new BigDecimal(number, new MathContext(15)).setScale(decimals, RoundingMode.HALF_UP);
    }

    BigDecimal rounded() {
        return exact ? shortest.setScale(decimals, RoundingMode.UNNECESSARY) : round(value);
    }

    /** The printed number, with a true minus sign. */
    String printed() {
        BigDecimal r = rounded();
        return r.signum() < 0 ? "−" + r.negate().toPlainString() : r.abs().toPlainString();
    }

    @Override
    int binding() {
        return 4;
    }

    @Override
    double value(ToDoubleFunction<Figure> reading) {
        return reading.applyAsDouble(this);
    }

    @Override
    String write(boolean numbers) {
        if (!numbers) {
            return symbol;
        }
        String text = printed();
        return text.startsWith("−") ? "(" + text + ")" : text;
    }

    @Override
    void figures(Consumer<Figure> visitor) {
        visitor.accept(this);
    }
}
