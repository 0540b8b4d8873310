package org.lifeline.benchmarks;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.LoadedSpans;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
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
import org.openjdk.jmh.infra.Blackhole;

/** One solve through the public API against the bare kernel. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 8, time = 1)
@Fork(1)
public class SolveBenchmark {
    private static final int BATCH = 1000;

    /** Solves of the kernel in one sample, so that reading the clock costs nothing. */
    private static final int KERNELS = 100;

    /** Equilibria in one sample, likewise. */
    private static final int STATICS = 10;

    private final BareKernel kernel = new BareKernel();
    private final Lifeline single = Lines.loadedSpan();
    private final List<AppliedLoad> load = List.of(new AppliedLoad(Place.of(1, 0.37 * 30), Attachment.GRIPPED, 6000));
    private final Fall absorbed = Lines.fall(1, 11, Lines.absorber());
    private final Fall unabsorbed = Lines.fall(1, 11, Lines.plain());
    private final Lifeline five = Lines.spans(5, false);
    private final Lifeline fiveRough = Lines.spans(5, true);
    private final LoadedSpans batch = Lines.batch(BATCH);
    private final Fall inThird = Lines.fall(3, 5, Lines.absorber());

    /**
     * The bare kernel, K.
     *
     * @return horizontal tension [N]
     */
    @Benchmark
    @OperationsPerInvocation(KERNELS)
    public double kernel() {
        double sum = 0;
        for (int i = 0; i < KERNELS; i++) {
            sum += kernel.solve(6000, 0.37);
        }
        return sum;
    }

    /**
     * Loaded spans with different inputs, in one batch.
     *
     * @return the equilibria
     */
    @Benchmark
    @OperationsPerInvocation(BATCH)
    public LoadedSpans.Solution batchOfSpans() {
        return batch.solve();
    }

    /**
     * A loaded single span at rest.
     *
     * @param results takes the equilibria
     */
    @Benchmark
    @OperationsPerInvocation(STATICS)
    public void staticSpan(Blackhole results) {
        for (int i = 0; i < STATICS; i++) {
            results.consume(Statics.withDefaults().solve(single, load));
        }
    }

    /**
     * Energy balance of a single span, the absorber deploying.
     *
     * @return the arrest
     */
    @Benchmark
    public ArrestResult singleDeploying() {
        return EnergyBalance.withDefaults().solve(single, absorbed);
    }

    /**
     * Energy balance of a single span without an absorber.
     *
     * @return the arrest
     */
    @Benchmark
    public ArrestResult singleNoAbsorber() {
        return EnergyBalance.withDefaults().solve(single, unabsorbed);
    }

    /**
     * Energy balance of five spans that run freely.
     *
     * @return the arrest
     */
    @Benchmark
    public ArrestResult fiveFree() {
        return EnergyBalance.withDefaults().solve(five, inThird);
    }

    /**
     * Energy balance of five spans with friction, elastic ends and an in-line absorber.
     *
     * @return the arrest
     */
    @Benchmark
    public ArrestResult fiveFriction() {
        return EnergyBalance.withDefaults().solve(fiveRough, inThird);
    }
}
