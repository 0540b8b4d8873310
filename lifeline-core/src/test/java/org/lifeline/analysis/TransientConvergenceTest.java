package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.motion.EnergyHistory;
import org.lifeline.analysis.motion.MeshRun;
import org.lifeline.analysis.motion.WorkerPeaks;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** What halving mesh and step does, and where the energy of a fall without an absorber goes. */
class TransientConvergenceTest {
    private static Lifeline single() {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.576)
                        .axialStiffness(4.9e6)
                        .dampingTime(4e-4)
                        .build())
                .endAnchor("a", Point.of(0, 0, 10))
                .endAnchor("b", Point.of(12, 0, 10))
                .pretension(1500)
                .build();
    }

    private static Fall drop(Attachment attachment) {
        Worker worker = Worker.builder("w")
                .mass(100)
                .walkingLevel(8.5)
                .attachment(attachment)
                .connection(Connection.plainLanyard(1.8, LoadingCurve.spring(6e4)))
                .build();
        return Fall.builder("f").at(Place.of(1, 6)).faller(worker).freeFall(1.8).build();
    }

    /** By default a bound of 6 % holds after three meshes, each with half the segments of the one before. */
    @Test
    void defaultsReachTheirAccuracy() {
        TransientResult r =
                TransientArrest.withDefaults().withEndAfterFirstCatch(0).solve(single(), drop(Attachment.GRIPPED));
        List<MeshRun> meshes = r.meshes();
        assertThat(r.accurate()).isTrue();
        assertThat(r.uncertainty()).isLessThanOrEqualTo(0.06);
        assertThat(meshes).hasSizeGreaterThanOrEqualTo(3);
        MeshRun.Peaks last = meshes.get(meshes.size() - 1).peaks();
        MeshRun.Peaks before = meshes.get(meshes.size() - 2).peaks();
        assertThat(Math.abs(last.arrestForce() / before.arrestForce() - 1)).isLessThanOrEqualTo(r.spread() * 1.02);
        assertThat(Math.abs(last.tension() / before.tension() - 1)).isLessThanOrEqualTo(r.spread() * 1.02);
        assertThat(meshes.get(1).mesh().segmentLength())
                .isEqualTo(0.5 * meshes.get(0).mesh().segmentLength());
        assertThat(r.arrest().convergence().residual()).isEqualTo(r.uncertainty());
        assertThat(r.tensionAllowance() / last.tension()).isLessThanOrEqualTo(r.uncertainty());
        assertThat(r.arrestForceAllowance() / last.arrestForce()).isLessThanOrEqualTo(r.uncertainty());
    }

    /** The lowest point converges with the square of the mesh once the catch is resolved. */
    @Test
    void theLowestPointConverges() {
        double[] lowest = new double[4];
        for (int i = 0; i < lowest.length; i++) {
            TransientResult r = TransientArrest.withDefaults()
                    .withSegmentLength(0.6 / (1 << i))
                    .withRefinements(0)
                    .withDuration(1)
                    .solve(single(), drop(Attachment.GRIPPED));
            lowest[i] = r.firstCatch().worker("w").lowest().value();
        }
        double first = lowest[1] - lowest[0];
        double second = lowest[2] - lowest[1];
        double third = lowest[3] - lowest[2];
        assertThat(first / second).isBetween(1.8, 5.0);
        assertThat(second / third).isBetween(1.8, 5.0);
        assertThat(Math.abs(third)).isLessThan(5e-4);
    }

    /**
     * A mass dropped without an absorber on to a single span: at the lowest point everything that the fall set free is in
     * the strain of cable and lanyard, in the cable's motion, or lost to damping; and the energy that the energy balance
     * stores, less what moved and what was lost, is stored here.
     */
    @Test
    void aDropWithoutAbsorberAccountsForItsEnergy() {
        TransientResult r = TransientArrest.withDefaults().solve(single(), drop(Attachment.GRIPPED));
        ArrestResult balance = r.energyBalance().orElseThrow();
        double[] t = r.history().times();
        int at = 0;
        double when = r.firstCatch().worker("w").lowest().time();
        while (t[at] < when) {
            at++;
        }
        EnergyHistory e = r.history().energies();
        double strain = e.of(EnergyHistory.Part.STRAIN)[at] + e.of(EnergyHistory.Part.WEIGHT)[at];
        double lanyard = e.of(EnergyHistory.Part.CONNECTIONS)[at];
        double lost = e.of(EnergyHistory.Part.DAMPING)[at] + e.of(EnergyHistory.Part.CABLE_MOTION)[at];
        double free = -e.of(EnergyHistory.Part.WORKER_WEIGHT)[at] - e.of(EnergyHistory.Part.WORKER_MOTION)[at];
        assertThat(strain + lanyard + lost).isCloseTo(free, within(1e-3 * free));
        // The energy balance has nothing to lose: it stores it all, and so it comes out lower and harder pulled at
        // rest.
        assertThat(lost / free).isBetween(0.005, 0.2);
        assertThat(r.arrest().totalFallDistance()).isLessThan(balance.totalFallDistance());
        assertThat(r.arrest().energy().residual()).isCloseTo(0, within(1e-3 * free));
        assertThat(r.relativeDrift()).isLessThan(1e-3);
    }

    /** A ring at the middle of a symmetric span has nowhere to run: gripped and free-running agree. */
    @Test
    void gripAndRingAgreeAtTheMiddle() {
        TransientArrest analysis =
                TransientArrest.withDefaults().withSegmentLength(0.12).withRefinements(0);
        WorkerPeaks grip =
                analysis.solve(single(), drop(Attachment.GRIPPED)).firstCatch().worker("w");
        WorkerPeaks ring = analysis.solve(single(), drop(Attachment.FREE_RUNNING))
                .firstCatch()
                .worker("w");
        assertThat(ring.force().value() / grip.force().value()).isBetween(0.995, 1.005);
        assertThat(Math.abs(ring.lowest().value() - grip.lowest().value())).isLessThan(1e-3);
    }

    /** A line and its mirror image give mirrored results, joint by joint. */
    @Test
    void mirrorImagesAgree() {
        Cable cable = Cable.builder().massPerLength(0.5).axialStiffness(3e6).build();
        Lifeline line = Lifeline.builder()
                .cable(cable)
                .endAnchor("a", Point.of(0, 0, 10))
                .intermediateAnchor("p", Point.of(7, 0, 10.3), Passage.friction(0.15))
                .intermediateAnchor("q", Point.of(15, 0, 10), Passage.free())
                .endAnchor("b", Point.of(24, 0, 10))
                .installed(Installed.unstretchedLength(24.0))
                .build();
        Lifeline mirror = Lifeline.builder()
                .cable(cable)
                .endAnchor("b", Point.of(-24, 0, 10))
                .intermediateAnchor("q", Point.of(-15, 0, 10), Passage.free())
                .intermediateAnchor("p", Point.of(-7, 0, 10.3), Passage.friction(0.15))
                .endAnchor("a", Point.of(0, 0, 10))
                .installed(Installed.unstretchedLength(24.0))
                .build();
        Worker worker = Worker.builder("w")
                .mass(100)
                .walkingLevel(8.5)
                .connection(Connection.plainLanyard(1.8, LoadingCurve.spring(6e4)))
                .build();
        TransientArrest analysis = TransientArrest.withDefaults()
                .withSegmentLength(0.25)
                .withRefinements(0)
                .withDuration(1.5);
        TransientResult one = analysis.solve(
                line, Fall.builder("f").at(Place.of(2, 3)).faller(worker).build());
        TransientResult two = analysis.solve(
                mirror, Fall.builder("f").at(Place.of(2, 5)).faller(worker).build());
        for (String id : List.of("a", "p", "q", "b")) {
            double force = one.firstCatch().support(id).force().value();
            assertThat(two.firstCatch().support(id).force().value()).as(id).isCloseTo(force, within(2e-3 * force));
        }
        assertThat(two.firstCatch().worker("w").lowest().value())
                .isCloseTo(one.firstCatch().worker("w").lowest().value(), within(1e-4));
    }
}
