package org.lifeline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.lifeline.model.ModelParts.design;
import static org.lifeline.model.ModelParts.fall;
import static org.lifeline.model.ModelParts.threeSpans;
import static org.lifeline.model.ModelParts.worker;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.Refusal;

/** Designs: what belongs together, what is refused by which name, and changed copies. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class DesignRulesTest {
    private static final Worker A = worker("A").build();
    private static final Worker B = worker("B").mass(80).build();
    private static final Fall FALL = fall(A).build();

    private static LifelineDesign full() {
        return design(A, B)
                .fall(FALL)
                .temperature(-20)
                .temperature(40)
                .clearance(ClearanceRules.commonPractice().withMargin(1))
                .modelFactors(new ModelFactors(1.1, 1.2))
                .workingFloor(9.5)
                .build();
    }

    @Test
    void everythingGivenComesBack() {
        LifelineDesign d = full();
        assertThat(d.title()).isEqualTo("Gallery");
        assertThat(d.line()).isEqualTo(threeSpans().build());
        assertThat(d.workers()).containsExactly(A, B);
        assertThat(d.falls()).containsExactly(FALL);
        assertThat(d.temperatures()).containsExactly(-20.0, 40.0);
        assertThat(d.clearance().margin()).isEqualTo(1);
        assertThat(d.modelFactors()).isEqualTo(new ModelFactors(1.1, 1.2));
        assertThat(d.workingFloor()).hasValue(9.5);
        assertThat(d.toString())
                .startsWith("Gallery: north to south")
                .endsWith("; 2 workers, 1 falls, at [-20.0, 40.0] °C");
        assertThatThrownBy(() -> d.workers().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> d.falls().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> d.temperatures().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void whatIsNotStatedIsThatOfCommonPractice() {
        LifelineDesign d = LifelineDesign.builder("")
                .line(threeSpans()
                        .installed(Installed.pretension(1500).atTemperature(7))
                        .build())
                .worker(A)
                .build();
        assertThat(d.temperatures()).as("that of the installation").containsExactly(7.0);
        assertThat(d.clearance()).isEqualTo(ClearanceRules.commonPractice());
        assertThat(d.modelFactors()).isEqualTo(ModelFactors.none());
        assertThat(d.workingFloor()).isEmpty();
        assertThat(d.falls()).isEmpty();
    }

    @Test
    void whatIsLackingIsNamed() {
        assertThat(Refusal.of(() -> LifelineDesign.builder(null)
                        .clearance(null)
                        .modelFactors(null)
                        .build()))
                .containsExactly(
                        "title: missing: must be given",
                        "line: missing: must be given",
                        "clearance: missing: must be given",
                        "modelFactors: missing: must be given",
                        "worker: []: must name at least one worker");
        assertThat(Refusal.of(() -> design(A, null).build())).containsExactly("worker[1]: missing: must be given");
        assertThat(Refusal.of(() -> design(A).fall(FALL).fall(null).build()))
                .containsExactly("fall[1]: missing: must be given");
    }

    @Test
    void idsOfWorkersAndFallsAreUnique() {
        assertThat(Refusal.of(() -> design(A, B, A).build()))
                .containsExactly("worker[2].id: A: must not be used twice");
        Fall other = fall(A).at(Place.of(2, 1)).build();
        assertThat(Refusal.of(() -> design(A).fall(FALL).fall(other).build()))
                .containsExactly("fall[1].id: f: must not be used twice");
    }

    @ParameterizedTest
    @ValueSource(doubles = {-273.15, 1000, Double.NaN})
    void temperaturesAreNumbered(double bad) {
        assertThat(Refusal.paths(
                        () -> design(A).temperature(20).temperature(bad).build()))
                .containsExactly("temperature[1]");
    }

    @Test
    void theWorkingFloorIsAnElevation() {
        assertThat(Refusal.paths(() -> design(A).workingFloor(1.1e6).build())).containsExactly("workingFloor");
        assertThat(Refusal.paths(() -> design(A).workingFloor(Double.NaN).build()))
                .containsExactly("workingFloor");
        assertThat(design(A).workingFloor(-1e6).build().workingFloor()).hasValue(-1e6);
    }

    @Test
    void placesOfFallsLieOnTheLine() {
        Fall beyond = Fall.builder("beyond")
                .at(Place.of(9, 1))
                .faller(A)
                .hanging(B, Place.atSupport("west"))
                .build();
        assertThat(Refusal.of(() -> design(A, B).fall(FALL).fall(beyond).build()))
                .containsExactly(
                        "fall[1].at.span: 9: must be a span from 1 to 3",
                        "fall[1].hanging[0].place.support: west: must be the id of a support of the line");
        Fall late = fall(A).at(Place.of(1, 5)).hanging(B, Place.of(2, 10)).build();
        assertThat(Refusal.paths(() -> design(A, B).fall(late).build()))
                .containsExactly("fall[0].at.station", "fall[0].hanging[0].place.station");
    }

    @Test
    void whoFallsOrHangsIsAWorkerOfTheDesign() {
        Worker heavy = worker("B").mass(90).build();
        Fall f = fall(A).hanging(heavy, Place.of(2, 1)).build();
        assertThat(Refusal.of(() -> design(A).fall(f).build()))
                .containsExactly("fall[0].hanging[0].worker: B: is not among the workers of the design");
        assertThat(Refusal.of(() -> design(A, B).fall(f).build()))
                .containsExactly(
                        "fall[0].hanging[0].worker: B, 90.0 kg: has other data than the worker of this id in the"
                                + " design, 80.0 kg");
    }

    @Test
    void tenThousandAndOneOfEachAreTaken() {
        LifelineDesign.Builder many = design(A);
        for (int i = 0; i < 10_001; i++) {
            many.temperature(20);
        }
        assertThat(many.build().temperatures()).hasSize(10_001);
        assertThat(Refusal.paths(() -> many.temperature(20).build())).containsExactly("temperature");
    }

    @Test
    void aCopyThroughTheBuilderIsTheSame() {
        LifelineDesign d = full();
        assertThat(d.toBuilder().build()).isEqualTo(d).hasSameHashCodeAs(d);
        assertThat(d.toBuilder().build().fingerprint()).isEqualTo(d.fingerprint());
        LifelineDesign changed = d.toBuilder().workingFloor(9).build();
        assertThat(d.differences(changed))
                .extracting(Object::toString)
                .containsExactly("workingFloor: 9.5 m → 9.0 m (-0.5)");
        assertThat(d.workingFloor()).hasValue(9.5);
    }

    @Test
    void designsAreEqualWhenAllThatWasStatedIs() {
        LifelineDesign d = full();
        assertThat(d).isEqualTo(full());
        for (LifelineDesign other : List.of(
                d.withLine(threeSpans().pretension(1600).build()),
                d.withTemperatures(List.of(-20.0)),
                d.withFalls(List.of()),
                d.toBuilder().worker(worker("C").build()).build(),
                d.toBuilder().clearance(ClearanceRules.commonPractice()).build(),
                d.toBuilder().modelFactors(ModelFactors.none()).build(),
                d.toBuilder().workingFloor(9).build())) {
            assertThat(other).isNotEqualTo(d);
            assertThat(other.hashCode()).isNotEqualTo(d.hashCode());
            assertThat(other.fingerprint()).isNotEqualTo(d.fingerprint());
        }
        LifelineDesign named =
                LifelineDesign.builder("Other").line(d.line()).worker(A).build();
        assertThat(named)
                .isNotEqualTo(
                        LifelineDesign.builder("One").line(d.line()).worker(A).build())
                .isNotEqualTo("Other");
    }

    @Test
    void copiesWithOtherTemperaturesAndFallsKeepAllElse() {
        LifelineDesign d = full();
        LifelineDesign cold = d.withTemperatures(List.of(-30.0));
        assertThat(cold.temperatures()).containsExactly(-30.0);
        assertThat(cold.withTemperatures(List.of(-20.0, 40.0))).isEqualTo(d);
        assertThat(d.withTemperatures(List.of()).temperatures())
                .as("none stated: that of the installation")
                .containsExactly(15.0);
        assertThat(d.withFalls(List.of()).falls()).isEmpty();
        assertThat(d.withFalls(List.of()).withFalls(List.of(FALL))).isEqualTo(d);
    }

    @Test
    void copiesOfNothingAreRefused() {
        LifelineDesign d = full();
        assertThat(Refusal.paths(() -> d.withLine(null))).containsExactly("line");
        assertThat(Refusal.paths(() -> d.withTemperatures(null))).containsExactly("temperatures");
        assertThat(Refusal.paths(() -> d.withTemperatures(Arrays.asList(1.0, null))))
                .containsExactly("temperatures");
        assertThat(Refusal.paths(() -> d.withFalls(null))).containsExactly("falls");
        assertThat(Refusal.paths(() -> d.withFalls(Arrays.asList(FALL, null)))).containsExactly("fall[1]");
        assertThat(Refusal.paths(() -> d.withWorkers(null))).containsExactly("change");
        assertThat(Refusal.paths(() -> d.withWorkers(w -> null))).containsExactly("workers");
    }

    @Test
    void aLineOnWhichTheFallsHaveNoPlaceIsRefused() {
        LifelineDesign d = full().withFalls(List.of(fall(A).at(Place.of(3, 2)).build()));
        Lifeline shorter = Lifeline.builder()
                .cable(ModelParts.CABLE)
                .pretension(1500)
                .support(d.line().supports().get(0))
                .support(d.line().supports().get(3))
                .build();
        assertThat(Refusal.of(() -> d.withLine(shorter)))
                .containsExactly("fall[0].at.span: 3: must be a span from 1 to 1");
    }

    @Test
    void aBuilderUsedTwiceLeavesTheFirstDesignAlone() {
        LifelineDesign.Builder b = design(A);
        LifelineDesign first = b.build();
        LifelineDesign second = b.worker(B).temperature(0).fall(FALL).build();
        assertThat(first.workers()).containsExactly(A);
        assertThat(first.temperatures()).containsExactly(15.0);
        assertThat(first.falls()).isEmpty();
        assertThat(second.workers()).containsExactly(A, B);
        assertThat(b.build()).isEqualTo(second);
    }

    @Test
    void theFormGoesThroughEveryPart() {
        assertThat(full().canonicalForm().entries())
                .extracting(e -> e.path() + " " + e.shown())
                .startsWith("title Gallery")
                .contains(
                        "line.installed.value 1500.0 N",
                        "temperature[0] -20.0 °C",
                        "temperature[1] 40.0 °C",
                        "worker[A].mass 100.0 kg",
                        "worker[B].mass 80.0 kg",
                        "fall[f].at.station 2.0 m",
                        "clearance.margin 1.0 m",
                        "modelFactors.force 1.1",
                        "modelFactors.distance 1.2")
                .endsWith("modelFactors.reason ", "workingFloor 9.5 m");
    }

    /** What is null has the number at which it was given, and so has what comes after it. */
    @Test
    void everyNullHasItsNumber() {
        Fall other = fall(B).build();
        assertThat(Refusal.paths(() -> design(A, null, null, A)
                        .fall(null)
                        .fall(null)
                        .fall(FALL)
                        .fall(other)
                        .build()))
                .containsExactly(
                        "worker[1]",
                        "worker[2]",
                        "fall[0]",
                        "fall[1]",
                        "worker[3].id",
                        "fall[3].id",
                        "fall[3].faller[0]");
    }

    /** A design without workers says so, whatever else is wrong. */
    @Test
    void aMissingFallHidesNoMissingWorkers() {
        assertThat(Refusal.of(() -> design().fall(null).build()))
                .containsExactly("fall[0]: missing: must be given", "worker: []: must name at least one worker");
        assertThat(Refusal.paths(() -> design().worker(null).build())).containsExactly("worker[0]");
    }
}
