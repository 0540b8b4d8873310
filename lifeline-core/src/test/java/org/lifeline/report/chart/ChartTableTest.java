package org.lifeline.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The table below a chart has the numbers of its lines. */
class ChartTableTest {
    @Test
    void numbersOfAChartAreThoseOfItsLines() {
        ChartSeries s = ChartSeries.of("s", new double[] {0, 1, 3}, new double[] {2, 4, Double.NaN});
        assertThat(ChartTable.at(s, 0.25)).isCloseTo(2.5, within(1e-12));
        assertThat(ChartTable.at(s, 1)).isEqualTo(4);
        assertThat(ChartTable.at(s, 2)).isNaN();
        assertThat(ChartTable.at(s, 3.5)).isNaN();
        assertThat(ChartTable.at(ChartSeries.of("none", new double[0], new double[0]), 0))
                .isNaN();
    }

    /** At a step the point behind it: there the drawing goes on, or ends. */
    @Test
    void atAStepTheLastPointCounts() {
        ChartSeries s = ChartSeries.of("s", new double[] {0, 1, 1, 1, 2, 2}, new double[] {0, 1, 5, 7, 8, 3});
        assertThat(ChartTable.at(s, 1)).isEqualTo(7);
        assertThat(ChartTable.at(s, 2)).isEqualTo(3);
        assertThat(ChartTable.at(s, 0)).isEqualTo(0);
    }
}
