package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.junit.jupiter.api.Test;

/** The elimination by row pivots against EJML and against solutions by hand. */
class DenseSystemTest {
    private static double[][] copy(double[][] a) {
        return Arrays.stream(a).map(double[]::clone).toArray(double[][]::new);
    }

    private static double[] times(double[][] a, double[] x) {
        return Arrays.stream(a)
                .mapToDouble(row -> {
                    double sum = 0;
                    for (int j = 0; j < x.length; j++) {
                        sum += row[j] * x[j];
                    }
                    return sum;
                })
                .toArray();
    }

    @Test
    void aSystemOfTwoIsSolvedAsByHand() {
        double[] b = {5, 11};
        assertThat(DenseSystem.solve(new double[][] {{1, 2}, {3, 4}}, b)).isTrue();
        assertThat(b).containsExactly(new double[] {1, 2}, within(1e-15));
    }

    @Test
    void aSystemOfOneIsADivision() {
        double[] b = {-6};
        assertThat(DenseSystem.solve(new double[][] {{4}}, b)).isTrue();
        assertThat(b).containsExactly(-1.5);
    }

    @Test
    void aSystemOfNoneIsSolved() {
        assertThat(DenseSystem.solve(new double[0][], new double[0])).isTrue();
    }

    @Test
    void theSolutionIsThatOfEjml() {
        SplittableRandom r = new SplittableRandom(11);
        for (int n = 1; n <= 9; n++) {
            double[][] a = new double[n][];
            for (int i = 0; i < n; i++) {
                a[i] = r.doubles(n, -1, 1).toArray();
            }
            double[] b = r.doubles(n, -1, 1).toArray();
            DMatrixRMaj want = new DMatrixRMaj(n, 1);
            assertThat(CommonOps_DDRM.solve(new DMatrixRMaj(a), new DMatrixRMaj(n, 1, true, b.clone()), want))
                    .isTrue();
            double[] have = b.clone();
            assertThat(DenseSystem.solve(copy(a), have)).isTrue();
            for (int i = 0; i < n; i++) {
                assertThat(have[i]).as("n %d", n).isCloseTo(want.get(i), within(1e-12 * Math.abs(want.get(i)) + 1e-13));
            }
            assertThat(times(a, have)).containsExactly(b, within(1e-13));
        }
    }

    @Test
    void aZeroOnTheDiagonalIsExchangedAway() {
        double[][] a = {{0, 2, 1}, {1, 0, 0}, {0, 0, 3}};
        double[] x = {4, -5, 6};
        double[] b = times(a, x);
        assertThat(DenseSystem.solve(copy(a), b)).isTrue();
        assertThat(b).containsExactly(x);
    }

    /** With the tiny number as the pivot the first unknown would come out as 0 instead of 1. */
    @Test
    void theLargestOfAColumnIsThePivot() {
        double[] b = {1, 2};
        assertThat(DenseSystem.solve(new double[][] {{1e-20, 1}, {1, 1}}, b)).isTrue();
        assertThat(b).containsExactly(new double[] {1, 1}, within(1e-15));
        double[] negative = {1, -2};
        assertThat(DenseSystem.solve(new double[][] {{1e-20, 1}, {-1, -1}}, negative))
                .isTrue();
        assertThat(negative).containsExactly(new double[] {1, 1}, within(1e-15));
    }

    @Test
    void aSingularSystemIsTold() {
        assertThat(DenseSystem.solve(new double[][] {{1, 2}, {2, 4}}, new double[] {1, 2}))
                .isFalse();
        assertThat(DenseSystem.solve(new double[][] {{0}}, new double[] {1})).isFalse();
        assertThat(DenseSystem.solve(new double[][] {{Double.NaN}}, new double[] {1}))
                .isFalse();
    }

    /** The inverse of a permutation is its transpose: nothing is rounded. */
    @Test
    void permutationsAreExact() {
        double[][] a = {{0, 0, 1, 0}, {1, 0, 0, 0}, {0, 0, 0, 1}, {0, 1, 0, 0}};
        double[] b = {1, 2, 3, 4};
        assertThat(DenseSystem.solve(a, b)).isTrue();
        assertThat(b).containsExactly(2, 4, 1, 3);
    }
}
