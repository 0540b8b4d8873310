package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The numbers that a rule allows: at each end the number itself and its two neighbours among the doubles. */
class AllowedRangeTest {
    /** Below, at and above both ends of every way to make a range, written as six letters y or n. */
    private static String ends(AllowedRange range, double low, double high) {
        StringBuilder b = new StringBuilder();
        for (double end : new double[] {low, high}) {
            for (double value : new double[] {Math.nextDown(end), end, Math.nextUp(end)}) {
                b.append(range.contains(value) ? 'y' : 'n');
            }
        }
        return b.toString();
    }

    @Test
    void anIntervalIsTakenWithItsEndsOrWithoutThem() {
        Interval i = Interval.of(-2, 3);
        assertThat(ends(AllowedRange.within(i), -2, 3)).isEqualTo("nyyyyn");
        assertThat(ends(AllowedRange.inside(i), -2, 3)).isEqualTo("nnyynn");
    }

    @Test
    void aBoundOnOneSideLeavesTheOtherSideOpenToEveryFiniteNumber() {
        assertThat(ends(AllowedRange.above(5), 5, Double.MAX_VALUE)).isEqualTo("nnyyyn");
        assertThat(ends(AllowedRange.atLeast(5), 5, Double.MAX_VALUE)).isEqualTo("nyyyyn");
        assertThat(ends(AllowedRange.atMost(5), -Double.MAX_VALUE, 5)).isEqualTo("nyyyyn");
        assertThat(ends(AllowedRange.finite(), -Double.MAX_VALUE, Double.MAX_VALUE))
                .isEqualTo("nyyyyn");
    }

    @Test
    void anUpperBoundPutOntoARangeKeepsItsLowerEnd() {
        assertThat(ends(AllowedRange.above(1).upTo(4), 1, 4)).isEqualTo("nnyyyn");
        assertThat(ends(AllowedRange.atLeast(1).upTo(4), 1, 4)).isEqualTo("nyyyyn");
        assertThat(ends(AllowedRange.atMost(9).upTo(4), -Double.MAX_VALUE, 4)).isEqualTo("nyyyyn");
        assertThat(ends(AllowedRange.inside(Interval.of(1, 9)).upTo(4), 1, 4)).isEqualTo("nnyyyn");
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void whatIsNotFiniteIsInNoRange(double value) {
        for (AllowedRange range : List.of(
                AllowedRange.finite(),
                AllowedRange.above(-1),
                AllowedRange.atLeast(-1),
                AllowedRange.atMost(1),
                AllowedRange.within(Interval.of(-1, 1)),
                AllowedRange.inside(Interval.of(-1, 1)))) {
            assertThat(range.contains(value)).as("%s in %s", value, range).isFalse();
        }
    }

    @Test
    void aRangeOfOneNumberHoldsItOnlyWithItsEnds() {
        Interval one = Interval.exactly(0.25);
        assertThat(AllowedRange.within(one).contains(0.25)).isTrue();
        assertThat(AllowedRange.inside(one).contains(0.25)).isFalse();
    }

    @Test
    void bothZerosAreTheSameNumber() {
        assertThat(AllowedRange.above(0).contains(-0.0)).isFalse();
        assertThat(AllowedRange.atLeast(0).contains(-0.0)).isTrue();
        assertThat(AllowedRange.atMost(-0.0).contains(0)).isTrue();
    }

    @Test
    void aRangeIsWrittenAsMathematiciansWriteIt() {
        assertThat(AllowedRange.finite()).hasToString("(-Infinity, Infinity)");
        assertThat(AllowedRange.above(0)).hasToString("(0.0, Infinity)");
        assertThat(AllowedRange.atLeast(0)).hasToString("[0.0, Infinity)");
        assertThat(AllowedRange.atMost(2)).hasToString("(-Infinity, 2.0]");
        assertThat(AllowedRange.within(Interval.of(-1, 2))).hasToString("[-1.0, 2.0]");
        assertThat(AllowedRange.inside(Interval.of(-1, 2))).hasToString("(-1.0, 2.0)");
    }

    @Test
    void rangesAreEqualWhenTheirEndsAre() {
        assertThat(AllowedRange.above(0)).isEqualTo(AllowedRange.above(0)).hasSameHashCodeAs(AllowedRange.above(0));
        assertThat(AllowedRange.above(0)).isNotEqualTo(AllowedRange.atLeast(0)).isNotEqualTo(AllowedRange.above(1));
        assertThat(AllowedRange.above(0).upTo(1)).isNotEqualTo(AllowedRange.above(0));
    }

    /** What a check lets pass is what the range of its refusal contains, for numbers around zero and the largest. */
    @ParameterizedTest
    @CsvSource({
        "0",
        "-0.0",
        "4.9e-324",
        "-4.9e-324",
        "1",
        "-1",
        "1.7976931348623157e308",
        "-1.7976931348623157e308",
        "NaN",
        "Infinity",
        "-Infinity"
    })
    void checksAndTheirRangesAgree(double value) {
        Violations positive = new Violations().positive("p", value, "N");
        Violations notNegative = new Violations().notNegative("p", value, "N");
        Violations finite = new Violations().finite("p", value, "N");
        assertThat(positive.isEmpty()).isEqualTo(AllowedRange.above(0).contains(value));
        assertThat(notNegative.isEmpty()).isEqualTo(AllowedRange.atLeast(0).contains(value));
        assertThat(finite.isEmpty()).isEqualTo(AllowedRange.finite().contains(value));
        positive.list()
                .forEach(v ->
                        assertThat(v.allowed().orElseThrow().contains(value)).isFalse());
        notNegative
                .list()
                .forEach(v ->
                        assertThat(v.allowed().orElseThrow().contains(value)).isFalse());
        finite.list()
                .forEach(v ->
                        assertThat(v.allowed().orElseThrow().contains(value)).isFalse());
    }
}
