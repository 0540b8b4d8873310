package org.lifeline.design.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.Point;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Post;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

/** The falls that are moved over the line once more for loads on bases and across the line. */
class EffectScanTest {
    private static final double LEAN = Math.toRadians(15);
    private static final double[] ANGLES = {0, LEAN, -LEAN};

    /** A line of two spans that turns at its post, the fall stated in the first of them. */
    private static LifelineDesign design(double turn, Attachment attachment) {
        Worker worker = Designs.worker("A", attachment);
        Post post = Post.ofHeight(1.2)
                .momentOfResistanceX(50e3)
                .momentOfResistanceY(60e3)
                .build();
        return LifelineDesign.builder("corner")
                .line(Lifeline.builder()
                        .cable(Designs.cable())
                        .endAnchor("a", Point.of(0, 0, 12.4))
                        .support(Support.intermediate("p", Point.of(10, 0, 12.4), Passage.free())
                                .withPost(post))
                        .endAnchor("z", Point.of(10 + 10 * Math.cos(turn), 10 * Math.sin(turn), 12.4))
                        .pretension(1200)
                        .build())
                .temperature(15)
                .worker(worker)
                .fall(Fall.builder("f").at(Place.of(1, 4)).faller(worker).build())
                .build();
    }

    private static EffectScan scan(LifelineDesign design, GoverningLoads loads) {
        EffectScan scan = new EffectScan(design, Envelope.withDefaults());
        scan.run(loads);
        return scan;
    }

    private static List<GoverningReaction> scanned(LifelineDesign design) {
        GoverningLoads loads = new GoverningLoads(design, ANGLES);
        scan(design, loads);
        return loads.rows(Method.ENERGY_BALANCE);
    }

    private static double value(List<GoverningReaction> rows, String support, LoadEffect effect) {
        return rows.stream()
                .filter(r -> r.support().id().equals(support) && r.effect() == effect)
                .mapToDouble(GoverningReaction::value)
                .findFirst()
                .orElse(0);
    }

    /** Twelve stations of both spans and three supports; what can run is held as well. */
    @Test
    void everyFallIsMovedToEveryPlace() {
        for (Attachment attachment : Attachment.values()) {
            LifelineDesign d = design(0.6, attachment);
            int combinations = Envelope.withDefaults().combinations(d).size();
            int ways = d.falls().get(0).canRun() ? 2 : 1;
            assertThat(scan(d, new GoverningLoads(d, ANGLES)).evaluations())
                    .as(attachment.name())
                    .isEqualTo(27 * combinations * ways);
        }
        assertThat(design(0, Attachment.FREE_RUNNING).falls().get(0).canRun()).isTrue();
    }

    /** Where along the line a fall is stated says nothing of where it is moved to: also one at a support is held in the spans. */
    @Test
    void aFallThatIsStatedAtASupportIsHeldInTheSpansAsWell() {
        LifelineDesign inSpan = design(0.6, Attachment.FREE_RUNNING);
        LifelineDesign atSupport =
                inSpan.withFalls(List.of(inSpan.falls().get(0).at(Place.atSupport("a"))));
        List<GoverningReaction> expected = scanned(inSpan);
        List<GoverningReaction> rows = scanned(atSupport);
        assertThat(rows).hasSameSizeAs(expected);
        for (GoverningReaction each : expected) {
            assertThat(value(rows, each.support().id(), each.effect()))
                    .as("%s at %s", each.effect(), each.support().id())
                    .isEqualTo(each.value());
        }
    }

    private static List<GoverningReaction> bruteForce(LifelineDesign d) {
        GoverningLoads fine = new GoverningLoads(d, ANGLES);
        for (AttachmentLimit limit : AttachmentLimit.values()) {
            for (int span = 1; span <= 2; span++) {
                for (int i = 1; i < 60; i++) {
                    add(fine, d, limit, Place.of(span, i / 6.0));
                }
            }
            for (Support s : d.line().supports()) {
                add(fine, d, limit, Place.atSupport(s.id()));
            }
        }
        return fine.rows(Method.ENERGY_BALANCE);
    }

    private static void add(GoverningLoads loads, LifelineDesign d, AttachmentLimit limit, Place place) {
        ArrestResult arrest = EnergyBalance.withDefaults()
                .withSide(DeploymentForce.MAXIMUM)
                .withAttachmentLimit(limit)
                .solve(d.line(), d.falls().get(0).at(place));
        loads.add(new ComputedCase(Extremes.of(d, List.of(arrest)).all().get(0).fallCase(), arrest));
    }

    /** By brute force at every sixth of a metre and at the supports, no effect is more than half a percent larger. */
    @Test
    void theScanAloneFindsWhatAFinerOneFinds() {
        for (Attachment attachment : Attachment.values()) {
            LifelineDesign d = design(0.6, attachment);
            List<GoverningReaction> found = scanned(d);
            List<GoverningReaction> fine = bruteForce(d);
            assertThat(fine).hasSizeGreaterThan(15);
            for (GoverningReaction each : fine) {
                assertThat(value(found, each.support().id(), each.effect()))
                        .as("%s, %s, %s", attachment, each.support().id(), each.effect())
                        .isGreaterThan(0.995 * each.value());
            }
        }
    }

    /** A straight line of two equal spans: what loads one side and end loads the other as much. */
    @Test
    void aSymmetricLineIsLoadedAlikeOnBothSides() {
        List<GoverningReaction> found = scanned(design(0, Attachment.GRIPPED));
        for (LoadEffect effect :
                List.of(LoadEffect.RESULTANT, LoadEffect.DOWN, LoadEffect.PLUS_Y, LoadEffect.MINUS_Y)) {
            double a = value(found, "a", effect);
            assertThat(a).isPositive();
            assertThat(value(found, "z", effect)).as(effect.name()).isCloseTo(a, within(1e-4 * a));
        }
        double across = value(found, "p", LoadEffect.PLUS_Y);
        assertThat(value(found, "p", LoadEffect.MINUS_Y)).isCloseTo(across, within(1e-6 * across));
    }

    /** Across a straight line a support gets all of P sin φ from a fall at itself, and hardly more from one beside it. */
    @Test
    void aPostGetsTheWholeSidePullOfAFallAtIt() {
        LifelineDesign d = design(0, Attachment.GRIPPED);
        GoverningLoads loads = new GoverningLoads(d, ANGLES);
        scan(d, loads);
        for (String id : List.of("a", "p", "z")) {
            GoverningReaction r = loads.rows(Method.ENERGY_BALANCE).stream()
                    .filter(e -> e.support().id().equals(id) && e.effect() == LoadEffect.PLUS_Y)
                    .findFirst()
                    .orElseThrow();
            double p = EnergyBalance.withDefaults()
                    .withSide(DeploymentForce.MAXIMUM)
                    .solve(d.line(), d.falls().get(0).at(Place.atSupport(id)))
                    .lineLoad();
            assertThat(r.value() / (p * Math.sin(LEAN))).as(id).isBetween(1 - 1e-9, 1.02);
        }
    }

    /** What is handed over is not less than what any of its sources says: stated falls, searched ones, scanned ones, the rescue. */
    @Test
    void noSourceSaysMoreThanWhatIsHandedOver() {
        LifelineDesign d = design(0.6, Attachment.FREE_RUNNING).toBuilder()
                .rescuerMass(200)
                .build();
        AssessmentResult assessment = Assessment.withDefaults().withoutMotion().solve(d);
        SupportLoadsResult handed = SupportLoads.withDefaults().withAngle(LEAN).solve(assessment);
        GoverningLoads sources = new GoverningLoads(d, new double[] {0, LEAN, -LEAN});
        scan(d, sources);
        assessment.stated().cases().forEach(sources::add);
        assessment.rescueStates().forEach(sources::add);
        assertThat(assessment.rescueStates()).isNotEmpty();
        for (GoverningReaction each : sources.rows(Method.ENERGY_BALANCE)) {
            double value = handed.byEnergyBalance(each.support().id(), each.effect())
                    .orElseThrow()
                    .value();
            assertThat(value)
                    .as("%s, %s", each.support().id(), each.effect())
                    .isGreaterThanOrEqualTo(each.value() * (1 - 1e-9));
        }
        for (Support s : d.line().supports()) {
            double searched =
                    assessment.balance().onSupport(s.id()).orElseThrow().value();
            double value = handed.byEnergyBalance(s.id(), LoadEffect.RESULTANT)
                    .orElseThrow()
                    .value();
            assertThat(value).as(s.id()).isGreaterThanOrEqualTo(searched * (1 - 1e-9));
        }
    }

    /** A rescuer of 1500 kg, more than any arrest: the line at rest with him governs the anchors. */
    @Test
    void aHeavyRescueGovernsTheAnchors() {
        LifelineDesign light = design(0.6, Attachment.GRIPPED);
        double alone = SupportLoads.withDefaults()
                .solve(Assessment.withDefaults().withoutMotion().solve(light))
                .governing("p", LoadEffect.DOWN)
                .orElseThrow()
                .value();
        LifelineDesign heavy = light.toBuilder().rescuerMass(1500).build();
        double rescued = SupportLoads.withDefaults()
                .solve(Assessment.withDefaults().withoutMotion().solve(heavy))
                .governing("p", LoadEffect.DOWN)
                .orElseThrow()
                .value();
        // The faller of 100 kg and his rescuer hang at the post, with half of the cable beside it.
        assertThat(rescued).isBetween(1600 * 9.80665, 1600 * 9.80665 + 200);
        assertThat(alone).isLessThan(rescued);
    }

    @Test
    void anInterruptedScanEnds() {
        LifelineDesign d = design(0, Attachment.GRIPPED);
        Thread.currentThread().interrupt();
        try {
            assertThatThrownBy(() -> scan(d, new GoverningLoads(d, ANGLES))).isInstanceOf(CancellationException.class);
        } finally {
            assertThat(Thread.interrupted()).isTrue();
        }
    }

    /** An angle between upright and eighty degrees is taken, both included. */
    @Test
    void theSteepestAngleIsEightyDegrees() {
        for (double angle : new double[] {0, Math.toRadians(80)}) {
            assertThat(SupportLoads.withDefaults().withAngle(angle)).isNotNull();
        }
        for (double angle : new double[] {-1e-9, Math.toRadians(80.001)}) {
            assertThatThrownBy(() -> SupportLoads.withDefaults().withAngle(angle))
                    .hasMessageContaining("pullAngle");
        }
    }
}
