package org.lifeline.design.study.partial;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.Violations;
import org.lifeline.internal.numeric.LogHistogram;

/**
 * How many values of a response lie where: counts in bins of constant relative width. Bin i holds the magnitudes above g^(i−1)
 * up to g^i with g = 1.0001/0.9999; magnitudes below 1e-12 count as zero, those above 1e12 lie in the last bin.
 *
 * <p>Immutable and thread-safe.
 *
 * @param zeros number of values that count as zero
 * @param extent smallest and largest value, exactly [unit of the response]; from 0 to 0 if there is no value
 * @param positive number of values in each bin above zero
 * @param negative number of values in each bin below zero, numbered by magnitude
 * @since 1.0.0
 */
public record ValueCounts(
        long zeros, Interval extent, SortedMap<Integer, Long> positive, SortedMap<Integer, Long> negative) {
    /**
     * Copies the counts.
     *
     * @param zeros number of values that count as zero
     * @param extent smallest and largest value
     * @param positive counts above zero
     * @param negative counts below zero
     * @throws org.lifeline.base.InvalidInputException if a count is not above zero or a bin is none
     */
    public ValueCounts {
        Violations.required("extent", extent);
        Violations.required("positive", positive);
        Violations.required("negative", negative);
        positive = Collections.unmodifiableSortedMap(new TreeMap<>(positive));
        negative = Collections.unmodifiableSortedMap(new TreeMap<>(negative));
        Violations v =
                new Violations().require(zeros >= 0, "zeros", GivenValue.count(zeros), InputRule.COUNT_FROM_ZERO);
        check(v, "positive", positive);
        check(v, "negative", negative);
        v.throwIfAny();
    }

    private static void check(Violations v, String path, SortedMap<Integer, Long> bins) {
        bins.forEach((bin, n) -> v.require(LogHistogram.isBin(bin), path, GivenValue.count(bin), InputRule.NO_SUCH_BIN)
                .require(n > 0, path + "[" + bin + "]", GivenValue.count(n), InputRule.NOT_ABOVE_ZERO));
    }

    /**
     * Number of values.
     *
     * @return the number
     */
    public long count() {
        long n = zeros;
        for (long each : positive.values()) {
            n += each;
        }
        for (long each : negative.values()) {
            n += each;
        }
        return n;
    }

    ValueCounts merged(ValueCounts other) {
        if (other.count() == 0) {
            return this;
        }
        if (count() == 0) {
            return other;
        }
        return new ValueCounts(
                zeros + other.zeros,
                Interval.of(Math.min(extent.low(), other.extent.low()), Math.max(extent.high(), other.extent.high())),
                merged(positive, other.positive),
                merged(negative, other.negative));
    }

    private static SortedMap<Integer, Long> merged(SortedMap<Integer, Long> a, SortedMap<Integer, Long> b) {
        SortedMap<Integer, Long> map = new TreeMap<>(a);
        b.forEach((bin, n) -> map.merge(bin, n, Long::sum));
        return map;
    }
}
