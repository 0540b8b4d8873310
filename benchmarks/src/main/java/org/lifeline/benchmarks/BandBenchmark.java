package org.lifeline.benchmarks;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;
import org.lifeline.internal.numeric.BandMatrix;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Factors and solves the tangent of a line: own elimination in the band against EJML's dense LU. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(1)
public class BandBenchmark {
    private static final int DIAGONALS = 5;

    /** Unknowns: four a span, so those of 5, 30 and 100 spans. */
    @Param({"20", "120", "400"})
    public int unknowns;

    private double[][] values = new double[0][0];
    private double[] right = new double[0];

    /** Draws a diagonally dominant band. */
    @Setup
    public void draw() {
        SplittableRandom r = new SplittableRandom(1);
        values = new double[unknowns][unknowns];
        right = new double[unknowns];
        for (int i = 0; i < unknowns; i++) {
            right[i] = r.nextDouble(-1, 1);
            for (int j = Math.max(0, i - DIAGONALS); j <= Math.min(unknowns - 1, i + DIAGONALS); j++) {
                values[i][j] = i == j ? 20 : r.nextDouble(-1, 1);
            }
        }
    }

    /**
     * Elimination in the band, without an exchange of rows.
     *
     * @return the first unknown [-]
     */
    @Benchmark
    public double band() {
        return solve(true);
    }

    /**
     * The same with exchanges of rows.
     *
     * @return the first unknown [-]
     */
    @Benchmark
    public double bandWithPivots() {
        return solve(false);
    }

    private double solve(boolean plain) {
        BandMatrix m = new BandMatrix(unknowns, DIAGONALS, DIAGONALS);
        for (int i = 0; i < unknowns; i++) {
            for (int j = Math.max(0, i - DIAGONALS); j <= Math.min(unknowns - 1, i + DIAGONALS); j++) {
                m.add(i, j, values[i][j]);
            }
        }
        if (!(plain ? m.eliminate() : m.factor())) {
            throw new IllegalStateException("singular");
        }
        double[] x = right.clone();
        m.solve(x);
        return x[0];
    }

    /**
     * EJML's dense LU with partial pivoting.
     *
     * @return the first unknown [-]
     */
    @Benchmark
    public double denseLu() {
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.lu(unknowns);
        if (!solver.setA(new DMatrixRMaj(values))) {
            throw new IllegalStateException("singular");
        }
        DMatrixRMaj x = new DMatrixRMaj(unknowns, 1);
        solver.solve(new DMatrixRMaj(unknowns, 1, true, right), x);
        return x.get(0, 0);
    }
}
