package org.lifeline.design.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.RescueLoad;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.warning.ModelLimits;
import org.lifeline.design.clearance.ClearanceAlongLine;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.Status;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.structure.GoverningReaction;
import org.lifeline.design.structure.SupportLoads;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.incident.SecondFall;
import org.lifeline.testing.PlainParts;

/** A second fall within the first second and a rescuer's load as cases of the assessment. */
class SecondFallAndRescueTest {
    private static final double G = 9.80665;
    private static final Criterion LOAD =
            Criterion.stated("load", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 90e3, "test");
    private static final Assessment ASSESSMENT = Assessment.withDefaults().withCriteria(List.of(LOAD));
    private static final LifelineDesign PLAIN = AssessedLines.of("single");
    private static final LifelineDesign STATED = PLAIN.toBuilder()
            .worker(Designs.worker("B", Attachment.FREE_RUNNING))
            .secondFall(new SecondFall("B", List.of(0.0, 0.4)))
            .build();
    private static final AssessmentResult FOLLOWED = ASSESSMENT.solve(STATED);

    /** A long line at soft absorbers, which hold less than a worker and a heavy rescuer weigh. */
    private static LifelineDesign rescued() {
        Worker worker = Worker.builder("A")
                .mass(90)
                .walkingLevel(10.9)
                .attachment(Attachment.GRIPPED)
                .connection(Connection.lanyard(
                        1.2,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(2000)
                                .maximumForce(2000)
                                .maximumExtension(6)
                                .initialStiffness(1e5)
                                .build()))
                .build();
        return LifelineDesign.builder("rescued")
                .line(PlainParts.span(PlainParts.cable(0.5, 4e6), 14, 12.4, 1500))
                .worker(worker)
                .fall(Fall.builder("of A").at(Place.of(1, 3)).faller(worker).build())
                .clearance(ClearanceRules.commonPractice().withObstructions(List.of(new Obstruction(0, 14, 2))))
                .rescuerMass(200)
                .build();
    }

    @Test
    void aSecondFallCountsAndTheCaseSaysWhichItWas() {
        Extremes with = FOLLOWED.secondFall().orElseThrow();
        assertThat(FOLLOWED.secondFalls()).isNotEmpty().allSatisfy(f -> {
            FallCase.Later later = f.fallCase().later().orElseThrow();
            assertThat(later.worker()).isEqualTo("B");
            assertThat(f.fallCase().fall().fallers()).extracting(Worker::id).containsExactly("A", "B");
            assertThat(f.fallCase().firstFall().fallers())
                    .extracting(Worker::id)
                    .containsExactly("A");
            assertThat(f.fallCase().describe()).contains(", B falls 0.");
        });
        AssessmentResult alone = ASSESSMENT.solve(PLAIN);
        for (String name : List.of("endAnchorLoad", "maximumTension", "requiredBelowLine", "load on north")) {
            GoverningValue g = FOLLOWED.governing(name).orElseThrow();
            assertThat(g.fallCase().later()).as(name).isPresent();
            assertThat(g.method()).as(name).isEqualTo(Method.TRANSIENT);
            assertThat(g.factored())
                    .as(name)
                    .isGreaterThan(alone.governing(name).orElseThrow().factored());
            Extreme worst = with.governing().stream()
                    .filter(e -> e.name().equals(name))
                    .findFirst()
                    .orElseThrow();
            assertThat(g.factored()).as(name).isEqualTo(worst.value());
            assertThat(g.factored() - g.value()).as(name).isPositive();
        }
        assertThat(FOLLOWED.balance().of(Quantity.END_ANCHOR_LOAD).orElseThrow().computed())
                .isEqualTo(alone.balance()
                        .of(Quantity.END_ANCHOR_LOAD)
                        .orElseThrow()
                        .computed());
        assertThat(FOLLOWED.notComputed()).isEmpty();
        assertThat(FOLLOWED.checks()).allMatch(IndependentCheck::passed);
        assertThat(FOLLOWED.restsOn()).contains("a second fall within the first second");
        assertThat(alone.restsOn()).doesNotContain("second fall");
        assertThat(alone.secondFall()).isEmpty();
        assertThat(alone.rescue()).isEmpty();
        assertThat(ModelLimits.list()).contains(ModelLimits.NEAR_FALLS, ModelLimits.RESCUE);
    }

    @Test
    void withoutMotionItIsNotComputedAndNothingIsMet() {
        AssessmentResult still = ASSESSMENT.withoutMotion().solve(STATED);
        assertThat(still.secondFall()).isEmpty();
        assertThat(still.notComputed())
                .extracting(NotComputed::what)
                .contains("second fall of B within the first second");
        assertThat(still.criteria().get(0).result().status()).isEqualTo(Status.NOT_EVALUATED);
        AssessmentResult slow =
                ASSESSMENT.withBasis(Basis.ENERGY_BALANCE).withoutMotion().solve(STATED);
        assertThat(slow.criteria().get(0).result().status()).isEqualTo(Status.NOT_EVALUATED);
        assertThat(slow.criteria().get(0).result().governing().orElseThrow().lacking())
                .contains("a second fall within the first second is followed in time only");
        AssessmentResult plain =
                ASSESSMENT.withBasis(Basis.ENERGY_BALANCE).withoutMotion().solve(PLAIN);
        assertThat(plain.criteria().get(0).result().status()).isEqualTo(Status.MET);
    }

    @Test
    void aSecondFallThatNoFallLeavesRoomForIsNotComputed() {
        Worker b = STATED.workers().get(1);
        LifelineDesign only = STATED.withFalls(
                List.of(Fall.builder("of B").at(Place.of(1, 3)).faller(b).build()));
        AssessmentResult result = ASSESSMENT.solve(only);
        assertThat(result.notComputed())
                .extracting(NotComputed::what)
                .contains("second fall of B within the first second");
        assertThat(result.criteria().get(0).result().status()).isEqualTo(Status.NOT_EVALUATED);
    }

    /** The worst place of the rescue is the worst of a scan by statics, and what is larger at rest governs. */
    @Test
    void aRescuerCountsWhereTheLineAtRestIsWorse() {
        LifelineDesign design = rescued();
        AssessmentResult result =
                ASSESSMENT.withBasis(Basis.ENERGY_BALANCE).withoutMotion().solve(design);
        double most = 0;
        for (int i = 1; i < 200; i++) {
            double station = 14 * i / 200.0;
            most = Math.max(
                    most,
                    Statics.withDefaults()
                            .solve(
                                    design.line(),
                                    List.of(new AppliedLoad(Place.of(1, station), Attachment.GRIPPED, 290 * G)))
                            .maximumTension());
        }
        double balance =
                result.balance().of(Quantity.MAXIMUM_TENSION).orElseThrow().computed();
        assertThat(most).isGreaterThan(balance);
        for (String name : List.of("maximumTension", "endAnchorLoad", "sag", "load on b")) {
            GoverningValue g = result.governing(name).orElseThrow();
            assertThat(g.method()).as(name).isEqualTo(Method.RESCUE_AT_REST);
            assertThat(g.arrest().lineLoad()).as(name).isCloseTo(290 * G, org.assertj.core.api.Assertions.within(1e-9));
        }
        double found = result.governing("maximumTension").orElseThrow().value();
        assertThat(found).isBetween(most * (1 - 1e-9), most * (1 + 1e-4));
        // Quantities of the fall itself stay those of the fall.
        for (String name : List.of("arrestForce", "freeFall", "deployment", "totalFallDistance")) {
            assertThat(result.governing(name).orElseThrow().method()).as(name).isEqualTo(Method.ENERGY_BALANCE);
        }
        GoverningValue margin = result.governing("clearanceMargin").orElseThrow();
        assertThat(margin.method()).isEqualTo(Method.RESCUE_AT_REST);
        assertThat(margin.value())
                .isLessThan(result.balance()
                        .of(Quantity.CLEARANCE_MARGIN)
                        .orElseThrow()
                        .computed());
        assertThat(result.checks())
                .allMatch(IndependentCheck::passed)
                .anyMatch(c -> c.method() == Method.RESCUE_AT_REST);
        assertThat(result.criteria().get(0).result().status()).isEqualTo(Status.MET);
        assertThat(result.restsOn()).contains("with the line at rest with a rescuer");

        // What is handed over has it as well.
        List<GoverningReaction> loads =
                SupportLoads.withDefaults().withAngle(0).solve(result).governing();
        assertThat(loads).anyMatch(r -> r.method() == Method.RESCUE_AT_REST && r.simultaneous());
        assertThat(ClearanceAlongLine.withDefaults().solve(result).additionInTime())
                .isPositive();
    }

    /** A pipe between the places at which the rescue is looked at lies below those who hang above it. */
    @Test
    void aNarrowObstructionLiesBelowTheRescue() {
        LifelineDesign plain = rescued();
        for (double from : new double[] {2.8, 4.2, 7.1}) {
            ClearanceRules rules =
                    ClearanceRules.commonPractice().withObstructions(List.of(new Obstruction(from, from + 0.05, 2)));
            LifelineDesign d = plain.toBuilder().clearance(rules).build();
            double margin = RescueLoad.ofRescuer(200)
                    .withClearance(rules)
                    .solve(EnergyBalance.withDefaults()
                            .withClearance(rules)
                            .solve(d.line(), d.falls().get(0).at(Place.of(1, from + 0.025))))
                    .clearance()
                    .margin()
                    .orElseThrow();
            double least = Assessment.withDefaults().withoutMotion().solve(d).rescueStates().stream()
                    .flatMapToDouble(s -> s.arrest().clearance().margin().stream())
                    .min()
                    .orElse(Double.POSITIVE_INFINITY);
            assertThat(least).as("from %s", from).isLessThanOrEqualTo(margin + 1e-9);
        }
    }
}
