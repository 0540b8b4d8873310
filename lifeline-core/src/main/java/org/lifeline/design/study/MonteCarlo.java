package org.lifeline.design.study;

import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.Executor;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.ProgressListener;
import org.lifeline.base.Violations;
import org.lifeline.design.variable.DesignVariable;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.internal.numeric.SharedWork;
import org.lifeline.model.LifelineDesign;

/**
 * A Monte Carlo study: variables drawn independently from stated distributions.
 *
 * <p>Case i draws from a generator of its own, made from the seed and i, so that the study is the same for any number of
 * threads, and a longer study begins with the cases of a shorter one. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class MonteCarlo {
    private static final int BATCH = 256; // cases worked out at a time by one thread

    private final long seed;
    private final @Nullable SharedWork shared;
    private final ProgressListener listener;
    private final RowSink sink;

    private MonteCarlo(long seed, @Nullable SharedWork shared, ProgressListener listener, RowSink sink) {
        this.seed = seed;
        this.shared = shared;
        this.listener = listener;
        this.sink = sink;
    }

    /**
     * A study in the calling thread.
     *
     * @param seed seed of all draws
     * @return the study
     */
    public static MonteCarlo withSeed(long seed) {
        return new MonteCarlo(seed, null, ProgressListener.none(), RowSink.none());
    }

    /**
     * The same with its cases worked out on an executor; the calling thread helps and waits.
     *
     * @param value the executor
     * @return the new study
     */
    public MonteCarlo withExecutor(Executor value) {
        return new MonteCarlo(seed, new SharedWork(value), listener, sink);
    }

    /**
     * The same with a listener that hears of every 256 cases and can end the study.
     *
     * @param value the listener
     * @return the new study
     */
    public MonteCarlo withProgress(ProgressListener value) {
        return new MonteCarlo(seed, shared, value, sink);
    }

    /**
     * The same with its rows handed to a sink as they come.
     *
     * @param value the sink
     * @return the new study
     */
    public MonteCarlo withRows(RowSink value) {
        return new MonteCarlo(seed, shared, listener, value);
    }

    /**
     * Runs the study.
     *
     * @param base the design in which the variables are set, one after the other
     * @param variables the uncertain variables
     * @param evaluation what is computed
     * @param cases number of cases, at least 1
     * @return statistics of the responses; of the cases done so far when the listener ended the study or the
     *     calling thread was interrupted
     * @throws org.lifeline.base.InvalidInputException if there is no variable or no case
     */
    public MonteCarloResult solve(
            LifelineDesign base, List<UncertainVariable> variables, Evaluation evaluation, long cases) {
        new Violations()
                .require(!variables.isEmpty(), "variables", "[]", "must name at least one")
                .atLeast("cases", cases, 1)
                .throwIfAny();
        StudyStatistics statistics = new StudyStatistics(variables, evaluation.responses());
        long batches = (cases + BATCH - 1) / BATCH;
        Job job = new Job(base, List.copyOf(variables), evaluation, cases);
        OrderedWork.run(batches, b -> batch(job, b), shared, (b, rows) -> {
            for (StudyRow row : rows) {
                statistics.add(row);
                sink.take(row);
            }
            return listener.progress(Math.min(cases, (b + 1) * BATCH), cases);
        });
        return statistics.finish(seed, cases);
    }

    /** What is computed over and over. */
    private record Job(LifelineDesign base, List<UncertainVariable> variables, Evaluation evaluation, long cases) {}

    /** The rows of a batch, numbered from 0; the last one may be shorter. */
    private StudyRow[] batch(Job job, long number) {
        long first = number * BATCH;
        StudyRow[] rows = new StudyRow[(int) Math.min(BATCH, job.cases() - first)];
        for (int i = 0; i < rows.length; i++) {
            OrderedWork.stopIfInterrupted();
            rows[i] = row(job, first + i);
        }
        return rows;
    }

    private StudyRow row(Job job, long index) {
        List<UncertainVariable> variables = job.variables();
        SplittableRandom random = new SplittableRandom(mix(seed + mix(index + 1)));
        double[] inputs = new double[variables.size()];
        for (int k = 0; k < inputs.length; k++) {
            inputs[k] = variables.get(k).distribution().quantile(open(random.nextLong()));
        }
        try {
            LifelineDesign design = job.base();
            for (int k = 0; k < inputs.length; k++) {
                checkBounds(variables.get(k).variable(), inputs[k]);
                design = variables.get(k).variable().apply(design, inputs[k]);
            }
            return new StudyRow(index + 1, inputs, job.evaluation().evaluate(design), "");
        } catch (InvalidInputException | NoEquilibriumException | CaseFailure e) {
            return new StudyRow(index + 1, inputs, new double[0], CaseFailure.reason(e));
        }
    }

    /** The bounds of a variable say how far it means anything: a value beyond them is a case that failed, with its reason. */
    private static void checkBounds(DesignVariable variable, double value) {
        Interval bounds = variable.bounds();
        new Violations()
                .require(
                        value >= bounds.low() && value <= bounds.high(),
                        variable.name(),
                        Violations.show(value, variable.unit()),
                        "was drawn outside the bounds of the variable, " + bounds)
                .throwIfAny();
    }

    /** A number above 0 and below 1 from 53 random bits. */
    private static double open(long bits) {
        return ((bits >>> 11) + 0.5) * 0x1.0p-53;
    }

    /** Spreads neighbouring numbers over all bits (D. Stafford's variant 13 of the MurmurHash3 finalizer, as in Java's own). */
    private static long mix(long value) {
        long z = value;
        z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }
}
