package org.lifeline.design.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.Interval;
import org.lifeline.base.Point;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.Tolerances;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.cable.Cable;

/** Each warning from both sides of its limit, by energy balance on one span with a gripped attachment at one temperature. */
class AssessmentWarningsTest {
    private static final Worker WORKER = Designs.worker("A", Attachment.GRIPPED);
    private static final AssessmentResult PLAIN = solve(design(12, 0, 1500, 6));

    private static LifelineDesign design(double run, double rise, double pretension, double station) {
        return LifelineDesign.builder("one span")
                .line(Lifeline.builder()
                        .cable(Cable.builder()
                                .massPerLength(0.576)
                                .axialStiffness(4.9e6)
                                .build())
                        .endAnchor("a", Point.of(0, 0, 12.4))
                        .endAnchor("b", Point.of(run, 0, 12.4 + rise))
                        .pretension(pretension)
                        .build())
                .worker(WORKER)
                .fall(Fall.builder("f").at(Place.of(1, station)).faller(WORKER).build())
                .build();
    }

    private static LifelineDesign changed(UnaryOperator<LifelineDesign.Builder> change) {
        return change.apply(PLAIN.design().toBuilder()).build();
    }

    private static AssessmentResult solve(LifelineDesign design, Criterion... criteria) {
        return Assessment.withDefaults()
                .withBasis(Basis.ENERGY_BALANCE)
                .withCriteria(List.of(criteria))
                .withoutMotion()
                .solve(design);
    }

    private static List<Warning> of(AssessmentResult r, Warning.Code code) {
        return r.warnings().stream().filter(w -> w.code() == code).toList();
    }

    private static double worst(String name) {
        return PLAIN.governing(name).orElseThrow().factored();
    }

    // Strengths.

    private static LifelineDesign capacities(double a, double b) {
        return changed(x ->
                x.line(PLAIN.design().line().withSupports(s -> s.withCapacity(s.id().equals("a") ? a : b))));
    }

    @Test
    void anAnchorIsWarnedOfAboveItsCapacityOnly() {
        double a = worst("load on a");
        double b = worst("load on b");
        assertThat(of(solve(capacities(a * (1 + 1e-9), b * (1 + 1e-9))), Warning.Code.ANCHOR_CAPACITY))
                .isEmpty();
        assertThat(of(solve(capacities(a * (1 + 1e-9), b * (1 - 1e-6))), Warning.Code.ANCHOR_CAPACITY))
                .singleElement()
                .satisfies(w -> {
                    assertThat(w.subject()).isEqualTo("b");
                    assertThat(w.value()).isEqualTo(b, within(1e-6 * b));
                    assertThat(w.limit()).isEqualTo(b * (1 - 1e-6));
                    assertThat(w.unit()).isEqualTo("N");
                    assertThat(w.place()).contains("f");
                });
        assertThat(of(PLAIN, Warning.Code.ANCHOR_CAPACITY))
                .as("no capacity is stated")
                .isEmpty();
    }

    @Test
    void strengthsAreComparedWithTheModelFactorInTheLoad() {
        double a = worst("load on a");
        LifelineDesign d = capacities(1.2 * a, 1.2 * a);
        assertThat(of(solve(d), Warning.Code.ANCHOR_CAPACITY)).isEmpty();
        LifelineDesign factored =
                d.toBuilder().modelFactors(new ModelFactors(1.25, 1, "test")).build();
        assertThat(of(solve(factored), Warning.Code.ANCHOR_CAPACITY)).hasSize(2);
    }

    /** Breaking strength times efficiency: 0.8 of it is what the cable holds with its terminations. */
    @Test
    void theCableIsWarnedOfAboveWhatItsTerminationsHold() {
        double t = worst("maximumTension");
        for (double factor : new double[] {1 + 1e-6, 1 - 1e-6}) {
            Lifeline line = PLAIN.design().line();
            LifelineDesign d = changed(x -> x.line(line.withCable(line.cable().toBuilder()
                    .breakingStrength(factor * t / 0.8)
                    .terminationEfficiency(0.8)
                    .build())));
            List<Warning> list = of(solve(d), Warning.Code.CABLE_STRENGTH);
            assertThat(list).hasSize(factor > 1 ? 0 : 1);
            assertThat(list).allSatisfy(w -> {
                assertThat(w.subject()).isEqualTo("cable");
                assertThat(w.limit()).isEqualTo(factor * t, within(1e-6));
            });
        }
    }

    // Clearance.

    @Test
    void aLackingClearanceIsWarnedOfBelowZeroOnly() {
        double required =
                PLAIN.balance().of(Quantity.REQUIRED_ELEVATION).orElseThrow().value();
        for (double margin : new double[] {1e-6, -1e-6}) {
            LifelineDesign d = changed(x -> x.clearance(ClearanceRules.commonPractice()
                    .withObstructions(List.of(new Obstruction(0, 12, required - margin)))));
            AssessmentResult r = solve(d);
            assertThat(r.governing("clearanceMargin").orElseThrow().factored()).isEqualTo(margin, within(1e-9));
            assertThat(of(r, Warning.Code.CLEARANCE_LACKING)).hasSize(margin < 0 ? 1 : 0);
        }
    }

    /** Of two obstructions each has its margin, and the lesser one is that of the line. */
    @Test
    void severalObstructionsHaveAMarginEach() {
        LifelineDesign two = changed(x -> x.clearance(ClearanceRules.commonPractice()
                .withObstructions(List.of(new Obstruction(0, 12, 3), new Obstruction(0, 12, 4)))));
        AssessmentResult r = solve(two);
        double low = r.governing("margin above obstruction 1").orElseThrow().factored();
        double high = r.governing("margin above obstruction 2").orElseThrow().factored();
        assertThat(low - high).isEqualTo(1, within(1e-9));
        assertThat(r.governing("clearanceMargin").orElseThrow().factored()).isEqualTo(high, within(1e-9));
        LifelineDesign one = changed(
                x -> x.clearance(ClearanceRules.commonPractice().withObstructions(List.of(new Obstruction(0, 12, 3)))));
        assertThat(solve(one).governing("margin above obstruction 1"))
                .as("of one it would be the same")
                .isEmpty();
    }

    // Elsewhere on the line.

    /** The stated fall at midspan is the worst of a level span: nothing elsewhere is notably worse. */
    @Test
    void whatIsWorstWhereItIsStatedIsNoWarning() {
        assertThat(of(PLAIN, Warning.Code.WORSE_THAN_STATED))
                .extracting(Warning::subject)
                .doesNotContain("end anchor load", "maximum tension of the cable", "clearance required below the line");
    }

    /** One percent of a force and 10 mm: every warning by the difference, and every difference by a warning. */
    @ParameterizedTest
    @CsvSource({"1", "3", "5", "5.9"})
    void aNotablyWorsePlaceIsAWarning(double station) {
        AssessmentResult r = solve(design(12, 0, 1500, station));
        List<String> expected = new ArrayList<>();
        for (GoverningValue g : r.governing()) {
            g.quantity().filter(q -> q != Quantity.SUPPORT_LOAD).ifPresent(q -> {
                double here = r.stated().extremes().of(q).orElseThrow().value();
                double more = q.largestIsWorst() ? g.factored() - here : here - g.factored();
                if (more > (q.isForce() ? 0.01 * Math.abs(here) : 0.01)) {
                    expected.add(q.words());
                }
            });
        }
        assertThat(of(r, Warning.Code.WORSE_THAN_STATED))
                .extracting(Warning::subject)
                .containsExactlyElementsOf(expected);
        assertThat(expected.isEmpty()).isEqualTo(station > 5.5);
    }

    // Shape of the line.

    /** CEN/TS 16415:2013 draws its line at 15°: the run of 12 m and a rise of 12 tan 15°. */
    @Test
    void aSpanSteeperThanFifteenDegreesIsWarnedOf() {
        double edge = 12 * Math.tan(Math.toRadians(15));
        for (double rise : new double[] {edge - 1e-6, edge + 1e-6, -edge - 1e-6}) {
            List<Warning> list = of(solve(design(12, rise, 1500, 6)), Warning.Code.STEEP_SPAN);
            if (Math.abs(rise) < edge) {
                assertThat(list).isEmpty();
            } else {
                assertThat(list).singleElement().satisfies(w -> {
                    assertThat(w.subject()).isEqualTo("span 1");
                    assertThat(w.value()).isEqualTo(Math.toRadians(15), within(1e-6));
                    assertThat(w.unit()).isEqualTo("rad");
                });
            }
        }
    }

    /** Tension over load: by the flattest of the arrests that govern, whichever it is, and six is the limit. */
    @ParameterizedTest
    @CsvSource({"1500, 12", "9000, 12", "25000, 12", "25000, 30"})
    void aFlatLineIsWarnedOfByItsFlattestArrest(double pretension, double run) {
        AssessmentResult r = solve(design(run, 0, pretension, run / 2));
        double flattest = r.governing().stream()
                .map(GoverningValue::arrest)
                .mapToDouble(a -> a.maximumTension() / a.lineLoad())
                .max()
                .orElseThrow();
        List<Warning> list = of(r, Warning.Code.FLAT_LINE);
        assertThat(list).hasSize(flattest > 6 ? 1 : 0);
        assertThat(list).allSatisfy(w -> {
            assertThat(w.value()).isEqualTo(flattest);
            assertThat(w.limit()).isEqualTo(6);
        });
    }

    @ParameterizedTest
    @CsvSource({"1, 1, 0", "0.999, 1, 1", "1, 0.999, 1", "1.2, 0.5, 1", "1.2, 1.1, 0"})
    void aModelFactorBelowOneIsWarnedOf(double force, double distance, int number) {
        AssessmentResult r = solve(changed(x -> x.modelFactors(new ModelFactors(force, distance, "test"))));
        assertThat(of(r, Warning.Code.MODEL_FACTOR_BELOW_ONE)).hasSize(number).allSatisfy(w -> {
            assertThat(w.value()).isEqualTo(Math.min(force, distance));
            assertThat(w.limit()).isEqualTo(1);
        });
    }

    // What was not computed, not evaluated, not confirmed.

    @Test
    void whatWasLeftOutIsSaid() {
        assertThat(of(PLAIN, Warning.Code.NOT_COMPUTED)).singleElement().satisfies(w -> {
            assertThat(w.subject()).isEqualTo("arrests in time");
            assertThat(w.text()).isEqualTo("not computed: they were left out");
        });
    }

    /** A capacity that no support states cannot be compared with anything. */
    @Test
    void aCriterionThatCannotBeEvaluatedIsSaid() {
        Criterion margin = Criterion.stated("margin", CheckedQuantity.of(Quantity.CLEARANCE_MARGIN), 0.5, "brief 1");
        AssessmentResult r = solve(PLAIN.design(), margin);
        assertThat(of(r, Warning.Code.CRITERION_NOT_EVALUATED)).singleElement().satisfies(w -> {
            assertThat(w.subject()).isEqualTo("margin");
            assertThat(w.text()).startsWith("not evaluated, ");
        });
        assertThat(of(r, Warning.Code.MET_BUT_FOR_MESH)).isEmpty();
    }

    /** An energy balance has no mesh: what fails by it fails by itself. */
    @Test
    void aCriterionThatFailsByEnergyBalanceIsNotMetButForTheMesh() {
        Criterion low = Criterion.stated("low", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 1e3, "brief 1");
        AssessmentResult r = solve(PLAIN.design(), low);
        assertThat(r.criteria().get(0).result().isMet()).isFalse();
        assertThat(of(r, Warning.Code.MET_BUT_FOR_MESH)).isEmpty();
    }

    @Test
    void aFailedCheckIsTheFirstThingToBeSaid() {
        IndependentCheck failed = new IndependentCheck(
                PLAIN.checks().get(0).fallCase(), Method.ENERGY_BALANCE, List.of("first cause", "second cause"));
        AssessmentResult r = withChecks(Basis.ENERGY_BALANCE, failed);
        Warning first = r.warnings().get(0);
        assertThat(first.code()).isEqualTo(Warning.Code.CHECK_FAILED);
        assertThat(first.text()).contains("do not use the result").endsWith("first cause");
        assertThat(first.subject()).isEqualTo(failed.fallCase().describe());
    }

    private static AssessmentResult withChecks(Basis basis, IndependentCheck... checks) {
        MotionSearch nothing = new MotionSearch(
                new MotionSearch.Known(PLAIN.balance(), PLAIN.forceFilter()),
                Envelope.withDefaults(),
                null,
                new StagedProgress((done, total) -> true));
        return new AssessmentResult(
                new AssessmentResult.Basics(
                        basis,
                        false,
                        PLAIN.forceFilter(),
                        List.of(Criterion.stated(
                                "load", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 1e9, "brief 1"))),
                new AssessmentResult.Computed(PLAIN.stated(), PLAIN.envelope(), PLAIN.balance(), nothing, null),
                List.of(checks));
    }

    /** A check of the method that verdicts rest on takes the verdict away; one of the other method does not. */
    @Test
    void aFailedCheckTakesTheVerdictAway() {
        IndependentCheck passed =
                new IndependentCheck(PLAIN.checks().get(0).fallCase(), Method.ENERGY_BALANCE, List.of());
        IndependentCheck slow = new IndependentCheck(passed.fallCase(), Method.ENERGY_BALANCE, List.of("x"));
        IndependentCheck fast = new IndependentCheck(passed.fallCase(), Method.TRANSIENT, List.of("x"));
        assertThat(withChecks(Basis.ENERGY_BALANCE, passed)
                        .criteria()
                        .get(0)
                        .result()
                        .isMet())
                .isTrue();
        assertThat(withChecks(Basis.ENERGY_BALANCE, passed, fast)
                        .criteria()
                        .get(0)
                        .result()
                        .isMet())
                .isTrue();
        AssessmentResult r = withChecks(Basis.ENERGY_BALANCE, passed, slow, slow, fast);
        assertThat(r.criteria().get(0).result().isMet()).isFalse();
        assertThat(r.criteria().get(0).result().reason())
                .contains("the independent check of 2 governing arrests failed");
        assertThat(withChecks(Basis.LARGER_OF_BOTH, slow, fast)
                        .criteria()
                        .get(0)
                        .result()
                        .reason())
                .contains("the independent check of 2 governing arrests failed");
    }

    @Test
    void warningsOfOneKindStandTogether() {
        AssessmentResult r = solve(capacities(1e3, 1e3));
        List<List<Warning>> groups = r.warningsByKind();
        assertThat(groups.stream().flatMap(List::stream)).containsExactlyInAnyOrderElementsOf(r.warnings());
        assertThat(groups)
                .allSatisfy(g -> assertThat(
                                g.stream().map(w -> w.code() + w.text()).distinct())
                        .hasSize(1));
        assertThat(groups.stream().map(g -> g.get(0).code() + g.get(0).text())).doesNotHaveDuplicates();
        assertThat(groups)
                .anySatisfy(g -> assertThat(g).extracting(Warning::subject).containsExactly("a", "b"));
    }

    /** The worst of one kind that arrests say of themselves stands once, and strengths are not said twice. */
    @Test
    void whatArrestsSayOfThemselvesStandsOnce() {
        Worker small = Designs.worker("A", Attachment.GRIPPED).withMass(400);
        LifelineDesign heavy =
                changed(x -> x).withWorkers(w -> small).toBuilder().build();
        AssessmentResult r = solve(heavy);
        List<Warning> bottomed = of(r, Warning.Code.BOTTOMED_OUT);
        assertThat(bottomed).isNotEmpty();
        assertThat(bottomed).extracting(Warning::subject).doesNotHaveDuplicates();
        ArrestResult direct = EnergyBalance.withDefaults()
                .withSide(DeploymentForce.CLEARANCE)
                .solve(heavy.line(), heavy.falls().get(0));
        assertThat(direct.bottomedOut()).isTrue();
        assertThat(heavy.line().supports()).extracting(Support::capacity).allMatch(c -> c.isEmpty());
    }

    /** A range of masses, and two who fall together: they are given the same mass, and the result says so. */
    @Test
    void massesOfThoseWhoFallTogetherAreTakenAlike() {
        Worker other = WORKER.toBuilder("B").build();
        LifelineDesign pair = PLAIN.design().toBuilder()
                .worker(other)
                .fall(Fall.builder("pair")
                        .at(Place.of(1, 6))
                        .faller(WORKER)
                        .faller(other)
                        .build())
                .build();
        Assessment ranged = Assessment.withDefaults()
                .withBasis(Basis.ENERGY_BALANCE)
                .withTolerances(Tolerances.none().withMass(Interval.of(60, 140)))
                .withoutMotion();
        assertThat(of(ranged.solve(pair), Warning.Code.MASSES_TAKEN_ALIKE))
                .extracting(Warning::subject)
                .containsExactly("pair");
        assertThat(of(ranged.solve(PLAIN.design()), Warning.Code.MASSES_TAKEN_ALIKE))
                .isEmpty();
        assertThat(of(solve(pair), Warning.Code.MASSES_TAKEN_ALIKE)).isEmpty();
    }
}
