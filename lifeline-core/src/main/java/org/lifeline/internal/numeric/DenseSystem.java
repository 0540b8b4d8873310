package org.lifeline.internal.numeric;

/** A small dense system of linear equations, by elimination with row pivots (Golub & Van Loan, Matrix Computations, 3.4). */
public final class DenseSystem {
    private DenseSystem() {}

    /**
     * Solves A x = b; both are overwritten.
     *
     * @param a the matrix by rows
     * @param b the right side; holds the solution afterwards
     * @return false where the matrix is singular to rounding
     */
    public static boolean solve(double[][] a, double[] b) {
        int n = b.length;
        for (int k = 0; k < n; k++) {
            int pivot = k;
            for (int i = k + 1; i < n; i++) {
                pivot = Math.abs(a[i][k]) > Math.abs(a[pivot][k]) ? i : pivot;
            }
            if (!(Math.abs(a[pivot][k]) > 0)) {
                return false;
            }
            double[] row = a[pivot];
            a[pivot] = a[k];
            a[k] = row;
            double right = b[pivot];
            b[pivot] = b[k];
            b[k] = right;
            for (int i = k + 1; i < n; i++) {
                double factor = a[i][k] / a[k][k];
                for (int j = k; factor != 0 && j < n; j++) {
                    a[i][j] -= factor * a[k][j];
                }
                b[i] -= factor * b[k];
            }
        }
        for (int k = n - 1; k >= 0; k--) {
            for (int j = k + 1; j < n; j++) {
                b[k] -= a[k][j] * b[j];
            }
            b[k] /= a[k][k];
        }
        return true;
    }
}
