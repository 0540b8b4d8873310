package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * Forces that follow from a state, against balances that hold whether or not the state is in equilibrium: every force on the
 * line comes out at a support, and what a support holds moves it by its compliance.
 */
class LineForcesTest {
    private static final int CASES = 500;

    /** Rounding of sums of a few forces, over their size [-]. */
    private static final double ROUNDING = 1e-12;

    private static double size(RandomSystem random) {
        double size = 0;
        for (double t : random.state.tension) {
            size += Math.abs(t);
        }
        for (double f : random.state.force) {
            size += f;
        }
        return size;
    }

    @Test
    void allSupportsTogetherCarryCableAndLoads() {
        int resting = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            LineState s = random.state;
            double carried = 0;
            for (int i = 0; i < sys.spans; i++) {
                carried += sys.weight * (sys.length[i] + s.slip[i + 1] - s.slip[i]);
            }
            for (int j = 0; j < sys.loads; j++) {
                carried += s.active[j] ? s.force[j] : 0;
                resting += sys.forces.restSupport(s, j) >= 0 ? 1 : 0;
            }
            double[] sum = new double[3];
            for (int i = 0; i <= sys.spans; i++) {
                for (int c = 0; c < 3; c++) {
                    sum[c] += sys.forces.reaction(s, i, c);
                }
            }
            double rounding = ROUNDING * size(random);
            assertThat(sum[0]).as("seed %d, x", seed).isCloseTo(0, within(rounding));
            assertThat(sum[1]).as("seed %d, y", seed).isCloseTo(0, within(rounding));
            assertThat(sum[2]).as("seed %d, z up", seed).isCloseTo(-carried, within(rounding));
        }
        assertThat(resting).as("loads that rest on a support").isGreaterThan(CASES / 10);
    }

    @Test
    void whatASupportHoldsMovesItByItsCompliance() {
        int moved = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            LineState s = random.state;
            for (int i = 0; i <= sys.spans; i++) {
                for (int c = 0; c < 3; c++) {
                    int k = 3 * i + c;
                    double expected = sys.compliance[k] * (sys.forces.reaction(s, i, c) - sys.reference[k]);
                    assertThat(sys.forces.displacement(s, i, c))
                            .as("seed %d", seed)
                            .isEqualTo(expected);
                    moved += expected != 0 ? 1 : 0;
                }
            }
            sys.forces.setReference(s);
            for (int k = 0; k < sys.reference.length; k++) {
                assertThat(sys.forces.displacement(s, k / 3, k % 3))
                        .as("seed %d, in the state that is the reference", seed)
                        .isZero();
            }
        }
        assertThat(moved).isGreaterThan(CASES / 2);
    }

    /** The component before a load is that at the start of the span, with the weight of the cable and the loads between. */
    @Test
    void theCableCarriesWhatHangsBeforeALoad() {
        int compared = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            LineState s = random.state;
            for (int j = 0; j < sys.loads; j++) {
                int span = sys.loadSpan[j];
                double up = sys.forces.endZ(s, span);
                double between = sys.weight * (sys.length[span] + s.slip[span + 1] - s.coordinate[j]);
                for (int k = j; k < sys.firstLoad[span + 1]; k++) {
                    between += sys.forces.cableForce(s, k);
                }
                assertThat(sys.forces.beforeLoad(s, j))
                        .as("seed %d, from the end of the span", seed)
                        .isCloseTo(up - between, within(ROUNDING * size(random)));
                compared++;
            }
        }
        assertThat(compared).isGreaterThan(CASES);
    }

    /** A load runs as long as a part of it pulls along the cable: at equal tension the cable falls and rises alike. */
    @Test
    void aLoadAtTheLowestPointIsNotPulled() {
        int compared = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            LineState s = random.state;
            for (int j = 0; j < sys.loads; j++) {
                boolean alone = sys.firstLoad[sys.loadSpan[j] + 1] - sys.firstLoad[sys.loadSpan[j]] == 1;
                if (!s.active[j] || sys.gripped[j] || !alone || sys.forces.restSupport(s, j) >= 0) {
                    continue;
                }
                int span = sys.loadSpan[j];
                double before = sys.forces.beforeLoad(s, j);
                s.tension[3 * span + 2] -= before + 0.5 * s.force[j];
                double h = Math.hypot(s.tension[3 * span], s.tension[3 * span + 1]);
                double start = Math.hypot(h, sys.forces.beforeLoad(s, j));
                double end = Math.hypot(h, sys.forces.beforeLoad(s, j) + s.force[j]);
                assertThat(start).as("seed %d", seed).isCloseTo(end, within(1e-9 * end));
                assertThat(sys.forces.pull(s, j)).as("seed %d", seed).isCloseTo(0, within(1e-9 * end));
                compared++;
            }
        }
        assertThat(compared).isGreaterThan(20);
    }
}
