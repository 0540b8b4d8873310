package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class PathQuadratureTest {
    /** ∫f g′ dP of two cubics from their coefficients, exactly. */
    private static double exact(double[] f, double[] g, double from, double to) {
        double sum = 0;
        for (int i = 0; i < 4; i++) {
            for (int j = 1; j < 4; j++) {
                int n = i + j;
                sum += f[i] * g[j] * j * (Math.pow(to, n) - Math.pow(from, n)) / n;
            }
        }
        return sum;
    }

    private static double value(double[] c, double x) {
        return c[0] + x * (c[1] + x * (c[2] + x * c[3]));
    }

    private static double slope(double[] c, double x) {
        return c[1] + x * (2 * c[2] + x * 3 * c[3]);
    }

    @Test
    void exactForCubics() {
        SplittableRandom r = new SplittableRandom(5);
        for (int k = 0; k < 200; k++) {
            double[] f = {r.nextDouble(-1, 1), r.nextDouble(-1, 1), r.nextDouble(-1, 1), r.nextDouble(-1, 1)};
            double[] g = {r.nextDouble(-1, 1), r.nextDouble(-1, 1), r.nextDouble(-1, 1), r.nextDouble(-1, 1)};
            double a = r.nextDouble(-2, 1);
            double b = a + r.nextDouble(0.01, 2);
            double have = PathQuadrature.integral(
                    b - a,
                    new double[] {value(f, a), slope(f, a), value(f, b), slope(f, b)},
                    new double[] {value(g, a), slope(g, a), value(g, b), slope(g, b)});
            assertThat(have).isCloseTo(exact(f, g, a, b), within(1e-12));
        }
    }

    @Test
    void ofTheFourthOrder() {
        // ∫eˣ d(sin x) from 0 to 1 = ∫eˣ cos x dx = (e (sin 1 + cos 1) − 1)/2; halving steps divides the error by 16.
        double exact = 0.5 * (Math.E * (Math.sin(1) + Math.cos(1)) - 1);
        double before = 0;
        for (int n = 4; n <= 32; n *= 2) {
            double sum = 0;
            for (int i = 0; i < n; i++) {
                double a = (double) i / n;
                double b = (i + 1.0) / n;
                sum += PathQuadrature.integral(
                        1.0 / n,
                        new double[] {Math.exp(a), Math.exp(a), Math.exp(b), Math.exp(b)},
                        new double[] {Math.sin(a), Math.cos(a), Math.sin(b), Math.cos(b)});
            }
            double error = Math.abs(sum - exact);
            assertThat(error).isLessThan(1e-5);
            if (before > 0) {
                assertThat(before / error).isBetween(14.0, 18.0);
            }
            before = error;
        }
    }
}
