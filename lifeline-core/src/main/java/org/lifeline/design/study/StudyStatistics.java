package org.lifeline.design.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.lifeline.internal.numeric.Covariances;
import org.lifeline.internal.numeric.LogHistogram;
import org.lifeline.internal.numeric.Ranks;

/** Statistics of a study, gathered row by row in memory that does not grow. Not thread-safe. */
final class StudyStatistics {
    private static final int FIRST_CASES = 4096; // for the rank correlations
    private static final int FAILURES = 1000; // kept as examples

    private final List<UncertainVariable> variables;
    private final List<Response> responses;
    private final List<Each> each = new ArrayList<>();
    private final List<StudyRow> failures = new ArrayList<>();
    private long rows;
    private long failed;

    /** What is gathered for one response. */
    private static final class Each {
        private final LogHistogram histogram = new LogHistogram();
        private final Covariances covariances;
        private final double[] together;
        private double[][] first = new double[64][];
        private int kept;

        Each(int variables) {
            covariances = new Covariances(variables + 1);
            together = new double[variables + 1];
        }

        void add(double[] inputs, double output) {
            histogram.add(output);
            System.arraycopy(inputs, 0, together, 0, inputs.length);
            together[inputs.length] = output;
            covariances.add(together);
            if (kept < FIRST_CASES) {
                if (kept == first.length) {
                    first = Arrays.copyOf(first, 2 * kept);
                }
                first[kept++] = together.clone();
            }
        }

        double[] rankCorrelations() {
            return kept > 0 ? Ranks.correlations(Arrays.copyOf(first, kept)) : new double[0];
        }
    }

    StudyStatistics(List<UncertainVariable> variables, List<Response> responses) {
        this.variables = List.copyOf(variables);
        this.responses = responses;
        for (int i = 0; i < responses.size(); i++) {
            each.add(new Each(variables.size()));
        }
    }

    void add(StudyRow row) {
        rows++;
        if (row.failed()) {
            failed++;
            if (failures.size() < FAILURES) {
                failures.add(row);
            }
            return;
        }
        for (int i = 0; i < each.size(); i++) {
            double value = row.output(i);
            if (Double.isFinite(value)) {
                each.get(i).add(row.inputs(), value);
            }
        }
    }

    MonteCarloResult finish(long seed, long asked) {
        List<Summary> summaries = new ArrayList<>();
        List<List<Sensitivity>> sensitivities = new ArrayList<>();
        for (int i = 0; i < responses.size(); i++) {
            Each e = each.get(i);
            summaries.add(new Summary(responses.get(i), e.histogram, e.covariances));
            sensitivities.add(sensitivities(e));
        }
        return new MonteCarloResult(
                new MonteCarloResult.Counts(seed, asked, rows, failed), summaries, sensitivities, failures);
    }

    private List<Sensitivity> sensitivities(Each e) {
        int n = variables.size();
        double[] regression = e.covariances.standardisedRegression();
        double[] ranks = e.rankCorrelations();
        List<Sensitivity> list = new ArrayList<>();
        for (int k = 0; k < n; k++) {
            list.add(new Sensitivity(
                    variables.get(k).variable(),
                    regression[k],
                    e.covariances.correlation(k, n),
                    ranks.length > 0 ? ranks[k] : Double.NaN));
        }
        return list;
    }
}
