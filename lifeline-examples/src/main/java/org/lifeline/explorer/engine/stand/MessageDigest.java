package org.lifeline.explorer.engine.stand;

import java.security.NoSuchAlgorithmException;

/** Stands in for {@link java.security.MessageDigest}: SHA-256 after FIPS 180-4, sections 4.1.2, 4.2.2, 5 and 6.2. */
public final class MessageDigest {
    private static final int BLOCK = 64;
    private static final int ROUNDS = 64;

    /** The constants of section 4.2.2: the first bits of the fractional parts of the cube roots of the first primes. */
    private static final int[] K = new int[ROUNDS];

    /** The initial value of section 5.3.3, from the square roots of the first eight primes. */
    private static final int[] START = new int[8];

    static {
        int found = 0;
        for (int n = 2; found < ROUNDS; n++) {
            if (isPrime(n)) {
                K[found] = fraction(n, 3);
                if (found < START.length) {
                    START[found] = fraction(n, 2);
                }
                found++;
            }
        }
    }

    private MessageDigest() {}

    private static boolean isPrime(int n) {
        for (int d = 2; d * d <= n; d++) {
            if (n % d == 0) {
                return false;
            }
        }
        return true;
    }

    /** The first 32 bits behind the point of a root, by bisection in whole numbers. */
    private static int fraction(int n, int root) {
        java.math.BigInteger scaled = java.math.BigInteger.valueOf(n).shiftLeft(32 * root);
        java.math.BigInteger low = java.math.BigInteger.ZERO;
        java.math.BigInteger high = java.math.BigInteger.ONE.shiftLeft(40);
        while (high.subtract(low).bitLength() > 1) {
            java.math.BigInteger middle = low.add(high).shiftRight(1);
            if (middle.pow(root).compareTo(scaled) <= 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low.intValue();
    }

    /**
     * The digest of that name.
     *
     * @param algorithm {@code SHA-256}
     * @return the digest
     * @throws NoSuchAlgorithmException if another one is asked for
     */
    public static MessageDigest getInstance(String algorithm) throws NoSuchAlgorithmException {
        if (!"SHA-256".equals(algorithm)) {
            throw new NoSuchAlgorithmException(algorithm);
        }
        return new MessageDigest();
    }

    /**
     * The digest of bytes.
     *
     * @param bytes the bytes
     * @return 32 bytes
     */
    public byte[] digest(byte[] bytes) {
        int blocks = (bytes.length + 9 + BLOCK - 1) / BLOCK;
        byte[] padded = new byte[blocks * BLOCK];
        System.arraycopy(bytes, 0, padded, 0, bytes.length);
        padded[bytes.length] = (byte) 0x80;
        long bits = 8L * bytes.length;
        for (int i = 0; i < 8; i++) {
            padded[padded.length - 1 - i] = (byte) (bits >>> (8 * i));
        }
        int[] h = START.clone();
        for (int at = 0; at < padded.length; at += BLOCK) {
            block(h, padded, at);
        }
        byte[] out = new byte[32];
        for (int i = 0; i < out.length; i++) {
            out[i] = (byte) (h[i / 4] >>> (24 - 8 * (i % 4)));
        }
        return out;
    }

    private static void block(int[] h, byte[] bytes, int at) {
        int[] w = new int[ROUNDS];
        for (int t = 0; t < 16; t++) {
            int i = at + 4 * t;
            w[t] = (bytes[i] & 255) << 24
                    | (bytes[i + 1] & 255) << 16
                    | (bytes[i + 2] & 255) << 8
                    | (bytes[i + 3] & 255);
        }
        for (int t = 16; t < ROUNDS; t++) {
            int s0 = Integer.rotateRight(w[t - 15], 7) ^ Integer.rotateRight(w[t - 15], 18) ^ (w[t - 15] >>> 3);
            int s1 = Integer.rotateRight(w[t - 2], 17) ^ Integer.rotateRight(w[t - 2], 19) ^ (w[t - 2] >>> 10);
            w[t] = w[t - 16] + s0 + w[t - 7] + s1;
        }
        int a = h[0];
        int b = h[1];
        int c = h[2];
        int d = h[3];
        int e = h[4];
        int f = h[5];
        int g = h[6];
        int last = h[7];
        for (int t = 0; t < ROUNDS; t++) {
            int s1 = Integer.rotateRight(e, 6) ^ Integer.rotateRight(e, 11) ^ Integer.rotateRight(e, 25);
            int first = last + s1 + ((e & f) ^ (~e & g)) + K[t] + w[t];
            int s0 = Integer.rotateRight(a, 2) ^ Integer.rotateRight(a, 13) ^ Integer.rotateRight(a, 22);
            int second = s0 + ((a & b) ^ (a & c) ^ (b & c));
            last = g;
            g = f;
            f = e;
            e = d + first;
            d = c;
            c = b;
            b = a;
            a = first + second;
        }
        int[] v = {a, b, c, d, e, f, g, last};
        for (int i = 0; i < h.length; i++) {
            h[i] += v[i];
        }
    }
}
