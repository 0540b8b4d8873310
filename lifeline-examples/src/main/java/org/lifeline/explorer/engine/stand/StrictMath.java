package org.lifeline.explorer.engine.stand;

/**
 * Stands in for {@link java.lang.StrictMath}: the functions that the library takes from it, to the last digit. Engines of scripts
 * have functions of their own, which differ from engine to engine. Algorithms and coefficients are those that the JDK names, of
 * fdlibm 5.3, Sun Microsystems (1993): "Permission to use, copy, modify, and distribute this software is freely granted, provided
 * that this notice is preserved." Written from memory, and held to the JDK's digits by {@code StandInsTest}.
 */
public final class StrictMath {
    private static final int EXPONENT = 20;
    private static final int EXPONENT_BIAS = 1023;
    private static final int MAGNITUDE = 0x7fffffff;
    private static final int MANTISSA = 0x000fffff;
    private static final int INFINITE = 0x7ff00000;
    private static final int ONE = 0x3ff00000;
    private static final double TWO_54 = 0x1p54;
    private static final double LN2_HIGH = 6.93147180369123816490e-01;
    private static final double LN2_LOW = 1.90821492927058770002e-10;
    private static final double PER_LN2 = 1.44269504088896338700e+00;

    private static final double[] LOGARITHM = {
        6.666666666666735130e-01,
        3.999999999940941908e-01,
        2.857142874366239149e-01,
        2.222219843214978396e-01,
        1.818357216161805012e-01,
        1.531383769920937332e-01,
        1.479819860511658591e-01
    };

    private static final double EXP_OVERFLOW = 7.09782712893383973096e+02;
    private static final double EXP_UNDERFLOW = -7.45133219101941108420e+02;
    private static final double[] EXPONENTIAL = {
        1.66666666666666019037e-01,
        -2.77777777770155933842e-03,
        6.61375632143793436117e-05,
        -1.65339022054652515390e-06,
        4.13813679705723846039e-08
    };

    private static final double[] EXPONENTIAL_LESS_ONE = {
        -3.33333333333331316428e-02,
        1.58730158725481460165e-03,
        -7.93650757867487942473e-05,
        4.00821782732936239552e-06,
        -2.01099218183624371326e-07
    };

    private static final double[] SINE = {
        -1.66666666666666324348e-01,
        8.33333333332248946124e-03,
        -1.98412698298579493134e-04,
        2.75573137070700676789e-06,
        -2.50507602534068634195e-08,
        1.58969099521155010221e-10
    };

    private static final double[] COSINE = {
        4.16666666666666019037e-02,
        -1.38888888888741095749e-03,
        2.48015872894767294178e-05,
        -2.75573143513906633035e-07,
        2.08757232129817482790e-09,
        -1.13596475577881948265e-11
    };

    private static final double PER_HALF_PI = 6.36619772367581382433e-01;
    private static final double HALF_PI_1 = 1.57079632673412561417e+00;
    private static final double HALF_PI_1_REST = 6.07710050650619224932e-11;
    private static final double HALF_PI_2 = 6.07710050630396597660e-11;
    private static final double HALF_PI_2_REST = 2.02226624879595063154e-21;
    private static final double HALF_PI_3 = 2.02226624871116645580e-21;
    private static final double HALF_PI_3_REST = 8.47842766036889956997e-32;

    private static final double[] ATAN_HIGH = {
        4.63647609000806093515e-01, 7.85398163397448278999e-01, 9.82793723247329054082e-01, 1.57079632679489655800e+00
    };
    private static final double[] ATAN_LOW = {
        2.26987774529616870924e-17, 3.06161699786838301793e-17, 1.39033110312309984516e-17, 6.12323399573676603587e-17
    };
    private static final double[] ATAN = {
        3.33333333333329318027e-01,
        -1.99999999998764832476e-01,
        1.42857142725034663711e-01,
        -1.11111104054623557880e-01,
        9.09088713343650656196e-02,
        -7.69187620504482999495e-02,
        6.66107313738753120669e-02,
        -5.83357013379057348645e-02,
        4.97687799461593236017e-02,
        -3.65315727442169155270e-02,
        1.62858201153657823623e-02
    };

    private static final int QUARTER_PI = 0x3fe921fb;
    private static final int HALF_PI = 0x3ff921fb;
    /** Above 2^19 quarter turns the angle would need more digits of π than stand here. */
    private static final int MANY_TURNS = 0x413921fb;

    private static final double HALF_OF_PI_LOW = 6.12323399573676603587e-17;
    private static final double FAR = 0x1p60;
    private static final double LARGE = 0x1p500;
    private static final double SMALL = 0x1p-500;
    private static final double SCALE = 0x1p600;
    private static final double PI_LOW = 1.2246467991473531772e-16;
    private static final double TINY = 1.0e-300;

    private static final double[] ASIN_ABOVE = {
        1.66666666666666657415e-01,
        -3.25565818622400915405e-01,
        2.01212532134862925881e-01,
        -4.00555345006794114027e-02,
        7.91534994289814532176e-04,
        3.47933107596021167570e-05
    };
    private static final double[] ASIN_BELOW = {
        -2.40339491173441421878e+00, 2.02094576023350569471e+00, -6.88283971605453293030e-01, 7.70381505559019352791e-02
    };

    private StrictMath() {}

    /**
     * The natural logarithm.
     *
     * @param value number from zero up [-]
     * @return logarithm [-]
     */
    public static double log(double value) {
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
            double r = f * f * (0.5 - 0.33333333333333333 * f);
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

    /**
     * The natural logarithm of 1 + x.
     *
     * @param x number above -1 [-]
     * @return logarithm [-]
     */
    public static double log1p(double x) {
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
            double r = half * (1.0 - 0.66666666666666666 * f);
            return k == 0 ? f - r : k * LN2_HIGH - ((r - (k * LN2_LOW + c)) - f);
        }
        double s = f / (2.0 + f);
        double z = s * s;
        double r = z * polynomial(LOGARITHM, z);
        return k == 0
                ? f - (half - s * (half + r))
                : k * LN2_HIGH - ((half - (s * (half + r) + (k * LN2_LOW + c))) - f);
    }

    /**
     * The exponential.
     *
     * @param value exponent [-]
     * @return exponential [-]
     */
    public static double exp(double value) {
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

    /**
     * The hyperbolic sine.
     *
     * @param x argument [-]
     * @return hyperbolic sine [-]
     */
    public static double sinh(double x) {
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

    /**
     * The hyperbolic cosine.
     *
     * @param x argument [-]
     * @return hyperbolic cosine [-]
     */
    public static double cosh(double x) {
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

    /**
     * The sine.
     *
     * @param x angle [rad]
     * @return sine [-]
     */
    public static double sin(double x) {
        int ix = Words.high(x) & MAGNITUDE;
        if (ix <= QUARTER_PI) {
            return sine(x, 0, false);
        }
        if (ix > MANY_TURNS) {
            return Math.sin(x);
        }
        double[] r = reduced(x, ix);
        return switch ((int) r[2] & 3) {
            case 0 -> sine(r[0], r[1], true);
            case 1 -> cosine(r[0], r[1]);
            case 2 -> -sine(r[0], r[1], true);
            default -> -cosine(r[0], r[1]);
        };
    }

    /**
     * The cosine.
     *
     * @param x angle [rad]
     * @return cosine [-]
     */
    public static double cos(double x) {
        int ix = Words.high(x) & MAGNITUDE;
        if (ix <= QUARTER_PI) {
            return cosine(x, 0);
        }
        if (ix > MANY_TURNS) {
            return Math.cos(x);
        }
        double[] r = reduced(x, ix);
        return switch ((int) r[2] & 3) {
            case 0 -> cosine(r[0], r[1]);
            case 1 -> -sine(r[0], r[1], true);
            case 2 -> -cosine(r[0], r[1]);
            default -> sine(r[0], r[1], true);
        };
    }

    private static double sine(double x, double rest, boolean hasRest) {
        if ((Words.high(x) & MAGNITUDE) < 0x3e400000) {
            return x;
        }
        double z = x * x;
        double v = z * x;
        double r = SINE[1] + z * (SINE[2] + z * (SINE[3] + z * (SINE[4] + z * SINE[5])));
        return hasRest ? x - ((z * (0.5 * rest - v * r) - rest) - v * SINE[0]) : x + v * (SINE[0] + z * r);
    }

    private static double cosine(double x, double rest) {
        int ix = Words.high(x) & MAGNITUDE;
        if (ix < 0x3e400000) {
            return 1;
        }
        double z = x * x;
        double r = z * polynomial(COSINE, z);
        if (ix < 0x3FD33333) {
            return 1.0 - (0.5 * z - (z * r - x * rest));
        }
        double q = ix > 0x3fe90000 ? 0.28125 : Words.of(ix - 0x00200000, 0);
        double half = 0.5 * z - q;
        return (1.0 - q) - (half - (z * r - x * rest));
    }

    /** An angle less the nearest multiple of half a turn's half: what is left in two parts [rad], and the multiple. */
    private static double[] reduced(double x, int ix) {
        double sign = x < 0 ? -1 : 1;
        double t = Math.abs(x);
        if (ix < 0x4002d97c) {
            double z = t - HALF_PI_1;
            double rest = HALF_PI_1_REST;
            if (ix == HALF_PI) {
                z -= HALF_PI_2;
                rest = HALF_PI_2_REST;
            }
            double y = z - rest;
            return new double[] {sign * y, sign * ((z - y) - rest), sign};
        }
        int n = (int) (t * PER_HALF_PI + 0.5);
        double r = t - n * HALF_PI_1;
        double w = n * HALF_PI_1_REST;
        double y = r - w;
        if (n >= 32 || ix == Words.high(n * (HALF_PI_1 + HALF_PI_1_REST))) {
            int exponent = ix >> EXPONENT;
            if (exponent - exponent(y) > 16) {
                double before = r;
                w = n * HALF_PI_2;
                r = before - w;
                w = n * HALF_PI_2_REST - ((before - r) - w);
                y = r - w;
                if (exponent - exponent(y) > 49) {
                    before = r;
                    w = n * HALF_PI_3;
                    r = before - w;
                    w = n * HALF_PI_3_REST - ((before - r) - w);
                    y = r - w;
                }
            }
        }
        return new double[] {sign * y, sign * ((r - y) - w), sign * n};
    }

    private static int exponent(double x) {
        return (Words.high(x) >> EXPONENT) & 0x7ff;
    }

    /** The angle whose tangent is given [rad]. */
    private static double atan(double value) {
        int hx = Words.high(value);
        int ix = hx & MAGNITUDE;
        if (ix >= 0x44100000) {
            double right = ATAN_HIGH[3] + ATAN_LOW[3];
            return Double.isNaN(value) ? value : hx > 0 ? right : -right;
        }
        double x = Math.abs(value);
        int id = -1;
        if (ix < 0x3fdc0000) {
            if (ix < 0x3e200000) {
                return value;
            }
            x = value;
        } else if (ix < 0x3fe60000) {
            id = 0;
            x = (2.0 * x - 1.0) / (2.0 + x);
        } else if (ix < 0x3ff30000) {
            id = 1;
            x = (x - 1.0) / (x + 1.0);
        } else if (ix < 0x40038000) {
            id = 2;
            x = (x - 1.5) / (1.0 + 1.5 * x);
        } else {
            id = 3;
            x = -1.0 / x;
        }
        double z = x * x;
        double w = z * z;
        double odd = z * (ATAN[0] + w * (ATAN[2] + w * (ATAN[4] + w * (ATAN[6] + w * (ATAN[8] + w * ATAN[10])))));
        double even = w * (ATAN[1] + w * (ATAN[3] + w * (ATAN[5] + w * (ATAN[7] + w * ATAN[9]))));
        if (id < 0) {
            return x - x * (odd + even);
        }
        double angle = ATAN_HIGH[id] - ((x * (odd + even) - ATAN_LOW[id]) - x);
        return hx < 0 ? -angle : angle;
    }

    /**
     * The direction of a point.
     *
     * @param y its ordinate
     * @param x its abscissa, in the same unit
     * @return angle from the axis of abscissae, from -π to π [rad]
     */
    public static double atan2(double y, double x) {
        if (Double.isNaN(x) || Double.isNaN(y)) {
            return x + y;
        }
        if (x == 1.0) {
            return atan(y);
        }
        int hx = Words.high(x);
        boolean below = Words.high(y) < 0;
        boolean left = hx < 0;
        if (y == 0) {
            return !left ? y : below ? -Math.PI : Math.PI;
        }
        if (x == 0) {
            return below ? -Math.PI / 2 : Math.PI / 2;
        }
        if (Double.isInfinite(x)) {
            double flat = Double.isInfinite(y) ? (left ? 3.0 * (Math.PI / 4) : Math.PI / 4) : left ? Math.PI : 0;
            return below ? -flat : flat;
        }
        if (Double.isInfinite(y)) {
            return below ? -Math.PI / 2 : Math.PI / 2;
        }
        int k = ((Words.high(y) & MAGNITUDE) - (hx & MAGNITUDE)) >> EXPONENT;
        double z;
        if (k > 60) {
            z = Math.PI / 2 + 0.5 * PI_LOW;
        } else if (left && k < -60) {
            z = 0;
        } else {
            z = atan(Math.abs(y / x));
        }
        if (!left) {
            return below ? -z : z;
        }
        return below ? (z - PI_LOW) - Math.PI : Math.PI - (z - PI_LOW);
    }

    /**
     * The angle whose sine is given.
     *
     * @param x sine from -1 to 1 [-]
     * @return angle [rad]
     */
    public static double asin(double x) {
        int hx = Words.high(x);
        int ix = hx & MAGNITUDE;
        if (ix >= ONE) {
            return Math.abs(x) == 1 ? x * (Math.PI / 2) + x * HALF_OF_PI_LOW : Double.NaN;
        }
        if (ix < 0x3fe00000) {
            if (ix < 0x3e400000) {
                return x;
            }
            double t = x * x;
            return x + x * (t * polynomial(ASIN_ABOVE, t) / (1.0 + t * polynomial(ASIN_BELOW, t)));
        }
        double t = (1.0 - Math.abs(x)) * 0.5;
        double p = t * polynomial(ASIN_ABOVE, t);
        double q = 1.0 + t * polynomial(ASIN_BELOW, t);
        double s = Math.sqrt(t);
        double angle;
        if (ix >= 0x3FEF3333) {
            angle = Math.PI / 2 - (2.0 * (s + s * (p / q)) - HALF_OF_PI_LOW);
        } else {
            double w = Words.upper(s);
            double c = (t - w * w) / (s + w);
            double r = p / q;
            angle = Math.PI / 4 - ((2.0 * s * r - (HALF_OF_PI_LOW - 2.0 * c)) - (Math.PI / 4 - 2.0 * w));
        }
        return hx > 0 ? angle : -angle;
    }

    /**
     * The length of a hypotenuse.
     *
     * @param x one side
     * @param y the other side, in the same unit
     * @return length in that unit
     */
    public static double hypot(double x, double y) {
        double a = Math.max(Math.abs(x), Math.abs(y));
        double b = Math.min(Math.abs(x), Math.abs(y));
        if (Double.isInfinite(x) || Double.isInfinite(y)) {
            return Double.POSITIVE_INFINITY;
        }
        if (!(a <= b * FAR)) {
            return a + b;
        }
        if (a > LARGE) {
            return scaled(a / SCALE, b / SCALE) * SCALE;
        }
        return b < SMALL ? scaled(a * SCALE, b * SCALE) / SCALE : scaled(a, b);
    }

    private static double scaled(double a, double b) {
        double w = a - b;
        if (w > b) {
            double t1 = Words.upper(a);
            double t2 = a - t1;
            return Math.sqrt(t1 * t1 - (b * -b - t2 * (a + t1)));
        }
        double y1 = Words.upper(b);
        double y2 = b - y1;
        double twice = a + a;
        double t1 = Words.upper(twice);
        double t2 = twice - t1;
        return Math.sqrt(t1 * y1 - (w * -w - (t1 * y2 + t2 * b)));
    }

    /**
     * The tangent, as the engine has it: it gives limits of input alone.
     *
     * @param x angle [rad]
     * @return tangent [-]
     */
    public static double tan(double x) {
        return Math.tan(x);
    }

    /**
     * The common logarithm, as the engine has it: it counts digits alone.
     *
     * @param x number above zero [-]
     * @return logarithm [-]
     */
    public static double log10(double x) {
        return Math.log10(x);
    }

    /**
     * A power, as the engine has it: nothing in a script takes one from here.
     *
     * @param x base [-]
     * @param y exponent [-]
     * @return power [-]
     */
    public static double pow(double x, double y) {
        return Math.pow(x, y);
    }

    /**
     * What a division leaves.
     *
     * @param x dividend
     * @param y divisor, in the same unit
     * @return remainder in that unit
     */
    public static double IEEEremainder(double x, double y) {
        return Math.IEEEremainder(x, y);
    }

    private static double polynomial(double[] coefficients, double z) {
        double sum = coefficients[coefficients.length - 1];
        for (int i = coefficients.length - 2; i >= 0; i--) {
            sum = coefficients[i] + z * sum;
        }
        return sum;
    }
}
