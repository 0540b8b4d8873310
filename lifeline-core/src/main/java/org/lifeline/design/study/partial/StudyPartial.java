package org.lifeline.design.study.partial;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;

/**
 * The part of a Monte Carlo study that one machine has done. Parts are put together in any order and grouping; the result is
 * that of one machine that does all cases, to the last digit, as long as the cases themselves come out alike
 * (decision 52 says between which machines they do).
 *
 * <p>This is the public form of version {@value #VERSION}: later versions read it. {@code org.lifeline.file.study} writes it as
 * JSON. Immutable and thread-safe.
 *
 * @param identity what makes two parts belong to one study
 * @param cases the cases that were done; in rising order, neighbours joined
 * @param failures the cases without a result
 * @param responses one for each response of the study
 * @since 1.0.0
 */
public record StudyPartial(
        StudyIdentity identity, List<CaseRange> cases, FailedCases failures, List<ResponsePartial> responses) {
    /** Version of the form: of the bins of {@link ValueCounts}, the sums of {@link ExactSums} and the draws. */
    public static final int VERSION = 1;

    /**
     * Cases without a result.
     *
     * @param count number of them
     * @param first the first {@value #MOST} of them, with their reasons
     * @since 1.0.0
     */
    public record FailedCases(long count, List<KeptCase> first) {
        /** Number of failed cases that are kept as they were drawn. */
        public static final int MOST = 1000;

        /**
         * Copies the list.
         *
         * @param count number of failed cases
         * @param first the first of them
         * @throws org.lifeline.base.InvalidInputException if the list is not as long as the count says
         */
        public FailedCases {
            Violations.requiredAll("first", first);
            first = List.copyOf(first);
            new Violations()
                    .require(
                            first.size() == Math.min(MOST, count),
                            "failures",
                            GivenValue.countOf(first.size(), "cases"),
                            InputRule.FAILURES_LACKING,
                            count,
                            MOST)
                    .throwIfAny();
        }

        FailedCases merged(FailedCases other) {
            return new FailedCases(count + other.count, KeptCase.first(first, other.first, MOST));
        }
    }

    /**
     * Copies the lists and checks that they speak of the same cases.
     *
     * @param identity what makes two parts belong to one study
     * @param cases the cases that were done, no case twice
     * @param failures the cases without a result
     * @param responses one for each response
     * @throws org.lifeline.base.InvalidInputException if a case is there twice or numbers of cases do not agree
     */
    public StudyPartial {
        Violations.required("identity", identity);
        Violations.requiredAll("cases", cases);
        Violations.required("failures", failures);
        Violations.requiredAll("responses", responses);
        cases = CaseRange.joined(cases);
        responses = List.copyOf(responses);
        long done = count(cases);
        Violations v = new Violations()
                .require(
                        responses.size() == identity.responses().size(),
                        "responses",
                        GivenValue.countOf(responses.size(), "responses"),
                        InputRule.NOT_THOSE_OF_STUDY,
                        identity.responses())
                .require(
                        failures.count() >= 0 && failures.count() <= done,
                        "failures",
                        GivenValue.count(failures.count()),
                        InputRule.MORE_THAN_DONE,
                        done);
        for (ResponsePartial r : responses) {
            v.require(
                            r.sums().count() <= done - failures.count(),
                            "responses",
                            GivenValue.count(r.sums().count()),
                            InputRule.MORE_THAN_RESULTS,
                            (done - failures.count()))
                    .require(
                            r.sums().sums().size() == identity.variables().size() + 1,
                            "responses",
                            GivenValue.countOf(r.sums().sums().size(), "sums"),
                            InputRule.SUMS_DIFFER);
        }
        v.throwIfAny();
    }

    private static long count(List<CaseRange> cases) {
        return cases.stream().mapToLong(CaseRange::size).sum();
    }

    /**
     * Number of cases that were done.
     *
     * @return the number, those that failed included
     */
    public long count() {
        return count(cases);
    }

    /**
     * This part and another one.
     *
     * @param other another part of the same study
     * @return both together
     * @throws org.lifeline.base.InvalidInputException if it belongs to another study, or a case stands in both
     */
    public StudyPartial merge(StudyPartial other) {
        Violations.required("other", other);
        identity.requireSame(other.identity);
        List<CaseRange> all = new ArrayList<>(cases);
        all.addAll(other.cases);
        List<ResponsePartial> list = new ArrayList<>();
        Iterator<ResponsePartial> second = other.responses.iterator();
        CaseRange.joined(all); // a case that stands in both is said before numbers of cases that do not agree
        for (ResponsePartial each : responses) {
            list.add(each.merged(second.next()));
        }
        return new StudyPartial(identity, all, failures.merged(other.failures), list);
    }
}
