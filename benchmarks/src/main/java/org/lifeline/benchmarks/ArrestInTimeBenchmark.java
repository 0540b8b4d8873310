package org.lifeline.benchmarks;

import java.util.concurrent.TimeUnit;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.TransientResult;
import org.lifeline.base.Point;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.cable.Cable;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The peaks of a first catch in time with their allowances: three meshes of 32, 64 and 128 segments in the span of the fall. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2, time = 2)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class ArrestInTimeBenchmark {
    private static final double SEGMENTS = 32;

    /** The line: one span of 14 m, three of 12 m with friction, five rough ones with an in-line absorber. */
    @Param({"single", "three", "five"})
    private String line = "single";

    private static Lifeline line(String name) {
        if (name.equals("five")) {
            return Lines.spans(5, true);
        }
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.41).axialStiffness(3.3e6).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .pretension(1500);
        if (name.equals("single")) {
            return b.endAnchor("b", Point.of(14, 0, 10)).build();
        }
        return b.intermediateAnchor("p", Point.of(12, 0, 10), Passage.friction(0.12))
                .intermediateAnchor("q", Point.of(24, 0, 10), Passage.friction(0.12))
                .endAnchor("b", Point.of(36, 0, 10))
                .build();
    }

    /**
     * One arrest.
     *
     * @return the arrest
     */
    @Benchmark
    public TransientResult threeMeshes() {
        Lifeline l = line(line);
        int span = (l.spans() + 1) / 2;
        Fall fall = Lines.fall(span, 0.5 * l.run(span), Lines.absorber());
        return TransientArrest.withDefaults()
                .withRefinements(2)
                .withSegmentLength(l.run(span) / SEGMENTS)
                .withEndAfterFirstCatch(0)
                .withSampling(0.1)
                .solve(l, fall);
    }
}
