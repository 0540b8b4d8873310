package org.lifeline.benchmarks;

import java.util.concurrent.TimeUnit;
import org.lifeline.internal.motion.Motion;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Three seconds of a fall of 100 kg on a line of five spans, on one mesh, catch, slack and rebound included. The second
 * figure, {@code nodeSteps}, is the time for one node and one step.
 *
 * <p>With {@code -prof gc} the thousand steps, long past the three seconds, show what the stepping loop allocates.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class MotionBenchmark {
    private static final double SECONDS = 3;
    private static final int STEPS = 1000;

    /** Number of segments on the whole line. */
    @Param({"100", "200", "400"})
    private int segments;

    private Motion running = Motions.fiveSpans(200, SECONDS);

    /** Counts nodes times steps. */
    @AuxCounters(AuxCounters.Type.OPERATIONS)
    @State(Scope.Thread)
    public static class Count {
        /** Nodes times steps. */
        public long nodeSteps;

        /** Starts anew. */
        @Setup(Level.Iteration)
        public void zero() {
            nodeSteps = 0;
        }
    }

    /** Starts the motion whose thousand steps are measured. */
    @Setup(Level.Trial)
    public void start() {
        running = Motions.fiveSpans(segments, SECONDS);
    }

    /**
     * What is made before the first step: with {@code -prof gc} it allocates as much as the three seconds do.
     *
     * @return the motion
     */
    @Benchmark
    public Motion setUpOnly() {
        return Motions.fiveSpans(segments, SECONDS);
    }

    /**
     * Three seconds from the free fall on.
     *
     * @param count nodes times steps
     * @return the motion
     */
    @Benchmark
    public Motion threeSeconds(Count count) {
        Motion motion = Motions.fiveSpans(segments, SECONDS);
        motion.run(SECONDS);
        count.nodeSteps += motion.counts().nodeSteps();
        return motion;
    }

    /**
     * A thousand steps of a motion that was set up before.
     *
     * @return time reached [s]
     */
    @Benchmark
    public double thousandSteps() {
        for (int k = 0; k < STEPS; k++) {
            running.step();
        }
        return running.time();
    }
}
