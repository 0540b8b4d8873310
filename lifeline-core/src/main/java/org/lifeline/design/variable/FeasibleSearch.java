package org.lifeline.design.variable;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.ProgressListener;
import org.lifeline.base.Violations;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.WorstCases;
import org.lifeline.internal.numeric.SharedWork;
import org.lifeline.model.LifelineDesign;

/**
 * Looks for the values of a design variable for which all chosen criteria are met: over the envelope of the design unless
 * another analysis is given. Over an envelope the search is made with the cases that govern in some envelopes, and its ends
 * are confirmed by whole envelopes.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class FeasibleSearch {
    private final List<Criterion> criteria;
    private final WorstCases analysis;
    private final int samples;
    private final @Nullable SharedWork shared;
    private final ProgressListener listener;

    private FeasibleSearch(
            List<Criterion> criteria,
            WorstCases analysis,
            int samples,
            @Nullable SharedWork shared,
            ProgressListener listener) {
        this.shared = shared;
        this.criteria = List.copyOf(criteria);
        this.analysis = analysis;
        this.samples = samples;
        this.listener = listener;
    }

    /**
     * A search over the envelope of a design, from 9 samples of the variable.
     *
     * @param criteria the criteria that have to be met
     * @return the search
     * @throws org.lifeline.base.InvalidInputException if there is no criterion
     */
    public static FeasibleSearch withCriteria(List<Criterion> criteria) {
        Violations.requiredAll("criteria", criteria);
        new Violations()
                .require(!criteria.isEmpty(), "criteria", GivenValue.text("[]"), InputRule.EMPTY, "criterion")
                .throwIfAny();
        return new FeasibleSearch(criteria, Envelope.withDefaults(), 9, null, ProgressListener.none());
    }

    /**
     * The same over other cases: an envelope with tolerances, or the stated falls of the design only.
     *
     * @param value the analysis that gives the worst cases
     * @return the new search
     */
    public FeasibleSearch withAnalysis(WorstCases value) {
        Violations.required("analysis", value);
        return new FeasibleSearch(criteria, value, samples, shared, listener);
    }

    /**
     * The same from another number of samples. A variable that takes whole numbers is tried at every one.
     *
     * @param value number of samples, at least 3
     * @return the new search
     * @throws org.lifeline.base.InvalidInputException if there are fewer
     */
    public FeasibleSearch withSamples(int value) {
        new Violations().atLeast("samples", value, 3).throwIfAny();
        return new FeasibleSearch(criteria, analysis, value, shared, listener);
    }

    /**
     * The same with the cases of each analysis worked out on an executor; the calling thread helps and waits. The result is
     * the same for any number of threads. It concerns an {@link Envelope} and a {@link DesignAnalysis}; another analysis is
     * asked by the calling thread alone.
     *
     * @param value the executor
     * @return the new search
     */
    public FeasibleSearch withExecutor(Executor value) {
        SharedWork work = new SharedWork(Violations.required("executor", value));
        return new FeasibleSearch(criteria, analysis, samples, work, listener);
    }

    /**
     * The same with a listener that hears of each analysis and can end the search.
     *
     * @param value the listener
     * @return the new search
     */
    public FeasibleSearch withProgress(ProgressListener value) {
        Violations.required("progress", value);
        return new FeasibleSearch(criteria, analysis, samples, shared, value);
    }

    /**
     * Searches.
     *
     * @param base the design in which the variable is set
     * @param variable the variable with its bounds
     * @return the ranges over which all criteria are met, as far as they were found when the listener ended the search or
     *     the thread was interrupted
     * @throws java.util.concurrent.CancellationException if the thread is interrupted before a value was tried; its
     *     interrupt flag stays set
     */
    public FeasibleResult solve(LifelineDesign base, DesignVariable variable) {
        Violations.required("base", base);
        Violations.required("variable", variable);
        return new FeasibleRangeSolver(this, base, variable).run();
    }

    List<Criterion> criteria() {
        return criteria;
    }

    /** The envelope, where the search is over one whose cases can be learned. */
    Optional<Envelope> envelope() {
        return analysis() instanceof Envelope e && e.tolerances().mass().isEmpty() ? Optional.of(e) : Optional.empty();
    }

    /** The analysis, on the executor where there is one and it takes one. */
    WorstCases analysis() {
        if (shared != null && analysis instanceof Envelope e) {
            return shared.given(e, Envelope::withExecutor);
        }
        if (shared != null && analysis instanceof DesignAnalysis a) {
            return shared.given(a, DesignAnalysis::withExecutor);
        }
        return analysis;
    }

    @Nullable
    SharedWork shared() {
        return shared;
    }

    int samples() {
        return samples;
    }

    ProgressListener listener() {
        return listener;
    }
}
