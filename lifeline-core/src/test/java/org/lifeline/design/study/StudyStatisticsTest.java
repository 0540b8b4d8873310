package org.lifeline.design.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.variable.DesignVariable;

/** Statistics of rows that are made up, so that what must come out is known. */
class StudyStatisticsTest {
    private static final Response FORCE = new Response("force", "N");
    private static final Response RATIO = new Response("ratio", "-");

    private static UncertainVariable variable(String name) {
        return new UncertainVariable(
                DesignVariable.of(name, "m", Interval.of(0, 1), (d, v) -> d), Distribution.uniform(Interval.of(0, 1)));
    }

    private static final List<UncertainVariable> VARIABLES = List.of(variable("a"), variable("b"));
    private static final List<Response> RESPONSES = List.of(FORCE, RATIO);

    private static StudyStatistics statistics() {
        return new StudyStatistics(StudyStatistics.identity(7, "", VARIABLES, RESPONSES), 1);
    }

    private static MonteCarloResult finish(StudyStatistics s, long cases) {
        return MonteCarloResult.of(s.partial(), VARIABLES, RESPONSES, cases);
    }

    private static StudyRow row(long number, double[] inputs, double... outputs) {
        return new StudyRow(number, inputs, outputs, "");
    }

    /** 0, 1, … 999, each once. */
    private static MonteCarloResult counted() {
        StudyStatistics s = statistics();
        for (int i = 0; i < 1000; i++) {
            s.add(row(i, new double[] {i, -i}, i, 1000 - i));
        }
        return finish(s, 1000);
    }

    @Test
    void momentsOfTheFirstThousandNumbers() {
        Summary force = counted().summaries().get(0);
        assertThat(force.response()).isEqualTo(FORCE);
        assertThat(force.count()).isEqualTo(1000);
        assertThat(force.mean()).isCloseTo(499.5, within(1e-10));
        // n (n + 1)/12 with n = 1000: the variance of a sample of consecutive numbers.
        assertThat(force.deviation()).isCloseTo(Math.sqrt(1000.0 * 1001 / 12), within(1e-9));
        assertThat(force.smallest()).isZero();
        assertThat(force.largest()).isEqualTo(999);
        assertThat(force.meanRange().contains(499.5)).isTrue();
        // 1.959964 deviations over √n on both sides.
        assertThat(force.meanRange().width())
                .isCloseTo(2 * 1.959964 * force.deviation() / Math.sqrt(1000), within(1e-4));
    }

    @ParameterizedTest
    @CsvSource({"0.001, 0", "0.5, 499", "0.9, 899", "0.95, 949", "0.999, 998"})
    void quantilesOfTheFirstThousandNumbers(double share, double value) {
        Summary force = counted().summaries().get(0);
        QuantileEstimate q = force.quantile(share);
        assertThat(q.share()).isEqualTo(share);
        assertThat(q.value()).isCloseTo(value, within(1e-4 * value + 1e-12));
        assertThat(q.low()).isLessThanOrEqualTo(q.value());
        assertThat(q.high()).isGreaterThanOrEqualTo(q.value());
    }

    /** With 1000 values the 0.9999 quantile has no upper bound, the 0.0001 one no lower bound. */
    @Test
    void aQuantileBeyondTheSampleIsUnbounded() {
        Summary force = counted().summaries().get(0);
        assertThat(force.quantile(0.9999).high()).isInfinite().isPositive();
        assertThat(force.quantile(0.0001).low()).isInfinite().isNegative();
    }

    @ParameterizedTest
    @CsvSource({"0", "1", "-0.1", "1.1", "NaN"})
    void aShareOutsideIsRefused(double share) {
        Summary force = counted().summaries().get(0);
        assertThatThrownBy(() -> force.quantile(share))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("share");
    }

    @Test
    void noQuantileOfNothing() {
        Summary nothing = finish(statistics(), 0).summaries().get(0);
        assertThat(nothing.count()).isZero();
        assertThat(nothing.mean()).isNaN();
        assertThatThrownBy(() -> nothing.quantile(0.5))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("cases");
    }

    /**
     * Score intervals of proportions: R. G. Newcombe, "Two-sided confidence intervals for the single proportion",
     * Statistics in Medicine 17, 1998, table I, method 3 (recalled).
     */
    @ParameterizedTest
    @CsvSource({"81, 263, 0.2553, 0.3662", "15, 148, 0.0624, 0.1605", "0, 20, 0.0000, 0.1611", "1, 29, 0.0061, 0.1718"})
    void theShareAboveALimitHasTheScoreInterval(int above, int all, double low, double high) {
        StudyStatistics s = statistics();
        for (int i = 0; i < all; i++) {
            s.add(row(i, new double[] {i, 1}, i < above ? 2 : 1, 1));
        }
        Summary force = finish(s, all).summaries().get(0);
        assertThat(force.shareAbove(1.5)).isCloseTo((double) above / all, within(1e-12));
        assertThat(force.shareAboveRange(1.5).low()).isCloseTo(low, within(5e-5));
        assertThat(force.shareAboveRange(1.5).high()).isCloseTo(high, within(5e-5));
    }

    @Test
    void aLineThroughOneInputIsAllItsDoing() {
        StudyStatistics s = statistics();
        SplittableRandom r = new SplittableRandom(5);
        for (int i = 0; i < 2000; i++) {
            double a = r.nextDouble();
            double b = r.nextDouble();
            s.add(row(i, new double[] {a, b}, 3 * a + 1, -Math.exp(5 * b)));
        }
        MonteCarloResult result = finish(s, 2000);
        Sensitivity aOnForce = of(result, 0, "a");
        assertThat(aOnForce.regression()).isCloseTo(1, within(1e-9));
        assertThat(aOnForce.correlation()).isCloseTo(1, within(1e-9));
        assertThat(aOnForce.rankCorrelation()).isCloseTo(1, within(1e-9));
        assertThat(of(result, 0, "b").regression()).isCloseTo(0, within(1e-9));
        // A curve that falls has ranks in the opposite order, and is no straight line.
        Sensitivity bOnRatio = of(result, 1, "b");
        assertThat(bOnRatio.rankCorrelation()).isCloseTo(-1, within(1e-9));
        assertThat(bOnRatio.correlation()).isBetween(-0.95, -0.5);
        assertThat(aOnForce.toString()).startsWith("a: regression ").contains("rank correlation");
        assertThat(result.ranking(0).get(0).variable().name()).isEqualTo("a");
        assertThat(result.ranking(1).get(0).variable().name()).isEqualTo("b");
        assertThat(result.determination(0)).isCloseTo(1, within(1e-9));
        assertThat(result.determination(1)).isBetween(0.25, 0.95);
    }

    private static Sensitivity of(MonteCarloResult result, int response, String name) {
        return result.ranking(response).stream()
                .filter(x -> x.variable().name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** Of y = 3a + 4b with equal spread, a has 3/5 and b 4/5; the squares add up to one. */
    @Test
    void twoInputsShareTheSpread() {
        StudyStatistics s = statistics();
        int n = 100;
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < n; k++) {
                s.add(row((long) n * i + k, new double[] {i, k}, 3.0 * i + 4.0 * k, 1));
            }
        }
        MonteCarloResult result = finish(s, 10_000);
        assertThat(of(result, 0, "a").regression()).isCloseTo(0.6, within(1e-9));
        assertThat(of(result, 0, "b").regression()).isCloseTo(0.8, within(1e-9));
        assertThat(of(result, 0, "a").correlation()).isCloseTo(0.6, within(1e-9));
        assertThat(result.ranking(0)).extracting(x -> x.variable().name()).containsExactly("b", "a");
    }

    @Test
    void failedRowsCountApart() {
        StudyStatistics s = statistics();
        s.add(row(0, new double[] {1, 2}, 10, 20));
        s.add(new StudyRow(1, new double[] {3, 4}, new double[0], "no equilibrium"));
        s.add(row(2, new double[] {5, 6}, Double.POSITIVE_INFINITY, 40));
        MonteCarloResult result = finish(s, 3);
        assertThat(result.summaries().get(0).count())
                .as("an infinite output is not counted")
                .isEqualTo(1);
        assertThat(result.summaries().get(1).count()).isEqualTo(2);
        assertThat(result.failures()).hasSize(1);
        StudyRow failed = result.failures().get(0);
        assertThat(failed.failed()).isTrue();
        assertThat(failed.reason()).isEqualTo("no equilibrium");
        assertThat(failed.output(1)).isNaN();
        assertThat(failed.input(1)).isEqualTo(4);
        assertThat(failed).hasToString("1: [3.0, 4.0] → no equilibrium");
        assertThat(row(0, new double[] {1}, 2)).hasToString("0: [1.0] → [2.0]");
    }

    @Test
    void unitsStandBehindTheNamesOfResponses() {
        assertThat(FORCE).hasToString("force [N]");
        assertThat(RATIO).hasToString("ratio");
    }
}
