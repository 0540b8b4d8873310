package org.lifeline.internal.numeric;

import java.util.Arrays;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Counts of values in bins whose width is a fixed share of the value, so that any quantile is known to that share whatever
 * the range of the values. Memory depends on the range of the values, not on their number: at most
 * ln(1e24)/0.0002 = 276,300 bins for each sign. The order in which values are added does not matter.
 *
 * <p>The principle is that of C. Masson, J. E. Rim and H. K. Lee, "DDSketch: a fast and fully-mergeable quantile sketch with
 * relative-error guarantees", Proc. VLDB Endowment 12(12), 2019. Not thread-safe.
 */
public final class LogHistogram {
    /** Largest relative error of a quantile. */
    public static final double ACCURACY = 1e-4;

    private static final double LEAST = 1e-12; // below: zero
    private static final double MOST = 1e12;
    private static final double WIDTH = StrictMath.log((1 + ACCURACY) / (1 - ACCURACY));

    private final Side positive = new Side();
    private final Side negative = new Side();
    private long zeros;
    private long count;
    private double smallest = Double.POSITIVE_INFINITY;
    private double largest = Double.NEGATIVE_INFINITY;

    /** An empty histogram. */
    public LogHistogram() {}

    /**
     * Values that were counted before.
     *
     * @param zeros number of values that count as zero
     * @param extent smallest and largest value; two numbers, whatever they are if there is no value
     * @param positive number of values in each bin above zero
     * @param negative number of values in each bin below zero
     * @return the histogram
     */
    public static LogHistogram of(
            long zeros, double[] extent, SortedMap<Integer, Long> positive, SortedMap<Integer, Long> negative) {
        LogHistogram h = new LogHistogram();
        positive.forEach(h.positive::add);
        negative.forEach(h.negative::add);
        h.zeros = zeros;
        h.count = zeros;
        positive.values().forEach(n -> h.count += n);
        negative.values().forEach(n -> h.count += n);
        if (h.count > 0) {
            h.smallest = extent[0];
            h.largest = extent[1];
        }
        return h;
    }

    /**
     * Tells whether a number can be that of a bin.
     *
     * @param bin the number
     * @return true for a bin of values between 1e-12 and 1e12
     */
    public static boolean isBin(int bin) {
        return Math.abs(bin) <= StrictMath.log(MOST) / WIDTH + 1;
    }

    /**
     * Number of values that count as zero.
     *
     * @return values below 1e-12 in magnitude
     */
    public long zeros() {
        return zeros;
    }

    /**
     * Number of values in each bin above zero.
     *
     * @return bins that are not empty
     */
    public SortedMap<Integer, Long> positive() {
        return positive.counts();
    }

    /**
     * Number of values in each bin below zero.
     *
     * @return bins that are not empty, numbered by magnitude
     */
    public SortedMap<Integer, Long> negative() {
        return negative.counts();
    }

    /** Bins of one sign, from the smallest magnitude to the largest. */
    private static final class Side {
        private long[] bins = new long[0];
        private int first;

        void add(double magnitude) {
            add((int) Math.ceil(StrictMath.log(Math.min(magnitude, MOST)) / WIDTH), 1);
        }

        void add(int bin, long number) {
            if (bins.length == 0) {
                bins = new long[16];
                first = bin - 8;
            }
            if (bin < first) {
                int more = Math.max(first - bin, bins.length / 2);
                long[] grown = new long[bins.length + more];
                System.arraycopy(bins, 0, grown, more, bins.length);
                bins = grown;
                first -= more;
            } else if (bin >= first + bins.length) {
                bins = Arrays.copyOf(bins, Math.max(bin - first + 1, bins.length + bins.length / 2));
            }
            bins[bin - first] += number;
        }

        SortedMap<Integer, Long> counts() {
            SortedMap<Integer, Long> map = new TreeMap<>();
            for (int i = 0; i < bins.length; i++) {
                if (bins[i] != 0) {
                    map.put(first + i, bins[i]);
                }
            }
            return map;
        }

        /** Value in the middle of a bin, in the sense of equal relative error to both ends. */
        double value(int i) {
            return 2 * StrictMath.exp(WIDTH * (first + i)) / (1 + StrictMath.exp(WIDTH));
        }
    }

    /**
     * Adds a value.
     *
     * @param value a finite value
     */
    public void add(double value) {
        count++;
        smallest = Math.min(smallest, value);
        largest = Math.max(largest, value);
        double magnitude = Math.abs(value);
        if (magnitude < LEAST) {
            zeros++;
        } else {
            (value > 0 ? positive : negative).add(magnitude);
        }
    }

    /**
     * Number of values.
     *
     * @return the number
     */
    public long count() {
        return count;
    }

    /**
     * Smallest value, exactly.
     *
     * @return the smallest value
     */
    public double smallest() {
        return smallest;
    }

    /**
     * Largest value, exactly.
     *
     * @return the largest value
     */
    public double largest() {
        return largest;
    }

    /**
     * A value by its place among all values in rising order.
     *
     * @param rank place, from 1 to the number of values
     * @return the value, to {@link #ACCURACY} of itself
     */
    public double ranked(long rank) {
        if (rank <= 1) {
            return smallest;
        }
        if (rank >= count) {
            return largest;
        }
        long seen = 0;
        for (int i = negative.bins.length - 1; i >= 0; i--) {
            seen += negative.bins[i];
            if (seen >= rank) {
                return within(-negative.value(i));
            }
        }
        seen += zeros;
        if (seen >= rank) {
            return within(0);
        }
        for (int i = 0; i < positive.bins.length; i++) {
            seen += positive.bins[i];
            if (seen >= rank) {
                return within(positive.value(i));
            }
        }
        return largest;
    }

    private double within(double value) {
        return Math.min(largest, Math.max(smallest, value));
    }

    /**
     * Number of values above a limit. Values within {@link #ACCURACY} of the limit may be counted on either side.
     *
     * @param limit the limit
     * @return the number
     */
    public long above(double limit) {
        long sum = 0;
        for (int i = 0; i < positive.bins.length; i++) {
            sum += positive.value(i) > limit ? positive.bins[i] : 0;
        }
        sum += 0 > limit ? zeros : 0;
        for (int i = 0; i < negative.bins.length; i++) {
            sum += -negative.value(i) > limit ? negative.bins[i] : 0;
        }
        return sum;
    }
}
