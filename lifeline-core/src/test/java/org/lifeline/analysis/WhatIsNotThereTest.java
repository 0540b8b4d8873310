package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.model.Connection;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;

/** What is asked for and is not there, and settings that no analysis can keep: refused with what there is. */
class WhatIsNotThereTest {
    private static final Lifeline LINE = Lifeline.builder()
            .cable(Cable.builder().weightPerLength(4.2).axialStiffness(4.9e6).build())
            .endAnchor("west", Point.of(0, 0, 6))
            .endAnchor("east", Point.of(8, 0, 6))
            .pretension(1500)
            .build();

    private static final Fall FALL = Fall.builder("f")
            .at(Place.of(1, 4))
            .faller(Worker.builder("w")
                    .mass(100)
                    .walkingLevel(4.5)
                    .connection(Connection.lanyard(
                            1.8,
                            PersonalAbsorber.builder()
                                    .clearanceForce(4000)
                                    .maximumForce(6000)
                                    .maximumExtension(1.2)
                                    .build()))
                    .build())
            .build();

    private static Map<String, ThrowingCallable> calls() {
        ArrestResult r = EnergyBalance.withDefaults().solve(LINE, FALL);
        EnvelopeResult e = Envelope.withDefaults()
                .solve(LifelineDesign.builder("d")
                        .line(LINE)
                        .worker(FALL.fallers().get(0))
                        .build());
        TransientArrest t = TransientArrest.withDefaults();
        Map<String, ThrowingCallable> map = new LinkedHashMap<>();
        map.put("span: 99: must be a span from 1 to 1", () -> r.peak().span(99));
        map.put("span: 0: must be a span from 1 to 1", () -> LINE.run(0));
        map.put("span: 2: must be a span from 1 to 1", () -> LINE.rise(2));
        map.put("span: 9: must be a span from 1 to 1", () -> e.inSpan(9));
        map.put("support: 99: must be the number of a support from 0 to 1", () -> r.slip(99));
        map.put("support: 7: must be the number of a support from 0 to 1", () -> e.supportProfile(7));
        map.put("support: nope: must be the id of a support of the line", () -> r.anchorLoad("nope"));
        map.put(
                "support: pole: must be the id of a support of the line",
                () -> e.extremes().onSupport("pole"));
        map.put(
                "obstruction: 0: the design has no obstruction",
                () -> e.extremes().overObstruction(0));
        map.put("sampling: 1.0E-9 s", () -> t.withSampling(1e-9));
        map.put(
                "must not make more than 1000000 samples",
                () -> t.withDuration(500).withSampling(1e-5));
        map.put("duration: 1.0E12 s", () -> t.withDuration(1e12));
        map.put("segmentLength: 1.0E-9 m", () -> t.withSegmentLength(1e-9));
        map.put("refinements: 99: must be at most 12", () -> t.withRefinements(99));
        return map;
    }

    @TestFactory
    Stream<DynamicTest> isRefusedWithWhatThereIs() {
        return calls().entrySet().stream()
                .map(c -> DynamicTest.dynamicTest(
                        c.getKey(),
                        () -> assertThatThrownBy(c.getValue())
                                .isInstanceOf(InvalidInputException.class)
                                .hasMessageContaining(c.getKey())));
    }
}
