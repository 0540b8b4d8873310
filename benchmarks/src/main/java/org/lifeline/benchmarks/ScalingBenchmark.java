package org.lifeline.benchmarks;

import java.util.concurrent.TimeUnit;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
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

/** Cost of an energy balance by the number of spans. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 6, time = 1)
@Fork(1)
public class ScalingBenchmark {
    private final Fall fall = Lines.fall(3, 5, Lines.absorber());
    private final Fall hard = Lines.fall(3, 5, Lines.plain());

    /** Number of spans. */
    @Param({"10", "30", "100", "300", "1000"})
    public int spans;

    private Lifeline line = Lines.spans(10, false);

    /** Makes the line. */
    @Setup
    public void prepare() {
        line = Lines.spans(spans, false);
    }

    /**
     * Energy balance of spans that run freely.
     *
     * @return the arrest
     */
    @Benchmark
    public ArrestResult free() {
        return EnergyBalance.withDefaults().solve(line, fall);
    }

    /**
     * The same without an absorber: the same search for a root at every number of spans.
     *
     * @return the arrest
     */
    @Benchmark
    public ArrestResult plain() {
        return EnergyBalance.withDefaults().solve(line, hard);
    }
}
