package org.lifeline.internal.numeric;

import java.math.BigInteger;

/**
 * A sum of doubles without any rounding, so that the order and the grouping of the terms do not matter (U. Kulisch, <i>Computer
 * Arithmetic and Validity</i>, de Gruyter 2008, ch. 8: the long accumulator). Not thread-safe.
 *
 * <p>The sum is kept as an integer in units of 2⁻¹⁰⁸⁸ in digits of 32 bits; a term touches three of them.
 */
public final class ExactSum {
    private static final int DIGIT = 32; // bits
    /** Bits behind the point: a multiple of 32 above 1074. */
    static final int POINT = 1088;

    /** Power of two that the last bit of a subnormal number stands for. */
    private static final int LEAST_EXPONENT = Double.MIN_EXPONENT - 52;

    private static final int DIGITS = 68; // 1088 behind the point, 1024 before it, carries above
    private static final long MASK = 0xffffffffL;
    private static final int ADDS = 1 << 28; // each changes a digit by less than 2^33; a digit holds 2^63

    private final long[] digits = new long[DIGITS];
    private int adds;
    private boolean finite = true;

    /** Zero. */
    public ExactSum() {}

    /**
     * Adds a term.
     *
     * @param value the term; one that is not finite makes the sum NaN
     */
    public void add(double value) {
        if (value == 0) {
            return;
        }
        if (!Double.isFinite(value)) {
            finite = false;
            return;
        }
        long bits = Double.doubleToRawLongBits(value);
        int exponent = (int) (bits >>> 52) & 0x7ff;
        long mantissa = bits & 0xfffffffffffffL;
        if (exponent == 0) {
            exponent = 1;
        } else {
            mantissa |= 0x10000000000000L;
        }
        int place = exponent - 1075 + POINT;
        int k = place >>> 5;
        int shift = place & 31;
        long low = (mantissa & MASK) << shift;
        long high = (mantissa >>> DIGIT) << shift;
        long sign = value < 0 ? -1 : 1;
        digits[k] += sign * (low & MASK);
        digits[k + 1] += sign * ((low >>> DIGIT) + (high & MASK));
        digits[k + 2] += sign * (high >>> DIGIT);
        if (++adds == ADDS) {
            carry();
        }
    }

    /**
     * Adds a product without rounding it, as long as it neither overflows nor comes near the smallest numbers; there its rounding
     * is that of the two factors alone, whatever else is added.
     *
     * @param a one factor
     * @param b the other
     */
    public void addProduct(double a, double b) {
        double product = a * b;
        add(product);
        if (Double.isFinite(product)) {
            add(Math.fma(a, b, -product));
        }
    }

    /**
     * Adds another sum.
     *
     * @param other the other sum; it keeps its value
     */
    public void add(ExactSum other) {
        other.carry();
        carry();
        for (int i = 0; i < DIGITS; i++) {
            digits[i] += other.digits[i];
        }
        adds = 1;
        finite &= other.finite;
    }

    /** Brings every digit but the highest into 0 … 2³²−1. */
    private void carry() {
        long over = 0;
        for (int i = 0; i < DIGITS - 1; i++) {
            long d = digits[i] + over;
            digits[i] = d & MASK;
            over = d >> DIGIT;
        }
        digits[DIGITS - 1] += over;
        adds = 0;
    }

    /**
     * The sum as an integer in units of 2⁻¹⁰⁸⁸.
     *
     * @return the integer
     * @throws ArithmeticException if a term was not finite
     */
    BigInteger units() {
        if (!finite) {
            throw new ArithmeticException("a term of the sum was not finite");
        }
        BigInteger sum = BigInteger.ZERO;
        for (int i = DIGITS - 1; i >= 0; i--) {
            sum = sum.shiftLeft(DIGIT).add(BigInteger.valueOf(digits[i]));
        }
        return sum;
    }

    boolean isFinite() {
        return finite;
    }

    /**
     * The sum over a whole number, rounded once.
     *
     * @param divisor the number, above zero
     * @return the quotient; NaN if a term was not finite
     */
    public double over(long divisor) {
        return finite ? quotient(units(), BigInteger.valueOf(divisor), POINT) : Double.NaN;
    }

    /** numerator / denominator · 2^−point, rounded to nearest, ties to even; denominator above zero. */
    static double quotient(BigInteger numerator, BigInteger denominator, int point) {
        if (numerator.signum() == 0) {
            return 0;
        }
        // At least 66 bits of the quotient; the last of them tells whether anything follows, so one rounding is left.
        int shift = Math.max(0, 66 + denominator.bitLength() - numerator.bitLength());
        BigInteger[] parts = numerator.abs().shiftLeft(shift).divideAndRemainder(denominator);
        BigInteger q = parts[1].signum() == 0 ? parts[0] : parts[0].setBit(0);
        int more = q.bitLength() - 66;
        if (more > 0) {
            boolean sticky = q.getLowestSetBit() < more;
            q = q.shiftRight(more);
            q = sticky ? q.setBit(0) : q;
            shift -= more;
        }
        int last = -shift - point;
        if (q.bitLength() + last <= Double.MIN_EXPONENT) {
            // Subnormal numbers carry fewer bits than 53: rounded to those first, nothing is left for scalb to round.
            q = nearest(q, LEAST_EXPONENT - last);
            last = LEAST_EXPONENT;
        }
        double value = Math.scalb(q.doubleValue(), last);
        return numerator.signum() < 0 ? -value : value;
    }

    /** q · 2^−bits, rounded to the nearest whole number, ties to even; bits above zero. */
    private static BigInteger nearest(BigInteger q, int bits) {
        BigInteger whole = q.shiftRight(bits);
        boolean more = q.getLowestSetBit() < bits - 1;
        return q.testBit(bits - 1) && (more || whole.testBit(0)) ? whole.add(BigInteger.ONE) : whole;
    }

    /**
     * The sum as text: an odd whole number in hexadecimal digits, {@code p} and a power of two; {@code "0"} for zero,
     * {@code "NaN"} if a term was not finite. Equal sums have equal texts.
     *
     * @return for example {@code "-1fp-3"} for −31/8
     */
    public String text() {
        if (!finite) {
            return "NaN";
        }
        BigInteger sum = units();
        if (sum.signum() == 0) {
            return "0";
        }
        int zeros = sum.getLowestSetBit();
        return sum.shiftRight(zeros).toString(16) + "p" + (zeros - POINT);
    }

    /**
     * A sum from its text.
     *
     * @param text as {@link #text()} gives it
     * @return the sum
     * @throws NumberFormatException if the text is none, or the number does not fit
     */
    public static ExactSum parse(String text) {
        ExactSum sum = new ExactSum();
        if (text.equals("NaN")) {
            sum.finite = false;
            return sum;
        }
        if (text.equals("0")) {
            return sum;
        }
        int p = text.indexOf('p');
        if (p < 0 || p > 600) {
            throw new NumberFormatException("not a sum: it has no power of two, or too many digits");
        }
        BigInteger number = new BigInteger(text.substring(0, p), 16);
        int power = Integer.parseInt(text.substring(p + 1));
        if (power < -POINT || power > 1100 || number.bitLength() + power > 1080) {
            throw new NumberFormatException("not a sum: out of range");
        }
        BigInteger rest = number.shiftLeft(power + POINT);
        BigInteger mask = BigInteger.valueOf(MASK);
        for (int i = 0; i < DIGITS - 1; i++) {
            sum.digits[i] = rest.and(mask).longValue();
            rest = rest.shiftRight(DIGIT);
        }
        sum.digits[DIGITS - 1] = rest.longValueExact();
        return sum;
    }
}
