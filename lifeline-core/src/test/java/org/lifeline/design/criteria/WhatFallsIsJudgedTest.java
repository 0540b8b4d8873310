package org.lifeline.design.criteria;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

/** Criteria judge the case that governs as it is: with its attachment held or running, and with the connection of who falls. */
class WhatFallsIsJudgedTest {
    private static LifelineDesign steep() {
        LifelineDesign d =
                Designs.design(1, Passage.free(), Attachment.FREE_RUNNING).withTemperatures(List.of(15.0));
        LifelineDesign raised = d.toBuilder()
                .line(d.line().withSupports(s -> s.id().equals("south") ? s.withPosition(Point.of(12, 0, 13.5)) : s))
                .build();
        Fall fall = Fall.builder("low")
                .at(Place.of(1, 3))
                .faller(raised.workers().get(0))
                .build();
        return raised.withFalls(List.of(fall));
    }

    @Test
    void twiceTheEnergyIsArrestedWithTheAttachmentHeldWhereThatGoverns() {
        LifelineDesign d = steep();
        Fall fall = d.falls().get(0);
        EnergyBalance held = EnergyBalance.withDefaults()
                .withTemperature(15)
                .withClearance(d.clearance())
                .withAttachmentLimit(AttachmentLimit.HELD);
        ArrestResult governing = held.solve(d.line(), fall);
        Extremes e = Extremes.of(d, List.of(governing));
        double twice = 0;
        double running = 0;
        for (DeploymentForce side : DeploymentForce.values()) {
            Fall doubled = Fall.builder("low")
                    .at(fall.place())
                    .faller(fall.fallers().get(0).withMass(2 * fall.fallingMass()))
                    .freeFall(Math.min(governing.freeFall(), 1.8288))
                    .build();
            twice = Math.max(twice, held.withSide(side).solve(d.line(), doubled).maximumTension());
            running = Math.max(
                    running,
                    held.withSide(side)
                            .withAttachmentLimit(AttachmentLimit.RUNNING)
                            .solve(d.line(), doubled)
                            .maximumTension());
        }
        assertThat(twice).isGreaterThan(running + 100);
        double demand = Criteria.of("us-osha-impact")
                .orElseThrow()
                .check(e)
                .comparisons()
                .get(0)
                .demand();
        assertThat(demand).isGreaterThan(running + 100).isCloseTo(twice, within(0.02 * twice));
    }

    /** One of the same name and mass with a harder absorber is another one. */
    @Test
    void theConnectionOfWhoFallsIsJudgedAndNotThatOfHisNamesake() {
        LifelineDesign d = Designs.design(1, Passage.free(), Attachment.GRIPPED);
        Worker listed = d.workers().get(0);
        Worker harder = listed.toBuilder(listed.id())
                .connection(Connection.lanyard(
                        1.8,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(9000)
                                .maximumForce(9000)
                                .maximumExtension(1.75)
                                .build()))
                .build();
        Fall fall = Fall.builder("harder").at(Place.of(1, 6)).faller(harder).build();
        Extremes e = Extremes.of(
                d,
                List.of(EnergyBalance.withDefaults()
                        .withClearance(d.clearance())
                        .solve(d.line(), fall)));
        assertThat(new CheckedDesign(e).workers()).contains(listed, harder);
        Criterion classes = Criteria.of("ab-absorber-classes").orElseThrow();
        assertThat(classes.check(e).comparisons().stream().map(CapacityCheck::status))
                .contains(Status.NOT_MET);
    }

    /** Of alternatives the one that decides is shown, not one that is still open and has a smaller ratio. */
    @Test
    void anAlternativeThatIsMetIsShownBeforeOneThatIsOpen() {
        CapacityCheck met = leaf("met", 900);
        CapacityCheck open =
                CapacityCheck.all("open", List.of(leaf("part", 333), CapacityCheck.missing("m", "not given")));
        assertThat(open.status()).isEqualTo(Status.NOT_EVALUATED);
        for (List<CapacityCheck> parts : List.of(List.of(met, open), List.of(open, met))) {
            CapacityCheck any = CapacityCheck.any("t", parts);
            assertThat(any.status()).isEqualTo(Status.MET);
            assertThat(any.ratio()).isCloseTo(0.9, within(1e-12));
            assertThat(any.deciding()).containsExactly(met);
        }
    }

    private static CapacityCheck leaf(String title, double demand) {
        return CapacityCheck.of(
                title, CheckedValue.of("a", demand), new Limit("q", LimitType.AT_MOST, 1000, "N"), true);
    }
}
