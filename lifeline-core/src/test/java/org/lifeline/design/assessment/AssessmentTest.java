package org.lifeline.design.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.motion.ForceFilter;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.Units;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.Status;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;

/** What an assessment says, on a single span with one stated fall that is not at the worst place. */
class AssessmentTest {
    private static final LifelineDesign DESIGN = AssessedLines.of("single");
    private static final Criterion LOAD =
            Criterion.stated("load", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 60e3, "test");
    private static final Criterion FREE_FALL =
            Criterion.stated("free fall", CheckedQuantity.of(Quantity.FREE_FALL), 3, "test");
    private static final Criterion TOO_SMALL =
            Criterion.stated("too small", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 10e3, "test");
    private static final Assessment PLAIN = Assessment.withDefaults().withCriteria(List.of(LOAD, FREE_FALL, TOO_SMALL));
    private static final AssessmentResult FOLLOWED = PLAIN.solve(DESIGN);
    private static final AssessmentResult LEFT_OUT = PLAIN.withoutMotion().solve(DESIGN);

    private static Status status(AssessmentResult result, int criterion) {
        return result.criteria().get(criterion).result().status();
    }

    @Test
    void theLargerOfBothMethodsGoverns() {
        assertThat(FOLLOWED.governing()).isNotEmpty();
        for (GoverningValue g : FOLLOWED.governing()) {
            boolean least = g.quantity().map(q -> !q.largestIsWorst()).orElse(false);
            double balance = g.energyBalance().orElseThrow();
            double inTime = g.inTime().orElseThrow();
            double worst = least ? Math.min(balance, inTime) : Math.max(balance, inTime);
            assertThat(g.value()).as(g.name()).isEqualTo(worst, within(1e-8 * Math.abs(worst)));
            assertThat(g.method())
                    .as(g.name())
                    .isEqualTo(
                            g.balanceExtreme().orElseThrow().value() == g.factored()
                                    ? Method.ENERGY_BALANCE
                                    : Method.TRANSIENT);
        }
    }

    /** A value in time is judged with what its mesh may hide; behind the filter it is smaller, and so is its allowance. */
    @Test
    void theAllowanceIsJudged() {
        AssessmentResult filtered = Assessment.withDefaults()
                .withForceFilter(ForceFilter.LOW_PASS_100_HZ)
                .solve(DESIGN);
        assertThat(FOLLOWED.forceFilter()).isEqualTo(ForceFilter.NONE);
        assertThat(filtered.forceFilter()).isEqualTo(ForceFilter.LOW_PASS_100_HZ);
        for (String name : List.of("endAnchorLoad", "maximumTension", "load on north")) {
            GoverningValue g = FOLLOWED.governing(name).orElseThrow();
            assertThat(g.allowance().orElseThrow())
                    .as(name)
                    .isGreaterThan(0.05 * g.inTime().orElseThrow());
            assertThat(g.inTimeExtreme().orElseThrow().value())
                    .as(name)
                    .isEqualTo(g.inTime().orElseThrow() + g.allowance().orElseThrow(), within(1e-6));
            assertThat(g.balanceExtreme().orElseThrow().allowance()).isZero();
            GoverningValue f = filtered.governing(name).orElseThrow();
            assertThat(f.inTime().orElseThrow()).as(name).isLessThan(g.inTime().orElseThrow());
            assertThat(f.allowance().orElseThrow())
                    .as(name)
                    .isLessThan(g.allowance().orElseThrow());
        }
        GoverningValue margin = FOLLOWED.governing("clearanceMargin").orElseThrow();
        Extreme inTime = margin.inTimeExtreme().orElseThrow();
        assertThat(inTime.value()).isEqualTo(inTime.computed() - inTime.allowance(), within(1e-9));
    }

    @Test
    void theWholeLineIsWorseThanTheStatedFall() {
        double stated = FOLLOWED.stated()
                .extremes()
                .of(Quantity.REQUIRED_BELOW_LINE)
                .orElseThrow()
                .value();
        GoverningValue whole = FOLLOWED.governing("requiredBelowLine").orElseThrow();
        assertThat(whole.value()).isGreaterThan(stated + 0.01);
        // The attachment runs to the middle from anywhere; counted from the line at the station an end needs the most.
        assertThat(whole.fallCase().fall().place().station()).isLessThan(0.1);
        assertThat(FOLLOWED.warnings()).anySatisfy(w -> {
            assertThat(w.code()).isEqualTo(Warning.Code.WORSE_THAN_STATED);
            assertThat(w.limit()).isEqualTo(stated, within(1e-9));
        });
    }

    @Test
    void everyStatedFallAndWhatGovernsIsFollowed() {
        assertThat(FOLLOWED.motion()).isEqualTo(MotionScope.FOLLOWED);
        assertThat(FOLLOWED.followed())
                .hasSizeGreaterThan(FOLLOWED.stated().arrests().size());
        assertThat(FOLLOWED.followed().subList(0, 2))
                .allSatisfy(f -> assertThat(f.fallCase().fall().id()).isEqualTo("stated"));
        assertThat(FOLLOWED.followed())
                .allSatisfy(f -> assertThat(f.arrest().method()).isEqualTo(Method.TRANSIENT));
        assertThat(FOLLOWED.checks())
                .isNotEmpty()
                .allSatisfy(c -> assertThat(c.passed()).isTrue());
        assertThat(FOLLOWED.checks())
                .extracting(IndependentCheck::method)
                .contains(Method.ENERGY_BALANCE, Method.TRANSIENT);
    }

    @Test
    void aGoverningForceInTimeHasItsRangeOverTheDamping() {
        GoverningValue load = FOLLOWED.governing("endAnchorLoad").orElseThrow();
        assertThat(load.method()).isEqualTo(Method.TRANSIENT);
        assertThat(load.ratio().orElseThrow()).isGreaterThan(1);
        assertThat(load.dampingRange().orElseThrow().low()).isLessThanOrEqualTo(load.value());
        assertThat(load.dampingRange().orElseThrow().high()).isGreaterThanOrEqualTo(load.value());
        assertThat(load.dampingRange().orElseThrow().high()
                        - load.dampingRange().orElseThrow().low())
                .isPositive();
    }

    @Test
    void criteriaAreMetOnlyWhereEverythingWasComputed() {
        assertThat(status(FOLLOWED, 0)).isEqualTo(Status.MET);
        assertThat(status(FOLLOWED, 1)).isEqualTo(Status.MET);
        assertThat(status(FOLLOWED, 2)).isEqualTo(Status.NOT_MET);

        assertThat(LEFT_OUT.motion()).isEqualTo(MotionScope.LEFT_OUT);
        assertThat(LEFT_OUT.followed()).isEmpty();
        assertThat(status(LEFT_OUT, 0)).isEqualTo(Status.NOT_EVALUATED);
        assertThat(LEFT_OUT.criteria().get(0).result().reason()).contains("not followed in time");
        assertThat(status(LEFT_OUT, 1)).as("a free fall needs no motion").isEqualTo(Status.MET);
        assertThat(status(LEFT_OUT, 2)).isEqualTo(Status.NOT_MET);
        assertThat(LEFT_OUT.criteria().get(2).remark()).contains("not followed in time");
        assertThat(LEFT_OUT.warnings())
                .extracting(Warning::code)
                .contains(Warning.Code.CRITERION_NOT_EVALUATED, Warning.Code.NOT_COMPUTED);
        assertThat(LEFT_OUT.notComputed()).extracting(NotComputed::what).contains("arrests in time");
    }

    @Test
    void theBasisIsAChoice() {
        AssessmentResult balance =
                PLAIN.withoutMotion().withBasis(Basis.ENERGY_BALANCE).solve(DESIGN);
        assertThat(status(balance, 0)).isEqualTo(Status.MET);
        assertThat(balance.basis()).isEqualTo(Basis.ENERGY_BALANCE);
        assertThat(balance.governing("endAnchorLoad").orElseThrow().method()).isEqualTo(Method.ENERGY_BALANCE);

        AssessmentResult nothing =
                PLAIN.withoutMotion().withBasis(Basis.IN_TIME).solve(DESIGN);
        assertThat(status(nothing, 0)).isEqualTo(Status.NOT_EVALUATED);
        assertThat(nothing.criteria())
                .extracting(c -> c.result().reason())
                .containsOnly("arrests were not followed in time");
        assertThat(Basis.keys()).containsExactly("larger-of-both", "energy-balance", "in-time");
        assertThat(Basis.of("in-time")).contains(Basis.IN_TIME);
        assertThat(Basis.of("")).isEmpty();
    }

    /** Every criterion on what an arrest gives says why there is none; facts of the design are judged all the same. */
    @Test
    void criteriaWithoutAnyArrestSayWhy() {
        AssessmentResult nothing = Assessment.withDefaults()
                .withCriteria(List.of(
                        Criterion.stated("strength", CheckedQuantity.STRENGTH_FACTOR, 2, "test"),
                        Criterion.stated("impact", CheckedQuantity.IMPACT_STRENGTH, 1, "test"),
                        Criterion.stated("margin", CheckedQuantity.of(Quantity.CLEARANCE_MARGIN), 0, "test"),
                        Criterion.stated("height", CheckedQuantity.FREE_HEIGHT, 0, "test"),
                        Criterion.stated("north", CheckedQuantity.loadOnSupport("north"), 20e3, "test"),
                        Criterion.stated("posts", CheckedQuantity.of(Quantity.INTERMEDIATE_ANCHOR_LOAD), 20e3, "test"),
                        Criterion.stated("span", CheckedQuantity.SPAN_LENGTH, 20, "test")))
                .withBasis(Basis.IN_TIME)
                .withoutMotion()
                .solve(DESIGN);
        String why = "arrests were not followed in time";
        assertThat(nothing.extremes().lacking()).isEqualTo(why);
        assertThat(nothing.criteria())
                .extracting(c -> c.result().reason())
                .containsExactly(
                        "cable: " + why + "; north: " + why + "; south: " + why,
                        "cable: " + why + "; north: " + why + "; south: " + why,
                        why,
                        why,
                        "north: " + why,
                        "there is no intermediate anchor",
                        "");
        assertThat(nothing.criteria())
                .extracting(c -> c.stated().reason())
                .as("by energy balance the stated falls were computed")
                .noneMatch(r -> r.contains("arrest"));
    }

    /** Ended before anything was followed in time: that is the reason, not that arrests cannot be computed. */
    @Test
    void whatWasEndedEarlyIsSaidSo() {
        AssessmentResult ended = PLAIN.withBasis(Basis.IN_TIME)
                .withProgress((done, total) -> false)
                .solve(DESIGN);
        assertThat(ended.isComplete()).isFalse();
        assertThat(ended.followed()).isEmpty();
        assertThat(ended.criteria().get(0).result().reason()).isEqualTo("the search in time was ended early");
    }

    @Test
    void modelFactorsAreInWhatIsJudged() {
        LifelineDesign factored =
                DESIGN.toBuilder().modelFactors(new ModelFactors(1.25, 1.1)).build();
        AssessmentResult result = PLAIN.withoutMotion().solve(factored);
        GoverningValue load = result.governing("endAnchorLoad").orElseThrow();
        assertThat(load.factored()).isEqualTo(1.25 * load.value(), within(1e-6));
        assertThat(load.value())
                .isEqualTo(LEFT_OUT.governing("endAnchorLoad").orElseThrow().value(), within(1e-3));
    }

    @Test
    void theSameForAnyNumberOfThreads() {
        ExecutorService threads = Executors.newFixedThreadPool(3);
        try {
            AssessmentResult parallel = PLAIN.withExecutor(threads).solve(DESIGN);
            assertThat(parallel.governing().stream().map(AssessmentTest::digits))
                    .containsExactlyElementsOf(FOLLOWED.governing().stream()
                            .map(AssessmentTest::digits)
                            .toList());
            assertThat(parallel.warnings()).isEqualTo(FOLLOWED.warnings());
            assertThat(parallel.followed()).hasSameSizeAs(FOLLOWED.followed());
        } finally {
            threads.shutdownNow();
        }
    }

    private static String digits(GoverningValue g) {
        return g.name() + g.value() + g.energyBalance() + g.inTime() + g.dampingRange() + g.fallCase();
    }

    @Test
    void aListenerEndsIt() {
        AssessmentResult ended = PLAIN.withProgress((done, total) -> false).solve(DESIGN);
        assertThat(ended.isComplete()).isFalse();
        assertThat(status(ended, 0)).isEqualTo(Status.NOT_EVALUATED);
        assertThat(ended.notComputed()).extracting(NotComputed::why).contains("it was ended early");
    }

    @Test
    void progressNeverGoesBackAndEnds() {
        long[] last = new long[2];
        PLAIN.withoutMotion()
                .withProgress((done, total) -> {
                    assertThat(done).isGreaterThanOrEqualTo(last[0]).isLessThanOrEqualTo(total);
                    last[0] = done;
                    last[1] = total;
                    return true;
                })
                .solve(DESIGN);
        assertThat(last[0]).isPositive().isEqualTo(last[1]);
    }

    @Test
    void strengthsAndClearanceThatDoNotSufficeAreWarnings() {
        LifelineDesign weak = DESIGN.withLine(DESIGN.line().withSupports(s -> s.withCapacity(Units.kN(10))));
        assertThat(PLAIN.withoutMotion().solve(weak).warnings())
                .filteredOn(w -> w.code() == Warning.Code.ANCHOR_CAPACITY)
                .hasSize(2)
                .allSatisfy(w -> {
                    assertThat(w.value()).isGreaterThan(10e3);
                    assertThat(w.limit()).isEqualTo(10e3);
                    assertThat(w.unit()).isEqualTo("N");
                });
    }

    @Test
    void aDesignWithoutFallsIsAssessedToo() {
        LifelineDesign none =
                Designs.design(1, Passage.free(), Attachment.GRIPPED).withFalls(List.<Fall>of());
        AssessmentResult result = Assessment.withDefaults().withoutMotion().solve(none);
        assertThat(result.stated().searched()).isTrue();
        assertThat(result.warnings()).extracting(Warning::code).doesNotContain(Warning.Code.WORSE_THAN_STATED);
        assertThat(result.governing("endAnchorLoad")).isPresent();
        Place place = result.governing("endAnchorLoad")
                .orElseThrow()
                .fallCase()
                .fall()
                .place();
        assertThat(place.span()).isEqualTo(1);
    }

    /** A stop without stiffness is arrested by nothing at a rigid support: that stands once, and no criterion is met. */
    @Test
    void whatFailsForOneReasonIsSaidOnce() {
        AssessmentResult result = Assessment.withDefaults()
                .withoutMotion()
                .withBasis(Basis.ENERGY_BALANCE)
                .withCriteria(
                        List.of(Criterion.stated("load", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 1e9, "test")))
                .solve(Designs.rigidStop());
        assertThat(result.notComputed())
                .filteredOn(n -> n.why().contains("state the stiffness of the stop"))
                .hasSize(1)
                .allSatisfy(n -> assertThat(n.what()).endsWith(" more cases"));
        assertThat(result.criteria().get(0).result().status()).isNotEqualTo(Status.MET);
    }
}
