package org.lifeline.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/** An axis: a range of numbers on a range of the picture, with ticks at round numbers. */
final class Scale {
    private final double low;
    private final double high;
    private final double from;
    private final double to;
    private final BigDecimal step;

    /**
     * A scale.
     *
     * @param range lowest and highest number
     * @param place where these lie in the picture
     * @param ticks about how many ticks
     */
    Scale(double[] range, double[] place, int ticks) {
        this.low = range[0];
        this.high = range[1];
        this.from = place[0];
        this.to = place[1];
        this.step = step(high - low, ticks);
    }

    /** A scale whose ends are round numbers. */
    static Scale rounded(double[] range, double[] place, int ticks) {
        double span = range[1] > range[0] ? range[1] - range[0] : Math.max(1e-9, Math.abs(range[0]) * 0.1 + 1e-9);
        double s = step(span, ticks).doubleValue();
        double low = Math.floor(range[0] / s + 1e-9) * s;
        double high = Math.ceil(Math.max(range[1], range[0] + span) / s - 1e-9) * s;
        return new Scale(new double[] {low, high}, place, ticks);
    }

    /** 1, 2 or 5 times a power of ten. */
    static BigDecimal step(double span, int ticks) {
        double raw = span / Math.max(1, ticks);
        double power = Math.pow(10, Math.floor(Math.log10(raw)));
        double m = raw / power;
        int digit = m <= 1.0000001 ? 1 : m <= 2.0000001 ? 2 : m <= 5.0000001 ? 5 : 10;
        return new BigDecimal(digit).multiply(new BigDecimal(power, new MathContext(3)));
    }

    double at(double value) {
        return from + (value - low) / (high - low) * (to - from);
    }

    double low() {
        return low;
    }

    double high() {
        return high;
    }

    /** Round numbers within the range. */
    List<BigDecimal> ticks() {
        List<BigDecimal> list = new ArrayList<>();
        long first = (long) Math.ceil(low / step.doubleValue() - 1e-9);
        long last = (long) Math.floor(high / step.doubleValue() + 1e-9);
        for (long k = first; k <= last; k++) {
            list.add(step.multiply(BigDecimal.valueOf(k)).stripTrailingZeros());
        }
        return list;
    }

    /** A tick's number with the decimals of the step. */
    String label(BigDecimal tick) {
        int decimals = Math.max(0, step.stripTrailingZeros().scale());
        return Measure.show(tick.setScale(decimals, java.math.RoundingMode.HALF_UP));
    }
}
