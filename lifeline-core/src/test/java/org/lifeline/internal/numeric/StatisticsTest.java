package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import org.apache.commons.math3.stat.correlation.Covariance;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.junit.jupiter.api.Test;

class StatisticsTest {
    @Test
    void quantilesAreWithinTheirAccuracy() {
        SplittableRandom random = new SplittableRandom(1);
        for (int kind = 0; kind < 4; kind++) {
            LogHistogram h = new LogHistogram();
            double[] values = new double[20_000];
            for (int i = 0; i < values.length; i++) {
                double u = random.nextDouble();
                values[i] = switch (kind) {
                    case 0 -> Math.exp(40 * (u - 0.5));
                    case 1 -> u - 0.5;
                    case 2 -> -1e4 * u;
                    default -> random.nextInt(5) == 0 ? 0 : 1e-13 * u + (u < 0.5 ? -3 : 7);
                };
                h.add(values[i]);
            }
            Arrays.sort(values);
            for (int rank = 1; rank <= values.length; rank += 37) {
                double exact = values[rank - 1];
                assertThat(h.ranked(rank))
                        .as("kind %d rank %d", kind, rank)
                        .isEqualTo(exact, within(LogHistogram.ACCURACY * 1.0001 * Math.abs(exact) + 1e-12));
            }
            assertThat(h.smallest()).isEqualTo(values[0]);
            assertThat(h.largest()).isEqualTo(values[values.length - 1]);
            assertThat(h.count()).isEqualTo(values.length);
            double limit = values[15_000];
            long above = Arrays.stream(values).filter(v -> v > limit).count();
            long near = Arrays.stream(values)
                    .filter(v -> Math.abs(v - limit) <= 2 * LogHistogram.ACCURACY * Math.abs(limit))
                    .count();
            assertThat(h.above(limit)).isCloseTo(above, within(near));
        }
    }

    @Test
    void theOrderOfValuesDoesNotMatter() {
        SplittableRandom random = new SplittableRandom(2);
        List<Double> values = new ArrayList<>();
        for (int i = 0; i < 3000; i++) {
            values.add(Math.exp(10 * (random.nextDouble() - 0.5)) * (random.nextBoolean() ? 1 : -1));
        }
        LogHistogram forward = new LogHistogram();
        LogHistogram backward = new LogHistogram();
        values.forEach(forward::add);
        for (int i = values.size() - 1; i >= 0; i--) {
            backward.add(values.get(i));
        }
        for (long rank = 1; rank <= values.size(); rank += 7) {
            assertThat(backward.ranked(rank)).isEqualTo(forward.ranked(rank));
        }
    }

    /** Against Commons Math on the same data. */
    @Test
    void covariancesAndRegression() {
        SplittableRandom random = new SplittableRandom(3);
        int n = 500;
        double[][] data = new double[n][4];
        double[] y = new double[n];
        double[][] x = new double[n][3];
        Covariances c = new Covariances(4);
        for (int i = 0; i < n; i++) {
            double a = 1e6 + random.nextDouble();
            double b = random.nextDouble() + 0.3 * a;
            double d = random.nextDouble();
            double out = 2 * a - b + 0.1 * random.nextDouble();
            data[i] = new double[] {a, b, d, out};
            x[i] = new double[] {a - 1e6, b - 3e5, d};
            y[i] = out;
            c.add(data[i]);
        }
        Covariance reference = new Covariance(data);
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                double expected = reference.getCovarianceMatrix().getEntry(i, j);
                assertThat(c.of(i, j)).isEqualTo(expected, within(1e-9));
            }
        }
        OLSMultipleLinearRegression ols = new OLSMultipleLinearRegression();
        ols.newSampleData(y, x);
        double[] beta = ols.estimateRegressionParameters();
        double[] standardised = c.standardisedRegression();
        for (int k = 0; k < 3; k++) {
            double expected = beta[k + 1] * Math.sqrt(c.of(k, k) / c.of(3, 3));
            assertThat(standardised[k]).isEqualTo(expected, within(1e-6));
        }
        assertThat(c.count()).isEqualTo(n);
    }

    @Test
    void whatDoesNotVaryCannotBeToldApart() {
        Covariances constant = new Covariances(3);
        Covariances twins = new Covariances(3);
        SplittableRandom random = new SplittableRandom(4);
        for (int i = 0; i < 50; i++) {
            double a = random.nextDouble();
            constant.add(new double[] {a, 5, 2 * a});
            twins.add(new double[] {a, a, 2 * a});
        }
        assertThat(constant.standardisedRegression()[0]).isEqualTo(1, within(1e-9));
        assertThat(constant.standardisedRegression()[1]).isNaN();
        assertThat(constant.correlation(0, 1)).isNaN();
        assertThat(twins.standardisedRegression()).containsOnly(Double.NaN);
        assertThat(new Covariances(2).of(0, 0)).isNaN();
    }

    /**
     * Ranks that hold the median of 10 values with 95 %: 2 and 9 (David and Nagaraja 2003, section 7.1: coverage
     * 1 − 2·11/1024 = 0.979 (computed); ranks 3 and 8 cover 0.891 only).
     */
    @Test
    void ranksOfAQuantile() {
        assertThat(Ranks.quantileRanks(10, 0.5, 0.95)).containsExactly(2, 9);
        assertThat(Ranks.quantileRanks(5, 0.99, 0.95)[1])
                .as("no value is far enough out")
                .isEqualTo(6);
        long[] many = Ranks.quantileRanks(1_000_000, 0.5, 0.95);
        assertThat(many[0]).isBetween(500_000L - 981, 500_000L - 979);
        assertThat(many[1]).isBetween(500_000L + 980, 500_000L + 982);
        long[] exact = Ranks.quantileRanks(10_000, 0.2, 0.95);
        long[] approximate = Ranks.quantileRanks(10_001, 0.2, 0.95);
        assertThat(Math.abs(exact[0] - approximate[0])).isLessThanOrEqualTo(2);
        assertThat(Math.abs(exact[1] - approximate[1])).isLessThanOrEqualTo(2);
        assertThat(Ranks.deviations(0.95)).isEqualTo(1.959964, within(1e-6));
    }

    /** The stated confidence is kept: of 2,000 samples of 200 the true median lies in the range in at least 94 %. */
    @Test
    void coverageOfTheRange() {
        SplittableRandom random = new SplittableRandom(5);
        int inside = 0;
        for (int trial = 0; trial < 2000; trial++) {
            double[] v = random.doubles(200).sorted().toArray();
            long[] r = Ranks.quantileRanks(200, 0.9, 0.95);
            inside += v[(int) r[0] - 1] <= 0.9 && (r[1] > 200 || v[(int) r[1] - 1] >= 0.9) ? 1 : 0;
        }
        assertThat(inside).isGreaterThanOrEqualTo(1880);
    }

    @Test
    void crossingStaysOnTheSideThatIsNotAbove() {
        double x = Roots.crossing("test", t -> Math.exp(t) - 2, 0, 3, 1e-4);
        assertThat(Math.exp(x) - 2).isBetween(-1e-4, 0.0);
        double jump = Roots.crossing("test", t -> t < 1.25 ? -1 : 1, 0, 3, 1e-4);
        assertThat(jump).isEqualTo(1.25, within(1e-8)).isLessThan(1.25);
        assertThatThrownBy(() -> Roots.crossing("test", t -> 1, 0, 3, 1e-4)).hasMessageContaining("test");
        assertThat(Roots.roughMinimum(t -> (t - 0.7) * (t - 0.7), 0, 3, 1e-4)).isEqualTo(0.7, within(1e-3));
    }

    @Test
    void workIsTakenInOrderAndAFaultComesThrough() {
        ExecutorService pool = Executors.newFixedThreadPool(3);
        try {
            List<Long> order = new ArrayList<>();
            long taken = OrderedWork.run(500, i -> i * i, new SharedWork(pool), (i, x) -> {
                assertThat(x).isEqualTo(i * i);
                order.add(i);
                return true;
            });
            assertThat(taken).isEqualTo(500);
            assertThat(order).isSorted().hasSize(500);
            assertThatThrownBy(() -> OrderedWork.run(
                            10,
                            i -> {
                                if (i == 4) {
                                    throw new IllegalArgumentException("four");
                                }
                                return i;
                            },
                            new SharedWork(pool),
                            (i, x) -> true))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("four");
        } finally {
            pool.shutdown();
        }
    }

    @Test
    void stoppedWorkIsNotBegun() {
        AtomicInteger begun = new AtomicInteger();
        ExecutorService pool = Executors.newFixedThreadPool(2);
        try {
            long taken = OrderedWork.run(100_000, i -> begun.incrementAndGet(), new SharedWork(pool), (i, x) -> i < 9);
            assertThat(taken).isEqualTo(10);
            assertThat(begun.get()).as("no more than the window ahead").isLessThan(200);
        } finally {
            pool.shutdown();
        }
        assertThat(OrderedWork.run(5, i -> i, null, (i, x) -> i < 2)).isEqualTo(3);
    }
}
