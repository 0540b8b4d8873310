package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Rank correlations and ranks of quantiles against counting by hand and sums of binomial shares. */
class RanksTest {
    @Test
    void aRisingRelationOfAnyShapeHasTheCorrelationOne() {
        double[][] readings = new double[12][];
        for (int i = 0; i < readings.length; i++) {
            readings[i] = new double[] {i, Math.exp(-i), (i * 5) % 12, i * i * i};
        }
        double[] r = Ranks.correlations(readings);
        assertThat(r).hasSize(3);
        assertThat(r[0]).isCloseTo(1, within(1e-12));
        assertThat(r[1]).isCloseTo(-1, within(1e-12));
        // Without ties 1 − 6 Σd² / (n (n² − 1)).
        double squares = 0;
        for (int i = 0; i < 12; i++) {
            squares += Math.pow(i - (i * 5) % 12, 2);
        }
        assertThat(r[2]).isCloseTo(1 - 6 * squares / (12 * 143), within(1e-12));
    }

    @Test
    void tiesStandAtTheirMeanRank() {
        // Ranks 1.5, 1.5, 3 against 1, 2, 3: Pearson of these is 1.5 / √(1.5 · 2).
        double[][] readings = {{4, 1}, {4, 5}, {9, 6}};
        assertThat(Ranks.correlations(readings)[0]).isCloseTo(1.5 / Math.sqrt(3), within(1e-12));
    }

    @Test
    void fewReadingsHaveNoCorrelation() {
        assertThat(Ranks.correlations(new double[0][])).isEmpty();
        assertThat(Ranks.correlations(new double[][] {{1, 2, 3}})).containsExactly(Double.NaN, Double.NaN);
        assertThat(Ranks.correlations(new double[][] {{1, 7}, {2, 9}})[0]).isCloseTo(1, within(1e-12));
        assertThat(Ranks.correlations(new double[][] {{1, 7}, {1, 9}})[0]).isNaN();
    }

    /** Number of values below the quantile: the ranks leave no more than half of the rest of the confidence on a side. */
    @Test
    void theRanksAreTheQuantilesOfTheBinomialDistribution() {
        for (long n : new long[] {3, 8, 20}) {
            for (double share : new double[] {0.1, 0.5, 0.9}) {
                double below = 0;
                long lower = -1;
                long upper = -1;
                double term = Math.pow(1 - share, (double) n);
                for (long k = 0; k <= n; k++) {
                    below += term;
                    if (lower < 0 && below >= 0.05) {
                        lower = k;
                    }
                    if (upper < 0 && below >= 0.95) {
                        upper = k + 1;
                    }
                    term *= share / (1 - share) * (n - k) / (k + 1);
                }
                assertThat(Ranks.quantileRanks(n, share, 0.9)).containsExactly(lower, upper);
            }
        }
    }

    @Test
    void largeNumbersAreTakenAsNormal() {
        double z = Ranks.deviations(0.9);
        double half = z * Math.sqrt(40_000 * 0.25 * 0.75);
        assertThat(Ranks.quantileRanks(40_000, 0.25, 0.9))
                .containsExactly((long) Math.floor(10_000 - half), (long) Math.ceil(10_000 + half) + 1);
    }

    @Test
    void ranksOfLargeNumbersStayInReach() {
        assertThat(Ranks.quantileRanks(20_000, 1e-6, 0.99)[0]).isZero();
        assertThat(Ranks.quantileRanks(20_000, 1 - 1e-6, 0.99)[1]).isEqualTo(20_001);
    }

    @Test
    void bothWaysAgreeWhereTheyMeet() {
        for (double share : new double[] {0.05, 0.5, 0.8}) {
            long[] exact = Ranks.quantileRanks(10_000, share, 0.99);
            long[] normal = Ranks.quantileRanks(10_001, share, 0.99);
            assertThat(exact[0]).isCloseTo(normal[0], within(2L));
            assertThat(exact[1]).isCloseTo(normal[1], within(2L));
        }
    }

    /** One, two and three deviations hold 68.27, 95.45 and 99.73 % (recalled). */
    @Test
    void deviationsHoldTheirConfidence() {
        assertThat(Ranks.deviations(0.6826895)).isCloseTo(1, within(1e-6));
        assertThat(Ranks.deviations(0.9544997)).isCloseTo(2, within(1e-6));
        assertThat(Ranks.deviations(0.9973002)).isCloseTo(3, within(1e-6));
    }
}
