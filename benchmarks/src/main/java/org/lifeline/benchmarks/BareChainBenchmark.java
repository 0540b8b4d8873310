package org.lifeline.benchmarks;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The bare chain: time for one node and one step. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class BareChainBenchmark {
    private static final int SEGMENTS = 200;
    private static final int STEPS = 1000;

    private final BareChain chain = new BareChain(SEGMENTS);

    /**
     * A thousand steps of 200 segments, counted by nodes and steps.
     *
     * @return elevation of the middle [m]
     */
    @Benchmark
    @OperationsPerInvocation(SEGMENTS * STEPS)
    public double nodeStep() {
        return chain.run(STEPS);
    }
}
