package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Bins, limits and copies of the histogram, against counts by hand. */
class LogHistogramTest {
    /** Upper end of a bin over its lower end. */
    private static final double RATIO = (1 + LogHistogram.ACCURACY) / (1 - LogHistogram.ACCURACY);

    private static LogHistogram of(double... values) {
        LogHistogram h = new LogHistogram();
        for (double v : values) {
            h.add(v);
        }
        return h;
    }

    private static LogHistogram again(LogHistogram h) {
        return LogHistogram.of(h.zeros(), new double[] {h.smallest(), h.largest()}, h.positive(), h.negative());
    }

    @Test
    void anEmptyOneHasNoValues() {
        LogHistogram h = of();
        assertThat(h.count()).isZero();
        assertThat(h.zeros()).isZero();
        assertThat(h.positive()).isEmpty();
        assertThat(h.negative()).isEmpty();
        assertThat(h.smallest()).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(h.largest()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(h.above(-1)).isZero();
    }

    @Test
    void oneIsTheUpperEndOfBinZero() {
        assertThat(of(1).positive()).containsOnlyKeys(0);
        assertThat(of(1 + 1e-9).positive()).containsOnlyKeys(1);
        assertThat(of(Math.pow(RATIO, 0.5)).positive()).containsOnlyKeys(1);
        assertThat(of(Math.pow(RATIO, 1.5)).positive()).containsOnlyKeys(2);
        assertThat(of(-Math.pow(RATIO, -2.5)).negative()).containsOnlyKeys(-2);
    }

    @Test
    void whatIsBelowTheLeastCountsAsZeroOnBothSides() {
        LogHistogram h = of(0, -0.0, 0.99e-12, -0.99e-12, 1.01e-12, -1.01e-12);
        assertThat(h.zeros()).isEqualTo(4);
        assertThat(h.positive().values()).containsExactly(1L);
        assertThat(h.negative().values()).containsExactly(1L);
        assertThat(h.count()).isEqualTo(6);
        assertThat(of(1e-12).zeros()).isZero();
    }

    @Test
    void whatIsBeyondTheMostSharesTheLastBin() {
        LogHistogram h = of(1e12, 1e13, 1e300);
        assertThat(h.positive()).hasSize(1);
        assertThat(LogHistogram.isBin(h.positive().firstKey())).isTrue();
        assertThat(h.largest()).isEqualTo(1e300);
        assertThat(LogHistogram.isBin(of(-1e12).negative().firstKey())).isTrue();
        assertThat(LogHistogram.isBin(of(1e-12).positive().firstKey())).isTrue();
    }

    @Test
    void binsEndWhereTheValuesDo() {
        int last = (int) Math.ceil(Math.log(1e12) / Math.log(RATIO));
        assertThat(LogHistogram.isBin(last)).isTrue();
        assertThat(LogHistogram.isBin(-last)).isTrue();
        assertThat(LogHistogram.isBin(0)).isTrue();
        assertThat(LogHistogram.isBin(last + 1)).isFalse();
        assertThat(LogHistogram.isBin(-last - 1)).isFalse();
    }

    @Test
    void ranksGoFromTheNegativeOverZeroToThePositive() {
        LogHistogram h = of(5, -2, 0, 300, -70, 0, 0.01);
        double[] sorted = {-70, -2, 0, 0, 0.01, 5, 300};
        for (int rank = 1; rank <= sorted.length; rank++) {
            assertThat(h.ranked(rank))
                    .as("rank %d", rank)
                    .isCloseTo(sorted[rank - 1], within(1.0001 * LogHistogram.ACCURACY * Math.abs(sorted[rank - 1])));
        }
        assertThat(h.ranked(0)).isEqualTo(-70);
        assertThat(h.ranked(8)).isEqualTo(300);
    }

    /** The middle of a bin may lie outside of what was added: a rank never does. */
    @Test
    void aRankStaysBetweenTheSmallestAndTheLargest() {
        LogHistogram high = of(1, 1, 1, 1);
        assertThat(high.ranked(2)).isEqualTo(1);
        LogHistogram low = of(-1, -1, -1);
        assertThat(low.ranked(2)).isEqualTo(-1);
    }

    @Test
    void countsAboveALimitAreThoseByHand() {
        LogHistogram h = of(-50, -3, 0, 0, 0.2, 8, 8, 1000);
        assertThat(h.above(-100)).isEqualTo(8);
        assertThat(h.above(-10)).isEqualTo(7);
        assertThat(h.above(-1)).isEqualTo(6);
        assertThat(h.above(0)).as("zeros are not above zero").isEqualTo(4);
        assertThat(h.above(1)).isEqualTo(3);
        assertThat(h.above(9)).isEqualTo(1);
        assertThat(h.above(2000)).isZero();
    }

    @Test
    void binsGrowInBothDirectionsWithoutLosingACount() {
        LogHistogram h = new LogHistogram();
        int n = 0;
        for (int k = 0; k < 40; k++) {
            double far = Math.pow(RATIO, (k % 2 == 0 ? 1 : -1) * (k * k + 0.5));
            h.add(far);
            h.add(-far);
            n++;
        }
        assertThat(h.positive()).hasSize(n);
        assertThat(h.negative()).isEqualTo(h.positive());
        assertThat(h.positive().values()).containsOnly(1L);
        assertThat(h.positive().firstKey()).isEqualTo(-39 * 39);
        assertThat(h.positive().lastKey()).isEqualTo(38 * 38 + 1);
    }

    @Test
    void aCopyFromItsCountsIsTheSame() {
        LogHistogram h = of(3, 3, -7, 0, 1e-5, 12, -0.4);
        LogHistogram copy = again(h);
        assertThat(copy.count()).isEqualTo(7);
        assertThat(copy.zeros()).isEqualTo(1);
        assertThat(copy.positive()).isEqualTo(h.positive());
        assertThat(copy.negative()).isEqualTo(h.negative());
        for (int rank = 1; rank <= 7; rank++) {
            assertThat(copy.ranked(rank)).isEqualTo(h.ranked(rank));
        }
        copy.add(99);
        assertThat(copy.largest()).isEqualTo(99);
        assertThat(copy.above(50)).isEqualTo(1);
    }

    @Test
    void theExtentOfACopyWithoutValuesDoesNotMatter() {
        LogHistogram h = LogHistogram.of(0, new double[] {1, 2}, new TreeMap<>(), new TreeMap<>());
        assertThat(h.count()).isZero();
        h.add(-5);
        assertThat(h.smallest()).isEqualTo(-5);
        assertThat(h.largest()).isEqualTo(-5);
    }
}
