package org.lifeline.design.study;

import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.Executor;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.ProgressListener;
import org.lifeline.base.Violations;
import org.lifeline.design.study.partial.CaseRange;
import org.lifeline.design.study.partial.StudyPartial;
import org.lifeline.design.variable.DesignVariable;
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
        Violations.required("executor", value);
        return new MonteCarlo(seed, new SharedWork(value), listener, sink);
    }

    /**
     * The same with a listener that hears of every 256 cases and can end the study.
     *
     * @param value the listener
     * @return the new study
     */
    public MonteCarlo withProgress(ProgressListener value) {
        Violations.required("progress", value);
        return new MonteCarlo(seed, shared, value, sink);
    }

    /**
     * The same with its rows handed to a sink as they come.
     *
     * @param value the sink
     * @return the new study
     */
    public MonteCarlo withRows(RowSink value) {
        Violations.required("rows", value);
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
        Violations.required("base", base);
        Violations.requiredAll("variables", variables);
        Violations.required("evaluation", evaluation);
        new Violations()
                .require(!variables.isEmpty(), "variables", GivenValue.text("[]"), InputRule.EMPTY, "variable")
                .atLeast("cases", cases, 1)
                .throwIfAny();
        StudyPartial all = withCases(1, cases).solve(base, variables, evaluation);
        return MonteCarloResult.of(all, variables, evaluation.responses(), cases);
    }

    /**
     * Some of the cases, for one machine of several. Parts with other cases of the same study are put together by {@link
     * StudyPartial#merge}, and {@link MonteCarloResult#of} gives the result: the same, to the last digit, as {@link #solve}
     * gives, in whatever order and grouping the parts are put together.
     *
     * @param first number of the first case, from 1
     * @param last number of the last case, which belongs to the part
     * @return the part, to be solved
     * @throws InvalidInputException if there is no case in it
     */
    public MonteCarloPart withCases(long first, long last) {
        return new MonteCarloPart(this, new CaseRange(first, last), "");
    }

    /** What is computed over and over. */
    record Job(LifelineDesign base, List<UncertainVariable> variables, Evaluation evaluation) {}

    long seed() {
        return seed;
    }

    @Nullable
    SharedWork shared() {
        return shared;
    }

    ProgressListener listener() {
        return listener;
    }

    RowSink sink() {
        return sink;
    }

    /** A case, numbered from 1. */
    StudyRow row(Job job, long number) {
        List<UncertainVariable> variables = job.variables();
        SplittableRandom random = new SplittableRandom(mix(seed + mix(number)));
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
            return new StudyRow(number, inputs, job.evaluation().evaluate(design), "");
        } catch (InvalidInputException | NoEquilibriumException | CaseFailure e) {
            return new StudyRow(number, inputs, new double[0], CaseFailure.reason(e));
        }
    }

    /** The bounds of a variable say how far it means anything: a value beyond them is a case that failed, with its reason. */
    private static void checkBounds(DesignVariable variable, double value) {
        Interval bounds = variable.bounds();
        new Violations()
                .require(
                        value >= bounds.low() && value <= bounds.high(),
                        variable.name(),
                        GivenValue.number(value, variable.unit()),
                        InputRule.DRAWN_OUTSIDE,
                        bounds)
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
