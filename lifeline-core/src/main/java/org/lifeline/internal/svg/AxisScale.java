package org.lifeline.internal.svg;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/** An axis: a range of numbers on a range of the picture, with ticks at round numbers. */
public final class AxisScale {
    /** How close to a tick, in steps, a number counts as lying on it [-]: far above rounding, far below what is seen. */
    private static final double ON_TICK = 1e-9;

    /** Excess over 1, 2 or 5 that is taken for rounding of the step [-]. */
    private static final double ROUND = 1e-7;

    /** Extent of an axis for a single number, as a share of it [-]. */
    private static final double SHARE_OF_ONE = 0.1;

    /** Least extent of an axis [unit of the axis]. */
    private static final double LEAST_SPAN = 1e-9;

    /**
     * Two ends.
     *
     * @param from the one, as a rule the lower
     * @param to the other
     */
    public record Range(double from, double to) {}

    private final double low;
    private final double high;
    private final double from;
    private final double to;
    private final BigDecimal step;

    /**
     * A scale.
     *
     * @param range lowest and highest number
     * @param place where these lie in the picture [user units]
     * @param ticks about how many ticks
     */
    public AxisScale(Range range, Range place, int ticks) {
        this.low = range.from();
        this.high = range.to();
        this.from = place.from();
        this.to = place.to();
        this.step = step(high - low, ticks);
    }

    /** A scale whose ends are round numbers. */
    public static AxisScale rounded(Range range, Range place, int ticks) {
        double span = range.to() > range.from()
                ? range.to() - range.from()
                : Math.abs(range.from()) * SHARE_OF_ONE + LEAST_SPAN;
        double s = step(span, ticks).doubleValue();
        double low = Math.floor(range.from() / s + ON_TICK) * s;
        double high = Math.ceil(Math.max(range.to(), range.from() + span) / s - ON_TICK) * s;
        return new AxisScale(new Range(low, high), place, ticks);
    }

    /** 1, 2 or 5 times a power of ten. */
    public static BigDecimal step(double span, int ticks) {
        double raw = span / Math.max(1, ticks);
        double power = StrictMath.pow(10, Math.floor(StrictMath.log10(raw)));
        double m = raw / power;
        int digit = m <= 1 + ROUND ? 1 : m <= 2 + ROUND ? 2 : m <= 5 + ROUND ? 5 : 10;
        return new BigDecimal(digit).multiply(new BigDecimal(power, new MathContext(3)));
    }

    public double at(double value) {
        return from + (value - low) / (high - low) * (to - from);
    }

    public double low() {
        return low;
    }

    public double high() {
        return high;
    }

    /** Round numbers within the range. */
    public List<BigDecimal> ticks() {
        List<BigDecimal> list = new ArrayList<>();
        long first = (long) Math.ceil(low / step.doubleValue() - ON_TICK);
        long last = (long) Math.floor(high / step.doubleValue() + ON_TICK);
        for (long k = first; k <= last; k++) {
            list.add(step.multiply(BigDecimal.valueOf(k)).stripTrailingZeros());
        }
        return list;
    }

    /** A tick's number with the decimals of the step and a true minus sign. */
    public String label(BigDecimal tick) {
        int decimals = Math.max(0, step.stripTrailingZeros().scale());
        return tick.setScale(decimals, RoundingMode.HALF_UP).toPlainString().replace('-', '−');
    }
}
