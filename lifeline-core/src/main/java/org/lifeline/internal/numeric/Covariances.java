package org.lifeline.internal.numeric;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Means and covariances of several quantities that are read together, gathered one reading at a time as sums without rounding
 * ({@link ExactSum}): the order and the grouping of the readings do not matter, and each mean and covariance is rounded once.
 * Not thread-safe.
 */
public final class Covariances {
    /** Ratio of pivots below which the correlations of the variables count as singular [-]. */
    private static final double LEAST_QUALITY = 1e-10;

    private final ExactSum[] sums;
    private final ExactSum[] products; // row by row of the lower triangle
    private long count;

    /**
     * Nothing gathered yet.
     *
     * @param size number of quantities
     */
    public Covariances(int size) {
        sums = new ExactSum[size];
        Arrays.setAll(sums, i -> new ExactSum());
        products = new ExactSum[size * (size + 1) / 2];
        Arrays.setAll(products, i -> new ExactSum());
    }

    /**
     * What was gathered before.
     *
     * @param count number of readings
     * @param sums the sum of each quantity, as text
     * @param products the sum of each product of two, row by row of the lower triangle, as text
     * @return the same as if the readings had been added
     * @throws NumberFormatException if a text is not that of a sum
     */
    public static Covariances of(long count, List<String> sums, List<String> products) {
        Covariances c = new Covariances(sums.size());
        if (products.size() != c.products.length) {
            throw new NumberFormatException(
                    products.size() + " products of " + sums.size() + " quantities; there are " + c.products.length);
        }
        c.count = count;
        Arrays.setAll(c.sums, i -> ExactSum.parse(sums.get(i)));
        Arrays.setAll(c.products, i -> ExactSum.parse(products.get(i)));
        return c;
    }

    /**
     * Adds a reading.
     *
     * @param values one value for each quantity
     */
    public void add(double[] values) {
        count++;
        int k = 0;
        for (int i = 0; i < sums.length; i++) {
            sums[i].add(values[i]);
            for (int j = 0; j <= i; j++) {
                products[k++].addProduct(values[i], values[j]);
            }
        }
    }

    /**
     * Adds what another has gathered.
     *
     * @param other the other, of the same size; it keeps its readings
     */
    public void add(Covariances other) {
        count += other.count;
        for (int i = 0; i < sums.length; i++) {
            sums[i].add(other.sums[i]);
        }
        for (int k = 0; k < products.length; k++) {
            products[k].add(other.products[k]);
        }
    }

    /**
     * The sum of each quantity.
     *
     * @return texts of {@link ExactSum}
     */
    public List<String> sums() {
        return Arrays.stream(sums).map(ExactSum::text).toList();
    }

    /**
     * The sum of each product of two quantities.
     *
     * @return texts of {@link ExactSum}, row by row of the lower triangle
     */
    public List<String> products() {
        return Arrays.stream(products).map(ExactSum::text).toList();
    }

    /**
     * Number of quantities.
     *
     * @return the number
     */
    public int size() {
        return sums.length;
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
     * @return the mean, rounded once; 0 without readings; NaN if a reading was not finite
     */
    public double mean(int i) {
        return count == 0 ? 0 : sums[i].over(count);
    }

    /**
     * Covariance of two quantities, or the variance of one.
     *
     * @param i number of the one, from 0
     * @param j number of the other, from 0
     * @return the unbiased covariance, rounded once; NaN for fewer than two readings, or if one was not finite
     */
    public double of(int i, int j) {
        ExactSum product = products[Math.max(i, j) * (Math.max(i, j) + 1) / 2 + Math.min(i, j)];
        if (count < 2 || !product.isFinite() || !sums[i].isFinite() || !sums[j].isFinite()) {
            return Double.NaN;
        }
        // (n Σxy − Σx Σy) / (n (n − 1)), in whole numbers
        BigInteger n = BigInteger.valueOf(count);
        BigInteger numerator = n.multiply(product.units())
                .shiftLeft(ExactSum.POINT)
                .subtract(sums[i].units().multiply(sums[j].units()));
        return ExactSum.quotient(numerator, n.multiply(n.subtract(BigInteger.ONE)), 2 * ExactSum.POINT);
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
        int n = sums.length - 1;
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
