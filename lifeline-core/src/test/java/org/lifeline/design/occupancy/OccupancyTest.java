package org.lifeline.design.occupancy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.lifeline.design.occupancy.Crews.anchors;
import static org.lifeline.design.occupancy.Crews.design;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.RescueLoad;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.Basis;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.testing.PlainParts;

class OccupancyTest {
    private static double load(LifelineDesign d, List<Worker> fallers, List<Worker> hanging, double station) {
        Fall.Builder b = Fall.builder("f").at(Place.of(1, station));
        fallers.forEach(b::faller);
        for (int i = 0; i < hanging.size(); i++) {
            int steps = (i + 1) / 2;
            b.hanging(hanging.get(i), Place.of(1, 6 + 0.6 * steps * (i % 2 == 0 ? 1 : -1)));
        }
        ArrestResult r = EnergyBalance.withDefaults()
                .withSide(DeploymentForce.MAXIMUM)
                .withAttachmentLimit(AttachmentLimit.HELD)
                .solve(d.line(), b.build());
        return r.endAnchorLoad();
    }

    /** The number follows the limit, and the limit was found directly: brute force over stations, orders and groups. */
    @Test
    void theNumberFollowsTheWorstArrangement() {
        LifelineDesign d = design(1, 100, 100, 100);
        List<Worker> all = d.workers();
        double[] worst = new double[4];
        for (int n = 1; n <= 3; n++) {
            for (int hanging = 0; hanging < n; hanging++) {
                for (int i = 1; i < 60; i++) {
                    worst[n] = Math.max(
                            worst[n], load(d, all.subList(hanging, n), all.subList(0, hanging), 12.0 * i / 60));
                }
            }
        }
        assertThat(worst[2]).isGreaterThan(worst[1]);
        for (int n = 1; n <= 2; n++) {
            assertThat(Occupancy.meeting(List.of(anchors(1.001 * worst[n])))
                            .solve(d)
                            .inAll())
                    .isEqualTo(n);
            assertThat(Occupancy.meeting(List.of(anchors(0.999 * worst[n])))
                            .solve(d)
                            .inAll())
                    .isEqualTo(n - 1);
        }
    }

    /** With different masses the heaviest selection and every order are tried; the light one alone would let more pass. */
    @Test
    void theHeaviestOrderCounts() {
        LifelineDesign d = design(1, 60, 140);
        double heavyLast = load(d, d.workers().subList(1, 2), d.workers().subList(0, 1), 6);
        double lightLast = load(d, d.workers().subList(0, 1), d.workers().subList(1, 2), 6);
        double both = load(d, d.workers(), List.of(), 6);
        double most = Math.max(both, Math.max(heavyLast, lightLast));
        assertThat(Occupancy.meeting(List.of(anchors(0.99 * most))).solve(d).inAll())
                .isLessThan(2);
        TriedNumber two = Occupancy.meeting(List.of(anchors(0.99 * most))).solve(d).tried().stream()
                .filter(t -> t.number() == 2)
                .findFirst()
                .orElseThrow();
        assertThat(two.arrangements()).as("together, and each of the two last").isEqualTo(3);
        assertThat(two.notMet())
                .singleElement()
                .satisfies(r -> assertThat(r.ratio()).isGreaterThan(1));
    }

    /**
     * One worker in a span: asked for by the Japanese approval standard (jp-span, published) and by the New Zealand leaflet
     * (nz-sag, published). Here one in each of two clamped spans is met, two in one span are not.
     */
    @Test
    void oneInEachSpan() {
        LifelineDesign d = design(2, 100, 100);
        double one = load(d, d.workers().subList(0, 1), List.of(), 6);
        OccupancyResult r = Occupancy.meeting(List.of(anchors(1.02 * one))).solve(d);
        assertThat(r.inSpan(1)).isEqualTo(1);
        assertThat(r.inSpan(2)).isEqualTo(1);
        // Clamped spans do not feel one another: the number in all is the sum.
        assertThat(r.inAll()).isEqualTo(2);
        assertThat(r.isConfirmed()).isFalse();
        assertThat(r.selectionsLeftOut()).isZero();
    }

    /** ISO 16024:2005, scope: at most three persons (published). The rule itself stops the search at three. */
    @Test
    void aPublishedNumberStopsTheSearch() {
        LifelineDesign d = design(1, 80, 80, 80, 80);
        OccupancyResult r = Occupancy.meeting(List.of(Criteria.of("iso-users").orElseThrow()))
                .solve(d);
        assertThat(r.inAll()).isEqualTo(3);
    }

    /**
     * A rescuer of 200 kg hangs on with a worker of 100 kg whose absorber gave 2 kN at most: 2.94 kN by hand, more than the arrest
     * brought on the line. A limit between the two loads on the ends leaves nobody on the line once an assessment confirms it.
     */
    @Test
    void aStatedRescuerCountsInTheConfirmation() {
        LifelineDesign d = design(1, 100).withWorkers(w -> w.withConnection(PlainParts.lanyard(1800, 2000, 4)));
        double arrest = load(d, d.workers(), List.of(), 6);
        ArrestResult rest = RescueLoad.ofRescuer(200)
                .solve(EnergyBalance.withDefaults()
                        .solve(
                                d.line(),
                                Fall.builder("f")
                                        .at(Place.of(1, 6))
                                        .faller(d.workers().get(0))
                                        .build()));
        assertThat(rest.lineLoad()).isCloseTo(300 * 9.80665, within(1e-9));
        assertThat(rest.endAnchorLoad()).isGreaterThan(1.1 * arrest);
        Occupancy confirmed = Occupancy.meeting(List.of(anchors(1.05 * arrest)))
                .confirmedBy(Assessment.withDefaults()
                        .withBasis(Basis.ENERGY_BALANCE)
                        .withoutMotion());
        assertThat(confirmed.solve(d).inAll()).isEqualTo(1);
        assertThat(confirmed.solve(d.toBuilder().rescuerMass(200).build()).inAll())
                .isZero();
    }

    @Test
    void withoutCriteriaNothingIsAsked() {
        assertThatThrownBy(() -> Occupancy.meeting(List.of()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("criteria");
    }
}
