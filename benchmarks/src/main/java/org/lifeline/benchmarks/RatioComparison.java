package org.lifeline.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;

/**
 * Ratios of one run beside the stored ones. It fails where one of our own has grown by more than a quarter, where a stored
 * one was not measured, and where nothing is stored at all. What was measured but is not stored is named, and no failure:
 * a new benchmark has nothing to be compared with.
 *
 * <p>Immutable and thread-safe.
 */
final class RatioComparison {
    private static final double MOST_GROWTH = 1.25;

    /** Bytes of an operation that allocates nothing: what the harness itself leaves, which varies by more than a quarter. */
    private static final double NO_BYTES = 1;

    private final List<Row> rows;

    private RatioComparison(List<Row> rows) {
        this.rows = List.copyOf(rows);
    }

    /** What there is to say of a ratio. */
    enum Verdict {
        /** It has not grown, or is not ours to watch. */
        FINE(""),
        /** It has grown by more than a quarter. */
        SLOWER("SLOWER"),
        /** It was measured, but there is nothing to compare it with. */
        NOT_STORED("NOT STORED"),
        /** It is stored, but the run gave no number for it. */
        NOT_MEASURED("NOT MEASURED");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        boolean fails() {
            return this == SLOWER || this == NOT_MEASURED;
        }
    }

    /**
     * One ratio.
     *
     * @param name its name
     * @param now as measured [unit of the ratio]; NaN if it was not
     * @param before as stored [unit of the ratio]; NaN if it is not
     * @param verdict what there is to say
     */
    record Row(String name, double now, double before, Verdict verdict) {}

    /**
     * Compares.
     *
     * @param stored ratios by name
     * @param now those of this run
     * @return every name of either, in order
     */
    static RatioComparison of(Map<String, Double> stored, Map<String, Double> now) {
        TreeSet<String> names = new TreeSet<>(stored.keySet());
        names.addAll(now.keySet());
        List<Row> rows = new ArrayList<>();
        for (String name : names) {
            double measured = now.getOrDefault(name, Double.NaN);
            double before = stored.getOrDefault(name, Double.NaN);
            rows.add(new Row(name, measured, before, verdict(name, measured, before)));
        }
        return new RatioComparison(rows);
    }

    private static Verdict verdict(String name, double now, double before) {
        if (!Double.isFinite(now)) {
            // A median over a kernel that is missing is no number either.
            return Verdict.NOT_MEASURED;
        }
        if (!Double.isFinite(before)) {
            return Verdict.NOT_STORED;
        }
        boolean nothing = name.endsWith(".bytes") && now < NO_BYTES;
        return watched(name) && !nothing && now > MOST_GROWTH * before ? Verdict.SLOWER : Verdict.FINE;
    }

    /** Our own work only; the kernel is the measure, and what others script is not ours to keep fast. */
    private static boolean watched(String name) {
        return !name.equals("kernel") && !name.startsWith("kernel.") && !name.startsWith("scripted");
    }

    /** Every ratio, in the order of the names. */
    List<Row> rows() {
        return rows;
    }

    /** Tells whether every stored ratio was measured and none of ours has grown too much. */
    boolean passes() {
        return rows.stream().noneMatch(r -> r.verdict.fails())
                && rows.stream().anyMatch(r -> r.verdict != Verdict.NOT_STORED);
    }

    /** A line for each ratio, and how many there are to look at. */
    String text() {
        StringBuilder b = new StringBuilder();
        for (Row r : rows) {
            String line = String.format(
                    Locale.ROOT, "%-34s %12s   stored %12s   %s", r.name, show(r.now), show(r.before), r.verdict.words);
            b.append(line.stripTrailing()).append('\n');
        }
        return b.append(count(Verdict.SLOWER))
                .append(" slower, ")
                .append(count(Verdict.NOT_MEASURED))
                .append(" stored but not measured, ")
                .append(count(Verdict.NOT_STORED))
                .append(" measured but not stored: ")
                .append(passes() ? "passed" : "FAILED")
                .append('\n')
                .toString();
    }

    private long count(Verdict verdict) {
        return rows.stream().filter(r -> r.verdict == verdict).count();
    }

    private static String show(double value) {
        return Double.isFinite(value) ? String.format(Locale.ROOT, "%.3f", value) : "–";
    }
}
