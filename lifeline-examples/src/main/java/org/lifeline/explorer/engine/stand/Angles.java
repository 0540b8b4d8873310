package org.lifeline.explorer.engine.stand;

/**
 * Functions of angles [rad]. Algorithms and coefficients are those that the JDK names, of
 * fdlibm 5.3, Sun Microsystems (1993): "Permission to use, copy, modify, and distribute this software is freely granted, provided
 * that this notice is preserved." Written from memory, and held to the JDK's digits by {@code StandInsTest}.
 */
final class Angles {
    private static final int EXPONENT = 20;
    private static final int MAGNITUDE = 0x7fffffff;
    private static final int ONE = 0x3ff00000;
    private static final double[] SINE = {
        -0.16666666666666632,
        0.00833333333332249,
        -0.0001984126982985795,
        2.7557313707070068e-06,
        -2.5050760253406863e-08,
        1.58969099521155e-10
    };

    private static final double[] COSINE = {
        0.0416666666666666,
        -0.001388888888887411,
        2.480158728947673e-05,
        -2.7557314351390663e-07,
        2.087572321298175e-09,
        -1.1359647557788195e-11
    };

    private static final double PER_HALF_PI = 0.6366197723675814;
    private static final double HALF_PI_1 = 1.5707963267341256;
    private static final double HALF_PI_1_REST = 6.077100506506192e-11;
    private static final double HALF_PI_2 = 6.077100506303966e-11;
    private static final double HALF_PI_2_REST = 2.0222662487959506e-21;
    private static final double HALF_PI_3 = 2.0222662487111665e-21;
    private static final double HALF_PI_3_REST = 8.4784276603689e-32;

    private static final double[] ATAN_HIGH = {
        0.4636476090008061, 0.7853981633974483, 0.982793723247329, 1.5707963267948966
    };
    private static final double[] ATAN_LOW = {
        2.2698777452961687e-17, 3.061616997868383e-17, 1.3903311031230998e-17, 6.123233995736766e-17
    };
    private static final double[] ATAN = {
        0.3333333333333293,
        -0.19999999999876483,
        0.14285714272503466,
        -0.11111110405462356,
        0.09090887133436507,
        -0.0769187620504483,
        0.06661073137387531,
        -0.058335701337905735,
        0.049768779946159324,
        -0.036531572744216916,
        0.016285820115365782
    };

    private static final int QUARTER_PI = 0x3fe921fb;
    private static final int HALF_PI = 0x3ff921fb;
    /** Above 2^19 quarter turns the angle would need more digits of π than stand here. */
    private static final int MANY_TURNS = 0x413921fb;

    private static final double HALF_OF_PI_LOW = 6.123233995736766e-17;
    private static final double PI_LOW = 1.2246467991473532e-16;

    private static final double[] ASIN_ABOVE = {
        0.16666666666666666,
        -0.3255658186224009,
        0.20121253213486293,
        -0.04005553450067941,
        0.0007915349942898145,
        3.479331075960212e-05
    };
    private static final double[] ASIN_BELOW = {
        -2.403394911734414, 2.0209457602335057, -0.6882839716054533, 0.07703815055590194
    };

    private Angles() {}

    /** The sine. */
    static double sin(double x) {
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

    /** The cosine. */
    static double cos(double x) {
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
        double r = z * Exponentials.polynomial(COSINE, z);
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

    /** The direction of a point. */
    static double atan2(double y, double x) {
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

    /** The angle whose sine is given. */
    static double asin(double x) {
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
            return x
                    + x
                            * (t
                                    * Exponentials.polynomial(ASIN_ABOVE, t)
                                    / (1.0 + t * Exponentials.polynomial(ASIN_BELOW, t)));
        }
        double t = (1.0 - Math.abs(x)) * 0.5;
        double p = t * Exponentials.polynomial(ASIN_ABOVE, t);
        double q = 1.0 + t * Exponentials.polynomial(ASIN_BELOW, t);
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
}
