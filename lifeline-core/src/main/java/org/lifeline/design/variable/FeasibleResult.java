package org.lifeline.design.variable;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.lifeline.base.unit.SignificantDigits;

/**
 * For which values of a variable all criteria are met.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class FeasibleResult {
    private final DesignVariable variable;
    private final List<FeasibleInterval> intervals;
    private final List<Trial> trials;
    private final List<String> open;
    private final boolean complete;

    FeasibleResult(
            DesignVariable variable,
            List<FeasibleInterval> intervals,
            List<Trial> trials,
            List<String> open,
            boolean complete) {
        this.variable = variable;
        this.intervals = List.copyOf(intervals);
        this.trials =
                trials.stream().sorted(Comparator.comparingDouble(Trial::value)).toList();
        this.open = List.copyOf(open);
        this.complete = complete;
    }

    /**
     * The variable.
     *
     * @return the variable
     */
    public DesignVariable variable() {
        return variable;
    }

    /**
     * The ranges over which all criteria are met, rising.
     *
     * @return the ranges; empty if there is none; unmodifiable
     */
    public List<FeasibleInterval> intervals() {
        return intervals;
    }

    /**
     * Why there is no range.
     *
     * @return the reason with the least bad value that was tried; empty if there is a range
     */
    public Optional<String> noneBecause() {
        if (!intervals.isEmpty()) {
            return Optional.empty();
        }
        Trial best = best();
        if (!complete) {
            return Optional.of("the search was ended after " + trials.size() + " values of " + variable
                    + ", none of which meets all criteria; of the others it says nothing");
        }
        if (Double.isInfinite(best.ratio()) && !best.reason().isEmpty()) {
            return Optional.of("no value of " + variable + " that was tried makes a design that can be analysed; at "
                    + digits(best.value()) + ": " + best.reason());
        }
        return Optional.of("no value of " + variable + " from "
                + digits(variable.bounds().low()) + " to "
                + digits(variable.bounds().high()) + " meets all criteria; the least bad is " + digits(best.value())
                + ", where " + best.governing() + " has a ratio of demand to capacity of " + digits(best.ratio()));
    }

    private static String digits(double value) {
        return SignificantDigits.of(value, 5);
    }

    /**
     * The value with the least worst ratio of those that were tried.
     *
     * @return the trial
     */
    public Trial best() {
        return trials.stream().min(Comparator.comparingDouble(Trial::ratio)).orElseThrow();
    }

    /**
     * All values that were tried, rising.
     *
     * @return the trials; unmodifiable
     */
    public List<Trial> trials() {
        return trials;
    }

    /**
     * Criteria that could not be evaluated, or not in all their parts, at a value that was taken as feasible. The ranges say
     * nothing about them.
     *
     * @return ids with reasons; unmodifiable
     */
    public List<String> notEvaluated() {
        return open;
    }

    /**
     * Tells whether the search was carried through.
     *
     * @return false if the listener ended it or its thread was interrupted
     */
    public boolean isComplete() {
        return complete;
    }
}
