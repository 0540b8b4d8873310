package org.lifeline.explorer.engine.stand;

/**
 * Logarithms, exponentials and what is made of them [-]. Algorithms and coefficients are those that the JDK names, of
 * fdlibm 5.3, Sun Microsystems (1993): "Permission to use, copy, modify, and distribute this software is freely granted, provided
 * that this notice is preserved." Written from memory, and held to the JDK's digits by {@code StandInsTest}.
 */
final class Exponentials {
    private static final int EXPONENT = 20;
    private static final int EXPONENT_BIAS = 1023;
    private static final int MAGNITUDE = 0x7fffffff;
    private static final int MANTISSA = 0x000fffff;
    private static final int INFINITE = 0x7ff00000;
    private static final int ONE = 0x3ff00000;
    private static final double TWO_54 = 0x1p54;
    private static final double LN2_HIGH = 0.6931471803691238;
    private static final double LN2_LOW = 1.9082149292705877e-10;
    private static final double PER_LN2 = 1.4426950408889634;

    private static final double[] LOGARITHM = {
        0.6666666666666735,
        0.3999999999940942,
        0.2857142874366239,
        0.22222198432149784,
        0.1818357216161805,
        0.15313837699209373,
        0.14798198605116586
    };

    private static final double EXP_OVERFLOW = 709.782712893384;
    private static final double EXP_UNDERFLOW = -745.1332191019411;
    private static final double[] EXPONENTIAL = {
        0.16666666666666602,
        -0.0027777777777015593,
        6.613756321437934e-05,
        -1.6533902205465252e-06,
        4.1381367970572385e-08
    };

    private static final double[] EXPONENTIAL_LESS_ONE = {
        -0.03333333333333313,
        0.0015873015872548146,
        -7.93650757867488e-05,
        4.008217827329362e-06,
        -2.0109921818362437e-07
    };
    private static final double TINY = 1.0e-300;

    private Exponentials() {}

    /** The natural logarithm. */
    static double log(double value) {
        double x = value;
        int hx = Words.high(x);
        int k = 0;
        if (hx < 0x00100000) {
            if (x == 0) {
                return Double.NEGATIVE_INFINITY;
            }
            if (hx < 0) {
                return Double.NaN;
            }
            k = -54;
            x *= TWO_54;
            hx = Words.high(x);
        }
        if (hx >= INFINITE) {
            return x + x;
        }
        k += (hx >> EXPONENT) - EXPONENT_BIAS;
        hx &= MANTISSA;
        int i = (hx + 0x95f64) & 0x100000;
        x = Words.withHigh(x, hx | (i ^ ONE));
        k += i >> EXPONENT;
        double f = x - 1.0;
        double dk = k;
        if ((MANTISSA & (2 + hx)) < 3) {
            if (f == 0) {
                return k == 0 ? 0 : dk * LN2_HIGH + dk * LN2_LOW;
            }
            double r = f * f * (0.5 - 0.3333333333333333 * f);
            return k == 0 ? f - r : dk * LN2_HIGH - ((r - dk * LN2_LOW) - f);
        }
        double s = f / (2.0 + f);
        double z = s * s;
        double w = z * z;
        double t1 = w * (LOGARITHM[1] + w * (LOGARITHM[3] + w * LOGARITHM[5]));
        double t2 = z * (LOGARITHM[0] + w * (LOGARITHM[2] + w * (LOGARITHM[4] + w * LOGARITHM[6])));
        double r = t2 + t1;
        if (((hx - 0x6147a) | (0x6b851 - hx)) > 0) {
            double half = 0.5 * f * f;
            return k == 0
                    ? f - (half - s * (half + r))
                    : dk * LN2_HIGH - ((half - (s * (half + r) + dk * LN2_LOW)) - f);
        }
        return k == 0 ? f - s * (f - r) : dk * LN2_HIGH - ((s * (f - r) - dk * LN2_LOW) - f);
    }

    /** The natural logarithm of 1 + x. */
    static double log1p(double x) {
        int hx = Words.high(x);
        int ax = hx & MAGNITUDE;
        int k = 1;
        double f = 0;
        int hu = 1;
        double c = 0;
        if (hx < 0x3FDA827A) {
            if (ax >= ONE) {
                return x == -1.0 ? Double.NEGATIVE_INFINITY : Double.NaN;
            }
            if (ax < 0x3e200000) {
                return ax < 0x3c900000 ? x : x - x * x * 0.5;
            }
            if (hx > 0 || hx <= 0xbfd2bec3) {
                k = 0;
                f = x;
                hu = 1;
            }
        }
        if (hx >= INFINITE) {
            return x + x;
        }
        if (k != 0) {
            double u;
            if (hx < 0x43400000) {
                u = 1.0 + x;
                hu = Words.high(u);
                k = (hu >> EXPONENT) - EXPONENT_BIAS;
                c = k > 0 ? 1.0 - (u - x) : x - (u - 1.0);
                c /= u;
            } else {
                u = x;
                hu = Words.high(u);
                k = (hu >> EXPONENT) - EXPONENT_BIAS;
                c = 0;
            }
            hu &= MANTISSA;
            if (hu < 0x6a09e) {
                u = Words.withHigh(u, hu | ONE);
            } else {
                k += 1;
                u = Words.withHigh(u, hu | 0x3fe00000);
                hu = (0x00100000 - hu) >> 2;
            }
            f = u - 1.0;
        }
        double half = 0.5 * f * f;
        if (hu == 0) {
            if (f == 0) {
                return k == 0 ? 0 : k * LN2_HIGH + (c + k * LN2_LOW);
            }
            double r = half * (1.0 - 0.6666666666666666 * f);
            return k == 0 ? f - r : k * LN2_HIGH - ((r - (k * LN2_LOW + c)) - f);
        }
        double s = f / (2.0 + f);
        double z = s * s;
        double r = z * polynomial(LOGARITHM, z);
        return k == 0
                ? f - (half - s * (half + r))
                : k * LN2_HIGH - ((half - (s * (half + r) + (k * LN2_LOW + c))) - f);
    }

    /** The exponential. */
    static double exp(double value) {
        double x = value;
        int hx = Words.high(x);
        boolean negative = hx < 0;
        hx &= MAGNITUDE;
        if (hx >= 0x40862E42) {
            if (hx >= INFINITE) {
                return Double.isNaN(x) ? x : negative ? 0 : x;
            }
            if (x > EXP_OVERFLOW) {
                return Double.POSITIVE_INFINITY;
            }
            if (x < EXP_UNDERFLOW) {
                return 0;
            }
        }
        double hi = 0;
        double lo = 0;
        int k = 0;
        if (hx > 0x3fd62e42) {
            if (hx < 0x3FF0A2B2) {
                hi = negative ? x + LN2_HIGH : x - LN2_HIGH;
                lo = negative ? -LN2_LOW : LN2_LOW;
                k = negative ? -1 : 1;
            } else {
                k = (int) (PER_LN2 * x + (negative ? -0.5 : 0.5));
                hi = x - k * LN2_HIGH;
                lo = k * LN2_LOW;
            }
            x = hi - lo;
        } else if (hx < 0x3e300000) {
            return 1.0 + x;
        }
        double t = x * x;
        double c = x - t * polynomial(EXPONENTIAL, t);
        if (k == 0) {
            return 1.0 - ((x * c) / (c - 2.0) - x);
        }
        double y = 1.0 - ((lo - (x * c) / (2.0 - c)) - hi);
        if (k >= -1021) {
            return Words.withHigh(y, Words.high(y) + (k << EXPONENT));
        }
        return Words.withHigh(y, Words.high(y) + ((k + 1000) << EXPONENT)) * 0x1p-1000;
    }

    /** The exponential less one [-]. */
    private static double expm1(double value) {
        double x = value;
        int hx = Words.high(x);
        boolean negative = hx < 0;
        hx &= MAGNITUDE;
        if (hx >= 0x4043687A) {
            if (hx >= 0x40862E42) {
                if (hx >= INFINITE) {
                    return Double.isNaN(x) ? x : negative ? -1.0 : x;
                }
                if (x > EXP_OVERFLOW) {
                    return Double.POSITIVE_INFINITY;
                }
            }
            if (negative) {
                return TINY - 1.0;
            }
        }
        int k;
        double c = 0;
        if (hx > 0x3fd62e42) {
            double hi;
            double lo;
            if (hx < 0x3FF0A2B2) {
                hi = negative ? x + LN2_HIGH : x - LN2_HIGH;
                lo = negative ? -LN2_LOW : LN2_LOW;
                k = negative ? -1 : 1;
            } else {
                k = (int) (PER_LN2 * x + (negative ? -0.5 : 0.5));
                hi = x - k * LN2_HIGH;
                lo = k * LN2_LOW;
            }
            x = hi - lo;
            c = (hi - x) - lo;
        } else if (hx < 0x3c900000) {
            return x;
        } else {
            k = 0;
        }
        double half = 0.5 * x;
        double hxs = x * half;
        double r = 1.0 + hxs * polynomial(EXPONENTIAL_LESS_ONE, hxs);
        double t = 3.0 - r * half;
        double e = hxs * ((r - t) / (6.0 - x * t));
        if (k == 0) {
            return x - (x * e - hxs);
        }
        e = x * (e - c) - c;
        e -= hxs;
        if (k == -1) {
            return 0.5 * (x - e) - 0.5;
        }
        if (k == 1) {
            return x < -0.25 ? -2.0 * (e - (x + 0.5)) : 1.0 + 2.0 * (x - e);
        }
        double y;
        if (k <= -2 || k > 56) {
            y = 1.0 - (e - x);
            return Words.withHigh(y, Words.high(y) + (k << EXPONENT)) - 1.0;
        }
        if (k < EXPONENT) {
            y = Words.of(ONE - (0x200000 >> k), 0) - (e - x);
        } else {
            y = x - (e + Words.of((EXPONENT_BIAS - k) << EXPONENT, 0));
            y += 1.0;
        }
        return Words.withHigh(y, Words.high(y) + (k << EXPONENT));
    }

    /** The hyperbolic sine. */
    static double sinh(double x) {
        int ix = Words.high(x) & MAGNITUDE;
        if (ix >= INFINITE) {
            return x + x;
        }
        double h = Words.high(x) < 0 ? -0.5 : 0.5;
        double a = Math.abs(x);
        if (ix < 0x40360000) {
            if (ix < 0x3e300000) {
                return x;
            }
            double t = expm1(a);
            return ix < ONE ? h * (2.0 * t - t * t / (t + 1.0)) : h * (t + t / (t + 1.0));
        }
        if (ix < 0x40862E42) {
            return h * exp(a);
        }
        double w = exp(0.5 * a);
        return h * w * w;
    }

    /** The hyperbolic cosine. */
    static double cosh(double x) {
        int ix = Words.high(x) & MAGNITUDE;
        if (ix >= INFINITE) {
            return x * x;
        }
        double a = Math.abs(x);
        if (ix < 0x3fd62e43) {
            double t = expm1(a);
            double w = 1.0 + t;
            return ix < 0x3c800000 ? w : 1.0 + (t * t) / (w + w);
        }
        if (ix < 0x40360000) {
            double t = exp(a);
            return 0.5 * t + 0.5 / t;
        }
        if (ix < 0x40862E42) {
            return 0.5 * exp(a);
        }
        double w = exp(0.5 * a);
        return 0.5 * w * w;
    }

    /** A polynomial, its coefficients from the constant on. */
    static double polynomial(double[] coefficients, double z) {
        double sum = coefficients[coefficients.length - 1];
        for (int i = coefficients.length - 2; i >= 0; i--) {
            sum = coefficients[i] + z * sum;
        }
        return sum;
    }
}
