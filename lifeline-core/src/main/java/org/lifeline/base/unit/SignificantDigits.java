package org.lifeline.base.unit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Numbers written with so many significant digits, the same on every platform. It writes what the format {@code %g} of the JDK
 * writes, which not every platform has.
 *
 * @since 1.0.0
 */
public final class SignificantDigits {
    private static final int SMALLEST_PLAIN = -4;

    private SignificantDigits() {}

    /**
     * A number with so many significant digits.
     *
     * @param value the number [-], in a unit named beside it
     * @param digits significant digits, at least 1
     * @return the number, rounded half up; with a power of ten below 1e-4 and where it has more digits before the point than
     *     are written
     */
    public static String of(double value, int digits) {
        if (!Double.isFinite(value)) {
            return Double.toString(value);
        }
        BigDecimal rounded =
                new BigDecimal(Double.toString(value)).round(new MathContext(digits, RoundingMode.HALF_UP));
        if (rounded.signum() == 0) {
            return rounded.setScale(digits - 1, RoundingMode.UNNECESSARY).toPlainString();
        }
        int exponent = rounded.precision() - rounded.scale() - 1;
        if (exponent >= SMALLEST_PLAIN && exponent < digits) {
            return rounded.setScale(digits - 1 - exponent, RoundingMode.UNNECESSARY)
                    .toPlainString();
        }
        String mantissa = rounded.movePointLeft(exponent)
                .setScale(digits - 1, RoundingMode.UNNECESSARY)
                .toPlainString();
        int size = Math.abs(exponent);
        return mantissa + (exponent < 0 ? "e-" : "e+") + (size < 10 ? "0" : "") + size;
    }
}
