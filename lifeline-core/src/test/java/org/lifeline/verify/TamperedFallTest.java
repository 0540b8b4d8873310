package org.lifeline.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lifeline.verify.Arrested.distance;
import static org.lifeline.verify.Arrested.energy;
import static org.lifeline.verify.Arrested.failed;
import static org.lifeline.verify.Arrested.numbers;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed.Form;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.testing.ArrestCase;
import org.lifeline.testing.Cases;
import org.lifeline.testing.Shorthand;
import org.lifeline.verify.state.ArrestNumbers;
import org.lifeline.verify.state.ClearanceNumbers;

/** The faller's side of an arrest where it stands at its end, is shared, cold, or at a support: changed by one number. */
class TamperedFallTest {
    private static final double INF = Double.POSITIVE_INFINITY;
    private static final double STEEL = 1.2e-5;

    private static Shorthand line(String name) {
        return new Shorthand(name)
                .cable(4.2, STEEL, 0, 0, 1, 4.9e6)
                .end(0, 0, 12)
                .post(12, 0, 12.4, 0)
                .end(24, 0, 12)
                .installed(Form.PRETENSION, 1500, 1, 15);
    }

    /** One or two whose absorbers of 0.3 m end at a stop. */
    private static ArrestNumbers atStop(int fallers, double stiffness) {
        Shorthand s = line("at the stop");
        for (int i = 0; i < fallers; i++) {
            s = s.faller(new double[] {110 + 10 * i, 10.5, 1.5}, false, 1.8, stiffness, 0, 0, 0.05, 2500, 0.3, 2500);
        }
        return numbers(s.fall(Attachment.GRIPPED, Place.of(1, 5), Double.NaN).at(15, DeploymentForce.MAXIMUM));
    }

    @Test
    void anAbsorberAtItsStopIsSaidToBeUsedUp() {
        for (double stiffness : new double[] {INF, 2e5}) {
            ArrestNumbers one = atStop(1, stiffness);
            assertThat(one.bottomedOut()).isTrue();
            assertThat(failed(one)).as("stop %s N/m", stiffness).isEmpty();
            assertThat(failed(Changed.with(one, "bottomedOut", false)))
                    .as("stop %s N/m", stiffness)
                    .containsExactly(Check.BOTTOMED_OUT);
        }
        ArrestNumbers two = atStop(2, INF);
        assertThat(failed(two)).isEmpty();
        assertThat(failed(Changed.with(two, "bottomedOut", false))).containsExactly(Check.BOTTOMED_OUT);
    }

    /** At rigid stops nobody knows how two share the load: neither gets more than all nor, the greater share, less than half. */
    @Test
    void theShareOfOneOfTwoAtRigidStops() {
        ArrestNumbers two = atStop(2, INF);
        for (double share : new double[] {0.5, 0.7, 1}) {
            assertThat(failed(Changed.with(two, "arrestForce", share * two.lineLoad())))
                    .as("share %s", share)
                    .isEmpty();
        }
        for (double share : new double[] {0, 0.4, 0.5 - 1e-7, 1 + 1e-7, 2}) {
            assertThat(failed(Changed.with(two, "arrestForce", share * two.lineLoad())))
                    .as("share %s", share)
                    .containsExactly(Check.ARREST_FORCE);
        }
    }

    /** Two whose absorbers are not used up share the load by their curves. */
    @Test
    void theShareOfOneOfTwoOnTheirCurves() {
        Shorthand s = line("unlike")
                .faller(new double[] {80, 10.5, 1.5}, false, 1.8, 2e5, 0, 0, 0.06, 6000, 1.2, 6000)
                .faller(new double[] {90, 10.5, 1.5}, false, 1.8, 2e5, 0, 0, 0.06, 4000, 1.2, 4000);
        ArrestNumbers two =
                numbers(s.fall(Attachment.GRIPPED, Place.of(1, 5), Double.NaN).at(15, DeploymentForce.MAXIMUM));
        assertThat(two.bottomedOut()).isFalse();
        assertThat(two.arrestForce()).isLessThan(0.7 * two.lineLoad());
        assertThat(failed(two)).isEmpty();
        for (double error : new double[] {-1e-7, 1e-7}) {
            assertThat(failed(Changed.with(two, "arrestForce", two.arrestForce() * (1 + error))))
                    .containsExactly(Check.ARREST_FORCE);
        }
    }

    /** The largest deployment is that of the one who has it; the steps of the clearance go by it as well. */
    @Test
    void anotherLargestDeployment() {
        for (ArrestNumbers each : List.of(numbers(Cases.level()), numbers(Cases.together()))) {
            for (double error : new double[] {-1e-6, 1e-6}) {
                ArrestNumbers a = Changed.with(each, "deployment", each.deployment() + error);
                assertThat(failed(distance(a, "totalFallDistance", error))).containsExactly(Check.DERIVED);
            }
        }
    }

    /** A deployment that is not that of its worker: on a plateau the force does not show it, the work does. */
    @Test
    void anotherDeploymentOfOneWorker() {
        ArrestNumbers level = numbers(Cases.level());
        double x = level.deployment() - 1e-6;
        ArrestNumbers a = distance(
                Changed.with(Changed.with(level, "deployment", x), "deployments", List.of(x)),
                "totalFallDistance",
                -1e-6);
        assertThat(failed(a)).contains(Check.ENERGY_FALL, Check.ENERGY_CONNECTION);
    }

    /** The cold raises the force of this absorber by half; it is the curve at the temperature of the arrest that counts. */
    @Test
    void anAbsorberInTheCold() {
        Connection.PersonalAbsorber absorber = Connection.PersonalAbsorber.builder()
                .clearanceForce(4000)
                .maximumForce(5000)
                .maximumExtension(1.5)
                .initialStiffness(1e5)
                .stopStiffness(2e5)
                .condition(AbsorberCondition.builder(AbsorberCondition.Kind.COLD)
                        .clearanceForce(4500)
                        .maximumForce(7500)
                        .temperature(-10)
                        .source("test")
                        .build())
                .build();
        Worker worker = Worker.builder("w")
                .mass(100)
                .walkingLevel(10.5)
                .connection(Connection.lanyard(1.8, absorber))
                .build();
        Fall fall = Fall.builder("fall").at(Place.of(1, 5)).faller(worker).build();
        double[] force = new double[2];
        for (int k = 0; k < 2; k++) {
            ArrestCase each =
                    new ArrestCase("cold", Cases.level().line(), fall, k == 0 ? 15 : -20, DeploymentForce.MAXIMUM);
            ArrestNumbers a = numbers(each);
            force[k] = a.lineLoad();
            assertThat(failed(a)).as("temperature %s", each.temperature()).isEmpty();
        }
        assertThat(force[1]).isGreaterThan(1.3 * force[0]);
    }

    @Test
    void aFallAtASupport() {
        ArrestCase yielding = Cases.yielding();
        for (int support : new int[] {0, 1, 2, 3}) {
            Place place =
                    Place.atSupport(yielding.line().supports().get(support).id());
            Fall fall = Fall.builder("fall")
                    .at(place)
                    .faller(yielding.fall().fallers().get(0))
                    .build();
            ArrestNumbers a = numbers(new ArrestCase("s", yielding.line(), fall, 30, DeploymentForce.MAXIMUM));
            assertThat(failed(a)).as("support %d", support).isEmpty();
            ArrestNumbers beside = Changed.with(a, "attachmentBefore", Changed.moved(a.attachmentBefore(), 1e-6, 0, 0));
            assertThat(failed(beside)).as("support %d", support).containsExactly(Check.ATTACHMENT_BEFORE);
            ArrestNumbers later = Changed.with(a, "attachmentAtPeak", Changed.moved(a.attachmentAtPeak(), 0, 1e-6, 0));
            assertThat(failed(later)).as("support %d", support).contains(Check.ATTACHMENT_AT_PEAK);
        }
    }

    /** On a sloping span the sag is measured from the straight line between its supports. */
    @ParameterizedTest
    @ValueSource(strings = {"sag", "loadX", "lineDescent"})
    void distancesOnASlope(String name) {
        for (ArrestCase each : List.of(Cases.climbing(), Cases.clampsAndCorners(), Cases.twoInlineAbsorbers())) {
            ArrestNumbers a = numbers(each);
            assertThat(failed(a)).as(each.name()).isEmpty();
            assertThat(failed(distance(a, name, 1e-7))).as(each.name()).containsExactly(Check.DERIVED);
            assertThat(failed(distance(a, name, -1e-7))).as(each.name()).containsExactly(Check.DERIVED);
        }
    }

    /** Where the cable runs freely over all posts, or is clamped, there is nothing that friction could heat. */
    @Test
    void heatOnALineWithoutFriction() {
        for (ArrestCase each : List.of(Cases.gripped(), Cases.sequence(), Cases.inlineAbsorber())) {
            ArrestNumbers a = numbers(each);
            assertThat(failed(energy(a, "friction", 5e-9))).as(each.name()).containsExactly(Check.ENERGY_FRICTION);
        }
    }

    /** A post that turns the cable by a right angle with much friction holds it: no slip, no heat, and that is right. */
    @Test
    void frictionThatHoldsGivesNoHeat() {
        Shorthand s = new Shorthand("round a corner")
                .cable(4.2, STEEL, 0, 0, 1, 4.9e6)
                .end(0, 0, 12)
                .post(12, 0, 12, 0.6)
                .post(12, 12, 12, 0.6)
                .end(0, 12, 12)
                .installed(Form.PRETENSION, 9000, 1, 15)
                .faller(new double[] {60, 10.5, 1.5}, false, 1.8, 2e5, 0, 0, 0.06, 2000, 1.6, 2000);
        ArrestNumbers a =
                numbers(s.fall(Attachment.GRIPPED, Place.of(1, 6), 0.1).at(15, DeploymentForce.MAXIMUM));
        assertThat(a.energy().friction()).isZero();
        assertThat(failed(a)).isEmpty();
    }

    @Test
    void aRowOfTheClearanceOfAnotherValue() {
        ArrestNumbers level = numbers(Cases.level());
        ClearanceNumbers c = level.clearance();
        for (int i = 0; i < c.rows().size(); i++) {
            ArrestNumbers a = Changed.with(
                    level,
                    "clearance",
                    Changed.with(c, "rows", Changed.at(c.rows(), i, r -> Changed.with(r, "value", r.value() + 1e-6))));
            assertThat(failed(a)).as("row %d, %s", i, c.rows().get(i).item()).containsExactly(Check.CLEARANCE);
        }
    }

    /** Slip of a support that is missing from the list, and one of a support that the line does not have. */
    @Test
    void slipsThatAreNotThoseOfTheSupports() {
        ArrestNumbers friction = numbers(Cases.friction());
        ArrestNumbers.Distances d = friction.distances();
        ArrestNumbers less = Changed.with(
                friction,
                "distances",
                Changed.with(d, "slip", d.slip().subList(0, d.slip().size() - 1)));
        assertThat(failed(less)).containsExactly(Check.DERIVED);
        List<Double> longer = new ArrayList<>(d.slip());
        longer.add(0.0);
        ArrestNumbers more = Changed.with(friction, "distances", Changed.with(d, "slip", longer));
        assertThat(failed(more)).containsExactly(Check.DERIVED);
    }

    @Test
    void numbersOfAnArrestThatAreNone() {
        ArrestNumbers level = numbers(Cases.level());
        for (String name : List.of("freeFall", "deployment", "arrestForce")) {
            assertThat(failed(Changed.with(level, name, Double.NaN))).as(name).contains(Check.FINITE);
        }
        for (String row : List.of("fall", "cable", "hanging", "connection", "friction", "inlineAbsorbers", "anchors")) {
            assertThat(failed(energy(level, row, Double.NaN))).as(row).contains(Check.FINITE);
        }
        ClearanceNumbers c = level.clearance();
        for (String name :
                List.of("lineElevation", "lowestPoint", "requiredElevation", "belowLine", "belowWalkingLevel")) {
            ArrestNumbers a = Changed.with(level, "clearance", Changed.with(c, name, Double.NaN));
            assertThat(failed(a)).as(name).contains(Check.FINITE);
        }
    }
}
