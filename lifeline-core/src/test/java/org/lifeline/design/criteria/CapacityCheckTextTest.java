package org.lifeline.design.criteria;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;

/** What one comparison tells: title, sides, unit, reason; and how comparisons are put together and decided. */
class CapacityCheckTextTest {
    private static final LifelineDesign DESIGN = design();
    private static final Extremes EXTREMES = DesignAnalysis.withDefaults().extremes(DESIGN);

    private static LifelineDesign design() {
        LifelineDesign d = Designs.design(1, Passage.free(), Attachment.GRIPPED);
        return d.withTemperatures(List.of(15.0))
                .withFalls(List.of(Fall.builder("f")
                        .at(Place.of(1, 6))
                        .faller(d.workers().get(0))
                        .build()));
    }

    private static Limit limit(LimitType type, double value) {
        return new Limit("sag", type, value, "m");
    }

    private static CapacityCheck leaf(String label, double value, LimitType type, double limit) {
        return CapacityCheck.of("t", CheckedValue.of(label, value), limit(type, limit), true);
    }

    /** At most: the value is what is demanded; at least: the limit is, and the value is what there is. */
    @ParameterizedTest
    @CsvSource({"AT_MOST, 3, 4, 3, 4, 0.75", "BELOW, 3, 4, 3, 4, 0.75", "AT_LEAST, 3, 4, 4, 3, 1.3333333333333333"})
    void demandAndCapacityChangeSidesWithTheLimit(
            LimitType type, double value, double limit, double demand, double capacity, double ratio) {
        CapacityCheck c = leaf("span 1", value, type, limit);
        assertThat(c.demand()).isEqualTo(demand);
        assertThat(c.capacity()).isEqualTo(capacity);
        assertThat(c.ratio()).isCloseTo(ratio, within(1e-15));
        assertThat(c.title()).isEqualTo("t, span 1");
        assertThat(c.component()).isEqualTo("span 1");
        assertThat(c.quantityKey()).isEqualTo("sag");
        assertThat(c.unit()).isEqualTo("m");
        assertThat(c.reason()).isEmpty();
        assertThat(c.governing()).isEmpty();
        assertThat(c.parts()).isEmpty();
        assertThat(c.leaves()).containsExactly(c);
        assertThat(c.deciding()).containsExactly(c);
        assertThat(c.isOfAlternatives()).isFalse();
    }

    @Test
    void aValueWithoutALabelLeavesTheTitleAlone() {
        CapacityCheck c = leaf("", 3, LimitType.AT_MOST, 4);
        assertThat(c.title()).isEqualTo("t");
        assertThat(c.component()).isEmpty();
    }

    @Test
    void whatIsMissingTellsWhereAndWhy() {
        CapacityCheck labelled =
                CapacityCheck.of("t", CheckedValue.missing("cable", "not given"), limit(LimitType.AT_MOST, 4), true);
        assertThat(labelled.reason()).isEqualTo("cable: not given");
        assertThat(labelled.status()).isEqualTo(Status.NOT_EVALUATED);
        assertThat(labelled.ratio()).isNaN();
        assertThat(labelled.unit()).isEqualTo("-");
        assertThat(CapacityCheck.of("t", CheckedValue.missing("", "not given"), limit(LimitType.AT_MOST, 4), true)
                        .reason())
                .isEqualTo("not given");
        CapacityCheck named = CapacityCheck.missing("title", "not stated");
        assertThat(named.title()).isEqualTo("title");
        assertThat(named.reason()).isEqualTo("not stated");
        assertThat(named.demand()).isNaN();
        assertThat(named.capacity()).isNaN();
        assertThat(named.quantityKey()).isEmpty();
    }

    /** What is shown is factor times value plus offset, in a unit of its own; the ratio follows from what is shown. */
    @Test
    void aValueCanBeShownAsWhatItComesFrom() {
        CheckedValue v = CheckedValue.of("x", 0.5).shown(20, 3, "kN");
        assertThat(v.value()).isEqualTo(0.5);
        assertThat(v.shownValue()).isEqualTo(13);
        assertThat(v.shownLimit(1)).isEqualTo(23);
        assertThat(v.unit("m")).isEqualTo("kN");
        CapacityCheck c = CapacityCheck.of("t", v, limit(LimitType.AT_MOST, 1), true);
        assertThat(c.demand()).isEqualTo(13);
        assertThat(c.capacity()).isEqualTo(23);
        assertThat(c.unit()).isEqualTo("kN");
        CheckedValue plain = CheckedValue.of("x", 0.5);
        assertThat(plain.shownValue()).isEqualTo(0.5);
        assertThat(plain.shownLimit(7)).isEqualTo(7);
        assertThat(plain.unit("m")).isEqualTo("m");
        assertThat(v.withValue(2).value()).isEqualTo(2);
        assertThat(v.withValue(2).label()).isEqualTo("x");
    }

    /** Strength over load is the value; what is shown is the load times the wanted factor against the strength. */
    @Test
    void aStrengthIsShownAgainstFactorTimesLoad() {
        Extreme load = EXTREMES.of(Quantity.MAXIMUM_TENSION).orElseThrow();
        CheckedValue v = CheckedValue.strength("cable", 81_630, load);
        assertThat(v.value()).isEqualTo(81_630 / load.value());
        assertThat(v.extreme()).contains(load);
        CapacityCheck c = CapacityCheck.of("t", v, new Limit("strengthFactor", LimitType.AT_LEAST, 2, "-"), true);
        assertThat(c.demand()).isEqualTo(2 * load.value());
        assertThat(c.capacity()).isCloseTo(81_630, within(1e-9));
        assertThat(c.unit()).isEqualTo("N");
        assertThat(c.governing()).contains(load);
        CheckedValue doubled = CheckedValue.strength("cable", 81_630, load, new CheckedValue.Load(40_815));
        assertThat(doubled.value()).isEqualTo(2);
        assertThat(doubled.shownLimit(1)).isEqualTo(40_815);
    }

    /** Not every case computed: what is met may fail in one that is lacking; what fails fails anyway. */
    @Test
    void lackingCasesLeaveOpenWhatIsMetAndNotWhatFails() {
        Extreme load = EXTREMES.of(Quantity.ARREST_FORCE).orElseThrow();
        Limit wide = new Limit("arrestForce", LimitType.AT_MOST, 2 * load.value(), "N");
        Limit tight = new Limit("arrestForce", LimitType.AT_MOST, 0.5 * load.value(), "N");
        CheckedValue v = CheckedValue.of(load);
        assertThat(CapacityCheck.of("t", v, wide, true).status()).isEqualTo(Status.MET);
        CapacityCheck open = CapacityCheck.of("t", v, wide, false);
        assertThat(open.status()).isEqualTo(Status.NOT_EVALUATED);
        assertThat(open.reason()).isEqualTo("met in the cases that could be computed, but not every case could be");
        assertThat(open.ratio()).isCloseTo(0.5, within(1e-15));
        assertThat(CapacityCheck.of("t", v, tight, false).status()).isEqualTo(Status.NOT_MET);
        assertThat(CapacityCheck.of("t", v, tight, false).reason()).isEmpty();
        assertThat(leaf("a", 1, LimitType.AT_MOST, 2).status())
                .as("a length needs no arrest")
                .isEqualTo(Status.MET);
        assertThat(CapacityCheck.of("t", CheckedValue.of("a", 1), limit(LimitType.AT_MOST, 2), false)
                        .status())
                .isEqualTo(Status.MET);
    }

    @Test
    void reasonsOfOpenPartsAreToldOnceEach() {
        CapacityCheck one = CapacityCheck.missing("m", "one");
        CapacityCheck two = CapacityCheck.missing("m", "two");
        CapacityCheck met = leaf("a", 1, LimitType.AT_MOST, 2);
        CapacityCheck all = CapacityCheck.all("whole", List.of(one, met, two, one));
        assertThat(all.title()).isEqualTo("whole");
        assertThat(all.reason()).isEqualTo("one; two");
        assertThat(all.ratio()).isEqualTo(0.5);
        assertThat(all.unit()).isEqualTo("m");
        assertThat(CapacityCheck.all("none", List.of()).reason()).isEqualTo("there is nothing to check");
        assertThat(CapacityCheck.any("none", List.of()).reason()).isEqualTo("there is nothing to check");
        assertThat(CapacityCheck.any("t", List.of(one, met)).reason())
                .as("decided")
                .isEmpty();
        assertThat(all.leaves()).containsExactly(one, met, two, one);
        assertThatThrownBy(() -> all.parts().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> all.leaves().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void ofAlternativesOneThatIsMetDecidesHoweverLargeItsRatio() {
        // A mass below its limit by less than rounding is not met at a ratio of 1; a length at its limit is.
        CapacityCheck notMet = leaf("mass", 1, LimitType.BELOW, 1);
        CapacityCheck met = leaf("length", 1 + 5e-13, LimitType.AT_MOST, 1);
        CapacityCheck any = CapacityCheck.any("t", List.of(notMet, met));
        assertThat(notMet.ratio()).isLessThan(met.ratio());
        assertThat(any.status()).isEqualTo(Status.MET);
        assertThat(any.deciding()).containsExactly(met);
        assertThat(any.isOfAlternatives()).isTrue();
    }

    @Test
    void ofAlternativesWithoutARatioOneWithARatioDecides() {
        CapacityCheck open = CapacityCheck.missing("m", "not given");
        CapacityCheck failed = leaf("a", 3, LimitType.AT_MOST, 2);
        assertThat(CapacityCheck.any("t", List.of(open, failed)).deciding()).containsExactly(failed);
        assertThat(CapacityCheck.any("t", List.of(open, failed)).status()).isEqualTo(Status.NOT_EVALUATED);
        CapacityCheck worse = leaf("b", 5, LimitType.AT_MOST, 2);
        assertThat(CapacityCheck.any("t", List.of(worse, failed)).deciding()).containsExactly(failed);
        assertThat(CapacityCheck.any("t", List.of(worse, failed)).status()).isEqualTo(Status.NOT_MET);
    }

    @Test
    void allPartsDecideTogetherDownToTheLeaves() {
        CapacityCheck a = leaf("a", 1, LimitType.AT_MOST, 2);
        CapacityCheck b = leaf("b", 3, LimitType.AT_MOST, 2);
        CapacityCheck c = leaf("c", 1.5, LimitType.AT_MOST, 2);
        CapacityCheck either = CapacityCheck.any("either", List.of(b, a));
        CapacityCheck whole = CapacityCheck.all("whole", List.of(either, c));
        assertThat(whole.deciding()).containsExactly(a, c);
        assertThat(whole.leaves()).containsExactly(b, a, c);
        assertThat(whole.ratio()).isEqualTo(0.75);
        assertThat(whole.demand()).isEqualTo(1.5);
        assertThat(whole.status()).isEqualTo(Status.MET);
    }

    @Test
    void aResultIsPrintedWithNumbersMarkAndReason() {
        CriterionResult met =
                Criterion.stated("own", CheckedQuantity.WORKERS, 2, "x").check(EXTREMES);
        assertThat(met).hasToString("own: MET 1.00000 / 2.00000 - = 0.500 [stated in the design]");
        assertThat(met.isMet()).isTrue();
        assertThat(met.unit()).isEqualTo("-");
        assertThat(met.comparisons()).hasSize(1);
        assertThat(met.check().title()).isEqualTo("number of workers against limit");
        CriterionResult failed =
                Criterion.stated("own", CheckedQuantity.SPAN_LENGTH, 10, "x").check(EXTREMES);
        assertThat(failed).hasToString("own: NOT MET 12.0000 / 10.0000 m = 1.200 [stated in the design]");
        CriterionResult open = Criterion.stated("own", CheckedQuantity.of(Quantity.INLINE_EXTENSION), 1, "x")
                .check(EXTREMES);
        assertThat(open).hasToString("own: NOT EVALUATED (there is no in-line energy absorber) [stated in the design]");
        assertThat(Criteria.of("dring-height").orElseThrow().check(EXTREMES).toString())
                .endsWith("(it is a fact of the trade, not a limit) [common practice]");
    }

    @Test
    void criteriaAreCheckedInTheirOrder() {
        List<Criterion> list = List.of(
                Criteria.of("iso-users").orElseThrow(),
                Criteria.of("us-osha-maf").orElseThrow());
        assertThat(Criteria.check(list, EXTREMES))
                .extracting(r -> r.criterion().id())
                .containsExactly("iso-users", "us-osha-maf");
    }

    /** nz-sag is stated for two or three spans; a condition that fails leaves the rest to other proof. */
    @ParameterizedTest
    @CsvSource({"1, false", "2, true", "3, true", "4, false"})
    void aRuleForSomeNumbersOfSpans(int spans, boolean stated) {
        LifelineDesign d = Designs.design(spans, Passage.free(), Attachment.GRIPPED);
        Extremes none = Extremes.ofCases(d, List.of());
        Requirement r = Requirement.forSpans(2, 3, Requirement.limit(CheckedQuantity.SPANS, 9));
        CapacityCheck c = r.check("t", new CheckedDesign(none));
        assertThat(c.status()).isEqualTo(stated ? Status.MET : Status.NOT_EVALUATED);
        assertThat(c.reason()).isEqualTo(stated ? "" : "it is stated for lines of 2 to 3 spans, not of " + spans);
        assertThat(r.limits()).containsExactly(new Limit("spans", LimitType.AT_MOST, 9, "-"));
    }

    @Test
    void aConditionThatDoesNotHoldIsNoFailure() {
        Requirement r = Requirement.condition(Requirement.limit(CheckedQuantity.WORKER_MASS, 100), "too heavy");
        CapacityCheck c = r.check("t", new CheckedDesign(EXTREMES));
        assertThat(c.status()).as("100 kg are not below 100 kg").isEqualTo(Status.NOT_EVALUATED);
        assertThat(c.reason()).isEqualTo("too heavy");
        assertThat(Requirement.condition(Requirement.limit(CheckedQuantity.WORKER_MASS, 100.1), "too heavy")
                        .check("t", new CheckedDesign(EXTREMES))
                        .status())
                .isEqualTo(Status.MET);
        assertThat(r.limits()).containsExactly(new Limit("workerMass", LimitType.BELOW, 100, "kg"));
        assertThat(Requirement.none("why").limits()).isEmpty();
        assertThat(Requirement.none("why")
                        .check("t", new CheckedDesign(EXTREMES))
                        .reason())
                .isEqualTo("why");
    }
}
