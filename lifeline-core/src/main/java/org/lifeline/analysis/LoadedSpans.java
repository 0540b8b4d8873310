package org.lifeline.analysis;

import java.util.Arrays;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.Convergence;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;
import org.lifeline.internal.catenary.LoadedSpan;

/**
 * Many single spans at once, each between two fixed supports under one load that grips the cable: the bare equilibrium
 * for tables, sweeps and studies, without the model of a whole line around it.
 *
 * <p>Inputs are columns with one number a row, or a single number for all rows. Rows are solved one after the other,
 * without allocation between them; each starts from a closed form that knows its slack, stretch and weight, and ends to
 * rounding: relative errors of a tension are near 1e-14, or 1e-16 EA/T where the cable is so stiff that rounding of
 * its length shows. The rope is linear. For anything else there is {@link Statics}.
 *
 * <p>Immutable and thread-safe. Build with {@link #builder()}.
 *
 * @since 1.0.0
 */
public final class LoadedSpans {
    private final int rows;
    private final double[][] columns;

    private LoadedSpans(int rows, double[][] columns) {
        this.rows = rows;
        this.columns = columns;
    }

    /**
     * Starts a batch.
     *
     * @return a builder of level spans; everything else must be given
     */
    public static Builder builder() {
        return new Builder();
    }

    /**
     * Number of rows.
     *
     * @return the length of the longest column
     */
    public int rows() {
        return rows;
    }

    /**
     * Solves all rows.
     *
     * @return the equilibria
     * @throws NoEquilibriumException if a row has none, with its number
     */
    public Solution solve() {
        Solution s = attempt();
        for (int i = 0; i < rows; i++) {
            if (Double.isNaN(s.horizontal[i])) {
                throw new NoEquilibriumException(
                        "loaded span in row " + i, (double) i / rows, new Convergence(60, Double.NaN, 1e-14));
            }
        }
        return s;
    }

    /**
     * Solves all rows that have an equilibrium.
     *
     * @return the equilibria; rows without one hold NaN
     */
    public Solution attempt() {
        Solution s = new Solution(rows);
        LoadedSpan span = new LoadedSpan();
        double[] run = columns[0];
        double[] rise = columns[1];
        double[] weight = columns[2];
        double[] stiffness = columns[3];
        double[] length = columns[4];
        double[] share = columns[5];
        double[] load = columns[6];
        for (int i = 0; i < rows; i++) {
            double total = at(length, i);
            double before = at(share, i) * total;
            span.run = at(run, i);
            span.rise = at(rise, i);
            span.weight = at(weight, i);
            span.compliance = 1 / at(stiffness, i);
            span.before = before;
            span.behind = total - before;
            span.load = at(load, i);
            boolean found = span.solve();
            s.horizontal[i] = found ? span.horizontal : Double.NaN;
            s.vertical[i] = found ? span.vertical : Double.NaN;
            s.endVertical[i] = found ? span.vertical + span.weight * total + span.load : Double.NaN;
            s.drop[i] = found ? span.drop() : Double.NaN;
        }
        return s;
    }

    private static double at(double[] column, int row) {
        return column[column.length == 1 ? 0 : row];
    }

    /**
     * The equilibria of a batch, by row.
     *
     * <p>Immutable and thread-safe.
     *
     * @since 1.0.0
     */
    public static final class Solution {
        private final double[] horizontal;
        private final double[] vertical;
        private final double[] endVertical;
        private final double[] drop;

        private Solution(int rows) {
            horizontal = new double[rows];
            vertical = new double[rows];
            endVertical = new double[rows];
            drop = new double[rows];
        }

        /**
         * Number of rows.
         *
         * @return as in the batch
         */
        public int rows() {
            return horizontal.length;
        }

        private int checked(int row) {
            return Violations.requiredIndex("row", row, horizontal.length);
        }

        /**
         * Horizontal component of the tension.
         *
         * @param row number of the row, from 0
         * @return tension [N]; NaN without equilibrium
         */
        public double horizontalTension(int row) {
            return horizontal[checked(row)];
        }

        /**
         * Tension at the first support.
         *
         * @param row number of the row, from 0
         * @return tension [N]; NaN without equilibrium
         */
        public double startTension(int row) {
            return Math.sqrt(horizontal[checked(row)] * horizontal[row] + vertical[row] * vertical[row]);
        }

        /**
         * Tension at the second support.
         *
         * @param row number of the row, from 0
         * @return tension [N]; NaN without equilibrium
         */
        public double endTension(int row) {
            return Math.sqrt(horizontal[checked(row)] * horizontal[row] + endVertical[row] * endVertical[row]);
        }

        /**
         * Vertical force of the cable on the first support.
         *
         * @param row number of the row, from 0
         * @return force [N], positive down; NaN without equilibrium
         */
        public double startReaction(int row) {
            return -vertical[checked(row)];
        }

        /**
         * Vertical force of the cable on the second support.
         *
         * @param row number of the row, from 0
         * @return force [N], positive down; NaN without equilibrium
         */
        public double endReaction(int row) {
            return endVertical[checked(row)];
        }

        /**
         * How far the load hangs below the first support.
         *
         * @param row number of the row, from 0
         * @return distance [m], positive down; NaN without equilibrium
         */
        public double drop(int row) {
            return drop[checked(row)];
        }
    }

    /**
     * Collects the columns. Not thread-safe.
     *
     * @since 1.0.0
     */
    public static final class Builder {
        private static final String[] NAMES = {
            "run", "rise", "weightPerLength", "axialStiffness", "unstretchedLength", "loadShare", "load"
        };
        private static final String[] UNITS = {"m", "m", "N/m", "N", "m", "", "N"};
        private final double[][] columns = new double[NAMES.length][];

        private Builder() {
            Arrays.fill(columns, new double[0]);
            columns[1] = new double[] {0};
        }

        /**
         * Horizontal distance of the supports.
         *
         * @param values distances [m], above zero; one for all rows or one a row
         * @return this
         */
        public Builder run(double... values) {
            return set(0, values);
        }

        /**
         * Rise from the first to the second support; 0 unless set.
         *
         * @param values rises [m], positive when the second support is higher; one for all rows or one a row
         * @return this
         */
        public Builder rise(double... values) {
            return set(1, values);
        }

        /**
         * Weight of the cable per unstretched length.
         *
         * @param values weights [N/m], not negative; one for all rows or one a row
         * @return this
         */
        public Builder weightPerLength(double... values) {
            return set(2, values);
        }

        /**
         * Axial stiffness of the cable.
         *
         * @param values EA [N], above zero; one for all rows or one a row
         * @return this
         */
        public Builder axialStiffness(double... values) {
            return set(3, values);
        }

        /**
         * Unstretched length of the cable in the span.
         *
         * @param values lengths [m], above zero; one for all rows or one a row
         * @return this
         */
        public Builder unstretchedLength(double... values) {
            return set(4, values);
        }

        /**
         * Where the load grips the cable.
         *
         * @param values share of the unstretched length from the first support [-], above 0 and below 1; one for all rows
         *     or one a row
         * @return this
         */
        public Builder loadShare(double... values) {
            return set(5, values);
        }

        /**
         * The load.
         *
         * @param values downward forces [N], not negative; one for all rows or one a row
         * @return this
         */
        public Builder load(double... values) {
            return set(6, values);
        }

        private Builder set(int column, double[] values) {
            columns[column] = Violations.required(NAMES[column], values).clone();
            return this;
        }

        /**
         * Checks everything and makes the batch.
         *
         * @return the batch
         * @throws org.lifeline.base.InvalidInputException with all violations
         */
        public LoadedSpans build() {
            int rows = 0;
            for (double[] each : columns) {
                rows = Math.max(rows, each.length);
            }
            Violations v = new Violations();
            for (int c = 0; c < columns.length; c++) {
                int n = columns[c].length;
                if (n != rows && n != 1) {
                    v.add(NAMES[c], GivenValue.countOf(n, "numbers"), InputRule.COLUMN_LENGTH, rows);
                }
                for (int i = 0; i < n; i++) {
                    check(v, c, i);
                }
            }
            v.throwIfAny();
            double[][] copy = new double[columns.length][];
            for (int c = 0; c < columns.length; c++) {
                copy[c] = columns[c].clone();
            }
            return new LoadedSpans(rows, copy);
        }

        private void check(Violations v, int c, int row) {
            double x = columns[c][row];
            boolean fine =
                    switch (c) {
                        case 1 -> Math.abs(x) < Double.POSITIVE_INFINITY;
                        case 2, 6 -> x >= 0 && x < Double.POSITIVE_INFINITY;
                        case 5 -> x > 0 && x < 1;
                        default -> x > 0 && x < Double.POSITIVE_INFINITY;
                    };
            if (!fine) {
                GivenValue given = GivenValue.number(x, UNITS[c]);
                String path = NAMES[c] + "[" + row + "]";
                v.add(
                        switch (c) {
                            case 1 ->
                                Violation.of(path, given, InputRule.NOT_FINITE).allowing(AllowedRange.finite());
                            case 2, 6 ->
                                Violation.of(path, given, InputRule.NEGATIVE).allowing(AllowedRange.atLeast(0));
                            case 5 ->
                                Violation.of(path, given, InputRule.NOT_INSIDE_RANGE, 0, 1)
                                        .allowing(AllowedRange.inside(Interval.of(0, 1)));
                            default ->
                                Violation.of(path, given, InputRule.NOT_ABOVE_ZERO)
                                        .allowing(AllowedRange.above(0));
                        });
            }
        }
    }
}
