package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;
import org.junit.jupiter.api.Test;

/** The band factorisation against the dense LU of EJML, over random bandwidths, with and without forced pivoting. */
class BandMatrixTest {
    private static final int CASES = 1500;

    @Test
    void agreesWithDenseLu() {
        for (int seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            int n = r.nextInt(1, 60);
            int lower = r.nextInt(0, Math.min(n, 12));
            int upper = r.nextInt(0, Math.min(n, 12));
            BandMatrix band = new BandMatrix(n, lower, upper);
            DMatrixRMaj dense = new DMatrixRMaj(n, n);
            int style = r.nextInt(3);
            for (int i = 0; i < n; i++) {
                for (int j = Math.max(0, i - lower); j <= Math.min(n - 1, i + upper); j++) {
                    double value = r.nextDouble(-1, 1);
                    if (i == j && style == 1) {
                        // Rows must be exchanged: nothing on the diagonal, unless nothing stands below it.
                        value = lower > 0 && upper > 0 && n > 1 ? 0 : value;
                    }
                    if (style == 2) {
                        value *= Math.pow(10, r.nextInt(-6, 7));
                    }
                    dense.set(i, j, value);
                    // In two parts: entries add up.
                    band.add(i, j, 0.25 * value);
                    band.add(i, j, 0.75 * value);
                }
            }
            double[] x = new double[n];
            double[] b = new double[n];
            for (int i = 0; i < n; i++) {
                x[i] = r.nextDouble(-1, 1);
                for (int j = 0; j < n; j++) {
                    assertThat(band.get(i, j)).isCloseTo(dense.get(i, j), within(1e-15 * Math.abs(dense.get(i, j))));
                }
            }
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    b[i] += dense.get(i, j) * x[j];
                }
            }
            DMatrixRMaj right = new DMatrixRMaj(n, 1, true, b.clone());
            DMatrixRMaj want = new DMatrixRMaj(n, 1);
            LinearSolverDense<DMatrixRMaj> lu = LinearSolverFactory_DDRM.lu(n);
            boolean regular = lu.setA(dense.copy());
            double quality = regular ? lu.quality() : 0;
            if (!regular || !(quality > 1e-11)) {
                continue;
            }
            lu.solve(right, want);
            assertThat(band.factor()).as("seed " + seed).isTrue();
            double[] have = b.clone();
            band.solve(have);
            double size = 0;
            double error = 0;
            double other = 0;
            for (int i = 0; i < n; i++) {
                size = Math.max(size, Math.abs(x[i]));
                error = Math.max(error, Math.abs(have[i] - want.get(i, 0)));
                other = Math.max(other, Math.abs(want.get(i, 0) - x[i]));
            }
            // Both have their rounding: as far apart as the dense solution is from the true one, by a factor.
            assertThat(error).as("seed " + seed).isLessThan(1e-10 * size + 100 * other);
            double residual = 0;
            double scale = 0;
            for (int i = 0; i < n; i++) {
                double sum = -b[i];
                double abs = Math.abs(b[i]);
                for (int j = 0; j < n; j++) {
                    sum += dense.get(i, j) * have[j];
                    abs += Math.abs(dense.get(i, j) * have[j]);
                }
                residual = Math.max(residual, Math.abs(sum));
                scale = Math.max(scale, abs);
            }
            // Backward stable: the residual is rounding, whatever the condition of the matrix.
            assertThat(residual).as("seed " + seed).isLessThan(1e-13 * scale);
        }
    }

    @Test
    void eliminatesWithoutExchangeWhereTheDiagonalIsStrong() {
        for (int seed = 1; seed <= CASES / 3; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            int n = r.nextInt(1, 60);
            int lower = r.nextInt(0, Math.min(n, 12));
            int upper = r.nextInt(0, Math.min(n, 12));
            BandMatrix one = new BandMatrix(n, lower, upper);
            BandMatrix other = new BandMatrix(n, lower, upper);
            for (int i = 0; i < n; i++) {
                for (int j = Math.max(0, i - lower); j <= Math.min(n - 1, i + upper); j++) {
                    double value = i == j ? 30 : r.nextDouble(-1, 1);
                    one.add(i, j, value);
                    other.add(i, j, value);
                }
            }
            assertThat(one.eliminate()).as("seed " + seed).isTrue();
            assertThat(other.factor()).as("seed " + seed).isTrue();
            for (int k = 0; k < 3; k++) {
                double[] a = r.doubles(n, -1, 1).toArray();
                double[] b = a.clone();
                one.solve(a);
                other.solve(b);
                assertThat(a).as("seed " + seed).containsExactly(b, within(1e-16));
            }
        }
    }

    @Test
    void doesNotEliminateWithoutExchangeWhereAPivotFades() {
        BandMatrix zero = new BandMatrix(2, 1, 1);
        zero.add(0, 1, 1);
        zero.add(1, 0, 1);
        assertThat(zero.eliminate()).isFalse();
        // 1 − 1 + 1e-12: the second pivot is what rounding leaves of its diagonal entry.
        BandMatrix faded = new BandMatrix(2, 1, 1);
        faded.add(0, 0, 1);
        faded.add(0, 1, 1);
        faded.add(1, 0, 1);
        faded.add(1, 1, 1 + 1e-12);
        assertThat(faded.eliminate()).isFalse();
        BandMatrix sick = new BandMatrix(1, 0, 0);
        sick.add(0, 0, Double.NaN);
        assertThat(sick.eliminate()).isFalse();
        BandMatrix huge = new BandMatrix(1, 0, 0);
        huge.add(0, 0, Double.NEGATIVE_INFINITY);
        assertThat(huge.eliminate()).isFalse();
        // Filled again, with exchange it goes.
        zero.clear();
        zero.add(0, 1, 1);
        zero.add(1, 0, 1);
        assertThat(zero.factor()).isTrue();
        double[] b = {3, 4};
        zero.solve(b);
        assertThat(b).containsExactly(4, 3);
    }

    @Test
    void manyRightHandSidesWithOneFactorisation() {
        BandMatrix m = new BandMatrix(3, 1, 1);
        double[][] a = {{0, 2, 0}, {3, 0, 1}, {0, 4, 5}};
        for (int i = 0; i < 3; i++) {
            for (int j = Math.max(0, i - 1); j <= Math.min(2, i + 1); j++) {
                m.add(i, j, a[i][j]);
            }
        }
        assertThat(m.factor()).isTrue();
        for (double[] x : new double[][] {{1, 2, 3}, {-1, 0, 4}, {0, 0, 0}}) {
            double[] b = new double[3];
            for (int i = 0; i < 3; i++) {
                for (int j = 0; j < 3; j++) {
                    b[i] += a[i][j] * x[j];
                }
            }
            m.solve(b);
            assertThat(b).containsExactly(x, within(1e-15));
        }
    }

    @Test
    void aSingularMatrixIsTold() {
        BandMatrix zero = new BandMatrix(4, 1, 1);
        assertThat(zero.factor()).isFalse();
        BandMatrix rank = new BandMatrix(2, 1, 1);
        rank.add(0, 0, 1);
        rank.add(0, 1, 2);
        rank.add(1, 0, 2);
        rank.add(1, 1, 4);
        assertThat(rank.factor()).isFalse();
        BandMatrix sick = new BandMatrix(1, 0, 0);
        sick.add(0, 0, Double.NaN);
        assertThat(sick.factor()).isFalse();
        BandMatrix huge = new BandMatrix(1, 0, 0);
        huge.add(0, 0, Double.POSITIVE_INFINITY);
        assertThat(huge.factor()).isFalse();
    }

    @Test
    void clearedItStartsAnew() {
        BandMatrix m = new BandMatrix(5, 2, 1);
        for (int round = 1; round <= 3; round++) {
            m.clear();
            double[] b = new double[5];
            for (int i = 0; i < 5; i++) {
                m.add(i, i, 2 * round);
                b[i] = 2 * round * (i + 1);
            }
            assertThat(m.get(4, 0)).isZero();
            assertThat(m.get(0, 4)).isZero();
            assertThat(m.get(2, 2)).isEqualTo(2 * round);
            assertThat(m.factor()).isTrue();
            m.solve(b);
            assertThat(b).containsExactly(1, 2, 3, 4, 5);
        }
    }
}
