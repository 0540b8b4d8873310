package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.numeric.WatchedWork;

/**
 * The tangent of the whole line, and the derivative by a load, against central differences of the residuals, on random
 * systems in which every mode occurs. The states are not in equilibrium.
 */
class LineAssemblyTest {
    private static final int CASES =
            Integer.getInteger("lifeline.cases", Boolean.getBoolean("lifeline.long") ? 10_000 : 600);

    /** Modes whose equations have been seen. */
    enum Seen {
        STUCK,
        RUNS_FREE,
        RUNS_ON,
        RUNS_BACK,
        JAMMED,
        GRIPPED,
        RUNNING,
        AT_START,
        AT_END,
        FOLLOWS,
        RESTING,
        YIELDING,
        ELASTIC,
        RIGID,
        SPRINGS,
        PLANAR,
        OBLIQUE
    }

    @Test
    void tangentAgreesWithFiniteDifferences() {
        Map<Seen, Integer> seen = new EnumMap<>(Seen.class);
        // Where few cases are asked for, as many more as it takes to see every mode.
        for (long seed = 1; seed <= CASES || (seen.size() < Seen.values().length && seed <= 600); seed++) {
            RandomSystem random = new RandomSystem(seed);
            count(random, seen);
            LineSystem sys = random.system;
            LineState s = random.state;
            LineAssembly exact = new LineAssembly(sys);
            assertThat(exact.assemble(s, true)).as("seed " + seed).isTrue();
            int n = sys.unknowns.count();
            double[] scale = rowScale(sys, s);
            for (int column = 0; column < n; column++) {
                double step = step(sys, s, column);
                double[] unit = new double[n];
                unit[column] = 1;
                double[] difference = difference(sys, s, unit, step);
                double largest = 0;
                for (int row = 0; row < n; row++) {
                    largest = Math.max(largest, Math.abs(difference[row] / scale[row] * length(sys, s, row)));
                }
                for (int row = 0; row < n; row++) {
                    // An unknown that is held has the equation "no step", whose residual is nothing.
                    double byDifference = held(sys, s, row) ? (row == column ? 1 : 0) : difference[row] / scale[row];
                    double have = exact.equations.matrix.get(row, column);
                    double allowed = 1e-6 * (Math.abs(byDifference) + largest / length(sys, s, row));
                    assertThat(have)
                            .as("seed %d, row %d, column %d of %d", seed, row, column, n)
                            .isCloseTo(byDifference, within(allowed));
                }
            }
        }
        for (Seen each : Seen.values()) {
            assertThat(seen.getOrDefault(each, 0)).as(each.name()).isGreaterThan(CASES / 100);
        }
    }

    @Test
    void derivativeByALoadAgreesWithFiniteDifferences() {
        int compared = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            LineState s = random.state;
            LineAssembly assembly = new LineAssembly(sys);
            for (int load = 0; load < sys.loads; load++) {
                if (!s.active[load]) {
                    continue;
                }
                assertThat(assembly.assemble(s, true)).isTrue();
                double[] exact = new double[sys.unknowns.count()];
                new ResidualRates(sys).byForce(s, load, exact);
                double step = 1e-4 * s.force[load];
                LineState a = s.copy();
                LineState b = s.copy();
                a.force[load] -= step;
                b.force[load] += step;
                double[] low = scaled(sys, a);
                double[] high = scaled(sys, b);
                double[] scale = rowScale(sys, s);
                double largest = 0;
                for (int row = 0; row < exact.length; row++) {
                    largest = Math.max(largest, Math.abs(exact[row]));
                }
                for (int row = 0; row < exact.length; row++) {
                    double byDifference = (high[row] - low[row]) / (2 * step) / scale[row];
                    assertThat(exact[row])
                            .as("seed %d, load %d, row %d", seed, load, row)
                            .isCloseTo(byDifference, within(1e-6 * (Math.abs(byDifference) + 1e-3 * largest)));
                    compared++;
                }
            }
        }
        assertThat(compared).isGreaterThan(CASES);
    }

    @Test
    void residualsWithoutATangentAreTheSame() {
        for (long seed = 1; seed <= 100; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineAssembly a = new LineAssembly(random.system);
            LineAssembly b = new LineAssembly(random.system);
            a.assemble(random.state, true);
            b.assemble(random.state, false);
            assertThat(b.equations.residual).containsExactly(a.equations.residual);
            assertThat(b.equations.worst).isEqualTo(a.equations.worst);
            assertThat(b.equations.merit).isEqualTo(a.equations.merit);
        }
    }

    @Test
    void aSpanWithoutCableIsNoState() {
        for (long seed = 1; seed <= 100; seed++) {
            RandomSystem random = new RandomSystem(seed);
            if (random.system.spans > 1) {
                random.state.slip[1] = -1.01 * random.system.length[0];
                assertThat(new LineAssembly(random.system).assemble(random.state, false))
                        .isFalse();
            }
        }
    }

    private static boolean held(LineSystem sys, LineState s, int row) {
        for (int i = 1; i < sys.spans; i++) {
            if (row == sys.unknowns.slipIndex(i)) {
                return Math.abs(s.passage[i]) != 1;
            }
        }
        for (int j = 0; j < sys.loads; j++) {
            if (row == sys.unknowns.loadIndex(j)) {
                return !s.active[j];
            }
        }
        return false;
    }

    private static double step(LineSystem sys, LineState s, int column) {
        for (int i = 0; i < sys.spans; i++) {
            int at = sys.unknowns.tensionIndex(i);
            if (column >= at && column <= at + sys.unknowns.up) {
                return 1e-5 * Math.hypot(s.tension[3 * i], s.tension[3 * i + 1]);
            }
        }
        return 1e-5;
    }

    /** What makes the rows comparable: a length, so that all of them are without unit. */
    private static double length(LineSystem sys, LineState s, int row) {
        for (int i = 0; i < sys.spans; i++) {
            int at = sys.unknowns.tensionIndex(i);
            if (row >= at && row <= at + sys.unknowns.up) {
                return 1 / sys.chord[i];
            }
        }
        return s.thermal > 0 ? 1 : Double.NaN;
    }

    private static double[] difference(LineSystem sys, LineState s, double[] unit, double step) {
        Equilibrium move = new Equilibrium(sys, WatchedWork.alone());
        LineState a = s.copy();
        LineState b = s.copy();
        move.apply(a, s, -step, unit);
        move.apply(b, s, step, unit);
        double[] low = scaled(sys, a);
        double[] high = scaled(sys, b);
        for (int i = 0; i < low.length; i++) {
            low[i] = (high[i] - low[i]) / (2 * step);
        }
        return low;
    }

    /** Residuals times the scale by which two kinds of rows are divided; the tangent takes that scale as held. */
    private static double[] scaled(LineSystem sys, LineState s) {
        LineAssembly assembly = new LineAssembly(sys);
        assertThat(assembly.assemble(s, false)).isTrue();
        double[] scale = rowScale(sys, s);
        double[] out = assembly.equations.residual.clone();
        for (int i = 0; i < out.length; i++) {
            out[i] *= scale[i];
        }
        return out;
    }

    private static double[] rowScale(LineSystem sys, LineState s) {
        double[] scale = new double[sys.unknowns.count()];
        java.util.Arrays.fill(scale, 1);
        for (int j = 0; j < sys.loads; j++) {
            if (!sys.gripped[j] && s.active[j] && s.mode[j] == LineState.RUNNING) {
                int i = sys.loadSpan[j];
                scale[sys.unknowns.loadIndex(j)] =
                        Math.abs(s.tension[3 * i]) + Math.abs(s.tension[3 * i + 1]) + s.force[j];
            }
        }
        for (int e = 0; e < 2; e++) {
            if (sys.absorbers[e] != null && s.yielding[e]) {
                scale[sys.unknowns.extensionIndex(e)] = sys.forces.endTension(s, e);
            }
        }
        return scale;
    }

    private static void count(RandomSystem random, Map<Seen, Integer> seen) {
        LineSystem sys = random.system;
        LineState s = random.state;
        for (int i = 1; i < sys.spans; i++) {
            Seen what =
                    switch (s.passage[i]) {
                        case LineState.STUCK -> Seen.STUCK;
                        case LineState.RUNS_ON -> sys.friction[i] == 0 ? Seen.RUNS_FREE : Seen.RUNS_ON;
                        case LineState.RUNS_BACK -> Seen.RUNS_BACK;
                        default -> Seen.JAMMED;
                    };
            seen.merge(what, 1, Integer::sum);
        }
        for (int j = 0; j < sys.loads; j++) {
            if (s.active[j]) {
                Seen what =
                        switch (s.mode[j]) {
                            case LineState.GRIPPED -> Seen.GRIPPED;
                            case LineState.RUNNING -> Seen.RUNNING;
                            case LineState.AT_START -> Seen.AT_START;
                            case LineState.AT_END -> Seen.AT_END;
                            default -> Seen.FOLLOWS;
                        };
                seen.merge(what, 1, Integer::sum);
                if (sys.forces.restSupport(s, j) >= 0) {
                    seen.merge(Seen.RESTING, 1, Integer::sum);
                }
            }
        }
        for (int e = 0; e < 2; e++) {
            if (sys.absorbers[e] != null) {
                boolean rigid = Double.isInfinite(sys.absorbers[e].initialStiffness());
                seen.merge(s.yielding[e] ? Seen.YIELDING : rigid ? Seen.RIGID : Seen.ELASTIC, 1, Integer::sum);
            }
        }
        if (sys.elastic) {
            seen.merge(Seen.SPRINGS, 1, Integer::sum);
        }
        if (sys.unknowns.planar) {
            seen.merge(sys.unknowns.uy == 0 ? Seen.PLANAR : Seen.OBLIQUE, 1, Integer::sum);
        }
    }
}
