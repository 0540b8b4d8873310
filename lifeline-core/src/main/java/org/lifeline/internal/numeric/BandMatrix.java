package org.lifeline.internal.numeric;

import java.util.Arrays;

/**
 * A square band matrix with an LU factorisation, in place, and one by partial pivoting (Golub and Van Loan, <i>Matrix
 * Computations</i>, 4th ed. 2013, section 4.3). Nothing is allocated after construction, but for the first row exchange.
 *
 * <p>Rows are stored one after the other; row i keeps the columns i − lower … i + upper. For the fill of row exchanges
 * they are copied into rows that are longer by {@code lower} columns. Not thread-safe.
 */
public final class BandMatrix {
    /** Share of its diagonal entry that a pivot must keep in an elimination without row exchanges. */
    private static final double LEAST_PIVOT = 1e-9;

    private final int lower;
    private final int upper;
    private final int width;
    private final int size;
    private final double[] a;
    private final int wide;
    private double[] exchange = {};
    private final int[] pivot;

    /** One over the diagonal of the factor that is kept in place. */
    private final double[] inverse;

    private boolean exchanged;

    /**
     * A matrix of zeros.
     *
     * @param size number of rows and columns
     * @param lower number of diagonals below the main one
     * @param upper number of diagonals above the main one
     */
    public BandMatrix(int size, int lower, int upper) {
        this.size = size;
        this.lower = lower;
        this.upper = upper;
        this.width = lower + upper + 1;
        this.wide = width + lower;
        this.a = new double[size * width];
        this.pivot = new int[size];
        this.inverse = new double[size];
    }

    /** Sets all entries to zero. */
    public void clear() {
        Arrays.fill(a, 0, size * width, 0);
    }

    /**
     * Adds to an entry.
     *
     * @param row row
     * @param column column, within the band
     * @param value what is added
     */
    public void add(int row, int column, double value) {
        a[row * width + column - row + lower] += value;
    }

    /**
     * An entry of the matrix; valid before factorisation only.
     *
     * @param row row
     * @param column column
     * @return the entry; 0 outside the band
     */
    public double get(int row, int column) {
        int k = column - row + lower;
        return k < 0 || k >= width ? 0 : a[row * width + k];
    }

    /**
     * Replaces the matrix by its factors without exchanging rows, at less than half the cost of {@link #factor}: for a
     * matrix that is known to need no exchange as a rule.
     *
     * @return false if a pivot is not a number or has lost most of its diagonal entry to cancellation; the matrix is
     *     then useless and must be filled again, for {@link #factor}
     */
    public boolean eliminate() {
        exchanged = false;
        for (int k = 0; k < size; k++) {
            inverse[k] = LEAST_PIVOT * Math.abs(a[k * width + lower]);
        }
        for (int k = 0; k < size; k++) {
            int rowK = k * width + lower;
            double value = a[rowK];
            if (!(Math.abs(value) > inverse[k]) || Double.isInfinite(value)) {
                return false;
            }
            int rows = Math.min(size - 1 - k, lower);
            int columns = Math.min(size - k, upper + 1);
            double one = 1 / value;
            inverse[k] = one;
            int rowI = rowK;
            for (int i = 0; i < rows; i++) {
                rowI += width - 1;
                if (a[rowI] != 0) {
                    double factor = a[rowI] * one;
                    a[rowI] = factor;
                    int j = 1;
                    if (columns > 2) {
                        // The narrow bands of a line: no loop for so few.
                        a[rowI + 1] -= factor * a[rowK + 1];
                        a[rowI + 2] -= factor * a[rowK + 2];
                        j = 3;
                    }
                    for (; j < columns; j++) {
                        a[rowI + j] -= factor * a[rowK + j];
                    }
                }
            }
        }
        return true;
    }

    /**
     * Replaces the matrix by its factors, with exchange of rows.
     *
     * @return false if a pivot is zero or not a number; the matrix is then useless
     */
    public boolean factor() {
        exchanged = true;
        if (exchange.length == 0) {
            exchange = new double[size * wide];
        }
        double[] f = exchange;
        for (int i = 0; i < size; i++) {
            System.arraycopy(a, i * width, f, i * wide, width);
            Arrays.fill(f, i * wide + width, (i + 1) * wide, 0);
        }
        for (int k = 0; k < size; k++) {
            int lastRow = Math.min(size - 1, k + lower);
            int best = k;
            double bestValue = Math.abs(f[k * wide + lower]);
            for (int i = k + 1; i <= lastRow; i++) {
                double value = Math.abs(f[i * wide + k - i + lower]);
                if (value > bestValue) {
                    bestValue = value;
                    best = i;
                }
            }
            pivot[k] = best;
            if (!(bestValue > 0) || Double.isInfinite(bestValue)) {
                return false;
            }
            int columns = Math.min(size - k, width);
            int rowK = k * wide + lower;
            if (best != k) {
                int rowBest = best * wide + k - best + lower;
                for (int j = 0; j < columns; j++) {
                    double t = f[rowK + j];
                    f[rowK + j] = f[rowBest + j];
                    f[rowBest + j] = t;
                }
            }
            double inverse = 1 / f[rowK];
            for (int i = k + 1; i <= lastRow; i++) {
                int rowI = i * wide + k - i + lower;
                double factor = f[rowI] * inverse;
                f[rowI] = factor;
                if (factor != 0) {
                    for (int j = 1; j < columns; j++) {
                        f[rowI + j] -= factor * f[rowK + j];
                    }
                }
            }
        }
        return true;
    }

    /**
     * Solves with the factors.
     *
     * @param b right-hand side, replaced by the solution
     */
    public void solve(double[] b) {
        if (exchanged) {
            forwardExchanged(b);
            backwardExchanged(b);
        } else {
            solveInPlace(b);
        }
    }

    /** Takes what was found last as the last term of each row, and from a register: the rows wait for nothing else. */
    private void solveInPlace(double[] b) {
        double last = b[0];
        for (int i = 1; i < size; i++) {
            double sum = b[i];
            int row = i * width + lower - i;
            for (int k = Math.max(0, i - lower); k < i - 1; k++) {
                sum -= a[row + k] * b[k];
            }
            last = lower > 0 ? sum - a[row + i - 1] * last : sum;
            b[i] = last;
        }
        last = 0;
        for (int k = size - 1; k >= 0; k--) {
            int row = k * width + lower;
            double sum = b[k];
            for (int j = Math.min(size - 1 - k, upper); j > 1; j--) {
                sum -= a[row + j] * b[k + j];
            }
            last = (upper > 0 && k < size - 1 ? sum - a[row + 1] * last : sum) * inverse[k];
            b[k] = last;
        }
    }

    private void forwardExchanged(double[] b) {
        for (int k = 0; k < size; k++) {
            double t = b[pivot[k]];
            b[pivot[k]] = b[k];
            b[k] = t;
            int last = Math.min(size - 1, k + lower);
            for (int i = k + 1; i <= last; i++) {
                b[i] -= exchange[i * wide + k - i + lower] * t;
            }
        }
    }

    private void backwardExchanged(double[] b) {
        for (int k = size - 1; k >= 0; k--) {
            int columns = Math.min(size - k, width);
            int rowK = k * wide + lower;
            double sum = b[k];
            for (int j = 1; j < columns; j++) {
                sum -= exchange[rowK + j] * b[k + j];
            }
            b[k] = sum / exchange[rowK];
        }
    }
}
