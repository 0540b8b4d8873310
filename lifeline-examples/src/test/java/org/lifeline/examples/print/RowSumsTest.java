package org.lifeline.examples.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class RowSumsTest {

    @Test
    void roundedRowsAddUpToTheRoundedSumAndStayWithinOneUnit() {
        SplittableRandom random = new SplittableRandom(5);
        for (int round = 0; round < 20_000; round++) {
            int decimals = random.nextInt(4);
            double[] rows = new double[1 + random.nextInt(9)];
            for (int i = 0; i < rows.length; i++) {
                rows[i] = random.nextInt(4) == 0 ? random.nextInt(-5, 5) * 0.3 : random.nextDouble(-2000, 2000);
            }
            double[] rounded = RowSums.round(rows, decimals);
            double unit = Math.pow(10, -decimals);
            for (int i = 0; i < rows.length; i++) {
                assertThat(Math.abs(rounded[i] - rows[i])).isLessThan(unit * (1 + 1e-5));
                assertThat(rounded[i] / unit).isCloseTo(Math.rint(rounded[i] / unit), within(1e-6));
            }
            double sum = Arrays.stream(rows).sum();
            assertThat(Arrays.stream(rounded).sum()).isCloseTo(sum, within(0.5 * unit + 1e-5 * unit * rows.length));
        }
    }

    @Test
    void rowsThatAreRoundAlreadyStayAsTheyAre() {
        assertThat(RowSums.round(new double[] {9.599, -1.8, -0.3, -1.5, -0.6, 0.1}, 3))
                .containsExactly(9.599, -1.8, -0.3, -1.5, -0.6, 0.1);
    }

    @Test
    void anEmptyAccountIsEmpty() {
        assertThat(RowSums.round(new double[0], 2)).isEmpty();
    }
}
