package org.lifeline.design.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;
import org.lifeline.design.study.partial.KeptCase;
import org.lifeline.design.study.partial.ResponsePartial;
import org.lifeline.design.study.partial.StudyIdentity;
import org.lifeline.design.study.partial.StudyPartial;
import org.lifeline.design.study.partial.ValueCounts;
import org.lifeline.internal.numeric.Covariances;
import org.lifeline.internal.numeric.LogHistogram;
import org.lifeline.internal.numeric.Ranks;

/**
 * What a Monte Carlo study found.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class MonteCarloResult {
    private final Counts counts;
    private final List<Summary> summaries;
    private final List<List<Sensitivity>> sensitivities;
    private final List<StudyRow> failures;

    MonteCarloResult(
            Counts counts, List<Summary> summaries, List<List<Sensitivity>> sensitivities, List<StudyRow> failures) {
        this.counts = counts;
        this.summaries = List.copyOf(summaries);
        this.sensitivities = List.copyOf(sensitivities);
        this.failures = List.copyOf(failures);
    }

    /**
     * The result of the parts of a study that were put together.
     *
     * @param part the parts, put together
     * @param variables the uncertain variables of the study
     * @param responses its responses
     * @param cases number of cases that the study asks for, at least those that were done
     * @return the result; incomplete if some cases were not done
     * @throws org.lifeline.base.InvalidInputException if variables or responses are not those of the part, or there are more
     *     cases than were asked for
     */
    public static MonteCarloResult of(
            StudyPartial part, List<UncertainVariable> variables, List<Response> responses, long cases) {
        Violations.required("part", part);
        Violations.requiredAll("variables", variables);
        Violations.requiredAll("responses", responses);
        StudyIdentity stated = part.identity();
        StudyIdentity wanted = StudyStatistics.identity(stated.seed(), stated.study(), variables, responses);
        long last = part.cases().isEmpty()
                ? 0
                : part.cases().get(part.cases().size() - 1).last();
        new Violations()
                .require(
                        stated.variables().equals(wanted.variables()),
                        "variables",
                        GivenValue.text(wanted.variables().toString()),
                        InputRule.NOT_OF_PART,
                        stated.variables())
                .require(
                        stated.responses().equals(wanted.responses()),
                        "responses",
                        GivenValue.text(wanted.responses().toString()),
                        InputRule.NOT_OF_PART,
                        stated.responses())
                .require(cases >= last, "cases", GivenValue.count(cases), InputRule.FEWER_THAN_DONE, last)
                .throwIfAny();
        List<Summary> summaries = new ArrayList<>();
        List<List<Sensitivity>> sensitivities = new ArrayList<>();
        for (int i = 0; i < responses.size(); i++) {
            ResponsePartial each = part.responses().get(i);
            Covariances moments = Covariances.of(
                    each.sums().count(), each.sums().sums(), each.sums().products());
            ValueCounts counts = each.counts();
            LogHistogram histogram = LogHistogram.of(
                    counts.zeros(),
                    new double[] {counts.extent().low(), counts.extent().high()},
                    counts.positive(),
                    counts.negative());
            summaries.add(new Summary(responses.get(i), histogram, moments));
            sensitivities.add(sensitivities(variables, moments, each.first()));
        }
        List<StudyRow> failures = part.failures().first().stream()
                .map(c -> new StudyRow(c.number(), array(c.values()), new double[0], c.reason()))
                .toList();
        return new MonteCarloResult(
                new Counts(stated.seed(), cases, part.count(), part.failures().count()),
                summaries,
                sensitivities,
                failures);
    }

    private static List<Sensitivity> sensitivities(
            List<UncertainVariable> variables, Covariances moments, List<KeptCase> first) {
        int n = variables.size();
        double[] regression = moments.standardisedRegression();
        double[][] readings = first.stream().map(c -> array(c.values())).toArray(double[][]::new);
        double[] ranks = readings.length > 0 ? Ranks.correlations(readings) : new double[0];
        List<Sensitivity> list = new ArrayList<>();
        for (int k = 0; k < n; k++) {
            list.add(new Sensitivity(
                    variables.get(k).variable(),
                    regression[k],
                    moments.correlation(k, n),
                    ranks.length > 0 ? ranks[k] : Double.NaN));
        }
        return list;
    }

    private static double[] array(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Seed and numbers of cases. */
    record Counts(long seed, long asked, long done, long failed) {}

    /**
     * Seed of the draws.
     *
     * @return the seed
     */
    public long seed() {
        return counts.seed();
    }

    /**
     * Number of cases that were done.
     *
     * @return the number, those that failed included
     */
    public long cases() {
        return counts.done();
    }

    /**
     * Number of cases without a result.
     *
     * @return the number
     */
    public long failed() {
        return counts.failed();
    }

    /**
     * Cases without a result: the first thousand of them.
     *
     * @return rows with their reasons; unmodifiable
     */
    public List<StudyRow> failures() {
        return failures;
    }

    /**
     * Tells whether all cases were done.
     *
     * @return false if the listener ended the study or its thread was interrupted
     */
    public boolean isComplete() {
        return counts.done() == counts.asked();
    }

    /**
     * Why the statistics are not those of all cases that were asked for.
     *
     * @return the reason; empty if every case was done and has a result
     */
    public Optional<String> incompleteBecause() {
        List<String> reasons = new ArrayList<>();
        if (!isComplete()) {
            reasons.add("the study was ended after " + cases() + " of " + counts.asked() + " cases");
        }
        if (failed() > 0) {
            String first = failures.isEmpty()
                    ? ""
                    : ", the first because: " + failures.get(0).reason();
            reasons.add(failed() + " of " + cases() + " cases have no result" + first);
        }
        return reasons.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", reasons));
    }

    /**
     * Statistics of the responses.
     *
     * @return one summary for each response, in their order; unmodifiable
     */
    public List<Summary> summaries() {
        return summaries;
    }

    /**
     * How much a response depends on each variable, the strongest first by the size of the standardised regression
     * coefficient.
     *
     * @param response number of the response, from 0
     * @return one for each variable; unmodifiable
     */
    public List<Sensitivity> ranking(int response) {
        return sensitivities.get(Violations.requiredIndex("response", response, sensitivities.size())).stream()
                .sorted(Comparator.comparingDouble(s -> Double.isNaN(s.regression()) ? 0 : -Math.abs(s.regression())))
                .toList();
    }

    /**
     * Share of the variance of a response that the variables explain, as far as it is linear in them: the coefficient of
     * determination of the regression. Near 1, the regression coefficients tell the whole story.
     *
     * @param response number of the response, from 0
     * @return R² [-], from 0 to 1; NaN where it cannot be told
     */
    public double determination(int response) {
        double sum = 0;
        for (Sensitivity s : sensitivities.get(Violations.requiredIndex("response", response, sensitivities.size()))) {
            // R² = Σ βᵢ r(xᵢ, y); a variable that does not vary explains nothing.
            sum += Double.isNaN(s.correlation()) ? 0 : s.regression() * s.correlation();
        }
        return sum;
    }
}
