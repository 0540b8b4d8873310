package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.clearance.Clearance;
import org.lifeline.analysis.clearance.ClearanceRow;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Point;
import org.lifeline.base.Refusal;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.absorber.LoadingCurve.Corner;
import org.lifeline.model.cable.Cable;

/** What a result says of itself: clearance as sums of its rows, supports, places, and inputs that are refused. */
class ArrestResultTest {
    private static final ClearanceRules RULES = new ClearanceRules(
            0.25, 0.7, List.of(new Obstruction(0, 14, 2.5), new Obstruction(17, 19, 3.5), new Obstruction(25, 30, 9)));

    private static Lifeline line() {
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(4e6).build())
                .support(Support.end("north", Point.of(0, 0, 10))
                        .withInlineAbsorber(InlineAbsorber.of(
                                LoadingCurve.through(List.of(new Corner(0, 9000), new Corner(0.5, 9000)), 8e6, 2e5))))
                .intermediateAnchor("post 1", Point.of(12, 0, 10), Passage.friction(0.1))
                .intermediateAnchor("post 2", Point.of(24, 0, 10), Passage.free())
                .endAnchor("south", Point.of(36, 0, 10))
                .pretension(1500)
                .build();
    }

    private static Worker worker(Connection connection) {
        return Worker.builder("A")
                .mass(100)
                .walkingLevel(8.5)
                .attachmentHeight(1.4)
                .connection(connection)
                .build();
    }

    private static Connection lanyard() {
        return Connection.lanyard(
                1.8,
                PersonalAbsorber.builder()
                        .clearanceForce(3200)
                        .maximumForce(5000)
                        .maximumExtension(1.5)
                        .build());
    }

    private static Fall fall(Connection connection) {
        return Fall.builder("f").at(Place.of(2, 6)).faller(worker(connection)).build();
    }

    private static ArrestResult solve(Connection connection) {
        return EnergyBalance.withDefaults().withClearance(RULES).solve(line(), fall(connection));
    }

    @Test
    void clearanceIsTheSumOfItsRows() {
        ArrestResult a = solve(lanyard());
        Clearance c = a.clearance();
        double z = c.lineElevation();
        assertThat(z).isEqualTo(a.attachmentBefore().z());
        for (ClearanceRow row : c.rows()) {
            z -= row.value();
            assertThat(row.elevation()).as(row.item()).isCloseTo(z, within(1e-12));
            assertThat(row.source()).isNotBlank();
        }
        assertThat(c.rows())
                .extracting(ClearanceRow::item)
                .containsExactly(
                        "line at the station before the fall",
                        "descent of the line",
                        "taut length of the connecting subsystem",
                        "deployment",
                        "harness stretch",
                        "harness attachment to feet",
                        "margin");
        double lowest = a.attachmentAtPeak().z() - 1.8 - a.deployment() - 0.25 - 1.4;
        assertThat(c.lowestPoint()).isCloseTo(lowest, within(1e-12));
        assertThat(c.requiredElevation()).isCloseTo(lowest - 0.7, within(1e-12));
        assertThat(c.requiredBelowLine()).isCloseTo(c.lineElevation() - lowest + 0.7, within(1e-12));
        assertThat(c.requiredBelowWalkingLevel()).isCloseTo(8.5 - lowest + 0.7, within(1e-12));
    }

    @Test
    void theHighestObstructionBelowThePlaceCounts() {
        // The fall is 18 m along the line: below it stands what reaches from 17 to 19 m.
        Clearance c = solve(lanyard()).clearance();
        assertThat(c.obstruction()).hasValue(3.5);
        assertThat(c.margin().getAsDouble()).isCloseTo(c.requiredElevation() - 3.5, within(1e-12));
        Clearance without =
                EnergyBalance.withDefaults().solve(line(), fall(lanyard())).clearance();
        assertThat(without.obstruction()).isEmpty();
        assertThat(without.margin()).isEmpty();
    }

    @Test
    void anObstructionWhereTheAttachmentRunsToCounts() {
        // The worker stands at 14.5 m; the attachment runs to the middle of the span, at 18 m, over the obstruction.
        Fall off = fall(lanyard()).at(Place.of(2, 2.5));
        Clearance c = EnergyBalance.withDefaults()
                .withClearance(RULES)
                .solve(line(), off)
                .clearance();
        assertThat(c.obstruction()).hasValue(3.5);
    }

    @Test
    void freeFallFromGeometry() {
        ArrestResult a = solve(lanyard());
        // Harness at 9.9 m, the line a little below 10 m.
        assertThat(a.freeFall()).isCloseTo(1.8 - (a.attachmentBefore().z() - 9.9), within(1e-12));
        assertThat(a.totalFallDistance())
                .isCloseTo(a.freeFall() + a.deployment() + a.lineDescent() + 0.25, within(1e-12));
    }

    @Test
    void aSelfRetractingDevice() {
        Connection device = Connection.selfRetracting(
                0.6,
                PersonalAbsorber.builder()
                        .clearanceForce(3000)
                        .maximumForce(4000)
                        .maximumExtension(2)
                        .build());
        ArrestResult a = solve(device);
        assertThat(a.freeFall()).isCloseTo(0.6, within(1e-12));
        assertThat(a.clearance().rows().get(2).item()).isEqualTo("length paid out at lock-up");
        double paidOut = a.attachmentBefore().z() - 9.9 + 0.6;
        assertThat(a.clearance().rows().get(2).value()).isCloseTo(paidOut, within(1e-12));
    }

    @Test
    void supportsAndAbsorbers() {
        ArrestResult a = solve(lanyard());
        assertThat(a.supports()).extracting(SupportReaction::id).containsExactly("north", "post 1", "post 2", "south");
        assertThat(a.anchorLoad("north")).isEqualTo(a.supports().get(0).force());
        assertThat(a.endAnchorLoad()).isEqualTo(Math.max(a.anchorLoad("north"), a.anchorLoad("south")));
        assertThatThrownBy(() -> a.anchorLoad("west")).isInstanceOf(IllegalArgumentException.class);
        assertThat(a.inlineAbsorbers()).hasSize(1);
        InlineAbsorberState absorber = a.inlineAbsorbers().get(0);
        assertThat(absorber.supportId()).isEqualTo("north");
        assertThat(absorber.extension() + absorber.remaining()).isCloseTo(0.5, within(1e-12));
        assertThat(absorber.bottomedOut()).isFalse();
        assertThat(new InlineAbsorberState("x", 0.5, 0).bottomedOut()).isTrue();
        // Cable comes toward the fall from both sides.
        assertThat(a.slip(1)).isPositive();
        assertThat(a.slip(2)).isPositive();
        SupportReaction north = a.supports().get(0);
        assertThat(north.vector().x()).isPositive();
        assertThat(Math.tan(north.angleBelowHorizontal()))
                .isCloseTo(-north.vector().z() / north.vector().horizontal(), within(1e-12));
        assertThat(a.line().spans()).isEqualTo(3);
        assertThat(a.fall().id()).isEqualTo("f");
        assertThat(a.temperature()).isEqualTo(15);
        assertThat(a.convergence().residual()).isLessThan(1e-9);
        assertThat(a.convergence().iterations()).isPositive();
    }

    @Test
    void placesThatAreNotOnTheLine() {
        Fall f = Fall.builder("f")
                .at(Place.of(4, 6))
                .faller(worker(lanyard()))
                .hanging(worker(lanyard()).toBuilder("B").build(), Place.of(1, 12))
                .build();
        assertThat(Refusal.of(() -> EnergyBalance.withDefaults().solve(line(), f)))
                .containsExactly(
                        "fall.at.span: 4: must be a span from 1 to 3",
                        "fall.hanging[0].place.station: 12.0 m: must lie inside the span, above 0 m and below 12.0 m");
        assertThat(Refusal.paths(() -> Statics.withDefaults()
                        .solve(
                                line(),
                                List.of(
                                        new AppliedLoad(Place.of(1, 3), Attachment.GRIPPED, 1),
                                        new AppliedLoad(Place.of(2, 0), Attachment.GRIPPED, 1)))))
                .containsExactly("loads[1].place.station");
        assertThat(Refusal.of(() -> new AppliedLoad(Place.of(1, 3), Attachment.GRIPPED, -1)))
                .containsExactly("force: -1.0 N: must be a finite number that is not negative");
    }

    @Test
    void staticsOfALineAndItsShape() {
        LineEquilibrium e = Statics.withDefaults()
                .withTemperature(40)
                .solve(line(), List.of(new AppliedLoad(Place.of(2, 4), Attachment.GRIPPED, 900)));
        assertThat(e.temperature()).isEqualTo(40);
        assertThat(e.spans()).hasSize(3);
        SpanState span = e.span(2);
        assertThat(span.number()).isEqualTo(2);
        assertThat(span.pieces()).hasSize(2);
        assertThat(span.firstSupport()).isEqualTo(span.pieces().get(0).start());
        Point at = e.loads().get(0).point();
        // Under a load the sag is largest there, or where the cable runs parallel to the chord.
        double most = 0;
        for (Point p : span.shape(400)) {
            most = Math.max(most, span.sagAt(p));
            assertThat(p.x()).isBetween(12 - 1e-9, 24 + 1e-9);
        }
        assertThat(span.sag()).isCloseTo(most, within(1e-6));
        assertThat(span.sag()).isGreaterThanOrEqualTo(span.sagAt(at) - 1e-12);
        assertThat(e.span(1).shape(10)).hasSize(11);
        assertThat(span.shape(10)).hasSize(21);
        assertThat(e.shape(10)).hasSize(11 + 21 + 11);
        double h = span.horizontalTension();
        for (CablePiece piece : span.pieces()) {
            assertThat(piece.startTension().horizontal()).isCloseTo(h, within(1e-9));
            assertThat(piece.endTension().horizontal()).isCloseTo(h, within(1e-9));
            assertThat(piece.pointAt(piece.unstretchedLength()).distance(piece.end()))
                    .isLessThan(1e-12);
        }
        assertThat(span.pieces().get(0).loadAtEnd()).isEqualTo(900);
        assertThat(span.pieces().get(1).loadAtEnd()).isZero();
        assertThat(span.unstretchedLength())
                .isEqualTo(span.pieces().get(0).unstretchedLength()
                        + span.pieces().get(1).unstretchedLength());
        assertThat(e.maximumTension())
                .isEqualTo(e.spans().stream()
                        .mapToDouble(SpanState::maximumTension)
                        .max()
                        .getAsDouble());
        assertThat(e.firstTension())
                .isEqualTo(e.span(1).pieces().get(0).startTension().magnitude());
        assertThat(e.lastTension())
                .isEqualTo(e.span(3).pieces().get(0).endTension().magnitude());
        assertThat(e.support("post 1").id()).isEqualTo("post 1");
    }

    @Test
    void theSagOfAnUnloadedSpanIsThatOfAParabola() {
        LineEquilibrium e = Statics.withDefaults().solve(line(), List.of());
        double h = e.span(1).horizontalTension();
        double w = 0.5 * 9.80665;
        assertThat(e.span(1).sag()).isCloseTo(w * 144 / (8 * h), within(1e-3 * w * 144 / (8 * h)));
        assertThat(e.loads()).isEmpty();
        assertThat(e.firstTension()).isCloseTo(1500, within(1e-9));
    }
}
