package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.numeric.WatchedWork;

/** Rates in closed form against central differences, on random systems in every mode. */
class LineRatesTest {
    private static final int CASES = Integer.getInteger("lifeline.cases", 2000);

    @Test
    void ratesAgreeWithDifferences() {
        int compared = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            LineState s = random.state;
            SplittableRandom r = new SplittableRandom(seed);
            for (int load = 0; load < sys.loads; load++) {
                if (!s.active[load]) {
                    continue;
                }
                double[] tangent = new double[sys.unknowns.count()];
                for (int i = 0; i < tangent.length; i++) {
                    tangent[i] = r.nextDouble(-1e-3, 1e-3);
                }
                for (int i = 0; i < sys.spans; i++) {
                    for (int c = 0; c <= sys.unknowns.up; c++) {
                        tangent[sys.unknowns.tensionIndex(i) + c] = r.nextDouble(-1, 1);
                    }
                }
                double step = 1e-5 * Math.abs(s.tension[0] + s.tension[1]);
                LineState fore = beside(sys, s, tangent, load, step);
                LineState aft = beside(sys, s, tangent, load, -step);
                LineRates rates = new LineRates(sys, load);
                LineEnergies energies = new LineEnergies(sys);
                check("height", seed, rates.height(s, tangent), new double[] {
                    energies.height(fore, load), energies.height(aft, load), step
                });
                for (int i = 0; i <= sys.spans; i++) {
                    check("slip", seed, rates.slip(tangent, i), new double[] {fore.slip[i], aft.slip[i], step});
                    if (i > 0) {
                        check("before", seed, rates.startSideTension(s, tangent, i), new double[] {
                            sys.forces.startSideTension(fore, i), sys.forces.startSideTension(aft, i), step
                        });
                    }
                    if (i < sys.spans) {
                        check("behind", seed, rates.endSideTension(s, tangent, i), new double[] {
                            sys.forces.endSideTension(fore, i), sys.forces.endSideTension(aft, i), step
                        });
                    }
                    compared++;
                }
            }
        }
        assertThat(compared).isGreaterThan(CASES);
    }

    private static LineState beside(LineSystem sys, LineState s, double[] tangent, int load, double step) {
        LineState to = s.copy();
        new Equilibrium(sys, WatchedWork.alone()).apply(to, s, step, tangent);
        to.force[load] += step;
        return to;
    }

    private static void check(String what, long seed, double rate, double[] values) {
        double byDifference = (values[0] - values[1]) / (2 * values[2]);
        double rounding = 1e-15 * (Math.abs(values[0]) + 20) / values[2];
        assertThat(rate)
                .as("%s, seed %d", what, seed)
                .isCloseTo(byDifference, within(2e-5 * Math.abs(byDifference) + 1e-8 + 4 * rounding));
    }
}
