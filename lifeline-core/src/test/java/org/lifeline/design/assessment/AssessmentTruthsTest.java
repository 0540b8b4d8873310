package org.lifeline.design.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.motion.ForceFilter;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.Tolerances;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.absorber.DeploymentForce;

/** What holds of every assessment, on one span without motion. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class AssessmentTruthsTest {
    private static final LifelineDesign DESIGN = design(100);
    private static final Assessment PLAIN = Assessment.withDefaults().withoutMotion();
    private static final AssessmentResult RESULT = PLAIN.solve(DESIGN);

    private static LifelineDesign design(double mass) {
        LifelineDesign d = Designs.design(1, Passage.free(), Attachment.GRIPPED)
                .withTemperatures(List.of(15.0))
                .withWorkers(w -> w.withMass(mass));
        return d.withFalls(List.of(
                Fall.builder("f").at(Place.of(1, 3)).faller(d.workers().get(0)).build()));
    }

    private static Criterion load(double limit) {
        return Criterion.stated("load", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), limit, "brief 1");
    }

    // Values.

    @Test
    void nothingGovernsLessThanTheStatedFalls() {
        for (GoverningValue g : RESULT.governing()) {
            g.quantity().filter(q -> q != Quantity.SUPPORT_LOAD).ifPresent(q -> {
                double stated = RESULT.stated().extremes().of(q).orElseThrow().value();
                double sign = q.largestIsWorst() ? 1 : -1;
                assertThat(sign * g.factored()).as(q.key()).isGreaterThanOrEqualTo(sign * stated - 1e-9);
            });
        }
    }

    /** Forty places on both sides of the force, each by itself: none is worse than what governs. */
    @Test
    void noPlaceOnTheLineIsWorseThanWhatGoverns() {
        for (int i = 1; i < 40; i++) {
            for (DeploymentForce side : DeploymentForce.values()) {
                ArrestResult r = EnergyBalance.withDefaults()
                        .withSide(side)
                        .withClearance(DESIGN.clearance())
                        .solve(DESIGN.line(), DESIGN.falls().get(0).at(Place.of(1, 12 * i / 40.0)));
                for (GoverningValue g : RESULT.governing()) {
                    Optional<Quantity> q = g.quantity().filter(x -> x != Quantity.SUPPORT_LOAD);
                    if (q.isPresent()) {
                        double sign = q.get().largestIsWorst() ? 1 : -1;
                        double here = sign * q.get().value(r, DESIGN.modelFactors());
                        // The search stops at gains of 1e-4 of the value, 0.1 N and 0.01 mm.
                        assertThat(here)
                                .as("%s at %d/40", g.name(), i)
                                .isLessThanOrEqualTo(sign * g.factored() + 1e-4 * Math.abs(here) + 1e-5);
                    }
                }
            }
        }
    }

    @Test
    void withoutMotionEverythingComesFromTheEnergyBalance() {
        assertThat(RESULT.followed()).isEmpty();
        assertThat(RESULT.inTime().all()).isEmpty();
        for (GoverningValue g : RESULT.governing()) {
            assertThat(g.method()).isEqualTo(Method.ENERGY_BALANCE);
            assertThat(g.inTime()).isEmpty();
            assertThat(g.inTimeExtreme()).isEmpty();
            assertThat(g.allowance()).isEmpty();
            assertThat(g.ratio()).isEmpty();
            assertThat(g.dampingRange()).isEmpty();
            assertThat(g.energyBalance()).hasValue(g.value());
            assertThat(g.balanceExtreme().orElseThrow().value()).isEqualTo(g.factored());
            assertThat(g.toString()).endsWith(", " + Method.ENERGY_BALANCE.label());
            assertThat(RESULT.governing(g.name())).containsSame(g);
        }
        assertThat(RESULT.governing()).extracting(GoverningValue::name).doesNotHaveDuplicates();
        assertThat(RESULT.governing("no such value")).isEmpty();
        assertThat(RESULT.isComplete()).isTrue();
    }

    /** Heavier workers load no anchor less and need no less clearance. */
    @Test
    void heavierWorkersAreNeverBetter() {
        AssessmentResult before = PLAIN.solve(design(60));
        for (double mass : new double[] {80, 120}) {
            AssessmentResult heavier = PLAIN.solve(design(mass));
            for (String name : List.of("endAnchorLoad", "maximumTension", "requiredBelowLine", "totalFallDistance")) {
                assertThat(heavier.governing(name).orElseThrow().factored())
                        .as("%s of %s kg", name, mass)
                        .isGreaterThanOrEqualTo(
                                before.governing(name).orElseThrow().factored() - 1e-6);
            }
            before = heavier;
        }
    }

    @Test
    void aSymmetricLineLoadsBothAnchorsAlike() {
        double north = RESULT.governing("load on north").orElseThrow().value();
        double south = RESULT.governing("load on south").orElseThrow().value();
        assertThat(south).isEqualTo(north, within(1e-3 * north));
        assertThat(RESULT.governing("endAnchorLoad").orElseThrow().value()).isEqualTo(Math.max(north, south));
        assertThat(RESULT.governing("load on north").orElseThrow().support()).contains("north");
        assertThat(RESULT.governing("endAnchorLoad").orElseThrow().support()).isEmpty();
    }

    /** Forces by 1.25; distances by 1.1 on what line and subsystem give; the free fall by neither. */
    @Test
    void modelFactorsAreOnWhatTheyAreMadeFor() {
        AssessmentResult r = PLAIN.solve(DESIGN.toBuilder()
                .modelFactors(new ModelFactors(1.25, 1.1, "test"))
                .build());
        for (GoverningValue g : r.governing()) {
            if (g.unit().equals("N")) {
                assertThat(g.factored()).as(g.name()).isEqualTo(1.25 * g.value(), within(1e-9 * g.factored()));
            }
        }
        GoverningValue total = r.governing("totalFallDistance").orElseThrow();
        double given = total.arrest().deployment() + total.arrest().lineDescent();
        assertThat(total.factored()).isEqualTo(total.value() + 0.1 * given, within(1e-9));
        GoverningValue free = r.governing("freeFall").orElseThrow();
        assertThat(free.factored()).isEqualTo(free.value(), within(1e-12));
    }

    /** A line with the pretension anywhere in its tolerance is nowhere worse than the assessment with it. */
    @Test
    void tolerancesCoverWhatLiesInside() {
        AssessmentResult wide = PLAIN.withTolerances(Tolerances.none().withPretension(Interval.of(0.7, 1.4)))
                .solve(DESIGN);
        for (String name : List.of("endAnchorLoad", "requiredBelowLine")) {
            assertThat(wide.governing(name).orElseThrow().factored())
                    .isGreaterThan(RESULT.governing(name).orElseThrow().factored());
        }
        assertThat(wide.envelope().tolerances().pretension()).contains(Interval.of(0.7, 1.4));
    }

    @Test
    void everyGoverningArrestIsCheckedOnce() {
        assertThat(RESULT.checks()).isNotEmpty().allMatch(IndependentCheck::passed);
        assertThat(RESULT.checks().stream()
                        .map(c -> c.method()
                                + c.fallCase().describe()
                                + c.fallCase().fall().place()))
                .doesNotHaveDuplicates();
        for (GoverningValue g : RESULT.governing()) {
            assertThat(RESULT.checks())
                    .anySatisfy(c -> assertThat(c.fallCase().describe())
                            .isEqualTo(g.fallCase().describe()));
        }
    }

    // Verdicts.

    @ParameterizedTest
    @CsvSource({"1.000001, true", "0.999999, false"})
    void aCriterionIsMetUpToItsLimit(double factor, boolean met) {
        double worst = RESULT.governing("endAnchorLoad").orElseThrow().factored();
        AssessedCriterion c = PLAIN.withBasis(Basis.ENERGY_BALANCE)
                .withCriteria(List.of(load(factor * worst)))
                .solve(DESIGN)
                .criteria()
                .get(0);
        assertThat(c.result().isMet()).isEqualTo(met);
        assertThat(c.result().ratio()).isEqualTo(1 / factor, within(1e-9));
        // The stated fall beside the middle meets both.
        assertThat(c.stated().isMet()).isTrue();
        assertThat(c.remark()).isEmpty();
    }

    @Test
    void whatTheVerdictsRestOnIsSaid() {
        assertThat(PLAIN.withBasis(Basis.ENERGY_BALANCE).solve(DESIGN).restsOn())
                .isEqualTo("Verdicts rest on energy balance with the stated model factors.");
        assertThat(PLAIN.withBasis(Basis.IN_TIME).solve(DESIGN).restsOn()).contains("which were left out");
        assertThat(RESULT.restsOn()).contains("is not met without arrests in time");
    }

    @Test
    void onArrestsInTimeThatWereLeftOutNothingGoverns() {
        AssessmentResult r =
                PLAIN.withBasis(Basis.IN_TIME).withCriteria(List.of(load(1e9))).solve(DESIGN);
        assertThat(r.governing()).isEmpty();
        assertThat(r.criteria().get(0).result().isMet()).isFalse();
        assertThat(r.balance().of(Quantity.END_ANCHOR_LOAD)).isPresent();
    }

    /** The extremes that an analysis of worst cases gives are those of the whole assessment. */
    @Test
    void asWorstCasesItGivesItsExtremes() {
        Extremes e = PLAIN.extremes(DESIGN);
        assertThat(e.of(Quantity.SAG).orElseThrow().value())
                .isEqualTo(RESULT.extremes().of(Quantity.SAG).orElseThrow().value());
        Extremes joined = Extremes.joined(
                DesignAnalysis.withDefaults().extremes(DESIGN),
                List.of(Envelope.withDefaults().extremes(DESIGN)));
        assertThat(e.of(Quantity.SAG).orElseThrow().value())
                .isEqualTo(joined.of(Quantity.SAG).orElseThrow().value());
    }

    // Ended early.

    /** Whenever the listener stops it, the result says so and meets no criterion that rests on the search. */
    @ParameterizedTest
    @CsvSource({"1", "2", "5"})
    void whatWasEndedEarlyMeetsNothing(int calls) {
        int[] left = {calls};
        AssessmentResult r = PLAIN.withBasis(Basis.ENERGY_BALANCE)
                .withCriteria(List.of(load(1e9)))
                .withProgress((done, total) -> --left[0] > 0)
                .solve(DESIGN);
        assertThat(r.isComplete()).isFalse();
        assertThat(r.notComputed()).contains(new NotComputed("the rest of the search", "it was ended early"));
        assertThat(r.criteria().get(0).result().isMet()).isFalse();
    }

    // Settings.

    @Test
    void eachSettingIsInTheCanonicalForm() {
        List<Assessment> all = List.of(
                Assessment.withDefaults(),
                PLAIN,
                Assessment.withDefaults().withBasis(Basis.IN_TIME),
                Assessment.withDefaults().withCriteria(List.of(load(1))),
                Assessment.withDefaults().withTolerances(Tolerances.none().withMass(Interval.of(80, 120))),
                Assessment.withDefaults().withForceFilter(ForceFilter.LOW_PASS_100_HZ));
        List<String> forms = new ArrayList<>();
        all.forEach(a -> forms.add(a.canonicalForm().toString()));
        assertThat(forms).doesNotHaveDuplicates();
        assertThat(all.get(0).canonicalForm())
                .isEqualTo(Assessment.withDefaults().canonicalForm());
        assertThat(RESULT.canonicalForm()).isEqualTo(PLAIN.solve(DESIGN).canonicalForm());
        assertThat(RESULT.canonicalForm()).isNotEqualTo(PLAIN.solve(design(90)).canonicalForm());
    }

    @Test
    void whatIsMissingIsNamed() {
        Assessment a = Assessment.withDefaults();
        assertThatThrownBy(() -> a.withBasis(null))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("basis: null: must be given");
        assertThatThrownBy(() -> a.withCriteria(null)).hasMessage("criteria: null: must be given");
        assertThatThrownBy(() -> a.withTolerances(null)).hasMessage("tolerances: null: must be given");
        assertThatThrownBy(() -> a.withForceFilter(null)).hasMessage("forceFilter: null: must be given");
        assertThatThrownBy(() -> a.withExecutor(null)).hasMessage("executor: null: must be given");
        assertThatThrownBy(() -> a.withProgress(null)).hasMessage("progress: null: must be given");
    }

    // Pieces.

    /** By hand: 12 kN in time over 10 kN by energy balance is 1.2; over nothing there is no ratio. */
    @Test
    void theRatioIsThatOfTimeOverBalance() {
        Extreme slow = RESULT.balance().of(Quantity.FREE_FALL).orElseThrow();
        Extreme fast = RESULT.balance().of(Quantity.TOTAL_FALL_DISTANCE).orElseThrow();
        GoverningValue both =
                new GoverningValue(fast, Optional.of(slow), Optional.of(fast), Optional.of(Interval.of(1, 2)));
        assertThat(both.ratio().orElseThrow()).isEqualTo(fast.computed() / slow.computed());
        assertThat(both.inTime()).hasValue(fast.computed());
        assertThat(both.allowance()).hasValue(0);
        assertThat(both.dampingRange()).contains(Interval.of(1, 2));
        assertThat(new GoverningValue(fast, Optional.empty(), Optional.of(fast), Optional.empty()).ratio())
                .isEmpty();
        assertThat(new GoverningValue(slow, Optional.of(slow), Optional.empty(), Optional.empty()).ratio())
                .isEmpty();
        Extreme swing = RESULT.balance().of(Quantity.SWING_DROP).orElse(null);
        if (swing != null && swing.computed() == 0) {
            assertThat(new GoverningValue(fast, Optional.of(swing), Optional.of(fast), Optional.empty()).ratio())
                    .isEmpty();
        }
    }

    /** A case that the analysis in time refuses is named with its reason, in every way of following it. */
    @Test
    void anArrestThatCannotBeFollowedIsNamed() {
        FallCase good = RESULT.governing("endAnchorLoad").orElseThrow().fallCase();
        FallCase bad = good.at(Place.of(1, 15));
        Follower follower = new Follower(ClearanceRules.commonPractice());
        Follower.Task task = Follower.Task.of(bad, DESIGN.line());
        for (Follower.Attempt each : List.of(follower.fine(task), follower.damped(task, 0.25))) {
            assertThat(each.arrest()).isNull();
            assertThat(each.failure().what()).isEqualTo(bad.describe() + ", in time");
            assertThat(each.failure().why()).isNotBlank();
            assertThat(each.task().key())
                    .isEqualTo(
                            new Follower.Key(bad.describe(), bad.fall().place().toString()));
            assertThatThrownBy(each::followed).isInstanceOf(NullPointerException.class);
        }
        assertThat(Follower.Task.of(good, DESIGN.line()).key()).isNotEqualTo(task.key());
    }
}
