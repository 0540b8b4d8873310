package org.lifeline.testing;

import java.util.SplittableRandom;

/** Seeded chance in the shapes that random lines need. Not thread-safe. */
final class Chance {
    private final SplittableRandom random;

    Chance(long seed) {
        this.random = new SplittableRandom(seed);
    }

    /** True with a probability. */
    boolean is(double probability) {
        return random.nextDouble() < probability;
    }

    /** Evenly spread between two bounds. */
    double uniform(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** Evenly spread in the logarithm. */
    double log(double low, double high) {
        return Math.exp(uniform(Math.log(low), Math.log(high)));
    }

    /** A whole number from low to high, both included. */
    int whole(int low, int high) {
        return random.nextInt(low, high + 1);
    }

    /** One of several. */
    @SafeVarargs
    final <T> T of(T... choices) {
        return choices[random.nextInt(choices.length)];
    }
}
