package org.lifeline.benchmarks;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.study.MonteCarlo;
import org.lifeline.design.study.MonteCarloResult;
import org.lifeline.model.LifelineDesign;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** Envelopes of a line of five spans at three temperatures, and cases of a Monte Carlo study of a single span. */
@State(Scope.Benchmark)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@BenchmarkMode(Mode.AverageTime)
public class DesignBenchmark {
    private static final int CASES = 100_000;

    /** A line of five spans. */
    @State(Scope.Benchmark)
    public static class FiveSpans {
        /** Free posts, or friction at the posts, yielding ends and an in-line absorber. */
        @Param({"free", "rough"})
        public String posts = "";

        /** How the worker holds on to the line. */
        @Param({"gripped", "free-running"})
        public String attachment = "";

        private LifelineDesign design = Studies.fiveSpans(false, false);

        /** Builds the design. */
        @Setup
        public void build() {
            design = Studies.fiveSpans(posts.equals("rough"), attachment.equals("gripped"));
        }
    }

    /** The threads of a study. */
    @State(Scope.Benchmark)
    public static class Threads {
        /** Number of threads beside the one that starts the study; 0 for that one alone. */
        @Param({"0", "1"})
        public int helpers;

        private ExecutorService pool = Executors.newFixedThreadPool(1);

        /** Starts the threads. */
        @Setup
        public void start() {
            pool = Executors.newFixedThreadPool(Math.max(1, helpers));
        }

        /** Ends them. */
        @TearDown
        public void end() {
            pool.shutdown();
        }
    }

    /**
     * Envelope over all places, three temperatures and both sides.
     *
     * @param line the line
     * @return the envelope
     */
    @Benchmark
    @OutputTimeUnit(TimeUnit.MILLISECONDS)
    public EnvelopeResult envelope(FiveSpans line) {
        return Envelope.withDefaults().solve(line.design);
    }

    /**
     * One case of a Monte Carlo study: pretension, stiffness, mass and deployment force of a single span, one arrest.
     *
     * @param threads the threads
     * @return the study
     */
    @Benchmark
    @OperationsPerInvocation(CASES)
    @OutputTimeUnit(TimeUnit.MICROSECONDS)
    public MonteCarloResult monteCarloCase(Threads threads) {
        MonteCarlo study = MonteCarlo.withSeed(1);
        return (threads.helpers == 0 ? study : study.withExecutor(threads.pool))
                .solve(Studies.singleSpan(), Studies.uncertain(), Studies.load(), CASES);
    }
}
