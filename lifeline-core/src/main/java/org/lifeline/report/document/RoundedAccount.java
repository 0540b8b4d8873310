package org.lifeline.report.document;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.UnitSystem;

/**
 * Rounds numbers that add up so that they do so as printed, with the digits that their kind always has.
 *
 * <p>The total is the correctly rounded one. Where the rounded rows do not add up to it, the rows whose rounding was coarsest
 * are rounded the other way: such a row differs from what it stands for by less than one in its last digit. A row that needs
 * no rounding, as most that were put in, stays as it is. {@link #isExact} says whether no row was changed.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class RoundedAccount {
    private final List<BigDecimal> rows;
    private final List<BigDecimal> totals;
    private final boolean exact;

    private RoundedAccount(List<BigDecimal> rows, List<BigDecimal> totals, boolean exact) {
        this.rows = List.copyOf(rows);
        this.totals = List.copyOf(totals);
        this.exact = exact;
    }

    /**
     * A running account. Its first total, the last and the last but one are the correctly rounded ones: where the steps lead from
     * a line down to feet and the margin below them, these are line, lowest point and required elevation.
     *
     * @param start the first total in SI [unit of the kind]
     * @param steps what is taken away, step by step, in SI [unit of the kind]
     * @param kind what is counted
     * @param system the units
     * @return the account; totals() has one number more than rows()
     */
    public static RoundedAccount down(double start, List<Double> steps, QuantityKind kind, UnitSystem system) {
        int decimals = kind.decimals(start, system);
        List<BigDecimal> exact = steps.stream().map(s -> kind.exact(s, system)).toList();
        BigDecimal first = kind.rounded(start, system, decimals);
        BigDecimal end = kind.exact(start, system).subtract(sum(exact)).setScale(decimals, RoundingMode.HALF_UP);
        List<BigDecimal> rounded = rounded(exact, decimals);
        List<BigDecimal> rows = new ArrayList<>();
        if (exact.size() > 1) {
            // The total before the last step stands by itself elsewhere: it is rounded correctly as well.
            int most = exact.size() - 1;
            List<BigDecimal> above = exact.subList(0, most);
            BigDecimal lowest = kind.exact(start, system).subtract(sum(above)).setScale(decimals, RoundingMode.HALF_UP);
            rows.addAll(fitted(above, rounded.subList(0, most), first.subtract(lowest)));
            rows.add(lowest.subtract(end));
        } else {
            rows.addAll(fitted(exact, rounded, first.subtract(end)));
        }
        List<BigDecimal> totals = new ArrayList<>(List.of(first));
        rows.forEach(r -> totals.add(totals.get(totals.size() - 1).subtract(r)));
        return new RoundedAccount(rows, totals, rows.equals(rounded));
    }

    /**
     * A sum.
     *
     * @param parts what is added, in SI [unit of the kind]
     * @param kind what is counted
     * @param system the units
     * @return the account; totals() has the sum alone
     */
    public static RoundedAccount sum(List<Double> parts, QuantityKind kind, UnitSystem system) {
        double most = parts.stream().mapToDouble(Math::abs).max().orElse(0);
        int decimals = kind.decimals(most, system);
        List<BigDecimal> exact = parts.stream().map(p -> kind.exact(p, system)).toList();
        BigDecimal total = sum(exact).setScale(decimals, RoundingMode.HALF_UP);
        List<BigDecimal> rounded = rounded(exact, decimals);
        List<BigDecimal> rows = fitted(exact, rounded, total);
        return new RoundedAccount(rows, List.of(total), rows.equals(rounded));
    }

    private static BigDecimal sum(List<BigDecimal> values) {
        return values.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static List<BigDecimal> rounded(List<BigDecimal> exact, int decimals) {
        return exact.stream()
                .map(v -> v.setScale(decimals, RoundingMode.HALF_UP))
                .toList();
    }

    /** The rounded rows, those with the coarsest rounding changed by one in the last digit until they add up to the total. */
    private static List<BigDecimal> fitted(List<BigDecimal> exact, List<BigDecimal> rounded, BigDecimal total) {
        List<BigDecimal> rows = new ArrayList<>(rounded);
        for (int left = rows.size(); left > 0; left--) {
            int sign = total.subtract(sum(rows)).signum();
            if (sign == 0) {
                break;
            }
            int coarsest = 0;
            BigDecimal most = null;
            for (int i = 0; i < rows.size(); i++) {
                BigDecimal error = exact.get(i).subtract(rows.get(i)).multiply(BigDecimal.valueOf(sign));
                if (most == null || error.compareTo(most) > 0) {
                    most = error;
                    coarsest = i;
                }
            }
            BigDecimal unit = BigDecimal.ONE.movePointLeft(total.scale()).multiply(BigDecimal.valueOf(sign));
            rows.set(coarsest, rows.get(coarsest).add(unit));
        }
        return rows;
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
     * The totals of the printed rows; the last is the correctly rounded one, and in a running account the last but one too.
     *
     * @return the totals; unmodifiable
     */
    public List<BigDecimal> totals() {
        return totals;
    }

    /**
     * Tells whether every row is the correctly rounded one.
     *
     * @return true if it is
     */
    public boolean isExact() {
        return exact;
    }
}
