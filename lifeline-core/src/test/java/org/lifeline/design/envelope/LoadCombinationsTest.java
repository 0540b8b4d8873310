package org.lifeline.design.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.absorber.DeploymentForce;

/** Every end of every tolerance meets every other one, once; what may govern is among them. */
class LoadCombinationsTest {
    private static final Tolerances ALL = Tolerances.none()
            .withMass(Interval.of(60, 140))
            .withPretension(Interval.of(0.8, 1.2))
            .withFriction(Interval.of(0.05, 0.25));

    private static LifelineDesign design(Passage passage) {
        return Designs.design(2, passage, Attachment.GRIPPED);
    }

    private static Fall fall(LifelineDesign design) {
        return Fall.builder("f")
                .at(Place.of(1, 4))
                .faller(design.workers().get(0))
                .build();
    }

    /** Three temperatures, two forces, two ends of each of three tolerances: 3 · 2 · 2³. */
    @Test
    void allEndsMeet() {
        List<LoadCombination> list = LoadCombinations.all(design(Passage.friction(0.12)), ALL);
        assertThat(list).hasSize(48);
        assertThat(list.stream().map(c -> c.deviation() + " " + c.temperature() + " " + c.side()))
                .doesNotHaveDuplicates();
        assertThat(list.stream().filter(c -> c.side() == DeploymentForce.MAXIMUM))
                .hasSize(24);
        assertThat(list.stream().filter(c -> c.temperature() == -30)).hasSize(16);
        assertThat(list.stream().filter(c -> c.deviation().mass() == 140)).hasSize(24);
    }

    @Test
    void withoutTolerancesTemperaturesAndSidesAreLeft() {
        assertThat(LoadCombinations.all(design(Passage.friction(0.12)), Tolerances.none()))
                .hasSize(6);
    }

    @Test
    void frictionDoesNotVaryWhereThereIsNone() {
        assertThat(LoadCombinations.all(design(Passage.free()), ALL)).hasSize(24);
        assertThat(LoadCombinations.all(design(Passage.clamped()), ALL)).hasSize(24);
    }

    /** A range of no width is one end, and the same temperature twice is one. */
    @Test
    void equalEndsCountOnce() {
        Tolerances exact = Tolerances.none().withMass(Interval.exactly(100));
        LifelineDesign twice = design(Passage.free()).toBuilder()
                .temperature(40)
                .temperature(-30)
                .build();
        assertThat(LoadCombinations.all(twice, exact)).hasSize(6);
    }

    @Test
    void theLineOfACombinationHasItsPretensionAndItsFriction() {
        for (LoadCombination c : LoadCombinations.all(design(Passage.friction(0.12)), ALL)) {
            assertThat(c.line().installed().value())
                    .isCloseTo(1500 * c.deviation().pretension(), within(1e-6));
            assertThat(c.line().supports().get(1).passage().friction())
                    .isEqualTo(c.deviation().friction());
        }
    }

    /** The heaviest worker, on the tightest line in the cold or the slackest in the heat. */
    @Test
    void whatMayGovernIsAtTheOuterEnds() {
        LifelineDesign design = design(Passage.friction(0.12));
        List<LoadCombination> governing = LoadCombinations.all(design, ALL).stream()
                .filter(c -> LoadCombinations.mayGovern(design, ALL, c))
                .toList();
        assertThat(governing).hasSize(8);
        assertThat(governing).allSatisfy(c -> {
            assertThat(c.deviation().mass()).isEqualTo(140);
            boolean tight = c.deviation().pretension() == 1.2 && c.temperature() == -30;
            boolean slack = c.deviation().pretension() == 0.8 && c.temperature() == 40;
            assertThat(tight || slack).isTrue();
        });
    }

    @Test
    void aCaseCarriesItsDeviations() {
        LifelineDesign design = design(Passage.friction(0.12));
        LoadCombination c = LoadCombinations.all(design, ALL).stream()
                .filter(x -> x.deviation().mass() == 140 && x.side() == DeploymentForce.CLEARANCE)
                .findFirst()
                .orElseThrow();
        FallCase fallCase = c.of(fall(design));
        assertThat(fallCase.fall().fallers().get(0).mass()).isEqualTo(140);
        assertThat(fallCase.mass()).hasValue(140);
        assertThat(fallCase.pretensionFactor()).hasValue(c.deviation().pretension());
        assertThat(fallCase.friction()).hasValue(c.deviation().friction());
        assertThat(fallCase.attachmentLimit()).as("a grip cannot run").isEmpty();
        assertThat(fallCase.describe())
                .contains("fall f, span 1, station 4.000 m")
                .contains("clearance deployment force")
                .contains("mass 140.0 kg")
                .contains("pretension × ")
                .doesNotContain("held");
        FallCase moved = fallCase.at(Place.atSupport("post 1"));
        assertThat(moved.describe()).contains("at post 1");
        assertThat(moved.mass()).hasValue(140);
        assertThat(fallCase.fall().place()).isEqualTo(Place.of(1, 4));
    }

    @Test
    void theNominalCaseDeviatesInNothing() {
        LifelineDesign design = design(Passage.friction(0.12));
        FallCase nominal =
                LoadCombinations.nominal(design, 15, DeploymentForce.MAXIMUM).of(fall(design));
        assertThat(nominal.mass()).isEmpty();
        assertThat(nominal.friction()).isEmpty();
        assertThat(nominal.pretensionFactor()).isEmpty();
        assertThat(nominal.temperature()).isEqualTo(15);
        assertThat(nominal).hasToString("fall f, span 1, station 4.000 m, 15.0 °C, maximum deployment force");
    }

    @Test
    void aFreeRunningAttachmentIsHeldIfAskedFor() {
        LifelineDesign design = Designs.design(2, Passage.free(), Attachment.FREE_RUNNING);
        LoadCombination c = LoadCombinations.nominal(design, 15, DeploymentForce.MAXIMUM);
        assertThat(c.of(fall(design)).describe()).doesNotContain("held");
        assertThat(c.held().of(fall(design)).describe()).contains("attachment held");
        assertThat(c.of(fall(design)).attachmentLimit()).isPresent();
    }

    @ParameterizedTest
    @CsvSource({"-1, 1", "0, 1", "-2, -1"})
    void rangesThatMeanNothingAreRefusedByName(double low, double high) {
        Interval range = Interval.of(low, high);
        assertThatThrownBy(() -> Tolerances.none().withMass(range))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("mass.low");
        assertThatThrownBy(() -> Tolerances.none().withPretension(range))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("pretension.low");
    }

    @Test
    void frictionLiesWithinItsRange() {
        Tolerances none = Tolerances.none();
        assertThat(none.withFriction(Interval.of(0, 2)).friction()).contains(Interval.of(0, 2));
        for (Interval bad : List.of(Interval.of(-0.1, 1), Interval.of(0, 2.1))) {
            assertThatThrownBy(() -> none.withFriction(bad))
                    .isInstanceOf(InvalidInputException.class)
                    .hasMessageContaining("friction")
                    .hasMessageContaining("0 to 2");
        }
        assertThat(none.friction()).isEmpty();
    }

    @Test
    void aFailureSaysWhoseFaultItIs() {
        LifelineDesign design = design(Passage.free());
        FallCase fallCase =
                LoadCombinations.nominal(design, 15, DeploymentForce.MAXIMUM).of(fall(design));
        NoEquilibriumException lost =
                new NoEquilibriumException("the line", 0.5, new org.lifeline.base.Convergence(3, 1, 1e-10));
        FailedCase failed = new FailedCase(fallCase, lost);
        assertThat(failed.reason()).isEqualTo(lost.getMessage());
        assertThat(failed.cause()).isSameAs(lost);
        assertThat(failed.toString()).startsWith("fall f, ").endsWith(failed.reason());
        assertThat(FailedCase.words(new IllegalStateException("odd")))
                .isEqualTo("fault of the program: IllegalStateException: odd");
        assertThat(FailedCase.words(new IllegalStateException()))
                .isEqualTo("fault of the program: IllegalStateException");
    }

    /** Falls that differ in their place only are one moving fall; with no falls each worker falls alone. */
    @Test
    void fallsThatMoveAlongTheLine() {
        LifelineDesign none = design(Passage.free());
        assertThat(MovingFall.of(none)).singleElement().satisfies(m -> {
            assertThat(m.fall().id()).isEqualTo("A alone");
            assertThat(m.canRun()).isFalse();
        });
        LifelineDesign.Builder b = none.toBuilder();
        b.fall(Fall.builder("f1")
                .at(Place.of(1, 3))
                .faller(none.workers().get(0))
                .build());
        b.fall(Fall.builder("f2")
                .at(Place.of(2, 5))
                .faller(none.workers().get(0))
                .build());
        b.fall(Fall.builder("f3")
                .at(Place.of(2, 5))
                .faller(none.workers().get(0))
                .freeFall(0.5)
                .build());
        assertThat(MovingFall.of(b.build()).stream().map(m -> m.fall().id())).containsExactly("f1", "f3");
    }
}
