package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.catenary.ElasticCatenary;
import org.lifeline.model.cable.LoadElongation;

/**
 * Slack spans under a load near a support, one leg longer than the chord and the other leg: what is called solved fits
 * between the supports, by the closed form of each leg (Irvine 1981, ch. 1), and pulls on both.
 */
class LoadedSpansSlackTest {
    private static final double EA = 2e6;

    private static double misfit(double[] d, double h, double v) {
        ElasticCatenary c = new ElasticCatenary(LoadElongation.linear(EA));
        c.evaluate(h, 0, v, d[4] * d[5], d[2]);
        double x = c.dx;
        double z = c.dz;
        c.evaluate(h, 0, v + d[2] * d[4] * d[5] + d[6], d[4] * (1 - d[5]), d[2]);
        return Math.hypot(x + c.dx - d[0], z + c.dz - d[1]);
    }

    private static LoadedSpans.Solution solve(double[] d) {
        return LoadedSpans.builder()
                .run(d[0])
                .rise(d[1])
                .weightPerLength(d[2])
                .axialStiffness(EA)
                .unstretchedLength(d[4])
                .loadShare(d[5])
                .load(d[6])
                .build()
                .solve();
    }

    @Test
    void aLoadBelowTheNearerSupportOfASlackSpan() {
        double[] d = {10, 1, 6, EA, 1.3 * Math.sqrt(101), 0.9, 800};
        LoadedSpans.Solution s = solve(d);
        assertThat(s.horizontalTension(0)).isNotNaN();
        assertThat(misfit(d, s.horizontalTension(0), -s.startReaction(0))).isLessThan(1e-9);
        // The same found by raising the load from 100 N in small parts.
        assertThat(s.horizontalTension(0)).isCloseTo(29.413, within(0.001));
        assertThat(s.drop(0)).isCloseTo(0.3062, within(0.0001));
    }

    @Test
    void whatIsCalledSolvedFitsBetweenItsSupports() {
        SplittableRandom r = new SplittableRandom(99);
        int solved = 0;
        int spans = 20_000;
        for (int i = 0; i < spans; i++) {
            double run = r.nextDouble(4, 30);
            double rise = run * r.nextDouble(-0.6, 0.6);
            double length = Math.hypot(run, rise) * r.nextDouble(0.998, 1.3);
            double[] d = {
                run, rise, r.nextDouble(0.5, 12), EA, length, r.nextDouble(0.02, 0.98), r.nextDouble(50, 20_000)
            };
            LoadedSpans.Solution s = solve(d);
            if (!Double.isNaN(s.horizontalTension(0))) {
                solved++;
                assertThat(s.horizontalTension(0)).as("span %d", i).isPositive();
                assertThat(misfit(d, s.horizontalTension(0), -s.startReaction(0)))
                        .as("span %d", i)
                        .isLessThan(1e-7 * run);
            }
        }
        assertThat(solved).isEqualTo(spans);
    }
}
