package org.lifeline.verify;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;

/**
 * Heat of a friction so faint that 16 digits do not carry it beside the fall is no law to break: a slip over an anchor of
 * μ = 1e-30 gives an account without heat. What 16 digits carry is still demanded; see {@link TamperedArrestTest}.
 */
class FaintFrictionTest {
    @ParameterizedTest
    @ValueSource(doubles = {1e-300, 1e-30, 1e-16, 1e-12, 1e-9, 1e-7, 1e-5, 1e-3, 0.1})
    void heatIsDemandedWhereItCanBeSeen(double mu) {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.576)
                        .axialStiffness(4.9e6)
                        .build())
                .endAnchor("a", Point.of(0, 0, 12.4))
                .intermediateAnchor("p", Point.of(12, 0, 12.4), Passage.friction(mu))
                .endAnchor("b", Point.of(24, 0, 12.4))
                .pretension(1500)
                .build();
        Worker worker = Worker.builder("A")
                .mass(100)
                .walkingLevel(10.9)
                .attachmentHeight(1.5)
                .attachment(Attachment.GRIPPED)
                .connection(Connection.lanyard(
                        1.8,
                        PersonalAbsorber.builder()
                                .clearanceForce(3200)
                                .maximumForce(6000)
                                .maximumExtension(1.2)
                                .initialStiffness(1e5)
                                .build()))
                .build();
        Fall fall = Fall.builder("f").at(Place.of(1, 4)).faller(worker).build();

        ArrestResult arrest = EnergyBalance.withDefaults().solve(line, fall);
        VerificationReport report = Verifier.withDefaults().arrest(arrest);

        assertThat(report.passed()).as("μ = %s: %s", mu, report).isTrue();
    }
}
