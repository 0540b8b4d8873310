package org.lifeline.explorer.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.lifeline.explorer.engine.stand.Elementary;

/** What stands in for functions of the JDK in a script, against the JDK. */
class StandInsTest {
    @Test
    void aHypotenuseIsThatOfTheJdkToTheLastDigit() {
        Random random = new Random(20_261_129);
        for (int i = 0; i < 200_000; i++) {
            double x = random.nextGaussian() * StrictMath.pow(10, 6 * random.nextGaussian());
            double y = i % 2 == 0 ? x * random.nextGaussian() : random.nextGaussian();
            assertThat(Elementary.hypot(x, y)).isEqualTo(StrictMath.hypot(x, y));
        }
    }

    @Test
    void aHypotenuseOfExtremeSides() {
        double[] sides = {0, -0.0, 1, -3, 4, 1e-320, 1e-310, 1e-200, 1e200, 1e308, Double.POSITIVE_INFINITY, Double.NaN
        };
        for (double x : sides) {
            for (double y : sides) {
                assertThat(Elementary.hypot(x, y))
                        .as("%s and %s", x, y)
                        .isEqualTo(Double.valueOf(StrictMath.hypot(x, y)));
            }
        }
    }
}
