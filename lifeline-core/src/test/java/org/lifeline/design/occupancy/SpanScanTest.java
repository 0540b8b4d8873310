package org.lifeline.design.occupancy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.lifeline.design.occupancy.Crews.anchors;

import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.Point;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.RandomDesigns;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.DeploymentForce;

/** The places of one span that a fall is moved to, against many more of them; and how many spans take over a line. */
class SpanScanTest {
    /** Three spans of 12, 6 and 9 m, the cable clamped between them, so that each is a line of its own. */
    private static Lifeline unequal(Passage passage) {
        return Lifeline.builder()
                .cable(Designs.cable())
                .endAnchor("a", Point.of(0, 0, 12.4))
                .support(Support.intermediate("p", Point.of(12, 0, 12.4), passage))
                .support(Support.intermediate("q", Point.of(18, 0, 12.9), passage))
                .endAnchor("z", Point.of(27, 0, 12.4))
                .pretension(1500)
                .build();
    }

    private static LifelineDesign design(Lifeline line, Attachment attachment) {
        LifelineDesign.Builder b = LifelineDesign.builder("spans").line(line).temperature(15);
        b.worker(Designs.worker("W", attachment));
        return b.fall(Fall.builder("f")
                        .at(Place.of(1, 3))
                        .faller(Designs.worker("W", attachment))
                        .build())
                .build();
    }

    private static double bruteForce(LifelineDesign d, int span, Quantity quantity) {
        double most = Double.NEGATIVE_INFINITY;
        for (AttachmentLimit limit : AttachmentLimit.values()) {
            for (int i = 0; i <= 60; i++) {
                Place place = i == 0
                        ? Place.atSupport(d.line().supports().get(span - 1).id())
                        : i == 60
                                ? Place.atSupport(d.line().supports().get(span).id())
                                : Place.of(span, d.line().run(span) * i / 60);
                ArrestResult r = EnergyBalance.withDefaults()
                        .withSide(DeploymentForce.MAXIMUM)
                        .withAttachmentLimit(limit)
                        .solve(d.line(), d.falls().get(0).at(place));
                double value = Extremes.of(d, List.of(r))
                        .of(quantity)
                        .map(e -> e.value())
                        .orElse(Double.NEGATIVE_INFINITY);
                most = Math.max(most, value);
            }
        }
        return most;
    }

    /** Sixty places find loads at most half a percent larger, in each span, for falls that grip and falls that may run. */
    @Test
    void aFinerScanOfASpanFindsHardlyMore() {
        for (Attachment attachment : Attachment.values()) {
            LifelineDesign d = design(unequal(Passage.free()), attachment);
            for (int span = 1; span <= 3; span++) {
                Extremes found = new SpanScan(d, Envelope.withDefaults()).run(span);
                for (Quantity quantity : List.of(Quantity.MAXIMUM_TENSION, Quantity.END_ANCHOR_LOAD)) {
                    double fine = bruteForce(d, span, quantity);
                    assertThat(found.of(quantity).orElseThrow().value())
                            .as("%s, span %d, %s", attachment, span, quantity)
                            .isBetween(0.995 * fine, 1.001 * fine);
                }
            }
        }
    }

    /** The load on each of a span's supports is at least that of a fall at it. */
    @Test
    void bothSupportsOfASpanAreFallenAt() {
        LifelineDesign d = design(unequal(Passage.clamped()), Attachment.GRIPPED);
        for (int span = 1; span <= 3; span++) {
            Extremes found = new SpanScan(d, Envelope.withDefaults()).run(span);
            for (int i = span - 1; i <= span; i++) {
                String id = d.line().supports().get(i).id();
                double atIt = EnergyBalance.withDefaults()
                        .withSide(DeploymentForce.MAXIMUM)
                        .solve(d.line(), d.falls().get(0).at(Place.atSupport(id)))
                        .anchorLoad(id);
                assertThat(found.onSupport(id).orElseThrow().value())
                        .as("span %d, %s", span, id)
                        .isGreaterThanOrEqualTo(atIt * (1 - 1e-9));
            }
        }
    }

    /** A bollard of 0.2 m between the places that a span of 12 m is looked at counts, and one in the next span does not. */
    @Test
    void anObstructionBetweenTheStationsIsFallenOn() {
        LifelineDesign plain = design(unequal(Passage.clamped()), Attachment.GRIPPED);
        for (double from = 0.4; from < 11.8; from += 0.7) {
            ClearanceRules rules =
                    ClearanceRules.commonPractice().withObstructions(List.of(new Obstruction(from, from + 0.2, 9)));
            LifelineDesign d = plain.toBuilder().clearance(rules).build();
            double margin = EnergyBalance.withDefaults()
                    .withSide(DeploymentForce.CLEARANCE)
                    .withClearance(rules)
                    .solve(d.line(), d.falls().get(0).at(Place.of(1, from + 0.1)))
                    .clearance()
                    .margin()
                    .orElseThrow();
            Extremes found = new SpanScan(d, Envelope.withDefaults()).run(1);
            assertThat(found.of(Quantity.CLEARANCE_MARGIN).orElseThrow().value())
                    .as("from %s", from)
                    .isLessThanOrEqualTo(margin + 1e-9);
            assertThat(new SpanScan(d, Envelope.withDefaults()).run(2).of(Quantity.CLEARANCE_MARGIN))
                    .isEmpty();
        }
    }

    /**
     * Strength for twice the impact energy is asked for along the whole line, as of an envelope: at the places that govern with one mass
     * a span took a worker on anchors of half the strength.
     */
    @Test
    void twiceTheImpactEnergyIsAskedForBesideThePlacesOfOneMass() {
        LifelineDesign random = new RandomDesigns(287).design();
        Criterion impact = Criteria.of("us-osha-impact").orElseThrow();
        LifelineDesign.Builder b = LifelineDesign.builder("impact")
                .line(random.line()
                        .withCable(random.line().cable().withBreakingStrength(1e6))
                        .withSupports(s -> s.withCapacity(1e5)))
                .worker(random.workers().get(0))
                .modelFactors(random.modelFactors());
        random.temperatures().forEach(b::temperature);
        LifelineDesign strong = b.build();
        double needed = 1e5
                * impact.check(Envelope.withDefaults().solve(strong).extremes()).ratio();
        assertThat(Occupancy.meeting(List.of(impact)).solve(strong).inAll()).isEqualTo(1);
        LifelineDesign weak = strong.withLine(strong.line().withSupports(s -> s.withCapacity(0.98 * needed)));
        assertThat(Occupancy.meeting(List.of(impact)).solve(weak).inAll()).isZero();
    }

    @Test
    void anInterruptedScanEnds() {
        LifelineDesign d = design(unequal(Passage.clamped()), Attachment.GRIPPED);
        SpanScan scan = new SpanScan(d, Envelope.withDefaults());
        Thread.currentThread().interrupt();
        try {
            assertThatThrownBy(() -> scan.run(1)).isInstanceOf(CancellationException.class);
        } finally {
            assertThat(Thread.interrupted()).isTrue();
        }
    }

    private static LifelineDesign crew(double... masses) {
        LifelineDesign.Builder b =
                LifelineDesign.builder("crew").line(unequal(Passage.clamped())).temperature(15);
        for (int i = 0; i < masses.length; i++) {
            b.worker(Designs.worker("W" + i, Attachment.GRIPPED).withMass(masses[i]));
        }
        return b.build();
    }

    /**
     * The longer a span, the farther it lets a worker down: a limit on what is needed below the line leaves out the longest
     * only. The line then takes no more than the other two, and nobody in the first.
     */
    @Test
    void aSpanThatTakesNobodyIsLeftOutOfTheLine() {
        LifelineDesign d = crew(100, 100, 100);
        double[] below = new double[4];
        for (int span = 1; span <= 3; span++) {
            OccupancyResult r = Occupancy.meeting(List.of(belowLine(0.1))).solve(d);
            int number = span;
            below[span] = r.tried().stream()
                            .filter(t -> t.span() == number && t.number() == 1)
                            .findFirst()
                            .orElseThrow()
                            .notMet()
                            .get(0)
                            .ratio()
                    * 0.1;
        }
        assertThat(below[1]).isGreaterThan(below[3] + 0.02);
        assertThat(below[3]).isGreaterThan(below[2]);
        OccupancyResult r =
                Occupancy.meeting(List.of(belowLine(below[3] + 0.01))).solve(d);
        assertThat(r.inSpan(1)).isZero();
        assertThat(r.inSpan(2)).isPositive();
        assertThat(r.inSpan(3)).isPositive();
        assertThat(r.inAll()).isBetween(1, r.inSpan(2) + r.inSpan(3));
        // In each span that takes somebody: one alone, and the span full with nobody elsewhere, which is the same.
        TriedNumber one = r.tried().stream()
                .filter(t -> t.span() == 0 && t.number() == 1)
                .findFirst()
                .orElseThrow();
        assertThat(one.arrangements()).isEqualTo(4);
    }

    private static Criterion belowLine(double limit) {
        return Criterion.stated("below", CheckedQuantity.of(Quantity.REQUIRED_BELOW_LINE), limit, "brief 3");
    }

    /** With every limit met the line takes the crew, and each number is tried in each span and over the line. */
    @Test
    void aGenerousLimitLetsTheWholeCrewOn() {
        OccupancyResult r = Occupancy.meeting(List.of(anchors(1e6))).solve(crew(100, 80));
        assertThat(r.inAll()).isEqualTo(2);
        assertThat(r.tried()).hasSize(3 * 2 + 2);
        for (TriedNumber each : r.tried()) {
            assertThat(each.isMet()).isTrue();
        }
        assertThat(r.inSpan(3)).isEqualTo(2);
    }

    private static double demandOfOne(LifelineDesign d) {
        return Occupancy.meeting(List.of(anchors(1)))
                .solve(d)
                .tried()
                .get(0)
                .notMet()
                .get(0)
                .ratio();
    }

    /** In the cold the line is tighter and loads its anchors more: a limit between both lets nobody on if it may get cold. */
    @Test
    void theTemperaturesOfTheDesignCount() {
        LifelineDesign mild = crew(100, 100).withTemperatures(List.of(15.0));
        LifelineDesign cold = mild.withTemperatures(List.of(-30.0, 15.0));
        double one = demandOfOne(mild);
        assertThat(demandOfOne(cold)).isGreaterThan(1.02 * one);
        assertThat(Occupancy.meeting(List.of(anchors(1.01 * one))).solve(mild).inSpan(1))
                .isPositive();
        assertThat(Occupancy.meeting(List.of(anchors(1.01 * one))).solve(cold).inSpan(1))
                .isZero();
    }

    /** Where cable runs from span to span, one who hangs in the next tightens the line: each span takes one, the line not two. */
    @Test
    void spansThatFeelOneAnotherTakeFewerThanTheirSum() {
        LifelineDesign d = LifelineDesign.builder("free")
                .line(Designs.line(2, Passage.free()))
                .temperature(15)
                .worker(Designs.worker("W0", Attachment.GRIPPED))
                .worker(Designs.worker("W1", Attachment.GRIPPED))
                .build();
        OccupancyResult r =
                Occupancy.meeting(List.of(anchors(1.0001 * demandOfOne(d)))).solve(d);
        assertThat(r.inSpan(1)).isEqualTo(1);
        assertThat(r.inSpan(2)).isEqualTo(1);
        assertThat(r.inAll()).isEqualTo(1);
    }
}
