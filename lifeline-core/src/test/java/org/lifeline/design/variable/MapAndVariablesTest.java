package org.lifeline.design.variable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.lifeline.design.variable.PlainSearch.BASE;
import static org.lifeline.design.variable.PlainSearch.NOTHING;
import static org.lifeline.design.variable.PlainSearch.span;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.Interval;
import org.lifeline.base.Refusal;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.Designs;
import org.lifeline.model.Attachment;
import org.lifeline.model.Installed;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;

/** Maps over two variables whose cells are known in closed form; names, units and refusals of the variables. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class MapAndVariablesTest {
    private static final Interval ANY = Interval.of(0.01, 1e7);
    private static final Criterion CAPACITY =
            Criterion.stated("capacity", CheckedQuantity.ANCHOR_CAPACITY, 16_000, "test");
    private static final Axis SPANS =
            new Axis(DesignVariables.spanLength(1, Interval.of(5, 20)), List.of(5.0, 9.0, 20.0));
    private static final Axis CAPACITIES =
            new Axis(DesignVariables.anchorCapacity(Interval.of(1e4, 4e4)), List.of(1e4, 2e4));

    private static DesignMap map() {
        return DesignMap.withCriteria(List.of(span(10), CAPACITY)).withAnalysis(NOTHING);
    }

    /** Each cell is the larger of length over 10 m and 16 kN over the capacity; each column the range of capacities. */
    @Test
    void cellsAreTheWorstRatioOfBothCriteria() {
        DesignMapResult r = map().solve(BASE, SPANS, CAPACITIES);
        assertThat(r.columns()).extracting(DesignMap.Column::value).containsExactly(5.0, 9.0, 20.0);
        for (DesignMap.Column c : r.columns()) {
            assertThat(c.cells()).extracting(Trial::value).containsExactly(1e4, 2e4);
            for (Trial t : c.cells()) {
                assertThat(t.ratio()).isCloseTo(Math.max(c.value() / 10, 16_000 / t.value()), within(1e-12));
                assertThat(t.governing()).isEqualTo(c.value() / 10 > 16_000 / t.value() ? "span" : "capacity");
            }
        }
        for (int i = 0; i < 2; i++) {
            assertThat(r.columns().get(i).range().intervals().get(0).low().value())
                    .isCloseTo(16_000, within(2e-4 * 3e4));
        }
        assertThat(r.columns().get(2).range().intervals())
                .as("20 m are too long")
                .isEmpty();
        assertThat(r.isComplete()).isTrue();
        assertThat(r.failed()).isZero();
        assertThat(r.incompleteBecause()).isEmpty();
        assertThat(r.asked()).isEqualTo(3);
    }

    @Test
    void cellsThatCannotBeAnalysedAreCountedAndTheFirstExplained() {
        Axis pretensions =
                new Axis(DesignVariables.pretension(Interval.of(1000, 90_000)), List.of(1000.0, 50_000.0, 90_000.0));
        DesignMapResult r = map().solve(BASE, SPANS, pretensions);
        assertThat(r.failed()).isEqualTo(6);
        assertThat(r.incompleteBecause().orElseThrow())
                .startsWith("6 cells could not be analysed, the first because: ")
                .contains("50000.0 N: is more than cable and terminations hold");
        assertThat(r.isComplete()).as("each cell has been tried").isTrue();
    }

    @Test
    void aMapThatIsStoppedTellsHowFarItCame() {
        List<Long> done = new ArrayList<>();
        DesignMapResult r = map().withProgress((n, total) -> {
                    done.add(n);
                    assertThat(total).isEqualTo(3);
                    return n < 2;
                })
                .solve(BASE, SPANS, CAPACITIES);
        assertThat(done).containsExactly(1L, 2L);
        assertThat(r.columns()).hasSize(2);
        assertThat(r.isComplete()).isFalse();
        assertThat(r.incompleteBecause()).contains("the map was ended after 2 of 3 columns");
    }

    @Test
    void bothReasonsOfAnIncompleteMapAreTold() {
        Axis pretensions = new Axis(DesignVariables.pretension(Interval.of(1000, 90_000)), List.of(90_000.0));
        DesignMapResult r = map().withProgress((n, total) -> false).solve(BASE, SPANS, pretensions);
        assertThat(r.incompleteBecause().orElseThrow())
                .startsWith(
                        "the map was ended after 1 of 3 columns; 1 cells could not be analysed, the first because: ");
    }

    @Test
    void whoeverDoesTheWorkTheMapIsTheSame() {
        DesignMapResult alone = map().solve(BASE, SPANS, CAPACITIES);
        DesignMapResult shared = map().withExecutor(Runnable::run).solve(BASE, SPANS, CAPACITIES);
        for (int i = 0; i < 3; i++) {
            assertThat(shared.columns().get(i).cells())
                    .isEqualTo(alone.columns().get(i).cells());
        }
    }

    @Test
    void mapsAreRefusedByTheNamesOfTheirParts() {
        assertThat(Refusal.paths(() -> DesignMap.withCriteria(null))).containsExactly("criteria");
        assertThat(Refusal.paths(() -> DesignMap.withCriteria(List.of()))).containsExactly("criteria");
        assertThat(Refusal.paths(() -> map().withAnalysis(null))).containsExactly("analysis");
        assertThat(Refusal.paths(() -> map().withExecutor(null))).containsExactly("executor");
        assertThat(Refusal.paths(() -> map().withProgress(null))).containsExactly("progress");
        assertThat(Refusal.paths(() -> map().solve(null, SPANS, CAPACITIES))).containsExactly("base");
        assertThat(Refusal.paths(() -> map().solve(BASE, null, CAPACITIES))).containsExactly("first");
        assertThat(Refusal.paths(() -> map().solve(BASE, SPANS, null))).containsExactly("second");
        assertThat(Refusal.paths(() -> new DesignMapResult(null, 0))).containsExactly("columns");
        assertThat(Refusal.paths(() -> new DesignMap.Column(1, Arrays.asList(new Trial(1, 1, "", ""), null), null)))
                .containsExactly("cells[1]");
    }

    @Test
    void partsOfAMapCannotBeChanged() {
        DesignMapResult r = map().solve(BASE, SPANS, CAPACITIES);
        assertThatThrownBy(() -> r.columns().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> r.columns().get(0).cells().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @ParameterizedTest
    @CsvSource({"0.5, true", "1, true", "1.0000000000000002, false", "Infinity, false", "NaN, false"})
    void aTrialIsFeasibleUpToARatioOfOne(double ratio, boolean feasible) {
        assertThat(new Trial(3, ratio, "c", "").isFeasible()).isEqualTo(feasible);
    }

    @Test
    void everyVariableHasNameUnitAndScale() {
        Function<DesignVariable, String> line = v -> v
                + (v.isWhole() ? " whole" : "")
                + (v.at(0.5) == 0.5 * (ANY.low() + ANY.high()) || v.isWhole() ? "" : " logarithmic");
        assertThat(List.of(
                                DesignVariables.pretension(ANY),
                                DesignVariables.initialSag(2, ANY),
                                DesignVariables.spanLength(3, ANY),
                                DesignVariables.spanLengths(ANY),
                                DesignVariables.lineElevation(ANY),
                                DesignVariables.anchorCapacity(ANY),
                                DesignVariables.supportStiffness("a", ANY),
                                DesignVariables.inlineActivation("a", ANY),
                                DesignVariables.deploymentForce(ANY),
                                DesignVariables.lanyardLength(ANY),
                                DesignVariables.workerMass(ANY),
                                DesignVariables.workersTogether(ANY),
                                DesignVariables.axialStiffness(ANY),
                                DesignVariables.breakingStrength(ANY),
                                DesignVariables.friction(ANY),
                                DesignVariables.temperature(ANY))
                        .stream()
                        .map(line))
                .containsExactly(
                        "pretension [N]",
                        "initial sag of span 2 [m]",
                        "length of span 3 [m]",
                        "span length [m]",
                        "elevation of the line [m]",
                        "capacity of the anchors [N]",
                        "stiffness of a [N/m] logarithmic",
                        "activation force of the in-line absorber at a [N]",
                        "maximum deployment force [N]",
                        "length of the connecting subsystem [m]",
                        "mass of the workers [kg]",
                        "workers who fall together whole",
                        "axial stiffness of the cable [N] logarithmic",
                        "minimum breaking strength [N]",
                        "friction at the intermediate anchors",
                        "temperature [°C]");
    }

    @Test
    void variablesOfNothingAreRefused() {
        for (Function<Interval, DesignVariable> each : List.<Function<Interval, DesignVariable>>of(
                DesignVariables::pretension,
                i -> DesignVariables.initialSag(1, i),
                i -> DesignVariables.spanLength(1, i),
                DesignVariables::spanLengths,
                DesignVariables::lineElevation,
                DesignVariables::anchorCapacity,
                i -> DesignVariables.supportStiffness("a", i),
                i -> DesignVariables.inlineActivation("a", i),
                DesignVariables::deploymentForce,
                DesignVariables::lanyardLength,
                DesignVariables::workerMass,
                DesignVariables::workersTogether,
                DesignVariables::axialStiffness,
                DesignVariables::breakingStrength,
                DesignVariables::friction,
                DesignVariables::temperature)) {
            assertThat(Refusal.paths(() -> each.apply(null))).containsExactly("bounds");
        }
        assertThat(Refusal.paths(() -> DesignVariables.supportStiffness(null, ANY)))
                .containsExactly("supportId");
        assertThat(Refusal.paths(() -> DesignVariables.inlineActivation(null, ANY)))
                .containsExactly("supportId");
        DesignVariable v = DesignVariables.pretension(ANY);
        assertThat(Refusal.paths(() -> v.apply(null, 1))).containsExactly("base");
        assertThat(Refusal.paths(() -> v.within(null))).containsExactly("value");
        assertThat(Refusal.paths(() -> DesignVariable.of("x", null, ANY, (d, x) -> d)))
                .containsExactly("unit");
        assertThat(Refusal.paths(() -> DesignVariable.of("x", "m", ANY, null))).containsExactly("change");
        assertThat(Refusal.paths(() -> DesignVariable.of(null, "m", ANY, (d, x) -> d)))
                .containsExactly("name");
        assertThat(Refusal.paths(() -> new Axis(null, List.of(1.0)))).containsExactly("variable");
        assertThat(Refusal.paths(() -> new Axis(v, null))).containsExactly("values");
        assertThat(Refusal.paths(() -> Axis.even(null, 3))).containsExactly("variable");
        assertThat(Refusal.paths(() -> Axis.even(v, 10_002))).containsExactly("count");
        assertThat(Axis.even(v, 2).values()).containsExactly(ANY.low(), ANY.high());
    }

    @Test
    void whatADesignLacksIsNamed() {
        assertThat(Refusal.of(
                        () -> DesignVariables.supportStiffness("west", ANY).apply(BASE, 1e5)))
                .containsExactly("support: west: must be the id of a support of the line");
        assertThat(Refusal.of(
                        () -> DesignVariables.inlineActivation("west", ANY).apply(BASE, 5000)))
                .containsExactly("support: west: must be the id of a support of the line");
        assertThat(Refusal.of(() -> DesignVariables.inlineActivation("a", ANY).apply(BASE, 5000)))
                .containsExactly("support: a: must carry an in-line energy absorber");
        assertThat(Refusal.of(() -> DesignVariables.deploymentForce(ANY).apply(BASE, 5000)))
                .containsExactly("worker: A: must have a connecting subsystem with a deployment force");
        assertThat(Refusal.of(() -> DesignVariables.workersTogether(ANY).apply(BASE, 0.4)))
                .containsExactly("workers: 0: must be at least 1");
        assertThat(Refusal.of(() -> DesignVariables.spanLengths(ANY).apply(BASE, -2)))
                .containsExactly("length of span 1: -2.0 m: must be a finite number above zero");
    }

    /** Where the anchor yields already the value goes there; a direction that is rigid beside one that is not stays so. */
    @ParameterizedTest
    @CsvSource({
        "Infinity, Infinity, 1e5, 1e5",
        "3e5, Infinity, 1e5, Infinity",
        "Infinity, 3e5, Infinity, 1e5",
        "3e5, 4e5, 1e5, 1e5"
    })
    void stiffnessGoesWhereAnAnchorYields(double x, double y, double newX, double newY) {
        LifelineDesign d = BASE.withLine(BASE.line().withSupports(s -> s.withStiffness(new Stiffness(x, y, 7e5))));
        LifelineDesign changed = DesignVariables.supportStiffness("b", ANY).apply(d, 1e5);
        assertThat(changed.line().supports().get(1).stiffness()).isEqualTo(new Stiffness(newX, newY, 7e5));
        assertThat(changed.line().supports().get(0))
                .as("the other stays")
                .isEqualTo(d.line().supports().get(0));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 1.49, 2, 2.6})
    void workersAreCountedToTheNearest(double value) {
        LifelineDesign d = DesignVariables.workersTogether(ANY).apply(BASE, value);
        int count = (int) Math.round(value);
        assertThat(d.falls()).hasSize(1);
        assertThat(d.falls().get(0).fallers()).hasSize(count);
        assertThat(d.falls().get(0).id()).isEqualTo(count + " together");
        assertThat(d.falls().get(0).place()).isEqualTo(org.lifeline.model.Place.of(1, 4));
        assertThat(d.workers()).hasSize(count);
        assertThat(d.falls().get(0).fallingMass()).isEqualTo(100.0 * count);
    }

    @Test
    void frictionLeavesEndsAndClampsAlone() {
        LifelineDesign d = Designs.design(3, Passage.friction(0.1), Attachment.GRIPPED);
        LifelineDesign clamped =
                d.withLine(d.line().withSupports(s -> s.id().equals("post 1") ? s.withPassage(Passage.clamped()) : s));
        assertThat(DesignVariables.friction(ANY).apply(clamped, 0.3).line().supports())
                .extracting(s -> s.passage().toString())
                .containsExactly("clamped", "clamped", "friction 0.3", "clamped");
    }

    @Test
    void theInstalledStateKeepsItsTemperatureAndEnd() {
        Installed state =
                Installed.horizontalTension(1500).atTemperature(-5).tensionedFrom(Installed.TensioningEnd.LAST);
        LifelineDesign d = BASE.withLine(BASE.line().withInstalled(state));
        assertThat(DesignVariables.pretension(ANY).apply(d, 900).line().installed())
                .isEqualTo(Installed.pretension(900).atTemperature(-5).tensionedFrom(Installed.TensioningEnd.LAST));
        assertThat(DesignVariables.initialSag(1, ANY).apply(d, 0.1).line().installed())
                .isEqualTo(Installed.initialSag(1, 0.1).atTemperature(-5).tensionedFrom(Installed.TensioningEnd.LAST));
        assertThat(DesignVariables.spanLengths(ANY).apply(d, 9).line().installed())
                .isEqualTo(state);
    }
}
