package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Rules with their sentences, and the plausible ranges with what each of them tells when it is left. */
class RulesAndRangesTest {
    private static final Pattern PLACE = Pattern.compile("\\{(\\d+)}");

    private static Violations check(PlausibleRange range, double value) {
        Violations v = new Violations();
        range.check(v, "p", value);
        return v;
    }

    /** The arguments of a rule are numbered from 0 without a gap, so that a translation can count on them. */
    @ParameterizedTest
    @EnumSource(InputRule.class)
    void aRuleNumbersItsArgumentsWithoutGaps(InputRule rule) {
        Matcher m = PLACE.matcher(rule.english());
        Set<Integer> numbers = new TreeSet<>();
        while (m.find()) {
            numbers.add(Integer.valueOf(m.group(1)));
        }
        int n = 0;
        for (Integer each : numbers) {
            assertThat(each).as(rule.english()).isEqualTo(n++);
        }
        Object[] texts = new Object[n];
        for (int i = 0; i < n; i++) {
            texts[i] = "argument " + i;
        }
        Violation v = Violation.of("p", GivenValue.missing(), rule, texts);
        assertThat(v.rule()).doesNotContain("{", "}");
        assertThat(v.rule()).as("a sentence without subject and full stop").doesNotEndWith(".");
        assertThat(rule.key()).isEqualTo(rule.name());
    }

    @ParameterizedTest
    @EnumSource(PlausibleRange.class)
    void aRangeIsItsOwnRule(PlausibleRange range) {
        assertThat(range.key()).isEqualTo("RANGE_" + range.name());
        assertThat(range.english()).contains(range.reason()).doesNotContain("{", "}");
    }

    @ParameterizedTest
    @CsvSource({
        "COORDINATE, -1000000.0, 1000000.0, m",
        "LENGTH, 0.0, 1000.0, m",
        "WORKER_MASS, 10.0, 10000.0, kg",
        "STRENGTH, 1.0, 1.0E9, N",
        "AXIAL_STIFFNESS, 5000.0, 1.0E9, N",
        "GRAVITY, 1.0E-6, 1000.0, m/s²",
        "STIFFNESS, 0.01, 1.0E15, N/m",
        "THERMAL_EXPANSION, -1.0E-4, 0.001, 1/K",
        "TENSION, 1.0E-12, 1.0E12, N",
        "DAMPING_TIME, 0.0, 1.0, s"
    })
    void aRangeSaysItsBoundsWithTheirUnit(PlausibleRange range, double low, double high, String unit) {
        assertThat(range.lowest()).isEqualTo(low);
        assertThat(range.highest()).isEqualTo(high);
        assertThat(range.unit()).isEqualTo(unit);
        assertThat(range.english()).startsWith("must lie from " + low + " " + unit + " to " + high + " " + unit + ": ");
    }

    @Test
    void ratiosHaveNoUnitAndCountsAndTemperaturesWordsOfTheirOwn() {
        assertThat(PlausibleRange.MODEL_FACTOR.english())
                .isEqualTo("must lie from 0.5 to 10.0: a method that far off is no method");
        assertThat(PlausibleRange.TEMPERATURE.english())
                .isEqualTo("must lie between absolute zero and 1000 °C")
                .isEqualTo(PlausibleRange.TEMPERATURE.reason());
        assertThat(PlausibleRange.CORNERS.english()).isEqualTo("a curve needs no more corners");
        assertThat(PlausibleRange.COUNT.english())
                .isEqualTo("must be at most 10001 in number: more are not computed in one piece; split the design");
    }

    /** Absolute zero is -273.15 °C (3rd CGPM and later, recalled); neither end of the temperatures is taken. */
    @Test
    void absoluteZeroIsNoTemperature() {
        double zero = -273.15;
        assertThat(check(PlausibleRange.TEMPERATURE, zero).list())
                .extracting(Violation::toString)
                .containsExactly("p: -273.15 °C: must lie between absolute zero and 1000 °C");
        assertThat(check(PlausibleRange.TEMPERATURE, Math.nextUp(zero)).isEmpty())
                .isTrue();
        assertThat(check(PlausibleRange.TEMPERATURE, Math.nextDown(1000.0)).isEmpty())
                .isTrue();
        assertThat(check(PlausibleRange.TEMPERATURE, 1000).list().get(0).allowed())
                .contains(AllowedRange.inside(Interval.of(zero, 1000)));
    }

    /** Which rule a number breaks depends on whether the range starts below, at or above zero. */
    @Test
    void theRuleForNumbersThatAreNoQuantityAtAllComesFirst() {
        assertThat(check(PlausibleRange.LENGTH, -1).list().get(0).code()).isEqualTo(InputRule.NEGATIVE);
        assertThat(check(PlausibleRange.LENGTH, Double.NaN).list().get(0).code())
                .isEqualTo(InputRule.NEGATIVE);
        assertThat(check(PlausibleRange.LENGTH, 1001).list().get(0).code()).isEqualTo(PlausibleRange.LENGTH);
        assertThat(check(PlausibleRange.WORKER_MASS, 0).list().get(0).code()).isEqualTo(InputRule.NOT_ABOVE_ZERO);
        assertThat(check(PlausibleRange.WORKER_MASS, Double.POSITIVE_INFINITY)
                        .list()
                        .get(0)
                        .code())
                .isEqualTo(InputRule.NOT_ABOVE_ZERO);
        assertThat(check(PlausibleRange.WORKER_MASS, 9.999).list().get(0).code())
                .isEqualTo(PlausibleRange.WORKER_MASS);
        assertThat(check(PlausibleRange.COORDINATE, Double.NEGATIVE_INFINITY)
                        .list()
                        .get(0)
                        .code())
                .isEqualTo(InputRule.NOT_FINITE);
        assertThat(check(PlausibleRange.COORDINATE, -1e7).list().get(0).code()).isEqualTo(PlausibleRange.COORDINATE);
    }

    @Test
    void aValueInItsRangeComesBack() {
        assertThat(PlausibleRange.WORKER_MASS.required("mass", 100)).isEqualTo(100);
        assertThat(Refusal.of(() -> PlausibleRange.WORKER_MASS.required("mass", 9)))
                .containsExactly("mass: 9.0 kg: must lie from 10.0 kg to 10000.0 kg: workers with tools and the test"
                        + " masses of the trade have 30 to 300 kg");
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, 0, 1, 10_001, 10_002, Integer.MAX_VALUE})
    void noMoreThanTenThousandAndOneAreCounted(int count) {
        Violations v = new Violations();
        PlausibleRange.checkCount(v, "fall", count);
        List<Violation> list = v.list();
        assertThat(list.isEmpty()).isEqualTo(count <= 10_001);
        for (Violation each : list) {
            assertThat(each.value()).isEqualTo(Integer.toString(count));
            assertThat(each.code()).isEqualTo(PlausibleRange.COUNT);
            assertThat(each.allowed()).contains(AllowedRange.atMost(10_001));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1000, 1001})
    void aCurveHasAtMostAThousandCorners(int count) {
        Violations v = new Violations();
        PlausibleRange.CORNERS.checkNumber(v, "curve", count);
        assertThat(v.isEmpty()).isEqualTo(count <= 1000);
        for (Violation each : v.list()) {
            assertThat(each).hasToString("curve: 1001 corners: a curve needs no more corners");
            assertThat(each.allowed()).contains(AllowedRange.atMost(1000));
        }
    }

    @Test
    void infiniteStiffnessIsRigidButNegativeOrNoneIsNot() {
        for (double bad : new double[] {Double.NEGATIVE_INFINITY, Double.NaN, 0, -1, 0.0099, 1.001e15}) {
            Violations v = new Violations();
            PlausibleRange.STIFFNESS.checkOrRigid(v, "k", bad);
            assertThat(v.list()).as("%s", bad).hasSize(1);
        }
        for (double good : new double[] {Double.POSITIVE_INFINITY, 0.01, 1e15}) {
            Violations v = new Violations();
            PlausibleRange.STIFFNESS.checkOrRigid(v, "k", good);
            assertThat(v.isEmpty()).as("%s", good).isTrue();
        }
    }
}
