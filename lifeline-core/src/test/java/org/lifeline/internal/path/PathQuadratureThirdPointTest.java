package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The quadrature with a third point is exact for functions of degree five. */
class PathQuadratureThirdPointTest {
    private static double value(double[] c, double x) {
        double v = 0;
        for (int i = c.length - 1; i >= 0; i--) {
            v = v * x + c[i];
        }
        return v;
    }

    private static double slope(double[] c, double x) {
        double v = 0;
        for (int i = c.length - 1; i > 0; i--) {
            v = v * x + i * c[i];
        }
        return v;
    }

    private static double exact(double[] f, double[] g) {
        double sum = 0;
        for (int i = 0; i < f.length; i++) {
            for (int j = 1; j < g.length; j++) {
                sum += f[i] * g[j] * j / (i + j);
            }
        }
        return sum;
    }

    private static double[] polynomial(SplittableRandom r) {
        return r.doubles(6, -1, 1).toArray();
    }

    private static double[] points(double[] c, double third) {
        return new double[] {value(c, 0), slope(c, 0), value(c, 1), slope(c, 1), value(c, third), slope(c, third)};
    }

    @Test
    void exactForDegreeFive() {
        SplittableRandom r = new SplittableRandom(6);
        for (int k = 0; k < 200; k++) {
            double[] f = polynomial(r);
            double[] g = polynomial(r);
            double third = k % 2 == 0 ? r.nextDouble(-3, -0.2) : r.nextDouble(1.2, 3);
            assertThat(PathQuadrature.isOfUse(third)).isTrue();
            double have = PathQuadrature.integral(points(f, third), points(g, third), third);
            // The third point may be far away, where its power of five is large.
            double size = Math.pow(1 + Math.abs(third), 4);
            assertThat(have).isCloseTo(exact(f, g), within(1e-13 * size));
        }
    }

    @Test
    void aThirdPointOnTheStepOrFarAwayIsOfNoUse() {
        for (double third : new double[] {-20, -0.01, 0, 0.5, 1, 1.01, 20, Double.NaN}) {
            assertThat(PathQuadrature.isOfUse(third)).as("at %s", third).isFalse();
        }
    }
}
