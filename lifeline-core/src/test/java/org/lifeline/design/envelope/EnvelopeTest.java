package org.lifeline.design.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Direction;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

class EnvelopeTest {
    private static final LifelineDesign THREE_SPANS = Designs.design(3, Passage.friction(0.12), Attachment.GRIPPED);

    @Test
    void anyNumberOfThreadsGivesTheSameResult() throws InterruptedException {
        Tolerances t = Tolerances.none()
                .withMass(Interval.of(70, 120))
                .withPretension(Interval.of(0.8, 1.2))
                .withFriction(Interval.of(0.05, 0.2));
        Envelope envelope = Envelope.withDefaults().withTolerances(t);
        EnvelopeResult alone = envelope.solve(THREE_SPANS);
        for (int threads : new int[] {1, 3}) {
            ExecutorService pool = Executors.newFixedThreadPool(threads);
            try {
                EnvelopeResult r = envelope.withExecutor(pool).solve(THREE_SPANS);
                assertThat(r.extremes().all().toString())
                        .isEqualTo(alone.extremes().all().toString());
                assertThat(r.evaluations()).isEqualTo(alone.evaluations());
            } finally {
                pool.shutdown();
            }
        }
    }

    @Test
    void anExecutorThatTheCallerItselfRunsOnDoesNotBlock() throws Exception {
        ExecutorService one = Executors.newSingleThreadExecutor();
        try {
            EnvelopeResult r = one.submit(
                            () -> Envelope.withDefaults().withExecutor(one).solve(THREE_SPANS))
                    .get();
            assertThat(r.isComplete()).isTrue();
        } finally {
            one.shutdown();
        }
    }

    @Test
    void theGoverningArrestHasTheValue() {
        EnvelopeResult r = Envelope.withDefaults().solve(THREE_SPANS);
        for (Quantity q : Quantity.values()) {
            r.extremes().of(q).ifPresent(e -> {
                assertThat(q.value(e.arrest(), THREE_SPANS.modelFactors()))
                        .as(q.key())
                        .isEqualTo(e.value());
                ArrestResult again = EnergyBalance.withDefaults()
                        .withTemperature(e.fallCase().temperature())
                        .withSide(e.fallCase().side())
                        .withClearance(THREE_SPANS.clearance())
                        .solve(THREE_SPANS.line(), e.fallCase().fall());
                assertThat(q.value(again, THREE_SPANS.modelFactors()))
                        .as(q.key())
                        .isEqualTo(e.value());
            });
        }
    }

    @Test
    void loadsComeFromTheMaximumSideAndDistancesFromTheClearanceSide() {
        Extremes e = Envelope.withDefaults().solve(THREE_SPANS).extremes();
        for (Quantity q : List.of(Quantity.END_ANCHOR_LOAD, Quantity.MAXIMUM_TENSION, Quantity.ARREST_FORCE)) {
            assertThat(e.of(q).orElseThrow().fallCase().side()).isEqualTo(DeploymentForce.MAXIMUM);
        }
        for (Quantity q : List.of(Quantity.DEPLOYMENT, Quantity.TOTAL_FALL_DISTANCE, Quantity.CLEARANCE_MARGIN)) {
            assertThat(e.of(q).orElseThrow().fallCase().side()).isEqualTo(DeploymentForce.CLEARANCE);
        }
    }

    @Test
    void whereTheLowForceBottomsOutItGovernsTheLoadAsWell() {
        LifelineDesign d = THREE_SPANS.withWorkers(w -> w.toBuilder(w.id())
                .connection(Connection.lanyard(
                        1.8,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(2000)
                                .maximumForce(6000)
                                .maximumExtension(0.7)
                                .initialStiffness(1e5)
                                .stopStiffness(5e5)
                                .build()))
                .build());
        Extreme load = Envelope.withDefaults()
                .solve(d)
                .extremes()
                .of(Quantity.ARREST_FORCE)
                .orElseThrow();
        assertThat(load.arrest().bottomedOut()).isTrue();
        assertThat(load.fallCase().side()).isEqualTo(DeploymentForce.CLEARANCE);
        assertThat(load.value()).isGreaterThan(6000);
    }

    /** The extreme is located to 1 mm or 0.1 %: a fine search around it finds nothing worse than that. */
    @Test
    void extremesAreLocated() {
        Extremes e = Envelope.withDefaults().solve(THREE_SPANS).extremes();
        for (Quantity q : List.of(Quantity.MAXIMUM_TENSION, Quantity.SAG, Quantity.TOTAL_FALL_DISTANCE)) {
            Extreme x = e.of(q).orElseThrow();
            Place p = x.fallCase().fall().place();
            double most = x.value();
            for (int i = -200; i <= 200; i++) {
                ArrestResult r = EnergyBalance.withDefaults()
                        .withTemperature(x.fallCase().temperature())
                        .withSide(x.fallCase().side())
                        .withClearance(THREE_SPANS.clearance())
                        .solve(THREE_SPANS.line(), x.fallCase().fall().at(Place.of(p.span(), p.station() + 0.005 * i)));
                most = Math.max(most, q.value(r, THREE_SPANS.modelFactors()));
            }
            assertThat(x.value()).as(q.key()).isEqualTo(most, within(1e-3 * most));
        }
    }

    @Test
    void aNarrowObstructionIsNotMissed() {
        LifelineDesign d = THREE_SPANS.toBuilder()
                .clearance(ClearanceRules.commonPractice()
                        .withObstructions(List.of(new Obstruction(0, 36, 4), new Obstruction(15.03, 15.05, 5.5))))
                .build();
        EnvelopeResult r = Envelope.withDefaults().solve(d);
        Extreme pipe = r.extremes().overObstruction(1).orElseThrow();
        assertThat(pipe.fallCase().fall().place().span()).isEqualTo(2);
        assertThat(pipe.value())
                .isLessThan(r.extremes().overObstruction(0).orElseThrow().value());
        assertThat(r.extremes().of(Quantity.CLEARANCE_MARGIN).orElseThrow().value())
                .isEqualTo(pipe.value(), within(1e-9));
    }

    @Test
    void clearanceAlongTheLineStandsAgainstWhatIsBelow() {
        LifelineDesign d = THREE_SPANS.toBuilder()
                .clearance(ClearanceRules.commonPractice()
                        .withObstructions(List.of(new Obstruction(0, 20, 4), new Obstruction(10, 30, 3))))
                .build();
        List<EnvelopeResult.ClearancePoint> points =
                Envelope.withDefaults().solve(d).clearance();
        assertThat(points).hasSizeGreaterThan(3 * 16);
        for (int i = 1; i < points.size(); i++) {
            assertThat(points.get(i).along()).isGreaterThan(points.get(i - 1).along());
        }
        for (EnvelopeResult.ClearancePoint p : points) {
            if (p.along() > 30) {
                assertThat(p.margin()).isEmpty();
            } else {
                double top = p.along() <= 20 ? 4 : 3;
                assertThat(p.margin().orElseThrow()).isEqualTo(p.requiredElevation() - top, within(1e-12));
            }
        }
    }

    @Test
    void theProfileReachesTheExtreme() {
        EnvelopeResult r = Envelope.withDefaults().solve(THREE_SPANS);
        for (Quantity q : Quantity.values()) {
            List<EnvelopeResult.ProfilePoint> profile = r.profile(q);
            if (r.extremes().of(q).isEmpty()) {
                assertThat(profile).isEmpty();
                continue;
            }
            double worst = r.extremes().of(q).orElseThrow().value();
            double best = profile.stream()
                    .mapToDouble(EnvelopeResult.ProfilePoint::value)
                    .reduce((a, b) -> q.largestIsWorst() ? Math.max(a, b) : Math.min(a, b))
                    .orElseThrow();
            double scale = Math.max(Math.abs(worst), 0.02);
            assertThat(best).as(q.key()).isEqualTo(worst, within(0.05 * scale));
        }
        assertThat(r.supportProfile(0)).hasSameSizeAs(r.profile(Quantity.SAG));
    }

    @Test
    void stoppingKeepsWhatWasDone() {
        List<Long> seen = new ArrayList<>();
        EnvelopeResult r = Envelope.withDefaults()
                .withProgress((done, total) -> {
                    assertThat(done).isLessThanOrEqualTo(total);
                    seen.add(done);
                    return done < 5;
                })
                .solve(THREE_SPANS);
        assertThat(seen).containsExactly(1L, 2L, 3L, 4L, 5L);
        assertThat(r.isComplete()).isFalse();
        assertThat(r.extremes().coversEverything()).isFalse();
        assertThat(r.extremes().of(Quantity.SAG)).isPresent();
    }

    @Test
    void aCaseThatFailsIsKeptWithItsReason() {
        LifelineDesign low = THREE_SPANS
                .withFalls(List.of())
                .withWorkers(w ->
                        w.toBuilder(w.id()).walkingLevel(w.walkingLevel() - 5).build());
        LifelineDesign d = low.withFalls(List.of(Fall.builder("impossible")
                .at(Place.of(1, 3))
                .faller(low.workers().get(0))
                .build()));
        EnvelopeResult r = Envelope.withDefaults().solve(d);
        assertThat(r.failures())
                .isNotEmpty()
                .allSatisfy(f -> assertThat(f.reason()).contains("does not reach the line"));
        assertThat(r.extremes().coversEverything()).isFalse();
        DesignResult stated = DesignAnalysis.withDefaults().solve(d);
        assertThat(stated.failures())
                .hasSize(6)
                .allSatisfy(f -> assertThat(f.cause()).isInstanceOf(InvalidInputException.class));
        assertThat(stated.arrests()).isEmpty();
    }

    @Test
    void withoutFallsTheAnalysisLooksForTheWorstPlaces() {
        DesignResult r = DesignAnalysis.withDefaults().solve(THREE_SPANS);
        EnvelopeResult e = Envelope.withDefaults().withAllCombinations().solve(THREE_SPANS);
        assertThat(r.searched()).isTrue();
        assertThat(r.arrests()).hasSize(r.design().falls().size() * 3 * 2);
        assertThat(r.arrests()).extracting(a -> a.span()).contains(1, 2, 3);
        for (int i = 0; i < r.extremes().all().size(); i++) {
            Extreme one = r.extremes().all().get(i);
            Extreme other = e.extremes().all().get(i);
            assertThat(one.name()).isEqualTo(other.name());
            assertThat(one.value()).as(one.name()).isEqualTo(other.value(), within(1e-9 * Math.abs(other.value())));
            assertThat(r.arrests()).contains(one.arrest());
        }
        for (int span = 1; span <= 3; span++) {
            int s = span;
            double worst =
                    e.inSpan(span).of(Quantity.MAXIMUM_TENSION).orElseThrow().value();
            assertThat(r.arrests().stream()
                            .filter(a -> a.span() == s)
                            .mapToDouble(ArrestResult::maximumTension)
                            .max()
                            .orElseThrow())
                    .isEqualTo(worst, within(1e-9 * worst));
        }
    }

    @Test
    void withFallsTheAnalysisTakesThemAtEveryTemperatureOnBothSides() {
        Worker w = THREE_SPANS.workers().get(0);
        LifelineDesign d = THREE_SPANS.withFalls(List.of(
                Fall.builder("one").at(Place.of(1, 6)).faller(w).build(),
                Fall.builder("two").at(Place.of(2, 3)).faller(w).build()));
        DesignResult r = DesignAnalysis.withDefaults().solve(d);
        assertThat(r.searched()).isFalse();
        assertThat(r.arrests()).hasSize(2 * 3 * 2);
        assertThat(r.arrests().get(0).side()).isEqualTo(DeploymentForce.CLEARANCE);
        assertThat(r.arrests().get(1).side()).isEqualTo(DeploymentForce.MAXIMUM);
        double most = r.arrests().stream()
                .mapToDouble(ArrestResult::endAnchorLoad)
                .max()
                .orElseThrow();
        Extreme e = r.extremes().of(Quantity.END_ANCHOR_LOAD).orElseThrow();
        assertThat(e.value()).isEqualTo(most);
        assertThat(e.arrest().endAnchorLoad()).isEqualTo(most);
        assertThat(e.fallCase().describe()).contains("fall ", "span ", "°C", "deployment force");
    }

    @Test
    void anAnchorLoadIsAVector() {
        Extremes e = Envelope.withDefaults().solve(THREE_SPANS).extremes();
        Extreme pull = e.onSupportToward("north", Direction.PLUS_X).orElseThrow();
        assertThat(pull.arrest().supports().get(0).vector().x()).isEqualTo(pull.value());
        assertThat(e.onSupportToward("north", Direction.MINUS_X).orElseThrow().value())
                .as("the line never pushes its end anchor away")
                .isNegative();
        assertThatThrownBy(() -> e.onSupport("nowhere"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("nowhere");
    }

    @Test
    void sequencesOfFallsAreMovedOnceEach() {
        Worker a = THREE_SPANS.workers().get(0);
        LifelineDesign once = THREE_SPANS.withFalls(
                List.of(Fall.builder("one").at(Place.of(1, 6)).faller(a).build()));
        LifelineDesign twice = THREE_SPANS.withFalls(List.of(
                Fall.builder("one").at(Place.of(1, 6)).faller(a).build(),
                Fall.builder("two").at(Place.of(3, 2)).faller(a).build()));
        assertThat(Envelope.withDefaults().solve(twice).evaluations())
                .isEqualTo(Envelope.withDefaults().solve(once).evaluations());
    }

    @Test
    void badSettingsAreRefused() {
        assertThatThrownBy(() -> Envelope.withDefaults().withIntervals(3)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Interval.of(2, 1)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Tolerances.none().withMass(Interval.of(0, 1)))
                .isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Tolerances.none().withFriction(Interval.of(-0.1, 1)))
                .isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Tolerances.none().withPretension(Interval.of(0, 1)))
                .isInstanceOf(InvalidInputException.class);
        assertThat(Quantity.of("sag")).contains(Quantity.SAG);
        assertThat(Quantity.keys()).doesNotHaveDuplicates();
    }
}
