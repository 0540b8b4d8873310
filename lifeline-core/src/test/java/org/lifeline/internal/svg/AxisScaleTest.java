package org.lifeline.internal.svg;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.svg.AxisScale.Range;

/** Axes in round numbers; labels that do not overlap. */
class AxisScaleTest {
    @Test
    void ticksAreRoundNumbers() {
        SplittableRandom random = new SplittableRandom(40);
        for (int i = 0; i < 2000; i++) {
            double low = random.nextDouble(-100, 100);
            double high = low + Math.pow(10, random.nextDouble(-3, 5));
            AxisScale s = AxisScale.rounded(new Range(low, high), new Range(0, 500), 6);
            assertThat(s.low()).isLessThanOrEqualTo(low + 1e-9 * Math.abs(low));
            assertThat(s.high()).isGreaterThanOrEqualTo(high - 1e-9 * Math.abs(high));
            List<BigDecimal> ticks = s.ticks();
            assertThat(ticks).hasSizeBetween(3, 14);
            BigDecimal step = ticks.get(1).subtract(ticks.get(0)).stripTrailingZeros();
            assertThat(step.unscaledValue().intValue()).isIn(1, 2, 5);
            assertThat(ticks)
                    .allSatisfy(t -> assertThat(t.remainder(step).signum()).isZero());
            assertThat(ticks).allSatisfy(t -> assertThat(s.at(t.doubleValue())).isBetween(-1e-6, 500 + 1e-6));
        }
    }

    @Test
    void aSingleNumberStillHasAnAxis() {
        AxisScale s = AxisScale.rounded(new Range(0, 0), new Range(0, 100), 5);
        assertThat(s.high()).isGreaterThan(s.low());
        assertThat(s.ticks()).isNotEmpty();
    }

    @Test
    void labelsAreSpreadInOrder() {
        SplittableRandom random = new SplittableRandom(41);
        for (int i = 0; i < 500; i++) {
            double[] wanted = random.doubles(random.nextInt(1, 12), 0, 300).toArray();
            double[] at = new LabelSpacing(16, new Range(0, 300)).spread(wanted);
            for (int a = 0; a < at.length; a++) {
                assertThat(at[a]).isBetween(-1e-9, 300 + 1e-9);
                for (int b = 0; b < at.length; b++) {
                    if (wanted[a] < wanted[b]) {
                        assertThat(at[b] - at[a]).isGreaterThan(16 - 1e-9);
                    }
                }
            }
        }
    }
}
