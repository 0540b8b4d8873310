package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Means, covariances and regressions of small sets against counting by hand. */
class CovariancesTest {
    private static Covariances of(double[]... readings) {
        Covariances c = new Covariances(readings[0].length);
        for (double[] r : readings) {
            c.add(r);
        }
        return c;
    }

    private static final double[][] FOUR = {{1, 10}, {2, 8}, {4, 9}, {5, 1}};

    @Test
    void meansAndCovariancesOfFourReadings() {
        Covariances c = of(FOUR);
        assertThat(c.size()).isEqualTo(2);
        assertThat(c.count()).isEqualTo(4);
        assertThat(c.mean(0)).isEqualTo(3);
        assertThat(c.mean(1)).isEqualTo(7);
        // Deviations −2, −1, 1, 2 and 3, 1, 2, −6.
        assertThat(c.of(0, 0)).isEqualTo(10.0 / 3);
        assertThat(c.of(1, 1)).isEqualTo(50.0 / 3);
        assertThat(c.of(0, 1)).isEqualTo(-17.0 / 3);
        assertThat(c.of(1, 0)).isEqualTo(-17.0 / 3);
        assertThat(c.correlation(0, 1)).isCloseTo(-17 / Math.sqrt(500), within(1e-15));
        assertThat(c.correlation(1, 1)).isCloseTo(1, within(1e-15));
    }

    @Test
    void aShiftFarAwayDoesNotBlurTheVariance() {
        Covariances c = of(new double[] {1e15 + 1}, new double[] {1e15 + 2}, new double[] {1e15 + 6});
        assertThat(c.mean(0)).isEqualTo(1e15 + 3);
        assertThat(c.of(0, 0)).isEqualTo(7);
    }

    @Test
    void partsTogetherAreTheWhole() {
        Covariances first = of(FOUR[0], FOUR[3]);
        first.add(of(FOUR[1], FOUR[2]));
        Covariances whole = of(FOUR);
        assertThat(first.count()).isEqualTo(4);
        assertThat(first.sums()).isEqualTo(whole.sums());
        assertThat(first.products()).isEqualTo(whole.products());
        assertThat(first.of(0, 1)).isEqualTo(whole.of(0, 1));
    }

    @Test
    void itsTextsAreTheSameAgain() {
        Covariances c = of(FOUR);
        assertThat(c.sums()).containsExactly("3p2", "7p2");
        // Σxx = 46, Σxy = 67, Σyy = 246
        assertThat(c.products()).containsExactly("17p1", "43p0", "7bp1");
        Covariances again = Covariances.of(4, c.sums(), c.products());
        assertThat(again.of(0, 1)).isEqualTo(c.of(0, 1));
        assertThat(again.mean(1)).isEqualTo(7);
        assertThat(again.count()).isEqualTo(4);
    }

    @Test
    void textsOfAnotherSizeAreRefused() {
        assertThatThrownBy(() -> Covariances.of(4, List.of("1p0", "1p0"), List.of("1p0", "1p0")))
                .isInstanceOf(NumberFormatException.class)
                .hasMessageContaining("2 products of 2 quantities; there are 3");
    }

    @Test
    void oneReadingHasAMeanAndNoVariance() {
        Covariances c = of(new double[] {5, 6});
        assertThat(c.mean(1)).isEqualTo(6);
        assertThat(c.of(0, 0)).isNaN();
        assertThat(c.correlation(0, 1)).isNaN();
        assertThat(new Covariances(1).mean(0)).isZero();
        c.add(new double[] {7, 6});
        assertThat(c.of(0, 0)).isEqualTo(2);
    }

    @Test
    void whatIsNotFiniteSpoilsItsOwnQuantityOnly() {
        Covariances c = of(new double[] {1, 4}, new double[] {Double.POSITIVE_INFINITY, 5}, new double[] {3, 6});
        assertThat(c.mean(0)).isNaN();
        assertThat(c.of(0, 0)).isNaN();
        assertThat(c.of(0, 1)).isNaN();
        assertThat(c.of(1, 0)).isNaN();
        assertThat(c.mean(1)).isEqualTo(5);
        assertThat(c.of(1, 1)).isEqualTo(1);
    }

    @Test
    void aSumOfIndependentsHasTheSharesOfTheirDeviations() {
        // Two factors on a full grid do not correlate: y = 3 a + 4 b has the coefficients 3 s/σ and 4 s/σ, 3 : 4 : 5.
        Covariances c = new Covariances(3);
        for (double a = -1; a <= 1; a++) {
            for (double b = -1; b <= 1; b++) {
                c.add(new double[] {a, b, 3 * a + 4 * b});
            }
        }
        assertThat(c.standardisedRegression()).containsExactly(new double[] {0.6, 0.8}, within(1e-14));
    }

    @Test
    void aRegressionNeedsTwoReadingsMoreThanUnknowns() {
        Covariances c = of(new double[] {1, 2}, new double[] {2, 5});
        assertThat(c.standardisedRegression()).containsExactly(Double.NaN);
        c.add(new double[] {3, 5});
        // A single factor: the coefficient is the correlation.
        assertThat(c.standardisedRegression()[0]).isCloseTo(c.correlation(0, 1), within(1e-15));
    }

    @Test
    void aResultThatDoesNotVaryHasNoRegression() {
        Covariances c = of(new double[] {1, 2}, new double[] {2, 2}, new double[] {5, 2}, new double[] {7, 2});
        assertThat(c.standardisedRegression()).containsExactly(Double.NaN);
    }

    @Test
    void aFactorThatDoesNotVaryIsLeftOut() {
        Covariances c = new Covariances(4);
        for (int i = 0; i < 8; i++) {
            c.add(new double[] {7, i & 1, (i >> 1) & 1, 5 * (i & 1) - 12 * ((i >> 1) & 1)});
        }
        double[] r = c.standardisedRegression();
        assertThat(r[0]).isNaN();
        assertThat(r[1]).isCloseTo(5.0 / 13, within(1e-14));
        assertThat(r[2]).isCloseTo(-12.0 / 13, within(1e-14));
    }
}
