package org.lifeline.design.criteria;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Refusal;
import org.lifeline.design.envelope.Quantity;

/** What can be limited: name, unit and side of each quantity, and the words of its comparison; requirements in words. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class CheckedQuantityTest {
    /** Side of the limit: loads and lengths of falls at most, strengths and heights at least, a mass below. */
    @ParameterizedTest
    @CsvSource({
        "strengthFactor, -, AT_LEAST, false, false",
        "cableStrengthFactor, -, AT_LEAST, false, false",
        "anchorStrengthFactor, -, AT_LEAST, false, true",
        "impactStrength, -, AT_LEAST, false, false",
        "anchorCapacity, N, AT_LEAST, false, true",
        "endAnchorCapacity, N, AT_LEAST, false, true",
        "intermediateAnchorCapacity, N, AT_LEAST, false, true",
        "cableDiameter, m, AT_LEAST, true, false",
        "spanLength, m, AT_MOST, false, false",
        "lineLength, m, AT_MOST, false, false",
        "spans, -, AT_MOST, false, false",
        "initialSlope, -, AT_LEAST, false, false",
        "initialSagRatio, -, AT_LEAST, false, false",
        "chordAngle, rad, AT_MOST, false, false",
        "lineSlope, rad, AT_MOST, false, false",
        "lineTurn, rad, AT_MOST, false, false",
        "workers, -, AT_MOST, false, false",
        "workersInOneSpan, -, AT_MOST, false, false",
        "workerMass, kg, BELOW, false, false",
        "fixedPosts, -, AT_LEAST, false, false",
        "spanForHeight, -, AT_MOST, false, false",
        "freeHeight, m, AT_LEAST, true, false",
        "statedMargin, m, AT_LEAST, true, false",
        "statedHarnessStretch, m, AT_LEAST, true, false",
        "arrestForce, N, AT_MOST, false, false",
        "freeFall, m, AT_MOST, false, false",
        "swingAngle, rad, AT_MOST, false, false",
        "clearanceMargin, m, AT_LEAST, true, false"
    })
    void everyQuantityHasItsUnitAndItsSide(
            String key, String unit, LimitType type, boolean mayBeNegative, boolean ofAnchors) {
        CheckedQuantity q = CheckedQuantity.ofKey(key).orElseThrow();
        assertThat(q.key()).isEqualTo(key);
        assertThat(q).hasToString(key);
        assertThat(q.unit()).isEqualTo(unit);
        assertThat(q.limitType()).isEqualTo(type);
        assertThat(q.limits().lowest() < 0).isEqualTo(mayBeNegative);
        assertThat(q.isOfAnchors()).isEqualTo(ofAnchors);
        assertThat(q.support()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(Quantity.class)
    void everyQuantityOfAnArrestButAnElevationCanBeLimited(Quantity quantity) {
        if (quantity == Quantity.REQUIRED_ELEVATION) {
            assertThat(Refusal.of(() -> CheckedQuantity.of(quantity)))
                    .containsExactly("quantity: requiredElevation: is an elevation, which has no ratio to a limit; use"
                            + " clearanceMargin");
            assertThat(CheckedQuantity.ofKey(quantity.key())).isEmpty();
            return;
        }
        CheckedQuantity q = CheckedQuantity.of(quantity);
        assertThat(q.key()).isEqualTo(quantity.key());
        assertThat(q.words()).isEqualTo(quantity.words());
        assertThat(q.unit()).isEqualTo(quantity.unit());
        assertThat(q.limitType() == LimitType.AT_MOST).isEqualTo(quantity.largestIsWorst());
        assertThat(CheckedQuantity.ofKey(quantity.key())).isPresent();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "strengthFactor|2|2 × largest load against strength",
                "cableStrengthFactor|2.5|2.5 × largest load against strength",
                "anchorStrengthFactor|3|3 × largest load against strength",
                "impactStrength|1|load with twice the potential impact energy against strength",
                "arrestForce|6000|maximum arrest force against limit",
                "workerMass|100|largest mass of a worker against limit",
                "cableDiameter|0.012|least diameter of the cable wanted against what is there",
                "anchorCapacity|16000|least capacity of an anchor wanted against what is there",
                "freeHeight|0|distance to the lowest point against distance to the lower level, both below the line",
                "clearanceMargin|0|clearance required below the line, with the wanted margin, against what is available"
            })
    void aComparisonIsInWords(String key, double limit, String words) {
        assertThat(CheckedQuantity.ofKey(key).orElseThrow().comparison(limit)).isEqualTo(words);
    }

    @Test
    void theLoadOnOneSupportKnowsWhichOne() {
        CheckedQuantity q = CheckedQuantity.loadOnSupport("post 1");
        assertThat(q.support()).contains("post 1");
        assertThat(q.key()).isEqualTo("supportLoad");
        assertThat(q.unit()).isEqualTo("N");
        assertThat(q.limitType()).isEqualTo(LimitType.AT_MOST);
        assertThat(q.words()).isEqualTo("load on the support");
        assertThat(Refusal.paths(() -> CheckedQuantity.loadOnSupport(null))).containsExactly("supportId");
        assertThat(Refusal.paths(() -> CheckedQuantity.of(null))).containsExactly("quantity");
        assertThat(Refusal.paths(() -> CheckedQuantity.ofKey(null))).containsExactly("key");
    }

    @Test
    void allQuantitiesAreListedOnce() {
        assertThat(CheckedQuantity.all()).hasSize(24 + Quantity.values().length - 1);
        assertThat(CheckedQuantity.all()).extracting(CheckedQuantity::key).doesNotHaveDuplicates();
        assertThatThrownBy(() -> CheckedQuantity.all().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @ParameterizedTest
    @CsvSource({"2, 2", "2.5, 2.5", "0, 0", "-3, -3", "1e6, 1000000", "0.1, 0.1"})
    void wholeNumbersAreShownWithoutDecimals(double value, String text) {
        assertThat(Requirement.number(value)).isEqualTo(text);
    }

    /** A diameter is at least a length, and so is a margin; only the margin can be below nothing, but both are only finite. */
    @Test
    void limitsOfHeightsMayBeNegativeAndOthersNot() {
        assertThat(Requirement.limit(CheckedQuantity.FREE_HEIGHT, -0.5).limits())
                .containsExactly(new Limit("freeHeight", LimitType.AT_LEAST, -0.5, "m"));
        assertThat(Refusal.of(() -> Requirement.limit(CheckedQuantity.FREE_HEIGHT, Double.NaN)))
                .containsExactly("capacity: NaN m: must be a finite number");
        assertThat(Refusal.of(() -> Requirement.limit(CheckedQuantity.SPAN_LENGTH, 0)))
                .containsExactly("capacity: 0.0 m: must be a finite number above zero");
        assertThat(Refusal.of(() -> Requirement.limit(CheckedQuantity.WORKERS, -1)))
                .containsExactly("capacity: -1.0: must be a finite number above zero");
    }

    @Test
    void requirementsInWords() {
        Requirement spans = Requirement.limit(CheckedQuantity.SPANS, 3);
        Requirement mass = Requirement.limit(CheckedQuantity.WORKER_MASS, 140);
        Requirement capacity = Requirement.limitPerWorker(CheckedQuantity.ANCHOR_CAPACITY, 16e3);
        assertThat(spans.words()).isEqualTo("spans at most 3.0");
        assertThat(mass.words()).isEqualTo("workerMass below 140.0 kg");
        assertThat(capacity.words()).isEqualTo("anchorCapacity at least 16000.0 N per worker");
        assertThat(Requirement.allOf(spans, mass).words())
                .isEqualTo("spans at most 3.0; and workerMass below 140.0 kg");
        assertThat(Requirement.anyOf(spans, mass).words()).isEqualTo("spans at most 3.0; or workerMass below 140.0 kg");
        assertThat(Requirement.eachAnchorAnyOf(capacity, Requirement.limit(CheckedQuantity.ANCHOR_STRENGTH_FACTOR, 2))
                        .words())
                .isEqualTo(
                        "for each anchor: anchorCapacity at least 16000.0 N per worker; or anchorStrengthFactor at least"
                                + " 2.0");
        assertThat(Requirement.factoredLoad(
                                CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), new Requirement.Factor(1.5), 3e4)
                        .words())
                .isEqualTo("1.5 × endAnchorLoad at most 30000.0 N");
    }

    @Test
    void aRequirementKnowsItsParts() {
        Requirement spans = Requirement.limit(CheckedQuantity.SPANS, 3);
        Requirement workers = Requirement.limit(CheckedQuantity.WORKERS, 2);
        Requirement both = Requirement.allOf(spans, workers);
        assertThat(both.join()).isEqualTo(Requirement.Join.ALL_OF);
        assertThat(both.parts()).containsExactly(spans, workers);
        assertThat(both.comparison()).isEmpty();
        assertThat(both.limits()).hasSize(2);
        assertThat(Requirement.anyOf(spans).join()).isEqualTo(Requirement.Join.ANY_OF);
        assertThat(spans.join()).isEqualTo(Requirement.Join.NONE);
        assertThat(spans.parts()).isEmpty();
        assertThat(spans.comparison()).contains(new Requirement.Comparison(CheckedQuantity.SPANS, 3, false, 1));
        assertThat(Requirement.limitPerWorker(CheckedQuantity.ANCHOR_CAPACITY, 5)
                        .comparison())
                .contains(new Requirement.Comparison(CheckedQuantity.ANCHOR_CAPACITY, 5, true, 1));
        assertThatThrownBy(() -> both.parts().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void requirementsOfNothingAreRefused() {
        Requirement spans = Requirement.limit(CheckedQuantity.SPANS, 3);
        assertThat(Refusal.paths(() -> Requirement.limit(null, 1))).containsExactly("quantity");
        assertThat(Refusal.paths(() -> Requirement.limitPerWorker(null, 1))).containsExactly("quantity");
        assertThat(Refusal.paths(() -> Requirement.factoredLoad(null, new Requirement.Factor(1), 1)))
                .containsExactly("quantity");
        assertThat(Refusal.paths(() -> Requirement.factoredLoad(CheckedQuantity.of(Quantity.LINE_LOAD), null, 1)))
                .containsExactly("factor");
        assertThat(Refusal.paths(() -> Requirement.allOf((Requirement[]) null))).containsExactly("requirements");
        assertThat(Refusal.paths(() -> Requirement.anyOf(spans, null))).containsExactly("requirements[1]");
        assertThat(Refusal.paths(() -> Requirement.eachAnchorAnyOf((Requirement) null)))
                .containsExactly("requirements[0]");
        assertThat(Refusal.of(() -> Requirement.allOf()))
                .containsExactly("allOf: []: must name at least one requirement");
        assertThat(Refusal.of(() -> Requirement.anyOf()))
                .containsExactly("anyOf: []: must name at least one requirement");
        assertThat(Refusal.of(() -> Requirement.eachAnchorAnyOf()))
                .containsExactly("eachAnchorAnyOf: []: must name at least one requirement");
    }

    @Test
    void everyFaultOfARequirementIsToldAtOnce() {
        assertThat(Refusal.of(() -> Requirement.limitPerWorker(CheckedQuantity.SPAN_LENGTH, -1)))
                .containsExactly(
                        "perWorker: spanLength: must be a force that has to reach its limit",
                        "capacity: -1.0 m: must be a finite number above zero");
        assertThat(Refusal.of(
                        () -> Requirement.factoredLoad(CheckedQuantity.ANCHOR_CAPACITY, new Requirement.Factor(0), -1)))
                .containsExactly(
                        "factor: anchorCapacity: must be a load that has to stay within its limit",
                        "factor: 0.0: must be a finite number above zero",
                        "capacity: -1.0 N: must be a finite number above zero");
        assertThatThrownBy(() -> Requirement.eachAnchorAnyOf(
                        Requirement.limit(CheckedQuantity.SPANS, 3), Requirement.limit(CheckedQuantity.WORKERS, 3)))
                .isInstanceOfSatisfying(
                        InvalidInputException.class,
                        e -> assertThat(e.violations())
                                .extracting(v -> v.value())
                                .containsExactly("spans at most 3.0", "workers at most 3.0"));
    }
}
