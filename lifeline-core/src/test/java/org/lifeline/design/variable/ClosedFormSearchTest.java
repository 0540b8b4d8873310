package org.lifeline.design.variable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.lifeline.design.variable.PlainSearch.BASE;
import static org.lifeline.design.variable.PlainSearch.run;
import static org.lifeline.design.variable.PlainSearch.search;
import static org.lifeline.design.variable.PlainSearch.span;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.Interval;
import org.lifeline.base.Refusal;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.variable.FeasibleInterval.Closure;

/** Feasible ranges that are known in closed form: each end, what closes it, and what is said where there is none. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class ClosedFormSearchTest {
    private static final Interval UNIT = Interval.of(0, 1);
    /** Ends are found to 2e-4 of the range of the variable, on the feasible side. */
    private static final double ACCURACY = 2e-4;

    private static FeasibleInterval only(FeasibleResult r) {
        assertThat(r.intervals()).hasSize(1);
        assertThat(r.noneBecause()).isEmpty();
        assertThat(r.isComplete()).isTrue();
        return r.intervals().get(0);
    }

    @ParameterizedTest
    @CsvSource({"5, 20, 10", "9, 11, 10.3", "1, 100, 77", "2, 3, 2.0005"})
    void aLengthIsFeasibleUpToItsLimit(double low, double high, double most) {
        DesignVariable v = DesignVariables.spanLength(1, Interval.of(low, high));
        FeasibleInterval i = only(search(span(most)).solve(BASE, v));
        assertThat(i.low().value()).isEqualTo(low);
        assertThat(i.low().closure()).isEqualTo(Closure.BOUND);
        assertThat(i.low().by()).isEmpty();
        assertThat(i.high().value()).isLessThanOrEqualTo(most).isCloseTo(most, within(ACCURACY * (high - low)));
        assertThat(i.high().closure()).isEqualTo(Closure.CRITERION);
        assertThat(i.high().by()).isEqualTo("span");
        assertThat(i.high().trial().isFeasible()).isTrue();
        assertThat(i.contains(low)).isTrue();
        assertThat(i.contains(i.high().value())).isTrue();
        assertThat(i.contains(Math.nextUp(i.high().value()))).isFalse();
        assertThat(i.contains(Math.nextDown(low))).isFalse();
    }

    @ParameterizedTest
    @CsvSource({"1e4, 1e5, 16e3", "1e4, 1e5, 9e4", "100, 1e6, 3500"})
    void aStrengthIsFeasibleFromItsLimitOn(double low, double high, double least) {
        Criterion c = Criterion.stated("capacity", CheckedQuantity.ANCHOR_CAPACITY, least, "test");
        FeasibleInterval i = only(search(c).solve(BASE, DesignVariables.anchorCapacity(Interval.of(low, high))));
        assertThat(i.low().value())
                .isGreaterThanOrEqualTo(least * (1 - 1e-12))
                .isCloseTo(least, within(ACCURACY * (high - low)));
        assertThat(i.low().by()).isEqualTo("capacity");
        assertThat(i.high().value()).isEqualTo(high);
        assertThat(i.high().closure()).isEqualTo(Closure.BOUND);
    }

    @Test
    void aRangeThatIsFeasibleThroughoutIsClosedByItsBoundsAlone() {
        FeasibleInterval i = only(search(span(50)).solve(BASE, DesignVariables.spanLength(1, Interval.of(5, 20))));
        assertThat(i.low().closure()).isEqualTo(Closure.BOUND);
        assertThat(i.high().closure()).isEqualTo(Closure.BOUND);
        assertThat(i.high().value()).isEqualTo(20);
    }

    /** The tighter of two limits closes the range and is named, in whichever order they are given. */
    @Test
    void theTighterOfTwoCriteriaCloses() {
        Criterion line = Criterion.stated("line", CheckedQuantity.LINE_LENGTH, 9, "test");
        DesignVariable v = DesignVariables.spanLength(1, Interval.of(5, 20));
        for (FeasibleSearch s : List.of(search(line, span(10)), search(span(10), line))) {
            FeasibleInterval i = only(s.solve(BASE, v));
            assertThat(i.high().by()).isEqualTo("line");
            assertThat(i.high().value()).isCloseTo(9, within(ACCURACY * 15));
        }
    }

    /** 8 + 4 sin v is at most 10 outside of the arcs where sin v exceeds a half: π/6 to 5π/6 and 2π later. */
    @Test
    void rangesApartFromEachOther() {
        double width = 4 * Math.PI;
        DesignVariable v = run(Interval.of(0, width), x -> 8 + 4 * Math.sin(x));
        FeasibleResult r = search(span(10)).withSamples(25).solve(BASE, v);
        double[] ends = {0, Math.PI / 6, 5 * Math.PI / 6, 13 * Math.PI / 6, 17 * Math.PI / 6, width};
        assertThat(r.intervals()).hasSize(3);
        for (int i = 0; i < 3; i++) {
            assertThat(r.intervals().get(i).low().value()).isCloseTo(ends[2 * i], within(ACCURACY * width));
            assertThat(r.intervals().get(i).high().value()).isCloseTo(ends[2 * i + 1], within(ACCURACY * width));
        }
    }

    /** 10 (1 + 9 (v - 0.43)² - 0.01): below 10 only within 1/30 of 0.43, between the samples at 0.375 and 0.5. */
    @Test
    void aDipBetweenTwoSamplesIsFound() {
        DesignVariable v = run(UNIT, x -> 10 * (0.99 + 9 * (x - 0.43) * (x - 0.43)));
        FeasibleInterval i = only(search(span(10)).solve(BASE, v));
        assertThat(i.low().value()).isCloseTo(0.43 - 1.0 / 30, within(ACCURACY));
        assertThat(i.high().value()).isCloseTo(0.43 + 1.0 / 30, within(ACCURACY));
        assertThat(i.low().closure()).isEqualTo(Closure.CRITERION);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.3, 0.5, 0.871})
    void aJumpIsFoundToTheLastDigitsAndSaysSo(double at) {
        FeasibleInterval up = only(search(span(10)).solve(BASE, run(UNIT, x -> x < at ? 8 : 20)));
        assertThat(up.high().closure()).isEqualTo(Closure.JUMP);
        assertThat(up.high().by()).isEqualTo("span");
        assertThat(up.high().value()).isLessThan(at).isCloseTo(at, within(ACCURACY));
        FeasibleInterval down = only(search(span(10)).solve(BASE, run(UNIT, x -> x > at ? 8 : 20)));
        assertThat(down.low().closure()).isEqualTo(Closure.JUMP);
        assertThat(down.low().value()).isGreaterThan(at).isCloseTo(at, within(ACCURACY));
    }

    /** 50 kN times the lowest efficiency of 0.8 is 40 kN: beyond it the pretension is refused, whatever the criteria. */
    @Test
    void whereNoDesignCanBeMadeTheRangeEndsWithTheReason() {
        FeasibleResult r = search(span(10)).solve(BASE, DesignVariables.pretension(Interval.of(1000, 90_000)));
        FeasibleInterval i = only(r);
        assertThat(i.high().value()).isLessThanOrEqualTo(40_000).isCloseTo(40_000, within(1e-3));
        assertThat(i.high().closure()).isEqualTo(Closure.FAILURE);
        assertThat(i.high().by()).contains("is more than cable and terminations hold, 40000.0 N");
        Trial last = r.trials().get(r.trials().size() - 1);
        assertThat(last.value()).isEqualTo(90_000);
        assertThat(last.ratio()).isInfinite();
        assertThat(last.isFeasible()).isFalse();
        assertThat(last.governing()).isEmpty();
    }

    @Test
    void wholeNumbersAreTriedEachAndEndInAJump() {
        Criterion three = Criterion.stated("three", CheckedQuantity.WORKERS, 3, "test");
        FeasibleResult r = search(three).solve(BASE, DesignVariables.workersTogether(Interval.of(0.5, 6.5)));
        FeasibleInterval i = only(r);
        assertThat(r.trials()).extracting(Trial::value).containsExactly(1.0, 2.0, 3.0, 4.0, 5.0, 6.0);
        assertThat(r.trials()).extracting(Trial::ratio).containsExactly(1 / 3.0, 2 / 3.0, 1.0, 4 / 3.0, 5 / 3.0, 2.0);
        assertThat(i.low().value()).isEqualTo(1);
        assertThat(i.high().value()).isEqualTo(3);
        assertThat(i.high().closure()).isEqualTo(Closure.JUMP);
        assertThat(i.high().by()).isEqualTo("three");
    }

    @Test
    void aRangeOfNoWidthIsOneTrial() {
        DesignVariable v = DesignVariables.spanLength(1, Interval.exactly(9));
        FeasibleResult met = search(span(10)).solve(BASE, v);
        assertThat(met.trials()).containsExactly(new Trial(9, 0.9, "span", ""));
        assertThat(only(met).low().value()).isEqualTo(9);
        assertThat(only(met).high().value()).isEqualTo(9);
    }

    @Test
    void whereNoneIsFeasibleTheLeastBadIsTold() {
        FeasibleResult r = search(span(10)).solve(BASE, DesignVariables.spanLength(1, Interval.of(12, 20)));
        assertThat(r.intervals()).isEmpty();
        assertThat(r.best()).isEqualTo(new Trial(12, 1.2, "span", ""));
        assertThat(r.noneBecause())
                .contains("no value of length of span 1 [m] from 12.000 to 20.000 meets all criteria; the least bad is"
                        + " 12.000, where span has a ratio of demand to capacity of 1.2000");
        assertThat(r.isComplete()).isTrue();
        assertThat(r.variable().name()).isEqualTo("length of span 1");
    }

    @Test
    void whereNothingCanBeAnalysedTheReasonIsThatOfADesign() {
        FeasibleResult r = search(span(10)).solve(BASE, DesignVariables.pretension(Interval.of(50_000, 90_000)));
        assertThat(r.noneBecause().orElseThrow())
                .startsWith("no value of pretension [N] that was tried makes a design that can be analysed; at 50000: ")
                .contains("is more than cable and terminations hold");
    }

    @Test
    void aCriterionThatIsNeverEvaluatedIsNamedAndDecidesNothing() {
        Criterion diameter = Criterion.stated("thick", CheckedQuantity.CABLE_DIAMETER, 0.012, "test");
        DesignVariable v = DesignVariables.spanLength(1, Interval.of(5, 20));
        FeasibleResult r = search(diameter, span(10)).solve(BASE, v);
        assertThat(r.notEvaluated()).containsExactly("thick: cable: its diameter is not given");
        assertThat(only(r).high().by()).isEqualTo("span");
        FeasibleResult nothing = search(diameter).solve(BASE, v);
        assertThat(nothing.noneBecause().orElseThrow())
                .contains("no criterion could be evaluated: {thick=cable: its diameter is not given}");
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 4})
    void aSearchThatIsStoppedKeepsItsTrials(int stop) {
        List<Long> done = new ArrayList<>();
        FeasibleResult r = search(span(10))
                .withProgress((n, total) -> {
                    done.add(n);
                    assertThat(total).isGreaterThanOrEqualTo(n).isGreaterThanOrEqualTo(9);
                    return n < stop;
                })
                .solve(BASE, DesignVariables.spanLength(1, Interval.of(12, 20)));
        assertThat(r.isComplete()).isFalse();
        assertThat(r.trials()).hasSize(stop);
        assertThat(done).hasSize(stop).isSorted();
        assertThat(r.noneBecause())
                .contains("the search was ended after " + stop
                        + " values of length of span 1 [m], none of which meets all"
                        + " criteria; of the others it says nothing");
    }

    @Test
    void trialsAreSortedByTheirValueAndCannotBeChanged() {
        FeasibleResult r = search(span(10)).solve(BASE, DesignVariables.spanLength(1, Interval.of(5, 20)));
        assertThat(r.trials())
                .extracting(Trial::value)
                .isSorted()
                .startsWith(5.0)
                .endsWith(20.0);
        assertThat(r.trials())
                .allSatisfy(t -> assertThat(t.ratio()).isCloseTo(t.value() / 10, within(1e-12)))
                .allSatisfy(t -> assertThat(t.governing()).isEqualTo("span"));
        assertThatThrownBy(() -> r.trials().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> r.intervals().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThat(r.best().value()).isEqualTo(5);
    }

    @Test
    void aLogarithmicVariableHasTheSameEnds() {
        DesignVariable v = DesignVariables.spanLength(1, Interval.of(2, 200)).logarithmic();
        FeasibleInterval i = only(search(span(10)).solve(BASE, v));
        // 2e-4 of the share of ln(200/2) is 9e-4 of the value.
        assertThat(i.high().value()).isLessThanOrEqualTo(10).isCloseTo(10, within(0.0093));
    }

    @Test
    void settingsAreRefusedByName() {
        FeasibleSearch s = search(span(10));
        DesignVariable v = DesignVariables.spanLength(1, UNIT);
        assertThat(Refusal.of(() -> FeasibleSearch.withCriteria(List.of())))
                .containsExactly("criteria: []: must name at least one criterion");
        assertThat(Refusal.paths(() -> FeasibleSearch.withCriteria(null))).containsExactly("criteria");
        assertThat(Refusal.paths(() -> FeasibleSearch.withCriteria(Arrays.asList(span(1), null))))
                .containsExactly("criteria[1]");
        assertThat(Refusal.of(() -> s.withSamples(2))).containsExactly("samples: 2: must be at least 3");
        assertThat(Refusal.paths(() -> s.withAnalysis(null))).containsExactly("analysis");
        assertThat(Refusal.paths(() -> s.withExecutor(null))).containsExactly("executor");
        assertThat(Refusal.paths(() -> s.withProgress(null))).containsExactly("progress");
        assertThat(Refusal.paths(() -> s.solve(null, v))).containsExactly("base");
        assertThat(Refusal.paths(() -> s.solve(BASE, null))).containsExactly("variable");
    }

    @Test
    void moreSamplesAreTakenAtEqualDistances() {
        DesignVariable v = DesignVariables.spanLength(1, Interval.of(12, 20));
        assertThat(search(span(10)).withSamples(3).solve(BASE, v).trials())
                .extracting(Trial::value)
                .contains(12.0, 16.0, 20.0);
        assertThat(search(span(10)).solve(BASE, v).trials())
                .extracting(Trial::value)
                .contains(12.0, 13.0, 14.0, 15.0, 16.0, 17.0, 18.0, 19.0, 20.0);
    }

    @Test
    void anInterruptedSearchWithoutATrialIsCancelled() {
        FeasibleSearch s = search(span(10)).withAnalysis(design -> {
            throw new CancellationException("interrupted");
        });
        assertThatThrownBy(() -> s.solve(BASE, DesignVariables.spanLength(1, Interval.of(5, 20))))
                .isInstanceOf(CancellationException.class)
                .hasMessage("the search was interrupted before a value of length of span 1 [m] was tried");
    }
}
