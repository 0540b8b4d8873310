package org.lifeline.explorer.engine.stand;

import org.teavm.classlib.PlatformDetector;
import org.teavm.jso.typedarrays.Float64Array;
import org.teavm.jso.typedarrays.Int32Array;

/** The two halves of a double. In a script, where a long is slow, they are read from memory that holds both views. */
final class Words {
    private static final int BITS = 32;
    private static final long LOWER = 0xFFFFFFFFL;
    private static final int LOW = 0;
    private static final int HIGH = 1;

    private Words() {}

    /** Views of the same eight bytes, low word first as on every machine that runs a browser. */
    private static final class Shared {
        static final Float64Array DOUBLE = new Float64Array(1);
        static final Int32Array WORDS = new Int32Array(DOUBLE.getBuffer());

        private Shared() {}
    }

    /** The upper half: sign, exponent and twenty digits. */
    static int high(double x) {
        if (PlatformDetector.isJavaScript()) {
            Shared.DOUBLE.set(0, x);
            return Shared.WORDS.get(HIGH);
        }
        return (int) (Double.doubleToRawLongBits(x) >> BITS);
    }

    /** The lower half. */
    static int low(double x) {
        if (PlatformDetector.isJavaScript()) {
            Shared.DOUBLE.set(0, x);
            return Shared.WORDS.get(LOW);
        }
        return (int) Double.doubleToRawLongBits(x);
    }

    /** The double of two halves. */
    static double of(int high, int low) {
        if (PlatformDetector.isJavaScript()) {
            Shared.WORDS.set(LOW, low);
            Shared.WORDS.set(HIGH, high);
            return Shared.DOUBLE.get(0);
        }
        return Double.longBitsToDouble(((long) high << BITS) | (low & LOWER));
    }

    /** A double with another upper half. */
    static double withHigh(double x, int high) {
        return of(high, low(x));
    }

    /** A double without its lower half. */
    static double upper(double x) {
        return of(high(x), 0);
    }
}
