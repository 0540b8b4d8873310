package org.lifeline.design.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.lifeline.base.Interval;
import org.lifeline.design.study.partial.CaseRange;
import org.lifeline.design.study.partial.ExactSums;
import org.lifeline.design.study.partial.KeptCase;
import org.lifeline.design.study.partial.ResponsePartial;
import org.lifeline.design.study.partial.StudyIdentity;
import org.lifeline.design.study.partial.StudyPartial;
import org.lifeline.design.study.partial.ValueCounts;
import org.lifeline.internal.numeric.Covariances;
import org.lifeline.internal.numeric.LogHistogram;

/** Statistics of a study, gathered row by row in memory that does not grow. Not thread-safe. */
final class StudyStatistics {
    private final StudyIdentity identity;
    private final long firstCase;
    private final List<Each> each = new ArrayList<>();
    private final List<KeptCase> failures = new ArrayList<>();
    private long rows;
    private long failed;

    /** What is gathered for one response. */
    private static final class Each {
        private final LogHistogram histogram = new LogHistogram();
        private final Covariances covariances;
        private final double[] together;
        private final List<KeptCase> first = new ArrayList<>();

        Each(int variables) {
            covariances = new Covariances(variables + 1);
            together = new double[variables + 1];
        }

        void add(StudyRow row, double output) {
            double[] inputs = row.inputs();
            histogram.add(output);
            System.arraycopy(inputs, 0, together, 0, inputs.length);
            together[inputs.length] = output;
            covariances.add(together);
            if (first.size() < ResponsePartial.FIRST_CASES) {
                first.add(new KeptCase(row.number(), list(together), ""));
            }
        }

        ResponsePartial partial() {
            return new ResponsePartial(
                    new ValueCounts(
                            histogram.zeros(),
                            histogram.count() == 0
                                    ? Interval.exactly(0)
                                    : Interval.of(histogram.smallest(), histogram.largest()),
                            histogram.positive(),
                            histogram.negative()),
                    new ExactSums(covariances.count(), covariances.sums(), covariances.products()),
                    first);
        }
    }

    StudyStatistics(StudyIdentity identity, long firstCase) {
        this.identity = identity;
        this.firstCase = firstCase;
        for (int i = 0; i < identity.responses().size(); i++) {
            each.add(new Each(identity.variables().size()));
        }
    }

    /** What makes two parts belong to one study. */
    static StudyIdentity identity(
            long seed, String study, List<UncertainVariable> variables, List<Response> responses) {
        return new StudyIdentity(
                seed,
                study,
                variables.stream()
                        .map(v -> v.variable() + ", " + v.distribution())
                        .toList(),
                responses.stream().map(Response::toString).toList());
    }

    private static List<Double> list(double[] values) {
        return Arrays.stream(values).boxed().toList();
    }

    void add(StudyRow row) {
        rows++;
        if (row.failed()) {
            failed++;
            if (failures.size() < StudyPartial.FailedCases.MOST) {
                failures.add(new KeptCase(row.number(), list(row.inputs()), row.reason()));
            }
            return;
        }
        for (int i = 0; i < each.size(); i++) {
            double value = row.output(i);
            if (Double.isFinite(value)) {
                each.get(i).add(row, value);
            }
        }
    }

    /** The part of the study that was done. */
    StudyPartial partial() {
        return new StudyPartial(
                identity,
                rows == 0 ? List.of() : List.of(new CaseRange(firstCase, firstCase + rows - 1)),
                new StudyPartial.FailedCases(failed, failures),
                each.stream().map(Each::partial).toList());
    }
}
