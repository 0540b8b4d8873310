package org.lifeline.report.document;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.UnitSystem;

/**
 * Rounds numbers that add up so that they do so as printed.
 *
 * <p>Every number is rounded correctly by itself; decimals are added until the rounded ones add up. Where a few more do
 * not suffice, the totals are the sums of the printed rows, with {@value #GUARD} decimals more than usual, and
 * {@link #isExact} says so.
 */
public final class RoundedAccount {
    private static final int GUARD = 2;
    private static final int MOST_MORE = 3;

    private final List<BigDecimal> rows;
    private final List<BigDecimal> totals;
    private final boolean exact;

    private RoundedAccount(List<BigDecimal> rows, List<BigDecimal> totals, boolean exact) {
        this.rows = rows;
        this.totals = totals;
        this.exact = exact;
    }

    /**
     * A running account.
     *
     * @param start the first total in SI [unit of the kind]
     * @param steps what is taken away, step by step, in SI [unit of the kind]
     * @param measure what is counted
     * @param system the units
     * @return the account; totals() has one number more than rows()
     */
    public static RoundedAccount down(double start, List<Double> steps, QuantityKind measure, UnitSystem system) {
        int least = measure.decimals(start, system);
        for (int d = least; d <= least + MOST_MORE; d++) {
            RoundedAccount a = running(start, steps, measure, system, d);
            if (a.fits(start, steps, measure, system, d)) {
                return a;
            }
        }
        RoundedAccount a = running(start, steps, measure, system, least + GUARD);
        return new RoundedAccount(a.rows, a.totals, false);
    }

    private static RoundedAccount running(
            double start, List<Double> steps, QuantityKind measure, UnitSystem system, int decimals) {
        List<BigDecimal> rows = new ArrayList<>();
        List<BigDecimal> totals = new ArrayList<>();
        BigDecimal z = measure.rounded(start, system, decimals);
        totals.add(z);
        for (double step : steps) {
            BigDecimal r = measure.rounded(step, system, decimals);
            z = z.subtract(r);
            rows.add(r);
            totals.add(z);
        }
        return new RoundedAccount(rows, totals, true);
    }

    private boolean fits(double start, List<Double> steps, QuantityKind measure, UnitSystem system, int decimals) {
        BigDecimal z = measure.exact(start, system);
        for (int i = 0; i < steps.size(); i++) {
            z = z.subtract(measure.exact(steps.get(i), system));
            if (z.setScale(decimals, RoundingMode.HALF_UP).compareTo(totals.get(i + 1)) != 0) {
                return false;
            }
        }
        return true;
    }

    /**
     * A sum.
     *
     * @param parts what is added, in SI [unit of the kind]
     * @param measure what is counted
     * @param system the units
     * @return the account; totals() has the sum alone
     */
    public static RoundedAccount sum(List<Double> parts, QuantityKind measure, UnitSystem system) {
        double most = parts.stream().mapToDouble(Math::abs).max().orElse(0);
        int least = measure.decimals(most, system);
        BigDecimal exactSum =
                parts.stream().map(p -> measure.exact(p, system)).reduce(BigDecimal.ZERO, BigDecimal::add);
        for (int d = least; ; d++) {
            int decimals = d <= least + MOST_MORE ? d : least + GUARD;
            List<BigDecimal> rows = parts.stream()
                    .map(p -> measure.rounded(p, system, decimals))
                    .toList();
            BigDecimal printed = rows.stream().reduce(BigDecimal.ZERO.setScale(decimals), BigDecimal::add);
            boolean fits = exactSum.setScale(decimals, RoundingMode.HALF_UP).compareTo(printed) == 0;
            if (fits || d > least + MOST_MORE) {
                return new RoundedAccount(rows, List.of(printed), fits);
            }
        }
    }

    /**
     * What is added or taken away, rounded.
     *
     * @return the rows; unmodifiable
     */
    public List<BigDecimal> rows() {
        return rows;
    }

    /**
     * The totals of the printed rows.
     *
     * @return the totals; unmodifiable
     */
    public List<BigDecimal> totals() {
        return totals;
    }

    /**
     * Tells whether every printed total is also the correctly rounded one.
     *
     * @return true if it is
     */
    public boolean isExact() {
        return exact;
    }
}
