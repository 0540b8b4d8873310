package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every check of the collection of violations: what passes, what does not, and what the refusal tells a program. */
class ViolationsChecksTest {
    private static List<Violation> found(UnaryOperator<Violations> check) {
        Violations v = new Violations();
        assertThat(check.apply(v)).as("checks can be chained").isSameAs(v);
        return v.list();
    }

    @ParameterizedTest
    @CsvSource({"3, true", "4, true", "2, false", "-9223372036854775808, false"})
    void aWholeNumberIsNotBelowItsBound(long value, boolean good) {
        List<Violation> list = found(v -> v.atLeast("workers", value, 3));
        assertThat(list.isEmpty()).isEqualTo(good);
        for (Violation each : list) {
            assertThat(each).hasToString("workers: " + value + ": must be at least 3");
            assertThat(each.code()).isEqualTo(InputRule.BELOW_LEAST);
            assertThat(each.allowed()).contains(AllowedRange.atLeast(3));
        }
    }

    @ParameterizedTest
    @CsvSource({"1, true", "5, true", "0, false", "6, false", "-1, false"})
    void theNumberOfSomethingLiesBetweenTheFirstAndTheLast(long value, boolean good) {
        List<Violation> list = found(v -> v.numbered("span", value, Interval.of(1, 5), InputRule.NO_SUCH_SPAN));
        assertThat(list.isEmpty()).isEqualTo(good);
        for (Violation each : list) {
            assertThat(each).hasToString("span: " + value + ": must be a span from 1 to 5");
            assertThat(each.number()).hasValue((double) value);
            assertThat(each.allowed()).contains(AllowedRange.within(Interval.of(1, 5)));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "\t", "\u2003"})
    void aBlankNameIsShownInQuotes(String name) {
        assertThat(found(v -> v.named("id", name)))
                .extracting(Violation::toString)
                .containsExactly("id: \"" + name + "\": must not be blank");
    }

    @Test
    void aNameIsNeededAndAnyLetterWillDo() {
        assertThat(found(v -> v.named("id", null)))
                .extracting(Violation::toString)
                .containsExactly("id: missing: must be given");
        assertThat(found(v -> v.named("id", "桥"))).isEmpty();
        assertThat(found(v -> v.named("id", " a "))).isEmpty();
    }

    @Test
    void numbersAreRefusedWithRuleUnitAndRange() {
        Violation positive = found(v -> v.positive("force", 0, "N")).get(0);
        assertThat(positive).hasToString("force: 0.0 N: must be a finite number above zero");
        assertThat(positive.allowed()).contains(AllowedRange.above(0));
        Violation notNegative = found(v -> v.notNegative("length", -1e-9, "m")).get(0);
        assertThat(notNegative).hasToString("length: -1.0E-9 m: must be a finite number that is not negative");
        assertThat(notNegative.allowed()).contains(AllowedRange.atLeast(0));
        Violation finite = found(v -> v.finite("x", Double.NaN, "m")).get(0);
        assertThat(finite).hasToString("x: NaN m: must be a finite number");
        assertThat(finite.allowed()).contains(AllowedRange.finite());
        assertThat(finite.number()).isEmpty();
    }

    @Test
    void aConditionThatHoldsAddsNothingAndOneThatFailsAddsItsRule() {
        assertThat(found(v -> v.require(true, "a", GivenValue.count(1), InputRule.BLANK)))
                .isEmpty();
        assertThat(found(v -> v.require(false, "a", GivenValue.count(1), InputRule.ABOVE_MOST, 0)))
                .extracting(Violation::toString)
                .containsExactly("a: 1: must be at most 0");
        assertThat(found(v -> v.require(true, "a", "1", "must be 2"))).isEmpty();
        assertThat(found(v -> v.require(false, "a", "1", "must be 2")))
                .extracting(Violation::toString)
                .containsExactly("a: 1: must be 2");
    }

    @Test
    void violationsOfAPartAreMovedBelowItInTheirOrder() {
        List<Violation> part =
                List.of(new Violation("mass", "1", "x"), new Violation("[0]", "2", "y"), new Violation("", "3", "z"));
        assertThat(found(v -> v.addAll(part, "worker[1]")))
                .extracting(Violation::path)
                .containsExactly("worker[1].mass", "worker[1][0]", "worker[1]");
        assertThat(found(v -> v.addAll(part, ""))).isEqualTo(part);
    }

    @Test
    void whatMustNotBeNullComesBackOrIsRefusedByItsPath() {
        assertThat(Violations.required("line", "x")).isEqualTo("x");
        assertThat(Refusal.of(() -> Violations.required("line", null))).containsExactly("line: null: must be given");
    }

    @Test
    void theFirstMissingElementIsRefusedByItsNumber() {
        List<String> good = List.of("a", "b");
        assertThat(Violations.requiredAll("list", good)).isSameAs(good);
        assertThat(Violations.requiredAll("list", Set.of())).isEmpty();
        assertThat(Refusal.of(() -> Violations.requiredAll("list", null))).containsExactly("list: null: must be given");
        assertThat(Refusal.of(() -> Violations.requiredAll("list", Arrays.asList("a", null, null))))
                .containsExactly("list[1]: null: must be given");
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, 3, Integer.MAX_VALUE, Integer.MIN_VALUE})
    void anIndexBeyondTheListIsRefused(int index) {
        assertThatThrownBy(() -> Violations.requiredIndex("piece", index, 3))
                .isInstanceOfSatisfying(InvalidInputException.class, e -> {
                    Violation v = e.violations().get(0);
                    assertThat(v).hasToString("piece: " + index + ": must be a number from 0 to 2");
                    assertThat(v.allowed()).contains(AllowedRange.within(Interval.of(0, 2)));
                });
    }

    @Test
    void indicesOfTheListComeBackAndAnEmptyListHasNone() {
        assertThat(Violations.requiredIndex("piece", 0, 3)).isZero();
        assertThat(Violations.requiredIndex("piece", 2, 3)).isEqualTo(2);
        assertThat(Violations.requiredIndex("piece", 0, 1)).isZero();
        assertThatThrownBy(() -> Violations.requiredIndex("piece", 0, 0))
                .isInstanceOfSatisfying(
                        InvalidInputException.class,
                        e -> assertThat(e.violations().get(0).allowed())
                                .as("no number is allowed")
                                .isEmpty());
    }

    @Test
    void theExceptionTellsAllViolationsOfACheckInTheirOrder() {
        Violations v = new Violations().missing("cable").positive("mass", -1, "kg");
        assertThatThrownBy(v::throwIfAny)
                .isInstanceOf(IllegalArgumentException.class)
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("cable: missing: must be given; mass: -1.0 kg: must be a finite number above zero");
        assertThatCode(() -> new Violations().throwIfAny()).doesNotThrowAnyException();
    }

    @Test
    void theExceptionKeepsItsViolationsWhateverBecomesOfTheList() {
        List<Violation> list = new ArrayList<>(List.of(new Violation("a", "b", "c")));
        InvalidInputException e = new InvalidInputException(list);
        list.clear();
        assertThat(e.violations()).extracting(Violation::path).containsExactly("a");
        assertThatThrownBy(() -> e.violations().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @ParameterizedTest
    @CsvSource({"0, 1, high, 1.0", "1, 0, high, 0.0"})
    void anIntervalIsRefusedWhereItsEndsAreTurnedRound(double low, double high, String path, String shown) {
        List<String> refused = Refusal.of(() -> Interval.of(low, high));
        if (low <= high) {
            assertThat(refused).isEmpty();
        } else {
            assertThat(refused).containsExactly(path + ": " + shown + ": must not lie below low (" + low + ")");
        }
    }

    @Test
    void bothEndsOfAnIntervalAreNamedWhereTheyAreNoNumbers() {
        assertThat(Refusal.of(() -> new Interval(Double.NaN, Double.POSITIVE_INFINITY)))
                .containsExactly("low: NaN: must be a finite number", "high: Infinity: must be a finite number");
    }
}
