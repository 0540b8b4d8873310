package org.lifeline.verify;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Point;
import org.lifeline.model.Connection;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;

/**
 * An absorber that comes to a stop of 1e12 N/m and more: the last of 16 digits of its deployment is up to 0.2 N, which the check
 * of the force took for a wrong one.
 */
class StiffStopTest {
    @ParameterizedTest
    @ValueSource(doubles = {1e5, 1e9, 1e11, 1e12, 1e13, 1e14, 1e15})
    void theLastDigitOfTheDeploymentIsNoWrongForce(double stop) {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.42).axialStiffness(3e6).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .endAnchor("b", Point.of(12, 0, 10))
                .pretension(1000)
                .build();
        for (double mass : new double[] {95, 104, 113, 127, 140}) {
            Worker worker = Worker.builder("A")
                    .mass(mass)
                    .walkingLevel(8.5)
                    .connection(Connection.lanyard(
                            2.0,
                            PersonalAbsorber.builder()
                                    .clearanceForce(2000)
                                    .maximumForce(2600)
                                    .maximumExtension(0.7)
                                    .initialStiffness(1e5)
                                    .stopStiffness(stop)
                                    .build()))
                    .build();
            ArrestResult arrest = EnergyBalance.withDefaults()
                    .solve(
                            line,
                            Fall.builder("f").at(Place.of(1, 5)).faller(worker).build());
            assertThat(arrest.bottomedOut()).as("%s kg, stop %s", mass, stop).isTrue();

            VerificationReport report = Verifier.withDefaults().arrest(arrest);

            assertThat(report.passed())
                    .as("%s kg, stop %s: %s", mass, stop, report)
                    .isTrue();
        }
    }
}
