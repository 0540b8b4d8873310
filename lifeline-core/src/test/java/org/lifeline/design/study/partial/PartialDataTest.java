package org.lifeline.design.study.partial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.LongStream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;

/** What is kept of a response: sums, counts, cases as drawn; what is read from outside is checked. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class PartialDataTest {
    private static final SortedMap<Integer, Long> NONE = new TreeMap<>();

    private static SortedMap<Integer, Long> bins(int bin, long number) {
        return new TreeMap<>(Map.of(bin, number));
    }

    private static void refused(ThrowingCallable call, String message) {
        assertThatThrownBy(call).isInstanceOf(InvalidInputException.class).hasMessage(message);
    }

    private static List<KeptCase> cases(long first, long last) {
        return LongStream.rangeClosed(first, last)
                .mapToObj(i -> new KeptCase(i, List.of((double) i, 2.0 * i), ""))
                .toList();
    }

    private static ResponsePartial response(long first, long last) {
        List<KeptCase> all = cases(first, last);
        return new ResponsePartial(
                MadeUpParts.counts(all),
                MadeUpParts.sums(all),
                all.subList(0, Math.min(all.size(), ResponsePartial.FIRST_CASES)));
    }

    // Sums.

    /** Gauss: 1 + … + n = n (n + 1)/2, squares n (n + 1) (2 n + 1)/6, in two parts. */
    @Test
    void mergedSumsAreTheSumsOfAllNumbers() {
        ExactSums both = MadeUpParts.sums(cases(1, 37)).merged(MadeUpParts.sums(cases(38, 100)));

        assertThat(both.count()).isEqualTo(100);
        assertThat(both.sums()).containsExactly(MadeUpParts.text(5050), MadeUpParts.text(10_100));
        assertThat(both.products())
                .containsExactly(
                        MadeUpParts.text(338_350), MadeUpParts.text(2 * 338_350), MadeUpParts.text(4 * 338_350));
    }

    @Test
    void mergingSumsIsCommutativeAndNothingAddsNothing() {
        ExactSums a = MadeUpParts.sums(cases(1, 3));
        ExactSums b = MadeUpParts.sums(cases(9, 20));
        ExactSums nothing = new ExactSums(0, List.of("0", "0"), List.of("0", "0", "0"));

        assertThat(a.merged(b)).isEqualTo(b.merged(a));
        assertThat(a.merged(nothing)).isEqualTo(a);
        assertThat(nothing.merged(a)).isEqualTo(a);
    }

    /** −31/8 and 31/8 cancel without a rest, and a tiny number beside a huge one is not lost. */
    @Test
    void sumsKnowNoRounding() {
        ExactSums a = new ExactSums(1, List.of("-1fp-3"), List.of("1p200"));
        ExactSums b = new ExactSums(1, List.of("1fp-3"), List.of("1p-200"));
        ExactSums c = new ExactSums(1, List.of("0"), List.of("-1p200"));

        assertThat(a.merged(b).sums()).containsExactly("0");
        assertThat(a.merged(b).merged(c).products()).containsExactly("1p-200");
    }

    /** A product beyond the range of doubles stays none, whatever is added. */
    @Test
    void aProductBeyondAllRangeStaysNone() {
        ExactSums beyond = new ExactSums(1, List.of("1p900"), List.of("NaN"));
        ExactSums plain = new ExactSums(1, List.of("1p1"), List.of("1p2"));

        assertThat(beyond.merged(plain).products()).containsExactly("NaN");
        assertThat(plain.merged(beyond).products()).containsExactly("NaN");
    }

    @Test
    void sumsThatCannotBeReadAreRefused() {
        refused(() -> new ExactSums(-1, List.of("0"), List.of("0")), "count: -1: must not be negative");
        refused(
                () -> new ExactSums(1, List.of("0", "0"), List.of("0", "0")),
                "sums: 2 products of 2 quantities; there are 3: must be sums as the library writes them");
        assertThatThrownBy(() -> new ExactSums(1, List.of("12"), List.of("0")))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("it has no power of two")
                .hasMessageEndingWith("must be sums as the library writes them");
        assertThatThrownBy(() -> new ExactSums(1, List.of("0"), List.of("xyp2")))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("sums: ");
        refused(() -> new ExactSums(1, null, List.of("0")), "sums: null: must be given");
        refused(() -> new ExactSums(1, List.of("0"), Arrays.asList("0", null)), "products[1]: null: must be given");
    }

    // Counts.

    @Test
    void valuesAreCountedOverBothSignsAndZero() {
        ValueCounts c = new ValueCounts(3, Interval.of(-2, 5), bins(16_095, 4), bins(6932, 2));
        assertThat(c.count()).isEqualTo(9);
        assertThat(new ValueCounts(0, Interval.exactly(0), NONE, NONE).count()).isZero();
    }

    @Test
    void mergedCountsAddBinByBinAndTheExtentHoldsBoth() {
        ValueCounts a = new ValueCounts(1, Interval.of(-2, 5), bins(100, 4), bins(-3, 2));
        SortedMap<Integer, Long> two = bins(100, 5);
        two.put(200, 1L);
        ValueCounts b = new ValueCounts(2, Interval.of(-1, 9), two, NONE);

        ValueCounts both = a.merged(b);

        assertThat(both.zeros()).isEqualTo(3);
        assertThat(both.extent()).isEqualTo(Interval.of(-2, 9));
        assertThat(both.positive()).containsExactly(Map.entry(100, 9L), Map.entry(200, 1L));
        assertThat(both.negative()).containsExactly(Map.entry(-3, 2L));
        assertThat(both).isEqualTo(b.merged(a));
        assertThat(both.count()).isEqualTo(a.count() + b.count());
    }

    /** The extent of no value, 0 to 0, must not widen one that lies away from zero. */
    @Test
    void noValueLeavesTheExtentAlone() {
        ValueCounts nothing = new ValueCounts(0, Interval.exactly(0), NONE, NONE);
        ValueCounts some = new ValueCounts(0, Interval.of(5, 6), bins(8047, 2), NONE);

        assertThat(some.merged(nothing)).isEqualTo(some);
        assertThat(nothing.merged(some)).isEqualTo(some);
        assertThat(nothing.merged(nothing)).isEqualTo(nothing);
    }

    /** The largest magnitude that is told apart is 1e12: bin ln(1e12)/ln g = 138,155, and one more for rounding. */
    @Test
    void binsBeyondTheRangeOfTheHistogramAreRefused() {
        Interval any = Interval.of(-1, 1);
        int last = (int) (Math.log(1e12) / Math.log(1.0001 / 0.9999) + 1);
        assertThat(new ValueCounts(0, any, bins(last, 1), bins(-last, 1)).count())
                .isEqualTo(2);
        refused(
                () -> new ValueCounts(0, any, bins(last + 1, 1), NONE),
                "positive: " + (last + 1) + ": must be the number of a bin");
        refused(
                () -> new ValueCounts(0, any, NONE, bins(-last - 1, 1)),
                "negative: " + (-last - 1) + ": must be the number of a bin");
        refused(() -> new ValueCounts(0, any, bins(7, 0), NONE), "positive[7]: 0: must be a finite number above zero");
        refused(
                () -> new ValueCounts(-1, any, NONE, bins(7, -2)),
                "zeros: -1: must not be negative; negative[7]: -2: must be a finite number above zero");
        refused(() -> new ValueCounts(0, null, NONE, NONE), "extent: null: must be given");
    }

    @Test
    void countsAreCopiedAndCannotBeChanged() {
        SortedMap<Integer, Long> mine = bins(7, 1);
        ValueCounts c = new ValueCounts(0, Interval.of(1, 1), mine, NONE);
        mine.put(8, 1L);

        assertThat(c.count()).isEqualTo(1);
        assertThatThrownBy(() -> c.positive().put(9, 1L)).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> c.negative().put(9, 1L)).isInstanceOf(UnsupportedOperationException.class);
    }

    // Cases as drawn.

    @Test
    void theCasesWithTheLeastNumbersAreKept() {
        List<KeptCase> late = cases(5, 9);
        List<KeptCase> early = cases(1, 4);

        assertThat(KeptCase.first(late, early, 6)).isEqualTo(cases(1, 6));
        assertThat(KeptCase.first(early, late, 6)).isEqualTo(cases(1, 6));
        assertThat(KeptCase.first(early, late, 100)).isEqualTo(cases(1, 9));
        assertThat(KeptCase.first(early, late, 0)).isEmpty();
    }

    @Test
    void aKeptCaseHoldsACopy() {
        List<Double> values = new ArrayList<>(List.of(1.0));
        KeptCase c = new KeptCase(1, values, "");
        values.set(0, 2.0);
        assertThat(c.values()).containsExactly(1.0);
        refused(() -> new KeptCase(1, Arrays.asList(1.0, null), ""), "values[1]: null: must be given");
        refused(() -> new KeptCase(1, List.of(), null), "reason: null: must be given");
    }

    /** 4,096 cases are kept: one less, just so many, one more. */
    @Test
    void theFirstCasesAreKeptAndNoMore() {
        int most = ResponsePartial.FIRST_CASES;
        assertThat(most).isEqualTo(4096);
        for (int more = -1; more <= 1; more++) {
            ResponsePartial r = response(1, most - 10).merged(response(most - 9, most + more));
            assertThat(r.first()).hasSize(Math.min(most, most + more));
            assertThat(r.sums().count()).isEqualTo(most + more);
            assertThat(r).isEqualTo(response(1, most + more));
        }
    }

    @Test
    void aResponseWhosePartsDisagreeIsRefused() {
        List<KeptCase> three = cases(1, 3);
        ValueCounts counts = MadeUpParts.counts(three);
        ExactSums sums = MadeUpParts.sums(three);
        refused(
                () -> new ResponsePartial(counts, MadeUpParts.sums(cases(1, 2)), cases(1, 2)),
                "count: 2: must be that of the bins, 3");
        refused(
                () -> new ResponsePartial(counts, sums, cases(1, 2)),
                "first: 2 cases: must be all cases with a value, up to 4096");
        refused(
                () -> new ResponsePartial(counts, sums, cases(1, 4)),
                "first: 4 cases: must be all cases with a value, up to 4096");
        List<KeptCase> odd = new ArrayList<>(cases(1, 2));
        odd.add(new KeptCase(3, List.of(3.0), ""));
        refused(() -> new ResponsePartial(counts, sums, odd), "first: values: must be those of 2 quantities each");
    }

    @Test
    void aThousandFailuresAreKept() {
        int most = StudyPartial.FailedCases.MOST;
        assertThat(most).isEqualTo(1000);
        StudyPartial.FailedCases a = new StudyPartial.FailedCases(600, cases(1, 600));
        for (int more = 399; more <= 401; more++) {
            StudyPartial.FailedCases b = new StudyPartial.FailedCases(more, cases(601, 600 + more));
            assertThat(b.merged(a).count()).isEqualTo(600 + more);
            assertThat(b.merged(a).first()).isEqualTo(cases(1, Math.min(1000, 600 + more)));
            assertThat(a.merged(b)).isEqualTo(b.merged(a));
        }
        refused(
                () -> new StudyPartial.FailedCases(4, cases(1, 3)),
                "failures: 3 cases: must be all 4 that failed, up to 1000");
        refused(
                () -> new StudyPartial.FailedCases(1001, cases(1, 1001)),
                "failures: 1001 cases: must be all 1001 that failed, up to 1000");
        refused(
                () -> new StudyPartial.FailedCases(-1, List.of()),
                "failures: 0 cases: must be all -1 that failed, up to 1000");
    }
}
