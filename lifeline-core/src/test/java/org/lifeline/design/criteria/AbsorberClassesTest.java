package org.lifeline.design.criteria;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.absorber.LoadingCurve.Corner;

/**
 * Classes of absorbers, Alberta OHS Code explanation guide, s. 142.3 (published): E4 for 45 to 115 kg and 6 kN wet or frozen, E6
 * for 90 to 175 kg and 8 kN; the ends of both ranges of masses from both sides.
 */
class AbsorberClassesTest {
    private static final Criterion CLASSES = Criteria.of("ab-absorber-classes").orElseThrow();

    private static Worker worker(String id, double mass, double force) {
        return Worker.builder(id)
                .mass(mass)
                .walkingLevel(10.9)
                .connection(Connection.givenCurve(
                        1.8,
                        LoadingCurve.through(
                                List.of(new Corner(0, force), new Corner(1, force)),
                                Double.POSITIVE_INFINITY,
                                Double.POSITIVE_INFINITY)))
                .build();
    }

    private static CriterionResult check(Worker... workers) {
        LifelineDesign.Builder b = LifelineDesign.builder("d").line(Designs.line(1, Passage.free()));
        for (Worker each : workers) {
            b.worker(each);
        }
        return CLASSES.check(Extremes.ofCases(b.build(), List.of()));
    }

    @ParameterizedTest
    @CsvSource({
        "45, 6000, MET",
        "44.9, 6000, NOT_MET",
        "115, 6000, MET",
        "89.9, 6001, NOT_MET",
        "90, 6001, MET",
        "115.1, 6000, MET",
        "175, 8000, MET",
        "175.1, 8000, NOT_MET",
        "100, 8000, MET",
        "100, 8001, NOT_MET",
        "60, 7000, NOT_MET"
    })
    void massAndForceFitOneOfTheClasses(double mass, double force, Status status) {
        assertThat(check(worker("A", mass, force)).status()).isEqualTo(status);
    }

    @Test
    void everyWorkerHasToFit() {
        Worker light = worker("light", 50, 4000);
        Worker heavy = worker("heavy", 170, 7000);
        assertThat(check(light, heavy).status()).isEqualTo(Status.MET);
        CriterionResult r = check(light, heavy, worker("too heavy", 180, 7000));
        assertThat(r.status()).isEqualTo(Status.NOT_MET);
        assertThat(r.check().title()).isEqualTo("every worker");
        assertThat(r.check().parts()).hasSize(3);
        assertThat(r.check().parts()).extracting(CapacityCheck::title).containsOnly("one of the classes");
        assertThat(r.check().isOfAlternatives()).isFalse();
        assertThat(r.check().parts()).allMatch(CapacityCheck::isOfAlternatives);
        assertThat(r.comparisons())
                .as("3 workers, 2 classes, 3 comparisons each")
                .hasSize(18);
    }

    /** E4 for 100 kg and 5 kN: 100/115, 45/100 and 5/6; E6: 100/175, 90/100 and 5/8. */
    @Test
    void eachComparisonIsThatOfItsClass() {
        CriterionResult r = check(worker("A", 100, 5000));
        assertThat(r.comparisons())
                .extracting(CapacityCheck::title)
                .containsExactly(
                        "class E4: largest mass against limit, A",
                        "class E4: least mass wanted against smallest mass, A",
                        "class E4: deployment force against limit, A",
                        "class E6: largest mass against limit, A",
                        "class E6: least mass wanted against smallest mass, A",
                        "class E6: deployment force against limit, A");
        double[] ratios = {100 / 115.0, 0.45, 5 / 6.0, 100 / 175.0, 0.9, 0.625};
        for (int i = 0; i < ratios.length; i++) {
            assertThat(r.comparisons().get(i).ratio()).isCloseTo(ratios[i], within(1e-15));
        }
        assertThat(r.ratio()).as("the class that fits best").isCloseTo(100 / 115.0, within(1e-15));
        assertThat(r.unit()).isEqualTo("kg");
        assertThat(r.check().deciding()).hasSize(3);
    }

    /** The force of a class is the largest of the curve, not that at which it starts. */
    @Test
    void aRisingCurveIsJudgedAtItsEnd() {
        Worker rising = worker("A", 100, 5000)
                .withConnection(Connection.givenCurve(
                        1.8,
                        LoadingCurve.through(
                                List.of(new Corner(0, 3000), new Corner(1, 8001)),
                                Double.POSITIVE_INFINITY,
                                Double.POSITIVE_INFINITY)));
        assertThat(check(rising).status()).isEqualTo(Status.NOT_MET);
        assertThat(check(rising.withConnection(rising.connection().withForcesScaled(0.99)))
                        .status())
                .isEqualTo(Status.MET);
    }

    @Test
    void anAbsorberIsJudgedByItsMaximumForce() {
        LifelineDesign d = Designs.design(1, Passage.free(), Attachment.GRIPPED);
        assertThat(CLASSES.check(Extremes.ofCases(d, List.of()))
                        .comparisons()
                        .get(2)
                        .demand())
                .as("3.2 to 6 kN")
                .isEqualTo(6000);
    }
}
