package org.lifeline.design.study.partial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.lifeline.base.InvalidInputException;

/** Parts of a study put together, against one part that holds all cases. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class StudyPartialTest {
    private static final StudyPartial.FailedCases NONE = new StudyPartial.FailedCases(0, List.of());

    private static void refused(ThrowingCallable call, String message) {
        assertThatThrownBy(call).isInstanceOf(InvalidInputException.class).hasMessage(message);
    }

    private static StudyPartial of(StudyIdentity identity) {
        StudyPartial p = MadeUpParts.part(101, 110);
        return new StudyPartial(identity, p.cases(), p.failures(), p.responses());
    }

    /** Cut in nine, put together pairwise in random order: always the same as all cases in one part. */
    @Test
    void anyOrderAndGroupingGivesTheWhole() {
        StudyPartial whole = MadeUpParts.part(1, 200);
        for (long seed = 0; seed < 30; seed++) {
            Random random = new Random(seed);
            List<StudyPartial> parts = new ArrayList<>();
            CaseRange.parts(200, 9).forEach(r -> parts.add(MadeUpParts.part(r.first(), r.last())));
            Collections.shuffle(parts, random);
            while (parts.size() > 1) {
                StudyPartial a = parts.remove(random.nextInt(parts.size()));
                StudyPartial b = parts.remove(random.nextInt(parts.size()));
                parts.add(a.merge(b));
            }
            assertThat(parts.get(0)).as("seed %d", seed).isEqualTo(whole);
        }
    }

    @Test
    void mergingIsAssociative() {
        StudyPartial a = MadeUpParts.part(1, 13);
        StudyPartial b = MadeUpParts.part(30, 44);
        StudyPartial c = MadeUpParts.part(14, 26);

        assertThat(a.merge(b).merge(c)).isEqualTo(a.merge(b.merge(c)));
        assertThat(a.merge(b).merge(c).cases()).containsExactly(new CaseRange(1, 26), new CaseRange(30, 44));
    }

    /** Of 1 … 26 the cases 13 and 26 fail, five of the others, 5 … 25, have no value. */
    @Test
    void failuresAndMissingValuesAreCountedApart() {
        StudyPartial p = MadeUpParts.part(1, 12).merge(MadeUpParts.part(13, 26));

        assertThat(p.count()).isEqualTo(26);
        assertThat(p.failures().count()).isEqualTo(2);
        assertThat(p.failures().first())
                .extracting(KeptCase::reason)
                .containsExactly("no equilibrium in case 13", "no equilibrium in case 26");
        assertThat(p.responses().get(0).counts().count()).isEqualTo(26 - 2 - 5);
        // 7, 14 and 21 are zeros; so is 11 − n² mod 23 where that rest is 11, which no square has.
        assertThat(p.responses().get(0).counts().zeros()).isEqualTo(3);
    }

    @Test
    void aPartWithoutCasesChangesNothing() {
        StudyPartial a = MadeUpParts.part(1, 20);
        ResponsePartial empty =
                new ResponsePartial(MadeUpParts.counts(List.of()), MadeUpParts.sums(List.of()), List.of());
        StudyPartial nothing = new StudyPartial(MadeUpParts.IDENTITY, List.of(), NONE, List.of(empty));

        assertThat(nothing.count()).isZero();
        assertThat(a.merge(nothing)).isEqualTo(a);
        assertThat(nothing.merge(a)).isEqualTo(a);
    }

    /** The case that is there twice is said, rather than that some numbers do not agree. */
    @Test
    void aCaseThatStandsInBothPartsIsNamed() {
        StudyPartial a = MadeUpParts.part(1, 20);
        refused(
                () -> a.merge(MadeUpParts.part(20, 25)),
                "cases: 20 … 25: must not be drawn twice: 1 … 20 are there already");
        refused(() -> a.merge(a), "cases: 1 … 20: must not be drawn twice: 1 … 20 are there already");
    }

    @Test
    void everythingThatDiffersFromTheStudyIsSaid() {
        StudyPartial a = MadeUpParts.part(1, 20);
        List<String> variables = MadeUpParts.IDENTITY.variables();
        List<String> responses = MadeUpParts.IDENTITY.responses();
        refused(
                () -> a.merge(of(new StudyIdentity(6, "walkway", variables, responses))),
                "seed: 6: must be that of the study, 5");
        refused(
                () -> a.merge(of(new StudyIdentity(5, "roof", variables, responses))),
                "study: roof: must be that of the study, walkway");
        refused(
                () -> a.merge(of(new StudyIdentity(5, "walkway", List.of("mass [kg]"), responses))),
                "variables: [mass [kg]]: must be those of the study, [pretension [N], uniform]");
        refused(
                () -> a.merge(of(new StudyIdentity(5, "walkway", variables, List.of("sag [m]")))),
                "responses: [sag [m]]: must be those of the study, [force [N]]");
        assertThatThrownBy(() -> a.merge(of(new StudyIdentity(6, "roof", variables, responses))))
                .hasMessageContaining("seed")
                .hasMessageContaining("study: roof");
    }

    @Test
    void aStudyHasVariablesAndResponses() {
        refused(
                () -> new StudyIdentity(1, "s", List.of(), List.of()),
                "variables: []: must name at least one variable; responses: []: must name at least one response");
        refused(
                () -> new StudyIdentity(1, "s", List.of("a"), List.of()),
                "responses: []: must name at least one response");
        refused(() -> new StudyIdentity(1, null, List.of("a"), List.of("b")), "study: null: must be given");
    }

    private static StudyPartial with(long last, long failed, List<ResponsePartial> responses) {
        List<KeptCase> failures = new ArrayList<>();
        for (long i = 1; i <= failed; i++) {
            failures.add(new KeptCase(i, List.of(0.0), "why"));
        }
        return new StudyPartial(
                MadeUpParts.IDENTITY,
                List.of(new CaseRange(1, last)),
                new StudyPartial.FailedCases(failed, failures),
                responses);
    }

    private static ResponsePartial values(int number) {
        List<KeptCase> cases = new ArrayList<>();
        for (long i = 1; i <= number; i++) {
            cases.add(new KeptCase(i, List.of(1.0, 2.0), ""));
        }
        return new ResponsePartial(MadeUpParts.counts(cases), MadeUpParts.sums(cases), cases);
    }

    /** Ten cases: failures and values together may be ten, not eleven. */
    @Test
    void thereAreNoMoreValuesThanCasesWithAResult() {
        assertThat(with(10, 4, List.of(values(6))).count()).isEqualTo(10);
        assertThat(with(10, 10, List.of(values(0))).failures().count()).isEqualTo(10);
        refused(() -> with(10, 4, List.of(values(7))), "responses: 7: must be at most the cases that have a result, 6");
        assertThatThrownBy(() -> with(10, 11, List.of(values(0))))
                .hasMessageContaining("failures: 11: must be at most the cases that were done, 10");
    }

    @Test
    void eachResponseOfTheStudyIsThereWithSumsOfAllVariables() {
        refused(() -> with(3, 0, List.of()), "responses: 0 responses: must be those of the study, [force [N]]");
        refused(
                () -> with(3, 0, List.of(values(3), values(3))),
                "responses: 2 responses: must be those of the study, [force [N]]");
        ResponsePartial bare = new ResponsePartial(
                values(1).counts(),
                new ExactSums(1, List.of("1p1"), List.of("1p2")),
                List.of(new KeptCase(1, List.of(2.0), "")));
        refused(() -> with(3, 0, List.of(bare)), "responses: 1 sums: must be those of the variables and the response");
    }

    @Test
    void aPartCannotBeChanged() {
        List<CaseRange> ranges = new ArrayList<>(List.of(new CaseRange(4, 6), new CaseRange(1, 3)));
        StudyPartial p = new StudyPartial(MadeUpParts.IDENTITY, ranges, NONE, List.of(values(2)));
        ranges.clear();

        assertThat(p.cases()).containsExactly(new CaseRange(1, 6));
        assertThatThrownBy(() -> p.cases().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> p.responses().clear()).isInstanceOf(UnsupportedOperationException.class);
        refused(() -> p.merge(null), "other: null: must be given");
    }
}
