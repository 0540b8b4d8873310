package org.lifeline.internal.mechanics;

/** Quadrature over a step of a {@link LoadPath}, exact for cubic functions of the force. */
final class PathQuadrature {
    private static final double[] GAUSS = {0.5 - Math.sqrt(0.15), 0.5, 0.5 + Math.sqrt(0.15)};
    private static final double[] GAUSS_WEIGHT = {5 / 18.0, 8 / 18.0, 5 / 18.0};

    private PathQuadrature() {}

    /** ∫f dg over a step, f and g cubic in the force by values and slopes at both ends. */
    static double integral(double step, double[] f, double[] g) {
        double sum = 0;
        for (int k = 0; k < 3; k++) {
            double u = GAUSS[k];
            double a = 1 - u;
            double value = f[0] * (1 + 2 * u) * a * a
                    + f[1] * step * u * a * a
                    + f[2] * u * u * (3 - 2 * u)
                    - f[3] * step * u * u * a;
            double slope = 6 * u * a * (g[2] - g[0]) + step * (g[1] * a * (1 - 3 * u) + g[3] * u * (3 * u - 2));
            sum += GAUSS_WEIGHT[k] * value * slope;
        }
        return sum;
    }
}
