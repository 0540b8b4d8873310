package org.lifeline.design.criteria;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.lifeline.design.criteria.Requirement.allOf;
import static org.lifeline.design.criteria.Requirement.anyOf;
import static org.lifeline.design.criteria.Requirement.eachAnchorAnyOf;
import static org.lifeline.design.criteria.Requirement.factoredLoad;
import static org.lifeline.design.criteria.Requirement.limit;
import static org.lifeline.design.criteria.Requirement.limitPerWorker;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.criteria.Requirement.Factor;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;

/** Requirements that are put together by a caller. */
class RequirementTest {
    private static final LifelineDesign DESIGN = design();
    private static final Extremes EXTREMES = DesignAnalysis.withDefaults().extremes(DESIGN);
    private static final CheckedQuantity LOAD = CheckedQuantity.of(Quantity.END_ANCHOR_LOAD);
    private static final CheckedQuantity FORCE = CheckedQuantity.of(Quantity.ARREST_FORCE);

    private static LifelineDesign design() {
        LifelineDesign d = Designs.design(2, Passage.free(), Attachment.GRIPPED);
        return d.withTemperatures(List.of(15.0))
                .withFalls(List.of(Fall.builder("f")
                        .at(Place.of(1, 5))
                        .faller(d.workers().get(0))
                        .build()));
    }

    private static CriterionResult check(Requirement requirement) {
        return Criterion.composed("own", requirement, "test").check(EXTREMES);
    }

    private static double worst(Quantity q) {
        return EXTREMES.of(q).orElseThrow().value();
    }

    @Test
    void allHaveToBeMetAndTheWorstGoverns() {
        Requirement load = limit(LOAD, 2 * worst(Quantity.END_ANCHOR_LOAD));
        Requirement force = limit(FORCE, 0.8 * worst(Quantity.ARREST_FORCE));
        CriterionResult r = check(allOf(load, force));
        assertThat(r.status()).isEqualTo(Status.NOT_MET);
        assertThat(r.ratio()).isEqualTo(1.25, within(1e-12));
        assertThat(r.check().isOfAlternatives()).isFalse();
        assertThat(r.check().deciding()).hasSize(2);
        assertThat(check(allOf(load, load)).status()).isEqualTo(Status.MET);
    }

    @Test
    void oneAlternativeIsEnoughAndTheBestGoverns() {
        Requirement load = limit(LOAD, 2 * worst(Quantity.END_ANCHOR_LOAD));
        Requirement force = limit(FORCE, 0.8 * worst(Quantity.ARREST_FORCE));
        CriterionResult r = check(anyOf(force, load));
        assertThat(r.status()).isEqualTo(Status.MET);
        assertThat(r.ratio()).isEqualTo(0.5, within(1e-12));
        assertThat(r.check().deciding()).extracting(CapacityCheck::quantityKey).containsExactly("endAnchorLoad");
        assertThat(check(anyOf(force, force)).status()).isEqualTo(Status.NOT_MET);
    }

    /** What is missing decides nothing unless the rest decides without it. */
    @Test
    void whatIsMissingLeavesOpenOnlyWhatItMayChange() {
        Requirement missing = limit(CheckedQuantity.of(Quantity.INLINE_EXTENSION), 1);
        Requirement met = limit(FORCE, 1e6);
        Requirement failed = limit(FORCE, 1);
        assertThat(check(allOf(missing, met)).status()).isEqualTo(Status.NOT_EVALUATED);
        assertThat(check(allOf(missing, met)).reason()).isEqualTo("there is no in-line energy absorber");
        assertThat(check(allOf(missing, failed)).status()).isEqualTo(Status.NOT_MET);
        assertThat(check(anyOf(missing, met)).status()).isEqualTo(Status.MET);
        assertThat(check(anyOf(missing, met)).reason()).isEmpty();
        assertThat(check(anyOf(missing, failed)).status()).isEqualTo(Status.NOT_EVALUATED);
        assertThat(check(allOf(missing, missing)).ratio()).isNaN();
    }

    @Test
    void joinedRequirementsNest() {
        Requirement inner = anyOf(limit(FORCE, 1), limit(LOAD, 1e6));
        CriterionResult r = check(allOf(inner, limit(CheckedQuantity.WORKERS, 1)));
        assertThat(r.status()).isEqualTo(Status.MET);
        assertThat(r.comparisons()).hasSize(3);
        assertThat(r.check().deciding())
                .extracting(CapacityCheck::quantityKey)
                .containsExactly("endAnchorLoad", "workers");
        assertThat(r.criterion().title())
                .isEqualTo("arrestForce at most 1.0 N; or endAnchorLoad at most 1000000.0 N; and workers at most 1.0");
    }

    @Test
    void eachAnchorChoosesItsAlternative() {
        Requirement r = eachAnchorAnyOf(
                limit(CheckedQuantity.ANCHOR_CAPACITY, 40e3), limit(CheckedQuantity.ANCHOR_STRENGTH_FACTOR, 2));
        CriterionResult result = check(r);
        double post = EXTREMES.onSupport("post 1").orElseThrow().value();
        assertThat(result.isMet()).isEqualTo(2 * post <= 16e3);
        assertThat(result.comparisons())
                .extracting(CapacityCheck::component)
                .containsExactly("north", "north", "post 1", "post 1", "south", "south");
        assertThat(result.criterion().title()).startsWith("for each anchor: anchorCapacity at least 40000.0 N; or ");
        assertThat(r.join()).isEqualTo(Requirement.Join.EACH_ANCHOR_ANY_OF);
        assertThat(r.parts()).hasSize(2);
        assertThat(r.comparison()).isEmpty();
    }

    @Test
    void aFactorStandsOnTheLoad() {
        double load = worst(Quantity.END_ANCHOR_LOAD);
        CriterionResult r = check(factoredLoad(LOAD, new Factor(1.5), 3 * load));
        assertThat(r.demand()).isEqualTo(1.5 * load, within(1e-9 * load));
        assertThat(r.ratio()).isEqualTo(0.5, within(1e-12));
        assertThat(r.comparisons().get(0).title()).isEqualTo("1.5 × end anchor load against limit");
        assertThat(r.criterion().limits())
                .containsExactly(new Limit("1.5 × endAnchorLoad", LimitType.AT_MOST, 3 * load, "N"));
        CriterionResult post = check(factoredLoad(CheckedQuantity.loadOnSupport("post 1"), new Factor(2), 16e3));
        assertThat(post.demand())
                .isEqualTo(2 * EXTREMES.onSupport("post 1").orElseThrow().value(), within(1e-6));
        assertThat(post.governing()).isPresent();
    }

    @Test
    void aForcePerWorkerCountsTheWorkers() {
        CriterionResult r = check(limitPerWorker(CheckedQuantity.END_ANCHOR_CAPACITY, 20e3));
        assertThat(r.demand()).isEqualTo(20e3, within(1e-9));
        LifelineDesign two = DESIGN.toBuilder()
                .worker(Designs.worker("B", Attachment.GRIPPED))
                .build();
        CriterionResult both = Criterion.composed(
                        "own", limitPerWorker(CheckedQuantity.END_ANCHOR_CAPACITY, 20e3), "test")
                .check(DesignAnalysis.withDefaults().extremes(two));
        assertThat(both.demand()).isEqualTo(40e3, within(1e-9));
        assertThat(both.criterion().limits())
                .containsExactly(new Limit("endAnchorCapacity", LimitType.AT_LEAST, 20e3, "N per worker"));
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1, 0})
    void limitsThatMeanNothingAreRefused(double value) {
        assertThatThrownBy(() -> limit(LOAD, value))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("capacity");
        assertThatThrownBy(() -> limitPerWorker(CheckedQuantity.ANCHOR_CAPACITY, value))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("capacity");
        assertThatThrownBy(() -> factoredLoad(LOAD, new Factor(2), value))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("capacity");
        assertThatThrownBy(() -> factoredLoad(LOAD, new Factor(value), 1e3))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("factor");
        CheckedQuantity margin = CheckedQuantity.of(Quantity.CLEARANCE_MARGIN);
        if (Double.isFinite(value)) {
            assertThat(limit(margin, value).comparison().orElseThrow().limit()).isEqualTo(value);
        } else {
            assertThatThrownBy(() -> limit(margin, value)).isInstanceOf(InvalidInputException.class);
        }
    }

    @Test
    void requirementsThatMakeNoSenseAreRefused() {
        for (CheckedQuantity each : List.of(LOAD, CheckedQuantity.SPAN_LENGTH, CheckedQuantity.CABLE_DIAMETER)) {
            assertThatThrownBy(() -> limitPerWorker(each, 1e3))
                    .isInstanceOf(InvalidInputException.class)
                    .hasMessageContaining("perWorker");
        }
        for (CheckedQuantity each : List.of(CheckedQuantity.ANCHOR_CAPACITY, CheckedQuantity.SPAN_LENGTH)) {
            assertThatThrownBy(() -> factoredLoad(each, new Factor(2), 1e3))
                    .isInstanceOf(InvalidInputException.class)
                    .hasMessageContaining("must be a load");
        }
        assertThatThrownBy(() -> eachAnchorAnyOf(limit(LOAD, 1e3)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("must be a limit on a quantity of the anchors");
        assertThatThrownBy(() -> eachAnchorAnyOf(allOf(limit(CheckedQuantity.ANCHOR_CAPACITY, 1e3))))
                .isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> allOf())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("allOf");
        assertThatThrownBy(() -> anyOf())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("anyOf");
        assertThatThrownBy(() -> eachAnchorAnyOf()).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Criterion.composed("", limit(LOAD, 1), "x"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("id");
    }

    @Test
    void aValueAtTheLimitIsMetUnlessItHasToStayBelow() {
        assertThat(Status.of(1)).isEqualTo(Status.MET);
        assertThat(Status.of(1 + 1e-9)).isEqualTo(Status.NOT_MET);
        assertThat(Status.of(1, LimitType.BELOW)).isEqualTo(Status.NOT_MET);
        assertThat(Status.of(1 - 1e-9, LimitType.BELOW)).isEqualTo(Status.MET);
        assertThat(Status.of(Double.NaN, LimitType.BELOW)).isEqualTo(Status.NOT_EVALUATED);
        assertThat(Status.of(Double.POSITIVE_INFINITY)).isEqualTo(Status.NOT_MET);
        assertThat(LimitType.BELOW.symbol()).isEqualTo("<");
        assertThat(new Limit("workers", LimitType.AT_LEAST, 2, "-")).hasToString("workers ≥ 2.0");
        assertThat(new Limit("sag", LimitType.AT_MOST, 2, "m")).hasToString("sag ≤ 2.0 m");
    }

    /** Demand over capacity where there is nothing to divide by. */
    @Test
    void ratiosWithoutCapacity() {
        assertThat(CapacityCheck.ratioOf(1, 4)).isEqualTo(0.25);
        assertThat(CapacityCheck.ratioOf(1, 0)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(CapacityCheck.ratioOf(0.5, -0.2)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(CapacityCheck.ratioOf(0, 0)).isZero();
        assertThat(CapacityCheck.ratioOf(-1, -2)).isEqualTo(0.5);
        assertThat(CapacityCheck.ratioOf(-1, 0)).isZero();
        assertThat(CapacityCheck.ratioOf(0, -1)).isZero();
        assertThat(CapacityCheck.ratioOf(Double.NaN, 1)).isNaN();
        assertThat(CapacityCheck.ratioOf(1, Double.NaN)).isNaN();
    }

    @Test
    void everyQuantityOfADesignHasItsValue() {
        record Expected(CheckedQuantity quantity, double limit, double ratio) {}
        List<Expected> list = List.of(
                new Expected(CheckedQuantity.SPANS, 4, 0.5),
                new Expected(CheckedQuantity.SPAN_LENGTH, 24, 0.5),
                new Expected(CheckedQuantity.LINE_LENGTH, 24, 1),
                new Expected(CheckedQuantity.CABLE_DIAMETER, 0.006, 0.5),
                new Expected(CheckedQuantity.END_ANCHOR_CAPACITY, 22.5e3, 0.5),
                new Expected(CheckedQuantity.INTERMEDIATE_ANCHOR_CAPACITY, 16e3, 1),
                new Expected(CheckedQuantity.ANCHOR_CAPACITY, 8e3, 0.5),
                new Expected(CheckedQuantity.WORKERS, 2, 0.5),
                new Expected(CheckedQuantity.WORKERS_IN_ONE_SPAN, 1, 1),
                new Expected(CheckedQuantity.WORKER_MASS, 200, 0.5),
                new Expected(CheckedQuantity.STATED_MARGIN, 0.3, 0.5),
                new Expected(CheckedQuantity.STATED_HARNESS_STRETCH, 0.6, 2),
                new Expected(CheckedQuantity.FIXED_POSTS, 1, Double.POSITIVE_INFINITY));
        for (Expected each : list) {
            CriterionResult r = check(limit(each.quantity(), each.limit()));
            assertThat(r.ratio()).as(each.quantity().key()).isEqualTo(each.ratio(), within(1e-12));
            assertThat(r.isMet()).as(each.quantity().key()).isEqualTo(each.ratio() <= 1);
            assertThat(r.governing()).as(each.quantity().key()).isEmpty();
            assertThat(r.unit()).isEqualTo(each.quantity().unit());
            assertThat(each.quantity()).hasToString(each.quantity().key());
            assertThat(CheckedQuantity.ofKey(each.quantity().key())).contains(each.quantity());
            assertThat(each.quantity().words()).isNotBlank();
            assertThat(each.quantity().support()).isEmpty();
        }
        assertThat(CheckedQuantity.loadOnSupport("north").support()).contains("north");
        double sag = check(limit(CheckedQuantity.INITIAL_SAG_RATIO, 1)).capacity();
        assertThat(check(limit(CheckedQuantity.INITIAL_SLOPE, 1)).capacity()).isEqualTo(2 * sag, within(1e-12));
        // Parabola: sag = w L²/(8 H), 0.576 kg/m over 12 m at 1.5 kN.
        assertThat(sag).isEqualTo(0.576 * 9.80665 * 12 / (8 * 1500), within(1e-3 * sag));
        assertThat(check(limit(CheckedQuantity.CHORD_ANGLE, 1)).demand()).isZero();
    }
}
