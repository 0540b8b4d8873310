package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.junit.jupiter.api.Test;

/** Every small size and bandwidth once, against EJML and the closed forms of tridiagonal matrices. */
class BandMatrixSmallTest {
    private static final int LARGEST = 7;

    private interface Check {
        void check(BandMatrix band, DMatrixRMaj dense, double[] right);
    }

    /** Fills a matrix of each shape; the diagonal holds a number, or nothing where rows are to be exchanged. */
    private static void everyShape(double diagonal, Check check) {
        SplittableRandom r = new SplittableRandom(5);
        for (int n = 1; n <= LARGEST; n++) {
            for (int lower = 0; lower < n; lower++) {
                for (int upper = 0; upper < n; upper++) {
                    BandMatrix band = new BandMatrix(n, lower, upper);
                    DMatrixRMaj dense = new DMatrixRMaj(n, n);
                    for (int i = 0; i < n; i++) {
                        for (int j = Math.max(0, i - lower); j <= Math.min(n - 1, i + upper); j++) {
                            double value = i == j ? diagonal : r.nextDouble(-1, 1);
                            band.add(i, j, value);
                            dense.set(i, j, value);
                        }
                    }
                    check.check(band, dense, r.doubles(n, -1, 1).toArray());
                }
            }
        }
    }

    private static double[] solution(DMatrixRMaj dense, double[] right) {
        DMatrixRMaj x = new DMatrixRMaj(right.length, 1);
        assertThat(CommonOps_DDRM.solve(dense, new DMatrixRMaj(right.length, 1, true, right.clone()), x))
                .isTrue();
        return x.getData();
    }

    @Test
    void eliminationInPlaceSolvesEveryShape() {
        everyShape(9, (band, dense, right) -> {
            double[] want = solution(dense, right);
            assertThat(band.eliminate()).isTrue();
            double[] have = right.clone();
            band.solve(have);
            assertThat(have).containsExactly(want, within(1e-14));
        });
    }

    @Test
    void exchangeOfRowsSolvesEveryShape() {
        for (double diagonal : new double[] {9, 0.01}) {
            everyShape(diagonal, (band, dense, right) -> {
                double det = Math.abs(CommonOps_DDRM.det(dense));
                boolean triangular = isTriangular(dense);
                if (det < 1e-3 || (triangular && diagonal < 1)) {
                    return;
                }
                double[] want = solution(dense, right);
                assertThat(band.factor()).isTrue();
                for (int again = 0; again < 2; again++) {
                    double[] have = right.clone();
                    band.solve(have);
                    assertThat(have).containsExactly(want, within(1e-10));
                }
            });
        }
    }

    private static boolean isTriangular(DMatrixRMaj a) {
        boolean below = false;
        boolean above = false;
        for (int i = 0; i < a.numRows; i++) {
            for (int j = 0; j < a.numCols; j++) {
                below |= i > j && a.get(i, j) != 0;
                above |= i < j && a.get(i, j) != 0;
            }
        }
        return !(below && above);
    }

    @Test
    void entriesAreReadBackAndAreZeroOutsideTheBand() {
        everyShape(9, (band, dense, right) -> {
            for (int i = 0; i < right.length; i++) {
                for (int j = 0; j < right.length; j++) {
                    assertThat(band.get(i, j)).isEqualTo(dense.get(i, j));
                }
            }
        });
    }

    /** −1, 2, −1 with ones on the right: x = (i + 1)(n − i) / 2, the sag of a string under equal loads. */
    @Test
    void theStringUnderEqualLoadsIsAParabola() {
        for (int n = 1; n <= 40; n++) {
            BandMatrix exchanged = string(n);
            BandMatrix plain = string(n);
            assertThat(exchanged.factor()).isTrue();
            assertThat(plain.eliminate()).isTrue();
            double[] a = new double[n];
            double[] b = new double[n];
            double[] want = new double[n];
            for (int i = 0; i < n; i++) {
                a[i] = 1;
                b[i] = 1;
                want[i] = 0.5 * (i + 1) * (n - i);
            }
            exchanged.solve(a);
            plain.solve(b);
            assertThat(a).containsExactly(want, within(1e-11));
            assertThat(b).containsExactly(want, within(1e-11));
        }
    }

    private static BandMatrix string(int n) {
        BandMatrix m = new BandMatrix(n, 1, 1);
        for (int i = 0; i < n; i++) {
            m.add(i, i, 2);
            if (i > 0) {
                m.add(i, i - 1, -1);
                m.add(i - 1, i, -1);
            }
        }
        return m;
    }

    /** The second pivot of 1, 1; 1, 1 + d is d, which must be more than 1e-9 of its diagonal entry. */
    @Test
    void aPivotMustKeepItsShareOfTheDiagonal() {
        assertThat(nearlySingular(2e-9).eliminate()).isTrue();
        assertThat(nearlySingular(-2e-9).eliminate()).as("of either sign").isTrue();
        assertThat(nearlySingular(0.5e-9).eliminate()).isFalse();
        assertThat(nearlySingular(-0.5e-9).eliminate()).isFalse();
        assertThat(nearlySingular(0.5e-9).factor())
                .as("with exchange any pivot but zero will do")
                .isTrue();
    }

    private static BandMatrix nearlySingular(double d) {
        BandMatrix m = new BandMatrix(2, 1, 1);
        m.add(0, 0, 1);
        m.add(0, 1, 1);
        m.add(1, 0, 1);
        m.add(1, 1, 1 + d);
        return m;
    }

    @Test
    void theLatestFactorsAreUsed() {
        BandMatrix m = string(2);
        assertThat(m.factor()).isTrue();
        m.clear();
        m.add(0, 0, 4);
        m.add(1, 1, 5);
        assertThat(m.eliminate()).isTrue();
        double[] b = {8, 10};
        m.solve(b);
        assertThat(b).containsExactly(new double[] {2, 2}, within(1e-15));
        m.clear();
        m.add(0, 1, 2);
        m.add(1, 0, 4);
        assertThat(m.factor()).isTrue();
        double[] c = {6, 8};
        m.solve(c);
        assertThat(c).containsExactly(2, 3);
    }
}
