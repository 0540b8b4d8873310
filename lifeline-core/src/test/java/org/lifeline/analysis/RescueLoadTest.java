package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;
import org.lifeline.verify.Verifier;

/** The line at rest with a rescuer: against statics, against a formula of its own, and in the clearance account. */
class RescueLoadTest {
    private static final double G = 9.80665;
    private static final double EA = 4e6;
    private static final double PRETENSION = 1500;

    private static Worker worker(String id, double mass, Attachment attachment) {
        return Worker.builder(id)
                .mass(mass)
                .walkingLevel(10.5)
                .attachment(attachment)
                .connection(Connection.lanyard(
                        1.8,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(2500)
                                .maximumForce(4000)
                                .maximumExtension(1.75)
                                .build()))
                .build();
    }

    private static Lifeline single(double massPerLength) {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(massPerLength)
                        .axialStiffness(EA)
                        .build())
                .endAnchor("a", Point.of(0, 0, 12))
                .endAnchor("b", Point.of(10, 0, 12))
                .pretension(PRETENSION)
                .build();
    }

    /** It is the equilibrium that statics gives under the same weights, one after the other. */
    @Test
    void itIsTheEquilibriumOfStatics() {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(EA).build())
                .endAnchor("a", Point.of(0, 0, 12))
                .intermediateAnchor("p", Point.of(9, 0, 12), Passage.friction(0.15))
                .endAnchor("b", Point.of(20, 0, 12.5))
                .pretension(PRETENSION)
                .build();
        Worker first = worker("first", 90, Attachment.GRIPPED);
        Worker second = worker("second", 100, Attachment.GRIPPED);
        Fall fall = Fall.builder("second")
                .at(Place.of(2, 4))
                .faller(second)
                .hanging(first, Place.of(1, 3))
                .build();
        ArrestResult arrest = EnergyBalance.withDefaults().withTemperature(-20).solve(line, fall);
        ArrestResult rest = RescueLoad.ofRescuer(110).solve(arrest);
        LineEquilibrium statics = Statics.withDefaults()
                .withTemperature(-20)
                .solve(
                        line,
                        List.of(
                                new AppliedLoad(Place.of(1, 3), Attachment.GRIPPED, 90 * G),
                                new AppliedLoad(Place.of(2, 4), Attachment.GRIPPED, 210 * G)));
        assertThat(rest.method()).isEqualTo(Method.RESCUE_AT_REST);
        assertThat(rest.lineLoad()).isEqualTo(210 * G, within(1e-9));
        assertThat(rest.maximumTension()).isEqualTo(statics.maximumTension());
        for (int i = 0; i < 3; i++) {
            assertThat(rest.supports().get(i).vector())
                    .isEqualTo(statics.supports().get(i).vector());
        }
        assertThat(rest.attachmentAtPeak()).isEqualTo(statics.loads().get(1).point());
        assertThat(Verifier.withDefaults()
                        .equilibrium(rest.peak(), RescueLoad.ofRescuer(110).loads(arrest))
                        .failures())
                .isEmpty();
    }

    /**
     * A weightless cable on level supports with a load that runs to the middle: 2 T sin θ = W, and the stretched length
     * L₀ (1 + T/EA) is L/cos θ; by halving the angle's bracket, with nothing of the library.
     */
    @Test
    void aWeightlessSpanFollowsTheFormula() {
        Fall fall = Fall.builder("middle")
                .at(Place.of(1, 5))
                .faller(worker("A", 100, Attachment.FREE_RUNNING))
                .build();
        ArrestResult rest =
                RescueLoad.ofRescuer(80).solve(EnergyBalance.withDefaults().solve(single(1e-7), fall));
        double weight = 180 * G;
        double unstretched = 10 / (1 + PRETENSION / EA);
        double low = 1e-6;
        double high = 1;
        for (int i = 0; i < 200; i++) {
            double angle = 0.5 * (low + high);
            double tension = weight / (2 * Math.sin(angle));
            // A steeper line is longer and has less tension: too steep while its length is more than the cable gives.
            if (10 / Math.cos(angle) > unstretched * (1 + tension / EA)) {
                high = angle;
            } else {
                low = angle;
            }
        }
        double tension = weight / (2 * Math.sin(low));
        assertThat(rest.maximumTension()).isCloseTo(tension, within(1e-5 * tension));
        assertThat(rest.endAnchorLoad()).isCloseTo(tension, within(1e-5 * tension));
        assertThat(rest.sag()).isCloseTo(5 * Math.tan(low), within(1e-6));
    }

    /** What is left below: from the line at rest down the torn subsystem, harness stretch, body and margin. */
    @Test
    void theClearanceStartsAtTheLineAtRest() {
        ClearanceRules rules = ClearanceRules.commonPractice()
                .withMargin(0.7)
                .withHarnessStretch(0.25)
                .withObstructions(List.of(new Obstruction(0, 10, 3)));
        Worker who = worker("A", 100, Attachment.GRIPPED);
        Fall fall = Fall.builder("middle").at(Place.of(1, 4)).faller(who).build();
        ArrestResult arrest = EnergyBalance.withDefaults().withClearance(rules).solve(single(0.5), fall);
        ArrestResult light = RescueLoad.ofRescuer(80).withClearance(rules).solve(arrest);
        ArrestResult heavy = RescueLoad.ofRescuer(400).withClearance(rules).solve(arrest);
        for (ArrestResult rest : List.of(light, heavy)) {
            double required =
                    rest.attachmentAtPeak().z() - 1.8 - arrest.deployment() - 0.25 - who.attachmentHeight() - 0.7;
            assertThat(rest.clearance().requiredElevation()).isCloseTo(required, within(1e-9));
            assertThat(rest.explain().toString())
                    .contains("(deployment; the arrest before, by energy balance)")
                    .contains("(total fall distance; sum)");
            assertThat(rest.clearance().margin().orElseThrow()).isCloseTo(required - 3, within(1e-9));
            assertThat(rest.clearance().rows())
                    .filteredOn(row -> !row.source().equals("design"))
                    .extracting(row -> row.item() + ": " + row.source())
                    .containsExactly(
                            "line at the station before the fall: equilibrium of the line",
                            "descent of the line: rescue at rest",
                            "deployment: energy balance");
        }
        // 180 kg weigh less than the line carried in the arrest, 500 kg more.
        assertThat(light.clearance().requiredElevation())
                .isGreaterThan(arrest.clearance().requiredElevation());
        assertThat(heavy.clearance().requiredElevation())
                .isLessThan(arrest.clearance().requiredElevation());
        assertThat(heavy.maximumTension()).isGreaterThan(arrest.maximumTension());
    }

    /** Free fall and deployments are those of the arrest; nobody is braked any more, so the heaviest only hangs by his weight. */
    @Test
    void itKeepsWhatTheArrestLeft() {
        Fall fall = Fall.builder("both")
                .at(Place.of(1, 4))
                .faller(worker("light", 80, Attachment.GRIPPED))
                .faller(worker("heavy", 110, Attachment.GRIPPED))
                .build();
        ArrestResult arrest = EnergyBalance.withDefaults().withTemperature(-10).solve(single(0.5), fall);
        ArrestResult rest = RescueLoad.ofRescuer(90).solve(arrest);
        assertThat(rest.freeFall()).isEqualTo(arrest.freeFall());
        assertThat(rest.deployments()).isEqualTo(arrest.deployments());
        assertThat(rest.temperature()).isEqualTo(-10);
        assertThat(rest.side()).isEqualTo(arrest.side());
        assertThat(rest.attachmentBefore()).isEqualTo(arrest.attachmentBefore());
        assertThat(rest.arrestForce()).isCloseTo(110 * G, within(1e-9));
        assertThat(rest.lineLoad()).isCloseTo((80 + 110 + 90) * G, within(1e-9));
        assertThat(rest.energy().fall()).isZero();
        assertThat(rest.energy().lineWork()).isZero();
    }

    /** The one who hangs lowest decides: 1.8 m of lanyard and what is torn of it, or a longer lanyard. */
    @Test
    void whoHangsLowestDecidesTheClearance() {
        Worker near = worker("near", 80, Attachment.GRIPPED);
        Worker far = near.toBuilder("far")
                .connection(Connection.lanyard(
                        2.1,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(2500)
                                .maximumForce(4000)
                                .maximumExtension(1.75)
                                .build()))
                .build();
        for (List<Worker> order : List.of(List.of(near, far), List.of(far, near))) {
            Fall fall = Fall.builder("both")
                    .at(Place.of(1, 4))
                    .faller(order.get(0))
                    .faller(order.get(1))
                    .build();
            ArrestResult arrest = EnergyBalance.withDefaults().solve(single(0.5), fall);
            ArrestResult rest = RescueLoad.ofRescuer(90)
                    .withClearance(
                            ClearanceRules.commonPractice().withMargin(0.5).withHarnessStretch(0.2))
                    .solve(arrest);
            double torn = arrest.deployments().get(order.indexOf(far));
            assertThat(rest.clearanceWorker().id()).isEqualTo("far");
            assertThat(rest.harnessStretch()).isEqualTo(0.2);
            assertThat(rest.clearance().requiredElevation())
                    .isCloseTo(
                            rest.attachmentAtPeak().z() - 2.1 - torn - 0.2 - far.attachmentHeight() - 0.5,
                            within(1e-9));
        }
    }

    /** Spans of 9 and 12 m over a post that the cable passes freely. */
    private static Lifeline twoSpans() {
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(EA).build())
                .endAnchor("a", Point.of(0, 0, 12))
                .intermediateAnchor("p", Point.of(9, 0, 12), Passage.free())
                .endAnchor("b", Point.of(21, 0, 12))
                .pretension(PRETENSION)
                .build();
    }

    /**
     * What stands below counts where the load hangs at rest, measured along the line: in the second span that is the first
     * span's length and the way from its support.
     */
    @Test
    void onlyWhatStandsBelowTheLoadAtRestCounts() {
        Lifeline line = twoSpans();
        Fall fall = Fall.builder("second span")
                .at(Place.of(2, 3))
                .faller(worker("A", 100, Attachment.FREE_RUNNING))
                .build();
        ArrestResult arrest = EnergyBalance.withDefaults().solve(line, fall);
        double along = RescueLoad.ofRescuer(80).solve(arrest).attachmentAtPeak().x();
        assertThat(along).isGreaterThan(13);
        ClearanceRules rules = ClearanceRules.commonPractice()
                .withObstructions(List.of(
                        new Obstruction(0, 11.9, 5),
                        new Obstruction(along - 0.1, along - 0.01, 3),
                        new Obstruction(along + 0.01, 21, 4)));
        ArrestResult rest = RescueLoad.ofRescuer(80).withClearance(rules).solve(arrest);
        assertThat(rest.clearance().obstruction()).hasValue(3);
    }

    /** At a rigid post the line does not descend: the worker hangs from the post's own height. */
    @Test
    void atARigidPostNothingDescends() {
        Lifeline line = twoSpans();
        Worker who = worker("A", 100, Attachment.GRIPPED);
        Fall fall = Fall.builder("post").at(Place.atSupport("p")).faller(who).build();
        ArrestResult arrest = EnergyBalance.withDefaults().solve(line, fall);
        ClearanceRules rules = ClearanceRules.commonPractice().withMargin(0.5).withHarnessStretch(0.2);
        ArrestResult rest = RescueLoad.ofRescuer(80).withClearance(rules).solve(arrest);
        assertThat(rest.lineDescent()).isZero();
        assertThat(rest.clearance().requiredElevation())
                .isCloseTo(12 - 1.8 - arrest.deployment() - 0.2 - who.attachmentHeight() - 0.5, within(1e-9));
        assertThat(rest.clearance().rows()).anyMatch(row -> row.item().contains("support"));
    }

    @Test
    @SuppressWarnings("NullAway")
    void withoutAnArrestOrRulesItRefuses() {
        RescueLoad load = RescueLoad.ofRescuer(80);
        assertThatThrownBy(() -> load.withClearance(null))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("clearance");
        assertThatThrownBy(() -> load.solve(null))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("arrest");
        assertThatThrownBy(() -> load.loads(null))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("arrest");
        assertThat(load.withClearance(ClearanceRules.commonPractice().withMargin(2))
                        .canonicalForm())
                .isNotEqualTo(load.canonicalForm());
    }

    @Test
    void whatIsNoEnergyBalanceAndNoMassIsRefused() {
        Fall fall = Fall.builder("middle")
                .at(Place.of(1, 4))
                .faller(worker("A", 100, Attachment.GRIPPED))
                .build();
        ArrestResult rest =
                RescueLoad.ofRescuer(80).solve(EnergyBalance.withDefaults().solve(single(0.5), fall));
        assertThatThrownBy(() -> RescueLoad.ofRescuer(80).solve(rest))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("must be the energy balance");
        assertThatThrownBy(() -> RescueLoad.ofRescuer(-1))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("rescuerMass");
        assertThat(RescueLoad.ofRescuer(80).canonicalForm())
                .isNotEqualTo(RescueLoad.ofRescuer(81).canonicalForm());
    }
}
