package org.lifeline.internal.numeric;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Means and covariances of several quantities that are read together, gathered one reading at a time (B. P. Welford,
 * Technometrics 4(3):419–420, 1962, for several variables). Not thread-safe.
 */
public final class Covariances {
    /** Ratio of pivots below which the correlations of the variables count as singular [-]. */
    private static final double LEAST_QUALITY = 1e-10;

    private final double[] mean;
    private final double[][] sum;
    private final double[] before;
    private long count;

    /**
     * Nothing gathered yet.
     *
     * @param size number of quantities
     */
    public Covariances(int size) {
        mean = new double[size];
        sum = new double[size][size];
        before = new double[size];
    }

    /**
     * Adds a reading.
     *
     * @param values one value for each quantity
     */
    public void add(double[] values) {
        count++;
        for (int i = 0; i < mean.length; i++) {
            before[i] = values[i] - mean[i];
            mean[i] += before[i] / count;
        }
        for (int i = 0; i < mean.length; i++) {
            double after = values[i] - mean[i];
            for (int j = 0; j <= i; j++) {
                sum[i][j] += after * before[j];
            }
        }
    }

    /**
     * Number of quantities.
     *
     * @return the number
     */
    public int size() {
        return mean.length;
    }

    /**
     * Number of readings.
     *
     * @return the number
     */
    public long count() {
        return count;
    }

    /**
     * Mean of a quantity.
     *
     * @param i number of the quantity, from 0
     * @return the mean; 0 without readings
     */
    public double mean(int i) {
        return mean[i];
    }

    /**
     * Covariance of two quantities, or the variance of one.
     *
     * @param i number of the one, from 0
     * @param j number of the other, from 0
     * @return the unbiased covariance; NaN for fewer than two readings
     */
    public double of(int i, int j) {
        return count < 2 ? Double.NaN : (i >= j ? sum[i][j] : sum[j][i]) / (count - 1);
    }

    /**
     * Correlation of two quantities.
     *
     * @param i number of the one, from 0
     * @param j number of the other, from 0
     * @return from −1 to 1; NaN where one does not vary
     */
    public double correlation(int i, int j) {
        double product = Math.sqrt(of(i, i)) * Math.sqrt(of(j, j));
        return product > 0 ? of(i, j) / product : Double.NaN;
    }

    /**
     * Standardised regression coefficients of the last quantity on all others: by how many of its standard deviations it
     * moves when one of the others moves by one of its own (A. Saltelli et al., <i>Sensitivity Analysis</i>, Wiley 2000,
     * ch. 2).
     *
     * @return one for each other quantity, NaN where it does not vary; all NaN when they cannot be told apart
     */
    public double[] standardisedRegression() {
        int n = mean.length - 1;
        double[] result = new double[n];
        int[] varying = new int[n];
        int k = 0;
        for (int i = 0; i < n; i++) {
            result[i] = Double.NaN;
            if (of(i, i) > 0) {
                varying[k++] = i;
            }
        }
        if (k == 0 || !(of(n, n) > 0) || count <= k + 1) {
            return result;
        }
        DMatrixRMaj a = new DMatrixRMaj(k, k);
        DMatrixRMaj b = new DMatrixRMaj(k, 1);
        DMatrixRMaj x = new DMatrixRMaj(k, 1);
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < k; j++) {
                a.set(i, j, correlation(varying[i], varying[j]));
            }
            b.set(i, 0, correlation(varying[i], n));
        }
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.chol(k);
        if (!solver.setA(a) || solver.quality() < LEAST_QUALITY) {
            return result;
        }
        solver.solve(b, x);
        for (int i = 0; i < k; i++) {
            result[varying[i]] = x.get(i, 0);
        }
        return result;
    }
}
