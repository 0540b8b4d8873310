package org.lifeline.internal.catenary;

import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import org.lifeline.model.cable.LoadElongation;

/**
 * A piece of cable by plain numerical quadrature of (1 + ε(T)) t/T along the arc, as a second way beside the closed
 * forms of {@link ElasticCatenary}: composite Gauss-Legendre rules between the corners of the load–elongation curve,
 * in a variable in which the integrand is smooth (v = h sinh u where the cable hangs deep).
 */
final class CatenaryQuadrature {
    private static final double[] NODE = {0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363
    };
    private static final double[] WEIGHT = {
        0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763
    };
    private static final int PANELS = 24;

    private final LoadElongation law;
    private final double h;
    private final double v;
    private final double s;
    private final double w;

    CatenaryQuadrature(LoadElongation law, double h, double v, double s, double w) {
        this.law = law;
        this.h = h;
        this.v = v;
        this.s = s;
        this.w = w;
    }

    /** Horizontal distance from start to end [m]. */
    double run() {
        return integrate(z -> (1 + law.strain(Math.hypot(h, z))) / Math.hypot(h, z)) * h;
    }

    /** Rise from start to end [m]. */
    double rise() {
        return integrate(z -> (1 + law.strain(Math.hypot(h, z))) / Math.hypot(h, z) * z);
    }

    /** Strain energy [J]. */
    double strainEnergy() {
        return integrate(z -> law.strainEnergy(Math.hypot(h, z)));
    }

    /** ∫(T + ∫ε dT) ds [J]. */
    double complementary() {
        return integrate(z -> Math.hypot(h, z) + law.complementaryEnergy(Math.hypot(h, z)));
    }

    /** Stretched length [m]. */
    double stretchedLength() {
        return integrate(z -> 1 + law.strain(Math.hypot(h, z)));
    }

    /** ∫f(v(s)) ds. */
    private double integrate(DoubleUnaryOperator f) {
        TreeSet<Double> cuts = new TreeSet<>();
        cuts.add(s);
        for (int j = 1; j < law.pieces(); j++) {
            double square = law.lowerTension(j) * law.lowerTension(j) - h * h;
            for (int sign = -1; sign <= 1 && square > 0 && w > 0; sign += 2) {
                double at = (sign * Math.sqrt(square) - v) / w;
                if (at > 0 && at < s) {
                    cuts.add(at);
                }
            }
        }
        double sum = 0;
        double from = 0;
        for (double to : cuts) {
            if (w * (to - from) < 0.5 * h) {
                sum += panels(from, to, x -> f.applyAsDouble(v + w * x));
            } else {
                DoubleUnaryOperator g = u -> f.applyAsDouble(h * Math.sinh(u)) * h * Math.cosh(u) / w;
                sum += panels(asinh((v + w * from) / h), asinh((v + w * to) / h), g);
            }
            from = to;
        }
        return sum;
    }

    private static double panels(double from, double to, DoubleUnaryOperator f) {
        double sum = 0;
        double half = 0.5 * (to - from) / PANELS;
        for (int k = 0; k < PANELS; k++) {
            double middle = from + (2 * k + 1) * half;
            for (int i = 0; i < NODE.length; i++) {
                sum += WEIGHT[i]
                        * (f.applyAsDouble(middle - half * NODE[i]) + f.applyAsDouble(middle + half * NODE[i]));
            }
        }
        return sum * half;
    }

    private static double asinh(double x) {
        return Math.copySign(Math.log(Math.abs(x) + Math.sqrt(x * x + 1)), x);
    }
}
