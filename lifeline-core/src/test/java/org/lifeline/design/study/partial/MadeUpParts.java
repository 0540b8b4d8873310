package org.lifeline.design.study.partial;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.lifeline.base.Interval;

/**
 * Parts of an invented study with one variable and one response, both whole numbers of the case number, so that every sum is known
 * by counting. Built without the statistics of the library.
 */
final class MadeUpParts {
    static final StudyIdentity IDENTITY =
            new StudyIdentity(5, "walkway", List.of("pretension [N], uniform"), List.of("force [N]"));

    private MadeUpParts() {}

    /** Drawn value of a case. */
    static long input(long number) {
        return 3 * number - 40;
    }

    /** Value of the response: below zero, zero and above. */
    static long output(long number) {
        return number % 7 == 0 ? 0 : 11 - number * number % 23;
    }

    /** Every thirteenth case has no result, every fifth no value. */
    static boolean fails(long number) {
        return number % 13 == 0;
    }

    static boolean hasValue(long number) {
        return !fails(number) && number % 5 != 0;
    }

    /** A whole number as sums are written: an odd number in hexadecimal digits and a power of two. */
    static String text(long n) {
        int power = Long.numberOfTrailingZeros(n);
        return n == 0 ? "0" : Long.toString(n >> power, 16) + "p" + power;
    }

    /** The bin of a magnitude, by the definition: above g^(i − 1) up to g^i with g = 1.0001/0.9999. */
    static int bin(double magnitude) {
        return (int) Math.ceil(Math.log(magnitude) / Math.log(1.0001 / 0.9999));
    }

    static StudyPartial part(long first, long last) {
        List<KeptCase> failures = new ArrayList<>();
        List<KeptCase> kept = new ArrayList<>();
        for (long i = first; i <= last; i++) {
            if (fails(i)) {
                failures.add(new KeptCase(i, List.of((double) input(i)), "no equilibrium in case " + i));
            } else if (hasValue(i)) {
                kept.add(new KeptCase(i, List.of((double) input(i), (double) output(i)), ""));
            }
        }
        return new StudyPartial(
                IDENTITY,
                List.of(new CaseRange(first, last)),
                new StudyPartial.FailedCases(failures.size(), failures),
                List.of(new ResponsePartial(counts(kept), sums(kept), kept)));
    }

    static ExactSums sums(List<KeptCase> cases) {
        long x = 0;
        long y = 0;
        long xx = 0;
        long xy = 0;
        long yy = 0;
        for (KeptCase each : cases) {
            long a = each.values().get(0).longValue();
            long b = each.values().get(1).longValue();
            x += a;
            y += b;
            xx += a * a;
            xy += a * b;
            yy += b * b;
        }
        return new ExactSums(cases.size(), List.of(text(x), text(y)), List.of(text(xx), text(xy), text(yy)));
    }

    static ValueCounts counts(List<KeptCase> cases) {
        SortedMap<Integer, Long> above = new TreeMap<>();
        SortedMap<Integer, Long> below = new TreeMap<>();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        long zeros = 0;
        for (KeptCase each : cases) {
            double v = each.values().get(1);
            low = Math.min(low, v);
            high = Math.max(high, v);
            if (v == 0) {
                zeros++;
            } else {
                (v > 0 ? above : below).merge(bin(Math.abs(v)), 1L, Long::sum);
            }
        }
        return new ValueCounts(zeros, cases.isEmpty() ? Interval.exactly(0) : Interval.of(low, high), above, below);
    }
}
