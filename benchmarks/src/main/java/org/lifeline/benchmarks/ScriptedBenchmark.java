package org.lifeline.benchmarks;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The same questions as in {@link SolveBenchmark}, as one would script them with a general library. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 6, time = 1)
@Fork(1)
public class ScriptedBenchmark {
    private final ScriptedSpan script = new ScriptedSpan();

    /**
     * A loaded single span at rest.
     *
     * @return components of the tension at the start [N]
     */
    @Benchmark
    public double[] scriptedSpan() {
        return script.solve(6000, 0.37 * 30.06);
    }

    /**
     * Energy balance of a single span without an absorber.
     *
     * @return force [N]
     */
    @Benchmark
    public double scriptedNoAbsorber() {
        return script.arrest(11, 100, 1.5, 6e4);
    }
}
